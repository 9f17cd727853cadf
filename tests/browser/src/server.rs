//! A dumb static server in a process of its own, so that it can really be killed, and started again at the same port.
//!
//! The program calls itself with `--serve`; that process ends when its standard input does, so none is left behind.

use std::cell::{Cell, RefCell};
use std::fs::File;
use std::io::{self, BufRead, BufReader, Write};
use std::net::TcpListener;
use std::path::{Component, Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::sync::Arc;
use std::thread;

use anyhow::{Context, Result, anyhow};
use tiny_http::{Header, Request, Response, Server};

/// A browser keeps some six connections open, each of which waits on one of these.
const THREADS: usize = 8;

/// A name set aside for tests, which the browsers of the journeys take to this machine.
pub(crate) const PLAIN_NAME: &str = "freezer.test";

/// A folder served below a path.
pub(crate) struct Site {
    folder: PathBuf,
    host: &'static str,
    prefix: &'static str,
    port: Cell<u16>,
    process: RefCell<Option<Child>>,
}

impl Site {
    /// Starts to serve `folder` below `prefix`, "/" or for example "/sub/", and nothing elsewhere.
    pub(crate) fn serve(folder: &Path, prefix: &'static str) -> Result<Site> {
        let site = Site {
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
            folder: self.folder.clone(),
            host: self.host,
            prefix: self.prefix,
            port: self.port.clone(),
            process: RefCell::new(None),
        }
    }

    /// Starts the process, at the same port as before.
    pub(crate) fn start(&self) -> Result<()> {
        let mut process = Command::new(std::env::current_exe()?)
            .arg("--serve")
            .arg(&self.folder)
            .args([
                "--prefix",
                self.prefix,
                "--port",
                &self.port.get().to_string(),
            ])
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

/// What the process does: prints its port, then serves until its standard input ends.
pub(crate) fn serve_here(folder: PathBuf, prefix: String, port: u16) -> Result<()> {
    let listener = TcpListener::bind(("127.0.0.1", port)).context("the port is taken")?;
    let server = Server::from_listener(listener, None).map_err(|problem| anyhow!(problem))?;
    let address = server.server_addr().to_ip().context("no network address")?;
    let mut output = io::stdout();
    writeln!(output, "{}", address.port())?;
    output.flush()?;

    let shared = Arc::new((server, folder, prefix));
    for _ in 0..THREADS {
        let shared = Arc::clone(&shared);
        thread::spawn(move || {
            let (server, folder, prefix) = &*shared;
            while let Ok(request) = server.recv() {
                answer(request, folder, prefix);
            }
        });
    }
    io::copy(&mut io::stdin(), &mut io::sink())?;
    Ok(())
}

fn answer(request: Request, folder: &Path, prefix: &str) {
    let file = file_for(request.url(), prefix);
    let opened = file.as_ref().and_then(|file| open(&folder.join(file)));
    // A browser that went away while it was being answered is no concern of ours.
    let _ = match (file, opened) {
        (Some(file), Some((opened, is_packed))) => {
            let mut response = Response::from_file(opened);
            let encoding = is_packed.then_some(("Content-Encoding", "gzip"));
            let plain = [
                ("Content-Type", content_type(&file)),
                ("Cache-Control", "no-cache"),
            ];
            for (name, value) in plain.into_iter().chain(encoding) {
                if let Ok(header) = Header::from_bytes(name, value) {
                    response.add_header(header);
                }
            }
            request.respond(response)
        }
        _ => request
            .respond(Response::from_string("There is no such file here.").with_status_code(404)),
    };
}

/// The file, packed where someone put a packed copy beside it.
fn open(file: &Path) -> Option<(File, bool)> {
    let mut packed = file.as_os_str().to_owned();
    packed.push(".gz");
    match File::open(packed) {
        Ok(packed) => Some((packed, true)),
        Err(_) => Some((File::open(file).ok()?, false)),
    }
}

/// The file that an address names, relative to the folder; none outside the prefix or above the folder.
fn file_for(url: &str, prefix: &str) -> Option<PathBuf> {
    let path = url.split(['?', '#']).next()?.strip_prefix(prefix)?;
    let file = Path::new(if path.is_empty() { "index.html" } else { path });
    file.components()
        .all(|part| matches!(part, Component::Normal(_)))
        .then(|| file.to_owned())
}

fn content_type(file: &Path) -> &'static str {
    match file.extension().and_then(|extension| extension.to_str()) {
        Some("html") => "text/html; charset=utf-8",
        Some("css") => "text/css; charset=utf-8",
        Some("js") => "text/javascript; charset=utf-8",
        Some("wasm") => "application/wasm",
        Some("json") => "application/json",
        Some("webmanifest") => "application/manifest+json",
        Some("svg") => "image/svg+xml",
        Some("png") => "image/png",
        _ => "application/octet-stream",
    }
}
