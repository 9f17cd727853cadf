//! What several journeys do on their way.

use std::path::{Path, PathBuf};

use anyhow::{Context, Result, bail};
use serde_json::json;

use crate::engine::Engine;
use crate::stage::Stage;
use crate::visit::{Kind, Visit};

/// The three readings of a sound compressor, in an order that nobody is asked for: pin 2 is common.
pub(crate) const SOUND: [(&str, &str); 3] =
    [("2 and 3", "7,6"), ("1 and 3", "12,0"), ("1 and 2", "4,7")];

/// Makes a job by its three questions, from the start screen.
pub(crate) fn make_job(visit: &Visit) -> Result<()> {
    visit.press("Start a job")?;
    visit.choose("Chest freezer")?;
    visit.choose("230 V, 50 Hz")?;
    visit.choose("Silent")?;
    visit.choose("The seller says so")?;
    visit.find(Kind::Control, "Something else").map(drop)
}

/// Goes to a check that isn't next, from a job's first screen.
pub(crate) fn open_check(visit: &Visit, check: &str) -> Result<()> {
    visit.press("Something else")?;
    visit.press(check)
}

/// Goes from a check, or another place in a job, to the job's first screen.
pub(crate) fn back_to_job(visit: &Visit) -> Result<()> {
    visit.press("Do")?;
    visit.find(Kind::Control, "Something else").map(drop)
}

/// Goes from a job's first screen to the pins, and answers what comes before them.
pub(crate) fn bare_the_pins(visit: &Visit) -> Result<()> {
    open_check(visit, "Windings")?;
    visit.press("They are off")?;
    visit.press("Point up")?;
    visit.find(Kind::Region, "Keypad").map(drop)
}

/// Enters a reading between two pins with the page's own keypad.
pub(crate) fn read_pair(visit: &Visit, pair: &str, shown: &str) -> Result<()> {
    choose_pair(visit, pair)?;
    press_keys(visit, shown)?;
    press_key(visit, "Enter")
}

/// Touches the line between two pins, and waits until the page asks about it and the field has the focus.
pub(crate) fn choose_pair(visit: &Visit, pair: &str) -> Result<()> {
    visit.press(&format!("Between pins {pair}"))?;
    visit.wait_until(&format!("the field for pins {pair}"), || {
        Ok(visit.focused()?.starts_with(&format!("Touch {pair}")))
    })
}

/// Presses a key of the page's keypad for each character; "L" stands for over range.
pub(crate) fn press_keys(visit: &Visit, text: &str) -> Result<()> {
    text.chars().try_for_each(|character| match character {
        ',' | '.' => press_key(visit, "Decimal mark"),
        'L' => press_key(visit, "Over range"),
        'k' => press_key(visit, "Make it kilo-ohms"),
        digit => press_key(visit, &digit.to_string()),
    })
}

/// Presses one key of the page's keypad.
pub(crate) fn press_key(visit: &Visit, name: &str) -> Result<()> {
    let keypad = visit.find(Kind::Region, "Keypad")?;
    let key = visit.find_in(Some(&keypad), Kind::Control, name)?;
    visit.touch(&key)
}

/// Lets `save` make the page save a file, and returns the file. Chromium really downloads it; WebKit's driver can't be
/// told where to, so there the text is taken that the page hands to the browser as a file.
pub(crate) fn saved_file(
    stage: &Stage,
    visit: &Visit,
    save: impl FnOnce() -> Result<()>,
) -> Result<PathBuf> {
    match stage.engine {
        Engine::Chromium => {
            let folder = stage.folder().join("downloads");
            std::fs::create_dir_all(&folder)?;
            let known = files_in(&folder)?;
            let allow = json!({"behavior": "allow", "downloadPath": folder});
            visit
                .window()
                .chromium("Browser.setDownloadBehavior", &allow)?;
            save()?;
            let mut saved = None;
            visit.wait_until("the download", || {
                let is_new = |file: &PathBuf| !known.contains(file) && !is_partial(file);
                saved = files_in(&folder)?.into_iter().find(is_new);
                Ok(saved.is_some())
            })?;
            saved.context("nothing was downloaded")
        }
        Engine::WebKit => {
            visit.run(CATCH_FILE)?;
            save()?;
            let mut saved = None;
            visit.wait_until("the file's text", || {
                saved = visit
                    .run("return window.savedFile || null")?
                    .as_str()
                    .map(str::to_owned);
                Ok(saved.is_some())
            })?;
            let Some(text) = saved else {
                bail!("no file was handed to the browser")
            };
            stage.file("saved.json", text)
        }
    }
}

/// A file among the project's own.
pub(crate) fn project_file(path: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../..")
        .join(path)
}

/// Keeps the text of the next file that the page makes.
const CATCH_FILE: &str = "
    delete window.savedFile;
    const make = URL.createObjectURL;
    URL.createObjectURL = (blob) => {
        URL.createObjectURL = make;
        blob.text().then((text) => { window.savedFile = text; });
        return make.call(URL, blob);
    };";

fn files_in(folder: &Path) -> Result<Vec<PathBuf>> {
    let entries = std::fs::read_dir(folder)?;
    Ok(entries
        .filter_map(|entry| Some(entry.ok()?.path()))
        .collect())
}

fn is_partial(file: &Path) -> bool {
    file.extension()
        .is_some_and(|extension| extension == "crdownload")
        || file
            .file_name()
            .is_some_and(|name| name.to_string_lossy().starts_with('.'))
}

/// A job of which nothing was measured yet: a screen of its that needs power says so, and doesn't offer this.
pub(crate) fn is_closed_before_the_ground_check(
    visit: &Visit,
    screen: &str,
    offered: &str,
) -> Result<()> {
    make_job(visit)?;
    open_screen(visit, screen)?;
    visit.see("the ground check at the plug isn't done")?;
    visit.see_no(offered)?;
    back_to_job(visit)?;
    visit.press("Jobs")
}

/// A screen of an example that may be powered.
pub(crate) fn open_in_example(visit: &Visit, screen: &str) -> Result<()> {
    visit.press("Look at an example")?;
    visit.press("Upright freezer from the bakery cellar")?;
    visit.find(Kind::Control, "Something else")?;
    open_screen(visit, screen)
}

/// A screen of the job that is open.
fn open_screen(visit: &Visit, screen: &str) -> Result<()> {
    let here = visit.run("return location.hash")?;
    let here = here.as_str().context("an address")?.to_owned();
    visit.go_to(&format!("{here}/do/{screen}"))
}

/// Moves the page's clock by so many milliseconds from the device's. A reload puts it right again.
pub(crate) fn move_clock(visit: &Visit, by: i64) -> Result<()> {
    let script = "const by = arguments[0];
        window.trueDate = window.trueDate || Date;
        const True = window.trueDate;
        window.Date = class extends True {
          constructor(...given) { if (given.length) super(...given); else super(True.now() + by); }
          static now() { return True.now() + by; }
        };";
    visit.window().run(script, &[json!(by)]).map(drop)
}
