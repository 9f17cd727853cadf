//! What a job holds, as weights on clues and faults.
//!
//! Repeats are pooled, not multiplied: numbers by the mean of their log-densities, choices by
//! their shares. What was not done, or isn't sure, is no evidence. "There is none" says
//! something about the machine.

mod bench;
mod choices;
mod circuit;
mod cold;
mod leakage;
mod powered;
mod trials;

#[cfg(test)]
pub(super) use choices::with_aside;

pub(super) use choices::likeliest;
pub(super) use circuit::stands_for as circuit_stands_for;
pub(super) use cold::{clue_of as clue_of_place, stands_for as cold_stands_for};
pub(super) use powered::numbers;
pub(crate) use powered::usual_bounds;

use job::Job;
use measure::windings::Mains;

use super::build::Build;
use super::carried::Carried;
use super::clue::{Clue, Task};
use super::fault::Fault;
use super::gauge::Gauge;
use crate::Machine;
use crate::checks::windings::WindingsKnown;
use crate::choice::Choice;

/// What one task has brought.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Entered {
    pub(super) task: Task,
    pub(super) weights: Vec<Weight>,
    /// The period that it speaks of: how many changes had been made.
    pub(super) period: usize,
    /// It tells a part of what the task asks: that is still worth doing.
    pub(super) is_hint: bool,
}

/// One thing that it says.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Weight {
    /// Natural logarithm of the likelihood under each answer of a clue.
    Clue(Clue, Vec<f64>),
    /// A factor on the odds of a fault.
    Fault(Fault, f64),
    /// A factor on the odds of nothing being wrong.
    Nothing(f64),
    /// The compressor must have run for that.
    Ran,
    /// Factors on each build.
    Build([f64; 3]),
    /// What was known of a build before.
    Carried(Build, Carried),
}

/// Everything that a job holds, in the order of the tasks. Names that this program doesn't know
/// are passed over: the job keeps them.
pub(super) fn entered(job: &Job, machine: &Machine, windings: &WindingsKnown) -> Vec<Entered> {
    let mut all = bench::entered(job, machine, windings);
    all.extend(choices::history(job));
    // What was timed or measured says more than what was answered in one word.
    let mut timed = trials::trials(job);
    timed.extend(cold::cold(job));
    timed.extend(circuit::probed(job));
    let measured = numbers(job, machine);
    let replaced = |task: Task| timed.iter().chain(&measured).any(|one| one.task == task);
    let answered = choices::clues(job).into_iter();
    all.extend(answered.filter(|one| !replaced(one.task)));
    all.extend(timed);
    all.retain(|one| !one.weights.is_empty());
    all.extend(measured);
    let done = powered::done(job, &all);
    all.extend(done);
    all
}

impl Entered {
    pub(super) fn new(task: Task, weights: Vec<Weight>) -> Self {
        Self {
            task,
            weights,
            period: 0,
            is_hint: false,
        }
    }

    /// Whether it was done to answer a task, and no hint by something else.
    pub(super) fn answers(&self, task: Task) -> bool {
        self.task == task && !self.is_hint
    }

    /// What was known of a build before, where it is that.
    pub(super) fn carried(&self, build: Build) -> Option<&Carried> {
        self.weights.iter().find_map(|weight| match weight {
            Weight::Carried(one, carried) if *one == build => Some(carried),
            _ => None,
        })
    }

    /// Whether it is what was known before, and no reading.
    pub(super) fn is_carried(&self) -> bool {
        Build::ALL
            .iter()
            .any(|build| self.carried(*build).is_some())
    }
}

/// The mean of log-densities, answer by answer; none of nothing.
fn pooled(repeats: &[Vec<f64>]) -> Option<Vec<f64>> {
    let (first, rest) = repeats.split_first()?;
    let mut sum = first.clone();
    for repeat in rest {
        for (sum, one) in sum.iter_mut().zip(repeat) {
            *sum += one;
        }
    }
    let count = repeats.len() as f64;
    sum.iter_mut().for_each(|entry| *entry /= count);
    Some(sum)
}

/// The ohms of an item, repeats pooled, under each answer of a gauge.
fn ohms(job: &Job, item: crate::Item, gauge: &Gauge) -> Option<Vec<f64>> {
    use job::{Answer, Measured, Reading};
    let repeats: Vec<Vec<f64>> = job
        .answers(item.check().name(), item.name())
        .into_iter()
        .filter_map(|(_, answer)| match answer {
            Answer::Reading(Reading {
                measured: Measured::Ohms(typed),
                accuracy,
                ..
            }) => Some(gauge.ohms(*typed, *accuracy)),
            _ => None,
        })
        .collect();
    pooled(&repeats)
}

/// The degrees of an item, repeats pooled, under each answer of a gauge.
fn degrees(job: &Job, check: &str, item: &str, gauge: &Gauge) -> Option<Vec<f64>> {
    use job::{Answer, Measured, Reading};
    use quantity::Observed;
    let repeats: Vec<Vec<f64>> = job
        .answers(check, item)
        .into_iter()
        .filter_map(|(_, answer)| match answer {
            Answer::Reading(Reading {
                measured: Measured::Celsius(typed),
                accuracy,
                ..
            }) => match typed.observed {
                Observed::Value(value) => {
                    let uncertainty = accuracy.standard(value, typed.count).get();
                    Some(gauge.degrees(value.get(), uncertainty))
                }
                Observed::OverRange { .. } => None,
            },
            _ => None,
        })
        .collect();
    pooled(&repeats)
}

/// The mains of a machine, for gauges.
pub(super) fn mains_of(machine: &Machine) -> Option<Mains> {
    machine.mains.map(Into::into)
}

/// Only this build.
fn only(build: Build) -> Weight {
    let mut weights = [0.0; 3];
    weights[build.column()] = 1.0;
    Weight::Build(weights)
}
