//! The external overload protector by ohms, cold.

use quantity::{Accuracy, Observed, Ohms, Typed};

/// What its resistance says.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Protector {
    /// Closed: under an ohm.
    Closed,
    /// Neither closed nor open: a burnt contact, or too close to tell with this meter.
    Resistive {
        /// What was read.
        reading: Ohms,
    },
    /// Open: over range.
    Open,
}

/// A sound one reads less than this, cold (common practice, weak).
const CLOSED: Ohms = Ohms::new(1.0);
/// Leads that weren't zeroed may add up to this (common practice, no source).
const LEADS: Ohms = Ohms::new(0.5);
/// Above this it is no contact any more, whatever it is (judgement).
const OPEN: Ohms = Ohms::new(1e3);

/// Judges a protector's reading. Leads that weren't zeroed are allowed for.
#[must_use]
pub fn protector(typed: Typed<Ohms>, accuracy: Accuracy, leads_zeroed: bool) -> Protector {
    match typed.observed {
        Observed::OverRange { .. } => Protector::Open,
        Observed::Value(reading) => {
            let spread = accuracy.standard(reading, typed.count) * 2.0;
            let allowance = if leads_zeroed { Ohms::new(0.0) } else { LEADS };
            if reading - spread > OPEN {
                Protector::Open
            } else if reading - spread - allowance < CLOSED {
                Protector::Closed
            } else {
                Protector::Resistive { reading }
            }
        }
    }
}
