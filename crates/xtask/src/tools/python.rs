//! Environments for Python packages, so that nothing is installed into the machine's own Python.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use anyhow::{Context, Result};

use super::debian::{self, Need};
use super::{Toolbox, ensure_step};
use crate::process;

/// Installs the pinned packages; a change of the pins installs again.
pub(super) fn ensure_requirements(tools: &Toolbox, requirements: &Path) -> Result<()> {
    let environment = tools.folder.join("python");
    let wanted = fs::read_to_string(requirements)
        .with_context(|| format!("{} can't be read", requirements.display()))?;
    // Written last, so that an installation that broke off is done again.
    let installed = environment.join("installed-requirements.txt");
    let is_there = || fs::read_to_string(&installed).is_ok_and(|text| text == wanted);
    ensure_step(
        "Python packages for outside references",
        is_there,
        "installing them with pip",
        || {
            debian::ensure_all(&[Need::PYTHON])?;
            make_environment(&environment)?;
            pip_install(&environment, &["-r", &requirements.to_string_lossy()])?;
            fs::write(&installed, &wanted)
                .with_context(|| format!("{} can't be written", installed.display()))
        },
    )
}

/// Makes an environment, or a fresh one in the place of an old one.
pub(super) fn make_environment(folder: &Path) -> Result<()> {
    process::run(
        Command::new("python3")
            .args(["-m", "venv", "--clear"])
            .arg(folder),
    )
}

/// Installs packages into an environment.
pub(super) fn pip_install(environment: &Path, packages: &[&str]) -> Result<()> {
    process::run(
        Command::new(interpreter(environment))
            .args([
                "-m",
                "pip",
                "install",
                "--quiet",
                "--disable-pip-version-check",
            ])
            .args(packages),
    )
}

/// The environment's own Python.
pub(super) fn interpreter(environment: &Path) -> PathBuf {
    environment.join("bin/python")
}
