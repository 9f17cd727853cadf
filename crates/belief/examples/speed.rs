//! How large the tree of a network shaped like a machine is, and how fast it answers.
//!
//! `cargo run --release -p belief --example speed [FILE]` writes the first network to the file, so
//! that other programs can be timed on it.
//!
//! The network is synthetic: components with two to four states, conditions in a chain of eight,
//! each the worst of the one before it and five to ten components or intermediate states, and
//! findings with up to three of them as parents. Tables are random; only the shape matters here.

use belief::{
    BuildError, Component, Evidence, FaultSets, JunctionTree, Limits, Network, QueryError,
    Variable, export_bif,
};
use std::time::{Duration, Instant};

const LINKS: usize = 8;
const COMPONENTS_PER_LINK: usize = 4;
const INNER_STATES: usize = 14;
const FINDINGS: usize = 46;

fn main() -> Result<(), Box<dyn std::error::Error>> {
    println!(
        "seed nodes total entries largest cliques        compile  all marginals  fault sets, answers"
    );
    for seed in 1..=5 {
        let (network, components) = machine(&mut Random(seed))?;
        let nodes = network.len();
        let started = Instant::now();
        let tree = JunctionTree::compile(network)?;
        let compiling = started.elapsed();
        let evidence = findings(&tree, 12)?;
        if let Some(file) = std::env::args().nth(1).filter(|_| seed == 1) {
            std::fs::write(file, export_bif("speed", tree.network(), &evidence).text)?;
        }
        let mut workspace = tree.workspace();
        let marginals = median(201, || tree.propagate(&evidence, &mut workspace).map(drop))?;
        let posterior = tree.propagate(&evidence, &mut workspace)?;
        let limits = Limits {
            least_marginal: 1e-3,
            ..Limits::default()
        };
        let asked: Vec<Variable> = tree.network().variables().rev().take(FINDINGS).collect();
        let mut found = None;
        let choosing = median(11, || {
            let sets = FaultSets::enumerate(&posterior, &components, limits)?;
            sets.answers(&posterior, &asked)?;
            found = Some((sets.sets().len(), sets.missing()));
            Ok::<_, QueryError>(())
        })?;
        let sizes = tree.sizes();
        let (sets, missing) = found.unwrap_or_default();
        println!(
            "{seed:4} {nodes:5} {:13} {:22} {compiling:9.2?} {marginals:13.0?} {choosing:9.2?} ({sets} sets, {missing:.3} missing)",
            sizes.total,
            format!("{:?}", &sizes.cliques[..3]),
        );
    }
    Ok(())
}

/// The median time of several runs.
fn median<E>(runs: usize, mut run: impl FnMut() -> Result<(), E>) -> Result<Duration, E> {
    let mut times = Vec::new();
    for _ in 0..runs {
        let started = Instant::now();
        run()?;
        times.push(started.elapsed());
    }
    times.sort_unstable();
    Ok(times[runs / 2])
}

/// A network of the shape described above.
fn machine(random: &mut Random) -> Result<(Network, Vec<Component>), BuildError> {
    let mut network = Network::new();
    let mut conditions: Vec<Variable> = Vec::new();
    let mut components: Vec<Variable> = Vec::new();
    let mut inner: Vec<Variable> = Vec::new();
    for link in 0..LINKS {
        let mut parents: Vec<Variable> = conditions.last().copied().into_iter().collect();
        for place in 0..COMPONENTS_PER_LINK {
            let states = &NAMES[..2 + random.below(3)];
            let mut chances = vec![0.02; states.len()];
            chances[0] = 1.0 - 0.02 * (states.len() - 1) as f64;
            let component =
                network.prior(&format!("component_{link}_{place}"), states, &chances)?;
            components.push(component);
            parents.push(component);
        }
        // Intermediate states stand between components and the links that they matter to.
        while inner.len() < (link + 1) * INNER_STATES / LINKS {
            let recent = &components[components.len().saturating_sub(6)..];
            let of =
                [0, 1].map(|half| recent[half * recent.len() / 2 + random.below(recent.len() / 2)]);
            let state = worst(
                &mut network,
                random,
                &format!("inner_{}", inner.len()),
                3,
                &of,
            )?;
            inner.push(state);
            parents.push(state);
        }
        if link > 1 {
            parents.push(components[random.below(components.len() - COMPONENTS_PER_LINK)]);
        }
        let name = format!("link_{link}");
        let states = 3 + random.below(3);
        conditions.push(worst(&mut network, random, &name, states, &parents)?);
    }
    for place in 0..FINDINGS {
        let link = place % LINKS;
        let mut parents = vec![conditions[link]];
        if random.below(2) == 0 {
            parents
                .push(components[link * COMPONENTS_PER_LINK + random.below(COMPONENTS_PER_LINK)]);
        }
        if random.below(3) == 0 {
            parents
                .push(inner[(link * INNER_STATES / LINKS + random.below(2)).min(inner.len() - 1)]);
        }
        let states = 2 + random.below(3);
        let configurations = parents
            .iter()
            .map(|&one| network.states(one).len())
            .product();
        let rows: Vec<Vec<f64>> = (0..configurations).map(|_| random.row(states)).collect();
        network.table(
            &format!("finding_{place}"),
            &NAMES[..states],
            &parents,
            &rows,
        )?;
    }
    let components = components.into_iter();
    let components = components.map(|variable| Component { variable, sound: 0 });
    Ok((network, components.collect()))
}

const NAMES: [&str; 5] = ["good", "fair", "poor", "bad", "gone"];

fn worst(
    network: &mut Network,
    random: &mut Random,
    name: &str,
    states: usize,
    causes: &[Variable],
) -> Result<Variable, BuildError> {
    let effects: Vec<Vec<usize>> = causes
        .iter()
        .map(|&cause| {
            let own = network.states(cause).len();
            (0..own)
                .map(|state| if state == 0 { 0 } else { random.below(states) })
                .collect()
        })
        .collect();
    let causes: Vec<_> = causes
        .iter()
        .copied()
        .zip(effects.iter().map(Vec::as_slice))
        .collect();
    network.worst_of(name, &NAMES[..states], &causes)
}

/// The last findings, each in its first state.
fn findings(tree: &JunctionTree, count: usize) -> Result<Evidence, belief::EvidenceError> {
    let mut evidence = Evidence::new();
    for variable in tree.network().variables().rev().step_by(3).take(count) {
        evidence.observe(tree.network(), variable, 0)?;
    }
    Ok(evidence)
}

/// SplitMix64 (Steele, Lea and Flood 2014; from memory).
struct Random(u64);

impl Random {
    fn below(&mut self, end: usize) -> usize {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        ((z ^ (z >> 31)) % end as u64) as usize
    }

    fn row(&mut self, states: usize) -> Vec<f64> {
        let parts: Vec<f64> = (0..states).map(|_| (1 + self.below(100)) as f64).collect();
        let sum: f64 = parts.iter().sum();
        parts.iter().map(|part| part / sum).collect()
    }
}
