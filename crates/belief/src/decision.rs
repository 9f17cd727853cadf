//! Choosing where costs depend on the states of a few variables.

use crate::configuration::count;
use crate::cost_table::{Choice, CostTable, Worth};
use crate::error::QueryError;
use crate::network::{Network, Variable};
use crate::posterior::Posterior;

/// A choice among actions whose costs depend on the joint state of some variables.
#[derive(Debug, Clone, PartialEq)]
pub struct Decision {
    variables: Vec<Variable>,
    costs: CostTable,
}

impl Decision {
    /// A decision that depends on some variables of a network, without actions yet.
    #[must_use]
    pub fn over(network: &Network, variables: &[Variable]) -> Self {
        let outcomes = count(variables.iter().map(|&one| network.states(one).len()));
        Self {
            variables: variables.to_vec(),
            costs: CostTable::over(outcomes),
        }
    }

    /// Adds an action with its cost in each joint state of the variables, the last variable's
    /// state changing fastest. Gains are negative costs.
    ///
    /// # Errors
    /// When there isn't one finite cost per joint state.
    pub fn action(&mut self, name: &str, costs: &[f64]) -> Result<(), QueryError> {
        self.costs.action(name, costs)
    }

    /// The name of an action.
    #[must_use]
    pub fn name(&self, action: usize) -> Option<&str> {
        self.costs.name(action)
    }

    /// The expected cost of every action, in order.
    ///
    /// # Errors
    /// When the variables' joint distribution can't be had.
    pub fn expected_costs(&self, posterior: &Posterior<'_>) -> Result<Vec<f64>, QueryError> {
        self.costs
            .expected_costs(posterior.joint(&self.variables)?.values())
    }

    /// The action with the lowest expected cost, the first one of equals; none when there are no
    /// actions.
    ///
    /// # Errors
    /// When the variables' joint distribution can't be had.
    pub fn best(&self, posterior: &Posterior<'_>) -> Result<Option<Choice>, QueryError> {
        self.costs.best(posterior.joint(&self.variables)?.values())
    }

    /// What it is worth to observe one more variable before deciding; see
    /// [`CostTable::worth_of`]. None when there are no actions.
    ///
    /// ```
    /// use belief::{Decision, Evidence, JunctionTree, Network};
    ///
    /// let mut network = Network::new();
    /// let motor = network.prior("motor", &["sound", "seized"], &[0.7, 0.3])?;
    /// let rows = [[0.95, 0.05], [0.1, 0.9]];
    /// let check = network.table("check", &["turns", "stuck"], &[motor], &rows)?;
    /// let tree = JunctionTree::compile(network)?;
    /// let mut decision = Decision::over(tree.network(), &[motor]);
    /// decision.action("keep", &[0.0, 100.0])?;
    /// decision.action("scrap", &[60.0, 0.0])?;
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
        let now = posterior.joint(&self.variables)?;
        let with_answer: Vec<_> = (0..states).map(seen_with).collect();
        Ok(self.costs.worth(now.values(), &with_answer))
    }
}
