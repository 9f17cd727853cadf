//! A point in time with the offset of the clock that showed it.

use quantity::Seconds;

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

    /// How long from here to another moment, below zero where that is earlier.
    ///
    /// ```
    /// # use job::Moment;
    /// # use quantity::Seconds;
    /// let noon = Moment::new(1_795_608_300_000, 60).unwrap();
    /// let later = noon.after(Seconds::new(90.0)).unwrap();
    /// assert_eq!(noon.until(later), Seconds::new(90.0));
    /// assert_eq!(later.until(noon), Seconds::new(-90.0));
    /// assert_eq!(noon.after(Seconds::new(f64::NAN)), None);
    /// assert_eq!(noon.after(Seconds::new(1e300)), None);
    /// ```
    #[must_use]
    pub const fn until(self, other: Self) -> Seconds {
        let milliseconds = other.unix_milliseconds - self.unix_milliseconds;
        // Moments lie within the years 1970 to 9999: exact as a floating-point number.
        Seconds::new(milliseconds as f64 / 1_000.0)
    }

    /// The moment so long after this one, to the millisecond and by the same clock; `None` outside
    /// of the years that a moment can have.
    #[must_use]
    pub fn after(self, time: Seconds) -> Option<Self> {
        let milliseconds = (time.get() * 1_000.0).round();
        // Not a number is in no range; within it the conversion is exact, and the sum fits.
        if !(-(Self::LATEST as f64)..=Self::LATEST as f64).contains(&milliseconds) {
            return None;
        }
        let at = self.unix_milliseconds + milliseconds as i64;
        Self::new(at, self.offset_minutes).ok()
    }

    /// What the clock on the wall showed.
    ///
    /// ```
    /// # use job::Moment;
    /// let clock = Moment::new(1_795_608_300_000, 60).unwrap().wall_clock();
    /// assert_eq!((clock.year, clock.month, clock.day), (2026, 11, 25));
    /// assert_eq!((clock.hour, clock.minute), (13, 5));
    /// ```
    #[must_use]
    pub const fn wall_clock(self) -> WallClock {
        let local = self.unix_milliseconds + self.offset_minutes as i64 * 60_000;
        let (days, rest) = (local.div_euclid(86_400_000), local.rem_euclid(86_400_000));
        let (year, month, day) = civil_date(days);
        WallClock {
            year,
            month,
            day,
            hour: (rest / 3_600_000) as u8,
            minute: (rest / 60_000 % 60) as u8,
            second: (rest / 1_000 % 60) as u8,
            millisecond: (rest % 1_000) as u16,
        }
    }
}

/// A moment as a calendar and a clock show it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct WallClock {
    /// Year, 1969 to 9999: the offset may reach back over the first of January 1970.
    pub year: i64,
    /// 1 to 12.
    pub month: u8,
    /// 1 to 31.
    pub day: u8,
    /// 0 to 23.
    pub hour: u8,
    /// 0 to 59.
    pub minute: u8,
    /// 0 to 59.
    pub second: u8,
    /// 0 to 999.
    pub millisecond: u16,
}

/// The proleptic Gregorian date of a day counted from 1970-01-01.
///
/// Years are counted from 1 March, so that the leap day is the last of its year and months
/// follow a straight line: day of year = (153·month + 2)/5.
const fn civil_date(days: i64) -> (i64, u8, u8) {
    const DAYS_IN_400_YEARS: i64 = 146_097;
    let from_march_0000 = days + 719_468;
    let era = from_march_0000.div_euclid(DAYS_IN_400_YEARS);
    let day_of_era = from_march_0000.rem_euclid(DAYS_IN_400_YEARS);
    let year_of_era =
        (day_of_era - day_of_era / 1_460 + day_of_era / 36_524 - day_of_era / 146_096) / 365;
    let day_of_year = day_of_era - (365 * year_of_era + year_of_era / 4 - year_of_era / 100);
    let month_from_march = (5 * day_of_year + 2) / 153;
    let day = day_of_year - (153 * month_from_march + 2) / 5 + 1;
    let january_or_february = month_from_march >= 10;
    let month = if january_or_february {
        month_from_march - 9
    } else {
        month_from_march + 3
    };
    let year = year_of_era + era * 400 + january_or_february as i64;
    (year, month as u8, day as u8)
}
