//! What was done with rows that are not as they should be, so that it can be told.

use quantity::{Celsius, Seconds};

/// Why a row was passed over.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Skipped {
    /// The headings once more.
    RepeatedHeading,
    /// No date or time where one should be.
    NoTime,
    /// A time that lies years from all others: a logger whose clock wasn't set yet.
    FarFromOthers,
}

/// Why a cell gave no reading.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Missing {
    /// It is empty, or says so in a word.
    SaysSo,
    /// It holds something that is no number.
    NotANumber,
    /// Below −90 or above 150 °C: what loggers write when a probe is off.
    BeyondAnyPlace,
}

/// Something about all rows.
#[derive(Debug, Clone, PartialEq)]
pub enum Note {
    /// Rows that were passed over for one reason.
    Skipped {
        /// The reason.
        why: Skipped,
        /// How many.
        rows: usize,
        /// The line of the first of them, from 1.
        line: u64,
    },
    /// The newest row stands first; rows were turned round.
    NewestFirst,
    /// Rows that were earlier than the one in front of them, put where they belong.
    OutOfOrder {
        /// How many.
        rows: usize,
    },
    /// Rows with the time of another one: their temperatures were averaged.
    SameTime {
        /// How many were merged into others.
        rows: usize,
    },
    /// The clock went back by an hour here, as at the end of summer time; later rows were moved on
    /// by one.
    ClockBack {
        /// Of the first row after it, as mended.
        at: Seconds,
    },
    /// The clock went forward by an hour here, as at the beginning of summer time; later rows were
    /// moved back by one.
    ClockForward {
        /// Of the first row after it, as mended.
        at: Seconds,
    },
    /// No rows for more than three times the usual step.
    Gap {
        /// Of the last row before it.
        from: Seconds,
        /// Of the first row after it.
        to: Seconds,
    },
    /// More gaps than are listed.
    MoreGaps {
        /// How many more.
        gaps: usize,
    },
}

/// Something about one column.
#[derive(Debug, Clone, PartialEq)]
pub enum SeriesNote {
    /// Cells without a reading for one reason.
    NoReading {
        /// The reason.
        why: Missing,
        /// How many.
        cells: usize,
        /// The first of them as it stands in the file.
        sample: String,
    },
    /// One reading stands out from both its neighbours by more than air can change; it is kept.
    Spike {
        /// When.
        at: Seconds,
        /// What it says.
        temperature: Celsius,
    },
    /// Within one step far warmer, and it stayed so: a probe that fell out, or a door left open.
    FellOut {
        /// The first warm reading.
        at: Seconds,
        /// Before.
        from: Celsius,
        /// After.
        to: Celsius,
    },
    /// Within one step far colder: a probe that was put back.
    PutBack {
        /// The first cold reading.
        at: Seconds,
        /// Before.
        from: Celsius,
        /// After.
        to: Celsius,
    },
    /// More spikes and jumps than are listed.
    MoreJumps {
        /// How many more.
        jumps: usize,
    },
}

/// Notes of one kind that are listed; more are counted.
pub(crate) const MOST_LISTED: usize = 20;
