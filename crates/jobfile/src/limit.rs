//! How large a document may be, and why.

/// A limit that a document has to keep.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Limit {
    /// The whole document, in bytes as this program writes it.
    Bytes,
    /// A back-up of all jobs, in bytes.
    BackupBytes,
    /// The number of entries.
    Entries,
    /// The number of jobs in a back-up.
    Jobs,
    /// The number of choices in one answer.
    Choices,
    /// The number of points in a course of temperatures.
    LogPoints,
    /// How many lists and objects lie inside one another: the library's own limit.
    Depth,
    /// The size of a number either side of zero, in its unit.
    Magnitude,
}

/// Why a limit is where it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Reason {
    /// A browser keeps about five million characters for all jobs together.
    BrowserRoom,
    /// All that a browser keeps, written with the marks that JSON needs, stays below.
    MoreThanABrowserKeeps,
    /// No one writes that many by hand: it would take nearly a week at an entry a minute.
    NotByHand,
    /// No check offers that many.
    NoneOffered,
    /// More is not to be seen in a picture, and would crowd out other jobs.
    EnoughToSee,
    /// A reader that follows deeper can run out of memory.
    ReaderMemory,
    /// The longest reading that can be typed is smaller, and its square is still a number.
    CannotBeTyped,
}

impl Limit {
    /// All of them.
    pub const ALL: [Self; 8] = [
        Self::Bytes,
        Self::BackupBytes,
        Self::Entries,
        Self::Jobs,
        Self::Choices,
        Self::LogPoints,
        Self::Depth,
        Self::Magnitude,
    ];

    /// The most that is allowed.
    #[must_use]
    pub const fn most(self) -> f64 {
        match self {
            Self::Bytes => MOST_BYTES as f64,
            Self::BackupBytes => MOST_BACKUP_BYTES as f64,
            Self::Entries => MOST_ENTRIES as f64,
            Self::Jobs => MOST_JOBS as f64,
            Self::Choices => MOST_CHOICES as f64,
            Self::LogPoints => job::TemperatureLog::MOST_POINTS as f64,
            Self::Depth => 127.0,
            Self::Magnitude => MOST_MAGNITUDE,
        }
    }

    /// Why it is there.
    #[must_use]
    pub const fn reason(self) -> Reason {
        match self {
            Self::Bytes => Reason::BrowserRoom,
            Self::BackupBytes | Self::Jobs => Reason::MoreThanABrowserKeeps,
            Self::Entries => Reason::NotByHand,
            Self::Choices => Reason::NoneOffered,
            Self::LogPoints => Reason::EnoughToSee,
            Self::Depth => Reason::ReaderMemory,
            Self::Magnitude => Reason::CannotBeTyped,
        }
    }
}

pub(crate) const MOST_BYTES: usize = 4_000_000;
pub(crate) const MOST_BACKUP_BYTES: usize = 20_000_000;
pub(crate) const MOST_JOBS: usize = 20_000;
pub(crate) const MOST_ENTRIES: usize = 10_000;
pub(crate) const MOST_CHOICES: usize = 100;
pub(crate) const MOST_MAGNITUDE: f64 = 1e30;
