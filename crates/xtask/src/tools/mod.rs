//! The tools that building and testing need: what is missing is set up in a per-user cache, what is there is left alone.
//!
//! Each step prints one line. Where a step can't go on, the error says in plain words what to install.

mod axe;
mod binaryen;
mod debian;
mod node;
mod python;
mod rust;

use std::ffi::OsString;
use std::path::{Path, PathBuf};
use std::process::Command;
use std::{env, fs};

use anyhow::{Context, Result, ensure};

pub(crate) use debian::Need;

/// Tools in a cache of the user's own, and the search path on which they come first.
pub(crate) struct Toolbox {
    folder: PathBuf,
}

impl Toolbox {
    /// Opens the cache, which may still be empty.
    pub(crate) fn open() -> Result<Toolbox> {
        let cache = env::var_os("XDG_CACHE_HOME")
            .filter(|folder| !folder.is_empty())
            .map(PathBuf::from)
            .or_else(|| env::home_dir().map(|home| home.join(".cache")))
            .context("neither XDG_CACHE_HOME nor HOME is set: set one, so that tools have a place to be kept")?;
        let folder = cache.join("coldcase").join("tools");
        fs::create_dir_all(&folder)
            .with_context(|| format!("{} can't be made", folder.display()))?;
        Ok(Toolbox { folder })
    }

    /// Sets up all that building the page needs.
    pub(crate) fn set_up_for_page(&self) -> Result<()> {
        println!("Tools for the page, kept in {}", self.folder.display());
        debian::ensure_all(&[Need::C_LINKER])?;
        rust::ensure_wasm_target()?;
        rust::ensure_trunk(self)?;
        rust::ensure_wasm_bindgen(self)?;
        rust::ensure_wasm_split(self)?;
        binaryen::ensure_wasm_opt(self)
    }

    /// Sets up formatter and lints, which a minimal Rust installation lacks.
    pub(crate) fn set_up_for_lints(&self) -> Result<()> {
        rust::ensure_wasm_target()?;
        rust::ensure_components()
    }

    /// Sets up the browsers, their drivers, and what looks through the page in them.
    pub(crate) fn set_up_for_browsers(&self) -> Result<()> {
        debian::ensure_all(Need::BROWSERS)?;
        axe::ensure(self)
    }

    /// Sets up the Python packages that the outside references are made with.
    pub(crate) fn set_up_for_references(&self, requirements: &Path) -> Result<()> {
        python::ensure_requirements(self, requirements)
    }

    /// The interpreter of the environment that the outside references run in.
    pub(crate) fn python(&self) -> PathBuf {
        python::interpreter(&self.folder.join("python"))
    }

    /// axe-core, as a script that runs in a page.
    pub(crate) fn axe(&self) -> PathBuf {
        axe::script(&self.folder)
    }

    /// The search path with this cache's tools in front of the machine's own.
    pub(crate) fn search_path(&self) -> Result<OsString> {
        let machine = env::var_os("PATH").unwrap_or_default();
        let own = [
            self.folder.join("bin"),
            binaryen::programs(&self.folder),
            node::own_node(&self.folder),
        ];
        let folders = own
            .into_iter()
            .filter(|folder| folder.is_dir())
            .chain(env::split_paths(&machine));
        env::join_paths(folders).context("the search path holds a folder with a colon in its name")
    }

    /// Whether the program answers `--version` with a text that holds this version as one word.
    fn has_version(&self, program: &str, version: &str) -> bool {
        self.version_text(program)
            .is_some_and(|text| text.split_whitespace().any(|word| word == version))
    }

    fn version_text(&self, program: &str) -> Option<String> {
        let search_path = self.search_path().ok()?;
        let file = crate::process::find(program, &search_path)?;
        let output = Command::new(file)
            .arg("--version")
            .env("PATH", search_path)
            .output()
            .ok()?;
        output
            .status
            .success()
            .then(|| String::from_utf8_lossy(&output.stdout).into_owned())
    }
}

/// One step: says that the thing is there, or says what is done about it and does that.
fn ensure_step(
    what: &str,
    is_there: impl Fn() -> bool,
    doing: &str,
    set_up: impl FnOnce() -> Result<()>,
) -> Result<()> {
    if is_there() {
        println!("  {what}: there, skipped");
        return Ok(());
    }
    println!("  {what}: missing, {doing}");
    set_up().with_context(|| format!("{what} could not be set up"))?;
    ensure!(
        is_there(),
        "{what} was set up and still does not answer: look at what was printed above"
    );
    Ok(())
}
