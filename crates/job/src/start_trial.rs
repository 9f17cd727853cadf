//! Trials to start a compressor, and the stops before them.
//!
//! Answers: with which start gear was a start tried, after which rest, and what happened? Must
//! never know: what that means.

use quantity::Seconds;

use crate::{Moment, Reading, Text};

/// With which start gear a start is tried.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum SetUp {
    /// The parts as they were found.
    Original,
    /// A known-good start device of the same kind.
    Substitute,
    /// A start kit with its capacitor.
    Kit,
}

impl SetUp {
    /// All of them, in the order in which they are tried.
    pub const ALL: [Self; 3] = [Self::Original, Self::Substitute, Self::Kit];
}

/// What happened at a try.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Tried {
    /// It started within a second or so.
    Started,
    /// It hummed for some seconds and then started.
    HummedThenStarted,
    /// It hummed until its protector clicked.
    HummedAndTripped,
    /// Nothing was heard.
    Silent,
    /// The outlet's protective device, or a breaker, tripped.
    OutletTripped,
}

impl Tried {
    /// All of them.
    pub const ALL: [Self; 5] = [
        Self::Started,
        Self::HummedThenStarted,
        Self::HummedAndTripped,
        Self::Silent,
        Self::OutletTripped,
    ];

    /// Whether the compressor turns afterwards.
    #[must_use]
    pub const fn turns(self) -> bool {
        matches!(self, Self::Started | Self::HummedThenStarted)
    }

    /// Whether current flowed through the start gear.
    #[must_use]
    pub const fn energised(self) -> bool {
        !matches!(self, Self::Silent)
    }
}

/// A compressor that ran has stopped.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stop {
    /// When.
    pub at: Moment,
    /// How long it had run, where somebody knows.
    pub ran: Option<Seconds>,
}

/// One try to start a compressor.
#[derive(Debug, Clone, PartialEq)]
pub struct StartTrial {
    /// With which start gear.
    pub set_up: SetUp,
    /// When it was plugged in.
    pub at: Moment,
    /// How long it had not turned by then.
    pub rest: Rest,
    /// How long no current had flowed through the start gear, where that is shorter.
    pub dead: Option<Rest>,
    /// Whether the shell was as cold as the room.
    pub is_cold: bool,
    /// What happened.
    pub outcome: Tried,
    /// The highest current during the start.
    pub highest: Option<Reading>,
    /// The current some minutes later.
    pub settled: Option<Reading>,
    /// The lowest voltage beside the machine's own plug.
    pub lowest: Option<Reading>,
    /// In the person's own words.
    pub note: Option<Text>,
}

/// How long something had rested: no less than nothing and no more than a week.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Rest(Seconds);

/// Why a number is no rest.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum RestError {
    /// No number, or less than nothing: the try would lie before the stop.
    Negative,
    /// More than a week: a date is wrong, and such a machine is cold anyway.
    OverAWeek,
}

impl Rest {
    /// The longest.
    pub const LONGEST: Seconds = Seconds::new(604_800.0);

    /// A rest of so long.
    ///
    /// ```
    /// # use job::{Rest, RestError};
    /// # use quantity::Seconds;
    /// assert!(Rest::new(Seconds::new(300.0)).is_ok());
    /// assert_eq!(Rest::new(Seconds::new(-1.0)), Err(RestError::Negative));
    /// assert_eq!(Rest::new(Seconds::new(1e6)), Err(RestError::OverAWeek));
    /// ```
    ///
    /// # Errors
    /// [`RestError`] where it can't be one.
    pub fn new(seconds: Seconds) -> Result<Self, RestError> {
        if seconds > Self::LONGEST {
            return Err(RestError::OverAWeek);
        }
        if seconds >= Seconds::new(0.0) {
            Ok(Self(seconds))
        } else {
            Err(RestError::Negative)
        }
    }

    /// From one moment to a later one.
    ///
    /// # Errors
    /// [`RestError`] where that is no rest.
    pub fn between(from: Moment, to: Moment) -> Result<Self, RestError> {
        Self::new(from.until(to))
    }

    /// How long.
    #[must_use]
    pub const fn seconds(self) -> Seconds {
        self.0
    }
}
