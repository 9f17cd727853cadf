//! The bits of many results, as one number: the same on every machine, and changed by nothing but
//! a change of the arithmetic. The number was made on the host (x86-64); the same code built for
//! wasm32 and run in Node gave the same numbers for 200 seeds.

// What prepares a test may stop it, as the test itself may.
#![allow(clippy::unwrap_used)]

mod support;

use belief::{Component, FaultSets, JunctionTree, Limits, Network};
use support::{Random, random_evidence, random_network};

/// FNV-1a over the bytes of numbers (from memory).
struct Fingerprint(u64);

impl Fingerprint {
    fn add(&mut self, numbers: &[f64]) {
        for byte in numbers
            .iter()
            .flat_map(|number| number.to_bits().to_le_bytes())
        {
            self.0 = (self.0 ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3);
        }
    }
}

fn add_results(network: Network, seed: u64, print: &mut Fingerprint) {
    let mut evidence = random_evidence(&network, &mut Random::new(seed ^ 1), 8);
    let tree = JunctionTree::compile(network).unwrap();
    let mut workspace = tree.workspace();
    let best = tree
        .most_probable_explanation(&evidence, &mut workspace)
        .unwrap();
    print.add(&[best.ln_probability()]);
    let posterior = tree.propagate(&evidence, &mut workspace).unwrap();
    print.add(&[posterior.ln_evidence(), posterior.conflict()]);
    let variables: Vec<_> = tree.network().variables().collect();
    variables
        .iter()
        .for_each(|&one| print.add(posterior.marginal(one)));
    let components: Vec<_> = variables
        .iter()
        .take(6)
        .map(|&variable| Component { variable, sound: 0 })
        .collect();
    let sets = FaultSets::enumerate(&posterior, &components, Limits::default()).unwrap();
    sets.sets()
        .iter()
        .for_each(|set| print.add(&[set.probability]));
    // Weights that pull both ways, far out of the range of plain numbers.
    for &one in &variables {
        let states = tree.network().states(one).len();
        let falling: Vec<f64> = (0..states).map(|state| -40.3 * state as f64).collect();
        let rising: Vec<f64> = falling.iter().rev().copied().collect();
        evidence.weigh_ln(tree.network(), one, &falling).unwrap();
        evidence.weigh_ln(tree.network(), one, &rising).unwrap();
    }
    let posterior = tree.propagate(&evidence, &mut workspace).unwrap();
    print.add(&[posterior.ln_evidence()]);
    variables
        .iter()
        .for_each(|&one| print.add(posterior.marginal(one)));
}

#[test]
fn results_have_the_bits_that_they_always_had() {
    let mut print = Fingerprint(0xcbf2_9ce4_8422_2325);
    for seed in 0..40 {
        add_results(random_network(seed, 40, 3), seed, &mut print);
    }
    assert_eq!(print.0, 0x633f_645f_a323_ceb3, "the arithmetic has changed");
}
