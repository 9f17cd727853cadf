//! Each answer moves the suspects, on the screen where it was given and on those after it; what is assumed beforehand
//! can be changed within limits, counts, and is taken back.

use anyhow::{Result, ensure};

use crate::stage::Stage;
use crate::steps::{back_to_job, make_job, open_check};
use crate::visit::Visit;

pub(super) fn run(stage: &Stage) -> Result<()> {
    let visit = stage.start()?;
    make_job(&visit)?;
    visit.see("What could be at fault")?;
    visit.see("Thermostat doesn't close")?;

    open_check(&visit, "Condenser surface")?;
    visit.see("What did it show?")?;
    visit.choose("matted or boxed in")?;
    visit.see("What that changed")?;
    visit.see("Condenser matted with lint or boxed in")?;
    visit.press("Undo")?;
    visit.see("What did it show?")?;
    visit.choose("clear")?;
    back_to_job(&visit)?;
    visit.press("All of them, and why")?;
    visit.see("What may be at fault")?;
    visit.press("Thermostat doesn't close:")?;
    visit.see("before anything was known")?;
    visit.press("What it did:")?;
    visit.see("Who says so?")?;

    a_check_that_has_to_wait_says_why(&visit)?;
    what_is_assumed_can_be_changed(&visit)
}

fn a_check_that_has_to_wait_says_why(visit: &Visit) -> Result<()> {
    back_to_job(visit)?;
    visit.press("Something else")?;
    visit.press("Not now:")?;
    visit.press("First quarter of an hour plugged in")?;
    visit.see("Not now: the ground check at the plug isn't done")?;
    back_to_job_from_check(visit)
}

fn back_to_job_from_check(visit: &Visit) -> Result<()> {
    visit.press("Do")
}

fn what_is_assumed_can_be_changed(visit: &Visit) -> Result<()> {
    visit.press("Jobs")?;
    visit.press("Settings")?;
    visit.press("What we assume")?;
    visit.see("judgement from trade practice")?;
    visit.press("Door or lid doesn't seal")?;
    visit.fill("Door or lid doesn't seal: of a hundred", "100")?;
    visit.press("Keep these figures")?;
    visit.see("At most 99.9")?;
    let kept = visit.value_of("Door or lid doesn't seal: of a hundred")?;
    ensure!(kept == "100", "what was typed is lost: {kept:?}");
    visit.fill("Door or lid doesn't seal: of a hundred", "60")?;
    visit.press("Keep these figures")?;
    visit.see("60 of 100, yours")?;
    visit.reload()?;
    visit.see("60 of 100, yours")?;

    visit.press("A chest freezer sells for")?;
    visit.fill("A chest freezer sells for: a chest freezer sells for", "50")?;
    visit.press("Keep these figures")?;
    visit.see("50, yours")?;

    visit.go_to("#/")?;
    visit.press("Chest freezer")?;
    visit.press("All of them, and why")?;
    visit.see("Door or lid doesn't seal:")?;

    // What it was weighed with goes along with the job.
    visit.press("Known")?;
    visit.see("Weighed with 2 figures of this device's own")?;

    visit.go_to("#/assumptions")?;
    visit.see("50, yours")?;
    visit.press("Go back to all stated figures")?;
    visit.see("The stated figures hold again")?;
    visit.see_no("of 100, yours")
}
