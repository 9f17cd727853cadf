//! Jobs are found by name, put away, copied, and backed up as one file; wiped from the device, they come back from it.

use anyhow::{Result, ensure};

use crate::stage::Stage;
use crate::steps::saved_file;
use crate::visit::{Kind, Visit};

const EXAMPLE: &str = "Chest freezer from the closed bakery";
const OTHER: &str = "Upright freezer from the bakery cellar";

pub(super) fn run(stage: &Stage) -> Result<()> {
    let visit = stage.start()?;
    for example in [EXAMPLE, OTHER] {
        visit.go_to("#/")?;
        visit.press("Look at an example")?;
        visit.press(example)?;
        visit.find(Kind::Control, "Something else")?;
    }
    copied_and_put_away(&visit)?;
    let before = kept(&visit)?;
    ensure!(before.len() == 3, "{before:?} are kept");

    visit.go_to("#/settings")?;
    visit.see("Never backed up")?;
    let backup = saved_file(stage, &visit, || visit.press("Save all jobs as a file"))?;
    visit.see("Last backed up")?;

    // The second copies go too, as the browser wipes all of a site's storage at once.
    visit.run("indexedDB.deleteDatabase('coldcase'); localStorage.clear();")?;
    visit.go_to("#/")?;
    visit.reload()?;
    visit.see("Why won't it get cold?")?;

    visit.go_to("#/import")?;
    visit.hand_over("Choose a file", &backup)?;
    visit.see("A back-up of 3 jobs")?;
    visit.see("3 jobs are new here")?;
    visit.press("Take them in")?;
    visit.see("Taken in")?;
    visit.see(EXAMPLE)?;
    visit.press("Put away: 1")?;
    visit.see(&format!("{OTHER}, copy"))?;
    ensure!(kept(&visit)? == before, "{:?} came back", kept(&visit)?);

    visit.go_to("#/import")?;
    visit.hand_over("Choose a file", &backup)?;
    visit.see("3 jobs are here already with all of their entries")
}

fn copied_and_put_away(visit: &Visit) -> Result<()> {
    visit.press("Record")?;
    visit.press("Make a copy")?;
    visit.press("Put it away")?;
    visit.see("Put away. It lies at the end of the list.")?;
    visit.go_to("#/")?;
    visit.see(EXAMPLE)?;
    visit.see_no(&format!("{OTHER}, copy"))
}

/// Each kept job as text, without the line in front that only this device needs.
fn kept(visit: &Visit) -> Result<Vec<String>> {
    let names = visit.stored_names("coldcase/job/")?;
    let texts = names.iter().map(|name| {
        let text = visit.stored(name)?.unwrap_or_default();
        Ok(text
            .split_once('\n')
            .map_or(String::new(), |(_, text)| text.to_owned()))
    });
    texts.collect()
}
