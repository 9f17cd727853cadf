//! A cool-down, a logger's file, what a machine uses and its record, without a pointer: each is reached with the Tab key, what has
//! the focus can be seen, and what follows is where a reader is sent.

use anyhow::{Context, Result, ensure};

use crate::keyboard::{activate, at_a_desk, at_heading, tab_to, type_into};
use crate::stage::Stage;
use crate::visit::Visit;
use crate::webdriver::Key;

pub(super) fn run(stage: &Stage) -> Result<()> {
    let visit = at_a_desk(stage)?;
    activate(&visit, "Look at an example")?;
    activate(&visit, "Upright freezer from the bakery cellar")?;
    at_heading(&visit, "Upright freezer from the bakery cellar")?;
    let here = visit.run("return location.hash")?;
    let here = here.as_str().context("an address")?.to_owned();
    visit.go_to(&format!("{here}/do/cool-down"))?;
    cool_down(&visit)?;
    log(stage, &visit)?;
    visit.go_to(&format!("{here}/do/energy"))?;
    energy(&visit)?;
    visit.go_to(&format!("{here}/record"))?;
    record(&visit)
}

/// The page that goes with the machine, for the owner and back.
fn record(visit: &Visit) -> Result<()> {
    activate(visit, "Make the page that goes with it")?;
    at_heading(visit, "Page for the next owner")?;
    visit.see("Buyer's copy")?;
    activate(visit, "Myself")?;
    visit.see("Owner's copy")?;
    tab_to(visit, "Print, or save as PDF")
}

/// Switched on, a temperature, another place, an event, a fold with an earlier time.
fn cool_down(visit: &Visit) -> Result<()> {
    visit.see("Does it get cold?")?;
    activate(visit, "Switched on now")?;
    visit.see("On for")?;
    type_into(visit, "The thermometer shows", "21.4 °C")?;
    visit.window().press(&[Key::Enter])?;
    visit.see("21.4")?;
    // The next reading follows where this one was typed.
    visit.wait_until("the empty field with the focus", || {
        Ok(visit.focused()?.starts_with("The thermometer shows")
            && visit.value_of("The thermometer shows")?.is_empty())
    })?;
    activate(visit, "In the room")?;
    type_into(visit, "The thermometer shows", "68 °C")?;
    visit.window().press(&[Key::Enter])?;
    visit.see("Few such places are like that")?;
    activate(visit, "Change it")?;
    visit.wait_until("the field with the focus", || {
        Ok(visit.focused()?.starts_with("The thermometer shows"))
    })?;
    activate(visit, "The compressor stopped by itself")?;
    visit.see("The compressor stopped by itself: at")?;
    activate(visit, "Other events, or an earlier time")?;
    type_into(visit, "Happened at", "soon")?;
    visit.window().press(&[Key::Enter])?;
    visit.see("That isn't a time of day")
}

/// The way to the file's screen, the field that takes a file, the places, and the way back.
fn log(stage: &Stage, visit: &Visit) -> Result<()> {
    activate(visit, "Take in a logger's file")?;
    at_heading(visit, "Take in a logger's file")?;
    tab_to(visit, "Choose a file")?;
    let rows = "Time;Probe °C\n2026-11-20T10:00:00Z;21,0\n2026-11-20T10:05:00Z;20,5\n";
    visit.hand_over("Choose a file", &stage.file("probe.csv", rows)?)?;
    visit.see("Say first where each probe lay")?;
    focus_is_within(visit, "log-outcome")?;
    activate(visit, "Freezer")?;
    activate(visit, "Take these in")?;
    at_heading(visit, "Does it get cold?")
}

/// A count with its hours, and a class.
fn energy(visit: &Visit) -> Result<()> {
    visit.see("What it uses")?;
    type_into(visit, "Hours it has counted", "24")?;
    type_into(visit, "Kilowatt hours it shows", "much")?;
    visit.window().press(&[Key::Enter])?;
    visit.see("Kilowatt hours are a number like 1.25.")?;
    let kept = visit.value_of("Kilowatt hours it shows")?;
    ensure!(kept == "much", "what was typed is lost: {kept:?}");
    visit.fill("Kilowatt hours it shows", "1.6")?;
    visit.window().press(&[Key::Enter])?;
    visit.see("Metered for 24")?;
    activate(visit, "Its class in the energy rule")?;
    activate(visit, "Upright freezer, frost-free")?;
    visit.see("Not known yet")?;
    visit.see("whether it makes ice by itself")
}

fn focus_is_within(visit: &Visit, id: &str) -> Result<()> {
    let script = format!(
        "const it = document.getElementById('{id}');
         return !!it && (it === document.activeElement || it.contains(document.activeElement))"
    );
    visit.wait_until(&format!("the focus within {id}"), || {
        Ok(visit.run(&script)? == true)
    })
}
