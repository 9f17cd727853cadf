//! What a motor is fed with, and what comes of it, in units.

use quantity::{Amps, Celsius, Hertz, NewtonMetres, Ohms, Volts, Watts};

use crate::phasor::Phasor;

/// Resistance and reactance in series; a capacitor's reactance is negative.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Impedance {
    /// The part that takes power.
    pub resistance: Ohms,
    /// The part that doesn't.
    pub reactance: Ohms,
}

/// What the motor is fed with.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Feed {
    /// Effective volts behind all resistance of the line.
    pub volts: Volts,
    /// The supply's frequency.
    pub frequency: Hertz,
    /// Resistance that carries the whole current.
    pub line: Ohms,
    /// Resistance in series with the main winding alone, as a relay's coil.
    pub main_series: Ohms,
    /// What is in series with the start winding alone; `None` when nothing leads there.
    pub start_series: Option<Impedance>,
}

/// Temperatures of the parts whose resistance follows them.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Temperatures {
    /// Main winding.
    pub main: Celsius,
    /// Start winding.
    pub start: Celsius,
    /// Rotor.
    pub rotor: Celsius,
}

impl Temperatures {
    /// The same for all parts.
    #[must_use]
    pub const fn all(celsius: Celsius) -> Self {
        Self {
            main: celsius,
            start: celsius,
            rotor: celsius,
        }
    }
}

/// A current: its effective value and its angle to the supply's voltage.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Current {
    /// Effective value.
    pub amps: Amps,
    /// Degrees ahead of the supply's voltage; behind it, negative.
    pub degrees: f64,
}

impl From<Phasor> for Current {
    fn from(phasor: Phasor) -> Self {
        Self {
            amps: Amps::new(phasor.size()),
            degrees: libm::atan2(phasor.im, phasor.re).to_degrees(),
        }
    }
}

/// Where the power taken from the supply goes; all but `taken` add up to it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Powers {
    /// From the supply, ahead of the line's resistance.
    pub taken: Watts,
    /// Heat in the line.
    pub line: Watts,
    /// Heat in what is in series with either winding.
    pub series: Watts,
    /// Heat in the main winding, its shorted turns too.
    pub main: Watts,
    /// Heat in the start winding, its shorted turns too.
    pub start: Watts,
    /// Heat in the iron.
    pub iron: Watts,
    /// Heat in the rotor.
    pub rotor: Watts,
    /// To the shaft, friction not yet taken off.
    pub shaft: Watts,
}

/// What the motor does at one speed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Drawn {
    /// Through the line.
    pub line: Current,
    /// Through the main winding.
    pub main: Current,
    /// Through the start winding.
    pub start: Current,
    /// Between the start winding's ends.
    pub start_volts: Volts,
    /// On the shaft, friction not yet taken off.
    pub torque: NewtonMetres,
    /// Where the power goes.
    pub powers: Powers,
}
