//! Where the browser keeps nothing for the page, work goes on and a file can still be sent; that it won't last is said.

use anyhow::{Result, ensure};
use serde_json::{Value, json};

use crate::engine::Habits;
use crate::stage::Stage;
use crate::steps::{back_to_job, bare_the_pins, make_job, read_pair, saved_file};

/// As browsers do when a person blocks cookies.
const BLOCK: &str = "Object.defineProperty(window, 'localStorage', \
                     { get() { throw new DOMException('blocked', 'SecurityError'); } })";

pub(super) fn run(stage: &Stage) -> Result<()> {
    let visit = stage.visit(stage.site("/")?, &Habits::default())?;
    let script = json!({"source": BLOCK});
    visit
        .window()
        .chromium("Page.addScriptToEvaluateOnNewDocument", &script)?;
    visit.arrive()?;
    visit.see("This browser keeps nothing for this page")?;
    make_job(&visit)?;
    bare_the_pins(&visit)?;
    read_pair(&visit, "1 and 2", "4.7")?;
    back_to_job(&visit)?;
    visit.press("Record")?;
    let file = saved_file(stage, &visit, || visit.press("Save as a file"))?;
    let job: Value = serde_json::from_slice(&std::fs::read(file)?)?;
    ensure!(
        job["entries"].to_string().contains("4.7"),
        "the file lacks the reading: {job}"
    );
    Ok(())
}
