//! What a workspace keeps from one propagation to the next changes no bit of any answer.

// What prepares a test may stop it, as the test itself may.
#![allow(clippy::unwrap_used)]

mod support;

use belief::{Evidence, JunctionTree, Workspace};
use support::{Random, random_evidence, random_network};

/// Every number that a propagation gives, as bits; nothing where the evidence can't be true.
fn answers(tree: &JunctionTree, evidence: &Evidence, workspace: &mut Workspace) -> Vec<u64> {
    let ln = tree.ln_probability(evidence, workspace).unwrap();
    let Ok(posterior) = tree.propagate(evidence, workspace) else {
        return vec![ln.to_bits()];
    };
    let variables = tree.network().variables();
    let marginals = variables.flat_map(|one| posterior.marginal(one));
    let numbers = marginals.copied().chain([ln, posterior.ln_evidence()]);
    numbers.map(f64::to_bits).collect()
}

/// One finding after another, then one instead of another; now and then far out of the range of
/// plain numbers, or impossible.
fn much_evidence(tree: &JunctionTree, seed: u64) -> Vec<Evidence> {
    let network = tree.network();
    let mut all = Vec::new();
    for round in 0..4 {
        let whole = random_evidence(network, &mut Random::new(seed ^ round), 8);
        let mut growing = Evidence::new();
        for finding in whole.findings() {
            let (variable, weights) = (finding.variable(), finding.ln_weights());
            growing.weigh_ln(network, variable, weights).unwrap();
            all.push(growing.clone());
        }
        for variable in network.variables() {
            let states = network.states(variable).len();
            let mut one = whole.clone();
            one.observe(network, variable, states - 1).unwrap();
            all.push(one.clone());
            one.observe(network, variable, 0).unwrap();
            all.push(one);
            let falling: Vec<f64> = (0..states).map(|state| -400.3 * state as f64).collect();
            growing.weigh_ln(network, variable, &falling).unwrap();
            let rising: Vec<f64> = falling.iter().rev().copied().collect();
            growing.weigh_ln(network, variable, &rising).unwrap();
        }
        all.push(growing);
    }
    all
}

#[test]
fn a_workspace_used_before_answers_as_a_fresh_one_to_the_last_bit() {
    for seed in 0..12 {
        let tree = JunctionTree::compile(random_network(seed, 20, 3)).unwrap();
        let mut kept = tree.workspace();
        for (place, evidence) in much_evidence(&tree, seed).iter().enumerate() {
            let fresh = answers(&tree, evidence, &mut tree.workspace());
            assert_eq!(answers(&tree, evidence, &mut kept), fresh, "{seed} {place}");
            if place % 5 == 0 {
                // Its tables are of another arithmetic, which must not be built upon.
                let _ = tree.most_probable_explanation(evidence, &mut kept);
            }
        }
    }
}

#[test]
fn a_workspace_of_another_tree_of_the_same_shape_is_not_built_upon() {
    let one = JunctionTree::compile(random_network(1, 20, 3)).unwrap();
    let same_again = JunctionTree::compile(random_network(1, 20, 3)).unwrap();
    let mut network = belief::Network::new();
    let rain = network.prior("rain", &["no", "yes"], &[0.8, 0.2]).unwrap();
    let mut other = belief::Network::new();
    other.prior("rain", &["no", "yes"], &[0.4, 0.6]).unwrap();
    let (wet, dry) = (
        JunctionTree::compile(network).unwrap(),
        JunctionTree::compile(other).unwrap(),
    );
    let nothing = Evidence::new();
    let mut kept = wet.workspace();
    wet.propagate(&nothing, &mut kept).unwrap();
    let posterior = dry.propagate(&nothing, &mut kept).unwrap();
    assert!((posterior.marginal(rain)[1] - 0.6).abs() < 1e-15);
    let mut kept = one.workspace();
    let fresh = answers(&same_again, &nothing, &mut same_again.workspace());
    assert_eq!(answers(&one, &nothing, &mut kept), fresh);
    assert_eq!(answers(&same_again, &nothing, &mut kept), fresh);
}
