//! The two passes: up to the roots, where the probability of the evidence comes out, and down
//! again, after which every table is a joint marginal.

use super::JunctionTree;
use super::algebra::{Algebra, LnMaxProduct, LnSumProduct, SumProduct};
use super::collected::Collected;
use crate::error::EvidenceError;
use crate::evidence::{Evidence, largest};
use crate::posterior::Posterior;
use std::sync::Arc;

/// Below this, ln 1e-150, plain numbers could lose what later evidence brings back: weights are
/// at most one, so that what underflowed is less than 1e-300 of it or so. Then logarithms are
/// used.
const LEAST_PLAIN: f64 = -345.0;

/// Memory for one propagation after another. What evidence has in common with that of the time
/// before is not worked out again.
#[derive(Debug, Clone)]
pub struct Workspace {
    /// The tree that it is for.
    tree: Arc<()>,
    pub(crate) tables: Vec<f64>,
    pub(crate) separators: Vec<f64>,
    pub(crate) marginals: Vec<f64>,
    pub(crate) ln_evidence: f64,
    /// What came down on a separator over what went up.
    ratios: Vec<f64>,
    /// Natural logarithm of each state's weight, the largest being zero.
    ln_weights: Vec<f64>,
    /// The pass up of the last propagation.
    whole: Collected,
    /// The same of the last time that only the pass up was wanted: who asks for both in turn has
    /// much in common among either.
    half: Collected,
    /// Natural logarithm of what the weights were divided by.
    ln_scale: f64,
}

impl Workspace {
    /// The tables after the pass up of which nothing more was wanted.
    pub(crate) fn collected(&self) -> &[f64] {
        &self.half.tables
    }
}

impl JunctionTree {
    /// Memory of the right size for this tree.
    #[must_use]
    pub fn workspace(&self) -> Workspace {
        let widest = self
            .cliques
            .iter()
            .map(|clique| clique.separator.len())
            .max();
        let states = self.homes.last().map_or(0, |home| home.marginal.end);
        Workspace {
            tree: Arc::clone(&self.identity),
            tables: vec![0.0; self.potentials.len()],
            separators: vec![0.0; self.separator_entries],
            marginals: vec![0.0; states],
            ln_evidence: 0.0,
            ratios: vec![0.0; widest.unwrap_or(0)],
            ln_weights: vec![0.0; states],
            whole: Collected::default(),
            half: Collected::default(),
            ln_scale: 0.0,
        }
    }

    /// Weighs evidence and computes every marginal.
    ///
    /// # Errors
    /// When the evidence is about variables that the network doesn't have, or can't be true.
    pub fn propagate<'a>(
        &'a self,
        evidence: &'a Evidence,
        workspace: &'a mut Workspace,
    ) -> Result<Posterior<'a>, EvidenceError> {
        if !self.enter(evidence, workspace)? {
            return Err(self.impossible(evidence, workspace));
        }
        let plain = self.collect::<SumProduct>(&workspace.ln_weights, &mut workspace.whole);
        let ln = if plain >= LEAST_PLAIN {
            self.distribute::<SumProduct>(workspace);
            plain
        } else {
            let ln = self.collect::<LnSumProduct>(&workspace.ln_weights, &mut workspace.whole);
            if ln.is_infinite() {
                return Err(self.impossible(evidence, workspace));
            }
            self.distribute::<LnSumProduct>(workspace);
            let numbers = workspace.tables.iter_mut().chain(&mut workspace.separators);
            numbers.for_each(|number| *number = libm::exp(*number));
            ln
        };
        workspace.ln_evidence = ln + workspace.ln_scale;
        self.marginalise(workspace);
        Ok(Posterior::new(self, workspace, evidence))
    }

    /// Natural logarithm of the probability of the evidence, minus infinity when it can't be
    /// true. Takes half as long as [`JunctionTree::propagate`].
    ///
    /// # Errors
    /// When the evidence is about variables that the network doesn't have.
    pub fn ln_probability(
        &self,
        evidence: &Evidence,
        workspace: &mut Workspace,
    ) -> Result<f64, EvidenceError> {
        if !self.enter(evidence, workspace)? {
            return Ok(f64::NEG_INFINITY);
        }
        let Workspace {
            ln_weights, half, ..
        } = &mut *workspace;
        let mut ln = self.collect::<SumProduct>(ln_weights, half);
        if ln < LEAST_PLAIN {
            ln = self.collect::<LnSumProduct>(ln_weights, half);
        }
        Ok(ln + workspace.ln_scale)
    }

    /// The pass up with the largest products in place of sums; natural logarithm of the largest.
    pub(crate) fn collect_largest(
        &self,
        evidence: &Evidence,
        workspace: &mut Workspace,
    ) -> Result<f64, EvidenceError> {
        let possible = self.enter(evidence, workspace)?;
        let ln = self.collect::<LnMaxProduct>(&workspace.ln_weights, &mut workspace.half);
        if !possible || ln.is_infinite() {
            return Err(self.impossible(evidence, workspace));
        }
        Ok(ln + workspace.ln_scale)
    }

    /// Multiplies the findings about each variable, in logarithms. Returns whether each has a
    /// state left.
    fn enter(&self, evidence: &Evidence, workspace: &mut Workspace) -> Result<bool, EvidenceError> {
        if !Arc::ptr_eq(&workspace.tree, &self.identity) {
            // A workspace of another tree: take one that fits.
            *workspace = self.workspace();
        }
        workspace.ln_weights.fill(0.0);
        workspace.ln_scale = 0.0;
        for finding in evidence.findings() {
            let variable = finding.variable().index();
            let home = self
                .homes
                .get(variable)
                .ok_or(EvidenceError::UnknownVariable)?;
            let weights = &mut workspace.ln_weights[home.marginal.clone()];
            if weights.len() != finding.ln_weights().len() {
                return Err(EvidenceError::Shape {
                    variable: self.network.name(finding.variable()).to_owned(),
                    expected: weights.len(),
                    found: finding.ln_weights().len(),
                });
            }
            for (sum, ln) in weights.iter_mut().zip(finding.ln_weights()) {
                *sum += ln;
            }
        }
        for home in &self.homes {
            let weights = &mut workspace.ln_weights[home.marginal.clone()];
            let largest = largest(weights);
            if largest.is_infinite() {
                return Ok(false);
            }
            weights.iter_mut().for_each(|weight| *weight -= largest);
            workspace.ln_scale += largest;
        }
        Ok(true)
    }

    /// Passes everything down, after which every table is a joint marginal.
    fn distribute<A: Algebra>(&self, workspace: &mut Workspace) {
        for clique in &self.cliques {
            let collected = &workspace.whole.tables[clique.table.clone()];
            let (before, rest) = workspace.tables.split_at_mut(clique.table.start);
            let table = &mut rest[..clique.table.len()];
            let (Some(parent), Some(projection)) = (clique.parent(), &clique.from_parent) else {
                table.copy_from_slice(collected);
                A::normalise(table);
                continue;
            };
            let separator = &mut workspace.separators[clique.separator.clone()];
            separator.fill(A::ZERO);
            projection.gather::<A>(&before[self.cliques[parent].table.clone()], separator);
            let ratios = &mut workspace.ratios[..clique.separator.len()];
            let messages = &workspace.whole.messages[clique.separator.clone()];
            for ((ratio, &new), &old) in ratios.iter_mut().zip(&*separator).zip(messages) {
                *ratio = A::ratio(new, old);
            }
            let rows = table.chunks_exact_mut(ratios.len());
            for (row, collected) in rows.zip(collected.chunks_exact(ratios.len())) {
                for ((entry, &collected), &ratio) in row.iter_mut().zip(collected).zip(&*ratios) {
                    *entry = A::multiply(collected, ratio);
                }
            }
        }
    }

    fn marginalise(&self, workspace: &mut Workspace) {
        for home in &self.homes {
            let (source, stride) = match home.separator {
                Some((clique, stride)) => {
                    let range = self.cliques[clique].separator.clone();
                    (&workspace.separators[range], stride)
                }
                None => {
                    let range = self.cliques[home.clique].table.clone();
                    (&workspace.tables[range], home.stride)
                }
            };
            let marginal = &mut workspace.marginals[home.marginal.clone()];
            marginal.fill(0.0);
            for block in source.chunks_exact(stride * marginal.len()) {
                for (sum, part) in marginal.iter_mut().zip(block.chunks_exact(stride)) {
                    *sum += part.iter().sum::<f64>();
                }
            }
            let sum: f64 = marginal.iter().sum();
            marginal.iter_mut().for_each(|chance| *chance /= sum);
        }
    }

    /// Names findings that can't all be true, of which none can be spared.
    fn impossible(&self, evidence: &Evidence, workspace: &mut Workspace) -> EvidenceError {
        let mut clash = evidence.clone();
        for place in (0..evidence.len()).rev() {
            let without = clash.without(place);
            // The same evidence was taken as a whole, so that a part of it is not refused.
            let ln = self.ln_probability(&without, workspace);
            if ln.is_ok_and(f64::is_infinite) {
                clash = without;
            }
        }
        let mut together: Vec<String> = Vec::new();
        for finding in clash.findings() {
            let name = self.network.name(finding.variable());
            if together.last().is_none_or(|last| last != name) {
                together.push(name.to_owned());
            }
        }
        EvidenceError::Impossible { together }
    }
}
