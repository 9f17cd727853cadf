//! How numbers, temperatures and dates are written where the reader lives.

use job::Moment;
use quantity::Celsius;

use crate::Words;

/// The mark between whole and decimal digits.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum DecimalMark {
    /// 4.7
    #[default]
    Point,
    /// 4,7
    Comma,
}

/// The scale on which temperatures are told.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Degrees {
    /// °C
    #[default]
    Celsius,
    /// °F
    Fahrenheit,
}

impl Words for Degrees {
    fn words(self) -> &'static str {
        match self {
            Self::Celsius => "°C",
            Self::Fahrenheit => "°F",
        }
    }
}

/// Whether the day or the month comes first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum DateOrder {
    /// 25 Nov 2026
    #[default]
    DayFirst,
    /// Nov 25, 2026
    MonthFirst,
}

/// How numbers, temperatures and dates are written.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Locale {
    /// The decimal mark.
    pub decimal: DecimalMark,
    /// The temperature scale.
    pub degrees: Degrees,
    /// The order of dates.
    pub dates: DateOrder,
}

impl Locale {
    /// A number with so many decimals, in the reader's way and with a true minus sign.
    ///
    /// ```
    /// # use wording::{DecimalMark, Locale};
    /// let comma = Locale { decimal: DecimalMark::Comma, ..Locale::default() };
    /// assert_eq!(comma.number(4.72, 1), "4,7");
    /// ```
    #[must_use]
    pub fn number(&self, value: f64, decimals: usize) -> String {
        let plain = format!("{value:.decimals$}");
        let marked = match self.decimal {
            DecimalMark::Point => plain,
            DecimalMark::Comma => plain.replace('.', ","),
        };
        match marked.strip_prefix('-') {
            Some(rest) if rest.contains(|c| matches!(c, '1'..='9')) => format!("−{rest}"),
            Some(rest) => rest.to_owned(),
            None => marked,
        }
    }

    /// A temperature in whole degrees of the reader's scale.
    #[must_use]
    pub fn temperature(&self, temperature: Celsius) -> String {
        match self.degrees {
            Degrees::Celsius => format!("{}\u{a0}°C", self.number(temperature.get(), 0)),
            Degrees::Fahrenheit => {
                format!("{}\u{a0}°F", self.number(temperature.to_fahrenheit(), 0))
            }
        }
    }

    /// The time of day as the clock on the wall showed it.
    #[must_use]
    pub fn clock(&self, moment: Moment) -> String {
        let clock = moment.wall_clock();
        format!("{:02}:{:02}", clock.hour, clock.minute)
    }

    /// The day as the calendar on the wall showed it, without its year.
    ///
    /// ```
    /// # use job::Moment;
    /// # use wording::{DateOrder, Locale};
    /// let moment = Moment::new(1_795_608_300_000, 60).unwrap();
    /// let month_first = Locale { dates: DateOrder::MonthFirst, ..Locale::default() };
    /// assert_eq!(Locale::default().day(moment), "25 Nov");
    /// assert_eq!(month_first.day(moment), "Nov 25");
    /// ```
    #[must_use]
    pub fn day(&self, moment: Moment) -> String {
        let clock = moment.wall_clock();
        // A wall clock's month is 1 to 12.
        let (day, month) = (clock.day, MONTHS[usize::from(clock.month) - 1]);
        match self.dates {
            DateOrder::DayFirst => format!("{day} {month}"),
            DateOrder::MonthFirst => format!("{month} {day}"),
        }
    }

    /// Date and time as the clock on the wall showed them.
    #[must_use]
    pub fn moment(&self, moment: Moment) -> String {
        let (day, time) = (self.day(moment), self.clock(moment));
        let year = moment.wall_clock().year;
        match self.dates {
            DateOrder::DayFirst => format!("{day} {year}, {time}"),
            DateOrder::MonthFirst => format!("{day}, {year}, {time}"),
        }
    }
}

const MONTHS: [&str; 12] = [
    "Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec",
];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nothing_is_never_written_with_a_minus() {
        assert_eq!(Locale::default().number(-0.04, 1), "0.0");
        assert_eq!(Locale::default().number(-3.0, 0), "−3");
    }

    #[test]
    fn a_moment_is_told_in_the_local_time_it_was_made() {
        let moment = Moment::new(1_795_608_300_000, 60).unwrap();
        assert_eq!(Locale::default().moment(moment), "25 Nov 2026, 13:05");
        let us = Locale {
            dates: DateOrder::MonthFirst,
            ..Locale::default()
        };
        assert_eq!(us.moment(moment), "Nov 25, 2026, 13:05");
    }

    #[test]
    fn sixty_degrees_celsius_are_a_hundred_and_forty_fahrenheit() {
        let us = Locale {
            degrees: Degrees::Fahrenheit,
            ..Locale::default()
        };
        assert_eq!(us.temperature(Celsius::new(60.0)), "140\u{a0}°F");
    }
}
