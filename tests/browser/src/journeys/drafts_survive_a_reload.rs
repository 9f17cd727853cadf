//! What is half typed comes back after a reload: a reading and a note.

use anyhow::{Result, ensure};

use crate::stage::Stage;
use crate::steps::{back_to_job, bare_the_pins, choose_pair, make_job, press_keys};

pub(super) fn run(stage: &Stage) -> Result<()> {
    let visit = stage.start()?;
    make_job(&visit)?;
    bare_the_pins(&visit)?;
    choose_pair(&visit, "2 and 3")?;
    press_keys(&visit, "12.")?;
    visit.reload()?;
    choose_pair(&visit, "2 and 3")?;
    let reading = visit.value_of("Touch 2 and 3")?;
    ensure!(reading == "12.", "of the reading came back {reading:?}");

    back_to_job(&visit)?;
    visit.press("Record")?;
    visit.fill("A note in your own words", "It hums and th")?;
    visit.reload()?;
    let note = visit.value_of("A note in your own words")?;
    ensure!(note == "It hums and th", "of the note came back {note:?}");
    Ok(())
}
