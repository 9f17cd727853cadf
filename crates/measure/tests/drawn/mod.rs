//! Machines drawn from the stated prior, and trials on them.

use measure::start_trials::{Outcome, Place, StartPrior, Threshold, Trial};
use quantity::Seconds;

use crate::draws::Draws;

/// One machine's truth, in the words of the stated model and written down again here.
pub(crate) struct Machine {
    /// ln of the threshold in seconds; ±∞ for "at once" and "never".
    pub(crate) log_threshold: f64,
    width: f64,
}

impl Machine {
    pub(crate) fn draw(prior: &StartPrior, draws: &mut Draws) -> Self {
        let kind = draws.share();
        let at_once = prior.at_once.get();
        let never = prior.not_hot.get() + prior.not_even_cold.get();
        let log_threshold = if kind < at_once {
            f64::NEG_INFINITY
        } else if kind < at_once + never {
            f64::INFINITY
        } else {
            within(prior, draws)
        };
        let width = match draws.share() {
            share if share < 0.3 => 0.08,
            share if share < 0.75 => 0.16,
            _ => 0.32,
        };
        Self {
            log_threshold,
            width,
        }
    }

    pub(crate) fn tried(&self, rest: Seconds, draws: &mut Draws) -> Trial {
        let outcome = if draws.share() < 0.03 {
            match draws.share() {
                share if share < 1.0 / 3.0 => Outcome::Started,
                share if share < 2.0 / 3.0 => Outcome::HummedThenStarted,
                _ => Outcome::Failed,
            }
        } else {
            let d = (libm::log(rest.get()) - self.log_threshold) / self.width;
            let sigma = |d: f64| 1.0 / (1.0 + libm::exp(-d));
            match draws.share() {
                share if share < sigma(d - 1.0) => Outcome::Started,
                share if share < sigma(d) => Outcome::HummedThenStarted,
                _ => Outcome::Failed,
            }
        };
        Trial::new(rest, outcome).unwrap()
    }

    /// Whether the 90 % interval holds the truth.
    pub(crate) fn lies_in(&self, threshold: &Threshold) -> bool {
        log_of(threshold.from) <= self.log_threshold && self.log_threshold <= log_of(threshold.to)
    }
}

/// The density's part of the prior, cut at 15 s and 4 h.
fn within(prior: &StartPrior, draws: &mut Draws) -> f64 {
    loop {
        let log = libm::log(prior.median.get()) + prior.deviation * draws.normal();
        if log > libm::log(15.0) && log < libm::log(14_400.0) {
            return log;
        }
    }
}

fn log_of(place: Place) -> f64 {
    match place {
        Place::AtOnce => f64::NEG_INFINITY,
        Place::After(rest) => libm::log(rest.get()),
        Place::Beyond => f64::INFINITY,
    }
}

/// How wide the interval is on the log scale, cut at 15 s and 4 h.
pub(crate) fn width(threshold: &Threshold) -> f64 {
    let cut = |place| log_of(place).clamp(libm::log(15.0), libm::log(14_400.0));
    cut(threshold.to) - cut(threshold.from)
}
