//! Which check that was done is worth doing once more, and why.

use job::{Answer, Content};

use super::Choosing;
use crate::Check;
use crate::whole::clue::Task;
use crate::whole::fault::Fault;

/// From here on a motor that its pins condemn is measured twice.
const MOTOR_IN_DOUBT: f64 = 0.08;
/// Bits that a second reading of the pins is worth then (judgement).
const SECOND_READING: f64 = 1.0;

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

impl Choosing<'_> {
    /// Why a check that was done once is to be done again.
    pub(super) fn again(&self, task: Task) -> Option<Again> {
        if !self.was_done(task) || self.was_repeated(task) {
            return None;
        }
        let unfitting = self.conflict.filter(|conflict| conflict.repeat == task);
        let motor = [
            Fault::InnerProtectorOpen,
            Fault::WindingOpen,
            Fault::TurnsShorted,
            Fault::InverterMotorFailed,
        ];
        let condemned: f64 = motor
            .iter()
            .map(|fault| self.picture.faults[fault.place()])
            .sum();
        match unfitting {
            Some(conflict) => Some(Again::DoesNotFit(conflict.factor)),
            None if task == Task::Check(Check::Windings) && condemned >= MOTOR_IN_DOUBT => {
                Some(Again::RestsOnOne)
            }
            None => None,
        }
    }

    /// Whether any of its items was answered more than once.
    fn was_repeated(&self, task: Task) -> bool {
        let answered = self
            .job
            .standing()
            .into_iter()
            .filter_map(|entry| match &entry.content {
                Content::Answer { question, answer }
                    if question.check.as_str() == task.name()
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
