//! The cells over which thresholds are summed, and what a trial says of each.

use super::trial::Outcome;

/// Equal cells of ln rest between the ends.
pub(super) const CELLS: usize = 160;
/// The shortest and the longest threshold that has a density, in seconds: 15 s and 4 h.
pub(super) const ENDS: [f64; 2] = [15.0, 14_400.0];
/// Their natural logarithms.
pub(super) const LOG_ENDS: [f64; 2] = [2.708_050_201_102_21, 9.574_983_485_564_09];
/// The width of a cell in ln rest.
pub(super) const STEP: f64 = (LOG_ENDS[1] - LOG_ENDS[0]) / CELLS as f64;
/// How gradually the chance of starting rises with ln rest, and how likely each is (judgement).
/// From 10 to 90 % the rest grows by exp(4.4·s): 1.4-, 2- and 4-fold.
pub(super) const WIDTHS: [(f64, f64); 3] = [(0.08, 0.3), (0.16, 0.45), (0.32, 0.25)];
/// The share of outcomes that say nothing (judgement).
const OUTLIERS: f64 = 0.03;
/// Where in the triple of chances a failure stands.
pub(super) const FAILS: usize = 2;

/// The middle of a cell in ln rest.
pub(super) fn middle(cell: usize) -> f64 {
    LOG_ENDS[0] + (cell as f64 + 0.5) * STEP
}

/// The odds of starting after one rest, for each cell and width.
pub(super) struct Odds(Vec<[f64; WIDTHS.len()]>);

impl Odds {
    /// At one logarithm of a rest. Odds fall from cell to cell by a constant factor, so that few
    /// exponentials are taken.
    pub(super) fn at(log_rest: f64) -> Self {
        let factors = WIDTHS.map(|(width, _)| libm::exp(-STEP / width));
        let mut odds = WIDTHS.map(|(width, _)| libm::exp((log_rest - middle(0)) / width));
        let mut table = Vec::with_capacity(CELLS);
        for _ in 0..CELLS {
            table.push(odds);
            for (odds, factor) in odds.iter_mut().zip(factors) {
                *odds *= factor;
            }
        }
        Self(table)
    }

    /// The chance of starting, humming first or not.
    pub(super) fn start(&self, cell: usize, width: usize) -> f64 {
        let odds = self.0[cell][width];
        odds / (1.0 + odds)
    }

    /// Starts at once, hums and starts, fails: sum to one.
    pub(super) fn triple(&self, cell: usize, width: usize) -> [f64; 3] {
        let odds = self.0[cell][width];
        let at_once = odds / (odds + core::f64::consts::E);
        let fails = 1.0 / (1.0 + odds);
        [at_once, 1.0 - at_once - fails, fails]
    }

    /// The likelihood of an outcome, outliers included.
    pub(super) fn of(&self, outcome: Outcome, cell: usize, width: usize) -> f64 {
        let [at_once, hums, fails] = self.triple(cell, width);
        with_outliers(match outcome {
            Outcome::Started => at_once,
            Outcome::HummedThenStarted => hums,
            Outcome::Failed | Outcome::Silent => fails,
        })
    }
}

/// The chance of an outcome where some say nothing: those are each of the three as often.
pub(super) fn with_outliers(chance: f64) -> f64 {
    (1.0 - OUTLIERS) * chance + OUTLIERS / 3.0
}

/// The likelihood of what is bound to happen, or bound not to.
pub(super) fn certain(so: bool) -> f64 {
    with_outliers(if so { 1.0 } else { 0.0 })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_ends_and_their_logarithms_are_the_same() {
        for (end, log) in ENDS.into_iter().zip(LOG_ENDS) {
            assert!((libm::log(end) - log).abs() < 1e-14);
        }
    }

    #[test]
    fn odds_by_steps_are_those_of_the_closed_form() {
        let odds = Odds::at(5.0);
        for (width, (spread, _)) in WIDTHS.into_iter().enumerate() {
            for cell in [0, 57, CELLS - 1] {
                let d = (5.0 - middle(cell)) / spread;
                let sigma = |d: f64| 1.0 / (1.0 + libm::exp(-d));
                let [at_once, hums, fails] = odds.triple(cell, width);
                assert!((at_once - sigma(d - 1.0)).abs() < 1e-12);
                assert!((fails - sigma(-d)).abs() < 1e-12);
                assert!((at_once + hums + fails - 1.0).abs() < 1e-12);
                assert!((odds.start(cell, width) - sigma(d)).abs() < 1e-12);
            }
        }
    }
}
