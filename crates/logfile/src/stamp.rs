//! A date, a time or both as a cell has them, before it is known which number is the day.

use crate::calendar::days;
use crate::months::month_named;

/// Which of three numbers is the day.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DateOrder {
    /// 05/03/2024 is the fifth of March.
    DayMonthYear,
    /// 05/03/2024 is the third of May.
    MonthDayYear,
    /// 24/03/05 is the fifth of March 2024.
    YearMonthDay,
}

impl DateOrder {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::DayMonthYear, Self::MonthDayYear, Self::YearMonthDay];
}

/// A date in a cell.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum DateParts {
    /// It can be read in one way only: days from 1970-01-01.
    Clear(i32),
    /// Three numbers; whether the last one has four digits.
    Open { numbers: [u16; 3], long_year: bool },
}

impl DateParts {
    /// Days from 1970-01-01 under an order; `None` where it is no date under it. Two digits are a
    /// year from 2000 on: no file of a logger is older (judgement).
    pub(crate) fn days(self, order: DateOrder) -> Option<i32> {
        let (numbers, long_year) = match self {
            Self::Clear(days) => return Some(days),
            Self::Open { numbers, long_year } => (numbers, long_year),
        };
        let [year, month, day] = match order {
            DateOrder::DayMonthYear => [numbers[2], numbers[1], numbers[0]],
            DateOrder::MonthDayYear => [numbers[2], numbers[0], numbers[1]],
            DateOrder::YearMonthDay => numbers,
        };
        if long_year && order == DateOrder::YearMonthDay {
            return None;
        }
        let year = if long_year { year } else { 2000 + year };
        let [month, day] = [month, day].map(|one| u8::try_from(one).unwrap_or(0));
        days(i32::from(year), month, day)
    }
}

/// Which half of the day a twelve-hour clock is in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Half {
    /// Before noon.
    Morning,
    /// From noon on.
    Afternoon,
}

/// A time in a cell.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct TimeParts {
    /// The first, the second, and the third number with its decimals.
    pub(crate) first: u32,
    pub(crate) second: u8,
    pub(crate) third: Option<f64>,
    pub(crate) half: Option<Half>,
    /// Whether the first number begins with a zero.
    pub(crate) padded: bool,
}

/// What a cell says of when.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(crate) struct Written {
    pub(crate) date: Option<DateParts>,
    pub(crate) time: Option<TimeParts>,
    /// Minutes east of UTC, where they stand behind it.
    pub(crate) offset: Option<i16>,
}

/// Reads a cell; `None` where it is neither date nor time from end to end.
pub(crate) fn written(cell: &str) -> Option<Written> {
    let mut rest = Rest(cell.trim());
    rest.skip_weekday();
    let mut found = Written::default();
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
            found.time = Some(rest.time()?);
            found.offset = rest.offset();
        }
    }
    rest.0.trim().is_empty().then_some(found)
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

    fn at(cell: &str) -> Option<(i32, u32, u8, f64)> {
        let found = written(cell)?;
        let time = found.time?;
        let days = found.date?.days(DateOrder::DayMonthYear)?;
        Some((days, time.first, time.second, time.third.unwrap_or(0.0)))
    }

    #[test]
    fn one_moment_is_read_in_many_forms() {
        for cell in [
            "2024-03-05 08:07:09",
            "2024-03-05T08:07:09",
            "2024/03/05 8:07:09",
            "20240305T080709",
            "05.03.2024 08:07:09",
            "5. 3. 2024 8:07:09",
            "05.03.24, 08:07:09",
            "05/03/2024 08:07:09",
            "05-03-24 08:07:09",
            "5 March 2024 08:07:09",
            "05-Mar-24 08:07:09",
            "2024-Mar-05 08:07:09",
            "Mar 5, 2024 08:07:09",
            "Di, 5. März 2024 08:07:09",
            "5 mars 2024 08:07:09",
            "5 de marzo de 2024 08:07:09",
            "08:07:09 05.03.2024",
            "Tue 05 Mar 2024 08:07:09",
        ] {
            assert_eq!(at(cell), Some((19_787, 8, 7, 9.0)), "{cell}");
        }
    }

    #[test]
    fn halves_decimals_and_offsets_are_kept() {
        let half = |cell| {
            written(cell)
                .and_then(|one| one.time)
                .and_then(|one| one.half)
        };
        for cell in [
            "3/5/2024 8:07 PM",
            "3/5/2024 8:07:09pm",
            "5/3/2024 8:07 p. m.",
        ] {
            assert_eq!(half(cell), Some(Half::Afternoon), "{cell}");
        }
        assert_eq!(half("8:07 a.m."), Some(Half::Morning));
        let second = |cell| {
            written(cell)
                .and_then(|one| one.time)
                .and_then(|one| one.third)
        };
        assert_eq!(second("08:07:09.250"), Some(9.25));
        assert_eq!(second("08:07:09,5"), Some(9.5));
        assert_eq!(second("08:07"), None);
        let offset = |cell| written(cell).and_then(|one| one.offset);
        assert_eq!(offset("2024-03-05T08:07:09Z"), Some(0));
        assert_eq!(offset("2024-03-05 08:07:09+01:00"), Some(60));
        assert_eq!(offset("2024-03-05 08:07:09 -0530"), Some(-330));
        assert_eq!(offset("2024-03-05 08:07:09+00"), Some(0));
        assert_eq!(offset("2024-03-05 08:07:09 UTC"), Some(0));
        assert_eq!(offset("2024-03-05 08:07:09"), None);
    }

    #[test]
    fn what_is_neither_date_nor_time_is_none() {
        for cell in [
            "",
            "-18.2",
            "12.5",
            "1.234.567",
            "12",
            "08:61",
            "2024-02-30",
            "5.3",
            "Temperature",
            "12:3",
            "1:2:3",
            "2024-03-05 -18",
            "31.04.2024",
            "00:10:75",
            "08:00 -12",
            "5.3/2024",
        ] {
            assert_eq!(written(cell), None, "{cell}");
        }
    }

    #[test]
    fn only_what_can_be_told_from_one_cell_is_told() {
        let days = |cell, order| {
            written(cell)
                .and_then(|one| one.date)
                .and_then(|one| one.days(order))
        };
        assert_ne!(
            days("05/03/2024", DateOrder::DayMonthYear),
            days("05/03/2024", DateOrder::MonthDayYear)
        );
        assert_eq!(days("05.03.2024", DateOrder::MonthDayYear), Some(19_787));
        assert_eq!(days("13/03/2024", DateOrder::MonthDayYear), None);
        assert_eq!(days("24/03/05", DateOrder::YearMonthDay), Some(19_787));
        assert_eq!(days("05/03/2024", DateOrder::YearMonthDay), None);
    }
}
