//! From the start screen to three readings, a timed try to start and a practice machine without a pointer: everything is reached with the Tab key, what has the focus
//! can be seen, and each new screen begins at its heading.

use anyhow::Result;

use crate::keyboard::{activate, at_a_desk, at_heading};
use crate::stage::Stage;
use crate::visit::{Kind, Visit};
use crate::webdriver::Key;

pub(super) fn run(stage: &Stage) -> Result<()> {
    let visit = at_a_desk(stage)?;
    activate(&visit, "Start a job")?;
    for (heading, answer) in [
        ("What is it?", "Chest freezer"),
        ("Which mains", "230 V, 50 Hz"),
        ("What did it do", "Not plugged in yet"),
    ] {
        at_heading(&visit, heading)?;
        activate(&visit, answer)?;
    }
    at_heading(&visit, "Chest freezer, 230 V, 50 Hz")?;
    activate(&visit, "Something else")?;
    activate(&visit, "Windings")?;
    at_heading(&visit, "Windings")?;
    activate(&visit, "They are off")?;
    activate(&visit, "Point up")?;
    for (pair, reading) in [("1 and 3", "12,0"), ("2 and 3", "7,6"), ("1 and 2", "4,7")] {
        activate(&visit, &format!("Between pins {pair}"))?;
        visit.wait_until("the field to have the focus", || {
            Ok(visit.focused()?.starts_with(&format!("Touch {pair}")))
        })?;
        visit.window().press_text(reading)?;
        visit.window().press(&[Key::Enter])?;
        visit.find(Kind::Control, &format!("Between pins {pair}: "))?;
    }
    visit.see("common, surely")?;
    starts_are_timed(&visit)?;
    practice(&visit)
}

/// An example is opened, and a try entered.
fn starts_are_timed(visit: &Visit) -> Result<()> {
    visit.go_to("#/")?;
    activate(visit, "Look at an example")?;
    activate(visit, "Upright freezer from the bakery cellar")?;
    at_heading(visit, "Upright freezer from the bakery cellar")?;
    visit.go_to("#/job/example-open-ptc/do/start-trials")?;
    visit.see("Cover on the pins")?;
    activate(visit, "It stopped now")?;
    visit.see("At rest for")?;
    activate(visit, "I plug it in now")?;
    activate(visit, "Hummed, then clicked off")?;
    visit.see("Tries so far")
}

/// A lesson is begun, a sense asked, and what it found entered.
fn practice(visit: &Visit) -> Result<()> {
    visit.go_to("#/practice")?;
    activate(visit, "The chest from the boathouse")?;
    at_heading(visit, "The chest from the boathouse")?;
    activate(visit, "Do this")?;
    at_heading(visit, "Look it over")?;
    activate(visit, "Look")?;
    visit.see("On this machine: 110 to 127 V")?;
    activate(visit, "Enter this")?;
    visit.see("What do you see?")
}
