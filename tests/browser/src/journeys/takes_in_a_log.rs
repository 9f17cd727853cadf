//! Two loggers' files, written differently, end in the job: one is clear but for its clock, the other leaves scale and
//! order of dates open and asks, one question at a time; an answer can be taken back; one without dates asks for the
//! day; what is no log, or too long a one, is refused in words, and nothing of it enters the job.

use std::fs::File;

use anyhow::{Context, Result, ensure};

use crate::stage::Stage;
use crate::visit::{Kind, Visit};

pub(super) fn run(stage: &Stage) -> Result<()> {
    let visit = stage.start()?;
    visit.press("Look at an example")?;
    visit.press("Upright freezer from the bakery cellar")?;
    visit.find(Kind::Control, "Something else")?;
    let here = visit.run("return location.hash")?;
    let here = here.as_str().context("an address")?.to_owned();
    let log = format!("{here}/do/cool-down/log");
    visit.go_to(&log)?;
    refused(stage, &visit)?;
    clear(stage, &visit)?;
    visit.go_to(&log)?;
    asked(stage, &visit)?;
    visit.go_to(&log)?;
    the_day_is_asked_for(stage, &visit)
}

fn refused(stage: &Stage, visit: &Visit) -> Result<()> {
    let jobs = || visit.run("return JSON.stringify(localStorage)");
    let before = jobs()?;
    let photo = stage.file("display.jpg.csv", b"\xFF\xD8\xFF\xE0\0\x10JFIF\0")?;
    visit.hand_over("Choose a file", &photo)?;
    visit.see("It is a picture. Type the temperatures off it, one by one.")?;
    let letter = "Dear buyer,\nit ran all night, and it was cold.\nYours\n";
    let letter = stage.file("letter.txt", letter)?;
    visit.hand_over("Choose a file", &letter)?;
    visit.see("No row holds a time and a number.")?;
    // A hundred million bytes, none of which has to be read for that.
    let large = stage.folder().join("years.csv");
    File::create(&large)?.set_len(100_000_000)?;
    visit.hand_over("Choose a file", &large)?;
    visit.see("It has 100 million bytes. Twenty-five million is the most")?;
    visit.see("or a reading each minute")?;
    let nothing = stage.file("nothing.csv", "")?;
    visit.hand_over("Choose a file", &nothing)?;
    visit.see("There is nothing in it.")?;
    ensure!(jobs()? == before, "something of a refused file was kept");
    Ok(())
}

/// Semicolons, decimal commas, times with their zone and two probes: nothing to ask but which to read.
fn clear(stage: &Stage, visit: &Visit) -> Result<()> {
    let rows = (0..12).map(|row| {
        let (minute, shown) = (row * 5, 21.0 - f64::from(row));
        format!("2026-11-20T10:{minute:02}:00Z;{shown:.1};22,5\n").replace('.', ",")
    });
    let head = "Zeit;Gefrierfach °C;Raum °C\n".to_owned();
    let text: String = std::iter::once(head).chain(rows).collect();
    let file = stage.file("logger.csv", text)?;
    visit.hand_over("Choose a file", &file)?;
    visit.see("semicolons between the cells and a decimal comma")?;
    visit.press("Read these")?;
    visit.see("12 readings from")?;
    visit.press("Take these in")?;
    visit.see("Taken in.")
}

fn asked(stage: &Stage, visit: &Visit) -> Result<()> {
    let rows = "Time,Probe\n03/04/2026 20:00,68.0\n03/04/2026 20:05,64.4\n03/04/2026 20:10,60.8\n";
    let file = stage.file("other.csv", rows)?;
    visit.hand_over("Choose a file", &file)?;
    visit.see("On which scale?")?;
    visit.press("°F")?;
    visit.see("which number is the day?")?;
    visit.press("One question back")?;
    visit.see("On which scale?")?;
    visit.press("°F")?;
    visit.press("Day, month, year")?;
    visit.see("by which clock?")?;
    visit.press("This phone's clock")?;
    visit.see("Say first where each probe lay")?;
    visit.press("Freezer")?;
    visit.see("3 readings from")?;
    visit.press("Take these in")?;
    visit.see("Taken in.")
}

/// A time that counts from the beginning, which was months ago.
fn the_day_is_asked_for(stage: &Stage, visit: &Visit) -> Result<()> {
    let rows = "Elapsed (minutes),Freezer °C\n0,21.0\n10,18.5\n20,16.2\n30,14.1\n";
    let file = stage.file("elapsed.csv", rows)?;
    visit.hand_over("Choose a file", &file)?;
    visit.see("When was that?")?;
    visit.fill("The first row was written at", "25:00")?;
    visit.press("Enter")?;
    visit.see("That isn't a time of day")?;
    visit.fill("The first row was written at", "20:10")?;
    choose_day(visit, "2126-06-05")?;
    visit.press("Enter")?;
    visit.see("That time is still to come.")?;
    choose_day(visit, "2026-06-05")?;
    visit.press("Enter")?;
    visit.see("4 readings from 5 Jun 2026, 20:10 to 5 Jun 2026, 20:40")
}

/// What a browser's own calendar hands over: each has another one, and drivers type into none of them alike.
fn choose_day(visit: &Visit, day: &str) -> Result<()> {
    let script = format!(
        "const field = document.querySelector('input[type=date]');
         field.value = '{day}';
         field.dispatchEvent(new Event('input', {{ bubbles: true }}));
         return field.labels[0].textContent"
    );
    let label = visit.run(&script)?;
    ensure!(
        label == "On this day, if not within the last 24 hours",
        "the day has no name: {label}"
    );
    Ok(())
}
