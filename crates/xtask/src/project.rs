//! Where the project lies, and what cargo says about it.

use std::env;
use std::path::{Path, PathBuf};
use std::process::Command;

use anyhow::{Context, Result};
use serde_json::Value;

use crate::process;

/// The repository that this run works on.
pub(crate) struct Project {
    root: PathBuf,
}

impl Project {
    /// Finds the repository by walking up from the current directory, so that a second checkout of the project is
    /// never mistaken for the one in which this program was compiled.
    pub(crate) fn find() -> Result<Project> {
        let start = env::current_dir().context("the current directory can't be read")?;
        let root = start
            .ancestors()
            .find(|folder| folder.join("crates/xtask").is_dir())
            .context("this is not inside the project: change into its folder first")?;
        Ok(Project {
            root: root.to_owned(),
        })
    }

    /// The repository's top folder.
    pub(crate) fn root(&self) -> &Path {
        &self.root
    }

    /// Where the built page lies.
    pub(crate) fn dist(&self) -> PathBuf {
        self.root.join("dist")
    }

    /// Where cargo puts what it builds.
    pub(crate) fn target(&self) -> Result<PathBuf> {
        let metadata = self.metadata()?;
        let folder = metadata["target_directory"].as_str();
        Ok(PathBuf::from(
            folder.context("cargo names no target folder")?,
        ))
    }

    /// A cargo command that starts in the repository.
    pub(crate) fn cargo(&self, arguments: &[&str]) -> Command {
        let mut command = Command::new("cargo");
        command.current_dir(&self.root).args(arguments);
        command
    }

    /// `cargo metadata` for the two platforms that the project is built for.
    pub(crate) fn metadata(&self) -> Result<Value> {
        let text = process::output(&mut self.cargo(&[
            "metadata",
            "--format-version=1",
            "--filter-platform=x86_64-unknown-linux-gnu",
            "--filter-platform=wasm32-unknown-unknown",
        ]))?;
        serde_json::from_str(&text).context("cargo metadata wrote something unreadable")
    }

    /// Every file that git tracks or would track, relative to the top folder.
    pub(crate) fn files(&self) -> Result<Vec<PathBuf>> {
        let mut git = Command::new("git");
        git.current_dir(&self.root).args([
            "ls-files",
            "-z",
            "--cached",
            "--others",
            "--exclude-standard",
        ]);
        let listed = process::output(&mut git)?;
        let mut files: Vec<PathBuf> = listed
            .split('\0')
            .filter(|name| !name.is_empty())
            .map(PathBuf::from)
            .filter(|file| self.root.join(file).is_file())
            .collect();
        files.sort();
        files.dedup();
        Ok(files)
    }
}
