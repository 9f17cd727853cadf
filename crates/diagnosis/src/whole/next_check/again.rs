//! Which check that was done is worth doing once more, and why.

use job::{Answer, Content};

use super::Choosing;
use crate::Check;
use crate::start_trials::clue_of;
use crate::whole::clue::{Clue, Task};
use crate::whole::course::speaks_to;
use crate::whole::fault::Fault;
use crate::whole::picture::Picture;

/// Tasks that can condemn a compressor by one reading, the faults that they find, and from which
/// chance of those on they are done twice.
const CONDEMNING: [(Task, &[Fault], f64); 2] = [
    (
        Task::Check(Check::Windings),
        &[
            Fault::InnerProtectorOpen,
            Fault::WindingOpen,
            Fault::TurnsShorted,
            Fault::InverterMotorFailed,
        ],
        0.08,
    ),
    (
        Task::Clue(Clue::GoodDevice),
        &[Fault::RotorTight, Fault::RotorSeized],
        0.3,
    ),
];
/// Bits that a second reading is worth then (judgement).
const SECOND_READING: f64 = 1.5;

/// Why a check that was done is offered again.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Again {
    /// Its readings fit the others least: so many times less likely beside them than by
    /// themselves.
    DoesNotFit(f64),
    /// What can't be undone would rest on one reading.
    RestsOnOne,
}

impl Again {
    /// What knowing whether it holds is worth.
    pub(super) fn bits(self) -> f64 {
        match self {
            Self::DoesNotFit(factor) => libm::log2(factor.max(1.0)),
            Self::RestsOnOne => SECOND_READING,
        }
    }
}

/// Whether what can't be undone may rest on one reading of a task: that depends on what would be
/// believed without it.
pub(in crate::whole) fn may_rest_on_one(task: Task, picture: &Picture) -> bool {
    let mut condemning = CONDEMNING.iter();
    condemning.any(|(one, faults, from)| *one == task && chance(picture, faults) >= *from)
}

fn chance(picture: &Picture, faults: &[Fault]) -> f64 {
    let each = faults.iter();
    each.map(|fault| picture.faults[fault.place()]).sum()
}

impl Choosing<'_> {
    /// Why a check that was done once is to be done again.
    pub(super) fn again(&self, task: Task) -> Option<Again> {
        if !self.was_done(task) || self.was_repeated(task) {
            return None;
        }
        let unfitting = self.conflict.filter(|conflict| conflict.repeat == task);
        if let Some(conflict) = unfitting {
            return Some(Again::DoesNotFit(conflict.factor));
        }
        if !may_rest_on_one(task, self.picture) {
            return None;
        }
        let (_, _, without) = self.without.iter().find(|(one, ..)| *one == task)?;
        let rests = CONDEMNING.iter().any(|(condemns, faults, from)| {
            let now = chance(self.picture, faults);
            // Readings that clear what they look at are not what it rests on.
            *condemns == task && now >= *from && now > chance(without, faults)
        });
        rests.then_some(Again::RestsOnOne)
    }

    /// Whether any of its items was answered more than once, or a start was tried more than once.
    fn was_repeated(&self, task: Task) -> bool {
        let tried = self.job.standing().into_iter();
        let tried = tried.filter(|entry| match &entry.content {
            Content::Trial(trial) => Task::Clue(clue_of(trial.set_up)) == task,
            _ => false,
        });
        if tried.count() > 1 {
            return true;
        }
        let answered = self
            .job
            .standing()
            .into_iter()
            .filter_map(|entry| match &entry.content {
                Content::Answer { question, answer }
                    if speaks_to(question.check.as_str(), task)
                        && !matches!(answer, Answer::NotDone(_)) =>
                {
                    Some(&question.item)
                }
                _ => None,
            });
        let items: Vec<_> = answered.collect();
        let is_twice = |item| items.iter().filter(|other| **other == item).count() > 1;
        items.iter().any(|item| is_twice(*item))
    }
}
