//! The record shows what is proved, what isn't yet and what is missing for it, and what failed; each row leads to where
//! it is done, and what is done there is done here.

use anyhow::{Context, Result, ensure};
use serde_json::{Value, json};

use crate::stage::Stage;
use crate::steps::project_file;
use crate::visit::{Kind, Visit};

/// An invented machine, mended and proved, from which some is taken away: two starts after a rest and the look at the
/// seal; and to which a trip is added.
const PROVED: &str = "demo-data/repaired-freezer.json";

pub(super) fn run(stage: &Stage) -> Result<()> {
    let visit = stage.start()?;
    let text = std::fs::read_to_string(project_file(PROVED))?;
    let whole: Value = serde_json::from_str(&text)?;
    open(stage, &visit, &whole)?;
    visit.see("Proved: all of this was read or seen.")?;
    states(&visit, [7, 0, 0, 1])?;

    open(stage, &visit, &with_gaps(whole)?)?;
    visit.see("Not proved: something failed.")?;
    states(&visit, [4, 2, 1, 1])?;
    visit.see("not yet: 2 starts after a rest of ten minutes at most (20 min)")?;
    visit.see("not yet: a slip of paper, pulled at its seal all round")?;
    visit.see("failed: it tripped")?;
    visit.see("not asked: its frost is taken off by hand")?;
    the_seal_is_looked_at(&visit)
}

fn open(stage: &Stage, visit: &Visit, job: &Value) -> Result<()> {
    let file = stage.file("proof.json", job.to_string())?;
    visit.go_to("#/import")?;
    visit.hand_over("Choose a file", &file)?;
    visit.press("Add to my jobs")?;
    visit.find(Kind::Control, "Something else")?;
    visit.press("Record")?;
    visit.see("Proof")
}

fn with_gaps(mut job: Value) -> Result<Value> {
    let at = "2026-10-19T08:00:00-05:00";
    job["id"] = json!("proof-with-gaps");
    let entries = job["entries"].as_array_mut().context("a list of entries")?;
    let before = entries.len();
    entries.retain(|entry| {
        let is_seal = entry["answer"]["check"] == "seal";
        let is_start = entry["trial"]["outcome"] == "started" && entry["trial"]["cold"] == false;
        !is_seal && !is_start
    });
    ensure!(entries.len() + 3 == before, "three entries were to go");
    entries.push(json!({"id": "tripped", "at": at, "event": {"at": at, "what": "tripped"}}));
    Ok(job)
}

/// How many points are done, not yet, failed and not asked.
fn states(visit: &Visit, wanted: [usize; 4]) -> Result<()> {
    let script = "const lines = Array.from(document.querySelectorAll('.proof .line'), (it) => it.textContent);
        return ['done', 'not yet', 'failed', 'not asked'].map((word) => lines.filter((line) => line.startsWith(word)).length)";
    let mut found = Value::Null;
    let counted = visit.wait_until(&format!("{wanted:?} points"), || {
        found = visit.run(script)?;
        Ok(found == json!(wanted))
    });
    counted.with_context(|| format!("shown are {found}"))
}

fn the_seal_is_looked_at(visit: &Visit) -> Result<()> {
    visit.press("Its seal was looked at")?;
    visit.see("What did it show?")?;
    visit.choose("drags all round")?;
    visit.see("What that changed")?;
    visit.press("Record")?;
    states(visit, [5, 1, 1, 1])
}
