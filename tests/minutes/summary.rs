//! All machines of one order together.

use super::story::Story;
use super::walk::{Order, Walk, walk};

/// Averages over machines.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Summary {
    pub(crate) machines: usize,
    pub(crate) minutes: f64,
    /// Half the machines take at most so many minutes.
    pub(crate) middle: f64,
    pub(crate) waiting: f64,
    pub(crate) checks: f64,
    /// How many of the checks the stories themselves have answers to.
    pub(crate) said: f64,
    /// On how many machines what is wrong stood on top in the end.
    pub(crate) found: usize,
}

impl Summary {
    /// Every story in one order.
    pub(crate) fn of(stories: &[Story], order: Order) -> Self {
        let walks: Vec<Walk> = stories.iter().map(|story| walk(story, order)).collect();
        let mean =
            |of: fn(&Walk) -> f64| walks.iter().map(of).sum::<f64>() / walks.len().max(1) as f64;
        let mut minutes: Vec<f64> = walks.iter().map(|walk| walk.minutes).collect();
        minutes.sort_by(f64::total_cmp);
        Self {
            machines: walks.len(),
            minutes: mean(|walk| walk.minutes),
            middle: minutes.get(minutes.len() / 2).copied().unwrap_or(0.0),
            waiting: mean(|walk| walk.waiting),
            checks: mean(|walk| walk.checks.len() as f64),
            said: mean(|walk| walk.said as f64),
            found: walks.iter().filter(|walk| walk.found).count(),
        }
    }
}
