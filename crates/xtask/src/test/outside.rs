//! Steps that hold our figures against those of programs that we did not write.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use anyhow::{Result, ensure};

use super::Context;
use crate::counts::Counts;
use crate::process;
use crate::project::Project;
use crate::tools::Toolbox;

/// The pinned Python packages that the outside references are made with.
pub(crate) fn requirements(project: &Project) -> PathBuf {
    folder(project).join("requirements.txt")
}

/// Runs a script under `tests/reference` in the environment with the pinned packages.
pub(crate) fn python(project: &Project, tools: &Toolbox, script: &Path) -> Command {
    let mut python = Command::new(tools.python());
    python
        .arg(script)
        .current_dir(folder(project))
        .env("PYTHONDONTWRITEBYTECODE", "1");
    python
}

/// Every script in `tests/reference` makes its figures anew and compares them with the ones in the repository.
pub(super) fn references(context: &Context) -> Result<Counts> {
    let mut scripts: Vec<PathBuf> = fs::read_dir(folder(&context.project))?
        .filter_map(|entry| Some(entry.ok()?.path()))
        .filter(|file| file.extension().is_some_and(|extension| extension == "py"))
        .collect();
    scripts.sort();
    ensure!(
        !scripts.is_empty(),
        "there is no script under tests/reference"
    );
    let mut counts = Counts::default();
    for script in scripts {
        println!("{}", script.strip_prefix(context.project.root())?.display());
        let mut python = python(&context.project, &context.tools, &script);
        counts = counts + Counts::one(process::run(python.arg("--check")).is_ok());
    }
    Ok(counts)
}

/// The networks of whole machines are exported, and other programs answer the same evidence.
pub(super) fn networks(context: &Context) -> Result<Counts> {
    let written = exported_networks(&context.project)?;
    let compare = Path::new("networks/compare.py");
    let mut python = python(&context.project, &context.tools, compare);
    let captured = process::run_and_capture(python.arg(written))?;
    let counts = Counts::read(&captured.text, captured.success);
    ensure!(counts != Counts::default(), "nothing was compared");
    Ok(counts)
}

/// The folder into which the networks of whole machines were just written, with evidence.
fn exported_networks(project: &Project) -> Result<PathBuf> {
    let folder = project.target()?.join("networks");
    let mut example = project.cargo(&[
        "run",
        "--quiet",
        "--package",
        "coldcase-tests",
        "--example",
        "networks",
    ]);
    process::run(example.arg(&folder))?;
    Ok(folder)
}

fn folder(project: &Project) -> PathBuf {
    project.root().join("tests/reference")
}
