//! A try to start and the stop before it, out of what was tapped and typed.

use diagnosis::Clock;
use job::{Moment, Rest, RestError, SetUp, StartTrial, Stop, Tried};
use quantity::{Seconds, parse_decimal};

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
