//! With power on: nothing where the outlet's device doesn't trip by its button; volts, watts, a capacitor and leakage are
//! read off meters and said at once with what they mean; milliamperes typed for amperes are asked about, and one key of
//! the page mends them. What was said stands in the report and survives a reload.

use anyhow::{Result, ensure};

use crate::stage::Stage;
use crate::steps::{back_to_job, make_job, open_check, press_key};
use crate::visit::Visit;
use crate::{bench, powered};

/// What has to be said where a check is done, by the check.
const SAID: &[(&str, &[&str])] = &[
    (
        "Outlet and volts",
        &[
            "answers to its test button",
            "At rest 233.5",
            "As it starts the volts fall by",
            "The supply isn't what keeps it from starting",
            "of that the cord has",
            "At this starting current a cord of 1.5 mm²",
        ],
    ),
    (
        "Watts and amperes",
        &[
            "Power factor",
            "of its compressor's label",
            "the watts fell",
            "With its rotor locked it should draw",
        ],
    ),
    (
        "Capacitor as it works",
        &[
            "Not for lay users",
            "The capacitor has",
            "10 kΩ bring it below",
        ],
    ),
    (
        "Leakage and trips",
        &[
            "It leaks 0.4",
            "points to its heater",
            "Together they leak",
            "An outlet without protection is no answer",
        ],
    ),
];

pub(super) fn run(stage: &Stage) -> Result<()> {
    let visit = stage.start()?;
    make_job(&visit)?;
    bench::examine(&visit, &mut |_, _| Ok(()))?;
    dead_protection_stops(&visit)?;
    milliamperes_are_asked_about(&visit)?;
    powered::work(&visit, &mut said_at_once)?;
    visit.press("Known")?;
    for words in ["The capacitor has", "It leaks 0.4", "Power factor"] {
        visit.see(words)?;
    }
    visit.reload()?;
    visit.see("the watts fell")?;
    visit.see("As it starts the volts fall by")
}

fn said_at_once(visit: &Visit, screen: &str) -> Result<()> {
    let is_of = |check: &str| screen == format!("{check}: what it means");
    let said = SAID.iter().find(|(check, _)| is_of(check));
    for words in said.map_or(&[][..], |(_, words)| words) {
        visit.see(words)?;
    }
    Ok(())
}

/// Nothing more is asked: nobody plugs it in there.
fn dead_protection_stops(visit: &Visit) -> Result<()> {
    open_check(visit, "Outlet and volts")?;
    visit.choose("There is one, its button does nothing")?;
    visit.choose("Earth is there, poles are right")?;
    visit.see("the outlet's protection doesn't answer to its test button")?;
    visit.see_no("Volts while the machine is off")?;
    back_to_job(visit)?;
    visit.press("Undo")?;
    visit.press("Undo")
}

fn milliamperes_are_asked_about(visit: &Visit) -> Result<()> {
    const AMPERES: &str = "Amperes in the same minute";
    open_check(visit, "Watts and amperes")?;
    for question in [
        "Watts five minutes after it started",
        "Watts after half an hour of running",
        "Volts in the same minute",
    ] {
        let typed = if question.starts_with("Volts") {
            "230"
        } else {
            "96"
        };
        bench::enter(visit, question, typed)?;
    }
    bench::enter(visit, AMPERES, "900")?;
    visit.see("If the display says mA, type m after the number")?;
    press_key(visit, "Make it milliamperes")?;
    let typed = visit.value_of(AMPERES)?;
    ensure!(typed == "900m", "the key for milliamperes wrote {typed:?}");
    press_key(visit, "Enter")?;
    visit.see("Power factor")?;
    back_to_job(visit)?;
    for _ in 0..4 {
        visit.press("Undo")?;
    }
    Ok(())
}
