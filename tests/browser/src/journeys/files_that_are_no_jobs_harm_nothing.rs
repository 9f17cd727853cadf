//! A file that can't be opened is told in words, one from a newer program is passed on byte for byte, and a damaged job
//! on the device is never overwritten and keeps nobody from the others.

use std::fs;

use anyhow::{Result, ensure};
use serde_json::json;

use crate::stage::Stage;
use crate::steps::{make_job, project_file, saved_file};
use crate::visit::Visit;

const DAMAGED: &str = "3\n{\n  \"type\": \"coldcase-job\",\n  \"version\": 1,\n  \"id\": \"dama";
const DAMAGED_NAME: &str = "coldcase/job/damaged";

pub(super) fn run(stage: &Stage) -> Result<()> {
    let visit = stage.start()?;
    refused(
        &visit,
        "tests/documents/bad/words.json",
        "this is text, but not JSON",
    )?;
    refused(
        &visit,
        "tests/documents/bad/not-a-job.json",
        "it doesn't say that it is a job",
    )?;
    refused(
        &visit,
        "tests/documents/bad/empty.json",
        "The file is empty",
    )?;
    refused_text(&visit)?;
    newer(stage, &visit)?;
    damaged(stage, &visit)
}

fn refused(visit: &Visit, file: &str, said: &str) -> Result<()> {
    visit.go_to("#/import")?;
    visit.hand_over("Choose a file", &project_file(file).canonicalize()?)?;
    visit.see("It can't be opened")?;
    visit.see(said)?;
    ensure!(
        visit.stored_names("coldcase/job/")?.is_empty(),
        "{file} was kept as a job"
    );
    Ok(())
}

/// What was pasted stays in its field.
fn refused_text(visit: &Visit) -> Result<()> {
    visit.fill("Or paste its text", "[1, 2]")?;
    visit.press("Look into it")?;
    visit.see("This is JSON, but a list and not a job")?;
    ensure!(
        visit.value_of("Or paste its text")? == "[1, 2]",
        "the pasted text is gone"
    );
    Ok(())
}

fn newer(stage: &Stage, visit: &Visit) -> Result<()> {
    let path = project_file("tests/documents/newer/version-2.json").canonicalize()?;
    visit.go_to("#/import")?;
    visit.hand_over("Choose a file", &path)?;
    visit.see("This job is of version 2")?;
    visit.press("Keep it, read only")?;
    visit.go_to("#/")?;
    visit.see("From a newer version: read only")?;
    visit.go_to("#/job/version-2/record")?;
    let saved = saved_file(stage, visit, || visit.press("Save as a file"))?;
    ensure!(
        fs::read(saved)? == fs::read(path)?,
        "the newer job was changed on its way"
    );
    Ok(())
}

fn damaged(stage: &Stage, visit: &Visit) -> Result<()> {
    let script = "localStorage.setItem(arguments[0], arguments[1])";
    visit
        .window()
        .run(script, &[json!(DAMAGED_NAME), json!(DAMAGED)])?;
    visit.go_to("#/")?;
    visit.reload()?;
    visit.see("Can't be read")?;
    make_job(visit)?;
    visit.go_to("#/job/damaged")?;
    visit.see("the file ends in the middle")?;
    visit.see("It stays here as it is and is never overwritten")?;
    let saved = saved_file(stage, visit, || visit.press("Save as a file"))?;
    let document = DAMAGED
        .split_once('\n')
        .map_or(DAMAGED, |(_, document)| document);
    ensure!(
        fs::read_to_string(saved)? == document,
        "the damaged job was changed on its way"
    );
    visit.reload()?;
    let kept = visit.stored(DAMAGED_NAME)?;
    ensure!(
        kept.as_deref() == Some(DAMAGED),
        "the damaged job is now {kept:?}"
    );
    let jobs = visit.stored_names("coldcase/job/")?;
    ensure!(jobs.len() == 3, "on the device are {jobs:?}");
    Ok(())
}
