//! The checks that ask item by item, from looking over to the winding's temperature: every question that they have,
//! each answered as a person would who holds a meter.

use anyhow::Result;

use crate::steps::{back_to_job, open_check};
use crate::visit::{Kind, Visit};
use crate::webdriver::Key;

/// What is done at each question, and at what the answers mean; it is told a name for it.
pub(crate) type Look<'a> = dyn FnMut(&Visit, &str) -> Result<()> + 'a;

/// A question by its words, and what is answered.
pub(crate) enum Asked {
    /// One of several.
    Choice(&'static str, &'static str),
    /// Something seen, to be ticked.
    Tick(&'static str, &'static str),
    /// A number, as it is typed.
    Number(&'static str, &'static str),
    /// What was answered before is answered anew; nothing else is asked.
    Again(&'static str),
}

use Asked::{Again, Choice, Number, Tick};

const EARTH_PIN: &str = "Does the plug have an earth pin?";
const DEVICE: &str = "What kind of start device is it?";

/// The checks in the order in which the page asks for them.
const CHECKS: &[(&str, &[Asked])] = &[
    (
        "Look it over",
        &[
            Choice("Which mains does the plate name?", "220 to 240 V"),
            Tick("What do you see?", "A cover or a part is missing"),
        ],
    ),
    (
        "Is the metal live?",
        &[
            Choice(EARTH_PIN, "It has an earth pin"),
            Choice("What do you measure with?", "Multimeter on ohms"),
            Number("Both flat pins of the plug to its earth pin", "OL"),
            Number("Both flat pins of the plug to bare metal", "OL"),
            Number("The plug's earth pin to bare metal", "0.2"),
            Number("One flat pin of the plug to the other", "5.1"),
        ],
    ),
    (
        "Stored charge",
        &[
            Choice("What can hold a charge?", "A start or run capacitor"),
            Number("What is printed on the capacitor?", "12"),
            Number("Direct volts across it now", "3.1"),
        ],
    ),
    (
        "Pins to the shell",
        &[
            Number("Pin 1 to the shell", "OL"),
            Number("Pin 2 to the shell", "OL"),
            Number("Pin 3 to the shell", "OL"),
        ],
    ),
    (
        "Overload protector",
        &[
            Choice("Where is the overload protector?", "A small disc or box"),
            Choice("Has it rested?", "Rested half an hour or more"),
            Number("Ohms across the protector", "0.3"),
        ],
    ),
    (
        "Start device",
        &[
            Choice(DEVICE, "Current relay"),
            Choice(
                "How does it look, and what when shaken?",
                "Whole, and silent when shaken",
            ),
            Number("Ohms across its coil", "0.4"),
            Choice("Its contact, relay upright", "Over range"),
            Choice("Its contact, relay upside down", "Reads next to nothing"),
            Again(DEVICE),
            Choice(DEVICE, "Potential relay"),
            Choice("Its contact, 1 to 2", "Reads next to nothing"),
            Again(DEVICE),
            Choice(DEVICE, "PTC start device"),
            Number("Ohms printed on it, if any", "22"),
            Number("Ohms across it, cold", "OL"),
        ],
    ),
    (
        "Winding temperature",
        &[
            Number("The winding when it was cold", "4.71"),
            Number("The room's temperature then", "-5"),
            Number("The same winding now", "5.2"),
        ],
    ),
];

/// Goes through all of them, from a job's first screen and back to it.
pub(crate) fn examine(visit: &Visit, look: &mut Look<'_>) -> Result<()> {
    go_through(visit, CHECKS, look)
}

/// Goes through checks, each with its questions, from a job's first screen and back to it.
pub(crate) fn go_through(
    visit: &Visit,
    checks: &[(&str, &[Asked])],
    look: &mut Look<'_>,
) -> Result<()> {
    for (check, questions) in checks {
        open_check(visit, check)?;
        for question in *questions {
            answer(visit, question, look)?;
        }
        visit.find(Kind::Region, "What it means")?;
        look(visit, &format!("{check}: what it means"))?;
        back_to_job(visit)?;
    }
    Ok(())
}

fn answer(visit: &Visit, asked: &Asked, look: &mut Look<'_>) -> Result<()> {
    match *asked {
        Choice(question, choice) => {
            visit.see(question)?;
            look(visit, question)?;
            visit.choose(choice)
        }
        Tick(question, seen) => {
            visit.see(question)?;
            visit.choose(seen)?;
            look(visit, question)?;
            visit.press("Enter what I ticked")
        }
        Number(question, typed) => {
            visit.find(Kind::Field, question)?;
            look(visit, question)?;
            enter(visit, question, typed)
        }
        Again(question) => visit.press(&format!("Change it {question}")),
    }
}

/// Types a reading and enters it.
pub(crate) fn enter(visit: &Visit, question: &str, typed: &str) -> Result<()> {
    visit.fill(question, typed)?;
    visit.window().press(&[Key::Enter])
}
