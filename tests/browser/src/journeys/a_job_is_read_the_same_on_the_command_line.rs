//! The main journey: a job made on a phone, with three pairs in odd order and decimal commas; the network goes, the page
//! comes back with the job, and the command line says of its file by the checks alone,
//! word for word, what the page shows.

use std::path::Path;
use std::process::Command;

use anyhow::{Context, Result, ensure};

use crate::engine::{Engine, Habits};
use crate::stage::Stage;
use crate::steps::{
    SOUND, back_to_job, bare_the_pins, choose_pair, make_job, press_key, press_keys, read_pair,
    saved_file,
};
use crate::visit::Visit;

/// Where a comma stands in numbers. Only Chromium's driver can be told the reader's language.
const COMMA: &str = "de-DE";

pub(super) fn run(stage: &Stage) -> Result<()> {
    let habits = Habits {
        language: (stage.engine == Engine::Chromium).then_some(COMMA),
        ..Habits::default()
    };
    let visit = stage.visit(stage.site("/")?, &habits)?;
    visit.arrive()?;
    make_job(&visit)?;
    enter_refrigerant(&visit)?;
    bare_the_pins(&visit)?;
    measure(&visit)?;

    back_to_job(&visit)?;
    visit.press("Jobs")?;
    visit.see("Ready to work offline")?;
    visit.site.kill()?;
    visit.reload()?;
    visit.press("Chest freezer")?;
    visit.press("Known")?;
    visit.see("What may be at fault")?;
    let page = report_on(&visit)?;

    visit.press("Record")?;
    let file = saved_file(stage, &visit, || visit.press("Save as a file"))?;
    let said = assess(stage, &file)?;
    ensure!(
        said.contains("Pin 2: common, surely"),
        "the command line doesn't name the common pin: {said}"
    );
    ensure!(
        page == said,
        "the page and the command line differ.\n  page: {page}\n  command line: {said}"
    );
    Ok(())
}

fn enter_refrigerant(visit: &Visit) -> Result<()> {
    visit.press("Do this")?;
    visit.choose("R600a, isobutane")?;
    back_to_job(visit)
}

/// Two pairs by the keypad alone; the third with its comma from the hardware keyboard.
fn measure(visit: &Visit) -> Result<()> {
    let [first, second, (third_pair, third)] = SOUND;
    read_pair(visit, first.0, first.1)?;
    visit.see("One pair can't tell which is which")?;
    read_pair(visit, second.0, second.1)?;
    visit.see("Between pins 1 and 2 expect")?;
    choose_pair(visit, third_pair)?;
    press_keys(visit, &third[..1])?;
    visit.window().press_text(&third[1..2])?;
    press_keys(visit, &third[2..])?;
    press_key(visit, "Enter")?;
    visit.see("As expected")?;
    visit.see("common, surely")
}

/// What the page shows as its report, its layout reduced to single spaces.
fn report_on(visit: &Visit) -> Result<String> {
    let text = visit.run("return document.getElementById('report').innerText")?;
    Ok(words(text.as_str().context("the page shows no report")?))
}

fn assess(stage: &Stage, file: &Path) -> Result<String> {
    let mark = if stage.engine == Engine::Chromium {
        "comma"
    } else {
        "point"
    };
    let output = Command::new(stage.command_line())
        .args(["assess", "--decimal", mark])
        .arg(file)
        .output()
        .context("the command line can't be started")?;
    let told = String::from_utf8_lossy(&output.stderr);
    ensure!(
        output.status.code() == Some(0),
        "assess ended with {}: {told}",
        output.status
    );
    ensure!(told.is_empty(), "assess complains: {told}");
    let lines: Vec<String> = String::from_utf8(output.stdout)?
        .lines()
        .map(|line| line.strip_prefix("- ").unwrap_or(line).to_owned())
        .collect();
    Ok(words(&lines.join(" ")))
}

fn words(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}
