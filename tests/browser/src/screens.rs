//! A walk through every screen and the states in which a screen looks different, for what has to hold on all of them.

use anyhow::Result;
use serde_json::json;

use crate::bench;
use crate::engine::Habits;
use crate::powered;
use crate::stage::Stage;
use crate::steps::{back_to_job, choose_pair, make_job, open_check, project_file, read_pair};
use crate::visit::{Kind, Visit};
use crate::webdriver::Key;

/// What is done at each screen; it is told the screen's name.
type Look<'a> = dyn FnMut(&Visit, &str) -> Result<()> + 'a;

/// Opens a browser with these habits and looks at every screen in it.
pub(crate) fn walk(stage: &Stage, habits: &Habits, look: &mut Look<'_>) -> Result<()> {
    let visit = stage.visit(stage.site("/")?, habits)?;
    visit.arrive()?;
    let look: &mut Look<'_> = &mut |visit, screen| {
        visit.wait_for_rest()?;
        look(visit, screen)
    };
    look(&visit, "no jobs")?;
    new_job(&visit, look)?;
    checks(&visit, look)?;
    pins(&visit, look)?;
    back_to_job(&visit)?;
    bench::examine(&visit, look)?;
    powered_on(&visit, look)?;
    places(&visit, look)?;
    files(&visit, look)?;
    start_trials(&visit, look)?;
    cold(&visit, look)?;
    settings(&visit, look)?;
    practice(&visit, look)?;
    look_at(&visit, "#/about", "safety", look)?;
    look_at(&visit, "#/job/nowhere", "no such job", look)?;
    stage.close(visit);
    Ok(())
}

fn new_job(visit: &Visit, look: &mut Look<'_>) -> Result<()> {
    visit.press("Look at an example")?;
    look(visit, "examples")?;
    visit.press("Start a job")?;
    visit.see("What is it?")?;
    look(visit, "what is it")?;
    visit.choose("Chest freezer")?;
    visit.see("Which mains")?;
    look(visit, "which mains")?;
    visit.choose("230 V, 50 Hz")?;
    visit.see("What did it do")?;
    look(visit, "what did it do")?;
    visit.choose("Trips the outlet")?;
    visit.see("Who says so?")?;
    look(visit, "who says so")?;
    visit.go_to("#/")?;
    make_job(visit)?;
    look(visit, "do")
}

fn checks(visit: &Visit, look: &mut Look<'_>) -> Result<()> {
    visit.press("Something else")?;
    look(visit, "something else")?;
    visit.press("Refrigerant")?;
    visit.see("What does the plate say")?;
    look(visit, "refrigerant")?;
    visit.choose("R600a, isobutane")?;
    look(visit, "refrigerant known")?;
    back_to_job(visit)?;
    open_check(visit, "The machine")?;
    visit.press("Keep these words")?;
    look(visit, "the machine, nothing typed")?;
    back_to_job(visit)
}

fn pins(visit: &Visit, look: &mut Look<'_>) -> Result<()> {
    open_check(visit, "Windings")?;
    visit.see("Are the three pins bare?")?;
    look(visit, "pins, before")?;
    visit.press("Still on")?;
    visit.see("The numbers would be wrong")?;
    look(visit, "pins, still on")?;
    visit.press("They are off now")?;
    visit.see("Which looks like yours?")?;
    look(visit, "pins, shape")?;
    visit.press("Point up")?;
    choose_pair(visit, "1 and 2")?;
    look(visit, "pins, nothing read")?;
    open_folds(visit)?;
    look(visit, "pins, all folds open")?;
    for (typed, screen) in [("4,7,1", "pins, refused"), ("4.7k", "pins, asked about")] {
        visit.fill("Touch 1 and 2", typed)?;
        visit.window().press(&[Key::Enter])?;
        visit.see(if typed == "4.7k" {
            "Is that right?"
        } else {
            "Two decimal marks"
        })?;
        look(visit, screen)?;
    }
    visit.fill("Touch 1 and 2", "4.71")?;
    visit.window().press(&[Key::Enter])?;
    visit.see("4.71 Ω")?;
    look(visit, "pins, one read")?;
    read_pair(visit, "2 and 3", "7.63")?;
    visit.see("expect")?;
    look(visit, "pins, two read")?;
    read_pair(visit, "1 and 3", "12.02")?;
    visit.see("common, surely")?;
    look(visit, "pins, three read")?;
    for (shape, is_turned) in [
        ("Point to the right", true),
        ("Point to the left", true),
        ("Column", true),
        ("Point down", false),
        ("Row", false),
    ] {
        visit.press("The pins lie another way")?;
        if is_turned {
            visit.press("Turn")?;
        }
        visit.press(shape)?;
        visit.see("common, surely")?;
        look(visit, &format!("pins, {shape}"))?;
    }
    read_pair(visit, "1 and 3", "12.2")?;
    visit.see("12.2 Ω")?;
    look(visit, "pins, one pair twice")
}

/// What the powered checks mean, and one question of each kind that only they have.
fn powered_on(visit: &Visit, look: &mut Look<'_>) -> Result<()> {
    powered::work(visit, &mut |visit, screen| {
        let is_new = ["Amperes in the same minute", "What tripped?"].contains(&screen);
        if is_new || screen.ends_with("what it means") {
            look(visit, screen)?;
        }
        Ok(())
    })
}

fn places(visit: &Visit, look: &mut Look<'_>) -> Result<()> {
    visit.see("What could be at fault")?;
    look(visit, "do, all examined")?;
    tasks(visit, look)?;
    visit.press("Known")?;
    visit.see("Found so far")?;
    look(visit, "known")?;
    open_folds(visit)?;
    look(visit, "known, all folds open")?;
    visit.press("Record")?;
    visit.see("Send it")?;
    look(visit, "record")?;
    visit.press("Make the page that goes with it")?;
    visit.see("Reading by reading")?;
    look(visit, "record, the page that goes with it")?;
    look_at(visit, "#/", "jobs", look)
}

/// Checks that ask for one clue, by a choice, by numbers and by ticks.
fn tasks(visit: &Visit, look: &mut Look<'_>) -> Result<()> {
    open_check(visit, "Condenser surface")?;
    visit.see("What did it show?")?;
    look(visit, "condenser")?;
    visit.choose("matted or boxed in")?;
    visit.see("What that changed")?;
    look(visit, "condenser, answered")?;
    back_to_job(visit)?;
    visit.press("Something was done to it")?;
    visit.see("What was done?")?;
    look(visit, "what was done")?;
    visit.press("Do")?;
    for (check, words, screen) in [
        (
            "Room temperature",
            "Measure the room's temperature",
            "room temperature",
        ),
        ("What is known of its past", "What is known of it?", "past"),
    ] {
        open_check(visit, check)?;
        visit.see(words)?;
        look(visit, screen)?;
        visit.press("Do")?;
    }
    Ok(())
}

fn files(visit: &Visit, look: &mut Look<'_>) -> Result<()> {
    for (file, screen, words) in [
        (
            "tests/documents/bad/words.json",
            "file refused",
            "It can't be opened",
        ),
        (
            "tests/documents/good/every-shape.json",
            "file preview",
            "Add to my jobs",
        ),
        (
            "tests/documents/backup/two-jobs.json",
            "back-up preview",
            "Take them in",
        ),
        (
            "tests/documents/newer/version-2.json",
            "file from a newer version",
            "Keep it, read only",
        ),
    ] {
        visit.go_to("#/import")?;
        visit.hand_over("Choose a file", &project_file(file).canonicalize()?)?;
        visit.see(words)?;
        look(visit, screen)?;
    }
    visit.press("Keep it, read only")?;
    look_at(visit, "#/job/version-2", "newer job", look)?;
    let damaged = [
        json!("coldcase/job/damaged"),
        json!("1\n{\"type\": \"coldcase-job\","),
    ];
    visit
        .window()
        .run("localStorage.setItem(arguments[0], arguments[1])", &damaged)?;
    look_at(visit, "#/job/damaged", "damaged job", look)?;
    visit.go_to("#/")?;
    visit.reload()?;
    visit.press("Chest freezer")?;
    visit.press("Record")?;
    visit.press("Delete this job")?;
    visit.see("Deleted:")?;
    look(visit, "jobs, one deleted")
}

/// Before the ground check of the job at hand, and of an example that may be tried.
fn start_trials(visit: &Visit, look: &mut Look<'_>) -> Result<()> {
    visit.go_to("#/")?;
    make_job(visit)?;
    let here = visit.run("return location.hash")?;
    let here = here.as_str().unwrap_or_default().to_owned();
    visit.go_to(&format!("{here}/do/start-trials"))?;
    visit.see("the ground check at the plug isn't done")?;
    look(visit, "start trials, closed")?;
    visit.go_to("#/")?;
    visit.press("Look at an example")?;
    visit.press("Upright freezer from the bakery cellar")?;
    visit.find(Kind::Control, "Something else")?;
    visit.go_to("#/job/example-open-ptc/do/start-trials")?;
    visit.press("It stopped now")?;
    visit.see("At rest for")?;
    look(visit, "start trials, resting")?;
    visit.press("I plug it in now")?;
    visit.see("What did it do?")?;
    look(visit, "start trials, plugged in")?;
    visit.press("Hummed, then clicked off")?;
    visit.see("Tries so far")?;
    look(visit, "start trials, tried")?;
    visit.go_to("#/job/example-open-ptc/do/would-a-kit-help")?;
    visit.see("Would a start kit help?")?;
    visit.choose("R600a, and this compressor")?;
    visit.see("Any other kit stays refused")?;
    look(visit, "start kit, not here")?;
    look_at(
        visit,
        "#/job/example-open-ptc/do/supply",
        "outlet and volts",
        look,
    )
}

/// What proves the cold, of the example whose tries were looked at.
fn cold(visit: &Visit, look: &mut Look<'_>) -> Result<()> {
    let job = "#/job/example-open-ptc/do";
    visit.go_to(&format!("{job}/cool-down"))?;
    visit.see("Does it get cold?")?;
    open_folds(visit)?;
    look(visit, "cool-down, not switched on, all folds open")?;
    visit.press("Switched on now")?;
    visit.see("On for")?;
    look(visit, "cool-down, on")?;
    visit.fill("The thermometer shows", "21.4 °C")?;
    visit.window().press(&[Key::Enter])?;
    visit.see("Course")?;
    open_folds(visit)?;
    look(visit, "cool-down, one reading, all folds open")?;
    look_at(
        visit,
        &format!("{job}/refrigerant-facts"),
        "facts about a gas",
        look,
    )?;
    visit.fill("At a temperature of", "-25")?;
    visit.see("absolute")?;
    visit.fill("Charge on the plate", "180")?;
    visit.fill("The cabinet", "200")?;
    visit.see("lower flammable limit")?;
    look(visit, "facts about a gas, filled in")?;
    logs(visit, job, look)?;
    energy(visit, job, look)
}

/// Nothing said, refused, and all that it may ask and tell.
fn energy(visit: &Visit, job: &str, look: &mut Look<'_>) -> Result<()> {
    visit.go_to(&format!("{job}/energy"))?;
    visit.see("What it uses")?;
    look(visit, "energy, nothing metered")?;
    visit.fill("Kilowatt hours it shows", "1.6")?;
    visit.press("Enter")?;
    visit.see("For how long has it counted?")?;
    look(visit, "energy, refused")?;
    visit.fill("Hours it has counted", "24")?;
    visit.press("Enter")?;
    visit.see("kWh a day")?;
    open_folds(visit)?;
    visit.choose("Frost-free, freezer on top")?;
    visit.see("Does it make ice by itself?")?;
    visit.choose("No icemaker")?;
    visit.fill("How large is the freezer", "14")?;
    visit.window().press(&[Key::Enter])?;
    visit.see("In what unit?")?;
    look(visit, "energy, asked about")
}

fn logs(visit: &Visit, job: &str, look: &mut Look<'_>) -> Result<()> {
    visit.go_to(&format!("{job}/cool-down/log"))?;
    visit.see("Take in a logger's file")?;
    look(visit, "a log, nothing chosen")?;
    let file = project_file("tests/documents/logs/asks.csv").canonicalize()?;
    visit.hand_over("Choose a file", &file)?;
    visit.see("On which scale?")?;
    look(visit, "a log, asked about")?;
    visit.press("°F")?;
    visit.press("Day, month, year")?;
    visit.see("by which clock?")?;
    look(visit, "a log, which clock")?;
    visit.press("This phone's clock")?;
    visit.see("Where did this probe lie?")?;
    look(visit, "a log, read")
}

fn practice(visit: &Visit, look: &mut Look<'_>) -> Result<()> {
    visit.go_to("#/practice")?;
    visit.see("Five machines")?;
    look(visit, "practice")?;
    visit.press("The chest from the boathouse")?;
    visit.see("What could be at fault")?;
    look(visit, "practice, do")?;
    open_check(visit, "Pins to the shell")?;
    visit.press("Measure it")?;
    visit.see("The meter shows")?;
    look(visit, "practice, measured")?;
    // It has to wait, and can be opened all the same.
    visit.run("location.hash = location.hash.replace('shell', 'power-up')")?;
    visit.see("First quarter of an hour plugged in")?;
    visit.press("Listen")?;
    visit.see("Enter this")?;
    look(visit, "practice, heard")?;
    visit.press("The truth")?;
    look(visit, "practice, before the truth")?;
    visit.press("Show the truth")?;
    visit.see("What is wrong with it")?;
    look(visit, "practice, the truth")
}

fn settings(visit: &Visit, look: &mut Look<'_>) -> Result<()> {
    look_at(visit, "#/settings", "settings", look)?;
    visit.choose("Mine, by its data sheet")?;
    visit.press("Use these figures")?;
    visit.see("The percentage is a number")?;
    look(visit, "settings, no such meter")?;
    look_at(visit, "#/assumptions", "assumptions", look)?;
    visit.press("Start device open")?;
    visit.fill("Start device open: of a hundred", "100")?;
    visit.press("Keep these figures")?;
    visit.see("At most 99.9")?;
    look(visit, "assumptions, refused")
}

fn look_at(visit: &Visit, address: &str, screen: &str, look: &mut Look<'_>) -> Result<()> {
    visit.go_to(address)?;
    look(visit, screen)
}

/// Opens everything that is folded.
fn open_folds(visit: &Visit) -> Result<()> {
    visit
        .run("document.querySelectorAll('details').forEach((fold) => { fold.open = true; })")
        .map(drop)
}
