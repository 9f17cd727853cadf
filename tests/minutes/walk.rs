//! One machine, from the first question until enough is known.

use diagnosis::{Decided, Fault, NextCheck, Task, Whole};

use super::checklist::ALONG_THE_PATH;
use super::story::Story;
use crate::told;

/// Nobody makes more checks than this: there aren't as many.
const MOST_CHECKS: usize = 60;

/// Which check is taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Order {
    /// The one that we name first.
    Ours,
    /// The first on the checklist that wasn't taken yet.
    Checklist,
}

/// How it went.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Walk {
    pub(crate) checks: Vec<Task>,
    /// How many of them the story itself has an answer to.
    pub(crate) said: usize,
    /// Of work, the change of access included.
    pub(crate) minutes: f64,
    /// Of waiting on top.
    pub(crate) waiting: f64,
    /// Whether every fault that there is, or that there is none, stands among the likeliest two
    /// in the end, or among as many as there are faults.
    pub(crate) found: bool,
}

/// Works on a machine in one order until enough is known.
pub(crate) fn walk(story: &Story, order: Order) -> Walk {
    let mut lines = story.opening();
    let mut walk = Walk {
        checks: Vec::new(),
        said: 0,
        minutes: 0.0,
        waiting: 0.0,
        found: false,
    };
    loop {
        let told: Vec<&str> = lines.iter().map(String::as_str).collect();
        let whole = told::assessed(&told).whole.unwrap();
        let next = (walk.checks.len() < MOST_CHECKS)
            .then(|| next(&whole, order, &walk.checks))
            .flatten();
        let Some(next) = next else {
            walk.found = is_found(&whole, &story.faults);
            return walk;
        };
        walk.minutes += next.minutes;
        walk.waiting += next.waiting;
        walk.checks.push(next.task);
        let said = story.said(next.task);
        if said.is_empty() {
            lines.extend(story.drawn(next.task));
        } else {
            walk.said += 1;
            lines.extend(said);
        }
    }
}

/// What to do; nothing once enough is known.
fn next<'a>(whole: &'a Whole, order: Order, done: &[Task]) -> Option<&'a NextCheck> {
    let mut left = whole.next.iter().filter(|one| !done.contains(&one.task));
    let is_enough = whole.verdict.decided != Decided::GoOn;
    if is_enough || !left.clone().any(NextCheck::is_worthwhile) {
        return None;
    }
    let checks = whole.safety_first.iter().map(|step| step.check());
    let mut safety = checks.filter(|check| !Story::is_told_at_once(*check));
    let offered = |task: Task| left.clone().find(|one| one.task == task);
    if let Some(first) = safety.find_map(|check| offered(Task::Check(check))) {
        return Some(first);
    }
    match order {
        Order::Ours => left.next(),
        Order::Checklist => ALONG_THE_PATH.iter().find_map(|task| offered(*task)),
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
