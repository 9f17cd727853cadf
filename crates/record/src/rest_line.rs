//! Where tries to start lie on a line of rests. Nothing but geometry.

use job::Tried;
use measure::start_trials::Place;
use quantity::Seconds;

use crate::shape::disc;

/// How long the line is, in its own units: about a CSS pixel on a narrow phone.
pub const WIDTH: f64 = 328.0;
/// How high the row of one set-up is.
pub const ROW: f64 = 46.0;
/// Room above the first row.
pub const TOP: f64 = 8.0;
/// Room on either side.
pub const MARGIN: f64 = 8.0;
/// Marks of the line, in seconds, with what stands below.
pub const MARKS: [(f64, &str); 6] = [
    (30.0, "30 s"),
    (120.0, "2"),
    (300.0, "5"),
    (600.0, "10"),
    (1_800.0, "30 min"),
    (7_200.0, "2 h"),
];
/// The ends of the line, in seconds.
const ENDS: (f64, f64) = (15.0, 14_400.0);

/// Where a rest lies on the line.
#[must_use]
pub fn place_of(rest: Seconds) -> f64 {
    let (from, to) = ENDS;
    let share = libm::log(rest.get().clamp(from, to) / from) / libm::log(to / from);
    MARGIN + share * (WIDTH - 2.0 * MARGIN)
}

/// Where an end of what is known of the rest that it needs lies.
#[must_use]
pub fn end_of(place: Place) -> f64 {
    match place {
        Place::AtOnce => place_of(Seconds::new(ENDS.0)),
        Place::After(rest) => place_of(rest),
        Place::Beyond => place_of(Seconds::new(ENDS.1)),
    }
}

/// One shape an outcome: a disc, a ring, a cross, a dash, a wedge.
#[must_use]
pub fn mark(outcome: Tried, x: f64, y: f64) -> String {
    match outcome {
        Tried::Started | Tried::HummedThenStarted => disc((x, y), 6.0),
        Tried::HummedAndTripped => format!("M{:.1} {:.1}l11 11m0 -11l-11 11", x - 5.5, y - 5.5),
        Tried::Silent => format!("M{:.1} {y:.1}h10", x - 5.0),
        Tried::OutletTripped => format!("M{:.1} {:.1}l6 11l6 -11z", x - 6.0, y - 5.5),
    }
}

/// The broad band of rests from and to between which a row's middle lies, as a closed path.
#[must_use]
pub fn band(from: Seconds, to: Seconds, middle: f64) -> String {
    let (left, right) = (place_of(from), place_of(to));
    let (above, below) = (middle - 9.0, middle + 9.0);
    format!("M{left:.1} {above:.1}H{right:.1}V{below:.1}H{left:.1}Z")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn longer_rests_lie_further_right_and_none_outside_the_line() {
        let at = |seconds| place_of(Seconds::new(seconds));
        assert!(at(30.0) < at(300.0) && at(300.0) < at(3_600.0));
        assert!((at(1.0) - MARGIN).abs() < 1e-9);
        assert!((at(1e9) - (WIDTH - MARGIN)).abs() < 1e-9);
    }
}
