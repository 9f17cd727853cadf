//! Moments as text, by RFC 3339: `2026-11-25T13:04:05+01:00`.
//!
//! The calendar is computed here, in whole days of the proleptic Gregorian calendar, because a
//! date library would weigh more than the rest of this crate in the page. It is checked against
//! one in the tests, day by day.

use job::{Moment, MomentError, WallClock};

/// Why a text is not a moment.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TimestampError {
    /// Not of the form `2026-11-25T13:04:05+01:00`, with up to three decimals of a second.
    Form,
    /// No calendar or clock shows it: month 13, 30 February, second 60.
    NoSuchTime,
    /// Before 1970 or after 9999, or an offset of more than 18 hours.
    Outside(MomentError),
}

const DAY: i64 = 86_400_000;
const MINUTE: i64 = 60_000;

/// Writes a moment as the clock on the wall showed it, with its offset from UTC. Milliseconds
/// are written only where there are some.
///
/// ```
/// # use job::Moment;
/// # use jobfile::write_timestamp;
/// let moment = Moment::new(1_790_000_000_250, -210).unwrap();
/// assert_eq!(write_timestamp(moment), "2026-09-21T10:43:20.250-03:30");
/// ```
#[must_use]
pub fn write_timestamp(moment: Moment) -> String {
    let WallClock {
        year,
        month,
        day,
        hour,
        minute,
        second,
        millisecond,
    } = moment.wall_clock();
    let fraction = match millisecond {
        0 => String::new(),
        some => format!(".{some:03}"),
    };
    let offset = moment.offset_minutes();
    let sign = if offset < 0 { '-' } else { '+' };
    let (offset_hour, offset_minute) = (offset.abs() / 60, offset.abs() % 60);
    format!(
        "{year:04}-{month:02}-{day:02}T{hour:02}:{minute:02}:{second:02}{fraction}\
         {sign}{offset_hour:02}:{offset_minute:02}"
    )
}

/// Reads a moment. `T` and `Z` may be small letters; `Z` and `-00:00` are an offset of zero.
///
/// # Errors
/// [`TimestampError`] where the text is of another form or names no moment that can be kept.
pub fn parse_timestamp(text: &str) -> Result<Moment, TimestampError> {
    let mut rest = Rest(text.as_bytes());
    let year = rest.number(4)?;
    rest.one_of(b"-")?;
    let month = rest.number(2)?;
    rest.one_of(b"-")?;
    let day = rest.number(2)?;
    rest.one_of(b"Tt")?;
    let hour = rest.number(2)?;
    rest.one_of(b":")?;
    let minute = rest.number(2)?;
    rest.one_of(b":")?;
    let second = rest.number(2)?;
    let milliseconds = rest.fraction()?;
    let offset = rest.offset()?;
    rest.end()?;

    let on_a_clock = hour < 24 && minute < 60 && second < 60;
    if !on_a_clock || !(1..=12).contains(&month) || day < 1 || day > month_length(year, month) {
        return Err(TimestampError::NoSuchTime);
    }
    let minutes = (hour * 60 + minute) - i64::from(offset);
    let unix = days(year, month, day) * DAY + minutes * MINUTE + second * 1000 + milliseconds;
    Moment::new(unix, offset).map_err(TimestampError::Outside)
}

/// Days from 0000-03-01 to 1970-01-01. Counting from March is simplest: a leap day is then the
/// last day of its year.
const ERA_START: i64 = 719_468;
/// Days in 400 years, after which the calendar repeats.
const ERA_DAYS: i64 = 146_097;

/// How many days after 1970-01-01 a date lies.
fn days(year: i64, month: i64, day: i64) -> i64 {
    let shifted_year = year - i64::from(month <= 2);
    let shifted_month = (month + 9) % 12;
    let era = shifted_year.div_euclid(400);
    let year_of_era = shifted_year.rem_euclid(400);
    let years = year_of_era * 365 + year_of_era / 4 - year_of_era / 100;
    let months = (153 * shifted_month + 2) / 5;
    era * ERA_DAYS + years + months + day - 1 - ERA_START
}

fn month_length(year: i64, month: i64) -> i64 {
    let leap = year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
    match month {
        2 => 28 + i64::from(leap),
        4 | 6 | 9 | 11 => 30,
        _ => 31,
    }
}

/// What is left of a text being read.
struct Rest<'a>(&'a [u8]);

impl Rest<'_> {
    fn number(&mut self, digits: usize) -> Result<i64, TimestampError> {
        let (head, tail) = self
            .0
            .split_at_checked(digits)
            .ok_or(TimestampError::Form)?;
        let mut number = 0;
        for byte in head {
            if !byte.is_ascii_digit() {
                return Err(TimestampError::Form);
            }
            number = number * 10 + i64::from(byte - b'0');
        }
        self.0 = tail;
        Ok(number)
    }

    fn one_of(&mut self, allowed: &[u8]) -> Result<u8, TimestampError> {
        match self.0.split_first() {
            Some((first, tail)) if allowed.contains(first) => {
                self.0 = tail;
                Ok(*first)
            }
            _ => Err(TimestampError::Form),
        }
    }

    /// Up to three decimals of a second as milliseconds.
    fn fraction(&mut self) -> Result<i64, TimestampError> {
        if self.one_of(b".").is_err() {
            return Ok(0);
        }
        let mut milliseconds = self.number(1)? * 100;
        for unit in [10, 1] {
            match self.number(1) {
                Ok(digit) => milliseconds += digit * unit,
                Err(_) => break,
            }
        }
        Ok(milliseconds)
    }

    /// Minutes east of UTC.
    fn offset(&mut self) -> Result<i16, TimestampError> {
        let sign = match self.one_of(b"Zz+-")? {
            b'+' => 1,
            b'-' => -1,
            _ => return Ok(0),
        };
        let hours = self.number(2)?;
        self.one_of(b":")?;
        let minutes = self.number(2)?;
        if hours > 23 || minutes > 59 {
            return Err(TimestampError::NoSuchTime);
        }
        i16::try_from(sign * (hours * 60 + minutes)).map_err(|_| TimestampError::NoSuchTime)
    }

    fn end(self) -> Result<(), TimestampError> {
        if self.0.is_empty() {
            Ok(())
        } else {
            Err(TimestampError::Form)
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use jiff::civil::date;
    use proptest::prelude::*;

    fn by_jiff(moment: Moment) -> String {
        let offset = jiff::tz::Offset::from_seconds(i32::from(moment.offset_minutes()) * 60);
        let timestamp = jiff::Timestamp::from_millisecond(moment.unix_milliseconds());
        let local = offset.unwrap().to_datetime(timestamp.unwrap());
        let digits = if local.millisecond() == 0 { 0 } else { 3 };
        let printer = jiff::fmt::temporal::DateTimePrinter::new().precision(Some(digits));
        let sign = if moment.offset_minutes() < 0 {
            '-'
        } else {
            '+'
        };
        let minutes = moment.offset_minutes().abs();
        format!(
            "{}{sign}{:02}:{:02}",
            printer.datetime_to_string(&local),
            minutes / 60,
            minutes % 60
        )
    }

    #[test]
    fn every_day_that_can_be_written_is_the_day_that_jiff_says() {
        let mut expected = date(1970, 1, 1);
        for number in 0..=Moment::LATEST / DAY {
            let shown = Moment::new(number * DAY, 0).unwrap().wall_clock();
            let theirs = (i64::from(expected.year()), expected.month(), expected.day());
            let (month, day) = (shown.month.cast_signed(), shown.day.cast_signed());
            assert_eq!((shown.year, month, day), theirs);
            assert_eq!(days(shown.year, month.into(), day.into()), number);
            if number * DAY < Moment::LATEST {
                expected = expected.tomorrow().unwrap();
            }
        }
    }

    proptest! {
        #[test]
        fn a_moment_is_written_as_jiff_writes_it_and_read_back_the_same(
            unix in 0..=Moment::LATEST, offset in -1080i16..=1080
        ) {
            let moment = Moment::new(unix, offset).unwrap();
            let written = write_timestamp(moment);
            prop_assert_eq!(&written, &by_jiff(moment));
            prop_assert_eq!(parse_timestamp(&written), Ok(moment));
        }

        #[test]
        fn what_is_read_is_what_jiff_reads(
            text in "(19[67]|20[0-4]|999)[0-9]-[01][0-9]-[0-3][0-9][Tt][0-2][0-9]:[0-5][0-9]:[0-5][0-9](\\.[0-9]{1,3})?([Zz]|[+-][01][0-9]:[0-5][0-9])"
        ) {
            let theirs: Option<jiff::Timestamp> = text.parse().ok();
            match parse_timestamp(&text) {
                Ok(moment) => prop_assert_eq!(
                    Some(moment.unix_milliseconds()),
                    theirs.map(jiff::Timestamp::as_millisecond)
                ),
                Err(TimestampError::NoSuchTime) => prop_assert!(theirs.is_none(), "{}", text),
                Err(TimestampError::Outside(_)) => {}
                Err(TimestampError::Form) => prop_assert!(false, "{}", text),
            }
        }

        #[test]
        fn no_text_makes_the_reader_fall_over(text in "\\PC{0,40}") {
            let _ = parse_timestamp(&text);
        }
    }

    #[test]
    fn the_ends_of_time_can_be_written_at_any_offset() {
        for (unix, offset, text) in [
            (0, -1080, "1969-12-31T06:00:00-18:00"),
            (Moment::LATEST, 1080, "9999-12-31T18:00:00+18:00"),
        ] {
            let moment = Moment::new(unix, offset).unwrap();
            assert_eq!(write_timestamp(moment), text);
            assert_eq!(parse_timestamp(text), Ok(moment));
        }
    }

    #[test]
    fn other_forms_are_told_from_times_that_are_not() {
        for text in [
            "",
            "2026-11-25",
            "2026-11-25 13:04:05Z",
            "2026-11-25T13:04:05",
            "x",
        ] {
            assert_eq!(parse_timestamp(text), Err(TimestampError::Form), "{text}");
        }
        for text in [
            "2026-02-29T00:00:00Z",
            "2026-13-01T00:00:00Z",
            "2026-01-01T24:00:00Z",
        ] {
            assert_eq!(
                parse_timestamp(text),
                Err(TimestampError::NoSuchTime),
                "{text}"
            );
        }
        assert_eq!(
            parse_timestamp("1969-12-31T23:59:59Z"),
            Err(TimestampError::Outside(MomentError::OutOfYears))
        );
        assert_eq!(
            parse_timestamp("2026-11-25T13:04:05+19:00"),
            Err(TimestampError::Outside(MomentError::OutOfOffsets))
        );
        assert_eq!(
            parse_timestamp("2026-11-25T13:04:05.0001Z"),
            Err(TimestampError::Form)
        );
    }
}
