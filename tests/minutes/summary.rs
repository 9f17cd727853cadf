//! All machines of one order together.

use diagnosis::{Fault, Model, Whole};
use practice::{Order, Walk, walk};

use super::story::Story;

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
    /// On how many machines what is wrong, or that nothing is, stands among the likeliest two in
    /// the end, or among as many as there are faults.
    pub(crate) found: usize,
}

impl Summary {
    /// Every story in one order.
    pub(crate) fn of(stories: &[Story], order: &Order) -> Self {
        let model = Model::default();
        let walks: Vec<Walk> = stories
            .iter()
            .map(|story| walk(&mut &*story, &model, order.clone()).unwrap())
            .collect();
        let walked = || walks.iter().zip(stories);
        let all = walks.len().max(1) as f64;
        let mean = |of: fn(&Walk) -> f64| walks.iter().map(of).sum::<f64>() / all;
        let said = |(walk, story): (&Walk, &Story)| {
            let tasks = walk.tasks.iter();
            tasks.filter(|task| !story.said(**task).is_empty()).count()
        };
        let mut minutes: Vec<f64> = walks.iter().map(|walk| walk.minutes).collect();
        minutes.sort_by(f64::total_cmp);
        Self {
            machines: walks.len(),
            minutes: mean(|walk| walk.minutes),
            middle: minutes.get(minutes.len() / 2).copied().unwrap_or(0.0),
            waiting: mean(|walk| walk.waiting),
            checks: mean(|walk| walk.tasks.len() as f64),
            said: walked().map(said).sum::<usize>() as f64 / all,
            found: walked()
                .filter(|(walk, story)| is_found(&walk.whole, &story.faults))
                .count(),
        }
    }
}

fn is_found(whole: &Whole, faults: &[Fault]) -> bool {
    let beaten_by = |probability: f64| {
        let suspects = whole.suspects.iter().map(|one| one.probability);
        let all = suspects.chain([whole.nothing_wrong.probability]);
        all.filter(|other| *other > probability).count()
    };
    let among = faults.len().max(2);
    if faults.is_empty() {
        return beaten_by(whole.nothing_wrong.probability) < among;
    }
    faults.iter().all(|fault| {
        let suspect = whole.suspects.iter().find(|one| one.fault == Some(*fault));
        suspect.is_some_and(|one| beaten_by(one.probability) < among)
    })
}
