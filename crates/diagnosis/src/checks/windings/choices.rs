//! The choices and items of the windings check, by the names under which a job keeps them.

use measure::windings::{Pair, Pin};

use crate::choice::choices;

choices! {
    /// Whether anything is still plugged on the pins.
    pub enum GearChoice answers "windings" / "start-gear" {
        /// The three pins are bare.
        Off = "off",
        /// Start device or protector still sits on them.
        StillOn = "still-on",
    }
}

choices! {
    /// What is known of the test leads.
    pub enum LeadsChoice answers "windings" / "leads" {
        /// The meter shows zero with the probes together.
        Zeroed = "zeroed",
        /// Their resistance is in every reading.
        NotZeroed = "not-zeroed",
        /// Not looked at.
        Unknown = "unknown",
    }
}

choices! {
    /// How the three pins lie. Pin 1 is the first from the top, then clockwise; in a line the
    /// first from the left, or from the top.
    pub enum PinShape answers "windings" / "shape" {
        /// A triangle with one pin above.
        PointUp = "point-up",
        /// A triangle with its point to the right.
        PointRight = "point-right",
        /// A triangle with one pin below.
        PointDown = "point-down",
        /// A triangle with its point to the left.
        PointLeft = "point-left",
        /// A row from left to right.
        Row = "row",
        /// A column from top to bottom.
        Column = "column",
    }
}

choices! {
    /// A pin, as something noted points to it.
    pub enum PinChoice {
        /// Pin 1.
        One = "pin-1",
        /// Pin 2.
        Two = "pin-2",
        /// Pin 3.
        Three = "pin-3",
        /// Not looked at, or not to be seen.
        NotNoted = "not-noted",
    }
}

choices! {
    /// Two pins, as something noted points to them.
    pub enum PairChoice {
        /// Pins 1 and 2.
        OneTwo = "pair-1-2",
        /// Pins 1 and 3.
        OneThree = "pair-1-3",
        /// Pins 2 and 3.
        TwoThree = "pair-2-3",
        /// Not looked at, or not to be seen.
        NotNoted = "not-noted",
    }
}

impl PinShape {
    /// Whether the three pins form a triangle.
    #[must_use]
    pub const fn is_triangle(self) -> bool {
        !matches!(self, Self::Row | Self::Column)
    }
}

impl PinChoice {
    /// The pin, where one was noted.
    #[must_use]
    pub const fn pin(self) -> Option<Pin> {
        match self {
            Self::One => Some(Pin::One),
            Self::Two => Some(Pin::Two),
            Self::Three => Some(Pin::Three),
            Self::NotNoted => None,
        }
    }
}

impl PairChoice {
    /// The pair, where one was noted.
    #[must_use]
    pub const fn pair(self) -> Option<Pair> {
        match self {
            Self::OneTwo => Some(Pair::OneTwo),
            Self::OneThree => Some(Pair::OneThree),
            Self::TwoThree => Some(Pair::TwoThree),
            Self::NotNoted => None,
        }
    }
}

/// The item under which a pair's reading is kept.
#[must_use]
pub const fn item_of_pair(pair: Pair) -> &'static str {
    match pair {
        Pair::OneTwo => "pair-1-2",
        Pair::OneThree => "pair-1-3",
        Pair::TwoThree => "pair-2-3",
    }
}
