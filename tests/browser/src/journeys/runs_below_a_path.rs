//! The page runs below any path of any static server, and becomes ready to work offline there.

use anyhow::Result;

use crate::engine::Habits;
use crate::stage::Stage;

pub(super) fn run(stage: &Stage) -> Result<()> {
    // Nothing is served outside of the path, so that one absolute address would be one too many.
    let visit = stage.visit(stage.site("/sub/")?, &Habits::default())?;
    visit.arrive()?;
    visit.wait_for_mark("offline", "ready")?;
    visit.site.kill()?;
    visit.reload()
}
