//! Which readings between two pins can't be, and which are worth asking about.

use quantity::{Limit, Limits, Observed, Ohms, Side, Strictness, Typed};

/// Why a reading is refused or asked about.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PairDoubt {
    /// Resistance is never below zero.
    Negative,
    /// More than any hand-held meter shows.
    BeyondAnyMeter,
    /// Far more than a winding has: often a kilo-ohm slip, or a body in the circuit.
    LargeForAWinding,
    /// A 1 alone is how some displays say "over range".
    LoneOne,
}

/// Limits for ohms between two compressor pins. Household windings read 1 to 60 Ω and both in
/// series under 100 Ω (from memory); above 150 Ω a person is asked. The largest range of
/// hand-held meters ends at 100 MΩ or below (from memory).
pub const PAIR_LIMITS: Limits<Ohms, PairDoubt> = Limits(&[
    Limit {
        strictness: Strictness::Hard,
        side: Side::Below(Ohms::new(0.0)),
        reason: PairDoubt::Negative,
    },
    Limit {
        strictness: Strictness::Hard,
        side: Side::Above(Ohms::new(1e9)),
        reason: PairDoubt::BeyondAnyMeter,
    },
    Limit {
        strictness: Strictness::Soft,
        side: Side::Above(Ohms::new(150.0)),
        reason: PairDoubt::LargeForAWinding,
    },
]);

/// What to refuse or ask about a typed pair reading; over range is never in doubt.
///
/// ```
/// use measure::windings::{PairDoubt, doubt_about_pair};
/// use quantity::{Ohms, parse_reading};
/// let slip = parse_reading("4.7k", Ohms::new(2e6)).unwrap();
/// assert_eq!(doubt_about_pair(slip).unwrap().1, PairDoubt::LargeForAWinding);
/// ```
#[must_use]
pub fn doubt_about_pair(typed: Typed<Ohms>) -> Option<(Strictness, PairDoubt)> {
    let Observed::Value(value) = typed.observed else {
        return None;
    };
    let one = Ohms::new(1.0);
    PAIR_LIMITS
        .beyond(value)
        .map(|limit| (limit.strictness, limit.reason))
        .or_else(|| {
            (value == one && typed.count == one).then_some((Strictness::Soft, PairDoubt::LoneOne))
        })
}
