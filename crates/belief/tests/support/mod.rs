//! Random networks and evidence from a seed, and the slow way to every answer: a walk through the
//! whole joint distribution, which shares no code with the tree.

// Each test file takes what it needs. Clippy does not see that this is part of tests.
#![allow(dead_code, unreachable_pub, clippy::unwrap_used)]

pub mod textbook;

use belief::{Evidence, Network, Variable};

/// SplitMix64 (Steele, Lea and Flood 2014; from memory): the same numbers on every machine.
pub struct Random(u64);

impl Random {
    pub fn new(seed: u64) -> Self {
        Self(seed)
    }

    pub fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    /// From zero up to, not including, `end`.
    pub fn below(&mut self, end: usize) -> usize {
        (self.next() % end as u64) as usize
    }

    pub fn chance(&mut self) -> f64 {
        (self.next() >> 11) as f64 / (1_u64 << 53) as f64
    }

    /// A distribution; one in eight is certain and one in eight has an entry of zero.
    pub fn row(&mut self, states: usize) -> Vec<f64> {
        let mut row: Vec<f64> = (0..states).map(|_| 0.02 + self.chance()).collect();
        match self.below(8) {
            0 => {
                let only = self.below(states);
                row = (0..states)
                    .map(|state| f64::from(u8::from(state == only)))
                    .collect();
            }
            1 => row[self.below(states)] = 0.0,
            _ => {}
        }
        let sum: f64 = row.iter().sum();
        row.iter().map(|chance| chance / sum).collect()
    }

    /// Up to `most` different variables of the network.
    pub fn some(&mut self, network: &Network, most: usize) -> Vec<Variable> {
        let mut chosen: Vec<Variable> = Vec::new();
        for _ in 0..self.below(most + 1) {
            if let Some(one) = network.variables().nth(self.below(network.len().max(1)))
                && !chosen.contains(&one)
            {
                chosen.push(one);
            }
        }
        chosen
    }
}

const STATES: [&str; 4] = ["a", "b", "c", "d"];

/// Adds a variable of a random kind.
pub fn add_random(network: &mut Network, random: &mut Random, most_parents: usize) -> Variable {
    let name = format!("x{}", network.len());
    let states = &STATES[..2 + random.below(3)];
    let parents = random.some(network, most_parents);
    let cards: Vec<_> = parents
        .iter()
        .map(|&one| network.states(one).len())
        .collect();
    let kind = if parents.is_empty() {
        0
    } else {
        random.below(5)
    };
    let effects: Vec<Vec<usize>> = cards
        .iter()
        .map(|&card| (0..card).map(|_| random.below(states.len())).collect())
        .collect();
    let causes = parents.iter().copied();
    let added = match kind {
        0 | 1 => {
            let rows: Vec<_> = (0..cards.iter().product())
                .map(|_| random.row(states.len()))
                .collect();
            network.table(&name, states, &parents, &rows)
        }
        2 => network.function(&name, states, &parents, |at| {
            at.iter()
                .zip(&effects)
                .map(|(&state, effects)| effects[state])
                .sum::<usize>()
                % states.len()
        }),
        3 => {
            let causes: Vec<_> = causes.zip(effects.iter().map(Vec::as_slice)).collect();
            network.worst_of(&name, states, &causes)
        }
        _ => {
            let tables: Vec<Vec<Vec<f64>>> = cards
                .iter()
                .map(|&card| (0..card).map(|_| random.row(states.len())).collect())
                .collect();
            let causes: Vec<_> = causes.zip(tables).collect();
            network.noisy_worst(&name, states, &causes, &random.row(states.len()))
        }
    };
    added.unwrap()
}

pub fn random_network(seed: u64, variables: usize, most_parents: usize) -> Network {
    let (mut network, mut random) = (Network::new(), Random::new(seed));
    for _ in 0..variables {
        add_random(&mut network, &mut random, most_parents);
    }
    network
}

/// Evidence that can be true: drawn from the network itself, a third of it as weights.
pub fn random_evidence(network: &Network, random: &mut Random, most: usize) -> Evidence {
    let drawn = draw(network, random);
    let mut evidence = Evidence::new();
    for variable in random.some(network, most) {
        let state = drawn[variable.index()];
        if random.below(3) == 0 {
            let mut weights: Vec<f64> = network
                .states(variable)
                .iter()
                .map(|_| random.chance())
                .collect();
            weights[state] += 0.1;
            evidence.weigh(network, variable, &weights).unwrap();
        } else {
            evidence.observe(network, variable, state).unwrap();
        }
    }
    evidence
}

/// One joint state, drawn from the network.
pub fn draw(network: &Network, random: &mut Random) -> Vec<usize> {
    let mut states: Vec<usize> = Vec::new();
    for variable in network.variables() {
        let parents: Vec<_> = network
            .parents(variable)
            .iter()
            .map(|one| states[one.index()])
            .collect();
        let row = network.row(variable, &parents).unwrap();
        let mut left = random.chance();
        let state = row.iter().position(|chance| {
            left -= chance;
            left < 0.0
        });
        let likeliest = (0..row.len()).max_by(|&a, &b| row[a].total_cmp(&row[b]));
        states.push(state.filter(|&one| row[one] > 0.0).or(likeliest).unwrap());
    }
    states
}

/// Every joint state with its probability times the weights of the evidence.
pub fn enumerate(network: &Network, evidence: &Evidence, mut visit: impl FnMut(&[usize], f64)) {
    let variables: Vec<_> = network.variables().collect();
    let mut states = vec![0; variables.len()];
    loop {
        let mut weight = 1.0;
        for &variable in &variables {
            let parents: Vec<_> = network
                .parents(variable)
                .iter()
                .map(|one| states[one.index()])
                .collect();
            weight *= network.row(variable, &parents).unwrap()[states[variable.index()]];
        }
        for finding in evidence.findings() {
            weight *= libm::exp(finding.ln_weights()[states[finding.variable().index()]]);
        }
        visit(&states, weight);
        let Some(place) = (0..states.len())
            .rev()
            .find(|&place| states[place] + 1 < network.states(variables[place]).len())
        else {
            return;
        };
        states[place] += 1;
        states[place + 1..].fill(0);
    }
}

/// Marginals and the probability of the evidence by enumeration.
pub fn enumerated_marginals(network: &Network, evidence: &Evidence) -> (Vec<Vec<f64>>, f64) {
    let mut marginals: Vec<Vec<f64>> = network
        .variables()
        .map(|one| vec![0.0; network.states(one).len()])
        .collect();
    let mut total = 0.0;
    enumerate(network, evidence, |states, weight| {
        total += weight;
        for (marginal, &state) in marginals.iter_mut().zip(states) {
            marginal[state] += weight;
        }
    });
    for marginal in &mut marginals {
        marginal.iter_mut().for_each(|chance| *chance /= total);
    }
    (marginals, total)
}

pub fn assert_close(found: &[f64], expected: &[f64], tolerance: f64) {
    assert_eq!(found.len(), expected.len());
    for (one, other) in found.iter().zip(expected) {
        assert!(
            (one - other).abs() <= tolerance,
            "{found:?} is not {expected:?}"
        );
    }
}
