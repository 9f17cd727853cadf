//! Jobs as they are exported, with the suspects that we name, as files that other programs read.

use std::fs;
use std::path::Path;

use diagnosis::{Choice, ExportedNetwork, Whole};
use serde_json::{Value, json};

use super::record::RecordError;

/// Writes the networks of each job, and `jobs.json` with how likely we call each suspect.
///
/// # Errors
/// When a file can't be written.
pub fn write_jobs(
    folder: &Path,
    jobs: &[(Vec<ExportedNetwork>, Whole)],
) -> Result<(), RecordError> {
    fs::create_dir_all(folder).map_err(RecordError::NotWritten)?;
    let mut all = Vec::new();
    for (place, (networks, whole)) in jobs.iter().enumerate() {
        let mut described = Vec::new();
        for network in networks {
            let file = format!("job-{place}-{}.bif", network.build.name());
            fs::write(folder.join(&file), &network.text).map_err(RecordError::NotWritten)?;
            described.push(json!({ "file": file, "weight": network.weight }));
        }
        all.push(json!({ "networks": described, "suspects": suspects(whole) }));
    }
    let text = json!({ "jobs": all }).to_string();
    fs::write(folder.join("jobs.json"), text).map_err(RecordError::NotWritten)
}

/// The variable and the state that each suspect is, as the networks call them.
fn suspects(whole: &Whole) -> Vec<Value> {
    let word = |name: &str| name.replace('-', "_");
    let faults = whole.suspects.iter().filter_map(|suspect| {
        let fault = suspect.fault?;
        let (part, state) = (word(fault.part().name()), word(fault.name()));
        Some(json!([part, state, suspect.probability]))
    });
    let nothing = json!(["trouble", "none", whole.nothing_wrong.probability]);
    faults.chain([nothing]).collect()
}
