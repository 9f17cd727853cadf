//! axe-core, which looks through a page for what shuts people out. It comes as a Node package and runs in the page.

use std::path::{Path, PathBuf};

use anyhow::Result;

use super::{Toolbox, ensure_step, node};

const AXE: &str = "4.14.1";

/// Installs axe-core, and Node before it where that is missing.
pub(super) fn ensure(tools: &Toolbox) -> Result<()> {
    // The version is part of the folder's name, so that another version is another folder.
    ensure_step(
        &format!("axe-core {AXE}"),
        || script(&tools.folder).is_file(),
        "fetching it with npm",
        || node::install(tools, &format!("axe-core@{AXE}"), &folder(&tools.folder)),
    )
}

/// The script that runs in the page.
pub(super) fn script(tools: &Path) -> PathBuf {
    folder(tools).join("node_modules/axe-core/axe.min.js")
}

fn folder(tools: &Path) -> PathBuf {
    tools.join(format!("axe-core-{AXE}"))
}
