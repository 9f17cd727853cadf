//! What a meter counted, the class, the volume and the year lead to the limit, how the machine stands against it, and
//! what a year costs here; what isn't understood is told beside its field, and what the rule doesn't count isn't asked.

use anyhow::{Result, ensure};

use crate::stage::Stage;
use crate::steps::open_in_example;
use crate::visit::{Kind, Visit};
use crate::webdriver::Key;

const FRESH: &str = "How large is the fresh-food part";
const FROZEN: &str = "How large is the freezer";
const ICEMAKER: &str = "Does it make ice by itself?";

pub(super) fn run(stage: &Stage) -> Result<()> {
    let visit = stage.start()?;
    open_in_example(&visit, "energy")?;
    visit.see("What it uses")?;
    metered(&visit)?;
    class(&visit)?;
    figures(&visit)?;
    visit.reload()?;
    all_is_told(&visit)?;
    where_it_is_listed(&visit)
}

/// Refused first, then taken; the fields are empty for the next time.
fn metered(visit: &Visit) -> Result<()> {
    visit.fill("Kilowatt hours it shows", "1.6")?;
    visit.press("Enter")?;
    visit.see("For how long has it counted?")?;
    visit.fill("Hours it has counted", "24")?;
    visit.fill("Hours under load", "12")?;
    visit.press("Enter")?;
    visit.see("Metered for 24 h: 1.6")?;
    visit.see("The compressor runs 50")?;
    let left = visit.value_of("Kilowatt hours it shows")?;
    ensure!(left.is_empty(), "it can be entered twice: {left:?}");
    Ok(())
}

/// Chest freezers are asked neither about an icemaker nor about fresh food, fridge-freezers about both.
fn class(visit: &Visit) -> Result<()> {
    visit.see_no(ICEMAKER)?;
    visit.press("Its class in the energy rule")?;
    // It is an upright freezer: what such a machine can't be stands behind a line.
    let is_offered = |class| visit.has(Kind::Control, class);
    ensure!(is_offered("Upright freezer, frost-free")? && !is_offered("Chest freezer")?);
    visit.press("All other classes")?;
    visit.choose("Frost-free, freezer on top")?;
    visit.see("Its class in the energy rule: Frost-free, freezer on top")?;
    visit.see(ICEMAKER)?;
    visit.see(FRESH)?;
    visit.choose("No icemaker")?;
    visit.choose("Chest freezer")?;
    visit.see(FROZEN)?;
    visit.see_no(ICEMAKER)?;
    visit.see_no(FRESH)?;
    visit.choose("Upright freezer, defrosted by hand")?;
    visit.see_no(ICEMAKER)
}

fn figures(visit: &Visit) -> Result<()> {
    enter(visit, FROZEN, "14")?;
    visit.see("In what unit?")?;
    ensure!(visit.value_of(FROZEN)? == "14", "what was typed is lost");
    enter(visit, FROZEN, "14 cu ft")?;
    enter(visit, "When was it made?", "2009")?;
    enter(visit, "What does a kilowatt hour cost?", "0.30")
}

fn enter(visit: &Visit, field: &str, text: &str) -> Result<()> {
    visit.fill(field, text)?;
    visit.window().press(&[Key::Enter])
}

/// 7.55 · 1.73 · 14 + 258.3 = 441 kWh by 10 CFR 430.32(a), class 8 as of 2001; 1.6 kWh on 365 days are 584, at 0.30 each
/// 175.20.
fn all_is_told(visit: &Visit) -> Result<()> {
    for words in [
        "441\u{a0}kWh a year",
        "It uses more than that, whatever the room.",
        "A year costs 175.20",
        "how warm the room was meanwhile",
    ] {
        visit.see(&words.replace('\u{a0}', " "))?;
    }
    Ok(())
}

/// The same is said where all is known of the machine.
fn where_it_is_listed(visit: &Visit) -> Result<()> {
    visit.press("Known")?;
    visit.find(Kind::Control, "Do")?;
    visit.see("A year costs 175.20")
}
