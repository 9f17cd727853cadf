//! What comes by rustup and cargo: the wasm target, formatter and lints, Trunk, wasm-bindgen's command line, and what
//! cuts the program in parts.

use std::path::Path;
use std::process::Command;

use anyhow::{Context, Result};

use super::{Toolbox, ensure_step};
use crate::process;

/// The newest that compiles with this project's rustc.
const TRUNK: &str = "0.21.14";

/// Must equal the version of the `wasm-bindgen` library to the digit.
const WASM_BINDGEN: &str = "0.2.130";

/// Must go with what Leptos marks a cut with.
const WASM_SPLIT: &str = "0.2.4";

const WASM_TARGET: &str = "wasm32-unknown-unknown";

/// Adds the wasm target to the Rust toolchain.
pub(super) fn ensure_wasm_target() -> Result<()> {
    let is_there = || {
        let mut rustc = Command::new("rustc");
        rustc.args(["--print", "target-libdir", "--target", WASM_TARGET]);
        process::output(&mut rustc).is_ok_and(|folder| Path::new(folder.trim()).is_dir())
    };
    ensure_step(
        "Rust's wasm target",
        is_there,
        "adding it with rustup",
        || {
            process::run(Command::new("rustup").args(["target", "add", WASM_TARGET]))
            .context("install Rust with rustup, or add the target wasm32-unknown-unknown by your own means")
        },
    )
}

/// Adds formatter and lints to the Rust toolchain.
pub(super) fn ensure_components() -> Result<()> {
    for (component, subcommand) in [("rustfmt", "fmt"), ("clippy", "clippy")] {
        let is_there =
            || process::output(Command::new("cargo").args([subcommand, "--version"])).is_ok();
        ensure_step(component, is_there, "adding it with rustup", || {
            process::run(Command::new("rustup").args(["component", "add", component])).with_context(
                || format!("install Rust with rustup, or add {component} by your own means"),
            )
        })?;
    }
    Ok(())
}

/// Installs Trunk, which builds the page.
pub(super) fn ensure_trunk(tools: &Toolbox) -> Result<()> {
    ensure_step(
        &format!("trunk {TRUNK}"),
        || tools.has_version("trunk", TRUNK),
        "building it with cargo, a few minutes",
        || install(tools, "trunk", TRUNK, &["--locked"]),
    )
}

/// Installs the command line that joins the compiled page with JavaScript.
pub(super) fn ensure_wasm_bindgen(tools: &Toolbox) -> Result<()> {
    let is_there = || {
        tools.has_version("wasm-bindgen", WASM_BINDGEN)
            && tools.has_version("wasm-bindgen-test-runner", WASM_BINDGEN)
    };
    // Without --locked: its lock file asks for a crate that can no longer be had.
    ensure_step(
        &format!("wasm-bindgen {WASM_BINDGEN}"),
        is_there,
        "building it with cargo, a few minutes",
        || install(tools, "wasm-bindgen-cli", WASM_BINDGEN, &[]),
    )
}

/// Installs what cuts the compiled program in parts.
pub(super) fn ensure_wasm_split(tools: &Toolbox) -> Result<()> {
    let package = format!("\"wasm_split_cli_support {WASM_SPLIT} ");
    // It doesn't say its version itself, but cargo keeps book.
    let is_there = || {
        tools.folder.join("bin/wasm-split-cli").is_file()
            && std::fs::read_to_string(tools.folder.join(".crates.toml"))
                .is_ok_and(|book| book.contains(&package))
    };
    ensure_step(
        &format!("wasm-split {WASM_SPLIT}"),
        is_there,
        "building it with cargo, some minutes",
        || {
            let options = ["--locked", "--features", "build-binary"];
            install(tools, "wasm_split_cli_support", WASM_SPLIT, &options)
        },
    )
}

/// Builds quickly rather than for speed: these tools run for seconds a day.
fn install(tools: &Toolbox, package: &str, version: &str, options: &[&str]) -> Result<()> {
    let build = tools.folder.join("build");
    process::run(
        Command::new("cargo")
            .args([
                "install",
                package,
                "--version",
                version,
                "--force",
                "--quiet",
                "--root",
            ])
            .arg(&tools.folder)
            .args(options)
            .current_dir(&tools.folder)
            .env("CARGO_TARGET_DIR", &build)
            .env("CARGO_PROFILE_RELEASE_OPT_LEVEL", "1")
            .env("CARGO_PROFILE_RELEASE_LTO", "off")
            .env("CARGO_PROFILE_RELEASE_DEBUG", "false")
            .env("CARGO_PROFILE_RELEASE_CODEGEN_UNITS", "16"),
    )?;
    // Some hundred megabytes that nobody needs again. After a failure they stay, and the next try goes on from there.
    let _ = std::fs::remove_dir_all(build);
    Ok(())
}
