//! Do the tests notice mistakes? Each patch under `tests/planted` plants one mistake, and names in its first line the
//! test command that has to fail on it:
//!
//! ```text
//! # test: cargo test -p measure windings
//! ```
//!
//! Works in a second checkout of the last commit, so that nobody's work is touched.

use std::collections::BTreeSet;
use std::env;
use std::fmt;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use anyhow::{Context, Result, ensure};

use crate::counts::Counts;
use crate::process;
use crate::project::Project;

/// A mistake and the command that has to notice it.
struct Planted {
    patch: PathBuf,
    name: String,
    test: String,
}

/// What became of a planted mistake.
#[derive(Debug, PartialEq, Eq)]
enum Fate {
    Caught,
    Survived,
    /// A compiler error is no test: the patch has to be made anew.
    NoTestRan,
    DoesNotApply,
}

impl fmt::Display for Fate {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.pad(match self {
            Fate::Caught => "caught",
            Fate::Survived => "NOT CAUGHT",
            Fate::NoTestRan => "NO TEST RAN",
            Fate::DoesNotApply => "DOES NOT APPLY",
        })
    }
}

/// Plants each mistake in turn and returns whether all were caught.
pub(crate) fn run(project: &Project) -> Result<bool> {
    let planted = read_all(&project.root().join("tests/planted"))?;
    ensure!(!planted.is_empty(), "there is no patch under tests/planted");
    let checkout = Checkout::make(project)?;

    let commands: BTreeSet<&str> = planted.iter().map(|one| one.test.as_str()).collect();
    for command in commands {
        println!("without any mistake: {command}");
        let counts = checkout.test(command)?;
        ensure!(
            counts.failed == 0 && counts.passed > 0,
            "`{command}` has to pass without any mistake: {} passed, {} failed",
            counts.passed,
            counts.failed
        );
    }
    let mut all_caught = true;
    for one in &planted {
        let fate = checkout.plant(one)?;
        println!("{fate:>14}: {}", one.name);
        all_caught &= fate == Fate::Caught;
    }
    println!(
        "{} mistakes planted, {}",
        planted.len(),
        if all_caught {
            "all caught"
        } else {
            "not all caught"
        }
    );
    Ok(all_caught)
}

/// The second checkout; goes away with this value.
struct Checkout {
    project_root: PathBuf,
    folder: PathBuf,
    target: PathBuf,
}

impl Checkout {
    fn make(project: &Project) -> Result<Checkout> {
        let metadata = project.metadata()?;
        let target = metadata["target_directory"]
            .as_str()
            .context("cargo names no target folder")?;
        let folder = env::temp_dir().join(format!("coldcase-planted-{}", std::process::id()));
        let checkout = Checkout {
            project_root: project.root().to_owned(),
            folder,
            // Its own: cargo takes what was compiled in one checkout for the other's, mistakes included.
            target: Path::new(target).join("planted"),
        };
        let mut git = git(project.root());
        process::output(
            git.args(["worktree", "add", "--detach"])
                .arg(&checkout.folder)
                .arg("HEAD"),
        )?;
        Ok(checkout)
    }

    fn plant(&self, planted: &Planted) -> Result<Fate> {
        if process::output(
            git(&self.folder)
                .args(["apply", "--whitespace=nowarn"])
                .arg(&planted.patch),
        )
        .is_err()
        {
            return Ok(Fate::DoesNotApply);
        }
        let counts = self.test(&planted.test);
        process::output(git(&self.folder).args(["checkout", "--quiet", "--", "."]))?;
        process::output(git(&self.folder).args(["clean", "--quiet", "-d", "--force"]))?;
        Ok(judge(counts?))
    }

    /// Runs a test command with the outcome of its tests alone: one that did not get as far counts nothing.
    fn test(&self, command: &str) -> Result<Counts> {
        let mut words = command.split_whitespace();
        let program = words.next().context("the test command is empty")?;
        let mut command = Command::new(program);
        command
            .args(words)
            .current_dir(&self.folder)
            .env("CARGO_TARGET_DIR", &self.target);
        let output = command
            .output()
            .with_context(|| format!("{program} can't be started"))?;
        // Always read as if it had ended well, so that a compiler error is not taken for a failed test.
        Ok(Counts::read(&String::from_utf8_lossy(&output.stdout), true))
    }
}

impl Drop for Checkout {
    fn drop(&mut self) {
        let mut git = git(&self.project_root);
        if let Err(problem) = process::output(
            git.args(["worktree", "remove", "--force"])
                .arg(&self.folder),
        ) {
            eprintln!("The second checkout could not be removed: {problem:#}");
        }
    }
}

fn git(folder: &Path) -> Command {
    let mut git = Command::new("git");
    git.current_dir(folder);
    git
}

fn judge(counts: Counts) -> Fate {
    match counts {
        Counts {
            passed: 0,
            failed: 0,
        } => Fate::NoTestRan,
        Counts { failed: 0, .. } => Fate::Survived,
        _ => Fate::Caught,
    }
}

fn read_all(folder: &Path) -> Result<Vec<Planted>> {
    let entries =
        fs::read_dir(folder).with_context(|| format!("{} can't be read", folder.display()))?;
    let mut patches: Vec<PathBuf> = entries
        .filter_map(|entry| Some(entry.ok()?.path()))
        .filter(|file| {
            file.extension()
                .is_some_and(|extension| extension == "patch")
        })
        .collect();
    patches.sort();
    patches
        .into_iter()
        .map(|patch| {
            let name = patch
                .file_stem()
                .unwrap_or_default()
                .to_string_lossy()
                .into_owned();
            let text = fs::read_to_string(&patch)?;
            let test = test_command(&text)
                .with_context(|| {
                    format!("{name}: the first line has to read `# test: cargo test …`")
                })?
                .to_owned();
            Ok(Planted { patch, name, test })
        })
        .collect()
}

fn test_command(patch: &str) -> Option<&str> {
    patch
        .lines()
        .next()?
        .strip_prefix("# test:")
        .map(str::trim)
        .filter(|command| !command.is_empty())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_first_line_of_a_patch_names_its_test() {
        assert_eq!(
            test_command("# test: cargo test -p measure\ndiff --git"),
            Some("cargo test -p measure")
        );
        assert_eq!(test_command("diff --git"), None);
        assert_eq!(test_command("# test:\n"), None);
    }

    #[test]
    fn only_a_failed_test_catches_a_mistake() {
        assert_eq!(
            judge(Counts {
                passed: 3,
                failed: 1
            }),
            Fate::Caught
        );
        assert_eq!(
            judge(Counts {
                passed: 3,
                failed: 0
            }),
            Fate::Survived
        );
        assert_eq!(judge(Counts::default()), Fate::NoTestRan);
    }
}
