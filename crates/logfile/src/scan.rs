//! Finds date, time and zone in a cell, in whatever order and with whatever names of months.

use crate::calendar::days;
use crate::months::month_named;
use crate::stamp::{DateOrder, DateParts, Half, TimeParts, Written};

/// Reads a cell; `None` where it is neither date nor time from end to end.
pub(crate) fn written(cell: &str) -> Option<Written> {
    scanned(cell.trim()).map(|(found, _)| found)
}

/// Reads a cell without blanks around it, and says how many bytes stand in front of its time where
/// that follows a date.
pub(crate) fn scanned(cell: &str) -> Option<(Written, Option<usize>)> {
    let mut rest = Rest(cell);
    rest.skip_weekday();
    let mut found = Written::default();
    let mut in_front = None;
    let before = rest.0;
    if let Some(time) = rest.time() {
        (found.time, found.offset) = (Some(time), rest.offset());
        rest.skip_between();
        if !rest.0.is_empty() {
            found.date = Some(rest.date()?);
        }
    } else {
        rest.0 = before;
        found.date = Some(rest.date()?);
        rest.skip_between();
        if !rest.0.is_empty() {
            in_front = Some(cell.len() - rest.0.len());
            found.time = Some(rest.time()?);
            found.offset = rest.offset();
        }
    }
    rest.0.trim().is_empty().then_some((found, in_front))
}

/// Reads what follows a date: a time with its offset, to the end.
pub(crate) fn time_to_end(text: &str) -> Option<(TimeParts, Option<i16>)> {
    plain_time(text).or_else(|| any_time(text))
}

/// 08:07:09, or that with a Z behind: most of all there are. Says what [`any_time`] says.
fn plain_time(text: &str) -> Option<(TimeParts, Option<i16>)> {
    let (clock, offset) = match text.strip_suffix('Z') {
        Some(clock) => (clock, Some(0)),
        None => (text, None),
    };
    let [one, two, b':', three, four, b':', five, six] = *clock.as_bytes() else {
        return None;
    };
    let number = |tens: u8, ones: u8| {
        let are_digits = tens.is_ascii_digit() && ones.is_ascii_digit();
        are_digits.then(|| (tens - b'0') * 10 + ones - b'0')
    };
    let below_sixty = |tens, ones| number(tens, ones).filter(|found| *found < 60);
    let time = TimeParts {
        first: number(one, two)?.into(),
        second: below_sixty(three, four)?,
        third: Some(below_sixty(five, six)?.into()),
        half: None,
        padded: one == b'0',
    };
    Some((time, offset))
}

fn any_time(text: &str) -> Option<(TimeParts, Option<i16>)> {
    let mut rest = Rest(text);
    let time = rest.time()?;
    let offset = rest.offset();
    rest.0.trim().is_empty().then_some((time, offset))
}

/// What of a cell hasn't been read yet.
struct Rest<'a>(&'a str);

impl<'a> Rest<'a> {
    fn first(&self) -> Option<char> {
        self.0.chars().next()
    }

    fn take(&mut self, is_wanted: impl Fn(char) -> bool) -> &'a str {
        let end = self
            .0
            .find(|letter| !is_wanted(letter))
            .unwrap_or(self.0.len());
        let (taken, rest) = self.0.split_at(end);
        self.0 = rest;
        taken
    }

    fn blanks(&mut self) {
        self.take(is_blank);
    }

    fn digits(&mut self) -> Option<&'a str> {
        let digits = self.take(|letter| letter.is_ascii_digit());
        (1..=9).contains(&digits.len()).then_some(digits)
    }

    /// A name of a weekday goes before a date and says nothing more.
    fn skip_weekday(&mut self) {
        let before = self.0;
        let name = self.take(char::is_alphabetic);
        if name.is_empty() || name.chars().count() > 10 || month_named(name).is_some() {
            self.0 = before;
            return;
        }
        self.take(|letter| is_blank(letter) || matches!(letter, '.' | ','));
    }

    fn skip_between(&mut self) {
        self.blanks();
        self.take(|letter| matches!(letter, ',' | 'T' | 't' | '_'));
        self.blanks();
    }

    fn date(&mut self) -> Option<DateParts> {
        if self.first()?.is_alphabetic() {
            // Mar 5, 2024
            let month = month_named(self.take(char::is_alphabetic))?;
            self.take(|letter| is_blank(letter) || matches!(letter, '.' | '-' | '/'));
            let day = self.digits()?;
            self.take(|letter| is_blank(letter) || matches!(letter, '.' | ',' | '-' | '/'));
            let year = self.digits()?;
            return clear(year, month, day);
        }
        let one = self.digits()?;
        if one.len() == 8 && matches!(self.first(), Some('T' | 't')) {
            // 20240305T080000
            return clear(&one[..4], one[4..6].parse().ok()?, &one[6..]);
        }
        let separator = self.take(is_separator);
        if self.first()?.is_alphabetic() {
            return self.date_with_name(one);
        }
        let two = self.digits()?;
        let again = self.take(is_separator);
        // "5. 3. 2024" and "5/3/2024", but not "5.3/2024".
        let mark = separator.trim();
        if mark != again.trim() || !matches!(mark, "." | "/" | "-") {
            return None;
        }
        let three = self.digits()?;
        if one.len() == 4 {
            return clear(one, two.parse().ok()?, three);
        }
        if one.len() > 2 || two.len() > 2 || !matches!(three.len(), 2 | 4) {
            return None;
        }
        let parts = DateParts::Open {
            numbers: [one.parse().ok()?, two.parse().ok()?, three.parse().ok()?],
            long_year: three.len() == 4,
        };
        // Between points the day stands first wherever dates are written so (common practice).
        match mark {
            "." => Some(DateParts::Clear(parts.days(DateOrder::DayMonthYear)?)),
            _ => Some(parts),
        }
    }

    /// 5 March 2024, 05-Mar-24, 2024-Mar-05, 5 de marzo de 2024, behind the first number.
    fn date_with_name(&mut self, one: &str) -> Option<DateParts> {
        let mut name = self.take(char::is_alphabetic);
        if name.eq_ignore_ascii_case("de") {
            self.blanks();
            name = self.take(char::is_alphabetic);
        }
        let month = month_named(name)?;
        self.take(is_separator);
        let before = self.0;
        if !self.take(char::is_alphabetic).eq_ignore_ascii_case("de") {
            self.0 = before;
        }
        self.blanks();
        let three = self.digits()?;
        if one.len() == 4 {
            clear(one, month, three)
        } else {
            clear(three, month, one)
        }
    }

    fn time(&mut self) -> Option<TimeParts> {
        let first = self.digits()?;
        if !matches!(self.first(), Some(':' | 'h')) {
            return basic_time(first);
        }
        self.0 = &self.0[1..];
        let second = self.two_below_sixty()?;
        let mut third = None;
        if matches!(self.first(), Some(':' | 'm')) {
            self.0 = &self.0[1..];
            // "08h30m" has no seconds.
            if self.first().is_some_and(|letter| letter.is_ascii_digit()) {
                let whole = self.two_below_sixty()?;
                third = Some(f64::from(whole) + self.decimals()?);
            }
        }
        Some(TimeParts {
            first: first.parse().ok()?,
            second,
            third,
            half: self.half(),
            padded: first.starts_with('0'),
        })
    }

    fn two_below_sixty(&mut self) -> Option<u8> {
        let digits = self.digits().filter(|digits| digits.len() == 2)?;
        digits.parse().ok().filter(|number| *number < 60)
    }

    /// What follows the seconds; zero where nothing does.
    fn decimals(&mut self) -> Option<f64> {
        if !matches!(self.first(), Some('.' | ',')) {
            return Some(0.0);
        }
        self.0 = &self.0[1..];
        let digits = self.digits()?;
        let scale = libm::pow(10.0, digits.len() as f64);
        Some(f64::from(digits.parse::<u32>().ok()?) / scale)
    }

    /// AM, p.m., "a. m."
    fn half(&mut self) -> Option<Half> {
        let before = self.0;
        self.blanks();
        let letter = self.first()?.to_ascii_lowercase();
        let half = match letter {
            'a' => Half::Morning,
            'p' => Half::Afternoon,
            _ => {
                self.0 = before;
                return None;
            }
        };
        self.0 = &self.0[1..];
        self.take(|one| is_blank(one) || one == '.');
        if !matches!(self.first(), Some('m' | 'M')) {
            self.0 = before;
            return None;
        }
        self.0 = &self.0[1..];
        self.take(|one| one == '.');
        Some(half)
    }

    /// Z, UTC, +01:00, +0100; +01 only where it follows without a blank.
    fn offset(&mut self) -> Option<i16> {
        let attached = self.first().is_some_and(|letter| !is_blank(letter));
        let before = self.0;
        self.blanks();
        let name = self.take(|letter| letter.is_ascii_alphabetic());
        if !name.is_empty() {
            let known = [("z", 0), ("utc", 0), ("gmt", 0), ("cet", 60), ("cest", 120)];
            let offset = known.iter().find(|(one, _)| name.eq_ignore_ascii_case(one));
            if offset.is_none() && name.len() < 3 {
                self.0 = before;
            }
            return offset.map(|(_, minutes)| *minutes);
        }
        let sign = match self.first() {
            Some('+') => 1,
            Some('-' | '−') => -1,
            _ => {
                self.0 = before;
                return None;
            }
        };
        self.take(|letter| matches!(letter, '+' | '-' | '−'));
        let digits = self.digits().unwrap_or_default();
        let minutes = match digits.len() {
            4 => &digits[2..],
            2 if self.first() == Some(':') => {
                self.0 = &self.0[1..];
                self.digits()
                    .filter(|one| one.len() == 2)
                    .unwrap_or_default()
            }
            2 if attached => "00",
            _ => "",
        };
        let hours: Option<i16> = digits.get(..2).and_then(|one| one.parse().ok());
        match (hours.filter(|one| *one <= 14), minutes.parse::<i16>()) {
            (Some(hours), Ok(minutes)) => Some(sign * (hours * 60 + minutes)),
            _ => {
                self.0 = before;
                None
            }
        }
    }
}

/// 080709, the basic form of ISO 8601.
fn basic_time(digits: &str) -> Option<TimeParts> {
    if digits.len() != 6 {
        return None;
    }
    let pair = |from: usize| digits[from..from + 2].parse::<u8>().ok();
    Some(TimeParts {
        first: pair(0).filter(|hour| *hour < 24)?.into(),
        second: pair(2).filter(|minute| *minute < 60)?,
        third: Some(pair(4).filter(|second| *second < 60)?.into()),
        half: None,
        padded: true,
    })
}

const fn is_blank(letter: char) -> bool {
    matches!(letter, ' ' | '\u{A0}' | '\u{202F}' | '\t')
}

const fn is_separator(letter: char) -> bool {
    is_blank(letter) || matches!(letter, '.' | '/' | '-')
}

fn clear(year: &str, month: u8, day: &str) -> Option<DateParts> {
    let number: i32 = year.parse().ok()?;
    let year = match year.len() {
        4 => number,
        2 => 2000 + number,
        _ => return None,
    };
    let day = day.parse().ok().filter(|_| day.len() <= 2)?;
    days(year, month, day).map(DateParts::Clear)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn plain_times_are_what_they_are_the_long_way() {
        let mut seen = 0;
        for clock in [
            "08:07:09", "23:59:59", "00:00:00", "99:00:00", "24:00:00", "12:60:00", "12:00:60",
            "8:07:09", "12:0a:00", "12.00.00", "12:00", "", "Z",
        ] {
            for behind in ["", "Z", "z", " Z", "+01:00", ".5", " PM"] {
                let text = [clock, behind].concat();
                if let Some(found) = plain_time(&text) {
                    assert_eq!(any_time(&text), Some(found), "{text}");
                    seen += 1;
                }
            }
        }
        assert_eq!(seen, 10);
    }
}
