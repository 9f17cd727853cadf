//! Which columns say when, and how, as far as a file tells.

use crate::LogError;
use crate::calendar_form;
use crate::layout::{Clock, ElapsedUnit, When};
use crate::question::Question;
use crate::stamp::{TimeParts, written};
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

/// A column of numbers: one whose heading says time, else the first that rises from row to row.
fn number_of_time(
    table: &Table,
    structure: &Structure,
    survey: &Survey,
) -> Result<Found, LogError> {
    let numbers = || survey.columns.iter().enumerate();
    let heading = |column: usize| folded(&structure.headings[column]);
    let is_named =
        |column: usize| names_time(&heading(column)) && !names_another_quantity(&heading(column));
    let named = numbers().find(|(column, found)| found.is_some() && is_named(*column));
    let rises = |found: &Numbers| found.rises && found.count > 1 && found.unit.is_none();
    let rising = numbers().find(|(_, found)| found.as_ref().is_some_and(rises));
    let Some((column, Some(found))) = named.or(rising) else {
        return Err(LogError::NoTimes);
    };
    let sample = table.cell(structure.first, column).to_owned();
    let lies = |(from, to): (f64, f64)| from <= found.least && found.most < to;
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
