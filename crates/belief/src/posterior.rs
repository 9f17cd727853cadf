//! What is believed once the evidence is weighed.

use crate::error::QueryError;
use crate::evidence::{Evidence, largest};
use crate::joint::{self, Joint};
use crate::network::Variable;
use crate::tree::{JunctionTree, Workspace};

/// The beliefs after a propagation. There is one only when the evidence can be true.
#[derive(Debug, Clone, Copy)]
pub struct Posterior<'a> {
    tree: &'a JunctionTree,
    beliefs: &'a Workspace,
    evidence: &'a Evidence,
}

impl<'a> Posterior<'a> {
    pub(crate) fn new(
        tree: &'a JunctionTree,
        beliefs: &'a Workspace,
        evidence: &'a Evidence,
    ) -> Self {
        Self {
            tree,
            beliefs,
            evidence,
        }
    }

    /// The tree that was asked.
    #[must_use]
    pub fn tree(&self) -> &'a JunctionTree {
        self.tree
    }

    /// The evidence that was weighed.
    #[must_use]
    pub fn evidence(&self) -> &'a Evidence {
        self.evidence
    }

    /// How likely each state of a variable is; empty for a variable of another network.
    #[must_use]
    pub fn marginal(&self, variable: Variable) -> &'a [f64] {
        let range = self.tree.marginal_range(variable);
        range.map_or(&[], |range| &self.beliefs.marginals[range])
    }

    /// Natural logarithm of the probability of the evidence, weights taken as they were given.
    #[must_use]
    pub fn ln_evidence(&self) -> f64 {
        self.beliefs.ln_evidence
    }

    /// The probability of the evidence. Zero where it is below the smallest number; the
    /// logarithm is not.
    #[must_use]
    pub fn probability_of_evidence(&self) -> f64 {
        libm::exp(self.ln_evidence())
    }

    /// How likely the joint states of a few variables are.
    ///
    /// # Errors
    /// When a variable is unknown or named twice, or a table on the way would be too large.
    pub fn joint(&self, variables: &[Variable]) -> Result<Joint, QueryError> {
        joint::joint(self.tree, self.beliefs, variables)
    }

    /// Jensen's conflict measure: the natural logarithm of the product of each finding's
    /// probability by itself over the probability of all of them. Above zero, the findings fit
    /// each other worse than if they had nothing to do with each other: an error in one of them,
    /// a rare case, or something that the model doesn't know. (Jensen, Chamberlain, Nordahl and
    /// Jensen, "Analysis in HUGIN of data conflict", 1990; from memory.)
    ///
    /// ```
    /// # use belief::{Evidence, JunctionTree, Network};
    /// # let mut network = Network::new();
    /// # let fault = network.prior("fault", &["no", "yes"], &[0.9, 0.1])?;
    /// # let rows = [[0.99, 0.01], [0.01, 0.99]];
    /// # let one = network.table("one", &["no", "yes"], &[fault], &rows)?;
    /// # let other = network.table("other", &["no", "yes"], &[fault], &rows)?;
    /// # let tree = JunctionTree::compile(network)?;
    /// # let mut workspace = tree.workspace();
    /// let mut agreeing = Evidence::new();
    /// agreeing.observe(tree.network(), one, 1)?;
    /// agreeing.observe(tree.network(), other, 1)?;
    /// assert!(tree.propagate(&agreeing, &mut workspace)?.conflict() < 0.0);
    ///
    /// let mut contradicting = Evidence::new();
    /// contradicting.observe(tree.network(), one, 1)?;
    /// contradicting.observe(tree.network(), other, 0)?;
    /// assert!(tree.propagate(&contradicting, &mut workspace)?.conflict() > 0.0);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn conflict(&self) -> f64 {
        let alone = self.evidence.findings().iter().map(|finding| {
            let prior = self.tree.prior(finding.variable());
            let top = largest(finding.ln_weights());
            let weighed = prior.iter().zip(finding.ln_weights());
            let sum: f64 = weighed
                .map(|(chance, ln)| chance * libm::exp(ln - top))
                .sum();
            libm::log(sum) + top
        });
        alone.sum::<f64>() - self.ln_evidence()
    }
}
