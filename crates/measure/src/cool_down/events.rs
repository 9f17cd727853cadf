//! Stretches of a log that are no part of the course: a defrost, an open door, a slip.
//!
//! A course may fall as it likes, halt and speed up: only what rises quickly and comes back says of
//! itself that it was no part of it.

use super::thinned::{Thinned, median};

/// Rising by so many kelvins (judgement: more than a control lets the air swing)…
const RISE: f64 = 5.0;
/// … within so many seconds is an event,
const WITHIN: f64 = 3600.0;
/// which is over when this share of the rise is left (judgement: it goes on cooling less what the
/// event cost it).
const LEFT: f64 = 0.15;
/// One that isn't over at the end of the log still counts as one for so long, in seconds: a defrost
/// and getting cold again. After that it is warm.
const GOING_ON: f64 = 7200.0;
/// A single reading farther than this from the middle of its neighbours is a slip, in kelvins
/// (judgement).
const SLIP: f64 = 3.0;
/// Where more than this share would have to go, it is no event but the course (judgement): all are
/// kept.
const MOST_SHARE: f64 = 0.3;

/// For each point whether it is part of an event.
pub(super) fn events(log: &Thinned) -> Vec<bool> {
    let mut marked = slips(&log.temperature);
    let mut place = 0;
    while place < log.at.len() {
        match bump(log, &marked, place) {
            Some(end) => {
                marked[place + 1..end].fill(true);
                place = end;
            }
            None => place += 1,
        }
    }
    let count = marked.iter().filter(|one| **one).count();
    if count as f64 > MOST_SHARE * marked.len() as f64 {
        marked.fill(false);
    }
    marked
}

/// Readings that neither those before nor those after bear out.
fn slips(temperature: &[f64]) -> Vec<bool> {
    let slip = |place: usize| {
        let around = place.saturating_sub(2)..(place + 3).min(temperature.len());
        let mut others: Vec<f64> = around
            .filter(|one| *one != place)
            .map(|one| temperature[one])
            .collect();
        let (least, most) = others
            .iter()
            .fold((f64::INFINITY, f64::NEG_INFINITY), |(least, most), one| {
                (least.min(*one), most.max(*one))
            });
        let off = (temperature[place] - median(&mut others)).abs();
        off > SLIP && !(least - SLIP..=most + SLIP).contains(&temperature[place])
    };
    // The first and the last have neighbours to one side only, and a course is steep there.
    let inner = 1..temperature.len().saturating_sub(1);
    (0..temperature.len())
        .map(|place| inner.contains(&place) && slip(place))
        .collect()
}

/// Where the rise that begins right after a point is over: the first point that counts again. Nothing
/// where none begins there.
fn bump(log: &Thinned, marked: &[bool], place: usize) -> Option<usize> {
    let (start, level) = (log.at[place], log.temperature[place]);
    let rises = log
        .temperature
        .get(place + 1)
        .is_some_and(|next| *next > level);
    if marked[place] || !rises {
        return None;
    }
    let mut top = level;
    let readings = log.at.iter().zip(&log.temperature).zip(marked);
    for (later, ((&at, &now), is_slip)) in readings.enumerate().skip(place + 1) {
        if !is_slip {
            top = top.max(now);
        }
        let is_late = at - start > WITHIN;
        if is_late && top - level < RISE {
            return None;
        }
        if now <= level + LEFT * (top - level) {
            return (top - level >= RISE).then_some(later);
        }
    }
    let lasts = log.last() - start;
    (top - level >= RISE && lasts <= GOING_ON).then_some(log.at.len())
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A freezer from 22 to −24 °C with 2.5 h, each two minutes over six hours.
    fn course() -> Thinned {
        let at: Vec<f64> = (0..180).map(|place| f64::from(place) * 120.0).collect();
        let temperature = at
            .iter()
            .map(|&at| -24.0 + 46.0 * libm::exp(-at / 9000.0))
            .collect();
        Thinned { at, temperature }
    }

    fn marked(log: &Thinned) -> Vec<usize> {
        let found = events(log);
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
    fn a_defrost_counts_while_it_goes_on_and_is_warmth_when_it_does_not_end() {
        let warm = |from: usize| {
            let mut log = course();
            for temperature in &mut log.temperature[from..] {
                *temperature += 12.0;
            }
            marked(&log)
        };
        assert_eq!(warm(150), (150..180).collect::<Vec<_>>());
        assert!(warm(110).is_empty());
    }

    #[test]
    fn a_slip_goes_and_a_step_stays() {
        let mut log = course();
        log.temperature[60] = 60.0;
        for temperature in &mut log.temperature[90..] {
            *temperature -= 6.0;
        }
        assert_eq!(marked(&log), [60]);
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
