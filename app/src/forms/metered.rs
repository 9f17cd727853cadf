//! What a plug-in meter counted, as typed.

use job::{Measured, Metered, MeteredError, Moment, Reading, Text};
use quantity::{Accuracy, Seconds, WattHours, parse_reading};
use wording::metered_page;

use super::gas::{NotTold, number};

/// What is typed off a meter.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct OffMeter {
    /// Kilowatt hours.
    pub energy: String,
    /// For how many hours it has counted, where nobody said when it began.
    pub hours: String,
    /// For how many hours it saw a load, where it shows that.
    pub ran: String,
}

/// Why it can't be entered.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NotMetered {
    /// What was typed for the energy is none.
    Energy,
    /// For how long it counted isn't said, or is no number of hours up to a year.
    Hours,
    /// What was typed for the hours of load is no number.
    Ran,
    /// It can't be so.
    Error(MeteredError),
}

impl NotMetered {
    /// What to say of it.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Energy => metered_page::NOT_ENERGY,
            Self::Hours => metered_page::NOT_HOURS,
            Self::Ran => metered_page::NOT_RAN,
            Self::Error(why) => metered_page::error(why),
        }
    }
}

/// Nobody leaves a meter in for longer than a year, in hours.
const LONGEST: f64 = 8_766.0;

/// A plug-in meter's: 2 % and two of the last digit (common practice, no source).
const METER: Accuracy = match Accuracy::new(2.0, 2.0) {
    Some(accuracy) => accuracy,
    // Both lie within their ranges; this is worked out while compiling.
    None => unreachable!(),
};

impl OffMeter {
    /// What was counted up to now: since `began`, or for the hours that were typed.
    ///
    /// # Errors
    /// [`NotMetered`].
    pub fn read(&self, began: Option<Moment>, now: Moment) -> Result<Metered, NotMetered> {
        let from = match began {
            Some(began) => began,
            None => {
                let hours = hours(&self.hours).map_err(|_| NotMetered::Hours)?;
                if !(0.0..=LONGEST).contains(&hours) {
                    return Err(NotMetered::Hours);
                }
                let back = (hours * 3_600_000.0) as i64;
                let at = now.unix_milliseconds() - back;
                Moment::new(at, now.offset_minutes()).map_err(|_| NotMetered::Hours)?
            }
        };
        let ran = match hours(&self.ran) {
            Err(NotTold::Empty) => None,
            Ok(hours) => Some(Seconds::new(hours * 3_600.0)),
            Err(_) => return Err(NotMetered::Ran),
        };
        Metered::new(from, now, self.energy()?, ran).map_err(NotMetered::Error)
    }

    /// A bare number is one of kilowatt hours, as such meters show.
    fn energy(&self) -> Result<Reading, NotMetered> {
        let typed = self.energy.trim();
        let is_bare = typed.ends_with(|last: char| last.is_ascii_digit());
        let text = [typed, if is_bare { " kWh" } else { "" }].concat();
        let read = parse_reading(&text, WattHours::new(1e6));
        let typed = Text::new(&text).map_err(|_| NotMetered::Energy)?;
        Ok(Reading {
            typed,
            measured: Measured::WattHours(read.map_err(|_| NotMetered::Energy)?),
            accuracy: METER,
        })
    }
}

/// "24", "23.5" or "23:30".
fn hours(typed: &str) -> Result<f64, NotTold> {
    match typed.split_once(':') {
        None => number(typed),
        Some((hours, minutes)) => {
            let (hours, minutes) = (number(hours)?, number(minutes)?);
            if (0.0..60.0).contains(&minutes) && hours >= 0.0 {
                Ok(hours + minutes / 60.0)
            } else {
                Err(NotTold::NotANumber)
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use quantity::Observed;

    fn now() -> Moment {
        Moment::new(1_795_608_300_000, 60).unwrap()
    }

    fn off(energy: &str, hours: &str, ran: &str) -> OffMeter {
        OffMeter {
            energy: energy.to_owned(),
            hours: hours.to_owned(),
            ran: ran.to_owned(),
        }
    }

    #[test]
    fn a_bare_number_is_of_kilowatt_hours_and_counts_up_to_now() {
        let read = off("1,2", "23:30", "8.5").read(None, now()).unwrap();
        let (observed, _) = read.energy().measured.numbers();
        assert!(matches!(observed, Observed::Value(value) if (value - 1_200.0).abs() < 1e-9));
        assert_eq!(read.to(), now());
        let counted = now().unix_milliseconds() - read.from().unix_milliseconds();
        assert_eq!(counted, 84_600_000);
        assert_eq!(read.ran(), Some(Seconds::new(30_600.0)));
        let small = off("350 Wh", "6", "").read(None, now()).unwrap();
        let (observed, _) = small.energy().measured.numbers();
        assert!(matches!(observed, Observed::Value(value) if (value - 350.0).abs() < 1e-9));
    }

    #[test]
    fn since_a_moment_that_was_kept_no_hours_are_asked() {
        let began = Moment::new(now().unix_milliseconds() - 7_200_000, 60).unwrap();
        let read = off("0.1", "", "").read(Some(began), now()).unwrap();
        assert_eq!(read.from(), began);
    }

    #[test]
    fn what_cannot_be_is_told() {
        let refused = |energy, hours, ran| off(energy, hours, ran).read(None, now()).unwrap_err();
        assert_eq!(refused("much", "24", ""), NotMetered::Energy);
        assert_eq!(refused("1.2", "", ""), NotMetered::Hours);
        assert_eq!(refused("1.2", "9999", ""), NotMetered::Hours);
        assert_eq!(refused("1.2", "24", "long"), NotMetered::Ran);
        assert_eq!(
            refused("-1", "24", ""),
            NotMetered::Error(MeteredError::Negative)
        );
        assert_eq!(
            refused("1", "24", "30"),
            NotMetered::Error(MeteredError::RanTooLong)
        );
        let nothing = off("1", "0", "").read(None, now());
        assert_eq!(
            nothing,
            Err(NotMetered::Error(MeteredError::EndsBeforeItBegins))
        );
    }
}
