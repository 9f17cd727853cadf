//! What was found: states that were seen, and weights over states where a finding only makes
//! some likelier than others.

use crate::error::EvidenceError;
use crate::network::{Network, Variable};

/// Findings about a network's variables.
///
/// Several findings about one variable are taken as independent of each other given its state.
/// They are kept in an order of their own, so that the order in which they come changes nothing,
/// not even the last bit of a result.
///
/// ```
/// use belief::{Evidence, Network};
///
/// let mut network = Network::new();
/// let door = network.prior("door", &["shut", "ajar"], &[0.9, 0.1])?;
/// let lamp = network.table("lamp", &["off", "on"], &[door], &[[0.99, 0.01], [0.02, 0.98]])?;
///
/// let mut evidence = Evidence::new();
/// evidence.observe(&network, lamp, 1)?;
/// // A glance in bad light: three times as likely if the door stands ajar.
/// evidence.weigh(&network, door, &[1.0, 3.0])?;
/// assert_eq!(evidence.len(), 2);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Evidence {
    findings: Vec<Finding>,
}

/// One finding.
#[derive(Debug, Clone, PartialEq)]
pub struct Finding {
    variable: Variable,
    /// Natural logarithm of the likelihood of each state, up to a common summand; minus infinity
    /// where the state is ruled out.
    ln_weights: Vec<f64>,
}

impl Finding {
    /// What it is about.
    #[must_use]
    pub fn variable(&self) -> Variable {
        self.variable
    }

    /// Natural logarithm of the likelihood of each state; minus infinity where the finding rules
    /// the state out.
    #[must_use]
    pub fn ln_weights(&self) -> &[f64] {
        &self.ln_weights
    }

    /// The state that was seen, when the finding leaves one only.
    #[must_use]
    pub fn only_state(&self) -> Option<usize> {
        let mut left =
            (0..self.ln_weights.len()).filter(|&s| self.ln_weights[s] > f64::NEG_INFINITY);
        let only = left.next();
        only.filter(|_| left.next().is_none())
    }
}

impl Evidence {
    /// Nothing found yet.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// Adds that a variable was seen to be in a state.
    ///
    /// # Errors
    /// When the network has no such variable or the variable no such state.
    pub fn observe(
        &mut self,
        network: &Network,
        variable: Variable,
        state: usize,
    ) -> Result<(), EvidenceError> {
        let node = network
            .node(variable)
            .ok_or(EvidenceError::UnknownVariable)?;
        let mut ln_weights = vec![f64::NEG_INFINITY; node.states.len()];
        let Some(entry) = ln_weights.get_mut(state) else {
            return Err(EvidenceError::UnknownState {
                variable: node.name.clone(),
                state,
            });
        };
        *entry = 0.0;
        self.insert(Finding {
            variable,
            ln_weights,
        });
        Ok(())
    }

    /// Adds how likely the finding is under each state of the variable. Only the ratios matter
    /// for marginals; the probability of the evidence takes the weights as they are.
    ///
    /// # Errors
    /// When the network has no such variable, there isn't one weight per state, a weight is
    /// negative or not finite, or all are zero.
    pub fn weigh(
        &mut self,
        network: &Network,
        variable: Variable,
        weights: &[f64],
    ) -> Result<(), EvidenceError> {
        let refused = weights
            .iter()
            .any(|&weight| !weight.is_finite() || weight < 0.0);
        let logarithms: Vec<_> = weights.iter().map(|&weight| libm::log(weight)).collect();
        if refused {
            let node = network
                .node(variable)
                .ok_or(EvidenceError::UnknownVariable)?;
            return Err(EvidenceError::Weights {
                variable: node.name.clone(),
            });
        }
        self.weigh_ln(network, variable, &logarithms)
    }

    /// As [`Evidence::weigh`], with natural logarithms of the weights; minus infinity is a weight
    /// of zero. Densities of measurements stay in range this way.
    ///
    /// # Errors
    /// As [`Evidence::weigh`].
    pub fn weigh_ln(
        &mut self,
        network: &Network,
        variable: Variable,
        ln_weights: &[f64],
    ) -> Result<(), EvidenceError> {
        let node = network
            .node(variable)
            .ok_or(EvidenceError::UnknownVariable)?;
        if ln_weights.len() != node.states.len() {
            return Err(EvidenceError::Shape {
                variable: node.name.clone(),
                expected: node.states.len(),
                found: ln_weights.len(),
            });
        }
        let largest = largest(ln_weights);
        let refused = ln_weights.iter().any(|weight| weight.is_nan());
        if refused || !largest.is_finite() {
            return Err(EvidenceError::Weights {
                variable: node.name.clone(),
            });
        }
        self.insert(Finding {
            variable,
            ln_weights: ln_weights.to_vec(),
        });
        Ok(())
    }

    /// The findings, sorted by variable.
    #[must_use]
    pub fn findings(&self) -> &[Finding] {
        &self.findings
    }

    /// How many findings there are.
    #[must_use]
    pub fn len(&self) -> usize {
        self.findings.len()
    }

    /// Whether nothing was found yet.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.findings.is_empty()
    }

    /// The same evidence without the finding at a place of [`Evidence::findings`].
    #[must_use]
    pub fn without(&self, place: usize) -> Self {
        let mut rest = self.clone();
        if place < rest.findings.len() {
            rest.findings.remove(place);
        }
        rest
    }

    fn insert(&mut self, finding: Finding) {
        let place = self
            .findings
            .partition_point(|other| is_before(other, &finding));
        self.findings.insert(place, finding);
    }
}

fn is_before(one: &Finding, other: &Finding) -> bool {
    let by_weights = || {
        let pairs = one.ln_weights.iter().zip(&other.ln_weights);
        pairs
            .map(|(a, b)| a.total_cmp(b))
            .find(|order| order.is_ne())
    };
    match one.variable.cmp(&other.variable) {
        std::cmp::Ordering::Equal => by_weights().is_some_and(std::cmp::Ordering::is_lt),
        order => order.is_lt(),
    }
}

/// The largest of some numbers; minus infinity for none.
pub(crate) fn largest(values: &[f64]) -> f64 {
    values.iter().copied().fold(f64::NEG_INFINITY, f64::max)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn coin() -> (Network, Variable) {
        let mut network = Network::new();
        let coin = network
            .prior("coin", &["head", "tail"], &[0.5, 0.5])
            .unwrap();
        (network, coin)
    }

    #[test]
    fn the_order_of_entering_leaves_no_trace() {
        let (network, coin) = coin();
        let (mut one, mut other) = (Evidence::new(), Evidence::new());
        one.weigh(&network, coin, &[1.0, 2.0]).unwrap();
        one.observe(&network, coin, 1).unwrap();
        other.observe(&network, coin, 1).unwrap();
        other.weigh(&network, coin, &[1.0, 2.0]).unwrap();
        assert_eq!(one, other);
    }

    #[test]
    fn weights_that_mean_nothing_are_refused_by_name() {
        let (network, coin) = coin();
        let mut evidence = Evidence::new();
        for bad in [
            [0.0, 0.0],
            [-1.0, 2.0],
            [f64::NAN, 1.0],
            [f64::INFINITY, 1.0],
        ] {
            let error = evidence.weigh(&network, coin, &bad).unwrap_err();
            assert!(error.to_string().starts_with("coin:"), "{error}");
        }
        let error = evidence.weigh(&network, coin, &[1.0]).unwrap_err();
        assert!(matches!(error, EvidenceError::Shape { expected: 2, .. }));
        let error = evidence.observe(&network, coin, 2).unwrap_err();
        assert!(matches!(
            error,
            EvidenceError::UnknownState { state: 2, .. }
        ));
        assert!(evidence.is_empty());
    }

    #[test]
    fn a_finding_that_leaves_one_state_says_which() {
        let (network, coin) = coin();
        let mut evidence = Evidence::new();
        evidence.weigh(&network, coin, &[0.0, 0.3]).unwrap();
        assert_eq!(evidence.findings()[0].only_state(), Some(1));
    }
}
