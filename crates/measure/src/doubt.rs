//! Why a reading is refused, or asked about before it is taken.

use quantity::{Observed, Ohms, Strictness, Typed};

/// Why a reading is refused or asked about.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Doubt {
    /// Resistance is never below zero.
    Negative,
    /// More than any hand-held meter shows.
    BeyondAnyMeter,
    /// Far more than a winding has: often a kilo-ohm slip, or a body in the circuit.
    LargeForAWinding,
    /// More than test leads have: the tips don't touch well, or a lead is breaking.
    LargeForLeads,
    /// A 1 alone is how some displays say "over range".
    LoneOne,
    /// A few ohms from a conductor to metal: a dead short, or megohms typed as ohms.
    OhmsForMegohms,
}

/// From here down a reading to bare metal is asked about (judgement): leaks of damp or dirt lie in
/// kilo-ohms, and a display in megohms shows such numbers.
const FEW_OHMS: Ohms = Ohms::new(1e3);

/// What to refuse or ask about ohms between any two points.
#[must_use]
pub fn doubt_about_ohms(typed: Typed<Ohms>) -> Option<(Strictness, Doubt)> {
    let Observed::Value(value) = typed.observed else {
        return None;
    };
    let one = Ohms::new(1.0);
    if value < Ohms::new(0.0) {
        Some((Strictness::Hard, Doubt::Negative))
    } else if value > Ohms::new(1e12) {
        Some((Strictness::Hard, Doubt::BeyondAnyMeter))
    } else if value == one && typed.count == one {
        Some((Strictness::Soft, Doubt::LoneOne))
    } else {
        None
    }
}

/// From here up what the leads themselves read is asked about: usual are 0.2 to 0.5 Ω (common
/// practice, no source).
const MUCH_FOR_LEADS: Ohms = Ohms::new(2.0);

/// What to refuse or ask about ohms with the probes touched together.
#[must_use]
pub fn doubt_about_leads(typed: Typed<Ohms>) -> Option<(Strictness, Doubt)> {
    doubt_about_ohms(typed).or(match typed.observed {
        Observed::Value(value) if value > MUCH_FOR_LEADS => {
            Some((Strictness::Soft, Doubt::LargeForLeads))
        }
        _ => None,
    })
}

/// What to refuse or ask about ohms from a conductor to bare metal.
#[must_use]
pub fn doubt_about_insulation(typed: Typed<Ohms>) -> Option<(Strictness, Doubt)> {
    doubt_about_ohms(typed).or(match typed.observed {
        Observed::Value(value) if value < FEW_OHMS => {
            Some((Strictness::Soft, Doubt::OhmsForMegohms))
        }
        _ => None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use quantity::parse_reading;

    fn insulation(text: &str) -> Option<(Strictness, Doubt)> {
        doubt_about_insulation(parse_reading(text, Ohms::new(40e6)).unwrap())
    }

    #[test]
    fn leads_of_more_than_two_ohms_are_asked_about() {
        let leads = |text| doubt_about_leads(parse_reading(text, Ohms::new(40e6)).unwrap());
        assert_eq!(leads("0.3"), None);
        assert_eq!(leads("4.7"), Some((Strictness::Soft, Doubt::LargeForLeads)));
        assert_eq!(leads("-0.1"), Some((Strictness::Hard, Doubt::Negative)));
    }

    #[test]
    fn megohms_typed_as_ohms_and_a_lone_one_are_asked_about() {
        assert_eq!(
            insulation("40"),
            Some((Strictness::Soft, Doubt::OhmsForMegohms))
        );
        assert_eq!(insulation("1"), Some((Strictness::Soft, Doubt::LoneOne)));
        assert_eq!(insulation("40M"), None);
        assert_eq!(insulation("OL"), None);
        assert_eq!(insulation("-3"), Some((Strictness::Hard, Doubt::Negative)));
    }
}
