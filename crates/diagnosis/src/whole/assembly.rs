//! Putting the network together from what people can write: faults by name, percent, rows.

use belief::{BuildError, Network, Variable};

use super::build::Build;
use super::fault::{Fault, Part};
use super::priors::Priors;
use super::versions::Versions;
use crate::choice::Choice;

/// How often an answer has nothing to do with the machine: the wrong pins, a digit misread, a
/// choice mistapped (judgement). It is part of every finding, so that no single one decides.
pub(super) const SLIP: f64 = 0.015;

/// A network under construction.
pub(super) struct Assembly {
    pub(super) network: Network,
    pub(super) build: Build,
    /// By [`Part`], as it is in the period that is being built; none where the build doesn't
    /// have it.
    parts: Vec<Option<PartVariable>>,
    pub(super) versions: Versions,
}

/// A part's variable. State 0 is sound, state n the n-th of its faults.
#[derive(Debug, Clone)]
pub(super) struct PartVariable {
    pub(super) variable: Variable,
    pub(super) faults: Vec<Fault>,
}

impl PartVariable {
    /// The state that stands for a fault.
    pub(super) fn state(&self, fault: Fault) -> Option<usize> {
        let place = self.faults.iter().position(|&one| one == fault)?;
        Some(place + 1)
    }
}

/// Something that pushes a condition from its best state towards its worst.
pub(super) enum Cause<'a> {
    /// A fault, with how many of a hundred cases it leads to each state.
    Fault(Fault, &'a [f64]),
    /// Another condition, with such a row for each of its states.
    State(Variable, &'a [&'a [f64]]),
}

/// What a finding is read from.
#[derive(Clone, Copy)]
pub(super) enum Parent {
    Part(Part),
    State(Variable),
}

/// One joint state of a finding's parents.
pub(super) struct Given<'a> {
    faults: &'a [Fault],
    states: &'a [(Variable, usize)],
}

impl Given<'_> {
    /// Whether this fault is there.
    pub(super) fn is(&self, fault: Fault) -> bool {
        self.faults.contains(&fault)
    }

    /// The state of a condition; its best where it isn't a parent.
    pub(super) fn at(&self, condition: Variable) -> usize {
        let found = self.states.iter().find(|(one, _)| *one == condition);
        found.map_or(0, |(_, state)| *state)
    }
}

impl Assembly {
    /// Every part that the build has, each with its odds.
    pub(super) fn new(
        build: Build,
        priors: &Priors,
        versions: Versions,
    ) -> Result<Self, BuildError> {
        let mut assembly = Self {
            network: Network::new(),
            build,
            parts: Vec::with_capacity(Part::ALL.len()),
            versions,
        };
        for &part in Part::ALL {
            let variable = assembly.add_part(part, priors)?;
            assembly.parts.push(variable);
        }
        assembly.mark_changing();
        Ok(assembly)
    }

    pub(super) fn set_part(&mut self, part: Part, variable: PartVariable) {
        self.parts[part as usize] = Some(variable);
    }

    fn add_part(
        &mut self,
        part: Part,
        priors: &Priors,
    ) -> Result<Option<PartVariable>, BuildError> {
        let build = self.build;
        let faults: Vec<Fault> = part.faults().filter(|one| one.exists_in(build)).collect();
        if faults.is_empty() {
            return Ok(None);
        }
        let names: Vec<String> = std::iter::once("sound".to_owned())
            .chain(faults.iter().map(|fault| word(fault.name())))
            .collect();
        let odds = faults.iter().map(|&fault| priors.odds(build, fault));
        let chances = normalised(&std::iter::once(1.0).chain(odds).collect::<Vec<_>>());
        let names = names.iter().map(String::as_str).collect::<Vec<_>>();
        let variable = self.network.prior(&word(part.name()), &names, &chances)?;
        Ok(Some(PartVariable { variable, faults }))
    }

    /// A part's variable, where there is one.
    pub(super) fn part(&self, part: Part) -> Option<&PartVariable> {
        self.parts[part as usize].as_ref()
    }

    /// All parts that there are.
    pub(super) fn parts(&self) -> impl Iterator<Item = (Part, &PartVariable)> {
        let all = Part::ALL.iter().zip(&self.parts);
        all.filter_map(|(&part, variable)| Some((part, variable.as_ref()?)))
    }

    /// A condition that is as bad as the worst of what each cause makes it. States from best to
    /// worst; rows in percent; the leak is what is not on the list.
    pub(super) fn condition(
        &mut self,
        name: &str,
        states: &[&str],
        leak: &[f64],
        causes: &[Cause<'_>],
    ) -> Result<Variable, BuildError> {
        let mut influences: Vec<(Variable, Vec<Vec<f64>>)> = Vec::new();
        let best = || {
            let mut row = vec![0.0; states.len()];
            row[0] = 1.0;
            row
        };
        for cause in causes {
            match cause {
                Cause::State(variable, rows) => {
                    influences.push((*variable, rows.iter().map(|row| normalised(row)).collect()));
                }
                Cause::Fault(fault, row) => {
                    let Some(part) = self.part(fault.part()) else {
                        continue;
                    };
                    let Some(state) = part.state(*fault) else {
                        continue;
                    };
                    let known = influences.iter_mut().find(|(one, _)| *one == part.variable);
                    match known {
                        Some((_, rows)) => rows[state] = normalised(row),
                        None => {
                            let mut rows = vec![best(); part.faults.len() + 1];
                            rows[state] = normalised(row);
                            influences.push((part.variable, rows));
                        }
                    }
                }
            }
        }
        self.worst(name, states, &normalised(leak), influences)
    }

    /// What is seen, heard or read: a row in percent per joint state of at most three parents,
    /// and slips mixed in. Parents that the machine doesn't have count as sound.
    pub(super) fn finding(
        &mut self,
        name: &str,
        states: &[&str],
        parents: &[Parent],
        row: &dyn Fn(&Given<'_>) -> Vec<f64>,
    ) -> Result<Variable, BuildError> {
        let mut variables = Vec::new();
        let mut faults_of = Vec::new();
        for parent in parents {
            match parent {
                Parent::State(variable) => {
                    variables.push(*variable);
                    faults_of.push(None);
                }
                Parent::Part(part) => {
                    if let Some(known) = self.part(*part) {
                        variables.push(known.variable);
                        faults_of.push(Some(known.faults.clone()));
                    }
                }
            }
        }
        let cards: Vec<usize> = variables
            .iter()
            .map(|&one| self.network.states(one).len())
            .collect();
        let count: usize = cards.iter().product();
        let rows: Vec<Vec<f64>> = (0..count)
            .map(|number| {
                let (mut faults, mut states) = (Vec::new(), Vec::new());
                let at = digits(number, &cards);
                for ((&variable, known), state) in variables.iter().zip(&faults_of).zip(at) {
                    match known {
                        Some(known) => {
                            faults.extend(state.checked_sub(1).map(|fault| known[fault]))
                        }
                        None => states.push((variable, state)),
                    }
                }
                let given = Given {
                    faults: &faults,
                    states: &states,
                };
                with_slips(&row(&given))
            })
            .collect();
        self.add(name, &variables, &|network, name| {
            network.table(name, states, &variables, &rows)
        })
    }
}

/// Percent, or anything that stands in proportion, as chances.
pub(super) fn normalised(row: &[f64]) -> Vec<f64> {
    let sum: f64 = row.iter().sum();
    row.iter().map(|entry| entry / sum).collect()
}

/// Slips mixed into a row.
pub(super) fn with_slips(row: &[f64]) -> Vec<f64> {
    let even = SLIP / row.len() as f64;
    let chances = normalised(row).into_iter();
    chances.map(|chance| chance * (1.0 - SLIP) + even).collect()
}

/// The joint state with this number, the last parent's state changing fastest.
pub(super) fn digits(number: usize, cards: &[usize]) -> Vec<usize> {
    let mut rest = number;
    let mut at: Vec<usize> = cards
        .iter()
        .rev()
        .map(|card| {
            let digit = rest % card;
            rest /= card;
            digit
        })
        .collect();
    at.reverse();
    at
}

/// A published name as a word of the network.
pub(super) fn word(name: &str) -> String {
    name.replace('-', "_")
}
