//! Why a reading is refused, or asked about before it is taken.

use quantity::{
    Amps, Limit, Limits, Metres, Observed, Ohms, Quantity, Side, Strictness, Typed, Volts, Watts,
};

use crate::CapacitorDoubt;
use crate::running::AmpsDoubt;

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
    /// An amount that is never below zero.
    BelowZero,
    /// More than any household has of it.
    BeyondAnyHousehold,
    /// Volts that no household's mains have: a decimal mark, or a meter on direct volts.
    NotMains,
    /// More watts than a machine of this kind takes even while it defrosts.
    ManyWatts,
    /// More than leaks where a protective device is in front: amperes for milliamperes, or a
    /// clamp round one conductor alone.
    MuchForALeak,
    /// Longer than extension cords are: feet for metres.
    LongForACord,
    /// About a current.
    Current(AmpsDoubt),
    /// About a capacitance.
    Capacitance(CapacitorDoubt),
}

const fn limit<Q: Quantity>(
    strictness: Strictness,
    side: Side<Q>,
    reason: Doubt,
) -> Limit<Q, Doubt> {
    Limit {
        strictness,
        side,
        reason,
    }
}

/// Limits for the volts of mains. Households have 100 to 240 V nominal (from memory); a quarter
/// below the least is what is left in a start that fails (judgement).
pub const MAINS_VOLTS: Limits<Volts, Doubt> = Limits(&[
    limit(
        Strictness::Hard,
        Side::Below(Volts::new(0.0)),
        Doubt::BelowZero,
    ),
    limit(
        Strictness::Hard,
        Side::Above(Volts::new(1000.0)),
        Doubt::BeyondAnyHousehold,
    ),
    limit(
        Strictness::Soft,
        Side::Below(Volts::new(70.0)),
        Doubt::NotMains,
    ),
    limit(
        Strictness::Soft,
        Side::Above(Volts::new(264.0)),
        Doubt::NotMains,
    ),
]);

/// Limits for a capacitor's own volts, which lie above the mains' where it works (judgement; run
/// capacitors are made for 370 or 440 V, common practice).
pub const CAPACITOR_VOLTS: Limits<Volts, Doubt> = Limits(&[
    limit(
        Strictness::Hard,
        Side::Below(Volts::new(0.0)),
        Doubt::BelowZero,
    ),
    limit(
        Strictness::Hard,
        Side::Above(Volts::new(1000.0)),
        Doubt::BeyondAnyHousehold,
    ),
]);

/// Limits for a household machine's watts. Defrost heaters take some hundreds (judgement).
pub const MACHINE_WATTS: Limits<Watts, Doubt> = Limits(&[
    limit(
        Strictness::Hard,
        Side::Below(Watts::new(0.0)),
        Doubt::BelowZero,
    ),
    limit(
        Strictness::Hard,
        Side::Above(Watts::new(20_000.0)),
        Doubt::BeyondAnyHousehold,
    ),
    limit(
        Strictness::Soft,
        Side::Above(Watts::new(1_500.0)),
        Doubt::ManyWatts,
    ),
]);

/// Limits for a leakage current. Devices act at 30 mA at the latest (IEC 61008-1).
pub const LEAKAGE_AMPS: Limits<Amps, Doubt> = Limits(&[
    limit(
        Strictness::Hard,
        Side::Below(Amps::new(0.0)),
        Doubt::BelowZero,
    ),
    limit(
        Strictness::Hard,
        Side::Above(Amps::new(1_000.0)),
        Doubt::BeyondAnyHousehold,
    ),
    limit(
        Strictness::Soft,
        Side::Above(Amps::new(0.1)),
        Doubt::MuchForALeak,
    ),
]);

/// Limits for an extension cord's length (judgement).
pub const CORD_METRES: Limits<Metres, Doubt> = Limits(&[
    limit(
        Strictness::Hard,
        Side::Below(Metres::new(0.0)),
        Doubt::BelowZero,
    ),
    limit(
        Strictness::Hard,
        Side::Above(Metres::new(1_000.0)),
        Doubt::BeyondAnyHousehold,
    ),
    limit(
        Strictness::Soft,
        Side::Above(Metres::new(60.0)),
        Doubt::LongForACord,
    ),
]);

/// What to refuse or ask about a reading, by its limits. Over range isn't in doubt.
///
/// ```
/// use measure::{Doubt, MAINS_VOLTS, doubt_by};
/// use quantity::{Strictness, Volts, parse_reading};
/// let typed = parse_reading("12.1", Volts::new(600.0)).unwrap();
/// let asked = (Strictness::Soft, Doubt::NotMains);
/// assert_eq!(doubt_by(&MAINS_VOLTS, typed), Some(asked));
/// ```
#[must_use]
pub fn doubt_by<Q: Quantity>(
    limits: &Limits<Q, Doubt>,
    typed: Typed<Q>,
) -> Option<(Strictness, Doubt)> {
    let Observed::Value(value) = typed.observed else {
        return None;
    };
    let beyond = limits.beyond(value)?;
    Some((beyond.strictness, beyond.reason))
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
