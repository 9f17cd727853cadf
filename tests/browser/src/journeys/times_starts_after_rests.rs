//! The rest clock is right to the second after a day and ten reloads, a try takes two taps and survives a reload between
//! them, a clock that is set back is told, and nothing that was typed is lost.

use anyhow::{Context, Result, ensure};

use crate::stage::Stage;
use crate::steps::{is_closed_before_the_ground_check, move_clock, open_in_example};
use crate::visit::{Kind, Visit};

pub(super) fn run(stage: &Stage) -> Result<()> {
    let visit = stage.start()?;
    closed_before_the_ground_check(&visit)?;
    open_trials(&visit)?;
    bad_minutes(&visit)?;
    visit.press("It stopped now")?;
    visit.see("At rest for")?;
    let stopped = now(&visit)?;
    a_day_and_ten_reloads(&visit, stopped)?;
    a_try_in_two_taps(&visit)?;
    a_clock_set_back(&visit)
}

/// A job of which nothing was measured yet offers no try.
fn closed_before_the_ground_check(visit: &Visit) -> Result<()> {
    is_closed_before_the_ground_check(visit, "start-trials", "I plug it in now")
}

fn open_trials(visit: &Visit) -> Result<()> {
    open_in_example(visit, "start-trials")?;
    visit.see("Cover on the pins")
}

fn bad_minutes(visit: &Visit) -> Result<()> {
    visit.press("It stopped some minutes ago")?;
    visit.fill("Minutes ago", "soon")?;
    visit.press("Enter")?;
    visit.see("That isn't a number of minutes")?;
    let kept = visit.value_of("Minutes ago")?;
    ensure!(kept == "soon", "what was typed is lost: {kept:?}");
    Ok(())
}

fn now(visit: &Visit) -> Result<i64> {
    let now = visit.run("return Date.now()")?;
    now.as_f64().map(|now| now as i64).context("a time")
}

/// The seconds on the clock's face, and the moment at which they were read.
fn face(visit: &Visit) -> Result<(i64, i64)> {
    let read = visit.run(
        "const digits = document.querySelector('.rest-digits');
         return [digits ? digits.textContent : '', Date.now()]",
    )?;
    let digits = read[0].as_str().context("digits")?;
    let parts = digits.split(':').map(|part| part.trim().parse::<i64>());
    let parts: Vec<i64> = parts.collect::<Result<_, _>>().context("digits")?;
    let seconds = parts.iter().fold(0, |sum, part| sum * 60 + part);
    let at = read[1].as_f64().context("a time")? as i64;
    Ok((seconds, at))
}

const HOUR: i64 = 3_600_000;

fn a_day_and_ten_reloads(visit: &Visit, stopped: i64) -> Result<()> {
    for reload in 1..=10 {
        visit.reload()?;
        visit.find(Kind::Control, "It stopped now")?;
        let by = 24 * HOUR * reload / 10;
        move_clock(visit, by)?;
        visit.wait_until("a face with the time since the stop", || {
            let (seconds, at) = face(visit)?;
            let true_seconds = (at - stopped) / 1_000;
            // Written at the beginning of a second, read during it.
            Ok((true_seconds - seconds).abs() <= 1)
        })?;
    }
    let (seconds, _) = face(visit)?;
    ensure!(seconds >= 86_400, "after a day it shows {seconds} s");
    Ok(())
}

fn a_try_in_two_taps(visit: &Visit) -> Result<()> {
    visit.press("I plug it in now")?;
    visit.see("What did it do?")?;
    visit.reload()?;
    move_clock(visit, 24 * HOUR)?;
    visit.see("What did it do?")?;
    visit.press("Hummed, then clicked off")?;
    visit.see("After 24")?;
    visit.see("from cold: hummed, then clicked off")?;
    visit.press("Take back")?;
    visit.see_no("from cold: hummed, then clicked off")?;
    visit.press("I plug it in now")?;
    visit.press("Started")?;
    visit.see("from cold: started")?;
    visit.see("It runs since")
}

/// After a reload the device's own clock counts again: a day before what was entered last.
fn a_clock_set_back(visit: &Visit) -> Result<()> {
    visit.reload()?;
    visit.see("This phone's clock was set back")
}
