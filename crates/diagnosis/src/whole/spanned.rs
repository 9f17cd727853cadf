//! A job with changes, in networks that span them.
//!
//! How likely each fault is now comes from a network that holds every period, as long as it
//! stays small and has four changes at most; what is older is folded: each part takes along how
//! likely it is to be at fault, and what two parts have to do with each other is lost. What to
//! check next is chosen in the plain network of the build, with everything before the last change
//! folded in the same way.

use std::sync::Arc;

use super::beliefs::{Beliefs, Desk};
use super::build::Build;
use super::change::Change;
use super::compiled::Compiled;
use super::entered::{Entered, Weight};
use super::networks::Assumptions;
use super::versions::{Found, Plan};
use crate::choice::Choice;

/// At most so many periods are kept apart after the first.
const MOST_STEPS: usize = 4;

/// A job with changes.
pub(super) struct Spanned {
    networks: Vec<Arc<Compiled>>,
    /// With the periods that the networks have.
    pub(super) entered: Vec<Entered>,
    steps: usize,
    /// How many changes were folded.
    pub(super) folded: usize,
}

impl Spanned {
    /// `None` where there is no change, or nothing that can be weighed.
    pub(super) fn of(
        assumptions: &Assumptions,
        odds: [f64; 3],
        mut steps: Vec<Vec<Change>>,
        mut entered: Vec<Entered>,
        desk: &mut Desk,
    ) -> Option<Self> {
        let mut folded = 0;
        loop {
            let few = steps.len() <= MOST_STEPS;
            let all = few.then(|| networks(assumptions, odds, &steps, &entered));
            if let Some(networks) = all.flatten() {
                return Some(Self {
                    networks,
                    entered,
                    steps: steps.len(),
                    folded,
                });
            }
            // The oldest step by itself, with what was found before it.
            let (before, after): (Vec<_>, Vec<_>) =
                entered.into_iter().partition(|one| one.period == 0);
            let oldest = [steps.remove(0)];
            folded += oldest[0].len();
            let networks = networks(assumptions, odds, &oldest, &before)?;
            let carried = carried(&networks, odds, &before, desk)?;
            let later = after.into_iter().map(|one| Entered {
                period: one.period - 1,
                ..one
            });
            entered = std::iter::once(carried).chain(later).collect();
        }
    }

    pub(super) fn networks(&self) -> impl Iterator<Item = &Compiled> {
        self.networks.iter().map(|one| &**one)
    }

    /// What speaks of the machine as it is now, with all that was found before as one.
    pub(super) fn since(&self, odds: [f64; 3], desk: &mut Desk) -> Option<Vec<Entered>> {
        let (since, before): (Vec<_>, Vec<_>) = self
            .entered
            .iter()
            .cloned()
            .partition(|one| one.period == self.steps);
        let carried = carried(&self.networks, odds, &before, desk)?;
        Some(std::iter::once(carried).chain(since).collect())
    }
}

/// The networks of all builds that aren't ruled out; `None` where one would be too large.
fn networks(
    assumptions: &Assumptions,
    odds: [f64; 3],
    steps: &[Vec<Change>],
    entered: &[Entered],
) -> Option<Vec<Arc<Compiled>>> {
    let plan = plan(steps, entered);
    let possible = Build::ALL.iter().filter(|build| {
        let column = build.column();
        let weights = entered.iter().flat_map(|one| &one.weights);
        let factors = weights.map(|weight| match weight {
            Weight::Build(factors) => factors[column],
            _ => 1.0,
        });
        odds[column] * factors.product::<f64>() > 0.0
    });
    possible
        .map(|build| assumptions.changed(*build, &plan))
        .collect()
}

/// What has to be in a network for this to be weighed.
fn plan(steps: &[Vec<Change>], entered: &[Entered]) -> Plan {
    let mut plan = Plan {
        steps: steps.to_vec(),
        ..Plan::default()
    };
    for one in entered {
        for weight in &one.weights {
            let found = match weight {
                Weight::Clue(clue, _) => Found::Clue(*clue),
                Weight::Ran => Found::Motor,
                Weight::Nothing(_) => Found::Trouble,
                Weight::Carried(..) => {
                    plan.carried = true;
                    continue;
                }
                Weight::Fault(..) | Weight::Build(_) => continue,
            };
            if !plan.found.contains(&(one.period, found)) {
                plan.found.push((one.period, found));
            }
        }
    }
    plan
}

/// Likelihoods of each part as it is now, as if parts had nothing to do with each other.
fn carried(
    networks: &[Arc<Compiled>],
    odds: [f64; 3],
    entered: &[Entered],
    desk: &mut Desk,
) -> Option<Entered> {
    let networks = networks.iter().map(|one| &**one);
    let weights = Beliefs::of(networks, odds, entered, desk)?.carried(odds, desk)?;
    Some(Entered::carried(weights))
}
