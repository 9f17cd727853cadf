//! Start devices by ohms, cold and off the pins.

use quantity::{Accuracy, Observed, Ohms, Typed};

use crate::windings::Mains;

/// What a cold PTC's resistance says.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Ptc {
    /// Inside what such a part has.
    AsItShould,
    /// Next to nothing: shorted.
    NearZero,
    /// Below what such a part has.
    Low,
    /// Above what such a part has: drifted, or a part for another mains.
    High,
    /// Far above, or over range: open or cracked.
    Open,
    /// Too close to a bound for this meter.
    CannotTell,
}

/// From where to where a sound part reads, in ohms.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Band {
    /// The least.
    pub least: Ohms,
    /// The most.
    pub most: Ohms,
}

impl Band {
    /// A part marked with `nominal` ohms at 25 °C: ±25 % (component table, common practice).
    #[must_use]
    pub fn of_marked(nominal: Ohms) -> Self {
        Self {
            least: nominal * 0.75,
            most: nominal * 1.25,
        }
    }

    /// Any household part for these mains: 3 to 20 Ω for 120 V (common practice); 220 to 240 V
    /// parts of 15 to 47 Ω nominal occur, 13 Ω was seen once: 10 to 59 Ω (common practice, weak).
    #[must_use]
    pub const fn of_mains(mains: Mains) -> Self {
        match mains {
            Mains::V120F60 => Self {
                least: Ohms::new(3.0),
                most: Ohms::new(20.0),
            },
            Mains::V230F50 => Self {
                least: Ohms::new(10.0),
                most: Ohms::new(59.0),
            },
        }
    }
}

/// Below this a PTC is shorted (judgement).
const NEAR_ZERO: Ohms = Ohms::new(1.0);

/// Judges a cold PTC against a band. Ten times the band's end counts as open.
#[must_use]
pub fn ptc(typed: Typed<Ohms>, accuracy: Accuracy, band: Band) -> Ptc {
    let Observed::Value(reading) = typed.observed else {
        return Ptc::Open;
    };
    let spread = accuracy.standard(reading, typed.count) * 2.0;
    let (low, high) = (reading - spread, reading + spread);
    if low >= band.least && high <= band.most {
        Ptc::AsItShould
    } else if low > band.most * 10.0 {
        Ptc::Open
    } else if high < NEAR_ZERO {
        Ptc::NearZero
    } else if low > band.most {
        Ptc::High
    } else if high < band.least {
        Ptc::Low
    } else {
        Ptc::CannotTell
    }
}

/// What the two positions of a current relay say about its contact.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CurrentRelay {
    /// Open upright, closed upside down: the armature falls and makes.
    Sound,
    /// Closed upright too: welded (NAVEDTRA 14259, chapter 14).
    Welded,
    /// Open upside down too: never makes.
    NeverMakes,
}

/// Judges a current relay's contact by gravity.
#[must_use]
pub const fn current_relay(closed_upright: bool, closed_inverted: bool) -> CurrentRelay {
    match (closed_upright, closed_inverted) {
        (false, true) => CurrentRelay::Sound,
        (true, _) => CurrentRelay::Welded,
        (false, false) => CurrentRelay::NeverMakes,
    }
}

/// What coil and contact of a potential relay say.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PotentialRelay {
    /// Coil reads, contact closed.
    Sound,
    /// The coil is open.
    CoilOpen,
    /// The contact, closed at rest (NAVEDTRA 14259, chapter 14), is open.
    ContactOpen,
}

/// Judges a potential relay. A coil has 2 to 20 kΩ (from memory); over range is open.
#[must_use]
pub const fn potential_relay(coil: Observed<Ohms>, contact_closed: bool) -> PotentialRelay {
    match (coil, contact_closed) {
        (Observed::OverRange { .. }, _) => PotentialRelay::CoilOpen,
        (Observed::Value(_), false) => PotentialRelay::ContactOpen,
        (Observed::Value(_), true) => PotentialRelay::Sound,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::MeterKind;
    use quantity::parse_reading;

    fn judged(typed: &str, band: Band) -> Ptc {
        let meter = MeterKind::Good.automatic();
        ptc(
            parse_reading(typed, meter.top).unwrap(),
            meter.accuracy,
            band,
        )
    }

    #[test]
    fn a_ptc_is_held_against_the_part_that_is_printed_on_it() {
        let band = Band::of_marked(Ohms::new(4.7));
        assert_eq!(judged("4.9", band), Ptc::AsItShould);
        assert_eq!(judged("22", band), Ptc::High);
        assert_eq!(judged("OL", band), Ptc::Open);
        assert_eq!(judged("900", band), Ptc::Open);
        assert_eq!(judged("0.2", band), Ptc::NearZero);
        assert_eq!(judged("2.4", band), Ptc::Low);
        assert_eq!(judged("5.9", band), Ptc::CannotTell);
    }
}
