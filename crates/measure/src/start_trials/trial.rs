//! One trial to start a compressor.

use quantity::{Ratio, Seconds};

/// What was heard and seen.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Outcome {
    /// It started within a second or so.
    Started,
    /// It hummed for some seconds and then started.
    HummedThenStarted,
    /// It hummed and the protector ended it.
    Failed,
    /// Nothing hummed, or another device disconnected: says nothing of the threshold.
    Silent,
}

/// Why a trial can't be taken as it was given.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TrialError {
    /// The rest is no number: give it anew.
    RestNotANumber,
    /// The rest is below zero: the trial's time lies before the stop's.
    RestNegative,
    /// The rest is longer than [`Trial::LONGEST_REST`]: such a machine is cold; a date is wrong.
    RestTooLong,
    /// The time since it was last energised is negative, no number, or longer than the rest: what
    /// turned was energised.
    EnergisedOutOfRange,
    /// The supply's share of the rated voltage is no number or outside
    /// [`Trial::SUPPLY`]: it was given in volts or percent, or the voltmeter was set wrong.
    SupplyOutOfRange,
}

/// One trial, checked.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Trial {
    rest: Seconds,
    outcome: Outcome,
    cold: bool,
    supply: Ratio,
    energised: Seconds,
}

impl Trial {
    /// The longest rest that is taken: a week.
    pub const LONGEST_REST: Seconds = Seconds::new(7.0 * 86_400.0);
    /// So long a start device takes to cool before it can start again (about 5 min, common
    /// practice, no source).
    pub const DEVICE_COOLS: Seconds = Seconds::new(300.0);
    /// The least and the most of the rated voltage that is taken (judgement: a motor at half its
    /// voltage has a quarter of its torque; no mains are a quarter above their rating).
    pub const SUPPLY: (Ratio, Ratio) = (Ratio::new(0.5), Ratio::new(1.25));

    /// A trial after `rest` since the compressor last turned, on rated voltage.
    ///
    /// # Errors
    /// [`TrialError`] for a rest that is negative, no number, or longer than a week.
    ///
    /// ```
    /// use measure::start_trials::{Outcome, Trial, TrialError};
    /// use quantity::Seconds;
    /// assert!(Trial::new(Seconds::new(300.0), Outcome::Failed).is_ok());
    /// let refused = Trial::new(Seconds::new(-1.0), Outcome::Failed);
    /// assert_eq!(refused, Err(TrialError::RestNegative));
    /// ```
    pub fn new(rest: Seconds, outcome: Outcome) -> Result<Self, TrialError> {
        if rest.get().is_nan() {
            Err(TrialError::RestNotANumber)
        } else if rest.get() < 0.0 {
            Err(TrialError::RestNegative)
        } else if rest > Self::LONGEST_REST {
            Err(TrialError::RestTooLong)
        } else {
            Ok(Self {
                rest,
                outcome,
                cold: false,
                supply: Ratio::new(1.0),
                energised: rest,
            })
        }
    }

    /// The same trial from cold: shell at the room's temperature, pressures level for hours.
    #[must_use]
    pub const fn from_cold(self) -> Self {
        Self { cold: true, ..self }
    }

    /// The same trial where it had been energised since it last turned: an earlier attempt that
    /// failed, so long ago. A machine that is plugged in tries by itself.
    ///
    /// Pressures level from the last turning, but PTC, windings and protector cool from the last
    /// energising. A failure within [`Self::DEVICE_COOLS`] of an earlier attempt can be the
    /// device's and says nothing of the threshold; a start counts all the same.
    ///
    /// # Errors
    /// [`TrialError::EnergisedOutOfRange`] for a time that is negative, no number, or longer than
    /// the rest.
    pub fn energised_before(self, ago: Seconds) -> Result<Self, TrialError> {
        if ago.get() >= 0.0 && ago <= self.rest {
            Ok(Self {
                energised: ago,
                ..self
            })
        } else {
            Err(TrialError::EnergisedOutOfRange)
        }
    }

    /// The same trial with the voltage at the plug during the hum as a share of the rated one.
    ///
    /// # Errors
    /// [`TrialError::SupplyOutOfRange`] outside [`Self::SUPPLY`].
    pub fn at_supply(self, share: Ratio) -> Result<Self, TrialError> {
        let (least, most) = Self::SUPPLY;
        if share >= least && share <= most {
            Ok(Self {
                supply: share,
                ..self
            })
        } else {
            Err(TrialError::SupplyOutOfRange)
        }
    }

    /// The rest since the compressor last turned.
    #[must_use]
    pub const fn rest(self) -> Seconds {
        self.rest
    }

    /// What was heard and seen.
    #[must_use]
    pub const fn outcome(self) -> Outcome {
        self.outcome
    }

    /// Whether it was made from cold.
    #[must_use]
    pub const fn is_cold(self) -> bool {
        self.cold
    }

    /// Whether it tells anything of what the compressor can do.
    pub(super) fn is_telling(self) -> bool {
        let tried_before = self.energised < self.rest;
        let device_hot = tried_before && self.energised < Self::DEVICE_COOLS;
        match self.outcome {
            Outcome::Silent => false,
            Outcome::Failed => !device_hot,
            Outcome::Started | Outcome::HummedThenStarted => true,
        }
    }

    /// The logarithm of the rest that would be as good on rated voltage: ln rest + 2·ln share.
    /// Rests below a second are taken as one.
    pub(super) fn log_rest(self) -> f64 {
        libm::log(self.rest.get().max(1.0)) + 2.0 * libm::log(self.supply.get())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_rest_that_cannot_be_is_refused_with_its_reason() {
        let refused = |rest| Trial::new(Seconds::new(rest), Outcome::Started).err();
        assert_eq!(refused(f64::NAN), Some(TrialError::RestNotANumber));
        assert_eq!(refused(-0.5), Some(TrialError::RestNegative));
        assert_eq!(refused(604_801.0), Some(TrialError::RestTooLong));
        assert_eq!(refused(f64::INFINITY), Some(TrialError::RestTooLong));
        assert_eq!(refused(604_800.0), None);
        assert_eq!(refused(0.0), None);
    }

    #[test]
    fn volts_given_for_a_share_are_refused() {
        let trial = Trial::new(Seconds::new(60.0), Outcome::Failed).unwrap();
        for share in [115.0, 0.3, f64::NAN] {
            let refused = trial.at_supply(Ratio::new(share));
            assert_eq!(refused, Err(TrialError::SupplyOutOfRange));
        }
    }

    #[test]
    fn a_failure_soon_after_another_attempt_tells_nothing() {
        let trial = |outcome| Trial::new(Seconds::new(1200.0), outcome).unwrap();
        let before = |outcome, ago| trial(outcome).energised_before(Seconds::new(ago)).unwrap();
        assert!(trial(Outcome::Failed).is_telling());
        assert!(!before(Outcome::Failed, 60.0).is_telling());
        assert!(before(Outcome::Failed, 400.0).is_telling());
        assert!(before(Outcome::Started, 60.0).is_telling());
        // The stop itself is no earlier attempt.
        let short = Trial::new(Seconds::new(60.0), Outcome::Failed).unwrap();
        let same = short.energised_before(Seconds::new(60.0)).unwrap();
        assert!(same.is_telling());
        let late = short.energised_before(Seconds::new(61.0));
        assert_eq!(late, Err(TrialError::EnergisedOutOfRange));
        let never = short.energised_before(Seconds::new(f64::NAN));
        assert_eq!(never, Err(TrialError::EnergisedOutOfRange));
    }

    #[test]
    fn nine_tenths_of_the_voltage_are_worth_a_fifth_less_rest() {
        let trial = Trial::new(Seconds::new(100.0), Outcome::Failed).unwrap();
        let low = trial.at_supply(Ratio::new(0.9)).unwrap();
        assert!((libm::exp(low.log_rest()) - 81.0).abs() < 1e-9);
    }
}
