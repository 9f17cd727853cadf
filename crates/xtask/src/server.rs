//! A small server for static files, which keeps a list of what was asked of it.

mod http;

use std::fs;
use std::io;
use std::net::{IpAddr, SocketAddr, TcpListener, TcpStream, ToSocketAddrs, UdpSocket};
use std::path::{Component, Path, PathBuf};
use std::sync::{Arc, Mutex, PoisonError};
use std::thread::{self, JoinHandle};

use anyhow::{Result, anyhow};

use http::{Request, Response};

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
    accepting: JoinHandle<()>,
}

impl RunningServer {
    /// Starts serving at the address; port 0 takes any free one.
    pub(crate) fn start(site: Site, address: impl ToSocketAddrs) -> Result<RunningServer> {
        let listener = TcpListener::bind(address).map_err(|problem| {
            anyhow!("the server can't start: {problem}. Another port can be chosen with --port")
        })?;
        let address = listener.local_addr()?;
        let seen = Arc::default();
        let shared = Arc::new((site, Arc::clone(&seen)));
        let accepting = thread::spawn(move || {
            // A thread for each connection: browsers open more than they use, and one that says nothing must keep
            // nobody waiting.
            for connection in listener.incoming().flatten() {
                let shared = Arc::clone(&shared);
                thread::spawn(move || {
                    let (site, seen) = &*shared;
                    // A browser that went away while it was being answered is no concern of ours.
                    let _ = answer(&connection, site, seen);
                });
            }
        });
        Ok(RunningServer {
            address,
            seen,
            accepting,
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
        // It ends only by breaking, and then there is nothing left to wait for.
        let _ = self.accepting.join();
    }
}

/// Serves until the standard input ends, as it does when whoever started this is gone. Prints the port.
pub(crate) fn serve_until_input_ends(site: Site, port: u16) -> Result<()> {
    let server = RunningServer::start(site, ("127.0.0.1", port))?;
    println!("{}", server.port());
    io::copy(&mut io::stdin(), &mut io::sink())?;
    Ok(())
}

/// This machine's address as its neighbours in the network see it. Sends nothing.
pub(crate) fn address_in_network() -> Option<IpAddr> {
    let socket = UdpSocket::bind("0.0.0.0:0").ok()?;
    // An address that is set aside for documentation: enough to learn which interface leads outside.
    socket.connect("192.0.2.1:9").ok()?;
    Some(socket.local_addr().ok()?.ip()).filter(|address| !address.is_loopback())
}

fn answer(connection: &TcpStream, site: &Site, seen: &Mutex<Vec<Seen>>) -> Result<()> {
    let Some(request) = Request::read(connection)? else {
        return Ok(());
    };
    let file = file_for(&request.address, &site.prefix);
    let opened = file.as_ref().and_then(|file| open(&site.folder.join(file)));
    seen.lock()
        .unwrap_or_else(PoisonError::into_inner)
        .push(Seen {
            file: file.as_ref().map_or_else(
                || request.address.clone(),
                |file| file.display().to_string(),
            ),
            found: opened.is_some(),
            by_worker: is_by_worker(&request),
        });
    let response = match (&file, opened) {
        (Some(file), Some((body, is_packed))) => Response {
            status: "200 OK",
            content_type: content_type(file),
            is_packed,
            body,
        },
        _ => Response {
            status: "404 Not Found",
            content_type: content_type(Path::new("answer.txt")),
            is_packed: false,
            body: b"There is no such file here.".to_vec(),
        },
    };
    response.write(connection, request.wants_body)
}

/// What is in a file, and whether it is packed: where a packed copy lies beside it, that one is served.
fn open(file: &Path) -> Option<(Vec<u8>, bool)> {
    let mut packed = file.as_os_str().to_owned();
    packed.push(".gz");
    let packed_copy = fs::read(packed).ok().map(|body| (body, true));
    packed_copy.or_else(|| Some((fs::read(file).ok()?, false)))
}

/// The worker's script is fetched with a header of its own; what the worker fetches names the worker as its referrer.
fn is_by_worker(request: &Request) -> bool {
    request.header("service-worker").is_some()
        || request
            .header("referer")
            .is_some_and(|referrer| referrer.ends_with("/sw.js"))
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
    fn connections_that_say_nothing_keep_nobody_waiting() {
        let folder = std::env::temp_dir().join(format!("coldcase-server-{}", std::process::id()));
        fs::create_dir_all(&folder).unwrap();
        fs::write(folder.join("index.html"), "here").unwrap();
        let site = Site {
            folder: folder.clone(),
            prefix: "/".to_owned(),
        };
        let server = RunningServer::start(site, "127.0.0.1:0").unwrap();
        let silent: Vec<TcpStream> = (0..50)
            .map(|_| TcpStream::connect(server.address).unwrap())
            .collect();
        let answer = minreq::get(format!("http://127.0.0.1:{}/", server.port()))
            .with_timeout(5)
            .send()
            .unwrap();
        assert_eq!(answer.as_str().unwrap(), "here");
        assert_eq!(server.seen().len(), 1);
        drop(silent);
        fs::remove_dir_all(folder).unwrap();
    }

    #[test]
    fn wasm_is_served_as_wasm_so_that_browsers_compile_it_while_it_arrives() {
        assert_eq!(content_type(Path::new("app_bg.wasm")), "application/wasm");
    }
}
