//! What an answer has changed: only what moved is told.

use diagnosis::{Suspect, Whole};

use crate::{Words, odds};

/// How many suspects are told.
const TOLD: usize = 3;

/// A suspect whose odds have changed by a step that is told.
#[derive(Debug, Clone, PartialEq)]
pub struct Moved {
    /// What it is.
    pub what: &'static str,
    /// How likely it is now.
    pub probability: f64,
    /// How likely it was before, in words.
    pub was: &'static str,
}

/// Which suspects have moved, the furthest first: nothing where the answer said nothing new.
#[must_use]
pub fn moved(before: &Whole, after: &Whole) -> Vec<Moved> {
    let mut all: Vec<(f64, Moved)> = Vec::new();
    let now = after.suspects.iter().chain([&after.nothing_wrong]);
    // What is hardly thinkable now may have been a suspect before.
    let gone = before.suspects.iter().filter(|one| {
        let mut still = after.suspects.iter();
        !still.any(|other| other.fault == one.fault)
    });
    for suspect in now {
        all.extend(step(suspect, of(before, suspect), suspect.probability));
    }
    for suspect in gone {
        all.extend(step(suspect, suspect.probability, 0.0));
    }
    let mut told = Vec::new();
    while let Some((place, _)) = (all.iter().enumerate())
        .max_by(|(_, one), (_, other)| one.0.total_cmp(&other.0))
        .filter(|_| told.len() < TOLD)
    {
        told.push(all.remove(place).1);
    }
    told
}

fn of(whole: &Whole, suspect: &Suspect) -> f64 {
    let mut all = whole.suspects.iter().chain([&whole.nothing_wrong]);
    let known = all.find(|one| one.fault == suspect.fault);
    known.map_or(0.0, |one| one.probability)
}

/// With the distance that it has moved.
fn step(suspect: &Suspect, before: f64, now: f64) -> Option<(f64, Moved)> {
    let was = odds(before).phrase;
    (odds(now).phrase != was).then(|| {
        let moved = Moved {
            what: suspect.fault.map_or(super::NOTHING_WRONG, Words::words),
            probability: now,
            was,
        };
        ((now - before).abs(), moved)
    })
}
