//! Acting without looking again: in which order, and when to give up.

use super::fault_sets::FaultSets;
use crate::error::QueryError;
use crate::network::Variable;

/// Sets of actions are bits of one word.
const MOST_ACTIONS: usize = 64;

/// The best order is sought among all subsets; beyond this many actions there are too many.
const MOST_FOR_OPTIMUM: usize = 16;

/// Something that can be done.
#[derive(Debug, Clone, PartialEq)]
pub struct RepairAction {
    /// What it is called.
    pub name: String,
    /// What it costs each time, trying the machine afterwards included; from zero upwards.
    pub cost: f64,
    /// Components that are sound afterwards, whichever fault they had.
    pub mends: Vec<Variable>,
}

/// Fault sets, actions against them, and the price of giving up.
///
/// ```
/// use belief::{Component, FaultSet, FaultSets, Network, Repair, RepairAction};
///
/// let mut network = Network::new();
/// let [relay, motor] = ["relay", "motor"]
///     .map(|name| network.prior(name, &["sound", "failed"], &[0.9, 0.1]).unwrap());
/// let components = [relay, motor].map(|variable| Component { variable, sound: 0 });
/// let alone = |variable, probability| FaultSet { faults: vec![(variable, 1)], probability };
/// let sets = FaultSets::given(&components, vec![alone(relay, 0.6), alone(motor, 0.4)]);
/// let action = |name: &str, cost, variable| {
///     RepairAction { name: name.to_owned(), cost, mends: vec![variable] }
/// };
/// let actions = vec![action("motor", 100.0, motor), action("relay", 10.0, relay)];
/// let repair = Repair::new(&sets, actions, 300.0)?;
/// // The relay first: 10 + 0.4 · 100.
/// assert_eq!(repair.optimal()?.order, [1, 0]);
/// assert!((repair.optimal()?.expected_cost - 50.0).abs() < 1e-9);
/// # Ok::<(), belief::QueryError>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Repair {
    actions: Vec<RepairAction>,
    give_up: f64,
    /// Per set its probability and, per fault, the actions that mend it. The last one is
    /// everything that was not enumerated; nothing mends that for sure.
    worlds: Vec<World>,
}

#[derive(Debug, Clone, PartialEq)]
struct World {
    probability: f64,
    mended_by: Vec<u64>,
}

/// Actions in order, after which one gives up.
#[derive(Debug, Clone, PartialEq)]
pub struct Plan {
    /// Places of the actions.
    pub order: Vec<usize>,
    /// What the plan costs in expectation, giving up included.
    pub expected_cost: f64,
}

impl Repair {
    /// Puts the problem together.
    ///
    /// # Errors
    /// When there are more than 64 actions, or a cost is negative or not finite.
    pub fn new(
        sets: &FaultSets,
        actions: Vec<RepairAction>,
        give_up: f64,
    ) -> Result<Self, QueryError> {
        check_count(&actions, MOST_ACTIONS)?;
        let named = actions
            .iter()
            .map(|action| (action.name.as_str(), action.cost));
        check_costs(named.chain([("giving up", give_up)]))?;
        let who_mends = |variable: Variable| {
            let mending = actions.iter().enumerate();
            let mending = mending.filter(|(_, action)| action.mends.contains(&variable));
            mending.fold(0_u64, |bits, (place, _)| bits | 1 << place)
        };
        let mut worlds: Vec<_> = sets
            .sets()
            .iter()
            .map(|set| World {
                probability: set.probability,
                mended_by: set
                    .faults
                    .iter()
                    .map(|&(variable, _)| who_mends(variable))
                    .collect(),
            })
            .collect();
        worlds.push(World {
            probability: sets.missing(),
            mended_by: vec![0],
        });
        Ok(Self {
            actions,
            give_up,
            worlds,
        })
    }

    /// The actions.
    #[must_use]
    pub fn actions(&self) -> &[RepairAction] {
        &self.actions
    }

    /// What giving up costs.
    #[must_use]
    pub fn give_up(&self) -> f64 {
        self.give_up
    }

    /// The expected cost of taking actions in order until the machine works, and of giving up
    /// when it doesn't after the last one. Actions that there aren't are passed over.
    #[must_use]
    pub fn expected_cost(&self, order: &[usize]) -> f64 {
        let (mut done, mut cost) = (0, 0.0);
        for &action in order {
            if let Some(one) = self.actions.get(action) {
                cost += one.cost * self.broken(done);
                done |= 1 << action;
            }
        }
        cost + self.give_up * self.broken(done)
    }

    /// The order by chance over cost: each time the action that is likeliest to mend something,
    /// per unit of cost, and giving up where that is cheapest. The best order when there is one
    /// fault, each action mends one component and nobody gives up (Kalagnanam and Henrion 1990;
    /// from memory); a yardstick otherwise.
    #[must_use]
    pub fn by_chance_over_cost(&self) -> Plan {
        let weights = self.weights();
        let mut order = Vec::new();
        let mut best = Plan {
            order: Vec::new(),
            expected_cost: self.give_up * self.broken(0),
        };
        let mut done = 0;
        while let Some(action) = self.most_promising(&weights, done) {
            order.push(action);
            done |= 1 << action;
            let expected_cost = self.expected_cost(&order);
            if expected_cost < best.expected_cost {
                best = Plan {
                    order: order.clone(),
                    expected_cost,
                };
            }
        }
        best
    }

    /// The cheapest order of all, by dynamic programming over the sets of actions taken.
    ///
    /// # Errors
    /// When there are more than 16 actions.
    pub fn optimal(&self) -> Result<Plan, QueryError> {
        check_count(&self.actions, MOST_FOR_OPTIMUM)?;
        let subsets = 1_usize << self.actions.len();
        // Expected cost from here on, times the chance of getting here; the step to take.
        let mut from_here = vec![(0.0, None); subsets];
        for done in (0..subsets).rev() {
            let broken = self.broken(done as u64);
            let mut best = (self.give_up * broken, None);
            for (place, action) in self.actions.iter().enumerate() {
                let after = done | 1 << place;
                let cost = action.cost * broken + from_here[after].0;
                if after != done && cost < best.0 {
                    best = (cost, Some(place));
                }
            }
            from_here[done] = best;
        }
        let (mut done, mut order) = (0, Vec::new());
        while let (_, Some(action)) = from_here[done] {
            order.push(action);
            done |= 1 << action;
        }
        Ok(Plan {
            order,
            expected_cost: from_here[0].0,
        })
    }

    /// The probability of each world, what was not enumerated last.
    pub(super) fn weights(&self) -> Vec<f64> {
        self.worlds.iter().map(|world| world.probability).collect()
    }

    /// Whether a world's faults are all mended.
    pub(super) fn works(&self, world: usize, done: u64) -> bool {
        self.worlds[world]
            .mended_by
            .iter()
            .all(|mending| mending & done != 0)
    }

    /// The action not yet taken that is likeliest to mend something, per unit of cost.
    pub(super) fn most_promising(&self, weights: &[f64], done: u64) -> Option<usize> {
        let mut best: Option<(usize, f64)> = None;
        for (place, action) in self.actions.iter().enumerate() {
            let bit = 1 << place;
            if done & bit != 0 {
                continue;
            }
            let mends_something = |world: &World| {
                let broken = world
                    .mended_by
                    .iter()
                    .filter(|&&mending| mending & done == 0);
                broken.into_iter().any(|mending| mending & bit != 0)
            };
            let helped = self
                .worlds
                .iter()
                .zip(weights)
                .filter(|(world, _)| mends_something(world));
            let chance: f64 = helped.map(|(_, weight)| weight).sum();
            let promise = chance / action.cost;
            if chance > 0.0 && best.is_none_or(|(_, most)| promise > most) {
                best = Some((place, promise));
            }
        }
        best.map(|(place, _)| place)
    }

    /// How likely it is that the machine does not work after some actions.
    fn broken(&self, done: u64) -> f64 {
        let broken = (0..self.worlds.len()).filter(|&world| !self.works(world, done));
        broken.map(|world| self.worlds[world].probability).sum()
    }
}

fn check_count(actions: &[RepairAction], limit: usize) -> Result<(), QueryError> {
    if actions.len() <= limit {
        return Ok(());
    }
    Err(QueryError::TooLarge {
        variables: actions.iter().map(|action| action.name.clone()).collect(),
        entries: actions.len(),
        limit,
    })
}

pub(super) fn check_costs<'a>(
    mut costs: impl Iterator<Item = (&'a str, f64)>,
) -> Result<(), QueryError> {
    let refused = costs.find(|(_, cost)| !cost.is_finite() || *cost < 0.0);
    refused.map_or(Ok(()), |(name, _)| {
        Err(QueryError::Number {
            of: name.to_owned(),
        })
    })
}
