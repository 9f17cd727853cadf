//! A known course, written in a form that is drawn.

mod stamps;

use logfile::{
    Answer, Clock, DateOrder, DecimalMark, DegreeUnit, ElapsedUnit, Half, Looked, Question,
};
use proptest::prelude::*;
use quantity::Seconds;

use stamps::{STAMPS, Stamp};

/// Where the scale stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum UnitStands {
    Heading,
    Cell,
    Preamble,
    Nowhere,
}

/// A way of writing a course down.
#[derive(Debug, Clone)]
pub(crate) struct Form {
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
pub(crate) fn any() -> impl Strategy<Value = Form> {
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
    pub(crate) fn course(&self) -> Vec<(f64, f64)> {
        let rows = (0..self.rows).filter(|row| !self.is_missing(*row));
        let offset = if self.is_local() { 60 } else { 0 };
        rows.map(|row| {
            let at = (self.minute(row) - offset) as f64 * 60.0;
            (at, self.unit.to_celsius(self.number(row)).get())
        })
        .collect()
    }

    /// Serial days have nine decimals here.
    pub(crate) fn rounding(&self) -> f64 {
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
    pub(crate) fn answers(&self, looked: &Looked) -> Vec<Answer> {
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
    pub(crate) fn written(&self) -> Vec<u8> {
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
}
