//! Readings that jump: one that stands out, a probe that fell out, one that was put back.

use crate::notes::{MOST_LISTED, SeriesNote};
use crate::read::Point;

/// Within ten minutes at most, air in a closed cabinet doesn't change by so many kelvins, defrosts
/// included (judgement); through an open door it may, so that nothing is taken out for it.
const JUMP: f64 = 8.0;
const WITHIN: f64 = 600.0;
/// Readings that are looked at to see whether it stayed.
const STAYS: usize = 3;

/// What jumps in a column, in order.
pub(crate) fn jumps(points: &[Point]) -> Vec<SeriesNote> {
    let mut notes = Vec::new();
    let mut more = 0;
    let mut place = 1;
    while place < points.len() {
        let (before, here) = (points[place - 1], points[place]);
        let step = (here.temperature - before.temperature).get();
        if step.abs() < JUMP || (here.at - before.at).get() > WITHIN {
            place += 1;
            continue;
        }
        let comes_back = points.get(place + 1).is_some_and(|after| {
            let back = (after.temperature - before.temperature).get();
            back.abs() < JUMP / 2.0 && (after.at - here.at).get() <= WITHIN
        });
        let (note, passed) = if comes_back {
            (spike(here), 2)
        } else {
            (jump(points, place, step), 1)
        };
        match note {
            Some(note) if notes.len() < MOST_LISTED => notes.push(note),
            Some(_) => more += 1,
            None => {}
        }
        place += passed;
    }
    if more > 0 {
        notes.push(SeriesNote::MoreJumps { jumps: more });
    }
    notes
}

const fn spike(here: Point) -> Option<SeriesNote> {
    let (at, temperature) = (here.at, here.temperature);
    Some(SeriesNote::Spike { at, temperature })
}

/// A jump that stays, as far as the next readings tell.
fn jump(points: &[Point], place: usize, step: f64) -> Option<SeriesNote> {
    let (at, from, to) = (
        points[place].at,
        points[place - 1].temperature,
        points[place].temperature,
    );
    let next = points[place..].iter().take(STAYS);
    let stays = next
        .clone()
        .all(|one| ((one.temperature - from).get()) * step.signum() >= JUMP / 2.0);
    stays.then_some(if step > 0.0 {
        SeriesNote::FellOut { at, from, to }
    } else {
        SeriesNote::PutBack { at, from, to }
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use quantity::{Celsius, Seconds};

    fn point(minute: f64, celsius: f64) -> Point {
        Point {
            at: Seconds::new(minute * 60.0),
            temperature: Celsius::new(celsius),
        }
    }

    #[test]
    fn a_probe_that_fell_out_and_was_put_back_is_told() {
        let values = [-18.0, -18.1, 3.0, 9.0, 14.0, 16.0, -2.0, -12.0, -16.0];
        let course: Vec<Point> = (0..)
            .map(f64::from)
            .zip(values)
            .map(|(minute, value)| point(minute, value))
            .collect();
        let notes = jumps(&course);
        assert!(
            matches!(notes[0], SeriesNote::FellOut { from, .. } if from == Celsius::new(-18.1)),
            "{notes:?}"
        );
        assert!(
            notes
                .iter()
                .any(|note| matches!(note, SeriesNote::PutBack { .. }))
        );
    }

    #[test]
    fn one_reading_that_stands_out_is_a_spike_and_slow_change_is_nothing() {
        let course = [
            point(0.0, -18.0),
            point(1.0, 85.0),
            point(2.0, -18.0),
            point(3.0, -18.1),
        ];
        let (at, temperature) = (Seconds::new(60.0), Celsius::new(85.0));
        assert_eq!(jumps(&course), [SeriesNote::Spike { at, temperature }]);
        let slow: Vec<Point> = (0..20)
            .map(|place| point(f64::from(place) * 30.0, 20.0 - 9.0 * f64::from(place % 2)))
            .collect();
        assert!(jumps(&slow).is_empty());
    }
}
