//! What was entered in another tab is neither lost nor overwritten, and shows in this one without a reload.

use std::thread::sleep;
use std::time::Duration;

use anyhow::{Context, Result, ensure};
use serde_json::Value;

use crate::stage::Stage;
use crate::steps::{bare_the_pins, make_job, read_pair};
use crate::visit::{Kind, Visit};

pub(super) fn run(stage: &Stage) -> Result<()> {
    let visit = stage.start()?;
    make_job(&visit)?;
    bare_the_pins(&visit)?;
    let address = visit.run("return location.hash")?;
    let address = address.as_str().context("the job has no address")?;
    let first = visit.window().tab()?;
    let second = visit.open_tab()?;
    visit.go_to(address)?;
    read_pair(&visit, "1 and 2", "4.7")?;
    visit.window().go_to_tab(&first)?;
    visit.find(Kind::Control, "Between pins 1 and 2: 4.7 ohms")?;
    read_pair(&visit, "2 and 3", "7.6")?;
    visit.window().go_to_tab(&second)?;
    visit.find(Kind::Control, "Between pins 2 and 3: 7.6 ohms")?;
    both_tabs_rest(&visit)?;
    ensure!(
        kept_pairs(&visit)? == ["pair-1-2", "pair-2-3"],
        "not both entries were kept"
    );
    Ok(())
}

/// Neither tab answers the other's writing with writing of its own: left alone, the revision stays.
fn both_tabs_rest(visit: &Visit) -> Result<()> {
    let before = kept(visit)?;
    sleep(Duration::from_millis(500));
    ensure!(kept(visit)? == before, "the tabs go on writing");
    Ok(())
}

fn kept(visit: &Visit) -> Result<String> {
    let names = visit.stored_names("coldcase/job/")?;
    let name = names.first().context("no job was kept")?;
    visit.stored(name)?.context("the job has gone")
}

fn kept_pairs(visit: &Visit) -> Result<Vec<String>> {
    let kept = kept(visit)?;
    let (_, document) = kept.split_once('\n').context("the job has no revision")?;
    let document: Value = serde_json::from_str(document)?;
    let entries = document["entries"].as_array().into_iter().flatten();
    Ok(entries
        .filter_map(|entry| entry["answer"]["item"].as_str())
        .filter(|item| item.starts_with("pair-"))
        .map(str::to_owned)
        .collect())
}
