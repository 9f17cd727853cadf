//! Who has practised once can practise again with the browser closed in between and the network gone.

use anyhow::Result;
use serde_json::json;

use crate::engine::Habits;
use crate::stage::Stage;
use crate::steps::open_check;
use crate::visit::{Kind, Visit};

pub(super) fn run(stage: &Stage) -> Result<()> {
    let habits = Habits {
        profile: Some(stage.folder().join("profile")),
        ..Habits::default()
    };
    let visit = stage.visit(stage.site("/")?, &habits)?;
    visit.arrive()?;
    visit.wait_for_mark("offline", "ready")?;
    visit.press("Practise without a freezer")?;
    visit.press("The chest from the boathouse")?;
    visit.find(Kind::Control, "Something else")?;
    visit.wait_until("practice among what is kept", || is_kept(&visit))?;
    let gone = visit.site.gone();
    stage.close(visit);

    let visit = stage.visit(gone, &habits)?;
    visit.arrive()?;
    visit.press("The chest from the boathouse")?;
    open_check(&visit, "Pins to the shell")?;
    visit.press("Measure it")?;
    visit.see("The meter shows OL")
}

/// Whether the service worker holds the part that simulates.
fn is_kept(visit: &Visit) -> Result<bool> {
    let held = visit.window().run_async(
        "const done = arguments[arguments.length - 1];
         const part = performance.getEntriesByType('resource').find(({ name }) => name.includes('split_practice'));
         caches.match(part ? part.name : '').then((found) => done(Boolean(found)), () => done(false));",
        &[],
    )?;
    Ok(held == json!(true))
}
