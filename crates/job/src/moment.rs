//! A point in time with the offset of the clock that showed it.

/// When something was entered, as the clock on the wall showed it.
///
/// Milliseconds since 1970-01-01T00:00:00Z, and the offset of local time in minutes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Moment {
    unix_milliseconds: i64,
    offset_minutes: i16,
}

/// Why a number pair is not a moment.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum MomentError {
    /// Before 1970 or after 9999.
    OutOfYears,
    /// An offset of more than 18 hours either way.
    OutOfOffsets,
}

impl Moment {
    /// The last moment that can be written with a four-digit year, 9999-12-31T00:00:00Z.
    pub const LATEST: i64 = 253_402_214_400_000;

    /// Builds a moment from Unix milliseconds and an offset in minutes east of UTC.
    ///
    /// # Errors
    /// [`MomentError`] where it can't be written with a four-digit year or a real offset.
    pub const fn new(unix_milliseconds: i64, offset_minutes: i16) -> Result<Self, MomentError> {
        if unix_milliseconds < 0 || unix_milliseconds > Self::LATEST {
            return Err(MomentError::OutOfYears);
        }
        if offset_minutes < -18 * 60 || offset_minutes > 18 * 60 {
            return Err(MomentError::OutOfOffsets);
        }
        Ok(Self {
            unix_milliseconds,
            offset_minutes,
        })
    }

    /// Milliseconds since 1970-01-01T00:00:00Z.
    #[must_use]
    pub const fn unix_milliseconds(self) -> i64 {
        self.unix_milliseconds
    }

    /// Minutes east of UTC.
    #[must_use]
    pub const fn offset_minutes(self) -> i16 {
        self.offset_minutes
    }
}
