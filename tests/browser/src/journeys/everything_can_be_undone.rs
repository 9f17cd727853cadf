//! Each entry can be taken back and done again, also after a reload, and a deleted job comes back.

use anyhow::Result;

use crate::stage::Stage;
use crate::steps::{back_to_job, bare_the_pins, make_job, read_pair};
use crate::visit::{Kind, Visit};

pub(super) fn run(stage: &Stage) -> Result<()> {
    let visit = stage.start()?;
    make_job(&visit)?;
    bare_the_pins(&visit)?;
    read_pair(&visit, "1 and 2", "4.7")?;
    reads(&visit, "4.7 ohms")?;
    read_pair(&visit, "1 and 2", "5.2")?;
    reads(&visit, "5.2 ohms")?;

    visit.press("Undo")?;
    reads(&visit, "4.7 ohms")?;
    visit.press("Undo")?;
    reads(&visit, "not read yet")?;
    back_to_job(&visit)?;
    visit.press("Redo")?;
    visit.reload()?;
    visit.press("Redo")?;
    visit.press("Undo")?;
    visit.press("Known")?;
    visit.see("4.7 Ω")?;

    visit.press("Record")?;
    visit.press("Delete this job")?;
    visit.see("Deleted: Chest freezer, 230 V, 50 Hz.")?;
    visit.reload()?;
    visit.press("Bring it back")?;
    visit.press("Chest freezer")?;
    visit.press("Known")?;
    visit.see("4.7 Ω")
}

fn reads(visit: &Visit, what: &str) -> Result<()> {
    visit
        .find(Kind::Control, &format!("Between pins 1 and 2: {what}"))
        .map(drop)
}
