//! The network of one build, compiled once for all questions.

use belief::{BuildError, Evidence, JunctionTree, Network, Variable};

use super::assembly::{Assembly, PartVariable};
use super::build::Build;
use super::clue::Clue;
use super::clues::Clues;
use super::conditions::Conditions;
use super::fault::{Fault, Part};
use super::priors::Priors;
use super::versions::{Found, Plan, Versions};

/// Tables of a network with changes have at most this many entries: ten times those of one
/// without. What would need more is folded into likelihoods, the oldest first.
pub(super) const MOST_ENTRIES: usize = 750_000;

/// The network of one build.
#[derive(Debug)]
pub(super) struct Compiled {
    pub(super) build: Build,
    pub(super) tree: JunctionTree,
    pub(super) conditions: Conditions,
    pub(super) clues: Clues,
    parts: Vec<(Part, PartVariable)>,
    /// As it was in each period before the last change.
    past: Vec<Period>,
    /// Natural logarithm of the probability that such a machine is offered as faulty.
    pub(super) ln_offered: f64,
}

/// The machine as it was in one period.
#[derive(Debug)]
pub(super) struct Period {
    pub(super) conditions: Conditions,
    pub(super) clues: Clues,
    parts: Vec<(Part, PartVariable)>,
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
    /// The network of a build: of one machine all along, or as it was changed on the way.
    pub(super) fn new(build: Build, priors: &Priors, plan: &Plan) -> Result<Self, NotCompiled> {
        let mut assembled = Assembled::new(build, priors, Versions::new(plan, None))?;
        if !plan.steps.is_empty() {
            // Once more, without what nobody asks about.
            let versions = Versions::new(plan, Some(assembled.needed));
            assembled = Assembled::new(build, priors, versions)?;
        }
        let tree = if plan.steps.is_empty() {
            JunctionTree::compile(assembled.network)?
        } else {
            JunctionTree::compile_within(assembled.network, MOST_ENTRIES)?
        };
        let Period {
            conditions,
            clues,
            parts,
        } = assembled.now;
        let mut compiled = Self {
            build,
            tree,
            conditions,
            clues,
            parts,
            past: assembled.past,
            ln_offered: 0.0,
        };
        if plan.carried {
            return Ok(compiled);
        }
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

    /// What it hung on in a period: conditions and clues.
    pub(super) fn at(&self, period: usize) -> (&Conditions, &Clues) {
        match self.past.get(period) {
            Some(past) => (&past.conditions, &past.clues),
            None => (&self.conditions, &self.clues),
        }
    }

    /// Whether it spans changes, and so holds nothing that nobody asked about.
    pub(super) fn is_changed(&self) -> bool {
        !self.past.is_empty()
    }

    /// How many changes it spans.
    pub(super) fn changes(&self) -> usize {
        self.past.len()
    }

    /// Whether what is seen of a clue follows from a part, in a network without changes.
    pub(super) fn hangs_on(&self, clue: Clue, part: Part) -> bool {
        let network = self.tree.network();
        let part = self.part(part).map(|part| part.variable);
        let mut open: Vec<Variable> = self.clues.variable(clue).into_iter().collect();
        let mut seen = vec![false; network.len()];
        while let Some(variable) = open.pop() {
            if !std::mem::replace(&mut seen[variable.index()], true) {
                open.extend(network.parents(variable));
            }
        }
        part.is_some_and(|part| seen[part.index()])
    }

    /// The variables of its parts as it was met.
    pub(super) fn first_parts(&self) -> impl Iterator<Item = Variable> {
        let first = self.past.first().map_or(&self.parts, |past| &past.parts);
        first.iter().map(|(_, part)| part.variable)
    }

    /// Every part that this build has, as it is now.
    pub(super) fn parts(&self) -> &[(Part, PartVariable)] {
        &self.parts
    }

    pub(super) fn part(&self, part: Part) -> Option<&PartVariable> {
        found(&self.parts, part)
    }

    /// Where a fault stands now: its part's variable and the state.
    pub(super) fn fault(&self, fault: Fault) -> Option<(Variable, usize)> {
        self.fault_at(fault, self.past.len())
    }

    /// Where it stood in a period.
    pub(super) fn fault_at(&self, fault: Fault, period: usize) -> Option<(Variable, usize)> {
        let parts = self
            .past
            .get(period)
            .map_or(&self.parts, |past| &past.parts);
        let part = found(parts, fault.part())?;
        Some((part.variable, part.state(fault)?))
    }
}

fn found(parts: &[(Part, PartVariable)], part: Part) -> Option<&PartVariable> {
    let found = parts.iter().find(|(one, _)| *one == part);
    found.map(|(_, variable)| variable)
}

/// Every period's variables in one network.
struct Assembled {
    network: Network,
    past: Vec<Period>,
    now: Period,
    needed: Vec<String>,
}

impl Assembled {
    fn new(build: Build, priors: &Priors, versions: Versions) -> Result<Self, BuildError> {
        let steps = versions.plan.steps.len();
        let mut assembly = Assembly::new(build, priors, versions)?;
        let mut past = Vec::new();
        let mut now = Period::of(&mut assembly, priors)?;
        for _ in 0..steps {
            assembly.change()?;
            let next = Period::of(&mut assembly, priors)?;
            past.push(std::mem::replace(&mut now, next));
        }
        Ok(Self {
            needed: assembly.versions.needed(&assembly.network),
            network: assembly.network,
            past,
            now,
        })
    }
}

impl Period {
    fn of(assembly: &mut Assembly, priors: &Priors) -> Result<Self, BuildError> {
        let conditions = Conditions::of(assembly, priors)?;
        for (found, variable) in [
            (Found::Motor, conditions.motor),
            (Found::Trouble, conditions.trouble),
        ] {
            if assembly.versions.is_found(found) {
                assembly.keep(variable);
            }
        }
        let clues = Clues::of(assembly, &conditions)?;
        let parts = assembly.parts();
        Ok(Self {
            conditions,
            clues,
            parts: parts.map(|(part, one)| (part, one.clone())).collect(),
        })
    }
}

#[cfg(test)]
mod tests {
    use super::super::trouble;
    use super::*;
    use crate::Choice;

    fn compiled(build: Build) -> Compiled {
        Compiled::new(build, &Priors::default(), &Plan::default()).unwrap()
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
