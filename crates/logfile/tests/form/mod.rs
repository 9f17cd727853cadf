//! A known course, written in a form that is drawn.

use logfile::{
    Answer, Clock, DateOrder, DecimalMark, DegreeUnit, ElapsedUnit, Half, Looked, Question,
};
use proptest::prelude::*;
use quantity::Seconds;

/// How a row says when.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Stamp {
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

const STAMPS: [Stamp; 22] = [
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

/// Where the scale stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum UnitStands {
    Heading,
    Cell,
    Preamble,
    Nowhere,
}

/// A way of writing a course down.
#[derive(Debug, Clone)]
pub struct Form {
    stamp: Stamp,
    delimiter: char,
    comma: bool,
    unit: DegreeUnit,
    unit_stands: UnitStands,
    heading: bool,
    numbered: bool,
    humidity: bool,
    missing: bool,
    utf_16: bool,
    newest_first: bool,
    start_day: i64,
    start_minute: i64,
    step_minutes: i64,
    rows: i64,
}

/// Any form that can be written: a file with decimal commas between commas can't.
pub fn any() -> impl Strategy<Value = Form> {
    let text = (
        0..STAMPS.len(),
        prop::sample::select(vec![';', ',', '\t', '|']),
        any_bool(),
        0usize..3,
        0usize..4,
        any_bool(),
    );
    let more = (any_bool(), any_bool(), any_bool(), any_bool(), any_bool());
    // From 2010 to 2037; days on which clocks change are mended elsewhere.
    let course = (14_610i64..24_800, 0i64..1440, 1i64..30, 5i64..90);
    (text, more, course).prop_map(|(text, more, course)| {
        let unit_stands = [
            UnitStands::Heading,
            UnitStands::Cell,
            UnitStands::Preamble,
            UnitStands::Nowhere,
        ][text.4];
        let stamp = STAMPS[text.0];
        let is_absolute = !matches!(
            stamp,
            Stamp::TimeOfDay
                | Stamp::Minutes
                | Stamp::UnnamedSeconds
                | Stamp::HoursMinutesSeconds
                | Stamp::MonthSlashTwelve
                | Stamp::UnixSeconds
                | Stamp::UnixMilliseconds
                | Stamp::SerialDays
        );
        Form {
            stamp,
            delimiter: text.1,
            comma: text.2 && text.1 != ',',
            unit: DegreeUnit::ALL[text.3],
            unit_stands,
            heading: text.5 || unit_stands == UnitStands::Heading || stamp == Stamp::Minutes,
            numbered: more.0,
            humidity: more.1 && (text.5 || unit_stands != UnitStands::Nowhere),
            missing: more.2,
            utf_16: more.3,
            newest_first: more.4 && is_absolute,
            // On a Wednesday no clock changes before Saturday night.
            start_day: course.0 / 7 * 7 + 6,
            start_minute: course.1,
            step_minutes: course.2,
            rows: course.3,
        }
    })
}

fn any_bool() -> impl Strategy<Value = bool> {
    prop::bool::ANY
}

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
    fn minute(&self, row: i64) -> i64 {
        self.start_day * 1440 + self.start_minute + row * self.step_minutes
    }

    fn number(&self, row: i64) -> f64 {
        // From a room to a freezer, in the form's own scale and two decimals.
        let celsius = -18.0 + 39.0 * libm::exp(-(row as f64) / 12.0) + 0.4 * libm::sin(row as f64);
        let number = match self.unit {
            DegreeUnit::Celsius => celsius,
            DegreeUnit::Fahrenheit => celsius * 1.8 + 32.0,
            DegreeUnit::Kelvin => celsius + 273.15,
        };
        libm::round(number * 100.0) / 100.0
    }

    fn is_missing(&self, row: i64) -> bool {
        self.missing && row % 7 == 3
    }

    /// What has to be read: seconds since 1970 and degrees Celsius.
    pub fn course(&self) -> Vec<(f64, f64)> {
        let rows = (0..self.rows).filter(|row| !self.is_missing(*row));
        let offset = if self.is_local() { 60 } else { 0 };
        rows.map(|row| {
            let at = (self.minute(row) - offset) as f64 * 60.0;
            (at, self.unit.to_celsius(self.number(row)).get())
        })
        .collect()
    }

    /// Serial days have nine decimals here.
    pub fn rounding(&self) -> f64 {
        if self.stamp == Stamp::SerialDays {
            0.001
        } else {
            1e-6
        }
    }

    fn is_local(&self) -> bool {
        !matches!(
            self.stamp,
            Stamp::IsoUtc
                | Stamp::UnixSeconds
                | Stamp::UnixMilliseconds
                | Stamp::TimeOfDay
                | Stamp::Minutes
                | Stamp::UnnamedSeconds
                | Stamp::HoursMinutesSeconds
        )
    }

    /// What somebody who knows would say to each question.
    pub fn answers(&self, looked: &Looked) -> Vec<Answer> {
        let order = match self.stamp {
            Stamp::MonthSlash | Stamp::MonthSlashMarked | Stamp::MonthSlashTwelve => {
                DateOrder::MonthDayYear
            }
            Stamp::ShortYearFirst => DateOrder::YearMonthDay,
            _ => DateOrder::DayMonthYear,
        };
        let clock = if self.stamp == Stamp::MonthSlashTwelve {
            let is_morning = self.minute(0).rem_euclid(1440) < 720;
            Clock::Twelve(if is_morning {
                Half::Morning
            } else {
                Half::Afternoon
            })
        } else {
            Clock::TwentyFour
        };
        let temperature = self.temperature_column();
        let answer = |question: &Question| match question {
            Question::DateOrder { .. } => Answer::DateOrder(order),
            Question::Clock { .. } => Answer::Clock(clock),
            Question::Zone { .. } => Answer::Zone(60),
            Question::Start { .. } => Answer::Start(Seconds::new(self.minute(0) as f64 * 60.0)),
            Question::ElapsedUnit { .. } => Answer::ElapsedUnit(ElapsedUnit::Seconds),
            Question::Unit { column, .. } => Answer::Unit {
                column: *column,
                unit: self.unit,
            },
            Question::Columns { .. } => Answer::Columns(vec![temperature]),
            Question::DecimalMark { .. } => Answer::DecimalMark(if self.comma {
                DecimalMark::Comma
            } else {
                DecimalMark::Point
            }),
        };
        looked.questions.iter().map(answer).collect()
    }

    fn temperature_column(&self) -> usize {
        usize::from(self.numbered)
            + if self.stamp == Stamp::TwoColumns {
                2
            } else {
                1
            }
    }

    /// The file.
    pub fn written(&self) -> Vec<u8> {
        let mut lines = Vec::new();
        if self.unit_stands == UnitStands::Preamble {
            lines.push(format!("Unit: {}", self.unit_sign()));
        }
        if self.heading {
            lines.push(self.headings().join(&self.delimiter.to_string()));
        }
        let mut rows: Vec<String> = (0..self.rows).map(|row| self.row(row)).collect();
        if self.newest_first {
            rows.reverse();
        }
        lines.extend(rows);
        let text = lines.join("\r\n") + "\r\n";
        if !self.utf_16 {
            return text.into_bytes();
        }
        let units = core::iter::once(0xFEFF).chain(text.encode_utf16());
        units.flat_map(u16::to_le_bytes).collect()
    }

    fn unit_sign(&self) -> &'static str {
        match self.unit {
            DegreeUnit::Celsius => "°C",
            DegreeUnit::Fahrenheit => "°F",
            DegreeUnit::Kelvin => "Kelvin",
        }
    }

    fn headings(&self) -> Vec<String> {
        let mut headings = Vec::new();
        if self.numbered {
            headings.push("No.".to_owned());
        }
        match self.stamp {
            Stamp::TwoColumns => headings.extend(["Date".to_owned(), "Time".to_owned()]),
            Stamp::Minutes => headings.push("Elapsed (min)".to_owned()),
            _ => headings.push("Time".to_owned()),
        }
        headings.push(match self.unit_stands {
            UnitStands::Heading => format!("Probe ({})", self.unit_sign()),
            _ => "Probe".to_owned(),
        });
        if self.humidity {
            headings.push("Humidity".to_owned());
        }
        headings
    }

    fn row(&self, row: i64) -> String {
        let mut cells = Vec::new();
        if self.numbered {
            cells.push((row + 1).to_string());
        }
        cells.extend(self.stamped(row));
        let number = self.decimal(format!("{:.2}", self.number(row)));
        let unit = if self.unit_stands == UnitStands::Cell {
            [" ", self.unit_sign()].concat()
        } else {
            String::new()
        };
        cells.push(if self.is_missing(row) {
            "---".to_owned()
        } else {
            number + &unit
        });
        if self.humidity {
            cells.push(self.decimal(format!("{:.1} %", 40.0 + (row % 9) as f64)));
        }
        cells.join(&self.delimiter.to_string())
    }

    fn decimal(&self, number: String) -> String {
        if self.comma {
            number.replace('.', ",")
        } else {
            number
        }
    }

    fn stamped(&self, row: i64) -> Vec<String> {
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
