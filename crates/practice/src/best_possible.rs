//! How often the best answer to the same readings would be right: an estimate that errs to the low
//! side.
//!
//! What the app believes at the end of a walk follows from its readings, and so does whatever else
//! can be made of them. A classifier starts from what the app believes and learns from other
//! simulated machines what to add for each reading; each machine is asked about by what was learned
//! without it. What it gets right can be got right, so that the best possible is at least that,
//! but for chance: with `n` machines the figure is good to about `√(p(1 − p)/n)`. How far the best
//! lies above it nothing here says; with more machines it learns more and comes nearer.

use std::collections::{BTreeMap, BTreeSet};

use diagnosis::{Choice, Fault, Part, Whole};
use job::{Answer, Content, Job, Measured, Place};
use quantity::Observed;

use crate::learned::{Case, out_of_fold};

/// Machines are put into so many groups; each is asked about by what the others have taught.
const FOLDS: usize = 5;
/// With fewer machines nothing is learned that would be worth telling.
const FEWEST: usize = 200;
/// What isn't among the suspects is believed to be about so likely.
const UNLIKELY: f64 = 0.002;

/// What is known at the end of a walk.
#[derive(Debug, Clone, PartialEq)]
pub struct End {
    /// What was answered, one word for each answer; numbers by their size.
    seen: BTreeSet<String>,
    /// By [`Fault`], then that nothing is wrong: natural logarithms of what is believed.
    believed: Vec<f64>,
}

/// How often the best answer that was learned is right.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BestPossible {
    /// What it advises mends the machine, as a share.
    pub action: f64,
    /// What it holds likeliest is true.
    pub first: f64,
}

/// One machine with the ends of all walks on it; the first is asked about.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Examples<'a> {
    /// What is wrong, the main fault first.
    pub truth: &'a [Fault],
    /// It passes by itself.
    pub passes: bool,
    /// Ends of walks.
    pub ends: &'a [End],
}

impl End {
    /// Of a walk's job and what is believed of it.
    #[must_use]
    pub fn of(job: &Job, whole: &Whole) -> Self {
        let mut believed = vec![libm::log(UNLIKELY); Fault::ALL.len() + 1];
        for suspect in whole.suspects.iter().chain([&whole.nothing_wrong]) {
            believed[place(suspect.fault)] = libm::log(suspect.probability.max(UNLIKELY));
        }
        Self {
            seen: words(job),
            believed,
        }
    }
}

impl BestPossible {
    /// Learned from machines; nothing from fewer than two hundred.
    #[must_use]
    pub fn of(machines: &[Examples<'_>]) -> Option<Self> {
        if machines.len() < FEWEST {
            return None;
        }
        let (cases, owners) = cases(machines);
        let is_first = |place: usize| place == 0 || owners[place] != owners[place - 1];
        let odds = out_of_fold(&cases, |place| owners[place] % FOLDS, FOLDS, is_first);
        let (mut action, mut first) = (0, 0);
        for (odds, owner) in odds.iter().zip(&owners) {
            let Some(odds) = odds else { continue };
            let truth = machines[*owner].truth;
            action += usize::from(best_remedy(odds).is_right(truth, machines[*owner].passes));
            first += usize::from(is_true(likeliest(odds), truth));
        }
        let all = machines.len() as f64;
        Some(Self {
            action: action as f64 / all,
            first: first as f64 / all,
        })
    }
}

/// Every end as a case, with the machine that it is of.
fn cases(machines: &[Examples<'_>]) -> (Vec<Case>, Vec<usize>) {
    let all = machines.iter().flat_map(|machine| machine.ends);
    let words: BTreeSet<&str> = all
        .flat_map(|end| end.seen.iter().map(String::as_str))
        .collect();
    let numbers: BTreeMap<&str, usize> = words.into_iter().zip(0..).collect();
    let (mut cases, mut owners) = (Vec::new(), Vec::new());
    for (owner, machine) in machines.iter().enumerate() {
        for end in machine.ends {
            let seen = end.seen.iter().map(String::as_str);
            cases.push(Case {
                seen: seen.filter_map(|word| numbers.get(word).copied()).collect(),
                believed: end.believed.clone(),
                class: place(machine.truth.first().copied()),
            });
            owners.push(owner);
        }
    }
    (cases, owners)
}

/// The class of a fault; nothing wrong comes last.
fn place(fault: Option<Fault>) -> usize {
    let found = fault.and_then(|fault| Fault::ALL.iter().position(|one| *one == fault));
    found.unwrap_or(Fault::ALL.len())
}

fn likeliest(odds: &[f64]) -> Option<Fault> {
    let mut best = Fault::ALL.len();
    for place in 0..odds.len() {
        if odds[place] > odds[best] {
            best = place;
        }
    }
    Fault::ALL.get(best).copied()
}

fn is_true(fault: Option<Fault>, truth: &[Fault]) -> bool {
    match fault {
        Some(fault) => truth.contains(&fault),
        None => truth.is_empty(),
    }
}

/// What can be advised, as far as its being right depends on it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Remedy {
    Part(Part),
    GiveUp,
    Nothing,
}

impl Remedy {
    /// As a walk is scored: the part that is at fault is dealt with, or what is sealed in given up.
    fn is_right(self, truth: &[Fault], passes: bool) -> bool {
        match self {
            Self::Part(part) => truth.iter().any(|fault| fault.part() == part),
            Self::GiveUp => truth.iter().any(|fault| fault.is_sealed()),
            Self::Nothing => truth.is_empty() || passes,
        }
    }
}

/// The one that is likeliest right.
fn best_remedy(odds: &[f64]) -> Remedy {
    let parts = Part::ALL.iter().map(|part| Remedy::Part(*part));
    let mut best = (Remedy::Nothing, odds.last().copied().unwrap_or(0.0));
    for remedy in parts.chain([Remedy::GiveUp]) {
        let mends = Fault::ALL.iter().zip(odds);
        let right: f64 = mends
            .filter(|(fault, _)| remedy.is_right(&[**fault], false))
            .map(|(_, odds)| odds)
            .sum();
        if right > best.1 {
            best = (remedy, right);
        }
    }
    best.0
}

/// One word for each answer that stands.
fn words(job: &Job) -> BTreeSet<String> {
    let mut words = watched(job);
    let mut open_pairs = None;
    for entry in job.standing() {
        let Content::Answer { question, answer } = &entry.content else {
            continue;
        };
        let (check, item) = (question.check.as_str(), question.item.as_str());
        let mut add = |said: &str| {
            words.insert(format!("{check}/{item}: {said}"));
        };
        match answer {
            Answer::Choice(name) => add(name.as_str()),
            Answer::Choices(names) => {
                add("looked");
                names.iter().for_each(|name| add(name.as_str()));
            }
            Answer::Reading(reading) => {
                let (size, is_open) = size(reading.measured);
                add(&size);
                if check == "windings" {
                    *open_pairs.get_or_insert(0) += usize::from(is_open);
                }
            }
            Answer::Text(_) | Answer::NotDone(_) => {}
        }
    }
    // Which pin is which differs from machine to machine; how many pairs are open doesn't.
    words.extend(open_pairs.map(|pairs| format!("windings: {pairs} open")));
    words
}

/// What came of tries to start, with each rest by its size; how cold each place was in the end, and
/// how long it was watched.
fn watched(job: &Job) -> BTreeSet<String> {
    let mut words = BTreeSet::new();
    let mut last: BTreeMap<Place, (i64, Measured)> = BTreeMap::new();
    let mut began = None;
    for entry in job.standing() {
        match &entry.content {
            Content::Trial(trial) => {
                let rest = libm::log2(trial.rest.seconds().get().max(1.0));
                let (set_up, outcome) = (trial.set_up, trial.outcome);
                words.insert(format!("{set_up:?}: {outcome:?}"));
                words.insert(format!("{set_up:?}: {outcome:?} after 2^{rest:.0}"));
            }
            Content::Event(event) => began = began.or(Some(event.at.unix_milliseconds())),
            Content::Spot(spot) => {
                let at = spot.at.unix_milliseconds();
                last.insert(spot.place, (at, spot.reading.measured));
            }
            _ => {}
        }
    }
    for (place, (at, measured)) in last {
        if let (Observed::Value(celsius), _) = measured.numbers() {
            let grade = 3.0 * libm::rint(celsius / 3.0);
            words.insert(format!("{place:?}: {grade:.0}"));
        }
        let hours = began.map_or(0, |began| (at - began) / 3_600_000);
        words.insert(format!("{place:?}: {} h", hours / 4 * 4));
    }
    words
}

/// A number by its powers of two, and whether it is over range.
fn size(measured: Measured) -> (String, bool) {
    let (observed, _) = measured.numbers();
    match observed {
        Observed::OverRange { .. } => ("over range".to_owned(), true),
        Observed::Value(value) if value > 0.0 => (format!("2^{:.0}", libm::log2(value)), false),
        Observed::Value(_) => ("not above zero".to_owned(), false),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn end(word: &str, fault: Option<Fault>) -> End {
        let mut believed = vec![libm::log(UNLIKELY); Fault::ALL.len() + 1];
        believed[place(fault)] = libm::log(0.9);
        End {
            seen: [word.to_owned()].into(),
            believed,
        }
    }

    /// Somebody takes one fault for another throughout, though a reading tells them apart: that
    /// the readings allow more is seen.
    #[test]
    fn what_the_readings_hold_is_found_where_it_was_missed() {
        let (fan, seal) = (Fault::EvaporatorFanStopped, Fault::SealLeaks);
        let truths = [[fan], [seal]];
        let ends = [
            [end("air: none", Some(fan))],
            [end("air: strong", Some(fan))],
        ];
        let machines: Vec<Examples<'_>> = (0..300)
            .map(|number| Examples {
                truth: &truths[number % 3 / 2],
                passes: false,
                ends: &ends[number % 3 / 2],
            })
            .collect();
        let best = BestPossible::of(&machines).unwrap();
        assert_eq!((best.action, best.first), (1.0, 1.0));
        assert_eq!(BestPossible::of(&machines[..150]), None);
    }

    /// Where nothing tells them apart the commoner one is the best answer.
    #[test]
    fn what_no_reading_tells_stays_untold() {
        let (fan, seal) = (Fault::EvaporatorFanStopped, Fault::SealLeaks);
        let truths = [[fan], [seal]];
        let ends = [end("air: weak", None)];
        let machines: Vec<Examples<'_>> = (0..300)
            .map(|number| Examples {
                truth: &truths[number % 3 / 2],
                passes: false,
                ends: &ends,
            })
            .collect();
        let best = BestPossible::of(&machines).unwrap();
        assert!((best.first - 2.0 / 3.0).abs() < 1e-9, "{best:?}");
    }

    /// Giving up is right where any of the sealed faults is there: together they can be the best
    /// advice though each is less likely than another fault.
    #[test]
    fn remedies_are_weighed_by_all_that_they_are_right_for() {
        let mut odds = vec![0.0; Fault::ALL.len() + 1];
        odds[place(Some(Fault::SealLeaks))] = 0.4;
        odds[place(Some(Fault::ChargeLow))] = 0.3;
        odds[place(Some(Fault::ValvesWorn))] = 0.3;
        assert_eq!(best_remedy(&odds), Remedy::GiveUp);
        assert_eq!(likeliest(&odds), Some(Fault::SealLeaks));
        odds[place(None)] = 0.7;
        assert_eq!(best_remedy(&odds), Remedy::Nothing);
        assert_eq!(likeliest(&odds), None);
    }
}
