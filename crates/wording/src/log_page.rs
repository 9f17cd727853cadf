//! The words of taking in a logger's file: what was found, what is asked, what was mended.

use job::Moment;
use logfile::{
    Clock, Column, DateOrder, DegreeUnit, Delimiter, ElapsedUnit, Half, LogError, Looked, Missing,
    Note, Question, Role, SeriesNote, Skipped,
};
use quantity::Celsius;

use crate::Locale;

/// The page's heading.
pub const TITLE: &str = "Take in a logger's file";
/// What it takes.
pub const WHY: &str = "A table as text (CSV, TSV) from any thermometer that keeps a log, in any language's \
                       way of writing numbers and dates. It stays on this phone.";
/// Chooses a file.
pub const CHOOSE: &str = "Choose a file";
/// Another one.
pub const CHOOSE_ANOTHER: &str = "Choose another file";
/// The file couldn't be read.
pub const NOT_READ: &str =
    "The file can't be read. Save it on this phone first, then choose it again.";
/// It is no log.
pub const REFUSED: &str = "It can't be taken in";
/// Above what was found.
pub const FOUND: &str = "Found in the file";
/// Above its first rows.
pub const FIRST_ROWS: &str = "Its first rows";
/// Takes the last answer back.
pub const BACK: &str = "One question back";
/// Above what was read.
pub const READ: &str = "As it will be taken in";
/// Asks for a column's place.
pub const WHERE: &str = "Where did this probe lie?";
/// Leaves it out.
pub const LEAVE_OUT: &str = "Leave it out";
/// Takes them in.
pub const TAKE_IN: &str = "Take these in";
/// Not before each column has a place.
pub const PLACES_FIRST: &str = "Say first where each probe lay, or leave it out.";
/// It was taken in.
pub const TAKEN: &str = "Taken in.";
/// The button of a field.
pub const ENTER: &str = "Enter";
/// The field of an offset.
pub const HOURS_FROM_UTC: &str = "Another zone: hours from UTC, like −5 or 5.5";
/// The field of a beginning.
pub const STARTED: &str = "The first row was written at";
/// Not an offset.
pub const NOT_HOURS: &str = "Hours from UTC lie between −18 and 18.";
/// Switches a column on or off.
pub const THESE: &str = "Read these";
/// None was chosen.
pub const AT_LEAST_ONE: &str = "One at least.";
/// It is before the machine was switched on, so far as is known.
pub const SWITCHED_ON: &str = "Only what comes after “switched on” counts for the cool-down. If it was on \
                               before, say so there first or afterwards.";

/// Why a file can't be taken in, and how to mend it.
#[must_use]
pub fn error(why: &LogError) -> String {
    match why {
        LogError::Empty => "There is nothing in it.".to_owned(),
        LogError::TooLarge { bytes } => format!(
            "It has {} million bytes. Twenty-five million is the most: write out a shorter stretch of time, or a reading each minute.",
            bytes / 1_000_000
        ),
        LogError::Picture => {
            "It is a picture. Type the temperatures off it, one by one.".to_owned()
        }
        LogError::Spreadsheet => {
            "It is a spreadsheet. Open it in its program and save it as CSV.".to_owned()
        }
        LogError::Printed => {
            "It is a document for printing. Have the logger's program write CSV.".to_owned()
        }
        LogError::NotText => "It isn't text.".to_owned(),
        LogError::NoRows => "No row holds a time and a number.".to_owned(),
        LogError::NoTimes => "No column rises as times do.".to_owned(),
        LogError::NoTemperatures => {
            "There are times, but no column that can be temperatures.".to_owned()
        }
        LogError::MoreCellsThanHeadings { headings, cells } => format!(
            "Rows have {cells} cells under {headings} headings, most likely decimal commas between commas. Write it out with semicolons or tabs."
        ),
        LogError::TooManyCells { line } => format!("Line {line} has more than a thousand cells."),
        LogError::TooFewRows { rows } => {
            format!("Only {rows} rows hold a time and a temperature; it takes two.")
        }
        LogError::NewestFirstByTwelve => {
            "Its newest row stands first, and its hours say no AM or PM: which half of a day they are \
             in can't be told. Turn the rows round, or write it out with hours from 0 to 23."
                .to_owned()
        }
        LogError::OtherLayout => "The file has changed meanwhile. Choose it again.".to_owned(),
    }
}

/// What looking at a file told.
#[must_use]
pub fn found(looked: &Looked) -> Vec<String> {
    let between = match looked.delimiter {
        Delimiter::Semicolon => "semicolons",
        Delimiter::Tab => "tabs",
        Delimiter::Comma => "commas",
        Delimiter::Bar => "bars",
        Delimiter::Blanks => "blanks",
    };
    let mark = match looked.decimal_mark {
        logfile::DecimalMark::Point => "point",
        logfile::DecimalMark::Comma => "comma",
    };
    let columns = looked
        .columns
        .iter()
        .enumerate()
        .map(|(place, column)| format!("{}: {}", column_name(column, place), role(column)));
    let first = format!(
        "{} rows, with {between} between the cells and a decimal {mark}.",
        looked.rows
    );
    std::iter::once(first).chain(columns).collect()
}

/// What a column is called.
#[must_use]
pub fn column_name(column: &Column, place: usize) -> String {
    if column.heading.trim().is_empty() {
        format!("Column {}", place + 1)
    } else {
        column.heading.trim().to_owned()
    }
}

fn role(column: &Column) -> &'static str {
    match (column.role, column.unit) {
        (Role::When, _) => "time",
        (Role::RowNumber, _) => "number of the row",
        (Role::Other, _) => "something else",
        (Role::Temperature, None) => "temperature, scale not told",
        (Role::Temperature, Some(unit)) => match unit {
            DegreeUnit::Celsius => "temperature in °C",
            DegreeUnit::Fahrenheit => "temperature in °F",
            DegreeUnit::Kelvin => "temperature in K",
        },
    }
}

/// A question, with the sample that raises it.
#[must_use]
pub fn question(question: &Question, looked: &Looked) -> String {
    match question {
        Question::DateOrder { sample, .. } => format!("“{sample}”: which number is the day?"),
        Question::Clock { sample, .. } => format!("“{sample}”: how are hours counted?"),
        Question::Zone { sample } => format!("“{sample}”: by which clock?"),
        Question::Start { sample } => format!("The first row says “{sample}”. When was that?"),
        Question::ElapsedUnit { sample, .. } => {
            format!("The last row says “{sample}”. Counted in what?")
        }
        Question::Unit { column, sample, .. } => {
            let name = looked
                .columns
                .get(*column)
                .map_or_else(String::new, |found| {
                    [&column_name(found, *column), ": "].concat()
                });
            format!("{name}“{sample}”. On which scale?")
        }
        Question::Columns { .. } => "Which columns are to be read?".to_owned(),
        Question::DecimalMark { sample } => format!("“{sample}”: what is its mark?"),
    }
}

/// An order of dates.
#[must_use]
pub const fn date_order(order: DateOrder) -> &'static str {
    match order {
        DateOrder::DayMonthYear => "Day, month, year",
        DateOrder::MonthDayYear => "Month, day, year",
        DateOrder::YearMonthDay => "Year, month, day",
    }
}

/// A way of counting hours.
#[must_use]
pub const fn clock(clock: Clock) -> &'static str {
    match clock {
        Clock::TwentyFour => "From 0 to 23",
        Clock::Twelve(Half::Morning) => "Twelve hours, beginning in the morning",
        Clock::Twelve(Half::Afternoon) => "Twelve hours, beginning in the afternoon",
    }
}

/// A way of counting time.
#[must_use]
pub const fn elapsed(unit: ElapsedUnit) -> &'static str {
    match unit {
        ElapsedUnit::Milliseconds => "Milliseconds",
        ElapsedUnit::Seconds => "Seconds",
        ElapsedUnit::Minutes => "Minutes",
        ElapsedUnit::Hours => "Hours",
        ElapsedUnit::Days => "Days",
        ElapsedUnit::HoursMinutes => "Hours and minutes",
        ElapsedUnit::MinutesSeconds => "Minutes and seconds",
    }
}

/// A scale.
#[must_use]
pub const fn unit(unit: DegreeUnit) -> &'static str {
    match unit {
        DegreeUnit::Celsius => "°C",
        DegreeUnit::Fahrenheit => "°F",
        DegreeUnit::Kelvin => "K",
    }
}

/// What a mark is.
#[must_use]
pub const fn mark(mark: logfile::DecimalMark) -> &'static str {
    match mark {
        logfile::DecimalMark::Point => "Points mark decimals",
        logfile::DecimalMark::Comma => "Commas mark decimals",
    }
}

/// This phone's clock, so many minutes from UTC.
#[must_use]
pub fn this_clock(minutes: i16) -> String {
    format!("This phone's clock ({})", from_utc(minutes))
}

/// UTC itself.
pub const UTC: &str = "UTC";

fn from_utc(minutes: i16) -> String {
    let (hours, rest) = (minutes.unsigned_abs() / 60, minutes.unsigned_abs() % 60);
    let sign = if minutes < 0 { "−" } else { "+" };
    if rest == 0 {
        format!("UTC{sign}{hours}")
    } else {
        format!("UTC{sign}{hours}:{rest:02}")
    }
}

/// What was done with all rows.
#[must_use]
pub fn note(note: &Note) -> String {
    match note {
        Note::Skipped { why, rows, .. } => {
            let why = match why {
                Skipped::RepeatedHeading => "repeat the headings",
                Skipped::NoTime => "hold no time",
                Skipped::FarFromOthers => {
                    "lie years from all others: the logger's clock wasn't set"
                }
            };
            format!("Rows passed over because they {why}: {rows}.")
        }
        Note::NewestFirst => "The newest row stood first: turned round.".to_owned(),
        Note::OutOfOrder { rows } => format!("Rows put where their time belongs: {rows}."),
        Note::SameTime { rows } => format!("Rows of one time, averaged: {rows}."),
        Note::ClockBack { .. } => {
            "The clock went back by an hour: later rows were moved on.".to_owned()
        }
        Note::ClockForward { .. } => {
            "The clock went forward by an hour: later rows were moved back.".to_owned()
        }
        Note::Gap { from, to } => {
            let lasting = crate::start_trials::lasting(*to - *from);
            format!("Nothing was written for {lasting}.")
        }
        Note::MoreGaps { gaps } => format!("More gaps: {gaps}."),
    }
}

/// What was done with one column.
#[must_use]
pub fn series_note(note: &SeriesNote, locale: &Locale) -> String {
    let degrees = |shown| locale.temperature(shown);
    match note {
        SeriesNote::NoReading { why, cells, sample } => {
            let why = match why {
                Missing::SaysSo => "without a reading",
                Missing::NotANumber => "that are no number",
                Missing::BeyondAnyPlace => "that no place has: a probe that is off",
            };
            format!("Cells {why}: {cells} (the first: “{sample}”).")
        }
        SeriesNote::Spike { temperature, .. } => {
            format!(
                "One reading of {} stands out from both beside it; kept.",
                degrees(*temperature)
            )
        }
        SeriesNote::FellOut { from, to, .. } => format!(
            "From {} to {} within one step, and it stayed so: the probe fell out, or the door stood open.",
            degrees(*from),
            degrees(*to)
        ),
        SeriesNote::PutBack { from, to, .. } => format!(
            "From {} to {} within one step: the probe was put in.",
            degrees(*from),
            degrees(*to)
        ),
        SeriesNote::MoreJumps { jumps } => format!("More jumps: {jumps}."),
    }
}

/// How many readings, from when to when, and how cold and warm they are.
#[must_use]
pub fn span(
    readings: usize,
    (from, to): (Moment, Moment),
    ends: Option<(Celsius, Celsius)>,
    locale: &Locale,
) -> String {
    let degrees = ends.map_or_else(String::new, |(coldest, warmest)| {
        format!(
            ", {} to {}",
            locale.temperature(coldest),
            locale.temperature(warmest)
        )
    });
    format!(
        "{readings} readings from {} to {}{degrees}.",
        locale.moment(from),
        locale.moment(to)
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn zones_are_told_with_their_minutes_and_sign() {
        let said = this_clock;
        assert_eq!(said(0), "This phone's clock (UTC+0)");
        assert_eq!(said(-210), "This phone's clock (UTC−3:30)");
    }
}
