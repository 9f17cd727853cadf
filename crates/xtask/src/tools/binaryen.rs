//! wasm-opt, which makes the page small. It comes as a Node package: Debian's own is too old to read what today's Rust
//! writes.

use std::path::{Path, PathBuf};

use anyhow::Result;

use super::{Toolbox, ensure_step, node};

const BINARYEN: &str = "132";

/// Installs wasm-opt, and Node before it where that is missing.
pub(super) fn ensure_wasm_opt(tools: &Toolbox) -> Result<()> {
    ensure_step(
        &format!("wasm-opt {BINARYEN}"),
        || tools.has_version("wasm-opt", BINARYEN),
        "fetching it with npm",
        || {
            node::install(
                tools,
                &format!("binaryen@{BINARYEN}.0.0"),
                &tools.folder.join("binaryen"),
            )
        },
    )
}

/// Where npm puts the programs of the package.
pub(super) fn programs(tools: &Path) -> PathBuf {
    tools.join("binaryen/node_modules/.bin")
}
