//! When a row was written, and what it says, by a layout that is settled.

use crate::calendar_form::second_of_day;
use crate::in_turn::InTurn;
use crate::layout::{Clock, ElapsedUnit, Layout, Series, When};
use crate::number::{number, says_missing};
use crate::scan::written;
use crate::stamp::{DateOrder, Half, TimeParts};
use crate::table::Table;

const DAY: f64 = 86_400.0;
const HALF_DAY: f64 = DAY / 2.0;
/// 1970-01-01 as spreadsheets count days.
const SERIAL_EPOCH: f64 = 25_569.0;
/// What is beyond this in degrees Celsius is the way in which a logger says that its probe is off:
/// −127, −200, 850, 999.9, 3276.7. No place of a household machine is colder or hotter.
const COLDEST: f64 = -90.0;
const HOTTEST: f64 = 150.0;

/// Why a cell holds no temperature.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum NoReading {
    /// It is empty, or says in a word that there is none.
    Missing,
    /// It holds something else.
    NotANumber,
    /// Its number can't be a temperature.
    BeyondAnyPlace,
}

/// A row that says no time.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct NoTime;

/// Goes from row to row: a clock of twelve needs the row before.
pub(crate) struct Reader<'a> {
    layout: &'a Layout,
    /// Where in the day the row before was, for clocks that don't say it.
    before: Option<Before>,
    /// Whether times without a date stand newest first.
    descends: bool,
    /// What the cells before said, in the column of the date and in that of the time.
    dates: InTurn<'a>,
    times: InTurn<'a>,
}

/// Rows that are looked at for the way in which times without a date go.
const LOOKED_AT: usize = 200;

/// Whether more of them fall than rise.
fn descends(table: &Table, first: usize, column: usize) -> bool {
    let rows = first..table.rows().min(first + LOOKED_AT);
    let times = rows.filter_map(|row| written(table.cell(row, column))?.time);
    let shown: Vec<f64> = times.map(second_of_day).collect();
    let falls = shown.windows(2).filter(|pair| pair[1] < pair[0]).count();
    falls * 2 > shown.len()
}

#[derive(Clone, Copy)]
struct Before {
    /// The date, in days; zero where rows have none.
    date: i32,
    /// Seconds by the clock.
    shown: f64,
    half: Half,
    /// Days that were passed without a date.
    days: f64,
    /// What the first row of all showed.
    first: f64,
}

impl<'a> Reader<'a> {
    pub(crate) fn new(layout: &'a Layout, table: &Table) -> Self {
        Self {
            layout,
            dates: InTurn::default(),
            times: InTurn::default(),
            before: None,
            descends: matches!(layout.when, When::Time { column, .. } if descends(table, layout.first, column)),
        }
    }

    /// Seconds since 1970-01-01T00:00:00Z.
    pub(crate) fn at(&mut self, table: &'a Table, row: usize) -> Result<f64, NoTime> {
        let offset = f64::from(self.layout.offset_minutes) * 60.0;
        let start = self.layout.start;
        match self.layout.when {
            When::Calendar {
                date,
                time,
                order,
                clock,
            } => self.calendar(
                table.cell(row, date),
                time.map(|column| table.cell(row, column)),
                order,
                clock,
            ),
            When::Time {
                column,
                clock,
                unit,
            } => {
                let time = written(table.cell(row, column)).and_then(|found| found.time);
                Ok(start + self.since_first(time.ok_or(NoTime)?, clock, unit))
            }
            When::Elapsed { column, unit } => {
                let elapsed = self.number(table, row, column)? * unit.seconds();
                let first = self.remember_first(elapsed);
                Ok(start + elapsed - first)
            }
            When::Unix {
                column,
                milliseconds,
            } => {
                let number = self.number(table, row, column)?;
                Ok(if milliseconds {
                    number / 1000.0
                } else {
                    number
                })
            }
            When::SerialDays { column } => {
                let days = self.number(table, row, column)? - SERIAL_EPOCH;
                // A day in 15 digits has room for a thousandth of a second.
                Ok(libm::round(days * DAY * 1000.0) / 1000.0 - offset)
            }
        }
    }

    fn number(&self, table: &Table, row: usize, column: usize) -> Result<f64, NoTime> {
        let found = number(table.cell(row, column), self.layout.mark);
        found.map(|one| one.value).ok_or(NoTime)
    }

    fn remember_first(&mut self, elapsed: f64) -> f64 {
        let before = Before {
            date: 0,
            shown: elapsed,
            half: Half::Morning,
            days: 0.0,
            first: elapsed,
        };
        self.before.get_or_insert(before).first
    }

    fn calendar(
        &mut self,
        date: &'a str,
        time: Option<&'a str>,
        order: DateOrder,
        clock: Clock,
    ) -> Result<f64, NoTime> {
        let found = self.dates.written(date).ok_or(NoTime)?;
        let with_time = match time {
            Some(cell) => self.times.written(cell).ok_or(NoTime)?,
            None => found,
        };
        let days = found
            .date
            .and_then(|parts| parts.days(order))
            .ok_or(NoTime)?;
        let second = match with_time.time {
            Some(time) => self.second_of_day(time, clock, days)?,
            // A column of dates alone has a reading a day.
            None if time.is_none() => 0.0,
            None => return Err(NoTime),
        };
        let offset = with_time.offset.unwrap_or(self.layout.offset_minutes);
        Ok(f64::from(days) * DAY + second - f64::from(offset) * 60.0)
    }

    fn second_of_day(&mut self, time: TimeParts, clock: Clock, date: i32) -> Result<f64, NoTime> {
        let shown = second_of_day(time);
        let is_end_of_day = shown <= DAY && time.first == 24;
        if time.first > 23 && !is_end_of_day {
            return Err(NoTime);
        }
        let Clock::Twelve(first) = clock else {
            return Ok(shown);
        };
        if time.half.is_some() || time.first > 12 {
            return Ok(shown);
        }
        let shown = shown % HALF_DAY;
        let half = match self.before {
            None => first,
            Some(before) if before.date != date => Half::Morning,
            Some(before) if shown < before.shown => Half::Afternoon,
            Some(before) => before.half,
        };
        self.before = Some(Before {
            date,
            shown,
            half,
            days: 0.0,
            first: 0.0,
        });
        Ok(match half {
            Half::Morning => shown,
            Half::Afternoon => shown + HALF_DAY,
        })
    }

    /// Seconds since the first row, over midnight or noon where the clock falls by half its round.
    fn since_first(&mut self, time: TimeParts, clock: Clock, unit: ElapsedUnit) -> f64 {
        let round = match clock {
            Clock::TwentyFour => DAY,
            Clock::Twelve(_) => HALF_DAY,
        };
        let shown = match unit {
            ElapsedUnit::MinutesSeconds => f64::from(time.first) * 60.0 + f64::from(time.second),
            _ => second_of_day(time),
        };
        let shown = if clock == Clock::TwentyFour {
            shown
        } else {
            shown % HALF_DAY
        };
        let (first, passed) = match self.before {
            None => (shown, 0.0),
            Some(before) => {
                let goes_round = if self.descends {
                    -round * f64::from(u8::from(shown - before.shown >= round / 2.0))
                } else {
                    round * f64::from(u8::from(before.shown - shown >= round / 2.0))
                };
                (before.first, before.days + goes_round)
            }
        };
        self.before = Some(Before {
            date: 0,
            shown,
            half: Half::Morning,
            days: passed,
            first,
        });
        passed + shown - first
    }

    /// A temperature in degrees Celsius.
    pub(crate) fn celsius(
        &self,
        table: &Table,
        row: usize,
        series: Series,
    ) -> Result<f64, NoReading> {
        let cell = table.cell(row, series.column);
        let Some(found) = number(cell, self.layout.mark) else {
            let missing = says_missing(cell);
            return Err(if missing {
                NoReading::Missing
            } else {
                NoReading::NotANumber
            });
        };
        let celsius = series.unit.to_celsius(found.value).get();
        if (COLDEST..=HOTTEST).contains(&celsius) {
            Ok(celsius)
        } else {
            Err(NoReading::BeyondAnyPlace)
        }
    }
}
