//! Which rest to try next: the one that teaches most for its waiting.

use quantity::Seconds;

use super::belief::StartBelief;
use super::grid::{CELLS, FAILS, Odds, WIDTHS, certain, with_outliers};

/// What a trial costs and how long somebody is willing to wait.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Waiting {
    /// What comes on top of each rest: running it warm before, and handling.
    pub beside: Seconds,
    /// The shortest rest that may be asked for.
    pub shortest: Seconds,
    /// The longest.
    pub longest: Seconds,
}

impl Default for Waiting {
    /// A quarter of an hour of running before each trial (what the bands refer to) and no rest
    /// below 30 s or above an hour (judgement).
    fn default() -> Self {
        Self {
            beside: Seconds::new(900.0),
            shortest: Seconds::new(30.0),
            longest: Seconds::new(3600.0),
        }
    }
}

/// A rest to try.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NextTrial {
    /// How long to wait after the compressor last turned.
    pub rest: Seconds,
    /// What the trial is expected to tell of the threshold, in bits.
    pub bits: f64,
    /// How likely it starts.
    pub chance: f64,
}

/// The rests that are compared, in minutes: such as people time.
const LADDER: [f64; 20] = [
    0.5, 0.75, 1.0, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 15.0, 20.0, 25.0, 30.0,
    40.0, 50.0, 60.0,
];

impl StartBelief {
    /// The rest that is expected to tell most of the threshold per time spent: the mutual
    /// information of threshold and outcome, over the rest and what comes beside it. `None`
    /// where the bounds leave no rest.
    ///
    /// ```
    /// use measure::start_trials::{StartBelief, StartKind, Waiting};
    /// let belief = StartBelief::of(&[], &StartKind::Ptc.prior(false));
    /// let next = belief.next_rest(&Waiting::default()).unwrap();
    /// assert!(next.rest.get() >= 120.0 && next.rest.get() <= 360.0);
    /// ```
    #[must_use]
    pub fn next_rest(&self, waiting: &Waiting) -> Option<NextTrial> {
        let mut best: Option<(f64, NextTrial)> = None;
        for minutes in LADDER {
            let rest = Seconds::new(minutes * 60.0);
            if rest < waiting.shortest || rest > waiting.longest {
                continue;
            }
            let next = self.trial_at(rest);
            let rate = next.bits / (rest + waiting.beside).get().max(1.0);
            if best.is_none_or(|(most, _)| rate > most) {
                best = Some((rate, next));
            }
        }
        best.map(|(_, next)| next)
    }

    /// What a hot trial after this rest is expected to tell: H(outcome) less the mean of
    /// H(outcome given threshold), widths averaged out.
    #[must_use]
    pub fn trial_at(&self, rest: Seconds) -> NextTrial {
        let odds = Odds::at(libm::log(rest.get().max(1.0)));
        let mut mean = Mean::default();
        let never = self.not_hot + self.not_even_cold;
        mean.add(self.at_once, [1.0, 0.0, 0.0].map(with_outliers));
        mean.add(never, [certain(false), certain(false), certain(true)]);
        let mut chance = self.at_once;
        for cell in 0..CELLS {
            let mass = self.cell(cell);
            if mass <= 0.0 {
                continue;
            }
            let mut outcomes = [0.0; 3];
            for width in 0..WIDTHS.len() {
                let share = self.cells[cell][width] / mass;
                for (sum, one) in outcomes.iter_mut().zip(odds.triple(cell, width)) {
                    *sum += share * one;
                }
            }
            chance += mass * (1.0 - outcomes[FAILS]);
            mean.add(mass, outcomes.map(with_outliers));
        }
        NextTrial {
            rest,
            bits: (entropy(mean.outcomes) - mean.entropy).max(0.0),
            chance,
        }
    }
}

/// The mean of outcomes and of their entropy.
#[derive(Default)]
struct Mean {
    outcomes: [f64; 3],
    entropy: f64,
}

impl Mean {
    fn add(&mut self, mass: f64, outcomes: [f64; 3]) {
        for (sum, one) in self.outcomes.iter_mut().zip(outcomes) {
            *sum += mass * one;
        }
        self.entropy += mass * entropy(outcomes);
    }
}

fn entropy(outcomes: [f64; 3]) -> f64 {
    // Outliers keep each above zero.
    -outcomes
        .map(|one| one * libm::log2(one))
        .iter()
        .sum::<f64>()
}
