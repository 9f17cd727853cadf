//! The point that a frost-free machine owes: one defrost, seen from its beginning to the cold
//! after it. A machine that was moved has thawed, and a fault of its defrost hides for weeks.

use job::{ColdEventKind, Moment};
use quantity::Seconds;

use super::{Failure, Missing, NotNeeded, ProofState, Seen, not_yet};
use crate::cool_down::{CoolDown, LONGEST_DEFROST};
use crate::whole::Build;
use crate::{Kind, answered};

/// Timers and boards defrost once in half a day to a day (common practice, no source).
const UNTIL_NEXT: Seconds = Seconds::new(86_400.0);
/// Afterwards it is colder by so much than at the warmest (judgement).
const COLDER: f64 = 1.0;

impl Seen<'_> {
    pub(super) fn defrost(&self) -> ProofState {
        // Chest freezers that defrost by themselves are few; all other kinds may.
        let is_chest = answered::<Kind>(self.job) == Some(Kind::ChestFreezer);
        let by_hand = match self.build() {
            Some(build) => build == Build::ManualDefrost,
            None => is_chest,
        };
        if by_hand {
            return ProofState::NotNeeded(NotNeeded::DefrostedByHand);
        }
        let Some(cool_down) = self.cool_down else {
            return not_yet(Missing::DefrostBegin, UNTIL_NEXT);
        };
        let mut owed = not_yet(Missing::DefrostBegin, UNTIL_NEXT);
        for began in cool_down.happened.of(ColdEventKind::DefrostBegan) {
            owed = seen(cool_down, began);
            if owed == ProofState::Done {
                break;
            }
        }
        owed
    }
}

/// One defrost: its end, its water, and the cold after it.
fn seen(cool_down: &CoolDown, began: Moment) -> ProofState {
    let after = |kind, from: Moment| {
        let mut of_kind = cool_down.happened.of(kind);
        of_kind.find(|at| at.unix_milliseconds() >= from.unix_milliseconds())
    };
    // That nobody noted an end is none that it didn't end.
    let Some(ended) = after(ColdEventKind::DefrostEnded, began) else {
        return not_yet(Missing::DefrostEnd, LONGEST_DEFROST);
    };
    if began.until(ended) > LONGEST_DEFROST {
        return ProofState::Failed(Failure::DefrostWithoutEnd);
    }
    if after(ColdEventKind::DefrostWater, began).is_none() {
        return not_yet(Missing::DefrostWater, Seconds::new(600.0));
    }
    let runs = after(ColdEventKind::CompressorOn, ended).is_some();
    if runs
        || cool_down
            .courses
            .iter()
            .any(|one| cools_after(one, began, ended))
    {
        ProofState::Done
    } else {
        not_yet(Missing::DefrostAfter, LONGEST_DEFROST)
    }
}

/// Whether a compartment got colder than it was at its warmest since the defrost began.
fn cools_after(course: &crate::Course, began: Moment, ended: Moment) -> bool {
    let mut warmest = f64::NEG_INFINITY;
    course.points.iter().any(|(at, shown)| {
        if at.unix_milliseconds() < began.unix_milliseconds() {
            return false;
        }
        warmest = f64::max(warmest, shown.get());
        let is_after = at.unix_milliseconds() > ended.unix_milliseconds();
        is_after && warmest - shown.get() >= COLDER
    })
}
