//! At a plain http address, where browsers keep no page and offer neither workers nor random identifiers, the program
//! runs all the same and doesn't promise to work offline.

use anyhow::{Result, ensure};

use crate::engine::Habits;
use crate::stage::Stage;
use crate::steps::{SOUND, bare_the_pins, make_job, read_pair};

pub(super) fn run(stage: &Stage) -> Result<()> {
    let visit = stage.visit(stage.site("/")?.under_plain_name(), &Habits::default())?;
    visit.arrive()?;
    ensure!(
        visit.run("return window.isSecureContext")? == false,
        "the address counts as a safe one"
    );
    visit.wait_for_mark("offline", "unavailable")?;
    visit.see_no("Ready to work offline")?;
    make_job(&visit)?;
    bare_the_pins(&visit)?;
    for (pair, reading) in SOUND {
        read_pair(&visit, pair, reading)?;
    }
    visit.see("common, surely")?;
    visit.reload()?;
    visit.see("common, surely")
}
