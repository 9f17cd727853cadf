//! Points about starting and running: restarts, watts, the first two hours, trips, the seal.

use job::{Answer, ColdEventKind, Content, Moment, SetUp};
use measure::Direction;
use quantity::Seconds;

use super::{Failure, Missing, NotNeeded, ProofState, Seen, not_yet};
use crate::checks::running::Running;
use crate::cool_down::{CoolDown, changed};
use crate::whole::{ANSWER, Build, Change, Clue};

/// A thermostat's break is about so long (judgement): no rest for proof is longer, and one of half
/// of it is enough for the pressures of a capillary machine to be level.
const NORMAL_REST: Seconds = Seconds::new(600.0);
const LEVEL_REST: Seconds = Seconds::new(300.0);
/// So often it has to start.
const STARTS: usize = 2;
/// Watts late after the start.
const HALF_AN_HOUR: Seconds = Seconds::new(1_800.0);
const TWO_HOURS: Seconds = Seconds::new(7_200.0);
/// Who stands by looks every half hour, give or take some minutes.
const LOOKS: Seconds = Seconds::new(2_400.0);

impl Seen<'_> {
    /// Two starts in a row after the rest that it gets in use.
    pub(super) fn restarts(&self) -> ProofState {
        if self.build() == Some(Build::Inverter) {
            return ProofState::NotNeeded(NotNeeded::BoardStarts);
        }
        let trials = self.assessment.start_trials.as_ref();
        let series = trials.and_then(|trials| trials.series(SetUp::Original));
        let tries = series.map_or(&[][..], |series| &series.tries);
        // It is proved as it is now.
        let changed = changed(self.job).map(Moment::unix_milliseconds);
        let is_now = |at: Moment| changed.is_none_or(|changed| changed <= at.unix_milliseconds());
        let mut starts = 0;
        let mut has_failed = false;
        let warm = tries.iter().map(|(_, one)| one);
        for one in warm.filter(|one| !one.is_cold && is_now(one.at)) {
            let rest = one.rest.seconds();
            if one.outcome.turns() && rest <= NORMAL_REST {
                starts += 1;
            } else if !one.outcome.turns() && one.outcome.energised() && rest >= LEVEL_REST {
                starts = 0;
                has_failed = true;
            }
        }
        match starts {
            STARTS.. => ProofState::Done,
            0 if has_failed => ProofState::Failed(Failure::NoStart),
            _ => {
                let more = STARTS - starts;
                let takes = Seconds::new(more as f64 * NORMAL_REST.get());
                not_yet(Missing::Starts(more), takes)
            }
        }
    }

    /// Where somebody has a meter for it.
    pub(super) fn steady_power(&self) -> ProofState {
        let as_it_is = self.present.as_ref().unwrap_or(self.job);
        let running = Running::of(as_it_is, self.assessment.machine.mains);
        match (running.direction(), &running.early, &running.late) {
            (Some(Direction::Rising), ..) => ProofState::Failed(Failure::PowerRises),
            (Some(Direction::Falling | Direction::Steady), ..) => ProofState::Done,
            (_, None, None) => ProofState::NotNeeded(NotNeeded::NoMeter),
            _ => not_yet(Missing::LaterWatts, HALF_AN_HOUR),
        }
    }

    /// Somebody saw it at least every half hour.
    pub(super) fn first_two_hours(&self) -> ProofState {
        let Some(cool_down) = self.cool_down else {
            return not_yet(Missing::SwitchOn, TWO_HOURS);
        };
        let left = TWO_HOURS - cool_down.lasted(self.now);
        let looks = self.looks(cool_down.began);
        let until = looks.iter().copied().filter(|at| *at <= TWO_HOURS);
        let mut last = Seconds::new(0.0);
        let mut has_gap = false;
        for at in until {
            has_gap |= at - last > LOOKS;
            last = at;
        }
        if left > Seconds::new(0.0) {
            return match (has_gap, cool_down.ended) {
                (false, None) => not_yet(Missing::Time, left),
                _ => not_yet(Missing::StandBy, TWO_HOURS),
            };
        }
        if has_gap || TWO_HOURS - last > LOOKS {
            not_yet(Missing::StandBy, TWO_HOURS)
        } else {
            ProofState::Done
        }
    }

    /// Nothing opened, from switching on until it has held for a day.
    pub(super) fn no_trips(&self) -> ProofState {
        let Some(cool_down) = self.cool_down else {
            return not_yet(Missing::SwitchOn, CoolDown::DAY);
        };
        let trips = cool_down.happened.of(ColdEventKind::Tripped).count();
        if trips > 0 {
            return ProofState::Failed(Failure::Tripped(trips));
        }
        match self.held_for_a_day() {
            ProofState::NotYet { takes, .. } => not_yet(Missing::Time, takes),
            _ => ProofState::Done,
        }
    }

    /// What was seen since it was last set right.
    pub(super) fn seal(&self) -> ProofState {
        let standing = self.job.standing();
        let changed = standing
            .iter()
            .rposition(|entry| Change::told_by(entry) == Some(Change::Seal));
        let name = Clue::Seal.task().name();
        let look = self.job.counting(name, ANSWER).filter(|(entry, _)| {
            let place = standing.iter().position(|one| one.id == entry.id);
            changed.is_none_or(|changed| place.is_some_and(|place| place > changed))
        });
        let seen = look.and_then(|(_, answer)| match answer {
            Answer::Choice(name) => Clue::Seal.answer(name.as_str()),
            _ => None,
        });
        // Its first answer is that it grips all round.
        match seen {
            Some(0) => ProofState::Done,
            Some(_) => ProofState::Failed(Failure::SealLeaks),
            None => not_yet(Missing::SealLook, Seconds::new(300.0)),
        }
    }

    /// When somebody read, saw or answered anything since it was switched on, in order. A file of
    /// a logger shows that nobody need have been there.
    fn looks(&self, began: Moment) -> Vec<Seconds> {
        let standing = self.job.standing();
        let mut looks: Vec<Seconds> = standing
            .iter()
            .filter_map(|entry| match &entry.content {
                Content::Spot(spot) => Some(spot.at),
                Content::Event(event) => Some(event.at),
                Content::Trial(trial) => Some(trial.at),
                Content::Answer { .. } => Some(entry.at),
                _ => None,
            })
            .map(|at| began.until(at))
            .filter(|since| *since >= Seconds::new(0.0))
            .collect();
        looks.sort_by(|one, other| one.get().total_cmp(&other.get()));
        looks
    }
}
