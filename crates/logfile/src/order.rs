//! Rows in the order of time: newest first, an hour changed, shuffled, twice the same, with gaps.

use quantity::Seconds;

use crate::calendar::{is_sunday, month_of};
use crate::notes::{MOST_LISTED, Note};
use crate::ranking::{middle, order};

const HOUR: f64 = 3600.0;
const DAY: f64 = 86_400.0;
/// So many times the usual step without a row is a gap.
const GAP: f64 = 3.0;

/// Rows with their values, a column after the other; NaN where there is none.
#[derive(Debug, Default, Clone, PartialEq)]
pub(crate) struct Rows {
    /// Seconds since 1970-01-01T00:00:00Z.
    pub(crate) at: Vec<f64>,
    pub(crate) columns: Vec<Vec<f64>>,
}

impl Rows {
    fn reverse(&mut self) {
        self.at.reverse();
        self.columns.iter_mut().for_each(|column| column.reverse());
    }

    fn arranged(&self, order: &[usize]) -> Self {
        let pick = |values: &[f64]| order.iter().map(|place| values[*place]).collect();
        Self {
            at: pick(&self.at),
            columns: self.columns.iter().map(|column| pick(column)).collect(),
        }
    }
}

/// The rows in order, with what was done to them. `offset` is that of local times in seconds, none
/// where times are not those of a clock on a wall: only such a clock is changed twice a year.
pub(crate) fn in_order(mut rows: Rows, offset: Option<f64>) -> (Rows, Vec<Note>) {
    let mut notes = Vec::new();
    let falls = rows.at.windows(2).filter(|pair| pair[1] < pair[0]).count();
    let rises = rows.at.windows(2).filter(|pair| pair[1] > pair[0]).count();
    if falls > rises {
        rows.reverse();
        notes.push(Note::NewestFirst);
    }
    if let Some(offset) = offset {
        mend_clock(&mut rows.at, offset, &mut notes);
    }
    let late = rows.at.windows(2).filter(|pair| pair[1] < pair[0]).count();
    if late > 0 {
        let order = order(&rows.at);
        rows = rows.arranged(&order);
        notes.push(Note::OutOfOrder { rows: late });
    }
    let (rows, merged) = merged(&rows);
    if merged > 0 {
        notes.push(Note::SameTime { rows: merged });
    }
    gaps(&rows.at, &mut notes);
    (rows, notes)
}

/// The usual step: the median of all that go on. Zero where none does.
pub(crate) fn usual_step(at: &[f64]) -> f64 {
    let steps = at.windows(2).map(|pair| pair[1] - pair[0]);
    let on: Vec<f64> = steps.filter(|step| *step > 0.0).collect();
    middle(&on).unwrap_or(0.0)
}

/// A clock is set back or forward by an hour, in the night to a Sunday of March, April, September,
/// October or November (rules of summer time in most countries, from memory). Back shows as time that
/// comes twice; forward as an hour without rows just then, at a step too short for that.
fn mend_clock(at: &mut [f64], offset: f64, notes: &mut Vec<Note>) {
    let step = usual_step(at);
    if !(step > 0.0 && step <= HOUR) {
        return;
    }
    let tolerance = (0.5 * step).max(2.0);
    let mut moved = 0.0;
    for place in 1..at.len() {
        at[place] += moved;
        let found = at[place] - at[place - 1];
        let is_near = |wanted: f64| (found - wanted).abs() <= tolerance;
        // What the clock showed before it was changed.
        let local = at[place - 1] - moved + offset;
        let is_then = may_change(local);
        if is_near(step - HOUR) && is_then && found <= 0.0 {
            moved += HOUR;
            at[place] += HOUR;
            notes.push(Note::ClockBack {
                at: Seconds::new(at[place]),
            });
        } else if is_near(step + HOUR) && is_then && step <= HOUR / 2.0 {
            moved -= HOUR;
            at[place] -= HOUR;
            notes.push(Note::ClockForward {
                at: Seconds::new(at[place]),
            });
        }
    }
}

/// Whether clocks may be changed within the next step: in the first four hours of such a Sunday, or
/// in the last of the Saturday.
fn may_change(local: f64) -> bool {
    let days = libm::floor((local + HOUR) / DAY) as i32;
    let hour = (local + HOUR - f64::from(days) * DAY) / HOUR;
    is_sunday(days) && hour <= 5.0 && matches!(month_of(days), 3 | 4 | 9 | 10 | 11)
}

/// Rows of one time become one, with the mean of their values.
fn merged(rows: &Rows) -> (Rows, usize) {
    let mut out = Rows {
        at: Vec::with_capacity(rows.at.len()),
        columns: rows
            .columns
            .iter()
            .map(|column| Vec::with_capacity(column.len()))
            .collect(),
    };
    let mut start = 0;
    for group in rows.at.chunk_by(|one, other| one.total_cmp(other).is_eq()) {
        out.at.push(group[0]);
        for (values, into) in rows.columns.iter().zip(&mut out.columns) {
            into.push(mean(&values[start..start + group.len()]));
        }
        start += group.len();
    }
    let less = rows.at.len() - out.at.len();
    (out, less)
}

/// The mean of what is there; NaN of nothing.
fn mean(values: &[f64]) -> f64 {
    if let [one] = values {
        return *one;
    }
    let there = || values.iter().filter(|value| !value.is_nan());
    there().sum::<f64>() / there().count() as f64
}

fn gaps(at: &[f64], notes: &mut Vec<Note>) {
    let longest = GAP * usual_step(at);
    let found = at.windows(2).filter(|pair| pair[1] - pair[0] > longest);
    let mut gaps = 0;
    for pair in found {
        gaps += 1;
        if gaps <= MOST_LISTED {
            let [from, to] = [pair[0], pair[1]].map(Seconds::new);
            notes.push(Note::Gap { from, to });
        }
    }
    if gaps > MOST_LISTED {
        notes.push(Note::MoreGaps {
            gaps: gaps - MOST_LISTED,
        });
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn rows(at: &[f64]) -> Rows {
        Rows {
            at: at.to_vec(),
            columns: vec![(0..at.len()).map(|place| place as f64).collect()],
        }
    }

    /// 2024-10-27T02:55 and 2024-03-31T01:55, both on clocks of central Europe, as local seconds.
    const OCTOBER: f64 = 1_729_997_700.0;
    const MARCH: f64 = 1_711_850_100.0;

    #[test]
    fn newest_first_is_turned_round() {
        let (found, notes) = in_order(rows(&[300.0, 200.0, 100.0]), None);
        assert_eq!(
            (found.at, found.columns[0].clone()),
            (vec![100.0, 200.0, 300.0], vec![2.0, 1.0, 0.0])
        );
        assert_eq!(notes, [Note::NewestFirst]);
    }

    #[test]
    fn an_hour_back_in_an_autumn_night_is_mended_and_told() {
        let local = |steps: &[f64]| -> Vec<f64> {
            steps.iter().map(|step| OCTOBER + step * 300.0).collect()
        };
        // 2:50, 2:55, then 2:00 once more.
        let shown = local(&[-1.0, 0.0, -11.0, -10.0, -9.0]);
        let (found, notes) = in_order(rows(&shown), Some(0.0));
        assert_eq!(found.at, local(&[-1.0, 0.0, 1.0, 2.0, 3.0]));
        assert_eq!(notes.len(), 1);
        assert!(matches!(notes[0], Note::ClockBack { .. }));
        // On a Tuesday it is a shuffled file.
        let tuesday: Vec<f64> = shown.iter().map(|at| at + 2.0 * DAY).collect();
        let (_, notes) = in_order(rows(&tuesday), Some(0.0));
        assert!(matches!(notes[0], Note::OutOfOrder { .. }), "{notes:?}");
        // And times of UTC are never mended.
        assert!(matches!(
            in_order(rows(&shown), None).1[0],
            Note::OutOfOrder { .. }
        ));
    }

    #[test]
    fn an_hour_forward_in_a_spring_night_is_mended_and_told() {
        let local =
            |steps: &[f64]| -> Vec<f64> { steps.iter().map(|step| MARCH + step * 300.0).collect() };
        let (found, notes) = in_order(rows(&local(&[-2.0, -1.0, 0.0, 13.0, 14.0])), Some(0.0));
        assert_eq!(found.at, local(&[-2.0, -1.0, 0.0, 1.0, 2.0]));
        assert!(matches!(notes[..], [Note::ClockForward { .. }]));
    }

    #[test]
    fn shuffled_rows_are_sorted_and_equal_times_merged() {
        let (found, notes) = in_order(rows(&[0.0, 100.0, 300.0, 200.0, 300.0, 400.0]), None);
        assert_eq!(found.at, [0.0, 100.0, 200.0, 300.0, 400.0]);
        assert_eq!(found.columns[0], [0.0, 1.0, 3.0, 3.0, 5.0]);
        assert_eq!(
            notes,
            [Note::OutOfOrder { rows: 1 }, Note::SameTime { rows: 1 }]
        );
    }

    #[test]
    fn gaps_are_told() {
        let (_, notes) = in_order(rows(&[0.0, 60.0, 120.0, 600.0, 660.0]), None);
        let (from, to) = (Seconds::new(120.0), Seconds::new(600.0));
        assert_eq!(notes, [Note::Gap { from, to }]);
    }
}
