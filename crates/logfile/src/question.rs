//! What a file leaves open, and what may be said to it.

use quantity::Seconds;

use crate::degrees::DegreeUnit;
use crate::layout::{Clock, ElapsedUnit};
use crate::number::DecimalMark;
use crate::stamp::DateOrder;

/// What can't be told by looking. Each comes with a sample from the file.
#[derive(Debug, Clone, PartialEq)]
pub enum Question {
    /// Which of three numbers is the day?
    DateOrder {
        /// A date as it stands in the file.
        sample: String,
        /// Under which orders all of the file's dates are dates.
        candidates: Vec<DateOrder>,
    },
    /// Hours go from 1 to 12 and nothing says which half of the day they are in.
    Clock {
        /// The first time as it stands in the file.
        sample: String,
        /// What it may be.
        candidates: Vec<Clock>,
    },
    /// Times are those of a clock on a wall: how far east of UTC?
    Zone {
        /// The first of them.
        sample: String,
    },
    /// Rows say how long after the first, not when: when was the first written?
    Start {
        /// What the first row says.
        sample: String,
    },
    /// What is time counted in?
    ElapsedUnit {
        /// What the last row says.
        sample: String,
        /// What it may be.
        candidates: Vec<ElapsedUnit>,
    },
    /// On which scale are this column's temperatures?
    Unit {
        /// The column, from 0.
        column: usize,
        /// Its first number as it stands in the file.
        sample: String,
        /// How plausible each scale is by the numbers; empty where none is.
        plausible: Vec<(DegreeUnit, f64)>,
    },
    /// Which of several columns are to be read? The place of each is the person's to say.
    Columns {
        /// Those that may be temperatures, from 0.
        candidates: Vec<usize>,
    },
    /// Is the mark in this number that of decimals or of thousands?
    DecimalMark {
        /// A number that both make sense of.
        sample: String,
    },
}

/// What a person says to a [`Question`].
#[derive(Debug, Clone, PartialEq)]
pub enum Answer {
    /// Which number of a date is the day.
    DateOrder(DateOrder),
    /// How hours are counted.
    Clock(Clock),
    /// Minutes east of UTC that the clock showed in the first row, −18 to 18 hours.
    Zone(i16),
    /// When the first row was written, in seconds since 1970-01-01T00:00:00Z.
    Start(Seconds),
    /// What time is counted in.
    ElapsedUnit(ElapsedUnit),
    /// A column's scale.
    Unit {
        /// The column, from 0.
        column: usize,
        /// Its scale.
        unit: DegreeUnit,
    },
    /// The columns to read, from 0.
    Columns(Vec<usize>),
    /// The mark of decimals.
    DecimalMark(DecimalMark),
}

impl Question {
    /// Whether an answer is one to this question, and one that it leaves open.
    pub(crate) fn takes(&self, answer: &Answer) -> bool {
        match (self, answer) {
            (Self::DateOrder { candidates, .. }, Answer::DateOrder(order)) => {
                candidates.contains(order)
            }
            (Self::Clock { candidates, .. }, Answer::Clock(clock)) => candidates.contains(clock),
            (Self::Zone { .. }, Answer::Zone(minutes)) => minutes.unsigned_abs() <= 18 * 60,
            (Self::Start { .. }, Answer::Start(start)) => start.get().is_finite(),
            (Self::ElapsedUnit { candidates, .. }, Answer::ElapsedUnit(unit)) => {
                candidates.contains(unit)
            }
            (Self::Unit { column, .. }, Answer::Unit { column: other, .. }) => column == other,
            (Self::Columns { candidates }, Answer::Columns(columns)) => {
                !columns.is_empty() && columns.iter().all(|column| candidates.contains(column))
            }
            (Self::DecimalMark { .. }, Answer::DecimalMark(_)) => true,
            _ => false,
        }
    }
}
