//! The threshold with its interval, and how far the trials bound it.

use quantity::Seconds;

use super::belief::StartBelief;
use super::grid::{CELLS, LOG_ENDS, STEP};

/// From where to where nine in ten lie: the 5th and the 95th percentile.
pub(super) const TAILS: [f64; 2] = [0.05, 0.95];

/// A place on the scale of rests.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub enum Place {
    /// Under 15 s: it starts at once.
    AtOnce,
    /// After this rest.
    After(Seconds),
    /// Not within four hours, or not at all.
    Beyond,
}

/// What the trials bound. What they don't bound is the prior speaking.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Knowledge {
    /// Nothing: no trial said anything.
    Nothing,
    /// From above only: it has always started. Say "at most".
    AtMost,
    /// From below only: it has always failed. Say "at least".
    AtLeast,
    /// From both sides.
    Both,
}

/// The rest after which it starts as often as not.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Threshold {
    /// It lies below this with a probability of 5 %.
    pub from: Place,
    /// As likely below as above.
    pub median: Place,
    /// It lies above this with a probability of 5 %.
    pub to: Place,
    /// Which ends the trials bound.
    pub knowledge: Knowledge,
}

impl Knowledge {
    /// With one more hot trial that started, or failed.
    pub(super) fn and(self, started: bool) -> Self {
        match (self, started) {
            (Self::Nothing | Self::AtMost, true) => Self::AtMost,
            (Self::Nothing | Self::AtLeast, false) => Self::AtLeast,
            _ => Self::Both,
        }
    }
}

impl StartBelief {
    /// The threshold: median and 90 % credible interval.
    ///
    /// ```
    /// use measure::start_trials::{Knowledge, Outcome, Place, StartBelief, StartKind, Trial};
    /// use quantity::Seconds;
    /// let failed = Trial::new(Seconds::new(600.0), Outcome::Failed).unwrap();
    /// let threshold = StartBelief::of(&[failed], &StartKind::Ptc.prior(false)).threshold();
    /// assert_eq!(threshold.knowledge, Knowledge::AtLeast);
    /// assert!(threshold.median > Place::After(Seconds::new(600.0)));
    /// assert_eq!(threshold.to, Place::Beyond);
    /// ```
    #[must_use]
    pub fn threshold(&self) -> Threshold {
        Threshold {
            from: self.quantile(TAILS[0]),
            median: self.quantile(0.5),
            to: self.quantile(TAILS[1]),
            knowledge: self.knowledge,
        }
    }

    /// Where the probability below reaches `share`.
    fn quantile(&self, share: f64) -> Place {
        let mut below = self.at_once;
        if share <= below {
            return Place::AtOnce;
        }
        for cell in 0..CELLS {
            let mass = self.cell(cell);
            if below + mass >= share {
                // The loop ends at the first cell that reaches the share, so its mass isn't zero.
                let log = LOG_ENDS[0] + STEP * (cell as f64 + (share - below) / mass);
                return Place::After(Seconds::new(libm::exp(log)));
            }
            below += mass;
        }
        Place::Beyond
    }
}
