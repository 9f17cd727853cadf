//! Which columns say when, and how, as far as a file tells.

use crate::LogError;
use crate::calendar_form;
use crate::layout::{Clock, ElapsedUnit, When};
use crate::question::Question;
use crate::scan::written;
use crate::stamp::TimeParts;
use crate::structure::{Kind, Structure};
use crate::survey::{Numbers, Survey};
use crate::table::Table;
use crate::words::{elapsed_unit_named, folded, names_another_quantity, names_elapsed, names_time};

/// From 2000 to 2100, in seconds since 1970-01-01: other numbers are no such seconds.
const UNIX_SECONDS: (f64, f64) = (946_684_800.0, 4_102_444_800.0);
/// The same years in days as spreadsheets count them, whose day 25569 is 1970-01-01.
const SERIAL_DAYS: (f64, f64) = (36_526.0, 73_051.0);
/// No log is longer.
const LONGEST_DAYS: f64 = 1500.0;

/// How rows say when, with what is open in it.
pub(crate) type Found = (When, Vec<Question>);

/// How rows say when: by date and time, by time alone, or by a number.
pub(crate) fn when(
    table: &Table,
    structure: &Structure,
    survey: &Survey,
) -> Result<Found, LogError> {
    let first_of = |kind: Kind| structure.kinds.iter().position(|one| *one == kind);
    let time = first_of(Kind::Time);
    let date = first_of(Kind::Moment).map(|column| (column, None));
    let date = date.or_else(|| first_of(Kind::Date).map(|column| (column, time)));
    match (date, time) {
        (Some((date, time)), _) => calendar_form::found(table, structure, date, time),
        (None, Some(column)) => Ok(time_alone(table, structure, column)),
        (None, None) => number_of_time(table, structure, survey),
    }
}

/// A time without a date.
fn time_alone(table: &Table, structure: &Structure, column: usize) -> Found {
    let rows = structure.first..table.rows();
    let times: Vec<TimeParts> = rows
        .filter_map(|row| written(table.cell(row, column))?.time)
        .collect();
    let sample = table.cell(structure.first, column).to_owned();
    let (clock, mut questions) = match calendar_form::clock(&times, |_| true, true) {
        candidates if candidates.len() > 1 => {
            let first = candidates[0];
            let sample = sample.clone();
            (first, vec![Question::Clock { sample, candidates }])
        }
        candidates => (
            candidates.first().copied().unwrap_or(Clock::TwentyFour),
            Vec::new(),
        ),
    };
    let tells_hours = |time: &TimeParts| time.third.is_some() || time.half.is_some();
    let passes_midnight = times
        .windows(2)
        .any(|pair| pair[0].first == 23 && pair[1].first == 0);
    if !times.iter().any(tells_hours) && !passes_midnight {
        let last = table.cell(table.rows() - 1, column).to_owned();
        let candidates = vec![ElapsedUnit::HoursMinutes, ElapsedUnit::MinutesSeconds];
        questions.push(Question::ElapsedUnit {
            sample: last,
            candidates,
        });
    }
    questions.push(Question::Start { sample });
    let unit = ElapsedUnit::HoursMinutes;
    (
        When::Time {
            column,
            clock,
            unit,
        },
        questions,
    )
}

/// A column of numbers.
fn number_of_time(
    table: &Table,
    structure: &Structure,
    survey: &Survey,
) -> Result<Found, LogError> {
    let heading = |column: usize| folded(&structure.headings[column]);
    let (column, found) = rising_column(structure, survey).ok_or(LogError::NoTimes)?;
    let sample = table.cell(structure.first, column).to_owned();
    let lies = |within| lies(found, within);
    if lies(UNIX_SECONDS) {
        return Ok((
            When::Unix {
                column,
                milliseconds: false,
            },
            Vec::new(),
        ));
    }
    if lies((UNIX_SECONDS.0 * 1000.0, UNIX_SECONDS.1 * 1000.0)) {
        return Ok((
            When::Unix {
                column,
                milliseconds: true,
            },
            Vec::new(),
        ));
    }
    let unit = elapsed_unit_named(&heading(column));
    let is_short = found.most - found.least < LONGEST_DAYS;
    if lies(SERIAL_DAYS)
        && found.has_decimals
        && is_short
        && unit.is_none()
        && !names_elapsed(&heading(column))
    {
        return Ok((When::SerialDays { column }, vec![Question::Zone { sample }]));
    }
    let mut questions = Vec::new();
    if unit.is_none() {
        questions.push(Question::ElapsedUnit {
            sample: table.cell(table.rows() - 1, column).to_owned(),
            candidates: vec![
                ElapsedUnit::Seconds,
                ElapsedUnit::Minutes,
                ElapsedUnit::Hours,
                ElapsedUnit::Milliseconds,
                ElapsedUnit::Days,
            ],
        });
    }
    questions.push(Question::Start { sample });
    let unit = unit.unwrap_or(ElapsedUnit::Seconds);
    Ok((When::Elapsed { column, unit }, questions))
}

fn lies(found: &Numbers, (from, to): (f64, f64)) -> bool {
    from <= found.least && found.most < to
}

/// The column of numbers that is most like time: one whose heading says so, then one of a known way
/// of counting seconds or days, then one with even steps that isn't the number of the row.
fn rising_column<'a>(structure: &Structure, survey: &'a Survey) -> Option<(usize, &'a Numbers)> {
    let is_named = |column: usize| {
        let heading = folded(&structure.headings[column]);
        names_time(&heading) && !names_another_quantity(&heading)
    };
    let rank = |column: usize, found: &Numbers| {
        let rises = found.rises && found.count > 1 && found.unit.is_none();
        let thousands = (UNIX_SECONDS.0 * 1000.0, UNIX_SECONDS.1 * 1000.0);
        let is_known = lies(found, UNIX_SECONDS)
            || lies(found, thousands)
            || lies(found, SERIAL_DAYS) && found.has_decimals;
        match (is_named(column), rises) {
            (true, true) => 6,
            (true, false) => 5,
            (false, false) => 0,
            (false, true) if is_known => 4,
            (false, true) if found.is_even && !found.counts_rows => 3,
            (false, true) if found.is_even => 2,
            (false, true) => 1,
        }
    };
    let columns = survey.columns.iter().enumerate();
    let found = columns.filter_map(|(column, found)| Some((column, found.as_ref()?)));
    // Of columns that rank alike the first one is taken.
    found
        .rev()
        .max_by_key(|(column, found)| rank(*column, found))
        .filter(|(column, found)| rank(*column, found) > 0)
}
