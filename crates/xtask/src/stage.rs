//! The last step of a build of the page, called by Trunk while the files still lie in its staging folder: has the
//! program cut in parts, puts its hashed name into `index.html`, and the list of files and their common version into
//! the service worker.

use std::collections::BTreeMap;
use std::env;
use std::fs;
use std::hash::{DefaultHasher, Hash, Hasher};
use std::path::{Path, PathBuf};

use anyhow::{Context, Result, bail};

use crate::parts;

const WORKER: &str = "sw.js";
const INDEX: &str = "index.html";

/// The name in the page that the build replaces.
const SCRIPT_PLACEHOLDER: &str = "./program.js";

/// The line of the worker that the build replaces.
const WORKER_PLACEHOLDER: &str =
    r#"const BUILD = { version: "", files: [], further: [], practice: [] };"#;

/// Finishes the page that Trunk has put into its staging folder.
pub(crate) fn run() -> Result<()> {
    let folder = env::var_os("TRUNK_STAGING_DIR")
        .map(PathBuf::from)
        .context("`cargo xtask stage` is a step of Trunk's build and can't be called by hand: use `cargo xtask build`")?;
    let is_release = env::var("TRUNK_PROFILE").is_ok_and(|profile| profile == "release");
    parts::cut(&folder, is_release)?;
    let mut files = BTreeMap::new();
    read_all(&folder, &folder, &mut files)?;

    let index = take_text(&mut files, INDEX)?;
    let index = name_program(&index, files.keys().map(String::as_str))?;
    // Trunk leaves its own instruction in the page when it writes no script.
    let index = without_tag(&index, "<link data-trunk rel=\"rust\"")?;
    // While developing, Trunk's own inline script reloads the page, and a worker would serve yesterday's files.
    let index = if is_release {
        index
    } else {
        without_tag(&index, "<meta http-equiv")?
    };
    fs::write(folder.join(INDEX), &index)?;

    let worker = take_text(&mut files, WORKER)?;
    if !is_release {
        return Ok(fs::remove_file(folder.join(WORKER))?);
    }
    files.retain(|name, _| is_needed_offline(name));
    files.insert("./".to_owned(), index.into_bytes());
    fs::write(folder.join(WORKER), list_files(&worker, &files)?)?;
    Ok(())
}

fn read_all(folder: &Path, root: &Path, files: &mut BTreeMap<String, Vec<u8>>) -> Result<()> {
    for entry in
        fs::read_dir(folder).with_context(|| format!("{} can't be read", folder.display()))?
    {
        let path = entry?.path();
        if path.is_dir() {
            read_all(&path, root, files)?;
        } else {
            let name = path
                .strip_prefix(root)?
                .to_string_lossy()
                .replace('\\', "/");
            files.insert(name, fs::read(&path)?);
        }
    }
    Ok(())
}

/// What practising needs, which is kept from its first use on.
pub(crate) fn is_for_practice(name: &str) -> bool {
    name.ends_with("split_practice.wasm") || name == "practice.js"
}

/// Screens that are opened now and then, which are fetched once everything else is there.
pub(crate) fn is_further(name: &str) -> bool {
    name.ends_with("split_further.wasm") || is_for_cold(name)
}

/// The screens of a cool-down, of energy and of the refrigerant, which are among those.
pub(crate) fn is_for_cold(name: &str) -> bool {
    name.ends_with("split_cold.wasm")
}

/// The page runs without pictures for home screens, which a browser fetches when it is asked to install the page, and
/// without the schemas, which are there for others: the worker leaves both out.
fn is_needed_offline(name: &str) -> bool {
    !(name.ends_with(".png") || name.ends_with(".schema.json"))
}

fn take_text(files: &mut BTreeMap<String, Vec<u8>>, name: &str) -> Result<String> {
    let bytes = files
        .remove(name)
        .with_context(|| format!("the build holds no {name}"))?;
    String::from_utf8(bytes).with_context(|| format!("{name} is not text"))
}

/// Puts the hashed name of the program's script into the page; the compiled program is named after it.
fn name_program<'a>(index: &str, names: impl Iterator<Item = &'a str>) -> Result<String> {
    let mut stems = names.filter_map(|name| name.strip_suffix("_bg.wasm"));
    let stem = stems
        .next()
        .context("the build holds no compiled program")?;
    if let Some(other) = stems.next() {
        bail!("the build holds two programs: {stem} and {other}");
    }
    if !index.contains(SCRIPT_PLACEHOLDER) {
        bail!("{INDEX} has no {SCRIPT_PLACEHOLDER} to be replaced");
    }
    Ok(index.replace(SCRIPT_PLACEHOLDER, &format!("./{stem}.js")))
}

fn without_tag(index: &str, beginning: &str) -> Result<String> {
    let start = index
        .find(beginning)
        .with_context(|| format!("{INDEX} has no tag {beginning}"))?;
    let length = index[start..]
        .find('>')
        .with_context(|| format!("the tag {beginning} has no end"))?;
    Ok(index[..start].trim_end().to_owned() + &index[start + length + 1..])
}

/// Writes the list into the worker. Any change of any file changes the version, and so the worker itself, which is how
/// browsers learn of it.
fn list_files(worker: &str, files: &BTreeMap<String, Vec<u8>>) -> Result<String> {
    if !worker.contains(WORKER_PLACEHOLDER) {
        bail!("{WORKER} has no line `{WORKER_PLACEHOLDER}` to be replaced");
    }
    // The hash may differ between releases of Rust: then there is one needless update, and no missed one.
    let mut hasher = DefaultHasher::new();
    files.hash(&mut hasher);
    worker.hash(&mut hasher);
    let is_of_first = |name: &&String| !is_for_practice(name) && !is_further(name);
    let build = serde_json::json!({
        "version": format!("{:016x}", hasher.finish()),
        "files": files.keys().filter(is_of_first).collect::<Vec<_>>(),
        "further": files.keys().filter(|name| is_further(name)).collect::<Vec<_>>(),
        "practice": files.keys().filter(|name| is_for_practice(name)).collect::<Vec<_>>(),
    });
    Ok(worker.replace(WORKER_PLACEHOLDER, &format!("const BUILD = {build};")))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn files(pairs: &[(&str, &str)]) -> BTreeMap<String, Vec<u8>> {
        pairs
            .iter()
            .map(|(name, text)| ((*name).to_owned(), text.as_bytes().to_vec()))
            .collect()
    }

    #[test]
    fn the_page_names_the_hashed_program() {
        let index = r#"<link href="./program.js">"#;
        let names = ["app-1f.js", "app-1f_bg.wasm", "style-2.css"];
        let named = name_program(index, names.into_iter()).unwrap();
        assert_eq!(named, r#"<link href="./app-1f.js">"#);
    }

    #[test]
    fn a_page_without_a_program_or_without_its_place_is_refused() {
        assert!(name_program("./program.js", ["a.js"].into_iter()).is_err());
        assert!(name_program("nothing", ["app_bg.wasm"].into_iter()).is_err());
    }

    #[test]
    fn what_the_page_runs_without_is_left_to_the_network() {
        assert!(is_needed_offline("app-1f_bg.wasm") && is_needed_offline("icon.svg"));
        assert!(!is_needed_offline("icon-512.png") && !is_needed_offline("job.schema.json"));
    }

    #[test]
    fn a_changed_file_changes_the_version_and_the_list_names_each_file() {
        let before =
            list_files(WORKER_PLACEHOLDER, &files(&[("./", "a"), ("app.js", "b")])).unwrap();
        let after =
            list_files(WORKER_PLACEHOLDER, &files(&[("./", "a"), ("app.js", "c")])).unwrap();
        assert_ne!(before, after);
        assert!(before.contains(r#"["./","app.js"]"#), "{before}");
    }

    #[test]
    fn what_practising_needs_is_listed_apart() {
        let all = [
            ("./", "a"),
            ("app-1f-split_practice.wasm", "b"),
            ("practice.js", "c"),
            ("app-1f-split_further.wasm", "d"),
            ("app-1f-split_cold.wasm", "e"),
        ];
        let listed = list_files(WORKER_PLACEHOLDER, &files(&all)).unwrap();
        assert!(listed.contains(r#""files":["./"]"#), "{listed}");
        let practice = r#""practice":["app-1f-split_practice.wasm","practice.js"]"#;
        assert!(listed.contains(practice), "{listed}");
        let further = r#""further":["app-1f-split_cold.wasm","app-1f-split_further.wasm"]"#;
        assert!(listed.contains(further), "{listed}");
    }

    #[test]
    fn a_tag_is_taken_out_whole_and_missed_when_absent() {
        let index = r#"<a> <meta http-equiv="Content-Security-Policy" content="x"><b>"#;
        assert_eq!(without_tag(index, "<meta http-equiv").unwrap(), "<a><b>");
        assert!(without_tag("<a>", "<meta http-equiv").is_err());
    }
}
