//! Numbers off a live machine, as weights on the clues that ask for the same in words.
//!
//! A number replaces the word. Its weight under each answer is the chance that the truth lies
//! within that answer's bounds, given what was shown and how good the meter is; what the bounds
//! themselves are worth stands in the clue's table.

use job::{Answer, Job, Measured, Reading};
use libm::{erfc, log};
use quantity::{Ratio, Uncertain, Watts};

use super::super::ask::MEASURED;
use super::super::build::Build;
use super::super::clue::{Clue, Task};
use super::super::gauge::Gauge;
use super::Entered;
use super::choices::with_aside;
use super::leakage;
use crate::checks::capacitor_in_circuit::CapacitorInCircuit;
use crate::checks::running::{LabelOf, Running};
use crate::checks::supply::{FALLS_AS_USUAL, FALLS_TOO_FAR, Supply};
use crate::choice::{Choice, answered};
use crate::circuit::{Expected, LABEL_OFF, Surfaces};
use crate::{Check, Item, Kind, Machine};

/// How little is known of where the usual watts end, as a share of them (judgement).
const BLUR: f64 = 0.1;
/// The same for amperes, which move half as far as the work does (judgement).
const AMPS_BLUR: f64 = 0.15;
/// A compressor takes so much of the watts on its label once it has settled (judgement).
const OF_LABEL_WATTS: (f64, f64) = (0.5, 1.1);
/// What is usual lies within so many standard uncertainties of what is expected (judgement).
const WITHIN: f64 = 1.8;
/// And so much of its amperes (common practice, no source).
const OF_LABEL_AMPS: (f64, f64) = (0.55, 0.9);
/// Watts rise from such a factor on, and have fallen within minutes below the other (judgement).
const RISES: f64 = 1.04;
const HAS_FALLEN: f64 = 0.8;
/// How often a fall within minutes is over before the first reading (judgement).
const FELL_BEFORE: f64 = 0.3;

impl Check {
    /// The clues for which its numbers stand.
    pub(in crate::whole) const fn stands_for(self) -> &'static [Clue] {
        match self {
            Self::Supply => &[Clue::SaggingVolts],
            Self::Running => &[Clue::PowerLevel, Clue::WattsTrend],
            Self::CapacitorInCircuit => &[Clue::Capacitor],
            Self::Leakage => &[Clue::TripPattern],
            _ => &[],
        }
    }
}

/// What the numbers of a job say, one for each clue that needn't be asked any more. One without
/// weights is said by another.
pub(in crate::whole) fn numbers(job: &Job, machine: &Machine) -> Vec<Entered> {
    let one =
        |clue: Clue, weights: Vec<f64>| Entered::new(Task::Clue(clue), with_aside(clue, weights));
    let mut all = Vec::new();
    all.extend(sagging(job, machine).map(|weights| one(Clue::SaggingVolts, weights)));
    all.extend(running(job, machine));
    all.extend(capacitor(job, machine).map(|weights| one(Clue::Capacitor, weights)));
    all.extend(leakage::leakage(job, machine));
    all
}

/// Checks that have answers: they are done, whatever their numbers stand for.
pub(super) fn done(job: &Job, said: &[Entered]) -> Vec<Entered> {
    let has_answers = |check: &Check| {
        let items = Item::ALL.iter().filter(|item| item.check() == *check);
        items.into_iter().any(|item| {
            let answer = job.answer(check.name(), item.name());
            answer.is_some_and(|answer| !matches!(answer, Answer::NotDone(_)))
        })
    };
    let is_new = |check: &Check| !said.iter().any(|one| one.task == Task::Check(*check));
    let powered = Check::ALL.iter().copied().filter(|one| one.is_powered());
    let done = powered.filter(has_answers).filter(is_new);
    done.map(|check| Entered::new(Task::Check(check), Vec::new()))
        .collect()
}

/// Under 5, to 10, over 10 per cent. What wasn't surely the lowest says only that they fell at
/// least so far.
fn sagging(job: &Job, machine: &Machine) -> Option<Vec<f64>> {
    let supply = Supply::of(job, machine.mains);
    let fall = supply.fall()?.ok()?;
    let (usual, far) = (FALLS_AS_USUAL.get(), FALLS_TOO_FAR.get());
    let (below_usual, below_far) = (below(&fall, usual, 0.0), below(&fall, far, 0.0));
    Some(logs(if supply.is_caught {
        [below_usual, below_far - below_usual, 1.0 - below_far]
    } else {
        [below_usual, below_far, 1.0]
    }))
}

/// The level alone, or level and trend in one: both rest on the same watts and count once.
fn running(job: &Job, machine: &Machine) -> Vec<Entered> {
    let running = Running::of(job, machine.mains);
    if running.is_by_board {
        return Vec::new();
    }
    let bounds = usual_watts(job, machine, &running);
    let one =
        |clue: Clue, weights: Vec<f64>| Entered::new(Task::Clue(clue), with_aside(clue, weights));
    match (&running.early, &running.late, bounds) {
        // A machine that took nothing then has no factor by which it changed.
        (Some(early), Some(late), Some(bounds)) if early.value() > Watts::new(0.0) => {
            let level = Entered::new(Task::Clue(Clue::PowerLevel), Vec::new());
            vec![one(Clue::WattsTrend, trend(early, late, bounds)), level]
        }
        _ => {
            let level = running
                .watts()
                .zip(bounds)
                .map(|(watts, usual)| level(watts, usual))
                .or_else(|| by_amps(&running));
            let weights = level.map(|[low, usual, high]| logs([usual, low, high]));
            let entered = weights.map(|weights| one(Clue::PowerLevel, weights));
            entered.into_iter().collect()
        }
    }
}

/// Which watts are usual.
#[derive(Clone, Copy)]
struct Usual {
    least: f64,
    most: f64,
    /// The least that still belongs to an evaporator as cold as it was read. Less than usual, but no
    /// less than this, is the evaporator's doing, whatever made it so cold: such watts are no sign of
    /// their own that little is pumped.
    least_for_cold: f64,
}

/// The least and the most of those, for who holds watts against them without a clue.
pub(crate) fn usual_bounds(job: &Job, machine: &Machine, running: &Running) -> Option<(f64, f64)> {
    usual_watts(job, machine, running).map(|usual| (usual.least, usual.most))
}

/// By the compressor's label, or else for such a machine, as the instructions of the same clue have
/// it; where it is known how cold it is inside, for a machine that is as cold.
fn usual_watts(job: &Job, machine: &Machine, running: &Running) -> Option<Usual> {
    let label = match (running.label_watts, running.label_of) {
        (Some(label), Some(LabelOf::Compressor)) => Some(label.get()),
        _ => None,
    };
    let expected = running.watts_read(job).and_then(|at| {
        let surfaces = Surfaces::any(job);
        Expected::of(&surfaces, machine, answered(job), at)
    });
    let (least, most) = match label {
        Some(label) => (OF_LABEL_WATTS.0 * label, OF_LABEL_WATTS.1 * label),
        None => of_such_machines(machine, answered(job))?,
    };
    let Some(expected) = expected else {
        return Some(Usual {
            least,
            most,
            least_for_cold: least,
        });
    };
    let least_for_cold = |of: &dyn Fn(&Uncertain<Ratio>) -> f64, least: f64| {
        expected.by_evaporator.as_ref().map_or(least, of).min(least)
    };
    Some(if let Some(label) = label {
        let of = |share: &Uncertain<Ratio>, sign: f64| {
            let (share, standard) = (share.value().get(), share.standard().get());
            let off = libm::hypot(LABEL_OFF * share, standard);
            label * (share + sign * WITHIN * off).max(0.0)
        };
        let least = of(&expected.sound, -1.0);
        Usual {
            least,
            most: of(&expected.sound, 1.0),
            least_for_cold: least_for_cold(&|share| of(share, -1.0), least),
        }
    } else {
        let settled = expected.settled.value().get();
        let times = |share: &Uncertain<Ratio>| share.value().get() / settled;
        let now = times(&expected.sound);
        Usual {
            least: least * now,
            most: most * now,
            least_for_cold: least_for_cold(&|share| least * times(share), least * now),
        }
    })
}

/// Once it is cold.
fn of_such_machines(machine: &Machine, build: Option<Build>) -> Option<(f64, f64)> {
    match (machine.kind?, build) {
        (Kind::ChestFreezer, _) => Some((60.0, 140.0)),
        (Kind::UprightFreezer, Some(Build::ManualDefrost)) => Some((75.0, 140.0)),
        (Kind::UprightFreezer | Kind::FridgeFreezer, Some(Build::FrostFree)) => Some((90.0, 170.0)),
        // Either build: between the lesser and the greater.
        (Kind::UprightFreezer | Kind::FridgeFreezer, _) => Some((75.0, 170.0)),
        // No figure is known.
        (Kind::Refrigerator, _) => None,
    }
}

/// Low, usual, high. What is low and explained by a cold evaporator is as likely usual as low.
fn level(watts: &Uncertain<Watts>, usual: Usual) -> [f64; 3] {
    let below = |bound: f64| below(watts, bound, BLUR * bound);
    let low = below(usual.least);
    let high = 1.0 - below(usual.most);
    let explained = low * (1.0 - below(usual.least_for_cold));
    let explained = if usual.least_for_cold < usual.least {
        explained
    } else {
        0.0
    };
    [low, (1.0 - low - high).max(0.0) + explained, high]
}

fn by_amps(running: &Running) -> Option<[f64; 3]> {
    if running.label_of != Some(LabelOf::Compressor) {
        return None;
    }
    let share = running.share_of_label()?;
    let (least, most) = OF_LABEL_AMPS;
    let low = below(&share, least, AMPS_BLUR * least);
    let high = 1.0 - below(&share, most, AMPS_BLUR * most);
    Some([low, (1.0 - low - high).max(0.0), high])
}

/// Falls slowly, low and flat, falls in minutes, high and rising, high and steady.
fn trend(early: &Uncertain<Watts>, late: &Uncertain<Watts>, bounds: Usual) -> Vec<f64> {
    let [low, usual, high] = level(late, bounds);
    let factor: Uncertain<Ratio> = late.ratio(early);
    let rises = 1.0 - below(&factor, RISES, 0.0);
    let was_more = 1.0 - below(early, bounds.least, BLUR * bounds.least);
    let has_fallen = below(&factor, HAS_FALLEN, 0.0) * was_more;
    logs([
        usual,
        low * (1.0 - has_fallen),
        low * (has_fallen + FELL_BEFORE * (1.0 - has_fallen)),
        high * rises,
        high * (1.0 - rises),
    ])
}

/// By current and volts, where nobody has measured it discharged.
fn capacitor(job: &Job, machine: &Machine) -> Option<Vec<f64>> {
    let discharged = job.answer(Clue::Capacitor.name(), MEASURED);
    if let Some(Answer::Reading(Reading {
        measured: Measured::Farads(_),
        ..
    })) = discharged
    {
        return None;
    }
    let known = CapacitorInCircuit::of(job, machine.mains);
    let farads = known.capacitance()?.ok()?;
    let marking = known.marking?;
    let marked = (marking.least.get() + marking.most.get()) / 2.0;
    let gauge = Gauge::of(Clue::Capacitor, None)?;
    Some(gauge.share(farads.value().get(), farads.standard().get(), marked))
}

/// The chance that a value lies below a bound which itself is known to within `blur`.
fn below<Q: quantity::Quantity>(value: &Uncertain<Q>, bound: f64, blur: f64) -> f64 {
    let spread = libm::hypot(value.standard().get(), blur).max(f64::MIN_POSITIVE);
    let z = (bound - value.value().get()) / spread;
    0.5 * erfc(-z / core::f64::consts::SQRT_2)
}

fn logs<const N: usize>(chances: [f64; N]) -> Vec<f64> {
    chances
        .into_iter()
        .map(|chance| log(chance.max(0.0)))
        .collect()
}
