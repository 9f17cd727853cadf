//! The pass up, kept: what did not change since the last time is not worked out again.
//!
//! A clique's table depends on nothing but the weights that were entered below it. A new reading
//! changes the way from one clique to its root, and so does a fault that is held fixed instead of
//! another. Whether a table is kept or worked out again, its bits are the same.

use super::algebra::Algebra;
use super::{Clique, JunctionTree};
use std::any::TypeId;

/// Tables after the pass up, and what they were made from.
#[derive(Debug, Clone, Default)]
pub(super) struct Collected {
    /// Each clique's potential times its weights and its children's messages.
    pub(super) tables: Vec<f64>,
    /// What each clique says to its parent.
    pub(super) messages: Vec<f64>,
    /// Natural logarithm of what each message was divided by.
    ln_norms: Vec<f64>,
    /// The weights that went in.
    ln_weights: Vec<f64>,
    /// The arithmetic that was used; none where the tables can't be built upon.
    algebra: Option<TypeId>,
    /// The weights of one variable as the arithmetic has them; kept for its memory.
    factors: Vec<f64>,
    /// Per clique whether it has to be worked out; kept for its memory.
    stale: Vec<bool>,
}

impl JunctionTree {
    /// Passes everything up. Returns the logarithm of the sum of all products.
    pub(super) fn collect<A: Algebra + 'static>(
        &self,
        ln_weights: &[f64],
        collected: &mut Collected,
    ) -> f64 {
        self.find_stale::<A>(ln_weights, collected);
        for (place, clique) in self.cliques.iter().enumerate().rev() {
            if !collected.stale[place] {
                continue;
            }
            self.multiply::<A>(clique, collected);
            let table = &collected.tables[clique.table.clone()];
            let message = &mut collected.messages[clique.separator.clone()];
            message.fill(A::ZERO);
            // What is shared stands last in the table, so that its rows are added up.
            for row in table.chunks_exact(message.len()) {
                for (sum, &entry) in message.iter_mut().zip(row) {
                    *sum = A::add(*sum, entry);
                }
            }
            let norm = A::normalise(message);
            if norm.is_infinite() {
                collected.algebra = None;
                return f64::NEG_INFINITY;
            }
            collected.ln_norms[place] = norm;
            if let Some(parent) = clique.parent() {
                collected.stale[parent] = true;
            }
        }
        collected
            .ln_norms
            .iter()
            .rev()
            .fold(0.0, |ln, norm| ln + norm)
    }

    /// Finds the cliques whose own weights have changed, and takes the new weights over.
    fn find_stale<A: Algebra + 'static>(&self, ln_weights: &[f64], collected: &mut Collected) {
        let algebra = Some(TypeId::of::<A>());
        let kept = collected.algebra == algebra;
        collected.stale.clear();
        collected.stale.resize(self.cliques.len(), !kept);
        if kept {
            for home in &self.homes {
                let new = ln_weights[home.marginal.clone()].iter();
                let mut pairs = new.zip(&collected.ln_weights[home.marginal.clone()]);
                if pairs.any(|(new, old)| new.to_bits() != old.to_bits()) {
                    collected.stale[home.clique] = true;
                }
            }
        } else if collected.tables.is_empty() {
            collected.tables = vec![0.0; self.potentials.len()];
            collected.messages = vec![0.0; self.separator_entries];
            collected.ln_norms = vec![0.0; self.cliques.len()];
            collected.ln_weights = vec![0.0; ln_weights.len()];
        }
        collected.ln_weights.copy_from_slice(ln_weights);
        collected.algebra = algebra;
    }

    /// Makes a clique's table from its potential, its weights and its children's messages.
    fn multiply<A: Algebra>(&self, clique: &Clique, collected: &mut Collected) {
        let table = &mut collected.tables[clique.table.clone()];
        let potentials = &self.potentials[clique.table.clone()];
        for (entry, &potential) in table.iter_mut().zip(potentials) {
            *entry = A::from_plain(potential);
        }
        for &variable in &clique.guests {
            let home = &self.homes[variable];
            let weights = &collected.ln_weights[home.marginal.clone()];
            // Nothing was found of it, or what was found tells its states not apart.
            if weights.iter().all(|&ln| ln.to_bits() == 0) {
                continue;
            }
            collected.factors.clear();
            collected
                .factors
                .extend(weights.iter().map(|&ln| A::from_ln(ln)));
            for block in table.chunks_exact_mut(home.stride * weights.len()) {
                let chunks = block.chunks_exact_mut(home.stride);
                for (chunk, &factor) in chunks.zip(&collected.factors) {
                    chunk
                        .iter_mut()
                        .for_each(|entry| *entry = A::multiply(*entry, factor));
                }
            }
        }
        for &child in &clique.children {
            let child = &self.cliques[child];
            if let Some(projection) = &child.from_parent {
                projection.spread::<A>(&collected.messages[child.separator.clone()], table);
            }
        }
    }
}
