//! Two loggers' files, written differently, end in the job: one is clear but for its clock, the other leaves scale and
//! order of dates open and asks, one question at a time; an answer can be taken back; what is no log is refused kindly.

use anyhow::{Context, Result};

use crate::stage::Stage;
use crate::visit::{Kind, Visit};

pub(super) fn run(stage: &Stage) -> Result<()> {
    let visit = stage.start()?;
    visit.press("Look at an example")?;
    visit.press("Upright freezer from the bakery cellar")?;
    visit.find(Kind::Control, "Something else")?;
    let here = visit.run("return location.hash")?;
    let here = here.as_str().context("an address")?.to_owned();
    let log = format!("{here}/do/cool-down/log");
    visit.go_to(&log)?;
    refused(stage, &visit)?;
    clear(stage, &visit)?;
    visit.go_to(&log)?;
    asked(stage, &visit)
}

fn refused(stage: &Stage, visit: &Visit) -> Result<()> {
    let file = stage.file("picture.csv", b"\x89PNG\r\n\x1a\n0000")?;
    visit.hand_over("Choose a file", &file)?;
    visit.see("It is a picture.")
}

/// Semicolons, decimal commas, times with their zone and two probes: nothing to ask but which to read.
fn clear(stage: &Stage, visit: &Visit) -> Result<()> {
    let rows = (0..12).map(|row| {
        let (minute, shown) = (row * 5, 21.0 - f64::from(row));
        format!("2026-11-20T10:{minute:02}:00Z;{shown:.1};22,5\n").replace('.', ",")
    });
    let head = "Zeit;Gefrierfach °C;Raum °C\n".to_owned();
    let text: String = std::iter::once(head).chain(rows).collect();
    let file = stage.file("logger.csv", text)?;
    visit.hand_over("Choose a file", &file)?;
    visit.see("semicolons between the cells and a decimal comma")?;
    visit.press("Read these")?;
    visit.see("12 readings from")?;
    visit.press("Take these in")?;
    visit.see("Taken in.")
}

fn asked(stage: &Stage, visit: &Visit) -> Result<()> {
    let rows = "Time,Probe\n03/04/2026 20:00,68.0\n03/04/2026 20:05,64.4\n03/04/2026 20:10,60.8\n";
    let file = stage.file("other.csv", rows)?;
    visit.hand_over("Choose a file", &file)?;
    visit.see("On which scale?")?;
    visit.press("°F")?;
    visit.see("which number is the day?")?;
    visit.press("One question back")?;
    visit.see("On which scale?")?;
    visit.press("°F")?;
    visit.press("Day, month, year")?;
    visit.see("by which clock?")?;
    visit.press("This phone's clock")?;
    visit.see("Say first where each probe lay")?;
    visit.press("Freezer")?;
    visit.see("3 readings from")?;
    visit.press("Take these in")?;
    visit.see("Taken in.")
}
