//! What holds for every network, whatever its numbers are.

// What prepares a test may stop it, as the test itself may.
#![allow(clippy::unwrap_used)]

mod support;

use belief::{
    Evidence, EvidenceError, ExplanationError, JunctionTree, Network, QueryError, Variable,
};
use proptest::prelude::*;
use support::{Random, assert_close, random_evidence, random_network};

fn marginals(network: &Network, evidence: &Evidence) -> Vec<Vec<f64>> {
    let tree = JunctionTree::compile(network.clone()).unwrap();
    let mut workspace = tree.workspace();
    let posterior = tree.propagate(evidence, &mut workspace).unwrap();
    network
        .variables()
        .map(|one| posterior.marginal(one).to_vec())
        .collect()
}

/// A network of tables with its variables added in another order that still puts parents first,
/// and the place of each old variable in the new one.
fn relabelled(network: &Network, random: &mut Random) -> (Network, Vec<Variable>) {
    let mut new: Vec<Option<Variable>> = vec![None; network.len()];
    let mut other = Network::new();
    while other.len() < network.len() {
        let one = network
            .variables()
            .nth(random.below(network.len()))
            .unwrap();
        let parents: Option<Vec<_>> = network
            .parents(one)
            .iter()
            .map(|parent| new[parent.index()])
            .collect();
        let (None, Some(mut parents)) = (new[one.index()], parents) else {
            continue;
        };
        // The parents in reverse order too, with the rows as that makes them.
        parents.reverse();
        let cards: Vec<_> = parents
            .iter()
            .map(|&parent| other.states(parent).len())
            .collect();
        let rows: Vec<_> = (0..cards.iter().product())
            .map(|place| {
                let mut rest: usize = place;
                let mut at: Vec<_> = Vec::new();
                for card in cards.iter().rev() {
                    at.push(rest % card);
                    rest /= card;
                }
                network.row(one, &at).unwrap()
            })
            .collect();
        let states: Vec<_> = network.states(one).iter().map(String::as_str).collect();
        let name = format!("y{}", other.len());
        new[one.index()] = Some(other.table(&name, &states, &parents, &rows).unwrap());
    }
    (other, new.into_iter().flatten().collect())
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 100, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn probabilities_sum_to_one_and_the_order_of_findings_leaves_no_bit_changed(seed: u64) {
        let network = random_network(seed, 25, 3);
        let evidence = random_evidence(&network, &mut Random::new(seed ^ 1), 8);
        let found = marginals(&network, &evidence);
        for marginal in &found {
            prop_assert!((marginal.iter().sum::<f64>() - 1.0).abs() < 1e-12);
            prop_assert!(marginal.iter().all(|chance| (0.0..=1.0 + 1e-15).contains(chance)));
        }
        let mut reversed = Evidence::new();
        for finding in evidence.findings().iter().rev() {
            reversed.weigh_ln(&network, finding.variable(), finding.ln_weights()).unwrap();
        }
        prop_assert_eq!(marginals(&network, &reversed), found);
    }

    #[test]
    fn relabelled_variables_relabel_the_answer(seed: u64) {
        let network = random_network(seed, 15, 3);
        let mut random = Random::new(seed ^ 1);
        let evidence = random_evidence(&network, &mut random, 5);
        let (other, new) = relabelled(&network, &mut random);
        let mut moved = Evidence::new();
        for finding in evidence.findings() {
            moved.weigh_ln(&other, new[finding.variable().index()], finding.ln_weights()).unwrap();
        }
        let (found, expected) = (marginals(&other, &moved), marginals(&network, &evidence));
        for (old, expected) in expected.iter().enumerate() {
            assert_close(&found[new[old].index()], expected, 1e-11);
        }
    }

    #[test]
    fn a_finding_cut_off_by_what_is_known_changes_nothing(seed: u64, seen in 0_usize..2) {
        // Everything of the first half touches the second only through one known variable.
        let mut network = random_network(seed, 12, 3);
        let mut random = Random::new(seed ^ 1);
        let left: Vec<Variable> = network.variables().collect();
        let rows: Vec<_> = (0..network.states(left[11]).len()).map(|_| [0.3, 0.7]).collect();
        let gate = network.table("gate", &["a", "b"], &[left[11]], &rows).unwrap();
        let mut above = vec![gate];
        for place in 0..12 {
            let parents = [above[random.below(above.len())]];
            let rows: Vec<_> = network.states(parents[0]).iter().map(|_| random.row(3)).collect();
            let name = format!("right{place}");
            above.push(network.table(&name, &["a", "b", "c"], &parents, &rows).unwrap());
        }
        let mut known = Evidence::new();
        known.observe(&network, gate, seen).unwrap();
        let mut more = known.clone();
        more.weigh(&network, above[12], &[0.2, 0.5, 0.9]).unwrap();
        more.weigh(&network, above[6], &[0.7, 0.1, 0.3]).unwrap();
        let (before, after) = (marginals(&network, &known), marginals(&network, &more));
        for one in left {
            assert_close(&after[one.index()], &before[one.index()], 1e-12);
        }
    }
}

#[test]
fn evidence_that_cannot_be_names_what_clashes_and_spares_what_does_not() {
    let mut network = Network::new();
    let mains = network.prior("mains", &["off", "on"], &[0.5, 0.5]).unwrap();
    let lamp = network
        .function("lamp", &["dark", "lit"], &[mains], |at| at[0])
        .unwrap();
    let fan = network
        .function("fan", &["still", "turns"], &[mains], |at| at[0])
        .unwrap();
    let door = network
        .prior("door", &["shut", "ajar"], &[0.5, 0.5])
        .unwrap();
    let tree = JunctionTree::compile(network).unwrap();
    let mut evidence = Evidence::new();
    for (variable, state) in [(door, 1), (lamp, 1), (fan, 0)] {
        evidence.observe(tree.network(), variable, state).unwrap();
    }
    let mut workspace = tree.workspace();
    let expected = EvidenceError::Impossible {
        together: vec!["lamp".to_owned(), "fan".to_owned()],
    };
    assert_eq!(
        tree.propagate(&evidence, &mut workspace).unwrap_err(),
        expected
    );
    let best = tree
        .most_probable_explanation(&evidence, &mut workspace)
        .unwrap_err();
    assert_eq!(best.to_string(), expected.to_string());
    let ln = tree.ln_probability(&evidence, &mut workspace).unwrap();
    assert!(ln.is_infinite() && ln < 0.0);
    // The workspace serves on.
    assert!(tree.propagate(&evidence.without(0), &mut workspace).is_ok());
}

#[test]
fn two_findings_that_leave_one_variable_no_state_are_named() {
    let mut network = Network::new();
    let coin = network
        .prior("coin", &["head", "tail"], &[0.5, 0.5])
        .unwrap();
    let mut evidence = Evidence::new();
    evidence.observe(&network, coin, 0).unwrap();
    evidence.observe(&network, coin, 1).unwrap();
    let tree = JunctionTree::compile(network).unwrap();
    let mut workspace = tree.workspace();
    let error = tree.propagate(&evidence, &mut workspace).unwrap_err();
    assert_eq!(
        error,
        EvidenceError::Impossible {
            together: vec!["coin".to_owned()]
        }
    );
    assert!(
        tree.most_probable_explanation(&evidence, &mut workspace)
            .is_err()
    );
}

/// A variable with copies of itself, each weighed; the two states' odds follow by adding up.
fn weighed_copies(ln_weights: &[[f64; 2]]) -> (JunctionTree, Evidence) {
    let mut network = Network::new();
    let hub = network.prior("hub", &["a", "b"], &[0.5, 0.5]).unwrap();
    let mut evidence = Evidence::new();
    for (place, ln) in ln_weights.iter().enumerate() {
        let name = format!("copy{place}");
        let copy = network
            .function(&name, &["a", "b"], &[hub], |at| at[0])
            .unwrap();
        evidence.weigh_ln(&network, copy, ln).unwrap();
    }
    (JunctionTree::compile(network).unwrap(), evidence)
}

#[test]
fn weights_far_below_the_smallest_number_still_add_up() {
    // A hundred findings against a state, then a hundred and one for it, each e^30 to one.
    let mut weights = vec![[0.0, -30.0]; 100];
    weights.extend([[-30.0, 0.0]; 101]);
    let (tree, evidence) = weighed_copies(&weights);
    let mut workspace = tree.workspace();
    let posterior = tree.propagate(&evidence, &mut workspace).unwrap();
    let [hub, first, last] =
        ["hub", "copy0", "copy200"].map(|name| tree.network().find(name).unwrap());
    let odds = posterior.marginal(hub)[0];
    assert!((odds / libm::exp(-30.0) - 1.0).abs() < 1e-9, "{odds}");
    let ln = libm::log(0.5) - 3000.0;
    assert!((posterior.ln_evidence() - ln).abs() < 1e-9);
    let joint = posterior.joint(&[first, last]).unwrap();
    assert!((joint.probability(&[1, 1]).unwrap() - 1.0).abs() < 1e-9);
}

#[test]
fn what_plain_numbers_would_lose_in_silence_is_kept() {
    // e^-750 is zero as a plain number, e^-744 is not: nothing would look wrong.
    let mut weights = vec![[0.0, -30.0]; 25];
    weights.extend([[-31.0, 0.0]; 24]);
    let (tree, evidence) = weighed_copies(&weights);
    let mut workspace = tree.workspace();
    let posterior = tree.propagate(&evidence, &mut workspace).unwrap();
    let expected = 1.0 / (1.0 + libm::exp(6.0));
    let hub = tree.network().find("hub").unwrap();
    assert!((posterior.marginal(hub)[1] - expected).abs() < 1e-12);
}

#[test]
fn variables_of_another_network_are_refused_and_never_reached() {
    let big = random_network(1, 9, 2);
    let stranger = big.variables().next_back().unwrap();
    let mut small = Network::new();
    let coin = small.prior("coin", &["head", "tail"], &[0.5, 0.5]).unwrap();
    assert!(small.prior("coin", &["head", "tail"], &[0.5, 0.5]).is_err());
    assert!(
        small
            .table("x", &["a", "b"], &[stranger], &[[0.5, 0.5]])
            .is_err()
    );
    assert_eq!(small.row(stranger, &[]), None);
    assert_eq!(small.row(coin, &[0]), None);
    let mut evidence = Evidence::new();
    assert!(evidence.observe(&small, stranger, 0).is_err());
    evidence.observe(&big, stranger, 0).unwrap();
    let tree = JunctionTree::compile(small).unwrap();
    let big_tree = JunctionTree::compile(big).unwrap();
    let mut workspace = big_tree.workspace();
    let error = tree.propagate(&evidence, &mut workspace).unwrap_err();
    assert_eq!(error, EvidenceError::UnknownVariable);
    let nothing = Evidence::new();
    let posterior = tree.propagate(&nothing, &mut workspace).unwrap();
    assert!(posterior.marginal(stranger).is_empty());
    assert_eq!(
        posterior.joint(&[stranger]).unwrap_err(),
        QueryError::UnknownVariable
    );
    assert!(matches!(
        posterior.joint(&[coin, coin]),
        Err(QueryError::Repeated { .. })
    ));
}

#[test]
fn a_network_without_variables_believes_nothing_for_sure() {
    let tree = JunctionTree::compile(Network::new()).unwrap();
    let (evidence, mut workspace) = (Evidence::new(), tree.workspace());
    let posterior = tree.propagate(&evidence, &mut workspace).unwrap();
    assert!((posterior.probability_of_evidence() - 1.0).abs() < 1e-15);
    assert_eq!(posterior.joint(&[]).unwrap().values(), [1.0]);
}

#[test]
fn a_tree_that_would_not_fit_is_refused_with_the_names_of_its_largest_table() {
    let mut network = Network::new();
    let causes: Vec<_> = (0..30)
        .map(|place| {
            network
                .prior(&format!("c{place}"), &["a", "b"], &[0.5, 0.5])
                .unwrap()
        })
        .collect();
    // Every two causes meet in a child: nothing can be split off.
    for (place, &one) in causes.iter().enumerate() {
        for (other, &cause) in causes.iter().enumerate().skip(place + 1) {
            let name = format!("meet{place}_{other}");
            let at = |at: &[usize]| at[0] & at[1];
            network
                .function(&name, &["a", "b"], &[one, cause], at)
                .unwrap();
        }
    }
    let error = JunctionTree::compile(network).unwrap_err();
    assert!(matches!(&error, QueryError::TooLarge { variables, .. } if variables.len() == 30));
}

#[test]
fn tables_that_nobody_could_hold_are_refused_before_they_are_made() {
    let mut network = Network::new();
    let causes: Vec<_> = (0..40)
        .map(|place| {
            network
                .prior(&format!("c{place}"), &["a", "b"], &[0.5, 0.5])
                .unwrap()
        })
        .collect();
    let error = network
        .function("all", &["a", "b"], &causes, |_| 0)
        .unwrap_err();
    assert!(error.to_string().starts_with("all: its table"));
    // Step by step the same many causes are no trouble, except to the explanation.
    let strengths: Vec<(Variable, &[f64])> = causes
        .iter()
        .map(|&cause| (cause, &[0.0, 0.5][..]))
        .collect();
    network
        .noisy("any", &["no", "yes"], &strengths, 0.02)
        .unwrap();
    let tree = JunctionTree::compile(network).unwrap();
    let any = tree.network().find("any").unwrap();
    let expected = 0.98 * libm::pow(0.75, 40.0);
    assert!((tree.prior(any)[0] - expected).abs() < 1e-15);
    let mut workspace = tree.workspace();
    let error = tree
        .most_probable_explanation(&Evidence::new(), &mut workspace)
        .unwrap_err();
    assert!(matches!(error, ExplanationError::Size(_)));
}
