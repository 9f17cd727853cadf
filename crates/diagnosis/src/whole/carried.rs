//! What is known up to a moment, folded into likelihoods of the parts as they are then.
//!
//! Each part takes along how likely each of its faults is, and all of them together how likely it
//! is that nothing is wrong: so that of several suspects one is mostly enough. What else two parts
//! have to do with each other is lost.

use belief::{Evidence, Posterior, Workspace};

use super::beliefs::{Beliefs, Desk, Expert, evidence_of, ln_nothing};
use super::clue::Task;
use super::compiled::Compiled;
use super::entered::{Entered, Weight};
use super::trouble;

/// Rounds of fitting: by then marginals are met within a hundredth.
const ROUNDS: usize = 16;

/// Factors on a build's network without evidence.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Carried {
    /// Of each part, on each of its states.
    parts: Vec<Vec<f64>>,
    /// On whether anything is at fault.
    trouble: Vec<f64>,
    /// Natural logarithm of what they come to together: no evidence for the build.
    pub(super) ln: f64,
}

impl Carried {
    /// Adds the factors to the evidence of the first period.
    pub(super) fn weigh_on(&self, compiled: &Compiled, evidence: &mut Evidence) -> Option<()> {
        let network = compiled.tree.network();
        let (conditions, _) = compiled.at(0);
        evidence
            .weigh(network, conditions.trouble, &self.trouble)
            .ok()?;
        for (variable, factors) in compiled.first_parts().zip(&self.parts) {
            evidence.weigh(network, variable, factors).ok()?;
        }
        Some(())
    }

    /// Nothing known but that it was offered.
    fn nothing_yet(plain: &Compiled) -> Option<Self> {
        let network = plain.tree.network();
        let offered = |state| Some(network.row(plain.conditions.offered, &[state])?[0]);
        let parts = plain.parts().iter();
        Some(Self {
            parts: parts
                .map(|(_, part)| vec![1.0; part.faults.len() + 1])
                .collect(),
            trouble: (0..trouble::STATES.len())
                .map(offered)
                .collect::<Option<_>>()?,
            ln: 0.0,
        })
    }

    /// Moves the factors towards those with which a network says this of its parts (proportional
    /// fitting; Deming and Stephan 1940, from memory).
    fn fit(&mut self, parts: &[Vec<f64>], found: &Posterior<'_>, plain: &Compiled) {
        let variables = plain.parts().iter().map(|(_, part)| part.variable);
        for ((factors, target), variable) in self.parts.iter_mut().zip(parts).zip(variables) {
            let found = found.marginal(variable);
            for ((factor, target), found) in factors.iter_mut().zip(target).zip(found) {
                if *found > 0.0 {
                    *factor *= target / found;
                }
            }
        }
    }
}

fn odds_of(probability: f64) -> f64 {
    let inside = probability.clamp(1e-9, 1.0 - 1e-9);
    inside / (1.0 - inside)
}

impl Beliefs<'_> {
    /// All that is believed of the machine as it is at the end, folded for plain networks, which
    /// are those without changes, and that hold some of the readings themselves.
    pub(super) fn carried(
        &self,
        odds: [f64; 3],
        plain: &[&Compiled],
        held: &[Entered],
        desk: &mut Desk,
    ) -> Option<Entered> {
        let mut builds = [0.0; 3];
        let mut weights = Vec::new();
        for expert in &self.experts {
            let build = expert.compiled.build;
            let workspace = &mut desk[build.column()];
            let (parts, nothing) = expert.parts_now(workspace)?;
            let plain = plain.iter().find(|one| one.build == build)?;
            let mut carried = Carried::nothing_yet(plain)?;
            for round in 0..=ROUNDS {
                let one = Weight::Carried(build, carried.clone());
                let mut all = vec![Entered::new(Task::History, vec![one])];
                all.extend_from_slice(held);
                let (evidence, factor, _) = evidence_of(plain, &all)?;
                builds[build.column()] = expert.weight / (odds[build.column()] * factor);
                let found = plain.tree.propagate(&evidence, workspace).ok()?;
                carried.ln = found.ln_evidence();
                if round == ROUNDS {
                    break;
                }
                // In turns: both at once would do the same thing twice.
                if round % 2 == 0 {
                    let sound = found.marginal(plain.conditions.trouble)[trouble::NONE];
                    carried.trouble[trouble::NONE] *= odds_of(nothing) / odds_of(sound);
                } else {
                    carried.fit(&parts, &found, plain);
                }
            }
            weights.push(Weight::Carried(build, carried));
        }
        weights.push(Weight::Build(builds));
        Some(Entered::new(Task::History, weights))
    }
}

impl Expert<'_> {
    /// What is believed of each part as it is at the end, and that nothing is at fault.
    fn parts_now(&self, workspace: &mut Workspace) -> Option<(Vec<Vec<f64>>, f64)> {
        let compiled = self.compiled;
        let sound = ln_nothing(compiled, &self.evidence, workspace);
        let posterior = compiled.tree.propagate(&self.evidence, workspace).ok()?;
        let nothing = match sound {
            Some(ln) => libm::exp(ln - posterior.ln_evidence()),
            // Without changes it is a state; with them it was out of the question.
            None if compiled.is_changed() => 0.0,
            None => posterior.marginal(compiled.conditions.trouble)[trouble::NONE],
        };
        let parts = compiled.parts().iter();
        let parts = parts.map(|(_, part)| posterior.marginal(part.variable).to_vec());
        Some((parts.collect(), nothing))
    }
}
