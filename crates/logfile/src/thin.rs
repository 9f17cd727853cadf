//! A long course in few points.

use quantity::{Celsius, Seconds};

use crate::ranking::order;
use crate::read::Point;

/// A course of at most so many points: for each of equal stretches of time the median temperature
/// at the mean time, beside the first, the last, the coldest and the warmest reading as they are. A
/// course that is short enough stays as it is. Points in rising order of time.
///
/// ```
/// use logfile::{Point, thin};
/// use quantity::{Celsius, Seconds};
/// let long: Vec<Point> = (0..50_000)
///     .map(|second| Point {
///         at: Seconds::new(f64::from(second)),
///         temperature: Celsius::new(if second == 777 { 9.0 } else { -18.0 }),
///     })
///     .collect();
/// let few = thin(&long, 2_000);
/// assert!(few.len() <= 2_000);
/// assert!(few.iter().any(|one| one.temperature == Celsius::new(9.0)));
/// ```
#[must_use]
pub fn thin(points: &[Point], most: usize) -> Vec<Point> {
    /// First, last, coldest and warmest.
    const KEPT: usize = 4;
    let (Some(first), Some(last)) = (points.first(), points.last()) else {
        return Vec::new();
    };
    if points.len() <= most {
        return points.to_vec();
    }
    let by_temperature =
        |one: &&Point, other: &&Point| one.temperature.get().total_cmp(&other.temperature.get());
    let extremes = [
        points.iter().min_by(by_temperature),
        points.iter().max_by(by_temperature),
    ];
    let mut thinned: Vec<Point> = extremes
        .into_iter()
        .flatten()
        .chain([first, last])
        .copied()
        .collect();
    let stretches = most.saturating_sub(KEPT);
    let span = (last.at - first.at).get();
    let stretch = |point: &Point| {
        let place = (point.at - first.at).get() / span * stretches as f64;
        (place as usize).min(stretches.saturating_sub(1))
    };
    if stretches > 0 {
        let groups = points.chunk_by(|one, other| stretch(one) == stretch(other));
        thinned.extend(groups.map(middle));
    }
    let times: Vec<f64> = thinned.iter().map(|point| point.at.get()).collect();
    let mut thinned: Vec<Point> = order(&times)
        .into_iter()
        .map(|place| thinned[place])
        .collect();
    thinned.dedup_by(|later, kept| later.at == kept.at);
    thinned.truncate(most);
    thinned
}

fn middle(group: &[Point]) -> Point {
    let from_first = |point: &Point| (point.at - group[0].at).get();
    let mean = group.iter().map(from_first).sum::<f64>() / group.len() as f64;
    let temperatures: Vec<f64> = group.iter().map(|point| point.temperature.get()).collect();
    let order = order(&temperatures);
    let half = order.len() / 2;
    let upper = temperatures[order[half]];
    let median = if order.len() % 2 == 1 {
        upper
    } else {
        0.5 * (temperatures[order[half - 1]] + upper)
    };
    Point {
        at: Seconds::new(group[0].at.get() + mean),
        temperature: Celsius::new(median),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ends_and_extremes_are_kept_and_one_slip_moves_nothing_else() {
        let value = |second: i32| match second {
            40_000 => 85.0,
            60_000 => -40.0,
            _ => -18.0 + 1e-3 * f64::from(second % 7),
        };
        let long: Vec<Point> = (0..100_000)
            .map(|second| Point {
                at: Seconds::new(f64::from(second)),
                temperature: Celsius::new(value(second)),
            })
            .collect();
        let few = thin(&long, 2_000);
        assert!(few.len() <= 2_000 && few.len() > 1_990, "{}", few.len());
        assert_eq!((few[0], few[few.len() - 1]), (long[0], long[99_999]));
        let far = few
            .iter()
            .filter(|one| (one.temperature.get() + 18.0).abs() > 0.1)
            .count();
        assert_eq!(far, 2);
        assert!(few.windows(2).all(|pair| pair[0].at < pair[1].at));
        assert_eq!(thin(&long[..100], 2_000), long[..100]);
        assert!(thin(&[], 10).is_empty());
        assert!(thin(&long, 3).len() <= 3);
    }
}
