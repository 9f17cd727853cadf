//! Where the storage is full, that is said, an entry stays on the screen and can be saved as a file, and once there is
//! room it is kept. Where the system wipes the storage below the open page, the next entry brings all of the job back.

use anyhow::{Context, Result, ensure};
use serde_json::Value;

use crate::stage::Stage;
use crate::steps::{back_to_job, bare_the_pins, make_job, open_check, read_pair, saved_file};
use crate::visit::{Kind, Visit};

/// Another page of the same address takes all the room that is left, down to single characters.
const FILL: &str = "
    let size = 1 << 20, count = 0;
    while (size >= 1) {
        try {
            localStorage.setItem(`another-page/${count}`, 'x'.repeat(size));
            count += 1;
        } catch (full) {
            size >>= 1;
        }
    }
    return count;";

/// It goes away again.
const MAKE_ROOM: &str = "
    for (const name of Object.keys(localStorage)) {
        if (name.startsWith('another-page/')) localStorage.removeItem(name);
    }";

pub(super) fn run(stage: &Stage) -> Result<()> {
    let visit = stage.start()?;
    make_job(&visit)?;
    bare_the_pins(&visit)?;
    read_pair(&visit, "1 and 2", "4.7")?;
    visit.find(Kind::Control, "Between pins 1 and 2: 4.7 ohms")?;
    full(stage, &visit)?;
    wiped(&visit)
}

fn full(stage: &Stage, visit: &Visit) -> Result<()> {
    let filled = visit.run(FILL)?;
    ensure!(filled.as_u64() > Some(0), "nothing could be filled");
    read_pair(visit, "2 and 3", "7.6")?;
    visit.find(Kind::Control, "Between pins 2 and 3: 7.6 ohms")?;
    visit.see("There is no room left on this device")?;
    ensure!(
        !kept(visit)?.contains("\"7.6\""),
        "there was room after all"
    );

    back_to_job(visit)?;
    visit.press("Record")?;
    let file = saved_file(stage, visit, || visit.press("Save as a file"))?;
    let job: Value = serde_json::from_slice(&std::fs::read(file)?)?;
    for reading in ["4.7", "7.6"] {
        let is_there = job["entries"]
            .to_string()
            .contains(&format!("\"{reading}\""));
        ensure!(is_there, "the file lacks {reading}: {job}");
    }

    visit.run(MAKE_ROOM)?;
    back_to_job(visit)?;
    open_check(visit, "Windings")?;
    read_pair(visit, "1 and 3", "12.0")?;
    visit.find(Kind::Control, "Between pins 1 and 3: 12.0 ohms")?;
    visit.see_no("There is no room left on this device")?;
    visit.reload()?;
    for reading in ["1 and 2: 4.7", "2 and 3: 7.6", "1 and 3: 12.0"] {
        visit.find(Kind::Control, &format!("Between pins {reading} ohms"))?;
    }
    Ok(())
}

/// As a system does that runs short of room: below the open page, and before it is opened again.
fn wiped(visit: &Visit) -> Result<()> {
    visit.run("localStorage.clear()")?;
    read_pair(visit, "1 and 2", "4.8")?;
    visit.find(Kind::Control, "Between pins 1 and 2: 4.8 ohms")?;
    let document = kept(visit)?;
    for reading in ["4.7", "7.6", "12.0", "4.8"] {
        ensure!(
            document.contains(&format!("\"{reading}\"")),
            "{reading} is gone: {document}"
        );
    }
    visit.wait_until("the second copy to be kept", || {
        Ok(visit.run("return document.documentElement.dataset.keeping || ''")? == "")
    })?;
    visit.run("localStorage.clear()")?;
    visit.reload()?;
    visit.find(Kind::Control, "Between pins 1 and 2: 4.8 ohms")?;
    ensure!(
        kept(visit)? == document,
        "what came back differs from what was kept"
    );
    Ok(())
}

/// The job as the browser keeps it.
fn kept(visit: &Visit) -> Result<String> {
    let names = visit.stored_names("coldcase/job/")?;
    let name = names.first().context("no job is kept")?;
    visit.stored(name)?.context("the job has gone")
}
