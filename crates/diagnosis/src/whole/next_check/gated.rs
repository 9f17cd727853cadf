//! Which check can't be done now, why, and what opens the way to it.

use job::Answer;
use measure::windings::Pair;

use super::{Again, Choosing, GAS_MAY_BE_OUT, WhyWithheld};
use crate::checks::windings::item_of_pair;
use crate::choice::Choice;
use crate::gate::{Closed, Gate};
use crate::whole::ask::KNOWN;
use crate::whole::clue::{ANSWER, Clue, Task};
use crate::whole::conditions::motor;
use crate::whole::fault::Fault;
use crate::whole::setup::Needs;
use crate::{Check, KitDeclared};

impl Choosing<'_> {
    pub(super) fn why_not(&self, task: Task, again: Option<Again>) -> Option<WhyWithheld> {
        let item = if task == Task::History { KNOWN } else { ANSWER };
        if matches!(self.job.answer(task.name(), item), Some(Answer::NotDone(_))) {
            return Some(WhyWithheld::CannotBeDone);
        }
        if let Task::Check(check) = task
            && again.is_none()
            && self.was_given_up(check)
        {
            return Some(WhyWithheld::CannotBeDone);
        }
        if let Task::Clue(clue) = task
            && !self.is_to_be_observed(clue)
        {
            return Some(WhyWithheld::NothingToObserve);
        }
        if task == Task::Clue(Clue::StartKit) {
            let refused = self.gas_burns() && !KitDeclared::suits(self.job, self.machine);
            if refused || self.machine.refrigerant.is_none() {
                return Some(WhyWithheld::NotWithGasThatBurns);
            }
            if !self.was_done(Task::Clue(Clue::GoodDevice)) {
                return Some(WhyWithheld::AfterGoodDevice);
            }
        }
        let gate = match task.effort(self.build).needs {
            Needs::NoPower => return None,
            Needs::LookAndListen => &self.gates.look_and_listen,
            Needs::Trials => &self.gates.trials,
        };
        if let Gate::Closed(why) = gate {
            return Some(WhyWithheld::Closed(why.clone()));
        }
        let lost = [Fault::ChargeLow, Fault::ChargeGone]
            .iter()
            .map(|fault| self.picture.faults[fault.place()])
            .sum::<f64>();
        (self.gas_burns() && lost >= GAS_MAY_BE_OUT).then_some(WhyWithheld::GasMayBeOut)
    }

    /// Whether every item was answered, and none of the answers says anything.
    fn was_given_up(&self, check: Check) -> bool {
        let items = check.items(self.job);
        let pairs = Pair::ALL
            .iter()
            .all(|pair| self.job.answer(check.name(), item_of_pair(*pair)).is_some());
        match check {
            Check::Windings => pairs,
            _ => !items.is_empty() && items.iter().all(|item| item.is_answered(self.job)),
        }
    }

    /// Whether the machine does, likely enough, what the clue is about.
    fn is_to_be_observed(&self, clue: Clue) -> bool {
        let does = |states: &[usize]| -> f64 {
            states
                .iter()
                .filter_map(|state| self.picture.motor.get(*state))
                .sum()
        };
        let runs = does(&[motor::RUNS, motor::TOO_SELDOM, motor::CUTS_OUT]);
        match clue {
            Clue::DoorSwitch | Clue::RunPattern => runs >= 0.5,
            _ if clue.needs_running() => runs >= 0.5,
            Clue::Temperatures | Clue::ThawTrial => runs >= 0.3,
            Clue::ClickInterval
            | Clue::SaggingVolts
            | Clue::Restart
            | Clue::GoodDevice
            | Clue::StartKit => does(&[motor::HUMS, motor::CUTS_OUT]) >= 0.15,
            Clue::TripPattern | Clue::PartByPart => does(&[motor::TRIPS]) >= 0.1,
            _ => true,
        }
    }
}

/// The check that opens what is withheld, where one does.
pub(super) fn key_to(why: &WhyWithheld) -> Option<Task> {
    let WhyWithheld::Closed(reasons) = why else {
        return None;
    };
    // The plug comes first where both are missing.
    match reasons.as_slice() {
        [Closed::PlugNotChecked, ..] => Some(Task::Check(Check::Ground)),
        [Closed::PinsNotChecked] => Some(Task::Check(Check::Shell)),
        _ => None,
    }
}
