//! A machine is examined from looking over to the start device, each check item by item: what follows is said at once
//! and stands in the report. What is unusual is asked about, and what can't be done is an answer.

use anyhow::{Result, ensure};

use crate::bench;
use crate::stage::Stage;
use crate::steps::{back_to_job, make_job, open_check};
use crate::visit::{Kind, Visit};

/// What has to be said once all is answered.
const SAID: [&str; 8] = [
    "Plug it in, look and listen: it may",
    "Trials with start gear, clamp or meter: it may",
    "A cover or a part is missing",
    "Plug to bare metal: no leak that this meter can see",
    "Each pin to the shell: no leak that this meter can see",
    "The protector is closed",
    "The PTC is open",
    "Start: broken (measured)",
];

pub(super) fn run(stage: &Stage) -> Result<()> {
    let visit = stage.start()?;
    make_job(&visit)?;
    doubts(&visit)?;
    bench::examine(&visit, &mut |_, _| Ok(()))?;
    visit.press("Known")?;
    visit.see("Found so far")?;
    for words in SAID {
        visit.see(words)?;
    }
    visit.see_no("leave it unplugged for now")?;
    a_leak_stops_everything(&visit)
}

/// Over range typed as 1, and ohms for megohms: asked about, and entered only as they were meant.
fn doubts(visit: &Visit) -> Result<()> {
    open_check(visit, "Pins to the shell")?;
    for (question, typed, said, meant) in [
        ("Pin 1 to the shell", "1", "Is it 1 ohm?", "OL"),
        (
            "Pin 2 to the shell",
            "40",
            "If the display says MΩ, type M",
            "40M",
        ),
    ] {
        bench::enter(visit, question, typed)?;
        visit.see(said)?;
        visit.press("Change it")?;
        let left = visit.value_of(question)?;
        ensure!(left == typed, "of {typed:?} there is {left:?} left");
        bench::enter(visit, question, meant)?;
    }
    visit.find(Kind::Field, "Pin 3 to the shell")?;
    visit.press("Can't do this")?;
    visit.press("I don't have the tool")?;
    visit.see("Not done: I don't have the tool")?;
    visit.see("40 MΩ")?;
    // Asked again with the others below.
    back_to_job(visit)?;
    for _ in 0..3 {
        visit.press("Undo")?;
    }
    Ok(())
}

/// However clear all the rest is: a pin that leaks closes both gates.
fn a_leak_stops_everything(visit: &Visit) -> Result<()> {
    back_to_job(visit)?;
    open_check(visit, "Pins to the shell")?;
    visit.press("Change it Pin 2 to the shell")?;
    bench::enter(visit, "Pin 2 to the shell", "8.6k")?;
    visit.see("it leaks, 8.6 kΩ")?;
    back_to_job(visit)?;
    visit.see("a conductor leaks to the metal you touch")?;
    visit.press("Known")?;
    visit.see("Plug it in, look and listen: not yet")?;
    visit.see("Trials with start gear, clamp or meter: not yet")
}
