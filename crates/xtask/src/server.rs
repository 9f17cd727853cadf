//! A small server for static files, which keeps a list of what was asked of it.

use std::fs::File;
use std::net::{IpAddr, SocketAddr, ToSocketAddrs, UdpSocket};
use std::path::{Component, Path, PathBuf};
use std::sync::{Arc, Mutex, PoisonError};
use std::thread::{self, JoinHandle};

use anyhow::{Result, anyhow};
use tiny_http::{Header, Request, Response, Server};

/// A browser keeps some six connections open, each of which waits on one of these.
const THREADS: usize = 8;

/// What is served, and below which path.
pub(crate) struct Site {
    /// The folder that holds `index.html`.
    pub(crate) folder: PathBuf,
    /// "/" or for example "/sub/": starts and ends with a slash.
    pub(crate) prefix: String,
}

/// One request that was answered.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Seen {
    /// The file, relative to the site's folder; the address where there is no such file.
    pub(crate) file: String,
    /// Whether there was such a file.
    pub(crate) found: bool,
    /// Whether the service worker asked, or the browser for the worker, and not the page.
    pub(crate) by_worker: bool,
}

/// A server at work.
pub(crate) struct RunningServer {
    address: SocketAddr,
    seen: Arc<Mutex<Vec<Seen>>>,
    threads: Vec<JoinHandle<()>>,
}

impl RunningServer {
    /// Starts serving at the address; port 0 takes any free one.
    pub(crate) fn start(site: Site, address: impl ToSocketAddrs) -> Result<RunningServer> {
        let server = Server::http(address).map_err(|problem| {
            anyhow!("the server can't start: {problem}. Another port can be chosen with --port")
        })?;
        let server = Arc::new(server);
        let address = server
            .server_addr()
            .to_ip()
            .ok_or_else(|| anyhow!("the server has no network address"))?;
        let site = Arc::new(site);
        let seen = Arc::default();
        let threads = (0..THREADS)
            .map(|_| {
                let (server, site, seen) =
                    (Arc::clone(&server), Arc::clone(&site), Arc::clone(&seen));
                thread::spawn(move || {
                    while let Ok(request) = server.recv() {
                        answer(request, &site, &seen);
                    }
                })
            })
            .collect();
        Ok(RunningServer {
            address,
            seen,
            threads,
        })
    }

    /// The port it listens at.
    pub(crate) fn port(&self) -> u16 {
        self.address.port()
    }

    /// All requests so far, in order.
    pub(crate) fn seen(&self) -> Vec<Seen> {
        self.seen
            .lock()
            .unwrap_or_else(PoisonError::into_inner)
            .clone()
    }

    /// Serves until the process is ended.
    pub(crate) fn wait(self) {
        for thread in self.threads {
            // A thread that broke leaves the others serving.
            let _ = thread.join();
        }
    }
}

/// This machine's address as its neighbours in the network see it. Sends nothing.
pub(crate) fn address_in_network() -> Option<IpAddr> {
    let socket = UdpSocket::bind("0.0.0.0:0").ok()?;
    // An address that is set aside for documentation: enough to learn which interface leads outside.
    socket.connect("192.0.2.1:9").ok()?;
    Some(socket.local_addr().ok()?.ip()).filter(|address| !address.is_loopback())
}

fn answer(request: Request, site: &Site, seen: &Mutex<Vec<Seen>>) {
    let file = file_for(request.url(), &site.prefix);
    let opened = file
        .as_ref()
        .and_then(|file| File::open(site.folder.join(file)).ok());
    seen.lock()
        .unwrap_or_else(PoisonError::into_inner)
        .push(Seen {
            file: file.as_ref().map_or_else(
                || request.url().to_owned(),
                |file| file.display().to_string(),
            ),
            found: opened.is_some(),
            by_worker: is_by_worker(&request),
        });
    // A browser that went away while it was being answered is no concern of ours.
    let _ = match (file, opened) {
        (Some(file), Some(opened)) => {
            let mut response = Response::from_file(opened);
            for (name, value) in [
                ("Content-Type", content_type(&file)),
                ("Cache-Control", "no-cache"),
            ] {
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

/// The worker's script is fetched with a header of its own; what the worker fetches names the worker as its referrer.
fn is_by_worker(request: &Request) -> bool {
    request.headers().iter().any(|header| {
        header.field.equiv("Service-Worker")
            || (header.field.equiv("Referer") && header.value.as_str().ends_with("/sw.js"))
    })
}

/// The file that an address names, relative to the site's folder; none outside the prefix or above the folder.
fn file_for(url: &str, prefix: &str) -> Option<PathBuf> {
    let path = url.split(['?', '#']).next()?.strip_prefix(prefix)?;
    let file = if path.is_empty() {
        Path::new("index.html")
    } else {
        Path::new(path)
    };
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
        Some("txt") => "text/plain; charset=utf-8",
        _ => "application/octet-stream",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_address_names_a_file_below_the_prefix() {
        assert_eq!(file_for("/", "/"), Some("index.html".into()));
        assert_eq!(file_for("/sub/", "/sub/"), Some("index.html".into()));
        assert_eq!(file_for("/sub/app.js?now", "/sub/"), Some("app.js".into()));
        assert_eq!(
            file_for("/snippets/a/b.js", "/"),
            Some("snippets/a/b.js".into())
        );
    }

    #[test]
    fn nothing_outside_the_folder_can_be_named() {
        assert_eq!(file_for("/app.js", "/sub/"), None);
        assert_eq!(file_for("/../Cargo.toml", "/"), None);
        assert_eq!(file_for("//etc/passwd", "/"), None);
    }

    #[test]
    fn wasm_is_served_as_wasm_so_that_browsers_compile_it_while_it_arrives() {
        assert_eq!(content_type(Path::new("app_bg.wasm")), "application/wasm");
    }
}
