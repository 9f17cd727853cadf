//! Where the browser keeps nothing for the page, work goes on and a file can still be sent; that it won't last is said.

use anyhow::{Result, ensure};
use serde_json::Value;

use crate::engine::Habits;
use crate::stage::Stage;
use crate::steps::{back_to_job, bare_the_pins, make_job, read_pair, saved_file};

pub(super) fn run(stage: &Stage) -> Result<()> {
    let habits = Habits {
        blocks_storage: true,
        ..Habits::default()
    };
    let visit = stage.visit(stage.site("/")?, &habits)?;
    visit.arrive()?;
    let refused = "try { return String(localStorage) } catch (error) { return error.name }";
    ensure!(
        visit.run(refused)? == "SecurityError",
        "the storage isn't blocked"
    );
    visit.see("This browser keeps nothing for this page")?;
    make_job(&visit)?;
    bare_the_pins(&visit)?;
    read_pair(&visit, "1 and 2", "4.7")?;
    back_to_job(&visit)?;
    visit.press("Record")?;
    let file = saved_file(stage, &visit, || visit.press("Save as a file"))?;
    let job: Value = serde_json::from_slice(&std::fs::read(file)?)?;
    ensure!(
        job["entries"].to_string().contains("4.7"),
        "the file lacks the reading: {job}"
    );
    Ok(())
}
