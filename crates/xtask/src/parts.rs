//! Cuts the compiled program in two: what the first screen needs, and what the page fetches when it is first needed.
//!
//! The program marks the cut itself, in `app/src/later.rs`. It has to be made before wasm-bindgen does its work, so what
//! Trunk has made of the whole program is made here once more, of its first part.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use anyhow::{Context, Result, ensure};

use crate::process;
use crate::project::Project;

/// How the first part's script names the one that fetches the others.
const LINK: &str = "./__wasm_split.js";

/// What today's Rust writes, and every browser of our list reads.
const FEATURES: &[&str] = &[
    "--enable-bulk-memory",
    "--enable-nontrapping-float-to-int",
    "--enable-sign-ext",
    "--enable-mutable-globals",
    "--enable-reference-types",
    "--enable-multivalue",
];

/// Puts the parts into Trunk's staging folder, in the place of the whole program, whose hashed name they share.
pub(crate) fn cut(staging: &Path, is_release: bool) -> Result<()> {
    let stem = &program_in(staging)?;
    let folder = target_folder()?;
    let profile = if is_release { "release" } else { "debug" };
    let whole = folder
        .join("wasm32-unknown-unknown")
        .join(profile)
        .join("app.wasm");
    let parts = folder.join("parts");
    if parts.exists() {
        fs::remove_dir_all(&parts)?;
    }
    process::run(
        Command::new("wasm-split-cli")
            .arg(whole)
            .arg(&parts)
            .args(["--out-name", stem]),
    )?;
    let bound = parts.join("bound");
    process::run(
        Command::new("wasm-bindgen")
            .args(["--target=web", "--keep-lld-exports", "--no-typescript"])
            .args(["--out-name", stem, "--out-dir"])
            .arg(&bound)
            .arg(parts.join(stem).with_extension("wasm")),
    )?;

    let first = fs::read_to_string(bound.join(stem).with_extension("js"))?;
    fs::write(
        staging.join(stem).with_extension("js"),
        renamed(&first, LINK, &link_of(stem))?,
    )?;
    put(
        &bound.join(format!("{stem}_bg.wasm")),
        &staging.join(format!("{stem}_bg.wasm")),
        is_release,
    )?;

    let mut link = fs::read_to_string(parts.join(LINK))?;
    for part in other_parts(&parts, stem)? {
        // Named after the build, so that a part never meets another build's.
        let name = format!("./{stem}-{part}.wasm");
        link = renamed(&link, &format!("./{part}.wasm"), &name)?;
        put(
            &parts.join(format!("{part}.wasm")),
            &staging.join(name),
            is_release,
        )?;
    }
    fs::write(staging.join(link_of(stem)), link)?;
    Ok(())
}

/// The name that Trunk has given to the program.
fn program_in(staging: &Path) -> Result<String> {
    let names = names_in(staging, "_bg.wasm")?;
    names
        .into_iter()
        .next()
        .context("the build holds no compiled program")
}

fn link_of(stem: &str) -> String {
    format!("./{stem}-parts.js")
}

fn target_folder() -> Result<PathBuf> {
    let metadata = Project::find()?.metadata()?;
    let folder = metadata["target_directory"].as_str();
    folder
        .map(PathBuf::from)
        .context("cargo names no target folder")
}

/// The names of all parts but the first.
fn other_parts(folder: &Path, first: &str) -> Result<Vec<String>> {
    let mut parts = names_in(folder, ".wasm")?;
    parts.retain(|name| name != first);
    ensure!(
        !parts.is_empty(),
        "the program was not cut: it is built without the feature `split`"
    );
    Ok(parts)
}

/// The names of the files with this ending, without it.
fn names_in(folder: &Path, ending: &str) -> Result<Vec<String>> {
    let mut names: Vec<String> = fs::read_dir(folder)?
        .filter_map(|entry| entry.ok()?.file_name().into_string().ok())
        .filter_map(|name| Some(name.strip_suffix(ending)?.to_owned()))
        .collect();
    names.sort();
    Ok(names)
}

fn renamed(text: &str, name: &str, new: &str) -> Result<String> {
    let quoted = format!("\"{name}\"");
    let import = format!("from {quoted}");
    let fetched = format!("URL({quoted}");
    let renamed = text
        .replace(&import, &format!("from \"{new}\""))
        .replace(&fetched, &format!("URL(\"{new}\""));
    ensure!(renamed != text, "the cut program doesn't mention {name}");
    Ok(renamed)
}

/// Small as `gzip` packs it: functions with one caller stay apart, and functions lie by how often they are called, so
/// that their numbers are short and alike. Nothing points into the first kilobyte, the far end of the stack.
const SMALL: &[&str] = &[
    "--one-caller-inline-max-function-size=1",
    "--low-memory-unused",
    "-Oz",
    "--optimize-added-constants-propagate",
    "--reorder-locals",
    "--reorder-functions",
    "--strip-producers",
    "--strip-target-features",
];

/// Puts a wasm file in its place, made small where it is for release.
fn put(from: &Path, to: &Path, is_release: bool) -> Result<()> {
    if !is_release {
        fs::copy(from, to)?;
        return Ok(());
    }
    process::run(
        Command::new("wasm-opt")
            .args(SMALL)
            .args(FEATURES)
            .arg(from)
            .arg("-o")
            .arg(to),
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_part_is_renamed_where_it_is_fetched_and_nowhere_else() {
        let link =
            r#"fetch(new URL("./split_later.wasm", import.meta.url)); /* ./split_later.wasm */"#;
        assert_eq!(
            renamed(link, "./split_later.wasm", "./app-1-split_later.wasm").unwrap(),
            r#"fetch(new URL("./app-1-split_later.wasm", import.meta.url)); /* ./split_later.wasm */"#
        );
        assert!(renamed(link, "./other.wasm", "./app-1-other.wasm").is_err());
    }

    #[test]
    fn the_link_is_renamed_where_it_is_imported_and_keeps_its_name_among_the_imports() {
        let script =
            r#"import * as import1 from "./__wasm_split.js"; ({"./__wasm_split.js": import1})"#;
        assert_eq!(
            renamed(script, LINK, "./app-1-parts.js").unwrap(),
            r#"import * as import1 from "./app-1-parts.js"; ({"./__wasm_split.js": import1})"#
        );
    }
}
