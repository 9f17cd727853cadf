//! The first lesson is begun, examined with the buttons that stand for probes and eyes, entered on the screens of any job,
//! and in the end told: what was wrong, one's own way and the app's. Everything that leaves the page says that it was
//! practice, and what simulates is fetched only for it.

use anyhow::{Context, Result, ensure};

use crate::engine::Engine;
use crate::stage::Stage;
use crate::steps::{back_to_job, open_check, saved_file};
use crate::visit::{Kind, Visit};

pub(super) fn run(stage: &Stage) -> Result<()> {
    let visit = stage.start()?;
    ensure!(!has_third_part(&visit)?, "practice is fetched too early");
    begin(&visit)?;
    ensure!(has_third_part(&visit)?, "practice came from nowhere");
    look_over(&visit)?;
    measure(&visit)?;
    marked(stage, &visit)?;
    truth(&visit)?;
    damaged(&visit)
}

fn begin(visit: &Visit) -> Result<()> {
    visit.press("Practise without a freezer")?;
    visit.see("Five machines from the repair evening")?;
    visit.press("The chest from the boathouse")?;
    visit.find(Kind::Control, "Something else")?;
    visit.see("Practice: a simulated machine.")
}

fn look_over(visit: &Visit) -> Result<()> {
    open_check(visit, "Look it over")?;
    visit.press("Look")?;
    visit.see("On this machine: 110 to 127 V")?;
    visit.press("Enter this")?;
    visit.see("What do you see?")?;
    visit.press("Look")?;
    visit.press("Enter this")?;
    visit.find(Kind::Control, "Back to the job")?;
    back_to_job(visit)
}

/// What a meter shows stands in the field as if typed, and is entered there.
fn measure(visit: &Visit) -> Result<()> {
    open_check(visit, "Start device")?;
    for sense in ["Look", "Look"] {
        visit.press(sense)?;
        visit.press("Enter this")?;
    }
    visit.press("Look")?;
    visit.see("On it is printed")?;
    visit.press("Enter this")?;
    visit.press("Measure it")?;
    visit.see("The meter shows OL: over range.")?;
    let typed = visit.value_of("Ohms across it")?;
    ensure!(typed == "OL", "in the field stands {typed:?}");
    visit.press("Enter this")?;
    visit.see("The PTC is open")?;
    back_to_job(visit)
}

/// The list, the report and the file.
fn marked(stage: &Stage, visit: &Visit) -> Result<()> {
    visit.press("Known")?;
    visit.see("Practice: a simulated machine, no such machine was measured.")?;
    visit.press("Record")?;
    visit.see("Send it")?;
    let file = saved_file(stage, visit, || visit.press("Save as a file"))?;
    let text = std::fs::read_to_string(&file)?;
    ensure!(
        text.contains(r#""origin": "practice""#),
        "the file doesn't say that it is practice"
    );
    if stage.engine == Engine::Chromium {
        let name = file.file_name().context("a file has a name")?;
        let name = name.to_string_lossy();
        ensure!(name.starts_with("Practice-"), "the file is called {name}");
    }
    visit.go_to("#/")?;
    visit.see("Practice, Chest freezer")?;
    visit.press("The chest from the boathouse")?;
    visit.find(Kind::Control, "Something else").map(drop)
}

fn truth(visit: &Visit) -> Result<()> {
    visit.press("The truth")?;
    visit.see_no("Start device open.")?;
    visit.press("Show the truth")?;
    visit.see("Start device open.")?;
    visit.see("2 checks")?;
    visit.see("The app's next check, each time")
}

/// A job that no longer says which machine it is about says so, and is a job all the same.
fn damaged(visit: &Visit) -> Result<()> {
    back_to_job(visit)?;
    visit.run(
        "for (const key of Object.keys(localStorage)) {
            const text = localStorage.getItem(key).replaceAll('hums-and-clicks', 'hums-and-clacks');
            if (key.startsWith('coldcase/job/')) localStorage.setItem(key, text);
        }",
    )?;
    visit.reload()?;
    open_check(visit, "Pins to the shell")?;
    visit.press("Measure it")?;
    visit.see("no longer says which practice machine")?;
    visit.find(Kind::Field, "Pin 1 to the shell").map(drop)
}

/// Whether the browser has fetched the part that simulates.
fn has_third_part(visit: &Visit) -> Result<bool> {
    let fetched = visit.run(
        "return performance.getEntriesByType('resource').some(({ name }) => name.includes('split_practice'))",
    )?;
    Ok(fetched == true)
}
