//! A try to start and the stop before it, out of what was tapped and typed.

use diagnosis::Clock;
use job::{Measured, Moment, Reading, Rest, RestError, SetUp, StartTrial, Stop, Text, Tried};
use quantity::{Accuracy, Amps, Observed, Seconds, Volts, parse_decimal, parse_reading};

/// Where the moment of plugging in is kept until it is said what happened: the check and item of
/// a draft.
pub const PLUGGED_IN: (&str, &str) = ("start-trials", "plugged-in");

/// From such a rest on a shell is as cold as the room, until somebody says otherwise (judgement).
const COLD: Seconds = Seconds::new(4.0 * 3_600.0);

/// Why a try or a stop can't be entered.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NotEntered {
    /// Nobody has said when it stopped.
    NoStop,
    /// By what was entered it runs.
    Turns,
    /// The clock was set back.
    SetBack,
    /// What was typed is no number of minutes.
    NotMinutes,
    /// No rest is that long, or less than nothing.
    Rest(RestError),
    /// What was typed is no reading.
    NotAReading,
    /// So many amperes are milliamperes.
    Milliamps,
    /// No mains have so many volts.
    NotVolts,
}

/// What the meters showed during the start, as typed.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Meters {
    /// The highest current, in amperes.
    pub highest: String,
    /// The lowest voltage.
    pub lowest: String,
}

/// More than a household circuit gives before its breaker opens (judgement; a locked compressor of
/// this kind draws up to 30 A).
const MOST_AMPS: Amps = Amps::new(60.0);
/// Mains of 100 to 240 V, and what may be left of them (judgement).
const VOLTS: (Volts, Volts) = (Volts::new(40.0), Volts::new(280.0));

impl Meters {
    /// What they say, added to a try. What was left empty says nothing.
    ///
    /// # Errors
    /// [`NotEntered`] where one of them can't be right.
    pub fn added_to(&self, trial: StartTrial) -> Result<StartTrial, NotEntered> {
        Ok(StartTrial {
            highest: self.amperes()?,
            lowest: self.volts()?,
            ..trial
        })
    }

    fn amperes(&self) -> Result<Option<Reading>, NotEntered> {
        let Some(text) = typed(&self.highest)? else {
            return Ok(None);
        };
        let amps = parse_reading(text.as_str(), Amps::new(1_000.0));
        let amps = amps.map_err(|_| NotEntered::NotAReading)?;
        match amps.observed {
            Observed::Value(value) if value <= MOST_AMPS => {
                Ok(reading(text, Measured::Amps(amps), (3.0, 5.0)))
            }
            _ => Err(NotEntered::Milliamps),
        }
    }

    fn volts(&self) -> Result<Option<Reading>, NotEntered> {
        let Some(text) = typed(&self.lowest)? else {
            return Ok(None);
        };
        let volts = parse_reading(text.as_str(), Volts::new(600.0));
        let volts = volts.map_err(|_| NotEntered::NotAReading)?;
        match volts.observed {
            Observed::Value(value) if value >= VOLTS.0 && value <= VOLTS.1 => {
                Ok(reading(text, Measured::Volts(volts), (1.0, 3.0)))
            }
            _ => Err(NotEntered::NotVolts),
        }
    }
}

fn typed(text: &str) -> Result<Option<Text>, NotEntered> {
    let text = text.trim();
    if text.is_empty() {
        return Ok(None);
    }
    Text::new(text)
        .map(Some)
        .map_err(|_| NotEntered::NotAReading)
}

/// With the accuracy of a clamp, or of a low-cost meter on volts (common practice, no source).
fn reading(typed: Text, measured: Measured, accuracy: (f64, f64)) -> Option<Reading> {
    let accuracy = Accuracy::new(accuracy.0, accuracy.1)?;
    Some(Reading {
        typed,
        measured,
        accuracy,
    })
}

/// What was tried.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Try {
    /// With which start gear.
    pub set_up: SetUp,
    /// When it was plugged in.
    pub at: Moment,
    /// Whether the shell was as cold as the room, where somebody said so.
    pub is_cold: Option<bool>,
}

impl Try {
    /// The entry once it is known what happened. `clock` is the rest as of plugging in.
    ///
    /// # Errors
    /// [`NotEntered`] where its rest isn't known.
    pub fn done(self, clock: Clock, outcome: Tried) -> Result<StartTrial, NotEntered> {
        let (rest, dead) = match clock {
            Clock::NotStarted => return Err(NotEntered::NoStop),
            Clock::Turning { .. } => return Err(NotEntered::Turns),
            Clock::SetBack { .. } => return Err(NotEntered::SetBack),
            Clock::Resting { turned, dead, .. } => (turned, dead),
            Clock::LongAgo => (Rest::new(Rest::LONGEST).map_err(NotEntered::Rest)?, None),
        };
        Ok(StartTrial {
            set_up: self.set_up,
            at: self.at,
            rest,
            dead,
            is_cold: self.is_cold.unwrap_or_else(|| is_cold(rest)),
            outcome,
            highest: None,
            settled: None,
            lowest: None,
            note: None,
        })
    }
}

/// A try that was made a while ago, as typed.
///
/// # Errors
/// [`NotEntered`] where the rest or the time since is no number of minutes.
pub fn earlier(
    set_up: SetUp,
    (rested, ago): (&str, &str),
    outcome: Tried,
    now: Moment,
) -> Result<StartTrial, NotEntered> {
    let at = stopped(ago, now)?.at;
    let since = stopped(rested, at)?.at;
    let clock = Clock::Resting {
        since,
        turned: Rest::between(since, at).map_err(NotEntered::Rest)?,
        dead: None,
    };
    let is_cold = None;
    Try {
        set_up,
        at,
        is_cold,
    }
    .done(clock, outcome)
}

/// Whether a shell is as cold as the room after such a rest.
#[must_use]
pub fn is_cold(rest: Rest) -> bool {
    rest.seconds() >= COLD
}

/// A stop so many minutes ago, as typed.
///
/// # Errors
/// [`NotEntered`] where that is no number of minutes, or no rest.
pub fn stopped(typed: &str, now: Moment) -> Result<Stop, NotEntered> {
    let minutes = parse_decimal(typed.trim()).ok_or(NotEntered::NotMinutes)?;
    let rest = Rest::new(Seconds::new(minutes * 60.0)).map_err(NotEntered::Rest)?;
    let milliseconds = (rest.seconds().get() * 1_000.0) as i64;
    let at = Moment::new(now.unix_milliseconds() - milliseconds, now.offset_minutes());
    let at = at.map_err(|_| NotEntered::Rest(RestError::OverAWeek))?;
    Ok(Stop { at, ran: None })
}

#[cfg(test)]
mod tests {
    use super::*;

    const NOON: i64 = 1_795_600_000_000;

    fn moment(seconds: i64) -> Moment {
        Moment::new(NOON + seconds * 1_000, 60).unwrap()
    }

    fn plugged() -> Try {
        Try {
            set_up: SetUp::Original,
            at: moment(0),
            is_cold: None,
        }
    }

    #[test]
    fn a_try_takes_its_rest_from_the_clock_as_of_plugging_in() {
        let rest = |seconds| Rest::new(Seconds::new(seconds)).unwrap();
        let clock = Clock::Resting {
            since: moment(-300),
            turned: rest(300.0),
            dead: Some(rest(60.0)),
        };
        let done = plugged().done(clock, Tried::Started).unwrap();
        assert_eq!((done.rest, done.dead), (rest(300.0), Some(rest(60.0))));
        assert!(!done.is_cold);
        let cold = plugged().done(Clock::LongAgo, Tried::Started).unwrap();
        assert!(cold.is_cold);
    }

    #[test]
    fn without_a_stop_there_is_no_try() {
        let refused = |clock| plugged().done(clock, Tried::Started).err();
        assert_eq!(refused(Clock::NotStarted), Some(NotEntered::NoStop));
        let since = moment(-60);
        assert_eq!(refused(Clock::Turning { since }), Some(NotEntered::Turns));
        let latest = moment(60);
        assert_eq!(
            refused(Clock::SetBack { latest }),
            Some(NotEntered::SetBack)
        );
    }

    #[test]
    fn meters_are_read_or_asked_about_and_nothing_typed_says_nothing() {
        let done = || plugged().done(Clock::LongAgo, Tried::Started).unwrap();
        let added = |highest: &str, lowest: &str| {
            let meters = Meters {
                highest: highest.to_owned(),
                lowest: lowest.to_owned(),
            };
            meters.added_to(done())
        };
        assert_eq!(added("", " ").unwrap(), done());
        let read = added("8.4", "109").unwrap();
        assert!(matches!(read.highest.unwrap().measured, Measured::Amps(_)));
        assert!(matches!(read.lowest.unwrap().measured, Measured::Volts(_)));
        assert_eq!(added("840", ""), Err(NotEntered::Milliamps));
        assert_eq!(added("OL", ""), Err(NotEntered::Milliamps));
        assert_eq!(added("much", ""), Err(NotEntered::NotAReading));
        assert_eq!(added("", "8.4"), Err(NotEntered::NotVolts));
    }

    #[test]
    fn an_earlier_try_lies_before_now_and_rested_before_that() {
        let tried = earlier(SetUp::Kit, ("6", "90"), Tried::Silent, moment(0)).unwrap();
        assert_eq!(tried.at, moment(-5_400));
        assert_eq!(tried.rest, Rest::new(Seconds::new(360.0)).unwrap());
        let refused = earlier(SetUp::Kit, ("6", ""), Tried::Silent, moment(0));
        assert_eq!(refused, Err(NotEntered::NotMinutes));
    }

    #[test]
    fn minutes_ago_are_read_as_people_write_them() {
        assert_eq!(stopped(" 2,5 ", moment(0)).unwrap().at, moment(-150));
        assert_eq!(stopped("0", moment(0)).unwrap().at, moment(0));
        assert_eq!(stopped("soon", moment(0)), Err(NotEntered::NotMinutes));
        let negative = stopped("-3", moment(0));
        assert!(matches!(
            negative,
            Err(NotEntered::NotMinutes | NotEntered::Rest(_))
        ));
        let long = stopped("99999", moment(0));
        assert_eq!(long, Err(NotEntered::Rest(RestError::OverAWeek)));
    }
}
