//! Builds the page with Trunk and serves it.

use std::path::PathBuf;
use std::process::Command;

use anyhow::Result;

use crate::process;
use crate::project::Project;
use crate::server::{RunningServer, Site, address_in_network};
use crate::tools::Toolbox;

/// How the page is to be served.
pub(crate) struct Serving {
    /// Rebuild on each change, unoptimised.
    pub(crate) while_developing: bool,
    /// The port to listen at, or none to take the usual one.
    pub(crate) port: Option<u16>,
    /// "/" or for example "/sub/".
    pub(crate) prefix: String,
}

// Two ports, hence two origins: the release page's service worker must not answer for the one under development.
const PORT: u16 = 8080;
const PORT_WHILE_DEVELOPING: u16 = 8081;

/// Builds the release page and returns its folder.
pub(crate) fn build(project: &Project, tools: &Toolbox) -> Result<PathBuf> {
    println!("Building the release page");
    process::run(trunk(project, tools)?.args(["build", "--release"]))?;
    Ok(project.dist())
}

/// Builds the page and serves it until the process is ended.
pub(crate) fn serve(project: &Project, tools: &Toolbox, serving: Serving) -> Result<()> {
    if serving.while_developing {
        let port = serving.port.unwrap_or(PORT_WHILE_DEVELOPING);
        println!(
            "Building the page and building it again on each change. It will be at http://localhost:{port}/"
        );
        return process::run(trunk(project, tools)?.args(["serve", "--port", &port.to_string()]));
    }
    let folder = build(project, tools)?;
    let prefix = serving.prefix;
    let site = Site {
        folder,
        prefix: prefix.clone(),
    };
    let server = RunningServer::start(site, ("0.0.0.0", serving.port.unwrap_or(PORT)))?;
    let port = server.port();
    println!("\nColdcase is served at: http://localhost:{port}{prefix}");
    if let Some(address) = address_in_network() {
        println!("From a phone in the same network: http://{address}:{port}{prefix}");
        println!(
            "(There it runs, but browsers keep a page for offline use only from https or localhost.)"
        );
    }
    println!("Ctrl-C ends it.");
    server.wait();
    Ok(())
}

fn trunk(project: &Project, tools: &Toolbox) -> Result<Command> {
    let search_path = tools.search_path()?;
    let program = process::find("trunk", &search_path).unwrap_or_else(|| PathBuf::from("trunk"));
    let mut command = Command::new(program);
    // Trunk takes NO_COLOR=1, which others set, for a mistake.
    command
        .current_dir(project.root())
        .env("PATH", search_path)
        .env_remove("NO_COLOR");
    Ok(command)
}
