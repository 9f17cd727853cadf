//! The single most probable state of everything.

use crate::error::{EvidenceError, ExplanationError};
use crate::evidence::Evidence;
use crate::network::{Network, Steps, Variable, check_whole};
use crate::tree::{Clique, JunctionTree, Workspace};

/// One state per variable that together, with the evidence, are at least as probable as any
/// others.
#[derive(Debug, Clone, PartialEq)]
pub struct Explanation {
    states: Vec<usize>,
    ln_probability: f64,
}

impl Explanation {
    /// The number of a variable's state; none for a variable of another network.
    #[must_use]
    pub fn state(&self, variable: Variable) -> Option<usize> {
        self.states.get(variable.index()).copied()
    }

    /// Natural logarithm of the probability of these states and the evidence together.
    #[must_use]
    pub fn ln_probability(&self) -> f64 {
        self.ln_probability
    }

    /// Each variable's name with the name of its state.
    pub fn named<'n>(
        &'n self,
        network: &'n Network,
    ) -> impl Iterator<Item = (&'n str, &'n str)> + use<'n> {
        network
            .nodes()
            .iter()
            .zip(&self.states)
            .filter_map(|(node, &state)| {
                let state = node.states.get(state)?;
                Some((node.name.as_str(), state.as_str()))
            })
    }
}

impl JunctionTree {
    /// Finds the most probable explanation. Between equals, what comes first in a clique's table
    /// is taken, so that the answer is always the same one.
    ///
    /// ```
    /// use belief::{Evidence, JunctionTree, Network};
    ///
    /// let mut network = Network::new();
    /// let fan = network.prior("fan", &["sound", "stuck"], &[0.9, 0.1])?;
    /// let noise = network.table("noise", &["no", "yes"], &[fan], &[[0.98, 0.02], [0.15, 0.85]])?;
    /// let tree = JunctionTree::compile(network)?;
    /// let mut evidence = Evidence::new();
    /// evidence.observe(tree.network(), noise, 1)?;
    ///
    /// let mut workspace = tree.workspace();
    /// let best = tree.most_probable_explanation(&evidence, &mut workspace)?;
    /// let named: Vec<_> = best.named(tree.network()).collect();
    /// assert_eq!(named, [("fan", "stuck"), ("noise", "yes")]);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    ///
    /// A noisy node with more than three causes is split into steps for sums, but can't be for
    /// this: such a network is compiled once more, each time.
    ///
    /// # Errors
    /// When the evidence is about variables that the network doesn't have, or can't be true; or
    /// when the tables without steps would be too large.
    pub fn most_probable_explanation(
        &self,
        evidence: &Evidence,
        workspace: &mut Workspace,
    ) -> Result<Explanation, ExplanationError> {
        if self.any_step_by_chance {
            check_whole(self.network()).map_err(ExplanationError::Size)?;
            let whole = Self::compile_with(self.network().clone(), Steps::WhereCertain)
                .map_err(ExplanationError::Size)?;
            return Ok(whole.explain(evidence, &mut whole.workspace())?);
        }
        Ok(self.explain(evidence, workspace)?)
    }

    fn explain(
        &self,
        evidence: &Evidence,
        workspace: &mut Workspace,
    ) -> Result<Explanation, EvidenceError> {
        let ln_probability = self.collect_largest(evidence, workspace)?;
        let mut states = vec![0; self.cards().len()];
        // Parents come first, so that what a clique shares is settled when its turn comes.
        for clique in self.cliques() {
            let place = self.best_place(clique, &states, workspace);
            let mut rest = place;
            for &variable in clique.variables().iter().rev() {
                states[variable] = rest % self.cards()[variable];
                rest /= self.cards()[variable];
            }
        }
        states.truncate(self.network().len());
        Ok(Explanation {
            states,
            ln_probability,
        })
    }

    /// The largest entry of a clique's table among those that agree with what is settled.
    fn best_place(&self, clique: &Clique, states: &[usize], workspace: &Workspace) -> usize {
        let table = &workspace.collected()[clique.table()];
        let shared = clique.separator_variables().iter();
        let begin = shared.fold(0, |at, &variable| {
            at * self.cards()[variable] + states[variable]
        });
        let mut best = begin;
        for place in (begin..table.len()).step_by(clique.separator().len()) {
            if table[place] > table[best] {
                best = place;
            }
        }
        best
    }
}
