//! Writes what programs of others are to answer as we do: the network of every build with sets of
//! evidence drawn from it, and the networks of the worked cases as a job's are exported.
//! `cargo xtask test networks` has them answer.
//!
//! ```text
//! cargo run -p coldcase-tests --example networks FOLDER
//! ```

// The worked cases are right by construction.
#![allow(clippy::unwrap_used, clippy::panic)]

#[path = "../tests/told/mod.rs"]
mod told;

use std::path::{Path, PathBuf};
use std::process::ExitCode;

use coldcase_tests::networks::{RecordError, sets, write, write_jobs};
use diagnosis::{Assumptions, Model, export_networks};
use serde_json::Value;

/// How many sets of evidence, and what they are drawn by.
const SETS: usize = 200;
const SEED: u64 = 4;

/// Worked cases as machines are found, and such in which something was done to the machine.
const CASES: [&str; 2] = [
    include_str!("../cases/machines.json"),
    include_str!("../cases/changes.json"),
];

fn main() -> ExitCode {
    let Some(folder) = std::env::args_os().nth(1).map(PathBuf::from) else {
        eprintln!("Name the folder to write to.");
        return ExitCode::FAILURE;
    };
    match write_sets(&folder).and_then(|()| write_cases(&folder)) {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("{error}");
            ExitCode::FAILURE
        }
    }
}

fn write_sets(folder: &Path) -> Result<(), RecordError> {
    let assumptions = Assumptions::default();
    let sets = sets(&assumptions, SETS, SEED)?;
    let findings: usize = sets.iter().map(|(_, drawn)| drawn.findings.len()).sum();
    let weighed: usize = sets.iter().map(|(_, drawn)| drawn.weighed()).sum();
    println!("{SETS} sets of evidence with {findings} findings, {weighed} of them likelihoods");
    write(folder, &assumptions, &sets)
}

fn write_cases(folder: &Path) -> Result<(), RecordError> {
    let cases = CASES.map(|text| serde_json::from_str::<Vec<Value>>(text).unwrap());
    let jobs: Vec<_> = cases
        .iter()
        .flatten()
        .map(|case| {
            let told = case["told"].as_array().unwrap().iter();
            let told: Vec<&str> = told.map(|line| line.as_str().unwrap()).collect();
            let whole = told::assessed(&told).whole.unwrap();
            let now = told::moment(told.len());
            let networks = export_networks(&Model::default(), &told::job(&told), now);
            (networks, whole)
        })
        .collect();
    println!("{} worked cases", jobs.len());
    write_jobs(folder, &jobs)
}
