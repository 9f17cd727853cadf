//! Answers by choice, and the numbers of checks that ask for one clue.

use job::{Answer, Job, Measured, Reading};
use quantity::{Farads, Observed};

use super::super::aside::aside;
use super::super::ask::{FREEZER, FRESH_FOOD, KNOWN, MARKING, MEASURED, THERE_IS_NONE};
use super::super::build::Build;
use super::super::clue::{ANSWER, Clue, Task};
use super::super::fault::Fault::*;
use super::super::gauge::Gauge;
use super::super::history::{Factor, History};
use super::{Entered, Weight, degrees, pooled};
use crate::choice::Choice;
use crate::{Complaint, Item};

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
    // What was told as the opening isn't news as history.
    let told = crate::answered(job) == Some(Complaint::OneSideWarm);
    let news = known.filter(|one| !(told && *one == History::FreezerColdRestWarm));
    let weights = news.flat_map(|one| one.factors()).map(weight);
    Some(Entered::new(Task::History, weights.collect()))
}

/// A factor as a weight.
pub(super) fn weight(&(fault, factor): &Factor) -> Weight {
    match fault {
        Some(fault) => Weight::Fault(fault, factor),
        None => Weight::Nothing(factor),
    }
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
        Clue::Capacitor => capacitor(job),
        _ => None,
    };
    if let Some(weights) = number {
        return with_news(job, clue, weights);
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
    shares(clue, &named).map_or_else(Vec::new, |weights| with_news(job, clue, weights))
}

/// With what the answer says elsewhere, unless the complaint has said the same: that a machine
/// never stops isn't seen twice. What speaks against it is news all the same.
pub(super) fn with_news(job: &Job, clue: Clue, weights: Vec<f64>) -> Vec<Weight> {
    let complaint = crate::answered(job);
    let too_cold = clue.answer("too-cold");
    if clue == Clue::Temperatures
        && complaint == Some(Complaint::TooCold)
        && too_cold == Some(likeliest(&weights))
    {
        // The complaint again: it is no news for what gets too cold, and none against what does so
        // seldom.
        return vec![Weight::Clue(clue, vec![0.0; weights.len()])];
    }
    let mut all = with_aside(clue, weights);
    let is_told = matches!(
        (clue, complaint),
        (
            Clue::RunPattern,
            Some(Complaint::NeverStops | Complaint::TooCold)
        ) | (Clue::Temperatures, Some(Complaint::TooCold))
    );
    if is_told {
        all.retain(|one| !matches!(one, Weight::Fault(_, factor) if *factor > 1.0));
    }
    all
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

/// The answer that weighs most, the first of equals.
pub(in crate::whole) fn likeliest(weights: &[f64]) -> usize {
    let mut likeliest = 0;
    for (place, weight) in weights.iter().enumerate() {
        if *weight > weights[likeliest] {
            likeliest = place;
        }
    }
    likeliest
}

/// A clue's weights with what its likeliest answer says of faults elsewhere.
pub(in crate::whole) fn with_aside(clue: Clue, weights: Vec<f64>) -> Vec<Weight> {
    let told = likeliest(&weights);
    let mut all = vec![Weight::Clue(clue, weights)];
    all.extend(aside(clue, told).iter().map(weight));
    if clue.needs_running() {
        all.push(Weight::Ran);
    }
    all
}

/// Thermometers in one or both compartments, as numbers.
fn temperatures(job: &Job) -> Option<Vec<f64>> {
    let name = Clue::Temperatures.name();
    let freezer = degrees(job, name, FREEZER, &Gauge::freezer());
    let fresh_food = degrees(job, name, FRESH_FOOD, &Gauge::fresh_food());
    match (freezer, fresh_food) {
        (Some(one), Some(other)) => Some(one.iter().zip(&other).map(|(a, b)| a + b).collect()),
        (one, other) => one.or(other),
    }
}

/// Farads off a meter against what is printed on the part, repeats pooled.
fn capacitor(job: &Job) -> Option<Vec<f64>> {
    let name = Clue::Capacitor.name();
    let gauge = Gauge::of(Clue::Capacitor, None)?;
    let own = farads(job, name, MARKING).pop().map(|(marked, _)| marked);
    let marked = own.or_else(|| match Item::CapacitorMarking.farads(job)?.observed {
        Observed::Value(value) => Some(value),
        Observed::OverRange { .. } => None,
    })?;
    if marked.get() <= 0.0 {
        return None;
    }
    let repeats: Vec<Vec<f64>> = farads(job, name, MEASURED)
        .into_iter()
        .map(|(value, standard)| gauge.share(value.get(), standard.get(), marked.get()))
        .collect();
    pooled(&repeats)
}

/// The values of an item in farads, each with its standard uncertainty.
fn farads(job: &Job, check: &str, item: &str) -> Vec<(Farads, Farads)> {
    let answers = job.answers(check, item).into_iter();
    answers
        .filter_map(|(_, answer)| match answer {
            Answer::Reading(Reading {
                measured: Measured::Farads(typed),
                accuracy,
                ..
            }) => match typed.observed {
                Observed::Value(value) => Some((value, accuracy.standard(value, typed.count))),
                Observed::OverRange { .. } => None,
            },
            _ => None,
        })
        .collect()
}

fn there_is_none(clue: Clue) -> Vec<Weight> {
    let no_fan = Weight::Build([1.0, OVERLOOKED, OVERLOOKED]);
    match clue {
        Clue::EvaporatorFan => vec![no_fan, Weight::Fault(EvaporatorFanStopped, OVERLOOKED)],
        Clue::EvaporatorFanMotor => vec![no_fan, Weight::Fault(EvaporatorFanStopped, OVERLOOKED)],
        Clue::DefrostParts => vec![no_fan, Weight::Fault(DefrostHeaterOpen, OVERLOOKED)],
        Clue::TimerByHand => vec![Weight::Fault(StuckInDefrost, 0.5)],
        Clue::CondenserFan | Clue::CondenserFanMotor => {
            vec![Weight::Fault(CondenserFanStopped, OVERLOOKED)]
        }
        Clue::AirOutlet => vec![Weight::Fault(DamperStuck, OVERLOOKED)],
        Clue::Thermostat | Clue::ThermostatCold => vec![Weight::Fault(ThermostatOpen, OVERLOOKED)],
        Clue::Thermistor => vec![Weight::Fault(ThermistorOff, OVERLOOKED)],
        Clue::Capacitor => vec![Weight::Fault(CapacitorFailed, OVERLOOKED)],
        Clue::DoorLamp | Clue::DoorSwitch => vec![Weight::Fault(HeatStaysOn, 0.5)],
        _ => Vec::new(),
    }
}

/// The build as the person says.
pub(super) fn build(job: &Job) -> Option<Weight> {
    crate::answered::<Build>(job).map(super::only)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Ask;

    /// A lamp that isn't there says nothing of any fault; each other part that isn't does.
    #[test]
    fn what_may_be_missing_says_something_when_it_is() {
        for &clue in Clue::ALL {
            let says = !there_is_none(clue).is_empty();
            assert_eq!(
                says,
                Ask::Answer(clue).can_be_absent() && clue != Clue::Lamp,
                "{clue:?}"
            );
        }
    }
}
