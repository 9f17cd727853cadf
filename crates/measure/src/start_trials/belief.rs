//! What is believed of one set-up's threshold after its trials.

use quantity::Seconds;

use super::grid::{CELLS, ENDS, Odds, STEP, WIDTHS, certain, middle};
use super::prior::{RestBands, StartPrior};
use super::threshold::Knowledge;
use super::trial::{Outcome, Trial};

/// What is believed of one set-up.
#[derive(Debug, Clone, PartialEq)]
pub struct StartBelief {
    /// Probabilities by cell and width.
    pub(super) cells: Vec<[f64; WIDTHS.len()]>,
    pub(super) at_once: f64,
    pub(super) not_hot: f64,
    pub(super) not_even_cold: f64,
    pub(super) knowledge: Knowledge,
    cold_trials: usize,
}

/// Whether a machine starts cold, which no hot trial settles.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ColdStart {
    /// The probability that it does.
    pub probability: f64,
    /// How many trials from cold that rests on. Zero: on hot trials and the prior alone.
    pub trials: usize,
}

/// How likely the threshold lies in each band of [`RestBands`]; the three sum to one.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Zones {
    /// Ordinary, or sooner.
    pub ordinary: f64,
    /// Neither.
    pub grey: f64,
    /// Abnormal, or it doesn't start at all.
    pub abnormal: f64,
}

impl StartBelief {
    /// Weighs the trials of one set-up under a prior. The order of trials doesn't matter.
    ///
    /// ```
    /// use measure::start_trials::{Outcome, StartBelief, StartKind, Trial};
    /// use quantity::Seconds;
    /// let minutes = |minutes, outcome| Trial::new(Seconds::new(minutes * 60.0), outcome).unwrap();
    /// let trials = [minutes(5.0, Outcome::Failed), minutes(20.0, Outcome::Started)];
    /// let belief = StartBelief::of(&trials, &StartKind::Ptc.prior(false));
    /// assert!(belief.chance_after(Seconds::new(1200.0)) > 0.85);
    /// assert!(belief.chance_after(Seconds::new(180.0)) < 0.15);
    /// ```
    #[must_use]
    pub fn of(trials: &[Trial], prior: &StartPrior) -> Self {
        let mut belief = Self::before(prior);
        for trial in trials {
            belief.take(*trial);
        }
        belief
    }

    fn before(prior: &StartPrior) -> Self {
        let [at_once, not_hot, not_even_cold] = prior.shares();
        let mean = libm::log(clamped(prior.median.get(), ENDS, ENDS[0]));
        let deviation = clamped(prior.deviation, [0.05, 5.0], 1.0);
        let density = |cell| {
            let away = (middle(cell) - mean) / deviation;
            libm::exp(-0.5 * away * away)
        };
        let heights: Vec<f64> = (0..CELLS).map(density).collect();
        let scale = (1.0 - at_once - not_hot - not_even_cold) / heights.iter().sum::<f64>();
        let cells = heights.iter();
        Self {
            cells: cells
                .map(|height| WIDTHS.map(|(_, weight)| height * scale * weight))
                .collect(),
            at_once,
            not_hot,
            not_even_cold,
            knowledge: Knowledge::Nothing,
            cold_trials: 0,
        }
    }

    fn take(&mut self, trial: Trial) {
        let outcome = trial.outcome();
        if !trial.is_telling() {
            return;
        }
        let started = outcome != Outcome::Failed;
        if trial.is_cold() {
            self.cold_trials += 1;
            let (other, never) = (certain(started), certain(!started));
            self.scale(other, other, never, |_, _| other);
        } else {
            self.knowledge = self.knowledge.and(started);
            let never = certain(!started);
            let at_once = certain(outcome == Outcome::Started);
            let odds = Odds::at(trial.log_rest());
            self.scale(at_once, never, never, |cell, width| {
                odds.of(outcome, cell, width)
            });
        }
    }

    fn scale(
        &mut self,
        at_once: f64,
        not_hot: f64,
        not_even_cold: f64,
        of: impl Fn(usize, usize) -> f64,
    ) {
        self.at_once *= at_once;
        self.not_hot *= not_hot;
        self.not_even_cold *= not_even_cold;
        let mut sum = self.at_once + self.not_hot + self.not_even_cold;
        for (cell, shares) in self.cells.iter_mut().enumerate() {
            for (width, share) in shares.iter_mut().enumerate() {
                *share *= of(cell, width);
                sum += *share;
            }
        }
        // Each factor is at least a hundredth, so the sum stays far above zero.
        self.at_once /= sum;
        self.not_hot /= sum;
        self.not_even_cold /= sum;
        for share in self.cells.iter_mut().flatten() {
            *share /= sum;
        }
    }

    /// How likely it starts after this rest, hot and on rated voltage. Rises with the rest.
    #[must_use]
    pub fn chance_after(&self, rest: Seconds) -> f64 {
        let odds = Odds::at(libm::log(rest.get().max(1.0)));
        let mut sum = self.at_once;
        for (cell, shares) in self.cells.iter().enumerate() {
            for (width, share) in shares.iter().enumerate() {
                sum += share * odds.start(cell, width);
            }
        }
        sum
    }

    /// How likely the threshold is ordinary, grey and abnormal.
    #[must_use]
    pub fn zones(&self, bands: RestBands) -> Zones {
        let ordinary = self.share_below(libm::log(bands.ordinary_to.get()));
        let not_abnormal = self.share_below(libm::log(bands.abnormal_from.get()));
        Zones {
            ordinary,
            grey: not_abnormal - ordinary,
            abnormal: 1.0 - not_abnormal,
        }
    }

    /// Whether it starts cold.
    #[must_use]
    pub fn cold_start(&self) -> ColdStart {
        ColdStart {
            probability: 1.0 - self.not_even_cold,
            trials: self.cold_trials,
        }
    }

    /// The probability of one cell, over all widths.
    pub(super) fn cell(&self, cell: usize) -> f64 {
        self.cells[cell].iter().sum()
    }

    /// The probability that ln of the threshold lies below `log`.
    fn share_below(&self, log: f64) -> f64 {
        let mut sum = self.at_once;
        for cell in 0..CELLS {
            let within = (log - middle(cell)) / STEP + 0.5;
            sum += self.cell(cell) * within.clamp(0.0, 1.0);
        }
        sum
    }
}

fn clamped(value: f64, ends: [f64; 2], otherwise: f64) -> f64 {
    if value.is_nan() {
        otherwise
    } else {
        value.clamp(ends[0], ends[1])
    }
}
