//! Which check is worth doing next: expected drop in expected cost, per minute of work with the
//! change of access in it; safe ones only.
//!
//! (Heckerman, Breese and Rommelse 1995 and Breese and Heckerman 1996, from memory: one step
//! ahead, several faults at once.)

mod again;
mod gated;

use job::{Answer, Content, Job};
use measure::ranked;
use measure::windings::Mains;

pub use again::Again;
pub(super) use again::may_rest_on_one;

use super::ask::{KNOWN, THERE_IS_NONE};
use super::build::Build;
use super::clue::{ANSWER, Clue, Task};
use super::entered::Entered;
use super::fault::Fault;
use super::picture::Picture;
use super::prospects::{ClueWorth, Prospects};
use super::remedy::Action;
use super::setup::{AS_FOUND, Setup, after, minutes_between};
use super::suspects::Conflict;
use crate::choice::Choice;
use crate::gate::{Closed, Gates};
use crate::{Check, Machine, Refrigerant};

/// What a bit about the faults is worth on top, in units of money (judgement): one step ahead
/// doesn't see that two answers together may change the verdict. Two bits or so find a fault, and
/// three quarters of an hour are well spent on that.
const BIT: f64 = 5.0;
/// How much of a minute of waiting counts as one of work, for the order of checks (judgement):
/// one can do something else, but not drive home.
const WAITING_AS_WORK: f64 = 0.05;
/// What is known of its past tells this share of what isn't known yet (judgement).
const PAST_TELLS: f64 = 0.03;
/// With gas that burns and a loss of charge at least this likely, powered work stops.
const GAS_MAY_BE_OUT: f64 = 0.5;

/// A check that can be done now, with what it is worth.
#[derive(Debug, Clone, PartialEq)]
pub struct NextCheck {
    /// What to do.
    pub task: Task,
    /// Expected drop in expected cost by knowing the answer, in units of money.
    pub value: f64,
    /// Bits that the answer tells of the faults.
    pub bits: f64,
    /// Minutes of work, the change of access included.
    pub minutes: f64,
    /// Minutes of waiting on top.
    pub waiting: f64,
    /// What the time costs.
    pub price: f64,
    /// The state that the machine must be in.
    pub setup: Setup,
    /// Only the maker's part or one declared for a gas that burns may be fitted for it.
    pub declared_parts_only: bool,
    /// Answers after which something else would be done.
    pub overturns: Vec<Overturn>,
    /// What it clears the way for, where that is why it is worth its time: then value, bits and
    /// price are those of both together.
    pub opens: Option<Opens>,
    /// Why it is offered again, where it was done before.
    pub again: Option<Again>,
}

/// A check that another one has to come before.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Opens {
    /// The check behind it.
    pub task: Task,
    /// Minutes of work that it takes, with those of waiting as far as they count.
    pub minutes: f64,
}

/// An answer that would change the verdict.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Overturn {
    /// What would be seen.
    pub clue: Clue,
    /// Its name among the clue's answers.
    pub answer: &'static str,
    /// What would be done then.
    pub action: Action,
    /// About which fault.
    pub fault: Option<Fault>,
}

/// A check that is not offered, and why.
#[derive(Debug, Clone, PartialEq)]
pub struct Withheld {
    /// The check.
    pub task: Task,
    /// Why.
    pub why: WhyWithheld,
}

/// Why a check is not offered.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum WhyWithheld {
    /// What may be powered doesn't include it yet.
    Closed(Vec<Closed>),
    /// Gas that burns may be out.
    GasMayBeOut,
    /// It would open or add a contact where gas burns: never on such a machine.
    NotWithGasThatBurns,
    /// A plain start device is tried first.
    AfterGoodDevice,
    /// It says something of a compressor that runs, hums, or trips, and this one hardly does.
    NothingToObserve,
    /// The person can't do it.
    CannotBeDone,
}

impl NextCheck {
    /// Whether knowing is worth more than the time.
    #[must_use]
    pub fn is_worthwhile(&self) -> bool {
        self.worth() > self.price
    }

    fn worth(&self) -> f64 {
        self.value + BIT * self.bits
    }

    /// What it brings per minute: what checks are ordered by.
    #[must_use]
    pub fn per_minute(&self) -> f64 {
        let behind = self.opens.map_or(0.0, |opens| opens.minutes);
        self.worth() / (self.own_minutes() + behind).max(0.5)
    }

    fn own_minutes(&self) -> f64 {
        self.minutes + WAITING_AS_WORK * self.waiting
    }

    /// This check with one behind it that it clears the way for, where that is worth more.
    fn clearing_the_way_for(self, behind: &Self) -> Self {
        let both = Self {
            value: self.value.max(behind.value),
            bits: self.bits.max(behind.bits),
            price: self.price + behind.price,
            opens: Some(Opens {
                task: behind.task,
                minutes: behind.own_minutes(),
            }),
            ..self.clone()
        };
        if both.per_minute() > self.per_minute() {
            both
        } else {
            self
        }
    }
}

/// What the choice depends on.
pub(super) struct Choosing<'a> {
    pub(super) job: &'a Job,
    pub(super) machine: &'a Machine,
    pub(super) gates: &'a Gates,
    pub(super) entered: &'a [Entered],
    pub(super) picture: &'a Picture,
    pub(super) prospects: &'a Prospects<'a>,
    pub(super) conflict: Option<Conflict>,
    /// What would be believed without each task.
    pub(super) without: &'a [(Task, usize, Picture)],
    pub(super) build: Build,
    pub(super) mains: Option<Mains>,
}

impl Choosing<'_> {
    /// What can be done now, the best first, and what can't, with why.
    pub(super) fn rank(&self) -> (Vec<NextCheck>, Vec<Withheld>) {
        let (mut possible, mut withheld) = (Vec::new(), Vec::new());
        let mut behind = Vec::new();
        let now = self.setup_now();
        for task in tasks() {
            let again = self.again(task);
            if self.was_done(task) && again.is_none() {
                continue;
            }
            match self.why_not(task, again) {
                Some(why) => {
                    if let Some(key) = gated::key_to(&why) {
                        behind.extend(self.appraise(task, again, now).map(|one| (key, one)));
                    }
                    withheld.push(Withheld { task, why });
                }
                None => possible.extend(self.appraise(task, again, now)),
            }
        }
        for (key, behind) in &behind {
            let found = possible.iter().position(|one: &NextCheck| one.task == *key);
            if let Some(place) = found {
                let check = possible.remove(place);
                possible.insert(place, check.clearing_the_way_for(behind));
            }
        }
        // Equals stay in the order of the tasks.
        (ranked(possible, NextCheck::per_minute), withheld)
    }

    fn appraise(&self, task: Task, again: Option<Again>, now: Setup) -> Option<NextCheck> {
        let effort = task.effort(self.build);
        let (value, bits, overturns) = match (again, task) {
            (Some(again), _) => (0.0, again.bits(), Vec::new()),
            (None, Task::History) => (0.0, PAST_TELLS * self.unknown(), Vec::new()),
            (None, _) => self.foretold(task)?,
        };
        let minutes = effort.minutes + minutes_between(now, effort.setup);
        Some(NextCheck {
            task,
            value,
            bits,
            minutes,
            waiting: effort.waiting,
            price: self.prospects.stakes().looking(minutes, effort.waiting),
            setup: effort.setup,
            declared_parts_only: matches!(task, Task::Clue(Clue::GoodDevice | Clue::StartKit))
                && self.gas_burns(),
            overturns,
            opens: None,
            again,
        })
    }

    /// What its answers would change: value, bits, and the answers that overturn the verdict.
    fn foretold(&self, task: Task) -> Option<(f64, f64, Vec<Overturn>)> {
        let worths: Vec<(Clue, ClueWorth)> = task
            .clues()
            .filter(|clue| clue.exists_in(self.build))
            .filter_map(|clue| Some((clue, self.prospects.worth(clue, self.mains)?)))
            .collect();
        // The best of its clues: all of them together are worth at least that.
        let (_, best) = worths
            .iter()
            .max_by(|(_, one), (_, other)| one.value.total_cmp(&other.value))?;
        let bits = worths.iter().map(|(_, worth)| worth.bits).sum();
        let overturns = worths
            .iter()
            .flat_map(|(clue, worth)| overturns(*clue, worth))
            .collect();
        Some((best.value, bits, overturns))
    }

    /// Bits that are missing to know of each fault whether it is there.
    fn unknown(&self) -> f64 {
        let entropy = |p: f64| {
            if p <= 0.0 { 0.0 } else { -p * libm::log2(p) }
        };
        let faults = self.picture.faults.iter();
        faults.map(|&p| entropy(p) + entropy(1.0 - p)).sum()
    }

    fn gas_burns(&self) -> bool {
        self.machine.refrigerant.is_some_and(Refrigerant::burns)
    }

    fn was_done(&self, task: Task) -> bool {
        self.entered.iter().any(|one| one.answers(task)) || self.says_nothing(task)
    }

    /// Whether it has an answer that says nothing: no tick, or that there is no such part.
    fn says_nothing(&self, task: Task) -> bool {
        if task == Task::History {
            return matches!(
                self.job.answer(task.name(), KNOWN),
                Some(Answer::Choices(_))
            );
        }
        match self.job.answer(task.name(), ANSWER) {
            Some(Answer::Choice(name)) => name.as_str() == THERE_IS_NONE,
            _ => false,
        }
    }

    /// The state in which the last answer left the machine.
    fn setup_now(&self) -> Setup {
        let mut now = AS_FOUND;
        for entry in self.job.standing() {
            if let Content::Answer { question, answer } = &entry.content
                && !matches!(answer, Answer::NotDone(_))
            {
                let named = tasks().find(|task| question.check.as_str() == task.name());
                if let Some(task) = named {
                    now = after(now, task.setup(self.build));
                }
            }
        }
        now
    }
}

/// Everything that can be chosen. What machine it is and what it did is asked anyway.
fn tasks() -> impl Iterator<Item = Task> {
    let checks = Check::ALL.iter().copied().filter(|check| {
        !matches!(
            check,
            Check::Machine | Check::Refrigerant | Check::StoredCharge
        )
    });
    let clues = Clue::ALL.iter().filter(|clue| clue.check().is_none());
    checks
        .map(Task::Check)
        .chain(clues.map(|clue| Task::Clue(*clue)))
        .chain([Task::History])
}

fn overturns(clue: Clue, worth: &ClueWorth) -> Vec<Overturn> {
    worth
        .overturns
        .iter()
        .filter_map(|&(answer, aim)| {
            Some(Overturn {
                clue,
                answer: clue.answers().get(answer)?,
                action: aim.action,
                fault: aim.fault,
            })
        })
        .collect()
}
