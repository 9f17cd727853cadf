//! What went on over a while.
//!
//! Answers: how did temperatures, pressures and watts run, minute by minute? Must never know:
//! what to make of it.

use quantity::{Celsius, Joules, Kilograms, Pascals, Seconds, Watts};

/// The state at one moment.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sample {
    /// Since the machine was made.
    pub time: Seconds,
    /// Air beside the evaporator.
    pub air: Celsius,
    /// Food there.
    pub food: Celsius,
    /// Air in the second compartment, where there is one.
    pub second_air: Option<Celsius>,
    /// Metal of the evaporator, on the mean.
    pub evaporator: Celsius,
    /// Where the refrigerant boils.
    pub boiling: Celsius,
    /// Metal of the condenser.
    pub condenser: Celsius,
    /// The compressor's shell.
    pub shell: Celsius,
    /// Pressure on the low side.
    pub suction: Pascals,
    /// Pressure on the high side.
    pub discharge: Pascals,
    /// What the whole machine draws.
    pub watts: Watts,
    /// Whether the pump turns.
    pub running: bool,
    /// Whether the timer is at its defrost, the heater sound or not.
    pub defrosting: bool,
    /// Frost on the evaporator.
    pub frost: Kilograms,
}

/// What went on.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Course {
    /// One a minute, and one at the end.
    pub samples: Vec<Sample>,
    /// How long the pump turned.
    pub running: Seconds,
    /// How often it started.
    pub starts: u32,
    /// What was drawn of the mains.
    pub drawn: Joules,
}
