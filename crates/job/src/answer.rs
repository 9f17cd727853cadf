//! The closed list of shapes that an answer can have.

use std::collections::BTreeSet;

use quantity::{
    Accuracy, Amps, Celsius, Farads, Metres, Observed, Ohms, Quantity, Typed, Volts, WattHours,
    Watts,
};

use crate::{Name, Text};

/// What was answered.
#[derive(Debug, Clone, PartialEq)]
pub enum Answer {
    /// A number off a meter.
    Reading(Reading),
    /// One of the choices offered.
    Choice(Name),
    /// Any of the choices offered; none of them is an answer too.
    Choices(BTreeSet<Name>),
    /// Words off a plate.
    Text(Text),
    /// It was not done, and why.
    NotDone(NotDone),
}

/// A number off a meter: as typed, as understood, and how good the meter is.
#[derive(Debug, Clone, PartialEq)]
pub struct Reading {
    /// Exactly what was typed.
    pub typed: Text,
    /// What was understood by it.
    pub measured: Measured,
    /// The meter's accuracy at the time.
    pub accuracy: Accuracy,
}

/// A typed reading with its unit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Measured {
    /// Resistance.
    Ohms(Typed<Ohms>),
    /// Voltage.
    Volts(Typed<Volts>),
    /// Temperature.
    Celsius(Typed<Celsius>),
    /// Capacitance.
    Farads(Typed<Farads>),
    /// Current.
    Amps(Typed<Amps>),
    /// Power.
    Watts(Typed<Watts>),
    /// Length.
    Metres(Typed<Metres>),
    /// Energy.
    WattHours(Typed<WattHours>),
}

/// The unit of a reading.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Unit {
    /// Resistance.
    Ohm,
    /// Voltage.
    Volt,
    /// Temperature.
    Celsius,
    /// Capacitance.
    Farad,
    /// Current.
    Ampere,
    /// Power.
    Watt,
    /// Length.
    Metre,
    /// Energy.
    WattHour,
}

impl Unit {
    /// All of them.
    pub const ALL: [Self; 8] = [
        Self::Ohm,
        Self::Volt,
        Self::Celsius,
        Self::Farad,
        Self::Ampere,
        Self::Watt,
        Self::Metre,
        Self::WattHour,
    ];
}

impl Measured {
    /// A reading from bare numbers in this unit.
    #[must_use]
    pub fn new(unit: Unit, observed: Observed<f64>, count: f64) -> Self {
        match unit {
            Unit::Ohm => Self::Ohms(typed(observed, count)),
            Unit::Volt => Self::Volts(typed(observed, count)),
            Unit::Celsius => Self::Celsius(typed(observed, count)),
            Unit::Farad => Self::Farads(typed(observed, count)),
            Unit::Ampere => Self::Amps(typed(observed, count)),
            Unit::Watt => Self::Watts(typed(observed, count)),
            Unit::Metre => Self::Metres(typed(observed, count)),
            Unit::WattHour => Self::WattHours(typed(observed, count)),
        }
    }

    /// Its unit.
    #[must_use]
    pub const fn unit(self) -> Unit {
        match self {
            Self::Ohms(_) => Unit::Ohm,
            Self::Volts(_) => Unit::Volt,
            Self::Celsius(_) => Unit::Celsius,
            Self::Farads(_) => Unit::Farad,
            Self::Amps(_) => Unit::Ampere,
            Self::Watts(_) => Unit::Watt,
            Self::Metres(_) => Unit::Metre,
            Self::WattHours(_) => Unit::WattHour,
        }
    }

    /// The bare numbers in its unit: what was observed, and one step of the last digit.
    #[must_use]
    pub fn numbers(self) -> (Observed<f64>, f64) {
        match self {
            Self::Ohms(typed) => numbers(typed),
            Self::Volts(typed) => numbers(typed),
            Self::Celsius(typed) => numbers(typed),
            Self::Farads(typed) => numbers(typed),
            Self::Amps(typed) => numbers(typed),
            Self::Watts(typed) => numbers(typed),
            Self::Metres(typed) => numbers(typed),
            Self::WattHours(typed) => numbers(typed),
        }
    }
}

fn typed<Q: Quantity>(observed: Observed<f64>, count: f64) -> Typed<Q> {
    Typed {
        observed: match observed {
            Observed::Value(value) => Observed::Value(Q::new(value)),
            Observed::OverRange { above } => Observed::OverRange {
                above: Q::new(above),
            },
        },
        count: Q::new(count),
    }
}

fn numbers<Q: Quantity>(typed: Typed<Q>) -> (Observed<f64>, f64) {
    let observed = match typed.observed {
        Observed::Value(value) => Observed::Value(value.get()),
        Observed::OverRange { above } => Observed::OverRange { above: above.get() },
    };
    (observed, typed.count.get())
}

/// Why something was not done. None of these is evidence about the machine.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum NotDone {
    /// It can't be reached.
    CannotReach,
    /// The tool is not at hand.
    NoTool,
    /// It does not look safe.
    NotSafe,
    /// Looked, but can't say.
    NotSure,
}

impl NotDone {
    /// All of them, in the order in which they are offered.
    pub const ALL: [Self; 4] = [
        Self::CannotReach,
        Self::NoTool,
        Self::NotSafe,
        Self::NotSure,
    ];
}
