//! What a reading says: physics and statistics of measurements on a refrigerating machine.
//!
//! Answers: given what the meter showed, what can be true of the thing measured, and how surely?
//!
//! Must never know: which fault is likely in a whole machine, what a job is, how anything is
//! stored or worded.
//!
//! Figures stand beside their use with their source. A trade figure that no public document
//! carries is marked "common practice, no source" or "from memory".

#![forbid(unsafe_code)]

mod against_limits;
mod capacitor;
pub mod cool_down;
mod doubt;
pub mod energy;
mod insulation;
mod meter;
mod protector;
mod ranking;
pub mod refrigerant;
pub mod running;
mod start_device;
pub mod start_kit;
pub mod start_trials;
mod stored_charge;
pub mod supply;
mod watts_trend;
mod winding_temperature;
pub mod windings;

pub use against_limits::{Against, against};
pub use capacitor::{
    CAPACITANCE_LIMITS, CapacitorDoubt, CapacitorError, CapacitorMarking, CapacitorUse,
    Replacement, capacitance, doubt_about_capacitance, replacement,
};
pub use doubt::{
    CAPACITOR_VOLTS, CORD_METRES, Doubt, LEAKAGE_AMPS, MACHINE_WATTS, MAINS_VOLTS,
    doubt_about_insulation, doubt_about_leads, doubt_about_ohms, doubt_by,
};
pub use insulation::{
    IN_SERVICE_CLASS_I, IN_SERVICE_HEATERS, Insulation, InsulationReading, LEAK, ProtectiveDevice,
    SOUND, Tester, Trip, class_a_longest_time, leakage,
};
pub use meter::{Meter, MeterKind};
pub use protector::{Protector, protector};
pub use ranking::ranked;
pub use start_device::{
    Band, CurrentRelay, PotentialRelay, Ptc, current_relay, potential_relay, ptc,
};
pub use stored_charge::{SAFE_BELOW, can_hurt, discharge_time, peak_power, stored_energy};
pub use watts_trend::{Direction, STEADY, WattsAt, WattsTrend, watts_trend};
pub use winding_temperature::{Conductor, winding_temperature};
