//! After the first visit the browser can be closed, the network can go, and the page opens again with its jobs.

use anyhow::Result;

use crate::engine::Habits;
use crate::stage::Stage;
use crate::steps::{bare_the_pins, make_job, open_check, read_pair};

pub(super) fn run(stage: &Stage) -> Result<()> {
    let habits = Habits {
        profile: Some(stage.folder().join("profile")),
        ..Habits::default()
    };
    let visit = stage.visit(stage.site("/")?, &habits)?;
    visit.arrive()?;
    make_job(&visit)?;
    bare_the_pins(&visit)?;
    read_pair(&visit, "1 and 3", "12,0")?;
    visit.wait_for_mark("offline", "ready")?;
    let gone = visit.site.gone();
    stage.close(visit);

    let visit = stage.visit(gone, &habits)?;
    visit.arrive()?;
    visit.press("Chest freezer")?;
    open_check(&visit, "Windings")?;
    visit.see("12.0 Ω")
}
