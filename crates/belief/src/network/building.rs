//! Adding variables, each kind with its checks.

use super::law::{Law, Strongest, checked_row};
use super::{Network, Node, Variable, name, pieces};
use crate::configuration::{advance, count};
use crate::error::BuildError;

/// A table may have this many entries: thousands of times what a person can answer for.
pub(super) const MOST_ENTRIES: usize = 1 << 22;

impl Network {
    /// Adds a variable without parents.
    ///
    /// # Errors
    /// When a name can't be used or the chances are no distribution over the states.
    pub fn prior(
        &mut self,
        name: &str,
        states: &[&str],
        chances: &[f64],
    ) -> Result<Variable, BuildError> {
        self.table(name, states, &[], &[chances])
    }

    /// Adds a variable with one row of chances per joint state of its parents, the last parent's
    /// state changing fastest. Rows may miss a sum of one by 1e-9, and are scaled to it.
    ///
    /// # Errors
    /// When a name can't be used, a parent is unknown, or the rows are not as they should be.
    pub fn table(
        &mut self,
        name: &str,
        states: &[&str],
        parents: &[Variable],
        rows: &[impl AsRef<[f64]>],
    ) -> Result<Variable, BuildError> {
        let configurations = self.check(name, states, parents)?;
        check_shape(name, configurations, rows.len())?;
        let mut table = Vec::with_capacity(configurations * states.len());
        for (number, row) in rows.iter().enumerate() {
            table.extend(checked_row(name, states.len(), number, row.as_ref())?);
        }
        Ok(self.push(name, states, parents, Law::Table(table)))
    }

    /// Adds a variable whose state is a function of its parents' states. The function is given
    /// the number of each parent's state and returns the number of the variable's.
    ///
    /// ```
    /// # use belief::Network;
    /// # let mut network = Network::new();
    /// # let left = network.prior("left", &["off", "on"], &[0.5, 0.5])?;
    /// # let right = network.prior("right", &["off", "on"], &[0.5, 0.5])?;
    /// let light = network.function("light", &["dark", "lit"], &[left, right], |switches| {
    ///     usize::from(switches[0] != switches[1])
    /// })?;
    /// # Ok::<(), belief::BuildError>(())
    /// ```
    ///
    /// # Errors
    /// When a name can't be used, a parent is unknown, or the function names a state that there
    /// isn't.
    pub fn function(
        &mut self,
        name: &str,
        states: &[&str],
        parents: &[Variable],
        state: impl Fn(&[usize]) -> usize,
    ) -> Result<Variable, BuildError> {
        let configurations = self.check(name, states, parents)?;
        let mut table = Vec::with_capacity(configurations);
        let mut at = vec![0; parents.len()];
        loop {
            table.push(checked_state(name, states.len(), state(&at))?);
            if !advance(&mut at, |place| self.card(parents[place])) {
                break;
            }
        }
        Ok(self.push(name, states, parents, Law::Function(table)))
    }

    /// Adds a variable that is as bad as the worst that any cause alone would make it. Its states
    /// stand from best to worst; each cause comes with the state that each of its own states
    /// leads to.
    ///
    /// ```
    /// # use belief::Network;
    /// # let mut network = Network::new();
    /// # let rotor = network.prior("rotor", &["free", "tight", "seized"], &[0.9, 0.06, 0.04])?;
    /// # let device = network.prior("device", &["sound", "open"], &[0.8, 0.2])?;
    /// let start = network.worst_of(
    ///     "start",
    ///     &["starts", "starts_after_rest", "hums"],
    ///     &[(rotor, &[0, 1, 2]), (device, &[0, 2])],
    /// )?;
    /// # Ok::<(), belief::BuildError>(())
    /// ```
    ///
    /// # Errors
    /// When a name can't be used, a cause is unknown, or an effect is no state of the variable.
    pub fn worst_of(
        &mut self,
        name: &str,
        states: &[&str],
        causes: &[(Variable, &[usize])],
    ) -> Result<Variable, BuildError> {
        let one_hot = |state: usize| -> Vec<f64> {
            let mut row = vec![0.0; states.len()];
            if let Some(entry) = row.get_mut(state) {
                *entry = 1.0;
            }
            row
        };
        let mut influences = Vec::with_capacity(causes.len());
        for (cause, effects) in causes {
            for &effect in *effects {
                checked_state(name, states.len(), effect)?;
            }
            let rows: Vec<_> = effects.iter().map(|&effect| one_hot(effect)).collect();
            influences.push((*cause, rows));
        }
        self.noisy_worst(name, states, &influences, &one_hot(0))
    }

    /// Adds a variable of two states, absent and present, that each cause may bring about by
    /// itself (noisy-or). Each cause comes with a strength per state of its own: the chance that
    /// it alone brings the effect about. The leak is the chance that something not on the list
    /// does.
    ///
    /// ```
    /// # use belief::Network;
    /// # let mut network = Network::new();
    /// # let fan = network.prior("fan", &["sound", "stuck"], &[0.9, 0.1])?;
    /// # let coil = network.prior("coil", &["clear", "iced"], &[0.8, 0.2])?;
    /// let noise = network.noisy(
    ///     "noise",
    ///     &["no", "yes"],
    ///     &[(fan, &[0.0, 0.85]), (coil, &[0.0, 0.5])],
    ///     0.02,
    /// )?;
    /// # Ok::<(), belief::BuildError>(())
    /// ```
    ///
    /// # Errors
    /// When a name can't be used, a cause is unknown, or a strength or the leak lies outside 0
    /// to 1.
    pub fn noisy(
        &mut self,
        name: &str,
        states: &[&str; 2],
        causes: &[(Variable, &[f64])],
        leak: f64,
    ) -> Result<Variable, BuildError> {
        let influences: Vec<_> = causes
            .iter()
            .map(|(cause, strengths)| {
                let rows: Vec<_> = strengths.iter().map(|&p| vec![1.0 - p, p]).collect();
                (*cause, rows)
            })
            .collect();
        self.noisy_worst(name, states, &influences, &[1.0 - leak, leak])
    }

    /// Adds a variable that is as bad as the worst of several independent influences (noisy-max).
    /// Its states stand from best to worst; each cause comes with one row of chances over them
    /// per state of its own, and so does what is not on the list, the leak.
    ///
    /// # Errors
    /// When a name can't be used, a cause is unknown, or a row is no distribution.
    pub fn noisy_worst(
        &mut self,
        name: &str,
        states: &[&str],
        causes: &[(Variable, Vec<Vec<f64>>)],
        leak: &[f64],
    ) -> Result<Variable, BuildError> {
        let parents: Vec<_> = causes.iter().map(|(cause, _)| *cause).collect();
        self.check_names(name, states)?;
        self.check_parents(name, &parents)?;
        let leak = checked_row(name, states.len(), 0, leak)?;
        let mut tables = Vec::with_capacity(causes.len());
        for (cause, rows) in causes {
            check_shape(name, self.card(*cause), rows.len())?;
            let mut table = Vec::with_capacity(rows.len() * states.len());
            for (number, row) in rows.iter().enumerate() {
                table.extend(checked_row(name, states.len(), number, row)?);
            }
            tables.push(table);
        }
        let pairs = tables
            .iter()
            .map(|table| table.len().saturating_mul(states.len()));
        let entries = if pieces::is_split(tables.len()) {
            pairs.max().unwrap_or(0)
        } else {
            count(parents.iter().map(|&parent| self.card(parent))).saturating_mul(states.len())
        };
        check_size(name, entries)?;
        let law = Law::Strongest(Strongest { leak, tables });
        Ok(self.push(name, states, &parents, law))
    }

    fn push(&mut self, name: &str, states: &[&str], parents: &[Variable], law: Law) -> Variable {
        let variable = Variable::at(self.nodes.len());
        self.nodes.push(Node {
            name: name.to_owned(),
            states: states.iter().map(|&state| state.to_owned()).collect(),
            parents: parents.to_vec(),
            law,
        });
        variable
    }

    /// Checks names and parents and counts the parents' joint states.
    fn check(
        &self,
        name: &str,
        states: &[&str],
        parents: &[Variable],
    ) -> Result<usize, BuildError> {
        self.check_names(name, states)?;
        self.check_parents(name, parents)?;
        let configurations = count(parents.iter().map(|&parent| self.card(parent)));
        let entries = configurations.saturating_mul(states.len());
        check_size(name, entries)?;
        Ok(configurations)
    }

    fn check_names(&self, name: &str, states: &[&str]) -> Result<(), BuildError> {
        let taken = |name_: &str| BuildError::Taken {
            variable: name.to_owned(),
            name: name_.to_owned(),
        };
        if self.find(name).is_some() {
            return Err(taken(name));
        }
        if states.len() < 2 {
            return Err(BuildError::TooFewStates {
                variable: name.to_owned(),
            });
        }
        for one in std::iter::once(&name).chain(states) {
            if !name::can_be_used(one) {
                return Err(BuildError::Name {
                    variable: name.to_owned(),
                    name: (*one).to_owned(),
                });
            }
        }
        let twice = (1..states.len()).find(|&place| states[..place].contains(&states[place]));
        twice.map_or(Ok(()), |place| Err(taken(states[place])))
    }

    fn check_parents(&self, name: &str, parents: &[Variable]) -> Result<(), BuildError> {
        for (place, &parent) in parents.iter().enumerate() {
            if self.node(parent).is_none() {
                return Err(BuildError::UnknownParent {
                    variable: name.to_owned(),
                });
            }
            if parents[..place].contains(&parent) {
                return Err(BuildError::RepeatedParent {
                    variable: name.to_owned(),
                    parent: self.name(parent).to_owned(),
                });
            }
        }
        Ok(())
    }
}

fn check_size(name: &str, entries: usize) -> Result<(), BuildError> {
    if entries <= MOST_ENTRIES {
        return Ok(());
    }
    Err(BuildError::TooLarge {
        variable: name.to_owned(),
        entries,
        limit: MOST_ENTRIES,
    })
}

pub(super) fn check_shape(name: &str, expected: usize, found: usize) -> Result<(), BuildError> {
    if expected == found {
        return Ok(());
    }
    Err(BuildError::Shape {
        variable: name.to_owned(),
        expected,
        found,
    })
}

fn checked_state(name: &str, states: usize, state: usize) -> Result<u32, BuildError> {
    match u32::try_from(state) {
        Ok(number) if state < states => Ok(number),
        _ => Err(BuildError::UnknownState {
            variable: name.to_owned(),
            state,
            states,
        }),
    }
}
