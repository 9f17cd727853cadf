//! Choosing under uncertainty: the best action now, and what it would be worth to know more.

use crate::configuration::count;
use crate::error::QueryError;
use crate::network::{Network, Variable};
use crate::posterior::Posterior;

/// A choice among actions whose costs depend on the states of some variables.
#[derive(Debug, Clone, PartialEq)]
pub struct Decision {
    variables: Vec<Variable>,
    actions: Vec<Costs>,
}

#[derive(Debug, Clone, PartialEq)]
struct Costs {
    name: String,
    costs: Vec<f64>,
}

/// The action with the lowest expected cost.
#[derive(Debug, Clone, PartialEq)]
pub struct Choice {
    /// Its place among the decision's actions.
    pub action: usize,
    /// Its expected cost.
    pub cost: f64,
}

/// What observing a variable before deciding is worth.
#[derive(Debug, Clone, PartialEq)]
pub struct Worth {
    /// The best choice without looking.
    pub now: Choice,
    /// Per state that may be seen: how likely that is and the best choice then; no choice where
    /// the state can't be seen.
    pub then: Vec<(f64, Option<Choice>)>,
    /// Expected drop in expected cost, from zero upwards. What looking itself costs is not in it.
    pub value: f64,
}

impl Decision {
    /// A decision that depends on some variables, without actions yet.
    #[must_use]
    pub fn over(variables: &[Variable]) -> Self {
        Self {
            variables: variables.to_vec(),
            actions: Vec::new(),
        }
    }

    /// Adds an action with its cost in each joint state of the variables, the last variable's
    /// state changing fastest. Gains are negative costs.
    ///
    /// # Errors
    /// When there isn't one finite cost per joint state.
    pub fn action(
        &mut self,
        network: &Network,
        name: &str,
        costs: &[f64],
    ) -> Result<(), QueryError> {
        let expected = count(self.variables.iter().map(|&one| network.states(one).len()));
        if costs.len() != expected {
            return Err(QueryError::Shape {
                of: name.to_owned(),
                expected,
                found: costs.len(),
            });
        }
        if costs.iter().any(|cost| !cost.is_finite()) {
            return Err(QueryError::Number {
                of: name.to_owned(),
            });
        }
        self.actions.push(Costs {
            name: name.to_owned(),
            costs: costs.to_vec(),
        });
        Ok(())
    }

    /// The name of an action.
    #[must_use]
    pub fn name(&self, action: usize) -> Option<&str> {
        self.actions.get(action).map(|one| one.name.as_str())
    }

    /// The expected cost of every action, in order.
    ///
    /// # Errors
    /// When the variables' joint distribution can't be had.
    pub fn expected_costs(&self, posterior: &Posterior<'_>) -> Result<Vec<f64>, QueryError> {
        let joint = posterior.joint(&self.variables)?;
        let costs = self
            .actions
            .iter()
            .map(|action| weighed(&action.costs, joint.values()));
        Ok(costs.collect())
    }

    /// The action with the lowest expected cost, the first one of equals; none when there are no
    /// actions.
    ///
    /// # Errors
    /// When the variables' joint distribution can't be had.
    pub fn best(&self, posterior: &Posterior<'_>) -> Result<Option<Choice>, QueryError> {
        Ok(least(self.expected_costs(posterior)?))
    }

    /// What it is worth to observe one more variable before deciding: the expected cost of the
    /// best action now, less the expectation of what it will be once the state is seen (Howard,
    /// "Information value theory", 1966; from memory). None when there are no actions.
    ///
    /// ```
    /// use belief::{Decision, Evidence, JunctionTree, Network};
    ///
    /// let mut network = Network::new();
    /// let motor = network.prior("motor", &["sound", "seized"], &[0.7, 0.3])?;
    /// let rows = [[0.95, 0.05], [0.1, 0.9]];
    /// let check = network.table("check", &["turns", "stuck"], &[motor], &rows)?;
    /// let tree = JunctionTree::compile(network)?;
    /// let mut decision = Decision::over(&[motor]);
    /// decision.action(tree.network(), "keep", &[0.0, 100.0])?;
    /// decision.action(tree.network(), "scrap", &[60.0, 0.0])?;
    ///
    /// let (evidence, mut workspace) = (Evidence::new(), tree.workspace());
    /// let posterior = tree.propagate(&evidence, &mut workspace)?;
    /// let worth = decision.worth_of(&posterior, check)?.unwrap();
    /// // Now: keep for 30. Seen to turn: keep; stuck: scrap; 0.7·0.05·60 + 0.3·0.1·100 = 5.1.
    /// assert!((worth.value - (30.0 - 5.1)).abs() < 1e-9);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    ///
    /// # Errors
    /// When the joint distribution of the decision's variables and the observed one can't be had.
    pub fn worth_of(
        &self,
        posterior: &Posterior<'_>,
        observed: Variable,
    ) -> Result<Option<Worth>, QueryError> {
        // What is observed may be one of the variables that the costs depend on.
        let own_place = self.variables.iter().position(|&one| one == observed);
        let mut query = self.variables.clone();
        if own_place.is_none() {
            query.push(observed);
        }
        let joint = posterior.joint(&query)?;
        let network = posterior.tree().network();
        let states = network.states(observed).len();
        let later = own_place.map_or(&[][..], |place| &self.variables[place + 1..]);
        let stride = count(later.iter().map(|&one| network.states(one).len()));
        let seen_with = |state: usize| -> Vec<f64> {
            match own_place {
                None => joint
                    .values()
                    .iter()
                    .skip(state)
                    .step_by(states)
                    .copied()
                    .collect(),
                Some(_) => {
                    let joint = joint.values().iter().enumerate();
                    joint
                        .map(|(place, &p)| {
                            if place / stride % states == state {
                                p
                            } else {
                                0.0
                            }
                        })
                        .collect()
                }
            }
        };
        let costs_with = |chances: &[f64]| {
            let costs = self
                .actions
                .iter()
                .map(|action| weighed(&action.costs, chances));
            least(costs.collect())
        };
        let Some(now) = self.best(posterior)? else {
            return Ok(None);
        };
        let (mut then, mut cost_then) = (Vec::with_capacity(states), 0.0);
        for state in 0..states {
            let chances = seen_with(state);
            let seen: f64 = chances.iter().sum();
            let choice = costs_with(&chances).filter(|_| seen > 0.0).map(|choice| {
                cost_then += choice.cost;
                Choice {
                    cost: choice.cost / seen,
                    ..choice
                }
            });
            then.push((seen, choice));
        }
        // Knowing more can't cost anything; rounding could say so.
        let value = (now.cost - cost_then).max(0.0);
        Ok(Some(Worth { now, then, value }))
    }
}

fn weighed(costs: &[f64], chances: &[f64]) -> f64 {
    costs
        .iter()
        .zip(chances)
        .map(|(cost, chance)| cost * chance)
        .sum()
}

fn least(costs: Vec<f64>) -> Option<Choice> {
    let mut best: Option<Choice> = None;
    for (action, cost) in costs.into_iter().enumerate() {
        if best.as_ref().is_none_or(|best| cost < best.cost) {
            best = Some(Choice { action, cost });
        }
    }
    best
}
