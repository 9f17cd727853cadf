//! Why something is suspected: in words first, in numbers on request.

use diagnosis::{Suspect, Task, Weighed};

use super::{reading, weight};
use crate::{Locale, odds};

/// One reading's share in a suspicion.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Reason {
    /// What brought it.
    pub task: Task,
    /// What it is called.
    pub what: &'static str,
    /// Which way it points, and how strongly.
    pub how: &'static str,
    /// Whether it was read before the machine was changed the last time.
    pub before_change: bool,
    /// How likely the suspect would be without it.
    pub without: &'static str,
}

/// What points to a suspect, then what points away, the strongest of each first.
#[must_use]
pub fn reasons(suspect: &Suspect) -> Vec<Reason> {
    all(suspect)
        .map(|one| Reason {
            task: one.task,
            what: reading(one.task),
            how: weight(one.factor),
            before_change: one.before_change,
            without: odds(one.without).phrase,
        })
        .collect()
}

/// The same as figures: percent now and before anything was known, and by which factor each
/// reading changed the odds.
#[must_use]
pub fn numbers(suspect: &Suspect, locale: &Locale) -> String {
    let percent = |share: f64| locale.number(share * 100.0, 1);
    let mut said = format!(
        "{}\u{a0}% now, {}\u{a0}% before anything was known.",
        percent(suspect.probability),
        percent(suspect.before)
    );
    for one in all(suspect) {
        let factor = locale.number(one.factor, if one.factor < 10.0 { 2 } else { 0 });
        said.push_str(&format!(" {}: odds ×\u{a0}{factor}.", reading(one.task)));
    }
    said
}

fn all(suspect: &Suspect) -> impl Iterator<Item = &Weighed> {
    suspect.pointing_to.iter().chain(&suspect.pointing_away)
}
