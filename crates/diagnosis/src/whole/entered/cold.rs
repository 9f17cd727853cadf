//! A cool-down that was watched, as weights on the clue that asks how cold it gets.
//!
//! Where a course ends stands for what thermometers show after half a day. It is known as a
//! distribution, so it is weighed as one: each temperature it may end at by how much likelier the
//! readings made it than it was beforehand.

use job::{Job, Moment, Place};
use quantity::Celsius;

use super::super::clue::{Clue, Task};
use super::super::gauge::Gauge;
use super::choices::{with_aside, with_news};
use super::{Entered, Weight};
use crate::answered;
use crate::circuit::ROOM_OFF;
use crate::cool_down::{ColdSign, Compartment, CoolDown, Course, room};

/// How far a foretold end is off beyond what its fit knows: a thermometer errs, and cabinets are not
/// made by its model (`measure::cool_down` holds its bands against drawn courses), so that each
/// kelvin that still lies ahead adds some (judgement).
const OFF: f64 = 2.5;
const OFF_A_KELVIN: f64 = 0.4;
/// So many kelvins colder than it was, it has cooled (judgement: more than a room does in a night
/// indoors).
const COLDER: f64 = 5.0;
/// Colder than a control at coldest makes it (judgement).
const FREEZER_TOO_COLD: Celsius = Celsius::new(-28.0);
const FRESH_FOOD_TOO_COLD: Celsius = Celsius::new(-1.0);
/// Where it may end, in degrees.
const ENDS: core::ops::RangeInclusive<i32> = -45..=35;
/// A temperature that was less likely than this beforehand is not counted.
const FAINT: f64 = 1e-6;

/// Whether a clue can be told by what was watched.
pub(in crate::whole) fn stands_for(clue: Clue, job: &Job) -> bool {
    match clue {
        Clue::Temperatures => ends(job).is_some(),
        Clue::RoomTemperature => room_weights(job).is_some(),
        _ => false,
    }
}

/// What was watched, one for each clue.
pub(super) fn cold(job: &Job) -> Vec<Entered> {
    let ends = ends(job).map(|(weights, has_cooled)| {
        let clue = Clue::Temperatures;
        let mut weights = with_news(job, clue, weights);
        // Nobody need have heard it: what gets no colder may not have run.
        weights.retain(|weight| has_cooled || *weight != Weight::Ran);
        Entered::new(Task::Clue(clue), weights)
    });
    let room = room_weights(job).map(|weights| {
        let clue = Clue::RoomTemperature;
        Entered::new(Task::Clue(clue), with_aside(clue, weights))
    });
    ends.into_iter().chain(room).collect()
}

/// The clue that a place's readings speak to.
pub(in crate::whole) const fn clue_of(place: Place) -> Option<Clue> {
    match place {
        Place::Freezer | Place::FreshFood => Some(Clue::Temperatures),
        Place::Room => Some(Clue::RoomTemperature),
        Place::Condenser => Some(Clue::CondenserWarmth),
        Place::DrierOutlet => Some(Clue::Drier),
        Place::SuctionLine => Some(Clue::SuctionLine),
        Place::Evaporator => Some(Clue::FrostPattern),
        Place::Shell => None,
    }
}

/// The weights, and whether anything got colder.
fn ends(job: &Job) -> Option<(Vec<f64>, bool)> {
    // Nothing here hangs on the moment of asking: everything that the job holds is over.
    let now = Moment::new(Moment::LATEST, 0).ok()?;
    let found = CoolDown::of_ends(job, now)?;
    let is_moved = |sign: &ColdSign| matches!(sign, ColdSign::ControlMoved { .. });
    if found.signs.iter().any(is_moved) {
        // A control that was moved meanwhile makes another end.
        return None;
    }
    let weights = found.courses.iter().filter_map(|one| of_course(job, one));
    let weights = weights.reduce(|one, other| one.iter().zip(&other).map(|(a, b)| a + b).collect());
    Some((weights?, found.courses.iter().any(has_cooled)))
}

fn has_cooled(course: &Course) -> bool {
    let mut warmest = f64::NEG_INFINITY;
    course.points.iter().any(|(_, shown)| {
        warmest = f64::max(warmest, shown.get());
        warmest - shown.get() >= COLDER
    })
}

fn of_course(job: &Job, course: &Course) -> Option<Vec<f64>> {
    let forecast = course.foretold()?;
    let (gauge, too_cold) = match course.compartment {
        Compartment::Freezer => (Gauge::freezer(), FREEZER_TOO_COLD),
        Compartment::FreshFood => (Gauge::fresh_food(), FRESH_FOOD_TOO_COLD),
    };
    // Its control holds what would go on below the target, unless it was seen far below.
    let is_held = course.points.iter().all(|(_, shown)| *shown > too_cold);
    let held = course.goal().target.get();
    let latest = course.latest()?.1.get();
    let prior = course.compartment.prior(answered(job));
    let before = |end: f64| prior.end.chance_below(Celsius::new(end));
    let mut sum = vec![0.0; Clue::Temperatures.answers().len()];
    for end in ENDS {
        let (low, high) = (f64::from(end) - 0.5, f64::from(end) + 0.5);
        let was = before(high) - before(low);
        if was < FAINT {
            continue;
        }
        let chance = |end: f64| forecast.chance_below(Celsius::new(end));
        let factor = (chance(high) - chance(low)).max(0.0) / was;
        let shown = f64::from(end);
        let shown = if is_held { shown.max(held) } else { shown };
        let off = OFF + OFF_A_KELVIN * (latest - f64::from(end)).abs();
        let densities = gauge.degrees(shown, off);
        for (sum, log) in sum.iter_mut().zip(densities) {
            *sum += factor * libm::exp(log);
        }
    }
    // An end beyond all of them says nothing.
    let whole: f64 = sum.iter().sum();
    (whole > 0.0).then(|| sum.into_iter().map(libm::log).collect())
}

fn room_weights(job: &Job) -> Option<Vec<f64>> {
    let gauge = Gauge::of(Clue::RoomTemperature, None)?;
    Some(gauge.degrees(room(job)?.get(), ROOM_OFF))
}
