//! Which number of a date is the day, how hours are counted, and whether times say their zone.

use crate::LogError;
use crate::in_turn::InTurn;
use crate::layout::{Clock, When};
use crate::question::Question;
use crate::ranking::middle;
use crate::stamp::{DateOrder, DateParts, Half, TimeParts};
use crate::structure::Structure;
use crate::table::Table;
use crate::when::Found;

const DAY: f64 = 86_400.0;
/// A log with a reading every six hours or less goes on after midnight as before it.
const LONGEST_STEP: f64 = DAY / 4.0;

/// One row's date and time.
struct Row {
    date: DateParts,
    time: Option<TimeParts>,
    has_offset: bool,
}

/// How rows with dates say when.
pub(crate) fn found(
    table: &Table,
    structure: &Structure,
    date: usize,
    time: Option<usize>,
) -> Result<Found, LogError> {
    let in_log = structure.first..table.rows();
    let mut columns = (InTurn::default(), InTurn::default());
    let rows: Vec<Row> = in_log
        .filter_map(|row| read(table, row, (date, time), &mut columns))
        .collect();
    if rows.is_empty() {
        return Err(LogError::NoTimes);
    }
    let sample = table.cell(structure.first, date).to_owned();
    let mut questions = Vec::new();
    let candidates = orders(&rows);
    let order = candidates
        .first()
        .copied()
        .unwrap_or(DateOrder::DayMonthYear);
    if candidates.len() > 1 {
        let sample = sample.clone();
        questions.push(Question::DateOrder { sample, candidates });
    }
    let times: Vec<TimeParts> = rows.iter().filter_map(|row| row.time).collect();
    let is_same_day = |at: usize| rows[at].date == rows[at + 1].date;
    let clocks = clock(&times, is_same_day, rows.iter().any(is_open));
    let clock = clocks.first().copied().unwrap_or(Clock::TwentyFour);
    if clocks.len() > 1 {
        let sample = table.cell(structure.first, time.unwrap_or(date)).to_owned();
        let candidates = clocks;
        questions.push(Question::Clock { sample, candidates });
    }
    if !rows.iter().all(|row| row.has_offset) {
        let time = time.map_or("", |column| table.cell(structure.first, column));
        let sample = [&sample, time].join(" ").trim().to_owned();
        questions.push(Question::Zone { sample });
    }
    Ok((
        When::Calendar {
            date,
            time,
            order,
            clock,
        },
        questions,
    ))
}

/// One row. A function of its own, which a browser can make fast while the rows before it are read.
#[inline(never)]
fn read<'a>(
    table: &'a Table,
    row: usize,
    (date, time): (usize, Option<usize>),
    (dates, times): &mut (InTurn<'a>, InTurn<'a>),
) -> Option<Row> {
    let found = dates.written(table.cell(row, date))?;
    let other = match time {
        Some(column) => times.written(table.cell(row, column))?,
        None => found,
    };
    Some(Row {
        date: found.date?,
        time: other.time,
        has_offset: other.offset.is_some(),
    })
}

/// Whether it can't be told by itself which number of its date is the day.
const fn is_open(row: &Row) -> bool {
    matches!(row.date, DateParts::Open { .. })
}

/// The orders that are left: those under which the most dates are dates, and of these the one under
/// which the log goes on after midnight as before it.
fn orders(rows: &[Row]) -> Vec<DateOrder> {
    // What can be read in one way only is the same day under all of them.
    if !rows.iter().any(is_open) {
        return vec![DateOrder::ALL[0]];
    }
    let days: Vec<[Option<i32>; 3]> = rows
        .iter()
        .map(|row| DateOrder::ALL.map(|order| row.date.days(order)))
        .collect();
    let valid = [0, 1, 2].map(|order| days.iter().filter(|row| row[order].is_some()).count());
    let most = valid.into_iter().max().unwrap_or(0);
    let left: Vec<usize> = (0..3).filter(|order| valid[*order] == most).collect();
    let regular = regular(rows, &days);
    let goes_on: Vec<usize> = left
        .iter()
        .copied()
        .filter(|order| regular[*order])
        .collect();
    let left = if goes_on.is_empty() { left } else { goes_on };
    // 05/05/2024 is the same day either way.
    let is_same = |order: &usize| days.iter().all(|row| row[*order] == row[left[0]]);
    let count = if left.iter().all(is_same) {
        1
    } else {
        left.len()
    };
    left.into_iter()
        .take(count)
        .map(|order| DateOrder::ALL[order])
        .collect()
}

/// Under which orders a new date comes as soon after the row before as rows of one date do after
/// each other, at least once.
fn regular(rows: &[Row], days: &[[Option<i32>; 3]]) -> [bool; 3] {
    let of_day = |row: &Row| row.time.map_or(0.0, second_of_day);
    let pairs = || rows.windows(2).zip(days.windows(2));
    let same = pairs().filter(|(rows, _)| rows[0].date == rows[1].date);
    let steps: Vec<f64> = same
        .map(|(rows, _)| (of_day(&rows[1]) - of_day(&rows[0])).abs())
        .filter(|step| *step > 0.0)
        .collect();
    let Some(typical) = middle(&steps) else {
        return [false; 3];
    };
    if typical > LONGEST_STEP {
        return [false; 3];
    }
    [0, 1, 2].map(|order| {
        pairs()
            .filter(|(rows, _)| rows[0].date != rows[1].date)
            .any(|(rows, days)| {
                let (Some(one), Some(other)) = (days[0][order], days[1][order]) else {
                    return false;
                };
                let step = f64::from(other - one) * DAY + of_day(&rows[1]) - of_day(&rows[0]);
                step.abs() <= 2.0 * typical
            })
    })
}

/// Seconds since midnight, the half of the day as far as it is said.
pub(crate) fn second_of_day(time: TimeParts) -> f64 {
    let hour = match time.half {
        Some(Half::Morning) => time.first % 12,
        Some(Half::Afternoon) => time.first % 12 + 12,
        None => time.first,
    };
    f64::from(hour) * 3600.0 + f64::from(time.second) * 60.0 + time.third.unwrap_or(0.0)
}

/// How hours may be counted. Where none is 0 or beyond 12 and nothing says which half of the day, a
/// fall of eleven hours within a day proves a clock of twelve; without one, dates or times that say
/// nothing themselves of the order (`is_open`) leave open which clock it is.
pub(crate) fn clock(
    times: &[TimeParts],
    is_same_day: impl Fn(usize) -> bool,
    is_open: bool,
) -> Vec<Clock> {
    let of_twelve = |time: &TimeParts| time.half.is_none() && (1..=12).contains(&time.first);
    if times.is_empty() || !times.iter().all(of_twelve) {
        return vec![Clock::TwentyFour];
    }
    let falls = |at: usize| {
        let fall = second_of_day(times[at]) - second_of_day(times[at + 1]);
        fall >= 11.0 * 3600.0 && is_same_day(at)
    };
    let twelve = [Half::Morning, Half::Afternoon].map(Clock::Twelve);
    if (0..times.len() - 1).any(falls) {
        twelve.into()
    } else if is_open {
        [&[Clock::TwentyFour][..], &twelve].concat()
    } else {
        vec![Clock::TwentyFour]
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scan::written;

    fn rows(cells: &[&str]) -> Vec<Row> {
        let row = |cell: &&str| {
            let found = written(cell)?;
            Some(Row {
                date: found.date?,
                time: found.time,
                has_offset: false,
            })
        };
        cells.iter().filter_map(row).collect()
    }

    #[test]
    fn a_day_beyond_twelve_tells_the_order() {
        assert_eq!(
            orders(&rows(&["05/03/2024 8:00", "13/03/2024 8:00"])),
            [DateOrder::DayMonthYear]
        );
        assert_eq!(
            orders(&rows(&["03/05/2024 8:00", "03/13/2024 8:00"])),
            [DateOrder::MonthDayYear]
        );
    }

    #[test]
    fn a_log_that_goes_on_after_midnight_tells_the_order() {
        let night = rows(&[
            "03/04/2024 23:50",
            "03/04/2024 23:55",
            "04/04/2024 0:00",
            "04/04/2024 0:05",
        ]);
        assert_eq!(orders(&night), [DateOrder::DayMonthYear]);
        let night = rows(&[
            "03/04/2024 23:50",
            "03/04/2024 23:55",
            "03/05/2024 0:00",
            "03/05/2024 0:05",
        ]);
        assert_eq!(orders(&night), [DateOrder::MonthDayYear]);
        let night = rows(&["24/04/03 23:50", "24/04/03 23:55", "24/04/04 0:00"]);
        assert_eq!(orders(&night), [DateOrder::YearMonthDay]);
    }

    #[test]
    fn one_day_leaves_the_order_open_unless_both_are_the_same() {
        let one = rows(&["03/04/2024 8:00", "03/04/2024 8:05"]);
        assert_eq!(
            orders(&one),
            [DateOrder::DayMonthYear, DateOrder::MonthDayYear]
        );
        assert_eq!(
            orders(&rows(&["05/05/2024 8:00", "05/05/2024 8:05"])).len(),
            1
        );
        // Two sessions a month, or a day, apart: nothing goes on from one to the other.
        let two = rows(&[
            "03/04/2024 8:00",
            "03/04/2024 8:05",
            "04/04/2024 8:00",
            "04/04/2024 8:05",
        ]);
        assert_eq!(orders(&two).len(), 2);
    }

    #[test]
    fn a_clock_of_twelve_is_noticed() {
        let clocks = |cells: &[&str], is_open| {
            let times: Vec<TimeParts> = cells
                .iter()
                .filter_map(|cell| written(cell)?.time)
                .collect();
            clock(&times, |_| true, is_open)
        };
        assert_eq!(clocks(&["12:55", "1:00"], false).len(), 2);
        assert_eq!(clocks(&["11:55", "12:00"], true).len(), 3);
        assert_eq!(clocks(&["11:55", "12:00"], false), [Clock::TwentyFour]);
        assert_eq!(clocks(&["12:55", "13:00"], true), [Clock::TwentyFour]);
        assert_eq!(clocks(&["12:55 PM", "1:00 PM"], true), [Clock::TwentyFour]);
        assert_eq!(clocks(&["0:55", "1:00"], true), [Clock::TwentyFour]);
    }
}
