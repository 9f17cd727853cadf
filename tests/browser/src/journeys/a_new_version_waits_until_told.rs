//! A new version arrives quietly, changes nothing until the person says so, and then comes in with one reload and all
//! work kept.

use std::fs;
use std::path::Path;

use anyhow::{Context, Result, ensure};
use serde_json::json;

use crate::engine::{Engine, Habits};
use crate::stage::Stage;
use crate::steps::{bare_the_pins, make_job, press_keys};
use crate::visit::Visit;

const MARK: &str = r#"<meta name="journey" content="newer">"#;

pub(super) fn run(stage: &Stage) -> Result<()> {
    let copy = stage.copy_of_page()?;
    let visit = stage.visit(stage.site_of(&copy, "/")?, &Habits::default())?;
    count_loads(&visit)?;
    visit.arrive()?;
    visit.wait_for_mark("offline", "ready")?;
    make_job(&visit)?;
    bare_the_pins(&visit)?;
    press_keys(&visit, "4,")?;

    publish_newer(&copy)?;
    visit.reload()?;
    visit.see("A new version is ready")?;
    ensure!(!is_newer(&visit)?, "the new version came in unasked");
    visit.reload()?;
    visit.see("A new version is ready")?;
    ensure!(!is_newer(&visit)?, "the new version came in with a reload");

    let before = loads(&visit)?;
    visit.press("Use it now")?;
    visit.wait_until("the new version to come in", || is_newer(&visit))?;
    visit.wait_for_program()?;
    visit.wait_for_mark("offline", "ready")?;
    visit.see_no("A new version is ready")?;
    if stage.engine == Engine::Chromium {
        ensure!(loads(&visit)? == before + 1, "it took more than one reload");
    }
    ensure!(
        visit.value_of("Touch 1 and 2")?.starts_with('4'),
        "what was typed is gone"
    );
    visit.site.kill()?;
    visit.reload()?;
    ensure!(
        is_newer(&visit)?,
        "without a network the old version is back"
    );
    Ok(())
}

/// Changes the page and the version of its worker, as any change of the program would.
fn publish_newer(folder: &Path) -> Result<()> {
    replace(
        &folder.join("index.html"),
        "<head>",
        &format!("<head>{MARK}"),
    )?;
    replace(
        &folder.join("sw.js"),
        "\"version\":\"",
        "\"version\":\"newer-",
    )
}

fn replace(file: &Path, old: &str, new: &str) -> Result<()> {
    let text = fs::read_to_string(file)?;
    ensure!(text.contains(old), "{} has no {old}", file.display());
    fs::write(file, text.replacen(old, new, 1))?;
    Ok(())
}

fn is_newer(visit: &Visit) -> Result<bool> {
    Ok(visit.run("return document.querySelector('meta[name=journey]') !== null")? == true)
}

/// Counts in the tab how often a page was loaded. Only Chromium lets a journey run a script that early.
fn count_loads(visit: &Visit) -> Result<()> {
    if visit.engine == Engine::Chromium {
        let source = "sessionStorage.setItem('loads', Number(sessionStorage.getItem('loads')) + 1)";
        let script = json!({"source": source});
        visit
            .window()
            .chromium("Page.addScriptToEvaluateOnNewDocument", &script)?;
    }
    Ok(())
}

fn loads(visit: &Visit) -> Result<u64> {
    let loads = visit.run("return Number(sessionStorage.getItem('loads'))")?;
    loads.as_u64().context("the loads were not counted")
}
