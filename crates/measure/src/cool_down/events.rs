//! Stretches of a log that are no part of the course: a defrost, an open door, a slip.
//!
//! The curve with the least sum of absolute differences passes them by, where least squares would
//! be drawn to them. What lies far from it against the spread of the rest is left out, with its
//! flanks. What is left is fitted as the model says.

use super::evidence::{columns, share_left};
use super::prior::{Beforehand, Normal};
use super::symmetric::{Symmetric, dot};
use super::thinned::{Thinned, median};

/// From so many robust standard deviations on, a point is part of an event (judgement: the
/// differences hang together, so that three would leave out what belongs to the course).
const FAR: f64 = 5.0;
/// Its neighbours on the same side belong to it from here on (judgement).
const FLANK: f64 = 2.5;
/// Below this nothing is far: the steps of a plain thermometer (judgement).
const LEAST_SCALE: f64 = 0.2;
/// Where more than this share would have to go, the curve is wrong and not the readings
/// (judgement): all are kept.
const MOST_SHARE: f64 = 0.3;

/// For each point whether it is part of an event.
pub(super) fn events(log: &Thinned, beforehand: &Beforehand) -> Vec<bool> {
    let left = differences(log, beforehand);
    let mut sizes: Vec<f64> = left.iter().map(|one| one.abs()).collect();
    // The median of absolute differences of a normal distribution is 0.6745 of its deviation.
    let scale = (median(&mut sizes) / 0.6745).max(LEAST_SCALE);
    let mut marked: Vec<bool> = left.iter().map(|one| one.abs() > FAR * scale).collect();
    let belongs = |place: usize, other: usize| {
        left[place].abs() > FLANK * scale && left[place] * left[other] > 0.0
    };
    for place in 1..left.len() {
        marked[place] |= marked[place - 1] && belongs(place, place - 1);
    }
    for place in (1..left.len()).rev() {
        marked[place - 1] |= marked[place] && belongs(place - 1, place);
    }
    let count = marked.iter().filter(|one| **one).count();
    if count as f64 > MOST_SHARE * left.len() as f64 {
        marked.fill(false);
    }
    marked
}

/// What lies between the readings and the curve that fits them best by absolute differences, over
/// a grid of time constants and delays that is laid once roughly and once finely.
fn differences(log: &Thinned, beforehand: &Beforehand) -> Vec<f64> {
    let mut best = Fit::worst();
    let mut middle = [0.0, 0.0];
    for (reach, step) in [([5, 3], [0.5, 0.8]), ([3, 2], [0.12, 0.25])] {
        let start = middle;
        for row in -reach[0]..=reach[0] {
            for column in -reach[1]..=reach[1] {
                let place = [
                    start[0] + f64::from(row) * step[0],
                    start[1] + f64::from(column) * step[1],
                ];
                let at =
                    |normal: Normal, away: f64| libm::exp(normal.mean + normal.deviation * away);
                let time_constant = at(beforehand.log_time_constant, place[0]);
                let fit = Fit::of(log, time_constant, at(beforehand.log_delay, place[1]));
                if fit.sum < best.sum {
                    best = fit;
                    middle = place;
                }
            }
        }
    }
    best.left
}

/// A curve's differences from the readings.
struct Fit {
    sum: f64,
    left: Vec<f64>,
}

impl Fit {
    fn worst() -> Self {
        Self {
            sum: f64::INFINITY,
            left: Vec::new(),
        }
    }

    /// The mixture of level, slow and quick part whose absolute differences are least: by least squares,
    /// weighed again with one over the difference (E. J. Schlossmacher, J. Am. Stat. Assoc. 68
    /// (1973) 857, from memory).
    fn of(log: &Thinned, time_constant: f64, delay: f64) -> Self {
        const ROUNDS: usize = 8;
        const NEAR: f64 = 0.05;
        /// Where the curve hardly changes its parts can't be told apart; this keeps them small.
        const RIDGE: f64 = 1e-3;
        let shares: Vec<[f64; 3]> = log
            .at
            .iter()
            .map(|&at| columns(share_left(at, time_constant, delay)))
            .collect();
        let mut left = log.temperature.clone();
        let mut weights = vec![1.0; left.len()];
        for _ in 0..ROUNDS {
            let mut normal = Symmetric::diagonal([RIDGE; 3]);
            let mut with_readings = [0.0; 3];
            for ((share, weight), temperature) in shares.iter().zip(&weights).zip(&log.temperature)
            {
                normal.add_square(*share, *weight);
                for (sum, one) in with_readings.iter_mut().zip(share) {
                    *sum += weight * one * temperature;
                }
            }
            let found = normal.inverse().0.apply(with_readings);
            for place in 0..left.len() {
                left[place] = log.temperature[place] - dot(shares[place], found);
                weights[place] = 1.0 / left[place].abs().max(NEAR);
            }
        }
        Self {
            sum: left.iter().map(|one| one.abs()).sum(),
            left,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::super::prior::CabinetKind;
    use super::*;

    /// A freezer from 22 to −24 °C with 2.5 h and five minutes, each two minutes over six hours.
    fn course() -> Thinned {
        let at: Vec<f64> = (0..180).map(|place| f64::from(place) * 120.0).collect();
        let temperature = at
            .iter()
            .map(|&at| -24.0 + 46.0 * share_left(at, 9000.0, 300.0))
            .collect();
        Thinned { at, temperature }
    }

    fn marked(log: &Thinned) -> Vec<usize> {
        let found = events(log, &Beforehand::of(&CabinetKind::ChestFreezer.prior()));
        (0..found.len()).filter(|place| found[*place]).collect()
    }

    #[test]
    fn a_defrost_is_found_with_its_flanks_and_nothing_else() {
        let mut log = course();
        for place in 100..112 {
            log.temperature[place] += 8.0 * (1.0 - (f64::from(place as u8) - 105.5).abs() / 7.0);
        }
        let found = marked(&log);
        assert!(
            found.iter().all(|place| (100..112).contains(place)),
            "{found:?}"
        );
        assert!(found.len() >= 10, "{found:?}");
    }

    #[test]
    fn a_control_that_cycles_is_part_of_the_course() {
        let mut log = course();
        for (place, temperature) in log.temperature.iter_mut().enumerate() {
            *temperature += if place / 8 % 2 == 0 { 1.5 } else { -1.5 };
        }
        assert!(marked(&log).is_empty());
    }

    #[test]
    fn where_most_would_have_to_go_nothing_goes() {
        let mut log = course();
        for place in 60..180 {
            log.temperature[place] = 30.0 + f64::from(place as u8 % 7) * 9.0;
        }
        assert!(marked(&log).len() < 54);
    }
}
