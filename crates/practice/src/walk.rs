//! One machine, from the first question until enough is known.

use std::cell::RefCell;

use diagnosis::{
    Action, Advice, Build, Check, Clue, Decided, Model, NextCheck, Task, Whole, advise, assess,
};
use job::{Content, Entry, Id, Job, Moment, Origin};
use simulator::Chance;

use crate::checklist::ALONG_THE_PATH;

/// Nobody makes more checks than this: there aren't as many.
const MOST_CHECKS: usize = 60;

/// A machine that answers whatever is asked of it.
pub trait Examined {
    /// What a person tells before the first check: the machine, its plate, its complaint.
    fn opening(&mut self) -> Vec<Content>;

    /// What a task brings; nothing where it can't be done.
    fn answer(&mut self, task: Task) -> Vec<Content>;
}

/// Which check is taken.
#[derive(Debug, Clone, PartialEq)]
pub enum Order {
    /// The one that the app names first.
    Ours,
    /// The first on a fixed checklist along the Path that wasn't taken yet.
    Checklist,
    /// Any that is offered.
    Random(Chance),
}

/// How it went.
#[derive(Debug, Clone, PartialEq)]
pub struct Walk {
    /// What was done, in order.
    pub tasks: Vec<Task>,
    /// Minutes of work, the change of access included.
    pub minutes: f64,
    /// Minutes of waiting on top.
    pub waiting: f64,
    /// What is believed in the end.
    pub whole: Whole,
    /// Everything that was entered.
    pub job: Job,
}

/// Works on a machine in one order until enough is known. `None` where a machine tells nothing
/// that could be weighed, not even its kind.
pub fn walk(machine: &mut dyn Examined, model: &Model, order: Order) -> Option<Walk> {
    let advise = |job: &Job, now: Moment| advise(model, job, now);
    let (followed, now) = follow(machine, &advise, order)?;
    let whole = assess(model, &followed.job, now).whole?;
    Some(followed.with(whole))
}

/// The same with another way to weigh a job: a page holds the weighing in a part of its own.
pub fn walk_with(
    machine: &mut dyn Examined,
    weigh: &dyn Fn(&Job, Moment) -> Option<Whole>,
    order: Order,
) -> Option<Walk> {
    let last = RefCell::new(None);
    let advise = |job: &Job, now: Moment| {
        let whole = weigh(job, now)?;
        let advice = Advice {
            verdict: whole.verdict.clone(),
            safety_first: whole.safety_first.clone(),
            next: whole.next.clone(),
        };
        last.replace(Some(whole));
        Some(advice)
    };
    let (followed, _) = follow(machine, &advise, order)?;
    Some(followed.with(last.take()?))
}

/// What was done until enough was known.
struct Followed {
    tasks: Vec<Task>,
    minutes: f64,
    waiting: f64,
    job: Job,
}

impl Followed {
    fn with(self, whole: Whole) -> Walk {
        Walk {
            tasks: self.tasks,
            minutes: self.minutes,
            waiting: self.waiting,
            whole,
            job: self.job,
        }
    }
}

/// Follows advice until there is enough of it; with the moment when that was.
fn follow(
    machine: &mut dyn Examined,
    advise: &dyn Fn(&Job, Moment) -> Option<Advice>,
    mut order: Order,
) -> Option<(Followed, Moment)> {
    let mut job = Job::new(Id::new("practice").ok()?, moment(0.0)?, Origin::Invented);
    enter(&mut job, machine.opening(), 0.0);
    let (mut tasks, mut minutes, mut waiting) = (Vec::new(), 0.0, 0.0);
    loop {
        let now = moment(minutes + waiting)?;
        let advice = advise(&job, now)?;
        let next = (tasks.len() < MOST_CHECKS)
            .then(|| next(&advice, &mut order, &tasks))
            .flatten()
            .map(|next| (next.task, next.minutes, next.waiting));
        let next = next.or_else(|| test_fit(&advice, &tasks));
        let Some((task, work, rest)) = next else {
            let followed = Followed {
                tasks,
                minutes,
                waiting,
                job,
            };
            return Some((followed, now));
        };
        minutes += work;
        waiting += rest;
        tasks.push(task);
        enter(&mut job, machine.answer(task), minutes + waiting);
    }
}

/// An invented day: only differences of times matter.
fn moment(minutes: f64) -> Option<Moment> {
    Moment::new(1_795_600_000_000 + (minutes * 60_000.0) as i64, 60).ok()
}

/// Adds entries. One that can't be added is left out, as a page would refuse it.
fn enter(job: &mut Job, contents: Vec<Content>, minutes: f64) {
    for content in contents {
        let place = job.entries().len();
        let id = Id::new(&format!("entry-{place}"));
        if let (Ok(id), Some(at)) = (id, moment(minutes)) {
            let _ = job.add(Entry { id, at, content });
        }
    }
}

/// What to do; nothing once enough is known.
fn next<'a>(advice: &'a Advice, order: &mut Order, done: &[Task]) -> Option<&'a NextCheck> {
    let left: Vec<&NextCheck> = advice
        .next
        .iter()
        .filter(|one| !done.contains(&one.task))
        .collect();
    let is_enough = advice.verdict.decided != Decided::GoOn;
    if is_enough || !left.iter().any(|one| one.is_worthwhile()) {
        return None;
    }
    let offered = |task: Task| left.iter().find(|one| one.task == task).copied();
    let checks = advice.safety_first.iter().map(|step| step.check());
    let mut safety = checks.filter(|check| !is_told_at_once(*check));
    if let Some(first) = safety.find_map(|check| offered(Task::Check(check))) {
        return Some(first);
    }
    match order {
        Order::Ours => left.first().copied(),
        Order::Checklist => ALONG_THE_PATH.iter().find_map(|task| offered(*task)),
        Order::Random(chance) => {
            let place = (chance.share() * left.len() as f64) as usize;
            left.get(place).copied()
        }
    }
}

/// Who is told to fit a part to see does so, and says what came of it, whatever the order of
/// checks was.
fn test_fit(advice: &Advice, done: &[Task]) -> Option<(Task, f64, f64)> {
    const TRIAL: Task = Task::Clue(Clue::GoodDevice);
    let is_told = advice.verdict.best.action == Action::TestFit && !done.contains(&TRIAL);
    let build = Build::ManualDefrost;
    is_told.then(|| (TRIAL, TRIAL.minutes(build), TRIAL.waiting(build)))
}

/// Whether a check is part of what is told at the beginning.
pub(crate) const fn is_told_at_once(check: Check) -> bool {
    matches!(
        check,
        Check::Machine | Check::Refrigerant | Check::StoredCharge
    )
}
