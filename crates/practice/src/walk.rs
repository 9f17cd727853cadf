//! One machine, from the first question until enough is known.

use diagnosis::{
    Action, Advice, Adviser, Again, Build, Check, Clue, Decided, Model, NextCheck, Task, Whole,
    assess,
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

    /// What it brings the second time. A machine of which nothing more is known says the same.
    fn answer_again(&mut self, task: Task) -> Vec<Content> {
        self.answer(task)
    }

    /// What a task brings that is timed or watched: tries after rests, a thermometer each half hour.
    /// Nothing where it is answered at one moment, by the two above.
    fn watch(&mut self, _begun: &Begun<'_>) -> Option<Watched> {
        None
    }
}

/// A task that is about to be begun.
#[derive(Debug, Clone, Copy)]
pub struct Begun<'a> {
    /// Which.
    pub task: Task,
    /// What is known so far.
    pub job: &'a Job,
    /// When the work is done and the waiting begins.
    pub at: Moment,
}

/// What was entered over a time.
#[derive(Debug, Clone, PartialEq)]
pub struct Watched {
    /// Each entry with its moment, none before the task was begun.
    pub entries: Vec<(Moment, Content)>,
    /// When it was over.
    pub ends: Moment,
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
    /// What was done, in order; what was done once more stands there twice.
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
    let mut adviser = Adviser::new(model);
    let mut advise = |job: &Job, now: Moment| adviser.advise(job, now);
    let (followed, now) = follow(machine, &mut advise, order)?;
    let whole = assess(model, &followed.job, now).whole?;
    Some(followed.with(whole))
}

/// The same with another way to weigh a job: a page holds the weighing in a part of its own.
pub fn walk_with(
    machine: &mut dyn Examined,
    weigh: &dyn Fn(&Job, Moment) -> Option<Whole>,
    order: Order,
) -> Option<Walk> {
    let mut last = None;
    let mut advise = |job: &Job, now: Moment| {
        let whole = weigh(job, now)?;
        let advice = Advice {
            verdict: whole.verdict.clone(),
            safety_first: whole.safety_first.clone(),
            next: whole.next.clone(),
        };
        last = Some(whole);
        Some(advice)
    };
    let (followed, _) = follow(machine, &mut advise, order)?;
    Some(followed.with(last?))
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
    advise: &mut dyn FnMut(&Job, Moment) -> Option<Advice>,
    mut order: Order,
) -> Option<(Followed, Moment)> {
    let mut job = Job::new(Id::new("practice").ok()?, moment(0.0)?, Origin::Invented);
    enter(&mut job, machine.opening(), 0.0);
    let (mut minutes, mut waiting) = (0.0, 0.0);
    let mut done: Vec<Done> = Vec::new();
    loop {
        let now = moment(minutes + waiting)?;
        let advice = advise(&job, now)?;
        let next = (done.len() < MOST_CHECKS)
            .then(|| next(&advice, &mut order, &done))
            .flatten()
            .map(|next| {
                let rested = minutes + waiting - last_done(&done, next.task);
                let rest = (rest(next) - rested).max(0.0);
                Doing::of(next.task, (next.minutes, rest, next.waiting))
            });
        let next = next.or_else(|| test_fit(&advice, &done));
        let Some(doing) = next else {
            let followed = Followed {
                tasks: done.iter().map(|one| one.task).collect(),
                minutes,
                waiting,
                job,
            };
            return Some((followed, now));
        };
        minutes += doing.work;
        waiting += doing.rest;
        let task = doing.task;
        let is_second = done.iter().any(|one| one.task == task);
        let begins = minutes + waiting;
        let waited = doing.does(machine, &mut job, is_second, begins)?;
        waiting += waited;
        let at = begins + waited;
        done.push(Done { task, at });
    }
}

/// What is done next, all in minutes.
struct Doing {
    task: Task,
    work: f64,
    /// What it has to rest first.
    rest: f64,
    /// What is waited meanwhile, as far as that is stated and not watched.
    pause: f64,
}

impl Doing {
    /// Does it, so many minutes after the beginning, and enters what it brings. How long was waited.
    fn does(
        &self,
        machine: &mut dyn Examined,
        job: &mut Job,
        is_second: bool,
        begins: f64,
    ) -> Option<f64> {
        let (task, at) = (self.task, moment(begins)?);
        if let Some(watched) = machine.watch(&Begun { task, job, at }) {
            for (at, content) in watched.entries {
                add(job, content, at);
            }
            return Some(at.until(watched.ends).get().max(0.0) / 60.0);
        }
        let found = if is_second {
            machine.answer_again(task)
        } else {
            machine.answer(task)
        };
        enter(job, found, begins + self.pause);
        Some(self.pause)
    }

    const fn of(task: Task, (work, rest, pause): (f64, f64, f64)) -> Self {
        Self {
            task,
            work,
            rest,
            pause,
        }
    }
}

/// One task that was done.
struct Done {
    task: Task,
    /// Minutes since the beginning.
    at: f64,
}

/// When a task was done last, in minutes since the beginning; long ago where it never was.
fn last_done(done: &[Done], task: Task) -> f64 {
    let last = done.iter().rev().find(|one| one.task == task);
    last.map_or(f64::NEG_INFINITY, |one| one.at)
}

/// How long one waits before what condemns a compressor is done once more, in minutes, as the app
/// says: "cold" is an hour after, which is when a protector inside counts as cooled, and a bit; a
/// try at starting is repeated after a day of rest.
fn rest(next: &NextCheck) -> f64 {
    const HOUR: f64 = 61.0;
    const DAY: f64 = 1_440.0;
    match (next.again, next.task) {
        (Some(Again::RestsOnOne), Task::Check(_)) => HOUR,
        (Some(Again::RestsOnOne), _) => DAY,
        (Some(Again::DoesNotFit(_)), Task::Check(Check::Windings)) => HOUR,
        (Some(Again::DoesNotFit(_)) | None, _) => 0.0,
    }
}

/// An invented day: only differences of times matter.
fn moment(minutes: f64) -> Option<Moment> {
    Moment::new(1_795_600_000_000 + (minutes * 60_000.0) as i64, 60).ok()
}

/// Adds entries. One that can't be added is left out, as a page would refuse it.
fn enter(job: &mut Job, contents: Vec<Content>, minutes: f64) {
    let Some(at) = moment(minutes) else { return };
    for content in contents {
        add(job, content, at);
    }
}

/// Adds an entry of a moment.
pub(crate) fn add(job: &mut Job, content: Content, at: Moment) {
    let place = job.entries().len();
    if let Ok(id) = Id::new(&format!("entry-{place}")) {
        let _ = job.add(Entry { id, at, content });
    }
}

/// What to do; nothing once enough is known. What was done is done once more where the app offers
/// that, and no third time.
fn next<'a>(advice: &'a Advice, order: &mut Order, done: &[Done]) -> Option<&'a NextCheck> {
    let is_left = |one: &&NextCheck| {
        let times = done.iter().filter(|done| done.task == one.task).count();
        times == 0 || (times == 1 && one.again.is_some())
    };
    let left: Vec<&NextCheck> = advice.next.iter().filter(is_left).collect();
    if advice.verdict.decided != Decided::GoOn {
        return None;
    }
    if !left.iter().any(|one| one.is_worthwhile()) {
        // What stands between a verdict and its being acted on is done for its own sake: who is
        // told not to give a compressor up before a check makes that check.
        return advice.next.first().filter(is_left);
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
fn test_fit(advice: &Advice, done: &[Done]) -> Option<Doing> {
    const TRIAL: Task = Task::Clue(Clue::GoodDevice);
    let was_done = done.iter().any(|one| one.task == TRIAL);
    let is_told = advice.verdict.best.action == Action::TestFit && !was_done;
    let build = Build::ManualDefrost;
    let takes = (TRIAL.minutes(build), 0.0, TRIAL.waiting(build));
    is_told.then(|| Doing::of(TRIAL, takes))
}

/// Whether a check is part of what is told at the beginning.
pub(crate) const fn is_told_at_once(check: Check) -> bool {
    matches!(
        check,
        Check::Machine | Check::Refrigerant | Check::StoredCharge
    )
}
