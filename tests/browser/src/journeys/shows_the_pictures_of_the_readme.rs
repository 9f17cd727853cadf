//! Takes the pictures that the README shows, on the way through the page.

use std::fs;

use anyhow::{Result, ensure};
use serde_json::json;

use crate::engine::{Engine, Habits};
use crate::stage::Stage;
use crate::steps::{back_to_job, bare_the_pins, make_job, open_check, project_file, read_pair};
use crate::visit::{Kind, PHONE, Visit};

/// A sound compressor in the usual order: clockwise start, common, run.
const READINGS: [(&str, &str); 3] = [("1 and 3", "12.0"), ("2 and 3", "4.7"), ("1 and 2", "7.6")];

/// What a picture may weigh: they lie in the repository.
const MOST_BYTES: usize = 150_000;

pub(super) fn run(stage: &Stage) -> Result<()> {
    ensure!(
        stage.engine == Engine::Chromium,
        "the README's pictures are taken with --engine chromium"
    );
    for dark in [false, true] {
        let habits = Habits {
            dark,
            ..Habits::default()
        };
        let visit = stage.visit(stage.site("/")?, &habits)?;
        let metrics =
            json!({"width": PHONE.0, "height": PHONE.1, "deviceScaleFactor": 1.5, "mobile": false});
        visit
            .window()
            .chromium("Emulation.setDeviceMetricsOverride", &metrics)?;
        visit.arrive()?;
        make_job(&visit)?;
        open_check(&visit, "Refrigerant")?;
        visit.choose("R134a")?;
        back_to_job(&visit)?;
        bare_the_pins(&visit)?;
        for (pair, reading) in READINGS {
            read_pair(&visit, pair, reading)?;
        }
        note_the_wiring(&visit)?;
        visit.see("run, surely")?;
        let look = if dark { "dark" } else { "light" };
        take(&visit, &format!("windings-{look}"))?;
        back_to_job(&visit)?;
        visit.see("What could be at fault")?;
        take(&visit, &format!("do-{look}"))?;
        visit.press("Known")?;
        visit.see("Found so far")?;
        take(&visit, &format!("known-{look}"))?;
        visit.press("Jobs")?;
        visit.find(Kind::Control, "Start a job")?;
        take(&visit, &format!("jobs-{look}"))?;
        stage.close(visit);
    }
    Ok(())
}

/// With the wiring noted, ohms and wires together name all three pins.
fn note_the_wiring(visit: &Visit) -> Result<()> {
    if !visit.has(Kind::Region, "The start device sat on")? {
        visit.press("Wiring as found")?;
    }
    visit.answer("The overload protector's lead was on", "Pin 2")?;
    visit.answer("The start device sat on", "Pins 1 and 3")?;
    visit.answer("The other mains wire was on", "Pin 3")
}

fn take(visit: &Visit, name: &str) -> Result<()> {
    let folder = project_file("tests/browser/screenshots");
    fs::create_dir_all(&folder)?;
    visit.run("scrollTo(0, 0); document.activeElement.blur()")?;
    visit.wait_for_rest()?;
    let picture = visit.window().screenshot()?;
    ensure!(
        picture.len() <= MOST_BYTES,
        "the picture {name} weighs {} bytes",
        picture.len()
    );
    Ok(fs::write(folder.join(format!("{name}.png")), picture)?)
}
