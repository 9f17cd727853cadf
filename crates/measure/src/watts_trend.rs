//! Where a machine's watts are going.

use quantity::{Ratio, Seconds, Sources, Uncertain, Watts};

/// One reading of watts.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WattsAt {
    /// When, from any beginning.
    pub at: Seconds,
    /// What the meter showed.
    pub watts: Watts,
}

/// Which way they go.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Direction {
    /// Down, beyond what the meter's scatter explains.
    Falling,
    /// Up, beyond it.
    Rising,
    /// Within [`STEADY`] of their mean over all of the time.
    Steady,
    /// The readings are too few, too close or too rough to tell.
    CannotTell,
}

/// Watts along a straight line.
#[derive(Debug, Clone, PartialEq)]
pub struct WattsTrend {
    /// Their mean.
    pub mean: Watts,
    /// How much they change from the first reading to the last, by the line.
    pub change: Uncertain<Watts>,
    /// Which way that is.
    pub direction: Direction,
}

/// A change of less than this share of the mean is none (judgement).
pub const STEADY: Ratio = Ratio::new(0.1);

/// The straight line through readings of watts by least squares. `scatter` is the standard
/// uncertainty of one reading against another of the same meter; what the meter gets wrong alike
/// in all of them changes no trend. Readings in any order; those that are no numbers are left out.
///
/// `None` for fewer than two readings, readings all at one moment, or a scatter that is negative
/// or no number.
///
/// ```
/// use measure::{Direction, WattsAt, watts_trend};
/// use quantity::{Seconds, Watts};
/// let readings = [(0.0, 142.0), (600.0, 121.0), (1200.0, 98.0), (1800.0, 83.0)]
///     .map(|(at, watts)| WattsAt { at: Seconds::new(at), watts: Watts::new(watts) });
/// let trend = watts_trend(&readings, Watts::new(2.0)).unwrap();
/// assert_eq!(trend.direction, Direction::Falling);
/// assert!((trend.change.value().get() + 60.0).abs() < 0.5);
/// ```
#[must_use]
pub fn watts_trend(readings: &[WattsAt], scatter: Watts) -> Option<WattsTrend> {
    let usable: Vec<(f64, f64)> = readings
        .iter()
        .map(|one| (one.at.get(), one.watts.get()))
        .filter(|(at, watts)| at.is_finite() && watts.is_finite())
        .collect();
    let first = usable.iter().map(|one| one.0).fold(f64::INFINITY, f64::min);
    let last = usable
        .iter()
        .map(|one| one.0)
        .fold(f64::NEG_INFINITY, f64::max);
    // No reading at all leaves the last before the first.
    if !(last > first && scatter.get() >= 0.0) {
        return None;
    }
    let count = usable.len() as f64;
    let mean_at = usable.iter().map(|one| one.0).sum::<f64>() / count;
    let mean = usable.iter().map(|one| one.1).sum::<f64>() / count;
    let (mut along, mut both) = (0.0, 0.0);
    for (at, watts) in &usable {
        along += (at - mean_at) * (at - mean_at);
        both += (at - mean_at) * (watts - mean);
    }
    let span = last - first;
    let standard = scatter.get() * span / libm::sqrt(along);
    let change = Uncertain::exact(Watts::new(both / along * span))
        .with(Sources::default().fresh(), Watts::new(standard));
    Some(WattsTrend {
        mean: Watts::new(mean),
        direction: direction(&change, mean.abs() * STEADY.get()),
        change,
    })
}

fn direction(change: &Uncertain<Watts>, steady: f64) -> Direction {
    let (middle, spread) = (change.value().get(), change.expanded().get());
    if middle.abs() + spread <= steady {
        Direction::Steady
    } else if middle.abs() <= spread.max(steady) {
        Direction::CannotTell
    } else if middle < 0.0 {
        Direction::Falling
    } else {
        Direction::Rising
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn trend(readings: &[(f64, f64)], scatter: f64) -> Option<WattsTrend> {
        let readings: Vec<WattsAt> = readings
            .iter()
            .map(|&(at, watts)| WattsAt {
                at: Seconds::new(at),
                watts: Watts::new(watts),
            })
            .collect();
        watts_trend(&readings, Watts::new(scatter))
    }

    #[test]
    fn one_moment_or_one_reading_has_no_trend() {
        assert_eq!(trend(&[], 1.0), None);
        assert_eq!(trend(&[(0.0, 90.0)], 1.0), None);
        assert_eq!(trend(&[(5.0, 90.0), (5.0, 95.0)], 1.0), None);
        assert_eq!(trend(&[(0.0, 90.0), (f64::NAN, 95.0)], 1.0), None);
        assert_eq!(trend(&[(0.0, 90.0), (9.0, 95.0)], f64::NAN), None);
    }

    #[test]
    fn a_small_change_is_steady_only_where_the_meter_bears_it_out() {
        let readings = [(0.0, 100.0), (600.0, 101.0), (1200.0, 99.0)];
        assert_eq!(trend(&readings, 0.5).unwrap().direction, Direction::Steady);
        let rough = trend(&readings, 10.0).unwrap().direction;
        assert_eq!(rough, Direction::CannotTell);
    }

    proptest! {
        #[test]
        fn readings_on_a_line_give_that_line(
            slope in -0.05..0.05f64, level in 50.0..200.0f64, start in 0.0..1e6f64,
        ) {
            let readings = [0.0, 100.0, 700.0, 900.0].map(|at| (start + at, level + slope * at));
            let found = trend(&readings, 1.0).unwrap();
            prop_assert!((found.change.value().get() - 900.0 * slope).abs() < 1e-6);
        }

        #[test]
        fn with_the_sign_turned_the_direction_turns(change in 15.0..60.0f64) {
            let up = [(0.0, 100.0), (600.0, 100.0 + change)];
            let down = [(0.0, 100.0 + change), (600.0, 100.0)];
            prop_assert_eq!(trend(&up, 1.0).unwrap().direction, Direction::Rising);
            prop_assert_eq!(trend(&down, 1.0).unwrap().direction, Direction::Falling);
        }
    }
}
