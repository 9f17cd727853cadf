//! Where the network goes before the second part of the program has arrived, that is said, the answers stay, and the
//! job is made once the network is back.

use anyhow::Result;
use serde_json::json;

use crate::engine::Habits;
use crate::stage::Stage;
use crate::visit::{Kind, Visit};

pub(super) fn run(stage: &Stage) -> Result<()> {
    let visit = stage.visit(stage.site("/")?, &Habits::default())?;
    visit.allow_mistakes();
    visit.window().chromium("Network.enable", &json!({}))?;
    block(&visit, &["*split*"])?;
    visit.arrive()?;
    visit.press("Start a job")?;
    visit.choose("Chest freezer")?;
    visit.choose("230 V, 50 Hz")?;
    visit.choose("Not plugged in yet")?;
    visit.see("nothing that you entered is lost")?;
    visit.press("Jobs")?;
    visit.press("Open a file")?;
    visit.see("The rest of the program hasn't arrived")?;

    block(&visit, &[])?;
    visit.press("Jobs")?;
    visit.press("Start a job")?;
    for answer in ["Chest freezer", "230 V, 50 Hz", "Not plugged in yet"] {
        visit.choose(answer)?;
    }
    visit.find(Kind::Control, "Something else").map(drop)
}

fn block(visit: &Visit, addresses: &[&str]) -> Result<()> {
    let blocked = json!({"urls": addresses});
    visit
        .window()
        .chromium("Network.setBlockedURLs", &blocked)
        .map(drop)
}
