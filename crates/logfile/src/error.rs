//! Why a file is no log.

/// Why nothing can be read from a file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum LogError {
    /// No bytes, or nothing but blanks.
    Empty,
    /// More than [`MOST_BYTES`].
    TooLarge {
        /// How many there are.
        bytes: u64,
    },
    /// A picture. A photo of a display has to be typed off.
    Picture,
    /// A workbook of a spreadsheet program: save it as text, with the cells apart.
    Spreadsheet,
    /// A document for printing.
    Printed,
    /// Bytes that are no text.
    NotText,
    /// Text in which no row holds a time and a number.
    NoRows,
    /// Rows of numbers without anything that rises like time.
    NoTimes,
    /// Times, but no column that can be temperatures.
    NoTemperatures,
    /// Rows have more cells than the headings above them: most likely decimal commas between
    /// commas, which can't be told apart any more. Write it out with another mark between cells.
    MoreCellsThanHeadings {
        /// Headings.
        headings: usize,
        /// Cells in a row.
        cells: usize,
    },
    /// A row with more than a thousand cells.
    TooManyCells {
        /// The line in the file, from 1.
        line: u64,
    },
    /// Fewer than two rows with a time and a temperature.
    TooFewRows {
        /// How many there are.
        rows: usize,
    },
    /// The newest row stands first and hours go from 1 to 12 without AM or PM: the half of the day
    /// follows from the row before, which stands behind. Turn the file round, or write it out with a
    /// clock of twenty-four hours.
    NewestFirstByTwelve,
    /// The layout was settled for another file.
    OtherLayout,
}

/// The largest file that is looked at, 25 million bytes: a reading a second for more than a week. One of
/// 22 million bytes took a second in WebAssembly on a desktop's processor, and 150 million bytes of
/// memory; three times as much took six seconds and 570 million, which a phone may not have.
pub const MOST_BYTES: u64 = 25_000_000;

/// Whether a file of that size may be read at all, to be asked before it is.
///
/// # Errors
/// [`LogError::Empty`] and [`LogError::TooLarge`].
///
/// ```
/// assert!(logfile::check_size(20_000_000).is_ok());
/// assert!(logfile::check_size(25_000_001).is_err());
/// ```
pub const fn check_size(bytes: u64) -> Result<(), LogError> {
    match bytes {
        0 => Err(LogError::Empty),
        1..=MOST_BYTES => Ok(()),
        _ => Err(LogError::TooLarge { bytes }),
    }
}
