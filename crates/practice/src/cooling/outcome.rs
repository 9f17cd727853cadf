//! What a course of temperatures really comes to, its cycles and defrosts evened out.

use measure::cool_down::Goal;
use simulator::appliance::Sample;

/// After a defrost the air is no measure for so many seconds (judgement: the evaporator has to
/// cool first).
const AFTER_DEFROST: f64 = 2_700.0;
/// A compressor that has run for longer than this cools down and doesn't cycle.
const NO_CYCLE: f64 = 7_200.0;
/// The end is the mean from this hour on.
const LATE: f64 = 36.0 * 3600.0;

/// What is too warm by so many kelvins at the end of its time and a day later is hopeless, and what is colder
/// by so many is good; between them a thermometer and a control's setting decide (judgement).
const HOPELESS: f64 = 3.0;
const GOOD: f64 = 1.0;

/// What becomes of a course, against its goal.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Fate {
    /// Colder by a kelvin at least when its time is over.
    Good,
    /// Neither: "too early to say" is no poor answer of such a one.
    Borderline,
    /// Warmer by more than three kelvins when its time is over, and a day later too.
    Hopeless,
}

/// A course without its cycles: the air while the compressor runs on and on, its mean over each
/// cycle where it switches, and a straight line over each defrost.
#[derive(Debug, Clone, PartialEq)]
pub struct Outcome {
    at: Vec<f64>,
    even: Vec<f64>,
    /// Where it ends, in °C: the mean of the last twelve of 48 hours.
    pub end: f64,
}

impl Outcome {
    /// Of samples in order, with the air at the place in question.
    #[must_use]
    pub fn of(samples: &[Sample], air: &[(f64, f64)]) -> Self {
        let (at, air): (Vec<f64>, Vec<f64>) = air.iter().copied().unzip();
        let calm = calm(samples);
        let mut even = across(&at, &air, &calm);
        for (from, to) in cycles(samples, &at) {
            let mean = even[from..to].iter().sum::<f64>() / (to - from) as f64;
            even[from..to].fill(mean);
        }
        let late: Vec<f64> = at
            .iter()
            .zip(&even)
            .filter(|(at, _)| **at >= LATE)
            .map(|(_, even)| *even)
            .collect();
        let end = late.iter().sum::<f64>() / late.len().max(1) as f64;
        Self { at, even, end }
    }

    /// The evened temperature at a time in seconds; the last one for all later.
    #[must_use]
    pub fn at(&self, seconds: f64) -> f64 {
        let place = self.at.partition_point(|at| *at < seconds);
        let last = self.even.len().saturating_sub(1);
        self.even.get(place.min(last)).copied().unwrap_or(f64::NAN)
    }

    /// When the goal is reached first, in seconds; nothing where it isn't in its time.
    #[must_use]
    pub fn reaches(&self, goal: &Goal) -> Option<f64> {
        let course = self.at.iter().zip(&self.even);
        course
            .filter(|(at, _)| **at <= goal.within.get())
            .find(|(_, even)| **even <= goal.target.get())
            .map(|(at, _)| *at)
    }

    /// Whether it is there at the end of the goal's time.
    #[must_use]
    pub fn gets_there(&self, goal: &Goal) -> bool {
        self.at(goal.within.get()) <= goal.target.get()
    }
}

impl Outcome {
    /// What becomes of it.
    #[must_use]
    pub fn fate(&self, goal: &Goal) -> Fate {
        let after = |celsius: f64| celsius - goal.target.get();
        let too_warm = after(self.at(goal.within.get()));
        match too_warm {
            _ if too_warm.min(after(self.end)) > HOPELESS => Fate::Hopeless,
            _ if too_warm < -GOOD => Fate::Good,
            _ => Fate::Borderline,
        }
    }
}

/// Whether each sample lies outside of a defrost and what follows it.
fn calm(samples: &[Sample]) -> Vec<bool> {
    let mut last = f64::NEG_INFINITY;
    samples
        .iter()
        .map(|sample| {
            if sample.defrosting {
                last = sample.time.get();
            }
            sample.time.get() - last > AFTER_DEFROST
        })
        .collect()
}

/// Straight lines across what isn't calm.
fn across(at: &[f64], air: &[f64], calm: &[bool]) -> Vec<f64> {
    let mut even = air.to_vec();
    let mut place = 0;
    while place < even.len() {
        if calm[place] {
            place += 1;
            continue;
        }
        let from = place;
        while place < even.len() && !calm[place] {
            place += 1;
        }
        let before = from.checked_sub(1).map(|one| (at[one], air[one]));
        let after = at.get(place).map(|at| (*at, air[place]));
        for one in from..place {
            even[one] = match (before, after) {
                (Some((a, x)), Some((b, y))) => x + (y - x) * (at[one] - a) / (b - a),
                (Some((_, x)), None) | (None, Some((_, x))) => x,
                (None, None) => air[one],
            };
        }
    }
    even
}

/// From each start of the compressor to the next, where it has stopped between; by places.
fn cycles(samples: &[Sample], at: &[f64]) -> Vec<(usize, usize)> {
    let starts: Vec<usize> = (1..samples.len())
        .filter(|place| samples[*place].running && !samples[place - 1].running)
        .collect();
    let is_cycle = |pair: &&[usize]| {
        let stretch = &samples[pair[0]..pair[1]];
        let ran = stretch.iter().filter(|sample| sample.running).count() as f64 * 60.0;
        ran < NO_CYCLE && at[pair[1]] - at[pair[0]] < 2.0 * NO_CYCLE
    };
    let mut cycles: Vec<(usize, usize)> = starts
        .windows(2)
        .filter(is_cycle)
        .map(|pair| (pair[0], pair[1]))
        .collect();
    // What lies between the first stop and the first start after it belongs to that cycle.
    if let Some(first) = cycles.first_mut() {
        let stopped = (0..first.0).rev().take_while(|one| !samples[*one].running);
        first.0 -= stopped.count();
    }
    cycles
}
