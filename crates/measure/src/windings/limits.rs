//! Which readings between two pins can't be, and which are worth asking about.

use crate::Doubt;
use quantity::{Limit, Limits, Observed, Ohms, Side, Strictness, Typed};

/// Limits for ohms between two compressor pins. Household windings read 1 to 60 Ω and both in
/// series under 100 Ω (from memory); above 150 Ω a person is asked. The largest range of
/// hand-held meters ends at 100 MΩ or below (from memory).
pub const PAIR_LIMITS: Limits<Ohms, Doubt> = Limits(&[
    Limit {
        strictness: Strictness::Hard,
        side: Side::Below(Ohms::new(0.0)),
        reason: Doubt::Negative,
    },
    Limit {
        strictness: Strictness::Hard,
        side: Side::Above(Ohms::new(1e9)),
        reason: Doubt::BeyondAnyMeter,
    },
    Limit {
        strictness: Strictness::Soft,
        side: Side::Above(Ohms::new(150.0)),
        reason: Doubt::LargeForAWinding,
    },
]);

/// What to refuse or ask about a typed pair reading; over range is never in doubt.
///
/// ```
/// use measure::Doubt;
/// use measure::windings::doubt_about_pair;
/// use quantity::{Ohms, parse_reading};
/// let slip = parse_reading("4.7k", Ohms::new(2e6)).unwrap();
/// assert_eq!(doubt_about_pair(slip).unwrap().1, Doubt::LargeForAWinding);
/// ```
#[must_use]
pub fn doubt_about_pair(typed: Typed<Ohms>) -> Option<(Strictness, Doubt)> {
    let Observed::Value(value) = typed.observed else {
        return None;
    };
    let one = Ohms::new(1.0);
    PAIR_LIMITS
        .beyond(value)
        .map(|limit| (limit.strictness, limit.reason))
        .or_else(|| {
            (value == one && typed.count == one).then_some((Strictness::Soft, Doubt::LoneOne))
        })
}
