//! How large the networks of whole machines are, and how long they take: to compile, to give
//! every marginal after a new reading, and to assess a whole job with the ranking of what is next.
//!
//! Writes the networks, the evidence and the times into a folder, where
//! `tests/reference/networks/time.py` has other programs answer the same evidence.
//!
//! ```text
//! cargo run --profile host -p coldcase-tests --example inference FOLDER
//! ```

// The worked cases are right by construction.
#![allow(clippy::unwrap_used, clippy::panic)]

#[allow(dead_code)] // What only the tests ask for.
#[path = "../tests/told/mod.rs"]
mod told;

use std::error::Error;
use std::hint::black_box;
use std::path::PathBuf;
use std::time::{Duration, Instant};

use belief::{EvidenceError, JunctionTree};
use coldcase_tests::networks::{Drawn, sets, write};
use diagnosis::{Assumptions, Build, Choice, Model, assess, assess_checks};
use serde_json::Value;

/// Sets of evidence, and what they are drawn by: other ones than those that are compared.
const SETS: usize = 60;
const SEED: u64 = 5;
/// Each time is the middle of so many.
const RUNS: usize = 15;

const CASES: &str = include_str!("../cases/machines.json");

fn main() -> Result<(), Box<dyn Error>> {
    let folder = std::env::args_os().nth(1).map(PathBuf::from);
    let folder = folder.ok_or("name the folder to write to")?;
    let assumptions = Assumptions::default();
    for &build in Build::ALL {
        let tree = assumptions.tree(build).ok_or("a network is missing")?;
        let network = tree.network().clone();
        let compiling = middle(|| JunctionTree::compile(network.clone()));
        let sizes = tree.sizes();
        println!(
            "{}: {} variables, {} entries in {} cliques, the largest {:?}, compiled in {:.1} ms",
            build.name(),
            network.len(),
            sizes.total,
            sizes.cliques.len(),
            &sizes.cliques[..4],
            milliseconds(compiling)
        );
    }
    let sets = sets(&assumptions, SETS, SEED)?;
    write(&folder, &assumptions, &sets)?;
    let mut seconds = Vec::new();
    for (build, drawn) in &sets {
        let tree = assumptions.tree(*build).ok_or("a network is missing")?;
        seconds.push(after_a_new_reading(tree, drawn)?.as_secs_f64());
    }
    std::fs::write(folder.join("times.json"), serde_json::to_string(&seconds)?)?;
    time_jobs();
    Ok(())
}

/// The time to every marginal, the last finding being new.
fn after_a_new_reading(tree: &JunctionTree, drawn: &Drawn) -> Result<Duration, EvidenceError> {
    let mut earlier = drawn.clone();
    earlier.findings.pop();
    let (earlier, all) = (earlier.evidence(tree)?, drawn.evidence(tree)?);
    let mut workspace = tree.workspace();
    let mut times = Vec::new();
    for _ in 0..RUNS {
        tree.propagate(black_box(&earlier), &mut workspace)?;
        let start = Instant::now();
        // Every marginal is there when the propagation ends.
        black_box(tree.propagate(black_box(&all), &mut workspace)?);
        times.push(start.elapsed());
    }
    times.sort();
    Ok(times[RUNS / 2])
}

/// Whole jobs, with the reasons, the verdict and the ranking.
fn time_jobs() {
    let cases: Value = serde_json::from_str(CASES).unwrap();
    let model = Model::default();
    let (mut all, mut checks) = (Vec::new(), Vec::new());
    for case in cases.as_array().unwrap() {
        let told = case["told"].as_array().unwrap().iter();
        let told: Vec<&str> = told.map(|line| line.as_str().unwrap()).collect();
        let (job, now) = (told::job(&told), told::moment(told.len()));
        all.push(middle(|| assess(&model, &job, now)));
        checks.push(middle(|| assess_checks(&model, &job, now)));
    }
    for (what, mut times) in [
        ("a whole job, with reasons, verdict and ranking", all),
        ("of it, each check by itself", checks),
    ] {
        times.sort();
        let of_hundred = |percent: usize| milliseconds(times[(times.len() - 1) * percent / 100]);
        println!(
            "{what}: middle {:.1} ms, 95 of 100 within {:.1} ms, at most {:.1} ms",
            of_hundred(50),
            of_hundred(95),
            of_hundred(100)
        );
    }
}

fn middle<T>(mut work: impl FnMut() -> T) -> Duration {
    let mut times: Vec<Duration> = (0..RUNS)
        .map(|_| {
            let start = Instant::now();
            black_box(work());
            start.elapsed()
        })
        .collect();
    times.sort();
    times[RUNS / 2]
}

fn milliseconds(time: Duration) -> f64 {
    1_000.0 * time.as_secs_f64()
}
