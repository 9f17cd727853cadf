//! Sets of evidence over the networks of all builds, with our answers, as files that other
//! programs read.

use std::fmt;
use std::fs;
use std::path::Path;

use belief::{Evidence, EvidenceError, JunctionTree, export_bif};
use diagnosis::{Assumptions, Build, Choice};
use serde_json::{Map, Value, json};

use super::draw::{Drawn, draw};
use crate::motors::Random;

/// Why nothing was written.
#[derive(Debug)]
pub enum RecordError {
    /// A network can't be had.
    NoNetwork(Build),
    /// Evidence that a network doesn't take.
    Refused(EvidenceError),
    /// A file can't be written.
    NotWritten(std::io::Error),
}

impl fmt::Display for RecordError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NoNetwork(build) => write!(f, "{}: there is no network", build.name()),
            Self::Refused(error) => error.fmt(f),
            Self::NotWritten(error) => write!(f, "can't be written: {error}"),
        }
    }
}

impl std::error::Error for RecordError {}

impl From<EvidenceError> for RecordError {
    fn from(error: EvidenceError) -> Self {
        Self::Refused(error)
    }
}

/// Sets of evidence, the builds in turn. The same seed draws the same sets.
///
/// # Errors
/// When a network can't be had.
pub fn sets(
    assumptions: &Assumptions,
    count: usize,
    seed: u64,
) -> Result<Vec<(Build, Drawn)>, RecordError> {
    let mut random = Random::seeded(seed);
    let builds = Build::ALL.iter().copied().cycle().take(count);
    builds
        .map(|build| {
            let tree = tree(assumptions, build)?;
            let drawn = draw(tree.network(), &mut random).ok_or(RecordError::NoNetwork(build))?;
            Ok((build, drawn))
        })
        .collect()
}

/// Writes each build's network as it is exported, without evidence, and `sets.json` with every
/// set and what we make of it.
///
/// # Errors
/// When a network can't be had or a file can't be written.
pub fn write(
    folder: &Path,
    assumptions: &Assumptions,
    sets: &[(Build, Drawn)],
) -> Result<(), RecordError> {
    fs::create_dir_all(folder).map_err(RecordError::NotWritten)?;
    for &build in Build::ALL {
        let network = tree(assumptions, build)?.network();
        let text = export_bif(build.name(), network, &Evidence::new()).text;
        let file = folder.join(build.name()).with_extension("bif");
        fs::write(file, text).map_err(RecordError::NotWritten)?;
    }
    let answered: Result<Vec<Value>, RecordError> = sets
        .iter()
        .map(|(build, drawn)| answered(*build, tree(assumptions, *build)?, drawn))
        .collect();
    let text = json!({ "sets": answered? }).to_string();
    fs::write(folder.join("sets.json"), text).map_err(RecordError::NotWritten)
}

impl Drawn {
    /// As evidence of the network that it was drawn from.
    ///
    /// # Errors
    /// When it is of another network.
    pub fn evidence(&self, tree: &JunctionTree) -> Result<Evidence, EvidenceError> {
        let mut evidence = Evidence::new();
        for (variable, weights) in &self.findings {
            evidence.weigh(tree.network(), *variable, weights)?;
        }
        Ok(evidence)
    }
}

/// One set with every marginal.
fn answered(build: Build, tree: &JunctionTree, drawn: &Drawn) -> Result<Value, RecordError> {
    let network = tree.network();
    let evidence = drawn.evidence(tree)?;
    let mut workspace = tree.workspace();
    let posterior = tree.propagate(&evidence, &mut workspace)?;
    let marginals: Map<String, Value> = network
        .variables()
        .map(|one| (network.name(one).to_owned(), json!(posterior.marginal(one))))
        .collect();
    let findings: Vec<Value> = drawn
        .findings
        .iter()
        .map(|(variable, weights)| json!([network.name(*variable), weights]))
        .collect();
    Ok(json!({
        "network": build.name(),
        "findings": findings,
        "ln_evidence": posterior.ln_evidence(),
        "marginals": marginals,
    }))
}

fn tree(assumptions: &Assumptions, build: Build) -> Result<&JunctionTree, RecordError> {
    assumptions.tree(build).ok_or(RecordError::NoNetwork(build))
}
