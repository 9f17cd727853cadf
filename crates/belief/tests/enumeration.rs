//! Every answer of the tree against a walk through the whole joint distribution of small random
//! networks: tables, functions, worst-of and noisy-worst nodes, certain rows and zeros, seen
//! states and weights.

// What prepares a test may stop it, as the test itself may.
#![allow(clippy::unwrap_used)]

mod support;

use belief::{Decision, JunctionTree, Variable};
use proptest::prelude::*;
use support::{Random, assert_close, enumerate, enumerated_marginals, random_evidence};

const TOLERANCE: f64 = 1e-11;

proptest! {
    #![proptest_config(ProptestConfig { cases: 300, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn marginals_and_the_probability_of_the_evidence(seed: u64, size in 1_usize..8, parents in 0_usize..7) {
        let network = support::random_network(seed, size, parents);
        let evidence = random_evidence(&network, &mut Random::new(seed ^ 1), 4);
        let (expected, total) = enumerated_marginals(&network, &evidence);
        let tree = JunctionTree::compile(network).unwrap();
        let mut workspace = tree.workspace();
        let posterior = tree.propagate(&evidence, &mut workspace).unwrap();
        for (variable, expected) in tree.network().variables().zip(&expected) {
            assert_close(posterior.marginal(variable), expected, TOLERANCE);
        }
        prop_assert!((posterior.ln_evidence() - libm::log(total)).abs() < TOLERANCE);
        let ln = tree.ln_probability(&evidence, &mut tree.workspace()).unwrap();
        prop_assert!((ln - libm::log(total)).abs() < TOLERANCE);
    }

    #[test]
    fn joint_distributions_of_variables_that_share_no_table(seed: u64, size in 1_usize..8) {
        // One or two parents: long trees, so that questions cross several tables.
        let network = support::random_network(seed, size, 2);
        let mut random = Random::new(seed ^ 2);
        let evidence = random_evidence(&network, &mut random, 3);
        let query = random.some(&network, 4);
        let cards: Vec<_> = query.iter().map(|&one| network.states(one).len()).collect();
        let mut expected = vec![0.0; cards.iter().product()];
        let mut total = 0.0;
        enumerate(&network, &evidence, |states, weight| {
            let place = query.iter().zip(&cards).fold(0, |at, (one, card)| at * card + states[one.index()]);
            expected[place] += weight;
            total += weight;
        });
        expected.iter_mut().for_each(|chance| *chance /= total);
        let tree = JunctionTree::compile(network).unwrap();
        let mut workspace = tree.workspace();
        let joint = tree.propagate(&evidence, &mut workspace).unwrap().joint(&query).unwrap();
        assert_close(joint.values(), &expected, TOLERANCE);
    }

    #[test]
    fn the_most_probable_explanation_is_as_probable_as_any(seed: u64, size in 1_usize..8, parents in 0_usize..7) {
        let network = support::random_network(seed, size, parents);
        let evidence = random_evidence(&network, &mut Random::new(seed ^ 3), 4);
        let tree = JunctionTree::compile(network).unwrap();
        let found = tree.most_probable_explanation(&evidence, &mut tree.workspace()).unwrap();
        let (mut largest, mut of_found) = (0.0_f64, None);
        enumerate(tree.network(), &evidence, |states, weight| {
            largest = largest.max(weight);
            if tree.network().variables().all(|one| found.state(one) == Some(states[one.index()])) {
                of_found = Some(weight);
            }
        });
        let of_found = of_found.unwrap();
        prop_assert!((of_found / largest - 1.0).abs() < TOLERANCE);
        prop_assert!((found.ln_probability() - libm::log(largest)).abs() < TOLERANCE);
    }

    #[test]
    fn the_conflict_measure_is_its_definition(seed: u64, size in 1_usize..7) {
        let network = support::random_network(seed, size, 3);
        let evidence = random_evidence(&network, &mut Random::new(seed ^ 4), 4);
        let mut expected = -libm::log(enumerated_marginals(&network, &evidence).1);
        for place in 0..evidence.len() {
            let mut alone = evidence.clone();
            for other in (0..evidence.len()).rev().filter(|&other| other != place) {
                alone = alone.without(other);
            }
            expected += libm::log(enumerated_marginals(&network, &alone).1);
        }
        let tree = JunctionTree::compile(network).unwrap();
        let mut workspace = tree.workspace();
        let found = tree.propagate(&evidence, &mut workspace).unwrap().conflict();
        prop_assert!((found - expected).abs() < 1e-10, "{} {}", found, expected);
    }

    #[test]
    fn the_worth_of_looking_is_what_the_best_choices_after_each_sight_save(seed: u64, size in 2_usize..7) {
        let network = support::random_network(seed, size, 3);
        let mut random = Random::new(seed ^ 5);
        let evidence = random_evidence(&network, &mut random, 2);
        let all: Vec<Variable> = network.variables().collect();
        let target = all[random.below(size)];
        let observed = all[random.below(size)];
        let states = network.states(target).len();
        let costs: Vec<Vec<f64>> =
            (0..3).map(|_| (0..states).map(|_| 100.0 * random.chance()).collect()).collect();
        let mut decision = Decision::over(&network, &[target]);
        for (place, costs) in costs.iter().enumerate() {
            decision.action(&format!("act{place}"), costs).unwrap();
        }
        // Expected cost of each action together with each state that is seen.
        let mut with = vec![[0.0; 3]; network.states(observed).len()];
        let mut total = 0.0;
        enumerate(&network, &evidence, |at, weight| {
            total += weight;
            for action in 0..3 {
                with[at[observed.index()]][action] += weight * costs[action][at[target.index()]];
            }
        });
        let least = |costs: [f64; 3]| costs.into_iter().fold(f64::INFINITY, f64::min);
        let now = least([0, 1, 2].map(|action| with.iter().map(|seen| seen[action]).sum::<f64>())) / total;
        let then = with.iter().map(|&seen| least(seen)).sum::<f64>() / total;
        let tree = JunctionTree::compile(network).unwrap();
        let mut workspace = tree.workspace();
        let posterior = tree.propagate(&evidence, &mut workspace).unwrap();
        let worth = decision.worth_of(&posterior, observed).unwrap().unwrap();
        prop_assert!((worth.now.cost - now).abs() < 1e-9);
        prop_assert!((worth.value - (now - then)).abs() < 1e-9);
        prop_assert!(worth.value >= 0.0);
    }
}
