//! Points about getting and staying cold.

use job::{ColdEventKind, Moment};
use quantity::{Celsius, KelvinDelta, Seconds};

use super::{Failure, Missing, ProofState, Seen, not_yet};
use crate::cool_down::{Compartment, CoolDown, Course};
use crate::whole::Build;

/// The mean over a day may lie above the target by what an ordinary thermometer is off (judgement).
const OFF: KelvinDelta = KelvinDelta::new(1.0);
/// No reading may, by more than a cycle swings (judgement). Around a defrost, an opened door and
/// what was put in, readings are left out.
const SWING: KelvinDelta = KelvinDelta::new(8.0);
const DISTURBED: Seconds = Seconds::new(5_400.0);
/// A longer gap than a night hides too much (judgement).
const NIGHT: Seconds = Seconds::new(36_000.0);
/// A cycle's swing is no less than this, where a file shows it (judgement: twice the steps of a
/// plain thermometer).
const LEAST_SWING: f64 = 0.4;
/// So often it has to turn for two whole cycles.
const TURNS: usize = 4;

impl Seen<'_> {
    /// Each compartment showed its target, within a day.
    pub(super) fn target_reached(&self) -> ProofState {
        let Some(cool_down) = self.cool_down else {
            return not_yet(Missing::SwitchOn, CoolDown::DAY);
        };
        if cool_down.doubt.is_some() {
            return not_yet(Missing::Scale, Seconds::new(0.0));
        }
        let from = set_anew(cool_down);
        let until = cool_down.ended.unwrap_or(self.now);
        let left = Seconds::new((CoolDown::DAY - from.until(until)).get().max(0.0));
        for one in self.compartments() {
            let Some(course) = cool_down.course(*one) else {
                return not_yet(Missing::Thermometer(*one), left);
            };
            if course.reached.is_none() {
                let is_over = course
                    .latest()
                    .is_some_and(|(at, _)| from.until(at) >= CoolDown::DAY);
                return if is_over {
                    ProofState::Failed(Failure::TooWarm(*one))
                } else {
                    not_yet(Missing::Target(*one), left)
                };
            }
        }
        ProofState::Done
    }

    /// The last day of readings, since each compartment got there.
    pub(super) fn held_for_a_day(&self) -> ProofState {
        match self.target_reached() {
            ProofState::Done => {}
            ProofState::NotYet { missing, takes } => {
                return not_yet(missing, takes + CoolDown::DAY);
            }
            failed => return failed,
        }
        // It was reached, so it was switched on.
        let Some(cool_down) = self.cool_down else {
            return not_yet(Missing::SwitchOn, CoolDown::DAY);
        };
        let each = self.compartments().iter();
        let states = each.filter_map(|one| cool_down.course(*one).map(|course| (*one, course)));
        for (one, course) in states {
            let state = held(one, course, cool_down);
            if state != ProofState::Done {
                return state;
            }
        }
        if self.build() == Some(Build::Inverter) || has_cycled(cool_down) {
            ProofState::Done
        } else {
            not_yet(Missing::Cycles, Seconds::new(7_200.0))
        }
    }
}

/// From when on it gets its day: since it was switched on, something warm was put in, or its control
/// was set anew.
fn set_anew(cool_down: &CoolDown) -> Moment {
    let last = |kind| cool_down.happened.last(kind);
    let anew = [
        last(ColdEventKind::Loaded),
        last(ColdEventKind::SetPointChanged),
    ];
    let all = anew.into_iter().flatten().chain([cool_down.began]);
    all.max_by_key(|at| at.unix_milliseconds())
        .unwrap_or(cool_down.began)
}

fn held(one: Compartment, course: &Course, cool_down: &CoolDown) -> ProofState {
    let (Some(reached), Some((last, _))) = (course.reached, course.latest()) else {
        return not_yet(Missing::Target(one), CoolDown::DAY);
    };
    let since = reached.until(last);
    if since < CoolDown::DAY {
        return not_yet(Missing::Time, CoolDown::DAY - since);
    }
    // A day and the reading before it, so that what lies between counts.
    let first = course
        .points
        .iter()
        .rposition(|(at, _)| (*at).until(last) >= CoolDown::DAY);
    let day = &course.points[first.unwrap_or(0)..];
    if day
        .windows(2)
        .any(|pair| pair[0].0.until(pair[1].0) > NIGHT)
    {
        return not_yet(Missing::Gap, CoolDown::DAY);
    }
    let target = course.goal().target;
    let calm = |at: Moment| !is_disturbed(cool_down, at);
    let is_far = |(at, shown): &(Moment, Celsius)| *shown > target + SWING && calm(*at);
    if mean(day) > target + OFF || day.iter().any(is_far) {
        ProofState::Failed(Failure::DidNotHold(one))
    } else {
        ProofState::Done
    }
}

/// Over time, readings joined by straight lines.
fn mean(points: &[(Moment, Celsius)]) -> Celsius {
    let (mut sum, mut time) = (0.0, 0.0);
    for pair in points.windows(2) {
        let lasted = pair[0].0.until(pair[1].0).get();
        sum += lasted * 0.5 * (pair[0].1.get() + pair[1].1.get());
        time += lasted;
    }
    Celsius::new(sum / time.max(f64::MIN_POSITIVE))
}

fn is_disturbed(cool_down: &CoolDown, at: Moment) -> bool {
    let disturbs = |kind: ColdEventKind| {
        matches!(
            kind,
            ColdEventKind::DefrostBegan
                | ColdEventKind::DefrostEnded
                | ColdEventKind::DoorOpened
                | ColdEventKind::Loaded
        )
    };
    let mut events = cool_down.happened.0.iter();
    events.any(|event| {
        let since = event.at.until(at);
        disturbs(event.kind) && since >= Seconds::new(0.0) && since <= DISTURBED
    })
}

/// Its own breaks: noted, or to be seen in a file.
fn has_cycled(cool_down: &CoolDown) -> bool {
    let count = |kind| cool_down.happened.of(kind).count();
    let noted = count(ColdEventKind::CompressorOff).min(count(ColdEventKind::CompressorOn)) >= 2;
    noted || cool_down.courses.iter().any(|one| turns(one) >= TURNS)
}

/// How often a course turned since it was at its target, by more than a thermometer's steps.
fn turns(course: &Course) -> usize {
    let Some(reached) = course.reached else {
        return 0;
    };
    let since = course
        .points
        .iter()
        .filter(|(at, _)| reached.until(*at) >= Seconds::new(0.0))
        .map(|(_, shown)| shown.get());
    let (mut turns, mut falls, mut furthest) = (0, true, f64::INFINITY);
    for shown in since {
        let ahead = if falls {
            shown < furthest
        } else {
            shown > furthest
        };
        if ahead {
            furthest = shown;
        } else if (shown - furthest).abs() >= LEAST_SWING {
            turns += 1;
            falls = !falls;
            furthest = shown;
        }
    }
    turns
}
