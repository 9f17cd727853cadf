//! Degrees Fahrenheit taken for degrees Celsius.
//!
//! 0 °F, which is as cold as a freezer should be, looks like one that is far too warm. Where the
//! numbers can hardly be Celsius this asks; it never changes a number by itself.

use job::Place;
use quantity::{Celsius, Seconds};

use super::Compartment;
use super::course::{Point, Watched};

/// What makes degrees doubtful.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum ScaleDoubt {
    /// So warm is no household's room, nor a cabinet in it.
    TooWarm {
        /// Where.
        place: Place,
        /// The warmest that was read there.
        shown: Celsius,
    },
    /// Fresh food far warmer than a room, and the freezer cold.
    FarApart {
        /// The last of fresh food.
        fresh_food: Celsius,
        /// The last of the freezer.
        freezer: Celsius,
    },
    /// A freezer that stands near 0 and was never seen warm: 0 °F is as cold as it should be.
    StandsNearZero {
        /// The last of it.
        shown: Celsius,
    },
}

/// Above any climate class's room, 43 °C (IEC 62552-1), and a little more.
const TOO_WARM: Celsius = Celsius::new(45.0);
/// In a cabinet that has been on for [`SETTLED`]: what 40 °F reads as, and a little less (judgement).
const NOT_FRESH: Celsius = Celsius::new(30.0);
/// While the freezer is below this (judgement).
const COLD_BESIDE: Celsius = Celsius::new(12.0);
const SETTLED: Seconds = Seconds::new(6.0 * 3_600.0);
/// Either side of 0 (judgement), and warmer than this a cabinet was seen warm: 12 °F is none that
/// was just switched on.
const NEAR_ZERO: f64 = 5.5;
const SEEN_WARM: f64 = 12.0;
/// For so long it stands (judgement).
const STANDS: Seconds = Seconds::new(2.0 * 3_600.0);

impl ScaleDoubt {
    pub(super) fn of(
        cabinet: &[(Compartment, Vec<Point>)],
        room: &[Point],
        watched: &Watched,
    ) -> Option<Self> {
        let of_cabinet = cabinet
            .iter()
            .map(|(one, points)| (one.place(), &points[..]));
        let mut all = of_cabinet.chain([(Place::Room, room)]);
        let too_warm = all.find_map(|(place, points)| {
            let shown = points.iter().map(|(_, shown)| shown.get());
            let shown = Celsius::new(shown.fold(f64::NEG_INFINITY, f64::max));
            (shown > TOO_WARM).then_some(Self::TooWarm { place, shown })
        });
        let points = |of: Compartment| {
            let found = cabinet.iter().find(|(one, _)| *one == of);
            found.map(|(_, points)| &points[..])
        };
        let freezer = points(Compartment::Freezer);
        too_warm
            .or_else(|| far_apart(points(Compartment::FreshFood)?, freezer?, watched))
            .or_else(|| stands_near_zero(freezer?))
    }
}

fn far_apart(fresh: &[Point], freezer: &[Point], watched: &Watched) -> Option<ScaleDoubt> {
    let (at, fresh_food) = fresh.last().copied()?;
    let (_, freezer) = freezer.last().copied()?;
    let is_settled = watched.began.until(at) >= SETTLED;
    (is_settled && fresh_food > NOT_FRESH && freezer < COLD_BESIDE).then_some(
        ScaleDoubt::FarApart {
            fresh_food,
            freezer,
        },
    )
}

fn stands_near_zero(freezer: &[Point]) -> Option<ScaleDoubt> {
    let (last, shown) = freezer.last().copied()?;
    let (first, _) = freezer.first().copied()?;
    let was_warm = freezer.iter().any(|(_, one)| one.get() > SEEN_WARM);
    let tail = freezer.iter().filter(|(at, _)| (*at).until(last) <= STANDS);
    let stands = tail.clone().count() > 1
        && tail.clone().all(|(_, one)| one.get().abs() <= NEAR_ZERO)
        && first.until(last) >= STANDS;
    (stands && !was_warm).then_some(ScaleDoubt::StandsNearZero { shown })
}
