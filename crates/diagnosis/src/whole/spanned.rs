//! A job with changes, in networks that span them.
//!
//! How likely each fault is now comes from a network that holds every period, as long as it
//! stays small and has four changes at most; what is older is folded. What to check next is chosen
//! in the plain network of the build: it holds what was read since the last change, and is made to
//! say of each fault what the other one says. After a thaw, which a plain network doesn't know, it
//! holds nothing that hangs on the ice.

use std::sync::Arc;

use super::beliefs::{Beliefs, Desk};
use super::build::Build;
use super::change::Change;
use super::compiled::Compiled;
use super::entered::{Entered, Weight};
use super::fault::Part;
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
    thawed: bool,
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
        let plain = assumptions.networks()?;
        let mut folded = 0;
        loop {
            let few = steps.len() <= MOST_STEPS;
            let all = few.then(|| networks(assumptions, odds, &steps, &entered));
            if let Some(networks) = all.flatten() {
                return Some(Self {
                    networks,
                    entered,
                    steps: steps.len(),
                    thawed: steps
                        .iter()
                        .flatten()
                        .any(|change| *change == Change::Frost),
                    folded,
                });
            }
            // The oldest step by itself, with what was found before it.
            let (before, after): (Vec<_>, Vec<_>) =
                entered.into_iter().partition(|one| one.period == 0);
            let oldest = [steps.remove(0)];
            folded += oldest[0].len();
            let networks = networks(assumptions, odds, &oldest, &before)?;
            let beliefs = Beliefs::of(&plainly(&networks), odds, &before, desk)?;
            let carried = beliefs.carried(odds, &plain, &[], desk)?;
            let later = after.into_iter().map(|one| Entered {
                period: one.period - 1,
                ..one
            });
            entered = std::iter::once(carried).chain(later).collect();
        }
    }

    pub(super) fn networks(&self) -> Vec<&Compiled> {
        plainly(&self.networks)
    }

    /// What was read since the last change, and all that is believed folded to go with it.
    pub(super) fn since(
        &self,
        exact: &Beliefs<'_>,
        odds: [f64; 3],
        plain: &[&Compiled],
        desk: &mut Desk,
    ) -> Option<Vec<Entered>> {
        let is_since = |one: &&Entered| {
            one.period == self.steps && !one.is_carried() && !self.hangs_on_thawed_ice(one)
        };
        let mut since: Vec<Entered> = self.entered.iter().filter(is_since).cloned().collect();
        since.push(exact.carried(odds, plain, &since, desk)?);
        Some(since)
    }

    fn hangs_on_thawed_ice(&self, one: &Entered) -> bool {
        let mut networks = self.networks.iter();
        self.thawed
            && networks.any(|network| {
                let mut clues = one.task.clues();
                clues.any(|clue| network.hangs_on(clue, Part::Drain))
            })
    }
}

fn plainly(networks: &[Arc<Compiled>]) -> Vec<&Compiled> {
    networks.iter().map(|one| &**one).collect()
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
                    Found::Trouble
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
