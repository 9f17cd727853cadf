//! What a file holds is words: script in a note, in the machine's name or off its plate is shown as text and never runs.
//! A file too large or nested too deep is told so.

use anyhow::{Result, ensure};
use serde_json::json;

use crate::stage::Stage;
use crate::steps::project_file;
use crate::visit::Visit;

/// Each would leave a mark in the page if any part of it were taken for a page.
const SCRIPTS: [&str; 4] = [
    "<script>window.ran = 1</script>",
    "<img src=x onerror=\"window.ran = 2\">",
    "</strong></p><svg onload='window.ran = 3'>",
    "javascript:window.ran=4",
];

const FIFTY_MEGABYTES: usize = 50_000_000;

pub(super) fn run(stage: &Stage) -> Result<()> {
    let visit = stage.start()?;
    visit.go_to("#/import")?;
    visit.hand_over("Choose a file", &stage.file("hostile.json", hostile())?)?;
    visit.see(SCRIPTS[0])?;
    nothing_ran(&visit, "the preview")?;
    visit.press("Add to my jobs")?;
    let [name, plate, note, other_note] = SCRIPTS;
    for (address, shown) in [
        ("#/", &[name][..]),
        ("#/job/hostile", &[name]),
        ("#/job/hostile/known", &[name, plate, note, other_note]),
        ("#/job/hostile/record", &[note, other_note]),
    ] {
        visit.go_to(address)?;
        for script in shown {
            visit.see(script)?;
        }
        nothing_ran(&visit, address)?;
    }
    too_large(stage, &visit)?;
    too_deep(&visit)
}

/// Name, plate and notes are the places for words of one's own.
fn hostile() -> String {
    let at = "2026-11-25T12:00:00+01:00";
    let words = |id: &str, item: &str, text: &str| json!({"id": id, "at": at, "answer": {"check": "machine", "item": item, "text": text}});
    let note = |id: &str, text: &str| json!({"id": id, "at": at, "note": text});
    json!({
        "type": "coldcase-job", "version": 1, "id": "hostile", "created": at, "origin": "person",
        "entries": [
            words("a", "name", SCRIPTS[0]),
            words("b", "plate", SCRIPTS[1]),
            note("c", SCRIPTS[2]),
            note("d", SCRIPTS[3]),
        ],
        SCRIPTS[0]: SCRIPTS[1],
    })
    .to_string()
}

fn nothing_ran(visit: &Visit, place: &str) -> Result<()> {
    let ran =
        visit.run("return window.ran || document.querySelectorAll('img, main script').length")?;
    ensure!(
        ran == 0,
        "on {place} a script ran, or was made a part of the page: {ran}"
    );
    Ok(())
}

fn too_large(stage: &Stage, visit: &Visit) -> Result<()> {
    let mut bytes = br#"{"type": "coldcase-job", "version": 1, "unknown": ""#.to_vec();
    bytes.resize(FIFTY_MEGABYTES, b'x');
    visit.go_to("#/import")?;
    visit.hand_over("Choose a file", &stage.file("large.json", bytes)?)?;
    visit.see("It can't be opened")?;
    visit.see("more than 20 million characters")
}

fn too_deep(visit: &Visit) -> Result<()> {
    for file in ["deep-nesting.json", "deep-nesting-in-an-unknown-field.json"] {
        let path = project_file(&format!("tests/documents/bad/{file}"));
        visit.go_to("#/import")?;
        visit.hand_over("Choose a file", &path.canonicalize()?)?;
        visit.see("It can't be opened")?;
        visit.see("lists in lists more than 127 deep")?;
    }
    Ok(())
}
