//! What has to be seen before a sealed system is given up: two signs of its own, and what lies around
//! it.
//!
//! A cabinet that stays warm for want of air, behind ice, by a door that stands open or in a room that is
//! too hot looks from outside much like one that has lost its charge. Rule out what is outside first:
//! *Modern Refrigeration and Air Conditioning* (2017), p. 666.

use super::{Case, Proposal, SEALED_SIGNS};
use crate::whole::clue::{Clue, Task};
use crate::whole::fault::Fault;
use crate::whole::remedy::Action;

/// Air inside and outside, frost, the door, the room: of each, any one of these; the cheapest first.
const OUTSIDE: [&[Task]; 5] = [
    &[Task::Clue(Clue::RoomTemperature)],
    &[
        Task::Clue(Clue::Lint),
        Task::Clue(Clue::CondenserFan),
        Task::Clue(Clue::CondenserWarmth),
    ],
    &[
        Task::Clue(Clue::EvaporatorFan),
        Task::Clue(Clue::AirOutlet),
        Task::Clue(Clue::EvaporatorFanMotor),
    ],
    &[Task::Clue(Clue::Seal)],
    &[
        Task::Clue(Clue::CoilIce),
        Task::Clue(Clue::FrostPattern),
        Task::Clue(Clue::ThawTrial),
    ],
];

impl Case<'_> {
    /// A sign of the sealed system that can be looked at now, where less than two speak for giving
    /// it up: nobody throws a machine away on one touch of the hand.
    pub(super) fn sealed_sign(&self, best: &Proposal) -> Option<Task> {
        let fault = blamed_and_sealed(best)?;
        let against = self.compared.suspect(Some(fault)).pointing_away;
        let speaks = |task: Task| against.iter().all(|one| one.task != task);
        // Signs that say the same make each other dispensable: they count all the same.
        let looked_at = self.entered.iter().map(|one| one.task);
        let own = looked_at.filter(|task| SEALED_SIGNS.contains(task) && speaks(*task));
        if own.count() >= 2 {
            return None;
        }
        let mut next = self.next.iter().map(|check| check.task);
        next.find(|task| SEALED_SIGNS.contains(task))
    }

    /// What may be wrong outside of a sealed system that is to be given up, where nobody has looked.
    pub(super) fn look_outside(&self, best: &Proposal) -> Option<Task> {
        blamed_and_sealed(best).filter(|fault| lets_it_run(*fault))?;
        let can_be_had = |task: Task| self.next.iter().any(|check| check.task == task);
        missing(|task| self.was_done(task), can_be_had)
    }
}

/// The fault for which a sealed system is to be given up.
fn blamed_and_sealed(best: &Proposal) -> Option<Fault> {
    let condemns = matches!(best.action, Action::Scrap | Action::LicensedWork);
    best.fault.filter(|fault| condemns && fault.is_sealed())
}

/// Whether it runs and doesn't get cold with it, as it does for what lies outside too.
const fn lets_it_run(fault: Fault) -> bool {
    matches!(
        fault,
        Fault::ValvesWorn
            | Fault::CapillaryRestricted
            | Fault::ChargeLow
            | Fault::ChargeGone
            | Fault::ChargeContaminated
    )
}

/// The first look that is missing and can be had now. What a machine hasn't got, or nobody can look at
/// now, is not waited for.
fn missing(was_done: impl Fn(Task) -> bool, can_be_had: impl Fn(Task) -> bool) -> Option<Task> {
    let open = OUTSIDE
        .iter()
        .filter(|looks| !looks.iter().any(|task| was_done(*task)));
    open.flat_map(|looks| looks.iter().copied())
        .find(|task| can_be_had(*task))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_look_of_each_sort_is_enough_and_what_cannot_be_had_is_not_waited_for() {
        let [room, outside, inside, door, frost] =
            OUTSIDE.map(|looks| looks.last().copied().unwrap());
        let all = [room, outside, inside, door, frost];
        assert_eq!(missing(|task| all.contains(&task), |_| true), None);
        let without = |left_out: Task| move |task: Task| task != left_out && all.contains(&task);
        assert_eq!(missing(without(door), |_| true), Some(door));
        assert_eq!(missing(without(door), |task| task != door), None);
        // The cheapest of its sort that can be had.
        let lint = Task::Clue(Clue::Lint);
        assert_eq!(missing(without(outside), |_| true), Some(lint));
        assert_eq!(
            missing(without(outside), |task| task != lint),
            Some(Task::Clue(Clue::CondenserFan))
        );
    }
}
