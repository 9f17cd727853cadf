//! A date, a time or both as a cell has them, before it is known which number is the day.

use crate::calendar::days;

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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scan::written;

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
