//! Many scores together.

use std::collections::BTreeMap;

use diagnosis::{Choice, Fault};
use measure::MeterKind;

use crate::score::Score;

/// Averages over machines.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Row {
    /// How many.
    pub machines: usize,
    /// The likeliest was true, as a share.
    pub right_first: f64,
    /// One of the likeliest three was.
    pub right_in_three: f64,
    /// What was advised mends it.
    pub right_action: f64,
    /// Sound compressors given up.
    pub condemned_sound: f64,
    /// Repairs that would not have helped.
    pub repair_in_vain: f64,
    /// Checks a machine.
    pub checks: f64,
    /// Minutes of work a machine.
    pub minutes: f64,
    /// Minutes of waiting a machine.
    pub waiting: f64,
    /// Sum of squares a machine.
    pub brier: f64,
    /// Checks that would have hurt somebody, in all.
    pub unsafe_steps: usize,
}

/// So many bins of equal numbers of machines.
const BINS: usize = 10;

/// What was said to be so likely, and how often it was so.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bin {
    /// Machines in it.
    pub machines: usize,
    /// Mean of what was said of the first suspect.
    pub said: f64,
    /// How often it was true.
    pub found: f64,
}

/// Scores of one way of working.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Tally {
    scores: Vec<Score>,
}

impl Tally {
    /// Adds one.
    pub fn add(&mut self, score: Score) {
        self.scores.push(score);
    }

    /// All of them together.
    #[must_use]
    pub fn row(&self) -> Row {
        row(self.scores.iter())
    }

    /// By what is wrong, in the order of the app's list; two things wrong count under the first.
    #[must_use]
    pub fn by_fault(&self) -> Vec<(&'static str, Row)> {
        let mut groups: BTreeMap<Option<Fault>, Vec<&Score>> = BTreeMap::new();
        for score in &self.scores {
            let main = score.truth.first().copied();
            groups.entry(main).or_default().push(score);
        }
        groups
            .into_iter()
            .map(|(fault, scores)| {
                let name = fault.map_or("nothing-wrong", Choice::name);
                (name, row(scores.into_iter()))
            })
            .collect()
    }

    /// By kind of machine, in the order of [`Score::MACHINES`].
    #[must_use]
    pub fn by_machine(&self) -> Vec<(&'static str, Row)> {
        let names = Score::MACHINES.into_iter();
        let rows = names.map(|name| (name, self.row_of(|score| score.machine == name)));
        rows.filter(|(_, row)| row.machines > 0).collect()
    }

    /// By what was measured with.
    #[must_use]
    pub fn by_meter(&self) -> Vec<(MeterKind, Row)> {
        let meters = [MeterKind::Basic, MeterKind::Good].into_iter();
        let rows = meters.map(|meter| (meter, self.row_of(|score| score.meter == meter)));
        rows.filter(|(_, row)| row.machines > 0).collect()
    }

    fn row_of(&self, is_of: impl Fn(&Score) -> bool) -> Row {
        let scores: Vec<&Score> = self.scores.iter().filter(|score| is_of(score)).collect();
        row(scores.into_iter())
    }

    /// The mean over what can be wrong, rare and common alike, of how often the action was right.
    #[must_use]
    pub fn right_action_by_fault(&self) -> f64 {
        let rows = self.by_fault();
        let sum: f64 = rows.iter().map(|(_, row)| row.right_action).sum();
        sum / rows.len().max(1) as f64
    }

    /// What was said of the first suspect against how often it was true, in bins of equal numbers.
    #[must_use]
    pub fn reliability(&self) -> Vec<Bin> {
        let mut said: Vec<(f64, bool)> = self
            .scores
            .iter()
            .map(|score| (score.first.1, score.right_first))
            .collect();
        said.sort_by(|one, other| one.0.total_cmp(&other.0));
        let size = said.len().div_ceil(BINS).max(1);
        let bins = said.chunks(size);
        bins.map(|bin| {
            let machines = bin.len();
            let all = machines as f64;
            Bin {
                machines,
                said: bin.iter().map(|one| one.0).sum::<f64>() / all,
                found: bin.iter().filter(|one| one.1).count() as f64 / all,
            }
        })
        .collect()
    }

    /// The expected calibration error: the mean gap of the bins.
    #[must_use]
    pub fn calibration_error(&self) -> f64 {
        let all = self.scores.len().max(1) as f64;
        let gaps = self
            .reliability()
            .into_iter()
            .map(|bin| bin.machines as f64 * (bin.said - bin.found).abs() / all);
        gaps.sum()
    }

    /// What that error would be, on average, if every stated odd were just right: the noise of so
    /// many machines. Mean of the absolute gap of a binomial share, by its normal limit.
    #[must_use]
    pub fn calibration_noise(&self) -> f64 {
        let all = self.scores.len().max(1) as f64;
        let noise = self.reliability().into_iter().map(|bin| {
            let spread = bin.said * (1.0 - bin.said) / bin.machines as f64;
            bin.machines as f64 / all * (2.0 * spread / core::f64::consts::PI).sqrt()
        });
        noise.sum()
    }
}

fn row<'a>(scores: impl Iterator<Item = &'a Score> + Clone) -> Row {
    let machines = scores.clone().count();
    let all = machines.max(1) as f64;
    let mean = |of: &dyn Fn(&Score) -> f64| scores.clone().map(of).sum::<f64>() / all;
    let share = |is: fn(&Score) -> bool| mean(&|score| f64::from(u8::from(is(score))));
    Row {
        machines,
        right_first: share(|score| score.right_first),
        right_in_three: share(|score| score.right_in_three),
        right_action: share(|score| score.right_action),
        condemned_sound: share(|score| score.condemned_sound),
        repair_in_vain: share(|score| score.repair_in_vain),
        checks: mean(&|score| score.checks as f64),
        minutes: mean(&|score| score.minutes),
        waiting: mean(&|score| score.waiting),
        brier: mean(&|score| score.brier),
        unsafe_steps: scores.map(|score| score.unsafe_steps).sum(),
    }
}
