//! A moment, out of a time of day and a day that were typed.

use job::Moment;
use jobfile::parse_timestamp;
use wording::cold_page;

const MINUTE: i64 = 60_000;
const DAY: i64 = 1_440 * MINUTE;

/// Why what was typed is no moment.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NotWhen {
    /// It is no time of day.
    NotATime,
    /// A day was given that no calendar has.
    NotADay,
    /// It hasn't come yet.
    Ahead,
}

impl NotWhen {
    /// What to say of it.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::NotATime => cold_page::NOT_A_TIME,
            Self::NotADay => cold_page::NOT_A_DAY,
            Self::Ahead => cold_page::AHEAD,
        }
    }
}

/// The last moment at which a clock showed what was typed, "14:05", "2.05 pm" or "1405"; now, where
/// nothing was typed. What is ahead by a minute at most is now: clocks differ.
///
/// # Errors
/// [`NotWhen::NotATime`].
pub fn moment_at(typed: &str, now: Moment) -> Result<Moment, NotWhen> {
    let typed = typed.trim();
    if typed.is_empty() {
        return Ok(now);
    }
    let minutes = minutes_of_day(typed).ok_or(NotWhen::NotATime)?;
    let offset = i64::from(now.offset_minutes()) * MINUTE;
    let local = now.unix_milliseconds() + offset;
    let today = local - local.rem_euclid(DAY) + minutes * MINUTE;
    let at = match today - local {
        ahead if ahead > MINUTE => today - DAY,
        ahead if ahead > 0 => local,
        _ => today,
    };
    Moment::new(at - offset, now.offset_minutes()).map_err(|_| NotWhen::NotATime)
}

/// The moment at which a clock showed a time on a day, which is written as date fields hand it over,
/// "2026-11-25"; without a day the last such moment. `offset_at` tells how many minutes east of UTC
/// this device's clock is at a moment, in Unix milliseconds.
///
/// # Errors
/// [`NotWhen`]. Without a time a day is no moment.
pub fn moment_on(
    day: &str,
    time: &str,
    now: Moment,
    offset_at: impl Fn(f64) -> i16,
) -> Result<Moment, NotWhen> {
    let day = day.trim();
    if day.is_empty() {
        return moment_at(time, now);
    }
    let minutes = minutes_of_day(time.trim()).ok_or(NotWhen::NotATime)?;
    let midnight = parse_timestamp(&[day, "T00:00:00Z"].concat()).map_err(|_| NotWhen::NotADay)?;
    let local = midnight.unix_milliseconds() + minutes * MINUTE;
    // The clock's offset is asked for where it may lie, and once more where it does: it changes twice a year.
    let by = |offset: i16| local - i64::from(offset) * MINUTE;
    let offset = offset_at(by(offset_at(local as f64)) as f64);
    let at = Moment::new(by(offset), offset).map_err(|_| NotWhen::NotADay)?;
    match by(offset) - now.unix_milliseconds() {
        ahead if ahead > MINUTE => Err(NotWhen::Ahead),
        ahead if ahead > 0 => Ok(now),
        _ => Ok(at),
    }
}

/// Minutes since midnight of what a clock shows.
fn minutes_of_day(typed: &str) -> Option<i64> {
    let small = typed.to_ascii_lowercase();
    let (clock, half) = match small.strip_suffix('m').map(str::trim_end) {
        None => (small.as_str(), None),
        Some(half) => (half.get(..half.len().checked_sub(1)?)?, half.chars().last()),
    };
    let clock = clock.trim_end();
    let digits = |text: &str| {
        let fits = (1..=2).contains(&text.len()) && text.bytes().all(|c| c.is_ascii_digit());
        fits.then(|| text.parse::<i64>().ok()).flatten()
    };
    let (hours, minutes) = match clock.split_once([':', '.', 'h']) {
        Some((hours, minutes)) => (digits(hours)?, digits(minutes)?),
        None if clock.len() == 4 && clock.is_ascii() => {
            let (hours, minutes) = clock.split_at(2);
            (digits(hours)?, digits(minutes)?)
        }
        // "3 pm", but not a bare "3", which may be minutes ago as well.
        None => (half.and(digits(clock))?, 0),
    };
    let hours = match half {
        None => hours,
        Some('a') if (1..=12).contains(&hours) => hours % 12,
        Some('p') if (1..=12).contains(&hours) => hours % 12 + 12,
        Some(_) => return None,
    };
    ((0..24).contains(&hours) && (0..60).contains(&minutes)).then_some(hours * 60 + minutes)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 25 November 2026, 13:05 by a clock an hour east of UTC.
    fn now() -> Moment {
        Moment::new(1_795_608_300_000, 60).unwrap()
    }

    /// A clock that was put back an hour on 25 October 2026 at 01:00 UTC.
    fn offset_at(unix_milliseconds: f64) -> i16 {
        if unix_milliseconds < 1_792_890_000_000.0 {
            120
        } else {
            60
        }
    }

    #[test]
    fn a_day_with_a_time_is_that_moment_by_the_clock_of_that_day() {
        let on = |day, time| {
            let at = moment_on(day, time, now(), offset_at)?;
            let clock = at.wall_clock();
            Ok::<_, NotWhen>((
                at.offset_minutes(),
                clock.month,
                clock.day,
                clock.hour,
                clock.minute,
            ))
        };
        assert_eq!(on("2026-11-20", "14:05"), Ok((60, 11, 20, 14, 5)));
        assert_eq!(on("2026-10-25", "23:30"), Ok((60, 10, 25, 23, 30)));
        assert_eq!(on("2026-10-25", "0:30"), Ok((120, 10, 25, 0, 30)));
        assert_eq!(on("2026-10-25", "1:30"), Ok((120, 10, 25, 1, 30)));
        assert_eq!(on("2026-06-30", "2:05 pm"), Ok((120, 6, 30, 14, 5)));
        assert_eq!(on(" ", "12:35"), Ok((60, 11, 25, 12, 35)));
        // Clocks differ by a minute.
        assert_eq!(on("2026-11-25", "13:06"), Ok((60, 11, 25, 13, 5)));
    }

    #[test]
    fn what_is_no_moment_says_why() {
        let refused = |day, time| moment_on(day, time, now(), offset_at).unwrap_err();
        assert_eq!(refused("2026-11-25", "13:07"), NotWhen::Ahead);
        assert_eq!(refused("2027-01-01", "0:00"), NotWhen::Ahead);
        assert_eq!(refused("2026-02-30", "14:05"), NotWhen::NotADay);
        assert_eq!(refused("1969-12-31", "14:05"), NotWhen::NotADay);
        assert_eq!(refused("25.11.2026", "14:05"), NotWhen::NotADay);
        assert_eq!(refused("2026-11-20", ""), NotWhen::NotATime);
        assert_eq!(refused("", "soon"), NotWhen::NotATime);
    }

    #[test]
    fn a_time_is_the_last_at_which_a_clock_showed_it() {
        let ago = |typed| {
            let at = moment_at(typed, now()).unwrap();
            (now().unix_milliseconds() - at.unix_milliseconds()) / MINUTE
        };
        for (typed, minutes) in [
            ("", 0),
            ("13:05", 0),
            ("13:06", 0),
            ("12:35", 30),
            ("12.35 pm", 30),
            ("1 PM", 5),
            ("1250", 15),
            ("13:15", 23 * 60 + 50),
            ("12:05 am", 13 * 60),
            ("0h05", 13 * 60),
        ] {
            assert_eq!(ago(typed), minutes, "{typed}");
        }
        for typed in [
            "25:00", "12:60", "soon", "3", "13 pm", "-1:00", "m", "pm", "1:2:3",
        ] {
            assert_eq!(moment_at(typed, now()), Err(NotWhen::NotATime), "{typed}");
        }
    }
}
