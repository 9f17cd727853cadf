//! How a file is to be read, once nothing is open any more.

use crate::degrees::DegreeUnit;
use crate::number::DecimalMark;
use crate::stamp::{DateOrder, Half};
use crate::table::Delimiter;

/// How hours are counted.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Clock {
    /// From 0 to 23, or from 1 to 12 with AM or PM behind.
    TwentyFour,
    /// From 1 to 12 with nothing behind; the first row is in that half of its day.
    Twelve(Half),
}

/// What time from the beginning is counted in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ElapsedUnit {
    /// Thousandths of a second.
    Milliseconds,
    /// Seconds.
    Seconds,
    /// Minutes.
    Minutes,
    /// Hours.
    Hours,
    /// Days.
    Days,
    /// 12:30 is twelve hours and thirty minutes.
    HoursMinutes,
    /// 12:30 is twelve minutes and thirty seconds.
    MinutesSeconds,
}

impl ElapsedUnit {
    /// One of a plain number's units in seconds; for numbers with a colon, of the first of both.
    pub(crate) const fn seconds(self) -> f64 {
        match self {
            Self::Milliseconds => 0.001,
            Self::Seconds => 1.0,
            Self::Minutes | Self::MinutesSeconds => 60.0,
            Self::Hours | Self::HoursMinutes => 3600.0,
            Self::Days => 86_400.0,
        }
    }
}

/// Where and how a row says when.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum When {
    /// A date, with its time in the same cell or in another.
    Calendar {
        date: usize,
        time: Option<usize>,
        order: DateOrder,
        clock: Clock,
    },
    /// A time without a date: of the day or from the beginning.
    Time {
        column: usize,
        clock: Clock,
        /// What the first two numbers of a time are.
        unit: ElapsedUnit,
    },
    /// A number from the beginning.
    Elapsed { column: usize, unit: ElapsedUnit },
    /// A number from 1970-01-01T00:00:00Z.
    Unix { column: usize, milliseconds: bool },
    /// Days as a spreadsheet counts them, local.
    SerialDays { column: usize },
}

impl When {
    /// The columns that say it.
    pub(crate) const fn columns(self) -> (usize, Option<usize>) {
        match self {
            Self::Calendar { date, time, .. } => (date, time),
            Self::Time { column, .. }
            | Self::Elapsed { column, .. }
            | Self::Unix { column, .. }
            | Self::SerialDays { column } => (column, None),
        }
    }
}

/// A column of temperatures with its scale.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Series {
    pub(crate) column: usize,
    pub(crate) unit: DegreeUnit,
}

/// How a file is to be read. Comes from [`crate::Looked::settle`] and holds for that file alone.
#[derive(Debug, Clone, PartialEq)]
pub struct Layout {
    pub(crate) delimiter: Delimiter,
    pub(crate) mark: DecimalMark,
    /// The first row of the log.
    pub(crate) first: usize,
    /// The cells of the row of headings, to know it where it comes again.
    pub(crate) heading_row: Option<usize>,
    pub(crate) headings: Vec<String>,
    pub(crate) when: When,
    /// Of local times, in minutes east of UTC.
    pub(crate) offset_minutes: i16,
    /// When the first row was written, in Unix seconds, where rows say only how long after.
    pub(crate) start: f64,
    pub(crate) series: Vec<Series>,
}
