//! Answers by choice, and the numbers of checks that ask for one clue.

use job::{Answer, Job};

use super::super::aside::aside;
use super::super::ask::{KNOWN, THERE_IS_NONE};
use super::super::build::Build;
use super::super::clue::{ANSWER, Clue, Task};
use super::super::fault::Fault::*;
use super::super::gauge::Gauge;
use super::super::history::History;
use super::{Entered, Weight, degrees};
use crate::choice::Choice;

/// What a part is still worth as a suspect when the person says that there is none.
const OVERLOOKED: f64 = 0.02;

/// What is known of the past.
pub(super) fn history(job: &Job) -> Option<Entered> {
    let Some(Answer::Choices(names)) = job.answer(Task::History.name(), KNOWN) else {
        return None;
    };
    let known = names
        .iter()
        .filter_map(|name| History::from_name(name.as_str()));
    let weights = known
        .flat_map(|one| one.factors())
        .map(|&(fault, factor)| match fault {
            Some(fault) => Weight::Fault(fault, factor),
            None => Weight::Nothing(factor),
        });
    Some(Entered::new(Task::History, weights.collect()))
}

/// Every clue that has a check of its own.
pub(super) fn clues(job: &Job) -> Vec<Entered> {
    let own = Clue::ALL.iter().filter(|clue| clue.check().is_none());
    own.map(|&clue| Entered::new(Task::Clue(clue), of_clue(job, clue)))
        .collect()
}

fn of_clue(job: &Job, clue: Clue) -> Vec<Weight> {
    let number = match clue {
        Clue::RoomTemperature => {
            Gauge::of(clue, None).and_then(|gauge| degrees(job, clue.name(), ANSWER, &gauge))
        }
        Clue::Temperatures => temperatures(job),
        _ => None,
    };
    if let Some(weights) = number {
        return with_aside(clue, weights);
    }
    let named: Vec<&str> = job
        .answers(clue.name(), ANSWER)
        .into_iter()
        .filter_map(|(_, answer)| match answer {
            Answer::Choice(name) => Some(name.as_str()),
            _ => None,
        })
        .collect();
    if named.last() == Some(&THERE_IS_NONE) {
        return there_is_none(clue);
    }
    shares(clue, &named).map_or_else(Vec::new, |weights| with_aside(clue, weights))
}

/// Natural logarithm of the share of each answer among the repeats.
pub(super) fn shares(clue: Clue, named: &[&str]) -> Option<Vec<f64>> {
    let places: Vec<usize> = named.iter().filter_map(|name| clue.answer(name)).collect();
    if places.is_empty() {
        return None;
    }
    let share = |answer: usize| {
        let count = places.iter().filter(|place| **place == answer).count();
        libm::log(count as f64 / places.len() as f64)
    };
    Some((0..clue.answers().len()).map(share).collect())
}

/// A clue's weights with what its likeliest answer says of faults elsewhere.
pub(in crate::whole) fn with_aside(clue: Clue, weights: Vec<f64>) -> Vec<Weight> {
    let mut likeliest = 0;
    for (place, weight) in weights.iter().enumerate() {
        if *weight > weights[likeliest] {
            likeliest = place;
        }
    }
    let mut all = vec![Weight::Clue(clue, weights)];
    all.extend(aside(clue, likeliest).map(|(fault, factor)| match fault {
        Some(fault) => Weight::Fault(fault, factor),
        None => Weight::Nothing(factor),
    }));
    if clue.needs_running() {
        all.push(Weight::Ran);
    }
    all
}

/// Thermometers in one or both compartments, as numbers.
fn temperatures(job: &Job) -> Option<Vec<f64>> {
    let name = Clue::Temperatures.name();
    let freezer = degrees(job, name, "freezer", &Gauge::freezer());
    let fresh_food = degrees(job, name, "fresh-food", &Gauge::fresh_food());
    match (freezer, fresh_food) {
        (Some(one), Some(other)) => Some(one.iter().zip(&other).map(|(a, b)| a + b).collect()),
        (one, other) => one.or(other),
    }
}

fn there_is_none(clue: Clue) -> Vec<Weight> {
    let no_fan = Weight::Build([1.0, OVERLOOKED, OVERLOOKED]);
    match clue {
        Clue::EvaporatorFan => vec![no_fan, Weight::Fault(EvaporatorFanStopped, OVERLOOKED)],
        Clue::DefrostParts => vec![no_fan, Weight::Fault(DefrostHeaterOpen, OVERLOOKED)],
        Clue::TimerByHand => vec![Weight::Fault(StuckInDefrost, 0.5)],
        Clue::CondenserFan => vec![Weight::Fault(CondenserFanStopped, OVERLOOKED)],
        Clue::AirOutlet => vec![Weight::Fault(DamperStuck, OVERLOOKED)],
        Clue::Thermostat => vec![Weight::Fault(ThermostatOpen, OVERLOOKED)],
        Clue::Thermistor => vec![Weight::Fault(ThermistorOff, OVERLOOKED)],
        Clue::Capacitor => vec![Weight::Fault(CapacitorFailed, OVERLOOKED)],
        Clue::DoorLamp => vec![Weight::Fault(HeatStaysOn, 0.5)],
        _ => Vec::new(),
    }
}

/// The build as the person says.
pub(super) fn build(job: &Job) -> Option<Weight> {
    crate::answered::<Build>(job).map(super::only)
}
