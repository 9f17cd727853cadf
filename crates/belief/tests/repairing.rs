//! Fault sets against enumeration, and policies against the best there is.

// What prepares a test may stop it, as the test itself may.
#![allow(clippy::unwrap_used)]

mod support;

use belief::{
    Check, Component, Evidence, FaultSet, FaultSets, JunctionTree, Limits, Network, Repair,
    RepairAction, Step, Troubleshooting, Variable,
};
use proptest::prelude::*;
use support::{Random, add_random, assert_close, enumerate, random_evidence};

const EVERYTHING: Limits = Limits {
    most_faults: 9,
    least_marginal: 0.0,
    keep: usize::MAX,
};

/// Components without parents, and random variables below them.
fn machine(seed: u64, components: usize, others: usize) -> (Network, Vec<Component>) {
    let (mut network, mut random) = (Network::new(), Random::new(seed));
    for _ in 0..components {
        add_random(&mut network, &mut random, 0);
    }
    let components = network
        .variables()
        .map(|variable| Component { variable, sound: 0 })
        .collect();
    for _ in 0..others {
        add_random(&mut network, &mut random, 3);
    }
    (network, components)
}

fn states_of(set: &FaultSet, components: &[Component]) -> Vec<usize> {
    let state = |one: &Component| {
        let fault = set
            .faults
            .iter()
            .find(|(variable, _)| *variable == one.variable);
        fault.map_or(one.sound, |(_, state)| *state)
    };
    components.iter().map(state).collect()
}

/// Fault sets and answers against enumeration.
fn check_sets(network: Network, components: &[Component], evidence: &Evidence) {
    let targets: Vec<Variable> = network.variables().skip(components.len()).collect();
    let tree = JunctionTree::compile(network).unwrap();
    let mut workspace = tree.workspace();
    let posterior = tree.propagate(evidence, &mut workspace).unwrap();
    let sets = FaultSets::enumerate(&posterior, components, EVERYTHING).unwrap();
    let answers = sets.answers(&posterior, &targets).unwrap();
    assert!(sets.missing() < 1e-11);
    assert!(
        sets.sets()
            .windows(2)
            .all(|two| two[0].probability >= two[1].probability)
    );
    for (place, set) in sets.sets().iter().enumerate() {
        let states = states_of(set, components);
        let (mut with, mut total) = (0.0, 0.0);
        let mut expected: Vec<Vec<f64>> = targets
            .iter()
            .map(|&one| vec![0.0; tree.network().states(one).len()])
            .collect();
        enumerate(tree.network(), evidence, |at, weight| {
            total += weight;
            if components
                .iter()
                .zip(&states)
                .all(|(one, &state)| at[one.variable.index()] == state)
            {
                with += weight;
                for (row, target) in expected.iter_mut().zip(&targets) {
                    row[at[target.index()]] += weight;
                }
            }
        });
        assert_close(&[set.probability], &[with / total], 1e-11);
        for (answers, expected) in answers.iter().zip(&expected) {
            let expected: Vec<_> = expected.iter().map(|weight| weight / with).collect();
            assert_close(&answers[place], &expected, 1e-9);
        }
    }
}

/// A small repair problem with checks, every number drawn.
fn problem(seed: u64, actions: usize, checks: usize) -> Troubleshooting {
    let mut random = Random::new(seed);
    let mut network = Network::new();
    let components: Vec<_> = (0..actions)
        .map(|place| {
            let variable = network.prior(&format!("c{place}"), &["sound", "failed"], &[0.9, 0.1]);
            Component {
                variable: variable.unwrap(),
                sound: 0,
            }
        })
        .collect();
    let mut sets: Vec<FaultSet> = Vec::new();
    for (place, one) in components.iter().enumerate() {
        sets.push(FaultSet {
            faults: vec![(one.variable, 1)],
            probability: random.chance(),
        });
        for other in &components[place + 1..] {
            sets.push(FaultSet {
                faults: vec![(one.variable, 1), (other.variable, 1)],
                probability: 0.2 * random.chance(),
            });
        }
    }
    let sum: f64 = sets.iter().map(|set| set.probability).sum();
    sets.iter_mut()
        .for_each(|set| set.probability *= 0.97 / sum);
    let worlds = sets.len() + 1;
    let actions = components
        .iter()
        .enumerate()
        .map(|(place, one)| RepairAction {
            name: format!("mend{place}"),
            cost: 1.0 + 50.0 * random.chance(),
            mends: vec![one.variable],
        });
    let actions = actions.collect();
    let repair = Repair::new(&FaultSets::given(&components, sets), actions, 150.0).unwrap();
    let checks = (0..checks).map(|place| Check {
        name: format!("check{place}"),
        cost: 1.0 + 5.0 * random.chance(),
        answers: (0..worlds).map(|_| random.row(2)).collect(),
    });
    let checks = checks.collect();
    Troubleshooting::new(repair, checks).unwrap()
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 120, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn fault_sets_and_their_answers_are_those_of_enumeration(seed: u64, others in 1_usize..5) {
        let (network, components) = machine(seed, 3, others);
        let evidence = random_evidence(&network, &mut Random::new(seed ^ 1), 4);
        check_sets(network, &components, &evidence);
    }

    #[test]
    fn no_order_of_actions_is_cheaper_than_the_optimum(seed: u64) {
        let problem = problem(seed, 4, 0);
        let repair = problem.repair();
        let optimum = repair.optimal().unwrap();
        prop_assert!((repair.expected_cost(&optimum.order) - optimum.expected_cost).abs() < 1e-9);
        let mut cheapest = f64::INFINITY;
        for code in 0..5_usize.pow(4) {
            let order: Vec<_> = (0..4).map(|digit| code / 5_usize.pow(digit) % 5).collect();
            let order: Vec<_> = order.iter().copied().take_while(|&one| one < 4).collect();
            if (1..order.len()).all(|place| !order[..place].contains(&order[place])) {
                cheapest = cheapest.min(repair.expected_cost(&order));
            }
        }
        prop_assert!((optimum.expected_cost - cheapest).abs() < 1e-9);
        prop_assert!(repair.by_chance_over_cost().expected_cost >= cheapest - 1e-9);
        prop_assert!((problem.optimal_cost().unwrap() - cheapest).abs() < 1e-9);
    }

    /// The theorem of Kalagnanam and Henrion: with one fault, one action each and no giving up,
    /// chance over cost is the best order.
    #[test]
    fn chance_over_cost_is_best_for_single_faults(seed: u64, count in 1_usize..7) {
        let mut random = Random::new(seed);
        let mut network = Network::new();
        let components: Vec<_> = (0..count)
            .map(|place| {
                let variable = network.prior(&format!("c{place}"), &["sound", "failed"], &[0.9, 0.1]);
                Component { variable: variable.unwrap(), sound: 0 }
            })
            .collect();
        let chances: Vec<f64> = (0..count).map(|_| 0.05 + random.chance()).collect();
        let sum: f64 = chances.iter().sum();
        let sets = components.iter().zip(&chances).map(|(one, chance)| FaultSet {
            faults: vec![(one.variable, 1)],
            probability: chance / sum,
        });
        let sets = FaultSets::given(&components, sets.collect());
        let actions = components.iter().map(|one| RepairAction {
            name: format!("mend{}", one.variable.index()),
            cost: 1.0 + 50.0 * random.chance(),
            mends: vec![one.variable],
        });
        let repair = Repair::new(&sets, actions.collect(), 1e6).unwrap();
        let (found, best) = (repair.by_chance_over_cost(), repair.optimal().unwrap());
        prop_assert!((found.expected_cost - best.expected_cost).abs() < 1e-6);
    }

    #[test]
    fn looking_pays_or_is_left_and_no_policy_beats_the_optimum(seed: u64) {
        let problem = problem(seed, 3, 3);
        let optimum = problem.optimal_cost().unwrap();
        let ahead = problem.expected_cost(|at| problem.one_check_ahead(at)).unwrap();
        let at_once = problem.expected_cost(|at| problem.act_at_once(at).0).unwrap();
        let most = |bit| problem.expected_cost(|at| problem.most_for_its_cost(at, bit)).unwrap();
        prop_assert!(optimum <= most(0.0).min(most(5.0)) + 1e-9);
        prop_assert!(most(0.0) <= at_once + 1e-9);
        let order = [Step::Look(0), Step::Look(1), Step::Look(2)];
        let all_first = problem.expected_cost(|at| {
            let next = order.iter().enumerate().find(|(place, _)| at.answer(*place).is_none());
            next.map_or_else(|| problem.act_at_once(at).0, |(_, step)| *step)
        }).unwrap();
        prop_assert!(optimum <= ahead + 1e-9);
        prop_assert!(optimum <= at_once + 1e-9);
        prop_assert!(optimum <= all_first + 1e-9);
        prop_assert!(ahead <= at_once + 1e-9);
        let by_order = problem.repair().by_chance_over_cost().expected_cost;
        prop_assert!((at_once - by_order).abs() < 1e-9);
    }
}

/// Many states in between are left to chance: the walk would branch too often, the tree answers.
#[test]
fn fault_sets_are_the_same_when_the_tree_has_to_weigh_them() {
    let (mut network, components) = machine(7, 2, 0);
    let mut random = Random::new(8);
    let mut middle = Vec::new();
    for place in 0..8 {
        let parent = components[place % 2].variable;
        let rows: Vec<_> = network
            .states(parent)
            .iter()
            .map(|_| random.row(2))
            .collect();
        let name = format!("middle{place}");
        middle.push(network.table(&name, &["a", "b"], &[parent], &rows).unwrap());
    }
    let parents = &middle[..];
    let rows: Vec<_> = (0..256).map(|_| [0.2, 0.8]).collect();
    let last = network.table("last", &["a", "b"], parents, &rows).unwrap();
    let mut evidence = Evidence::new();
    evidence.observe(&network, last, 1).unwrap();
    evidence.weigh(&network, middle[3], &[0.2, 0.9]).unwrap();
    check_sets(network, &components, &evidence);
}

#[test]
fn what_the_limits_leave_out_is_missing() {
    let (network, components) = machine(3, 3, 3);
    let tree = JunctionTree::compile(network).unwrap();
    let (evidence, mut workspace) = (Evidence::new(), tree.workspace());
    let posterior = tree.propagate(&evidence, &mut workspace).unwrap();
    let limits = Limits {
        most_faults: 1,
        ..EVERYTHING
    };
    let few = FaultSets::enumerate(&posterior, &components, limits).unwrap();
    let all = FaultSets::enumerate(&posterior, &components, EVERYTHING).unwrap();
    let left: f64 = all
        .sets()
        .iter()
        .filter(|set| set.faults.len() > 1)
        .map(|set| set.probability)
        .sum();
    assert!(left > 0.0 && (few.missing() - left).abs() < 1e-12);
    // Answers of what is missing are those of the sets that were left out.
    let finding = tree.network().variables().next_back().unwrap();
    let answers = few.answers(&posterior, &[finding]).unwrap().remove(0);
    let complete = all.answers(&posterior, &[finding]).unwrap().remove(0);
    let mut expected = vec![0.0; tree.network().states(finding).len()];
    for (set, row) in all.sets().iter().zip(&complete) {
        if set.faults.len() > 1 {
            for (sum, chance) in expected.iter_mut().zip(row) {
                *sum += set.probability * chance / left;
            }
        }
    }
    assert_close(answers.last().unwrap(), &expected, 1e-9);
}

#[test]
fn numbers_that_mean_nothing_are_refused_by_name() {
    let sets = FaultSets::given(&[], Vec::new());
    let action = |cost| {
        vec![RepairAction {
            name: "mend".to_owned(),
            cost,
            mends: Vec::new(),
        }]
    };
    for bad in [-1.0, f64::NAN, f64::INFINITY] {
        let error = Repair::new(&sets, action(bad), 1.0).unwrap_err();
        assert!(error.to_string().starts_with("mend:"));
    }
    let repair = Repair::new(&sets, action(1.0), 1.0).unwrap();
    let check = |answers| {
        vec![Check {
            name: "look".to_owned(),
            cost: 1.0,
            answers,
        }]
    };
    for bad in [vec![], vec![vec![0.5, 0.6]], vec![vec![f64::NAN, 1.0]]] {
        let error = Troubleshooting::new(repair.clone(), check(bad)).unwrap_err();
        assert!(error.to_string().starts_with("look:"));
    }
}
