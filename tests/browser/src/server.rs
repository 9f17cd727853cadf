//! The static server of `cargo xtask`, in a process of its own, so that it can really be killed, and started again at
//! the same port.

use std::cell::{Cell, RefCell};
use std::io::{BufRead, BufReader};
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};

use anyhow::{Context, Result};

/// A name set aside for tests, which the browsers of the journeys take to this machine.
pub(crate) const PLAIN_NAME: &str = "freezer.test";

/// A folder served below a path.
pub(crate) struct Site {
    server: PathBuf,
    folder: PathBuf,
    host: &'static str,
    prefix: &'static str,
    port: Cell<u16>,
    process: RefCell<Option<Child>>,
}

impl Site {
    /// Starts to serve `folder` below `prefix`, "/" or for example "/sub/", and nothing elsewhere.
    pub(crate) fn serve(server: &Path, folder: &Path, prefix: &'static str) -> Result<Site> {
        let site = Site {
            server: server.to_owned(),
            folder: folder.to_owned(),
            host: "127.0.0.1",
            prefix,
            port: Cell::new(0),
            process: RefCell::new(None),
        };
        site.start()?;
        Ok(site)
    }

    /// Where the page is. A browser takes this address for a safe one, as it does https.
    pub(crate) fn address(&self) -> String {
        format!("http://{}:{}{}", self.host, self.port.get(), self.prefix)
    }

    /// Under a name that browsers, unlike this machine's number, don't take for a safe one. Chromium only.
    pub(crate) fn under_plain_name(mut self) -> Site {
        self.host = PLAIN_NAME;
        self
    }

    /// The same address with nobody there.
    pub(crate) fn gone(&self) -> Site {
        Site {
            server: self.server.clone(),
            folder: self.folder.clone(),
            host: self.host,
            prefix: self.prefix,
            port: self.port.clone(),
            process: RefCell::new(None),
        }
    }

    /// Starts the process, at the same port as before.
    pub(crate) fn start(&self) -> Result<()> {
        let mut process = Command::new(&self.server)
            .arg("serve-folder")
            .arg(&self.folder)
            .args([
                "--prefix",
                self.prefix,
                "--port",
                &self.port.get().to_string(),
            ])
            // It ends when this does, so that none is left behind.
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .spawn()
            .context("the static server can't be started")?;
        let printed = process.stdout.take().context("the server has no output")?;
        let mut line = String::new();
        BufReader::new(printed).read_line(&mut line)?;
        self.process.replace(Some(process));
        self.port
            .set(line.trim().parse().context("the server named no port")?);
        Ok(())
    }

    /// Kills the process, and with it every connection.
    pub(crate) fn kill(&self) -> Result<()> {
        if let Some(mut process) = self.process.take() {
            process.kill()?;
            process.wait()?;
        }
        Ok(())
    }
}

impl Drop for Site {
    fn drop(&mut self) {
        // A server that is gone already needs no killing.
        let _ = self.kill();
    }
}
