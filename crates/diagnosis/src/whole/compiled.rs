//! The network of one build, compiled once for all questions.

use belief::{BuildError, Evidence, JunctionTree, Variable};

use super::assembly::{Assembly, PartVariable};
use super::build::Build;
use super::clues::Clues;
use super::conditions::Conditions;
use super::fault::{Fault, Part};
use super::priors::Priors;

/// The network of one build.
#[derive(Debug)]
pub(super) struct Compiled {
    pub(super) build: Build,
    pub(super) tree: JunctionTree,
    pub(super) conditions: Conditions,
    pub(super) clues: Clues,
    parts: Vec<(Part, PartVariable)>,
    /// Natural logarithm of the probability that such a machine is offered as faulty.
    pub(super) ln_offered: f64,
}

/// A network can't be had: the stated tables are tested, and edited priors can't break them.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct NotCompiled;

impl From<BuildError> for NotCompiled {
    fn from(_: BuildError) -> Self {
        Self
    }
}

impl From<belief::QueryError> for NotCompiled {
    fn from(_: belief::QueryError) -> Self {
        Self
    }
}

impl From<belief::EvidenceError> for NotCompiled {
    fn from(_: belief::EvidenceError) -> Self {
        Self
    }
}

impl Compiled {
    pub(super) fn new(build: Build, priors: &Priors) -> Result<Self, NotCompiled> {
        let mut assembly = Assembly::new(build, priors)?;
        let conditions = Conditions::of(&mut assembly, priors)?;
        let clues = Clues::of(&mut assembly, &conditions)?;
        let parts = assembly
            .parts()
            .map(|(part, variable)| (part, variable.clone()))
            .collect();
        let tree = JunctionTree::compile(assembly.network)?;
        let mut compiled = Self {
            build,
            tree,
            conditions,
            clues,
            parts,
            ln_offered: 0.0,
        };
        let offered = compiled.offered()?;
        let mut workspace = compiled.tree.workspace();
        compiled.ln_offered = compiled.tree.ln_probability(&offered, &mut workspace)?;
        Ok(compiled)
    }

    /// What is always known: it is offered as not getting cold.
    pub(super) fn offered(&self) -> Result<Evidence, belief::EvidenceError> {
        let mut evidence = Evidence::new();
        evidence.observe(self.tree.network(), self.conditions.offered, 0)?;
        Ok(evidence)
    }

    /// Every part that this build has.
    pub(super) fn parts(&self) -> &[(Part, PartVariable)] {
        &self.parts
    }

    pub(super) fn part(&self, part: Part) -> Option<&PartVariable> {
        let found = self.parts.iter().find(|(one, _)| *one == part);
        found.map(|(_, variable)| variable)
    }

    /// Where a fault stands: its part's variable and the state.
    pub(super) fn fault(&self, fault: Fault) -> Option<(Variable, usize)> {
        let part = self.part(fault.part())?;
        Some((part.variable, part.state(fault)?))
    }
}

#[cfg(test)]
mod tests {
    use super::super::trouble;
    use super::*;
    use crate::Choice;

    fn compiled(build: Build) -> Compiled {
        Compiled::new(build, &Priors::default()).unwrap()
    }

    #[test]
    fn every_build_compiles_to_a_small_tree() {
        for &build in Build::ALL {
            let sizes = compiled(build).tree.sizes();
            println!(
                "{build:?}: {} entries in all, largest cliques {:?}",
                sizes.total,
                &sizes.cliques[..4]
            );
            assert!(sizes.total <= 200_000);
        }
    }

    /// Given the offer and at most one fault, the shares are those of the table. One fault alone
    /// is weighed with all other parts sound.
    #[test]
    fn single_faults_stand_to_each_other_as_the_table_says() {
        for &build in Build::ALL {
            let one = compiled(build);
            let mut workspace = one.tree.workspace();
            let mut weight = |fault: Option<Fault>| {
                let mut evidence = one.offered().unwrap();
                for (part, variable) in one.parts() {
                    let there = fault.filter(|fault| fault.part() == *part);
                    let state = there.and_then(|fault| variable.state(fault)).unwrap_or(0);
                    evidence
                        .observe(one.tree.network(), variable.variable, state)
                        .unwrap();
                }
                let ln = one.tree.ln_probability(&evidence, &mut workspace).unwrap();
                libm::exp(ln - one.ln_offered)
            };
            let there = Fault::ALL
                .iter()
                .copied()
                .filter(|one| one.exists_in(build));
            let causes: Vec<_> = there.map(Some).chain([None]).collect();
            let weights: Vec<f64> = causes.iter().map(|cause| weight(*cause)).collect();
            let held: f64 = weights.iter().sum();
            for (cause, weight) in causes.iter().zip(&weights) {
                let share = Priors::default().share(build, *cause);
                assert!((weight / held - share).abs() < 1e-9, "{build:?} {cause:?}");
            }
            println!(
                "{build:?}: {:.1} in 100 have two faults or more",
                100.0 * (1.0 - held)
            );
            assert!((0.12..=0.18).contains(&(1.0 - held)), "{held}");
        }
    }

    #[test]
    fn nothing_wrong_is_as_common_as_stated_but_for_machines_with_two_faults() {
        for &build in Build::ALL {
            let one = compiled(build);
            let mut workspace = one.tree.workspace();
            let offered = one.offered().unwrap();
            let posterior = one.tree.propagate(&offered, &mut workspace).unwrap();
            let nothing = posterior.marginal(one.conditions.trouble)[trouble::NONE];
            let share = Priors::default().share(build, None);
            assert!(nothing < share && nothing > 0.8 * share);
        }
    }

    /// With its parents held, a clue has nothing left to say of anything else.
    #[test]
    fn a_clue_says_nothing_beyond_what_it_is_read_from() {
        for &build in Build::ALL {
            let one = compiled(build);
            let network = one.tree.network();
            let mut workspace = one.tree.workspace();
            for (clue, variable) in one.clues.all() {
                let mut held = one.offered().unwrap();
                for &parent in network.parents(variable) {
                    held.observe(network, parent, 0).unwrap();
                }
                let mut marginals = |evidence: &Evidence| -> Vec<f64> {
                    let posterior = one.tree.propagate(evidence, &mut workspace).unwrap();
                    let parts = one.parts().iter();
                    parts
                        .flat_map(|(_, part)| posterior.marginal(part.variable).to_vec())
                        .collect()
                };
                let before = marginals(&held);
                let last = network.states(variable).len() - 1;
                held.observe(network, variable, last).unwrap();
                for (one, other) in before.iter().zip(marginals(&held)) {
                    assert!((one - other).abs() < 1e-12, "{build:?} {clue:?}");
                }
            }
        }
    }

    /// Every table as a technician can read it, in percent: run with `--nocapture`.
    #[test]
    fn no_answer_is_impossible_and_every_row_is_whole() {
        for &build in Build::ALL {
            let one = compiled(build);
            let network = one.tree.network();
            for (clue, variable) in one.clues.all() {
                let parents = network.parents(variable);
                println!("{build:?} {}: {}", clue.name(), clue.answers().join(" / "));
                let cards: Vec<usize> = parents
                    .iter()
                    .map(|one| network.states(*one).len())
                    .collect();
                for number in 0..cards.iter().product() {
                    let at = super::super::assembly::digits(number, &cards);
                    let row = network.row(variable, &at).unwrap();
                    let given = parents.iter().zip(&at).map(|(parent, state)| {
                        format!(
                            "{} {}",
                            network.name(*parent),
                            network.states(*parent)[*state]
                        )
                    });
                    println!(
                        "  {}: {:.1?}",
                        given.collect::<Vec<_>>().join(", "),
                        percent(&row)
                    );
                    assert!((row.iter().sum::<f64>() - 1.0).abs() < 1e-12);
                    assert!(row.iter().all(|chance| *chance > 0.001), "{clue:?} {row:?}");
                }
            }
        }
    }

    fn percent(row: &[f64]) -> Vec<f64> {
        row.iter().map(|chance| 100.0 * chance).collect()
    }
}
