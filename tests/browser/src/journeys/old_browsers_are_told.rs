//! A browser that can't run the program shows which ones can, instead of an empty page.

use anyhow::Result;
use serde_json::json;

use crate::engine::Habits;
use crate::stage::Stage;

pub(super) fn run(stage: &Stage) -> Result<()> {
    without_web_assembly(stage)?;
    without_the_program(stage)?;
    without_scripts(stage)
}

fn without_web_assembly(stage: &Stage) -> Result<()> {
    let visit = stage.visit(stage.site("/")?, &Habits::default())?;
    visit.allow_mistakes();
    let script = json!({"source": "delete window.WebAssembly"});
    visit
        .window()
        .chromium("Page.addScriptToEvaluateOnNewDocument", &script)?;
    visit.window().go_to(&visit.site.address())?;
    visit.see("Coldcase could not start")?;
    visit.see("Safari 16.4")?;
    visit.see("Your saved work is safe")?;
    stage.close(visit);
    Ok(())
}

/// The download of the program breaks off, as it does at the edge of a network.
fn without_the_program(stage: &Stage) -> Result<()> {
    let visit = stage.visit(stage.site("/")?, &Habits::default())?;
    visit.allow_mistakes();
    visit.window().chromium("Network.enable", &json!({}))?;
    visit
        .window()
        .chromium("Network.setBlockedURLs", &json!({"urls": ["*.wasm"]}))?;
    visit.window().go_to(&visit.site.address())?;
    visit.see("Coldcase could not start")?;
    visit
        .window()
        .chromium("Network.setBlockedURLs", &json!({"urls": []}))?;
    visit.press("Load again")?;
    visit.wait_for_program()?;
    stage.close(visit);
    Ok(())
}

fn without_scripts(stage: &Stage) -> Result<()> {
    let visit = stage.visit(stage.site("/")?, &Habits::default())?;
    let off = json!({"value": true});
    visit
        .window()
        .chromium("Emulation.setScriptExecutionDisabled", &off)?;
    visit.window().go_to(&visit.site.address())?;
    let source = visit.window().source()?;
    anyhow::ensure!(
        source.contains("Coldcase needs JavaScript"),
        "nothing is said without scripts"
    );
    stage.close(visit);
    Ok(())
}
