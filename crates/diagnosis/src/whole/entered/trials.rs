//! Tries to start the compressor, as weights on the clues that ask what comes of them.

use job::{Job, SetUp};
use quantity::Seconds;

use super::super::clue::Task;
use super::Entered;
use super::choices::with_aside;
use crate::start_trials::{Series, all_series, clue_of};

/// From such a rest on a machine that doesn't start is one that hums.
const LONG: Seconds = Seconds::new(1_800.0);
/// What a try that was silent says against anything that was heard, and the other way round
/// (judgement: a loose plug, an ear that was elsewhere).
const MISTAKEN: f64 = 0.03;

/// Each set-up that was tried.
pub(super) fn trials(job: &Job) -> Vec<Entered> {
    let series = all_series(job);
    let each = series.iter().map(|one| {
        let clue = clue_of(one.set_up);
        let logs = weights(one).map(libm::log);
        Entered::new(Task::Clue(clue), with_aside(clue, logs.to_vec()))
    });
    each.collect()
}

/// The likelihood under each answer of the set-up's clue.
fn weights(series: &Series) -> [f64; 3] {
    match series.set_up {
        // Within minutes, only after a long rest, not at all.
        SetUp::Original => series.likelihoods(series.bands.abnormal_from),
        // Starts, hums, silent.
        SetUp::Substitute | SetUp::Kit if series.is_silent() => [MISTAKEN, MISTAKEN, 1.0],
        SetUp::Substitute | SetUp::Kit => {
            let [starts, later, never] = series.likelihoods(LONG);
            [starts, later.max(never), MISTAKEN * starts.max(never)]
        }
    }
}
