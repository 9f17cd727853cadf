//! What can't be a reading is told beside the field, what is unusual is asked about, and what was typed stays.

use anyhow::{Result, ensure};

use crate::stage::Stage;
use crate::steps::{back_to_job, bare_the_pins, choose_pair, make_job, open_check};
use crate::visit::{Kind, Visit};
use crate::webdriver::Key;

/// What is typed, and words of what has to be said about it.
const REFUSED: [(&str, &str); 5] = [
    ("four", "“f” doesn't fit there"),
    ("4,7,1", "Two decimal marks"),
    ("-3", "Ohms can't be below zero"),
    ("−3", "Ohms can't be below zero"),
    (",", "There is no digit in it"),
];

pub(super) fn run(stage: &Stage) -> Result<()> {
    let visit = stage.start()?;
    make_job(&visit)?;
    empty_plate(&visit)?;
    bare_the_pins(&visit)?;
    for (typed, said) in REFUSED {
        refused(&visit, typed, said)?;
    }
    kilo_ohms_are_asked_about(&visit)?;
    the_same_pair_twice(&visit)
}

/// The plate is optional: an empty one is told, and keeps nobody.
fn empty_plate(visit: &Visit) -> Result<()> {
    open_check(visit, "The machine")?;
    visit.press("Keep these words")?;
    let beside = beside_field(visit, "Words off the plate")?;
    ensure!(
        beside.contains("Nothing typed yet"),
        "beside the empty plate stands {beside:?}"
    );
    ensure!(
        is_refused(visit, "Words off the plate")?,
        "the empty plate isn't marked"
    );
    back_to_job(visit)
}

fn refused(visit: &Visit, typed: &str, said: &str) -> Result<()> {
    choose_pair(visit, "1 and 2")?;
    visit.fill("Touch 1 and 2", typed)?;
    visit.window().press(&[Key::Enter])?;
    visit.see(said)?;
    let beside = beside_field(visit, "Touch 1 and 2")?;
    ensure!(
        beside.contains(said),
        "after {typed:?}, the field is described by {beside:?}"
    );
    ensure!(
        is_refused(visit, "Touch 1 and 2")?,
        "after {typed:?}, the field isn't marked"
    );
    let kept = visit.value_of("Touch 1 and 2")?;
    ensure!(kept == typed, "of {typed:?} there is {kept:?} left");
    visit.reload()?;
    choose_pair(visit, "1 and 2")?;
    let kept = visit.value_of("Touch 1 and 2")?;
    ensure!(
        kept == typed,
        "of {typed:?} there is {kept:?} left after a reload"
    );
    ensure!(
        visit.has(Kind::Control, "Between pins 1 and 2: not read yet")?,
        "{typed:?} was entered"
    );
    Ok(())
}

fn kilo_ohms_are_asked_about(visit: &Visit) -> Result<()> {
    visit.fill("Touch 1 and 2", "4.7k")?;
    visit.window().press(&[Key::Enter])?;
    visit.see("Is that right?")?;
    visit.press("Change it")?;
    ensure!(
        visit.value_of("Touch 1 and 2")? == "4.7k",
        "what was asked about is gone"
    );
    ensure!(
        visit.has(Kind::Control, "Between pins 1 and 2: not read yet")?,
        "it was entered unasked"
    );
    visit.find(Kind::Field, "Touch 1 and 2")?;
    visit.window().press(&[Key::Enter])?;
    visit.press("Yes, enter it")?;
    visit
        .find(Kind::Control, "Between pins 1 and 2: 4.7 kilo-ohms")
        .map(drop)
}

/// Both are kept and to be seen; the latest counts.
fn the_same_pair_twice(visit: &Visit) -> Result<()> {
    for reading in ["4.9", "4.7"] {
        choose_pair(visit, "1 and 2")?;
        visit.fill("Touch 1 and 2", reading)?;
        visit.window().press(&[Key::Enter])?;
        visit.find(
            Kind::Control,
            &format!("Between pins 1 and 2: {reading} ohms"),
        )?;
    }
    visit.see("4.9 Ω")?;
    back_to_job(visit)?;
    visit.press("Known")?;
    for reading in ["4.7 kΩ", "4.9 Ω", "4.7 Ω"] {
        visit.see(reading)?;
    }
    Ok(())
}

/// What a field is described by, for eyes and screen readers.
fn beside_field(visit: &Visit, field: &str) -> Result<String> {
    let field = visit.find(Kind::Field, field)?;
    let script = "return (arguments[0].getAttribute('aria-describedby') || '').split(/\\s+/).filter(Boolean)\
                  .map(id => document.getElementById(id)).map(it => it ? it.textContent : '').join(' ')";
    let told = visit.window().run(script, &[field.argument()])?;
    Ok(told.as_str().unwrap_or_default().to_owned())
}

fn is_refused(visit: &Visit, field: &str) -> Result<bool> {
    let field = visit.find(Kind::Field, field)?;
    let script = "return arguments[0].getAttribute('aria-invalid')";
    Ok(visit.window().run(script, &[field.argument()])? == "true")
}
