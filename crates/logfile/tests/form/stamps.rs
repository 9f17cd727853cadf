//! The ways in which a row says when.

use super::Form;

/// How a row says when.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Stamp {
    IsoUtc,
    IsoLocal,
    Dotted,
    DottedShort,
    DaySlash,
    MonthSlash,
    ShortDaySlash,
    ShortYearFirst,
    MonthSlashMarked,
    MonthSlashTwelve,
    English,
    German,
    French,
    Spanish,
    TwoColumns,
    TimeOfDay,
    SerialDays,
    UnixSeconds,
    UnixMilliseconds,
    Minutes,
    UnnamedSeconds,
    HoursMinutesSeconds,
}

pub(crate) const STAMPS: [Stamp; 22] = [
    Stamp::IsoUtc,
    Stamp::IsoLocal,
    Stamp::Dotted,
    Stamp::DottedShort,
    Stamp::DaySlash,
    Stamp::MonthSlash,
    Stamp::ShortDaySlash,
    Stamp::ShortYearFirst,
    Stamp::MonthSlashMarked,
    Stamp::MonthSlashTwelve,
    Stamp::English,
    Stamp::German,
    Stamp::French,
    Stamp::Spanish,
    Stamp::TwoColumns,
    Stamp::TimeOfDay,
    Stamp::SerialDays,
    Stamp::UnixSeconds,
    Stamp::UnixMilliseconds,
    Stamp::Minutes,
    Stamp::UnnamedSeconds,
    Stamp::HoursMinutesSeconds,
];

const MONTHS: [[&str; 12]; 4] = [
    [
        "Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec",
    ],
    [
        "Januar",
        "Februar",
        "März",
        "April",
        "Mai",
        "Juni",
        "Juli",
        "August",
        "September",
        "Oktober",
        "November",
        "Dezember",
    ],
    [
        "janvier",
        "février",
        "mars",
        "avril",
        "mai",
        "juin",
        "juillet",
        "août",
        "septembre",
        "octobre",
        "novembre",
        "décembre",
    ],
    [
        "enero",
        "febrero",
        "marzo",
        "abril",
        "mayo",
        "junio",
        "julio",
        "agosto",
        "septiembre",
        "octubre",
        "noviembre",
        "diciembre",
    ],
];

impl Form {
    pub(super) fn stamped(&self, row: i64) -> Vec<String> {
        let minute = self.minute(row);
        let since = row * self.step_minutes;
        let (year, month, day) = date(minute.div_euclid(1440));
        let (hour, min) = (minute.rem_euclid(1440) / 60, minute.rem_euclid(60));
        let twelve = if hour % 12 == 0 { 12 } else { hour % 12 };
        let half = if hour < 12 { "AM" } else { "PM" };
        let short = year % 100;
        let name = |language: usize| MONTHS[language][month as usize - 1];
        let one = match self.stamp {
            Stamp::IsoUtc => format!("{year}-{month:02}-{day:02}T{hour:02}:{min:02}:00Z"),
            Stamp::IsoLocal => format!("{year}-{month:02}-{day:02} {hour:02}:{min:02}:00"),
            Stamp::Dotted => format!("{day:02}.{month:02}.{year} {hour:02}:{min:02}"),
            Stamp::DottedShort => format!("{day}.{month}.{short:02} {hour}:{min:02}"),
            Stamp::DaySlash => format!("{day:02}/{month:02}/{year} {hour:02}:{min:02}"),
            Stamp::MonthSlash => format!("{month}/{day}/{year} {hour}:{min:02}"),
            Stamp::ShortDaySlash => format!("{day:02}/{month:02}/{short:02} {hour:02}:{min:02}:00"),
            Stamp::ShortYearFirst => format!("{short:02}/{month:02}/{day:02} {hour:02}:{min:02}"),
            Stamp::MonthSlashMarked => {
                format!("{month:02}/{day:02}/{year} {twelve:02}:{min:02} {half}")
            }
            Stamp::MonthSlashTwelve => format!("{month:02}/{day:02}/{year} {twelve}:{min:02}"),
            Stamp::English => format!("{} {day}, {year} {hour:02}:{min:02}", name(0))
                .replace(',', if self.delimiter == ',' { "" } else { "," }),
            Stamp::German => format!("{day}. {} {year} {hour:02}:{min:02}", name(1)),
            Stamp::French => format!("{day} {} {year} {hour}h{min:02}", name(2)),
            Stamp::Spanish => format!("{day} de {} de {year} {hour}:{min:02}", name(3)),
            Stamp::TwoColumns => {
                return vec![
                    format!("{day:02}/{month:02}/{year}"),
                    format!("{hour:02}:{min:02}"),
                ];
            }
            Stamp::TimeOfDay => format!("{hour:02}:{min:02}:00"),
            Stamp::SerialDays => self.decimal(format!("{:.9}", minute as f64 / 1440.0 + 25_569.0)),
            Stamp::UnixSeconds => (minute * 60).to_string(),
            Stamp::UnixMilliseconds => (minute * 60_000).to_string(),
            Stamp::Minutes => since.to_string(),
            Stamp::UnnamedSeconds => (since * 60).to_string(),
            Stamp::HoursMinutesSeconds => format!("{:02}:{:02}:00", since / 60, since % 60),
        };
        vec![one]
    }
}

/// The date of a day from 1970-01-01, by walking the years and months.
fn date(mut days: i64) -> (i64, i64, i64) {
    let is_leap = |year: i64| year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
    let mut year = 1970;
    while days >= 365 + i64::from(is_leap(year)) {
        days -= 365 + i64::from(is_leap(year));
        year += 1;
    }
    let february = 28 + i64::from(is_leap(year));
    for (month, length) in (1..).zip([31, february, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]) {
        if days < length {
            return (year, month, days + 1);
        }
        days -= length;
    }
    unreachable!("a year has no more days")
}
