//! The closed list of shapes that an answer can have.

use std::collections::BTreeSet;

use quantity::{Accuracy, Ohms, Typed};

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
