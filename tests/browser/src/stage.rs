//! What a journey is given: the page, servers, browsers and a folder of its own. All of it goes when the journey ends.

use std::cell::RefCell;
use std::path::{Path, PathBuf};
use std::rc::Rc;

use anyhow::{Context, Result, ensure};
use tempfile::TempDir;

use crate::engine::{Engine, Habits};
use crate::server::Site;
use crate::visit::Visit;

/// What the command line names.
#[derive(Debug, Clone)]
pub(crate) struct Given {
    /// The built page.
    pub(crate) dist: PathBuf,
    /// Where a failed journey leaves what it saw.
    pub(crate) artifacts: PathBuf,
    /// axe-core, as a script that runs in a page.
    pub(crate) axe: Option<PathBuf>,
    /// The project's own programs.
    pub(crate) programs: Programs,
}

/// The project's own programs that a journey runs.
#[derive(Debug, Clone)]
pub(crate) struct Programs {
    command_line: PathBuf,
    server: PathBuf,
}

/// The surroundings of one journey.
pub(crate) struct Stage {
    /// The engine that the journey is gone through with.
    pub(crate) engine: Engine,
    given: Given,
    folder: TempDir,
    visits: RefCell<Vec<Rc<Visit>>>,
}

impl Stage {
    /// Prepares the surroundings.
    pub(crate) fn new(engine: Engine, given: &Given) -> Result<Stage> {
        Ok(Stage {
            engine,
            given: given.clone(),
            folder: TempDir::with_prefix("coldcase-journey-")?,
            visits: RefCell::default(),
        })
    }

    /// The built page.
    pub(crate) fn dist(&self) -> &Path {
        &self.given.dist
    }

    /// axe-core, as a script that runs in a page.
    pub(crate) fn axe(&self) -> Result<&Path> {
        self.given
            .axe
            .as_deref()
            .context("name axe-core's script with --axe: `cargo xtask test` does")
    }

    /// A folder of the journey's own, which goes when it ends.
    pub(crate) fn folder(&self) -> &Path {
        self.folder.path()
    }

    /// Writes a file into that folder.
    pub(crate) fn file(&self, name: &str, content: impl AsRef<[u8]>) -> Result<PathBuf> {
        let path = self.folder().join(name);
        std::fs::write(&path, content)?;
        Ok(path)
    }

    /// A copy of the built page that a journey may change.
    pub(crate) fn copy_of_page(&self) -> Result<PathBuf> {
        let copy = self.folder().join("page");
        copy_folder(self.dist(), &copy)?;
        Ok(copy)
    }

    /// The built page, served below a path.
    pub(crate) fn site(&self, prefix: &'static str) -> Result<Site> {
        self.site_of(self.dist(), prefix)
    }

    /// A folder, served below a path.
    pub(crate) fn site_of(&self, folder: &Path, prefix: &'static str) -> Result<Site> {
        Site::serve(&self.given.programs.server, folder, prefix)
    }

    /// The `coldcase` program.
    pub(crate) fn command_line(&self) -> &Path {
        &self.given.programs.command_line
    }

    /// A fresh browser in which the page's start screen stands.
    pub(crate) fn start(&self) -> Result<Rc<Visit>> {
        let visit = self.visit(self.site("/")?, &Habits::default())?;
        visit.arrive()?;
        Ok(visit)
    }

    /// A fresh browser that has not gone anywhere.
    pub(crate) fn visit(&self, site: Site, habits: &Habits) -> Result<Rc<Visit>> {
        let visit = Rc::new(Visit::prepare(self.engine, site, habits)?);
        self.visits.borrow_mut().push(Rc::clone(&visit));
        Ok(visit)
    }

    /// Closes a browser and stops its server.
    pub(crate) fn close(&self, visit: Rc<Visit>) {
        self.visits
            .borrow_mut()
            .retain(|other| !Rc::ptr_eq(other, &visit));
    }

    /// Fails where a browser saw a mistake that the journey didn't look for.
    pub(crate) fn check_for_mistakes(&self) -> Result<()> {
        self.visits
            .borrow()
            .iter()
            .try_for_each(|visit| visit.check_for_mistakes())
    }

    /// Saves what every open browser shows.
    pub(crate) fn save_evidence(&self, journey: &str) -> Result<()> {
        for (number, visit) in self.visits.borrow().iter().enumerate() {
            let name = format!("{journey}-{}-{}", self.engine.name(), number + 1);
            let picture = visit.save_evidence(&self.given.artifacts, &name)?;
            println!("  what was shown: {}", picture.display());
        }
        Ok(())
    }
}

impl Programs {
    /// Builds the project's programs, so that they are those of this very tree.
    pub(crate) fn build() -> Result<Programs> {
        let cargo = std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into());
        let built = std::process::Command::new(cargo)
            .args(["build", "--quiet", "--package", "cli", "--package", "xtask"])
            .status()
            .context("cargo can't be started")?;
        ensure!(built.success(), "the project's programs could not be built");
        // This program lies in the same folder.
        let here = std::env::current_exe()?;
        let program = |name: &str| {
            let program = here.with_file_name(format!("{name}{}", std::env::consts::EXE_SUFFIX));
            ensure!(program.is_file(), "{} is not there", program.display());
            Ok(program)
        };
        Ok(Programs {
            command_line: program("coldcase")?,
            server: program("xtask")?,
        })
    }
}

fn copy_folder(from: &Path, to: &Path) -> Result<()> {
    std::fs::create_dir_all(to)?;
    for entry in std::fs::read_dir(from)? {
        let entry = entry?;
        let target = to.join(entry.file_name());
        if entry.file_type()?.is_dir() {
            copy_folder(&entry.path(), &target)?;
        } else {
            std::fs::copy(entry.path(), target)?;
        }
    }
    Ok(())
}
