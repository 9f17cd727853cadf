//! What the supply does while a motor starts.
//!
//! Answers: how much resistance lies between the mains and the machine, by idle and starting
//! volts or by cord; how many volts and how much starting torque are left; how long a cord may
//! be; whether volts lie within a named standard.
//!
//! Must never know: which machine, which outlet, what to do about it.

mod cord;
mod drop;
mod standard;

pub use cord::{Conductors, longest_cord};
pub use drop::{
    LOCKED_ROTOR_POWER_FACTOR, SupplyError, sag, source_resistance, torque_left, volts_left,
};
pub use standard::{SUPPLY_STANDARDS, SupplyStandard, VoltageStandard};
