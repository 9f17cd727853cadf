//! A check as a page of its own: why, with what, how long, step by step, and what to mind.
//!
//! Times that a machine needs to show something, and figures of what is usual, are common
//! practice, no source.

mod bench;
mod cabinet;
mod powered;
mod running;

use diagnosis::{Build, Caution, Clue, Refrigerant, Setup, Task};

use super::how::of_check;
use super::task::{heading, lasts};
use crate::caution;

/// A check ready to be done.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Guide {
    /// What to do, as a heading.
    pub heading: &'static str,
    /// What it tells, in a sentence.
    pub why: &'static str,
    /// What to do, in order, a plain sentence or two each.
    pub steps: &'static [&'static str],
    /// What is needed, within a sentence.
    pub tools: &'static str,
    /// Minutes of work and of waiting, the change of access not counted.
    pub time: String,
    /// What state it must be in: plug, cover, panel.
    pub power: &'static str,
    /// What can hurt, whole sentences each.
    pub cautions: Vec<&'static str>,
}

/// What is said of one check by hand.
pub(super) struct Lesson {
    pub(super) why: &'static str,
    pub(super) tools: &'static str,
    pub(super) steps: &'static [&'static str],
    /// What only this check has to mind.
    pub(super) mind: &'static [&'static str],
}

const PLUGGED: &str = "Only through an outlet with ground-fault protection whose test button works, \
                       without an extension. If it trips, stop: it has told you something, and no \
                       other outlet is tried.";
const HANDS_OFF: &str = "Cover on, dry hands, and nothing touched inside while it is plugged in.";
const BEHIND_THE_PANEL: &str = "Fins are sharp, so wear gloves. No blade and no screwdriver \
                                against ice: a nick is the end of the machine.";
const PANEL_UNDER_POWER: &str = "A fan and a heater sit behind the panel: it comes off, and goes \
                                 back on, only while the plug is out.";

/// Everything about a check, for the machine as far as it is known.
///
/// ```
/// use diagnosis::{Build, Clue, Task};
/// let task = Task::Clue(Clue::Thermostat);
/// let said = wording::whole::guide(task, Build::ManualDefrost, None);
/// assert_eq!(said.heading, "Measure the thermostat's contacts");
/// assert_eq!(said.power, "Unplugged");
/// assert!(said.steps.len() > 2 && !said.tools.is_empty());
/// ```
#[must_use]
pub fn guide(task: Task, build: Build, refrigerant: Option<Refrigerant>) -> Guide {
    let lesson = lesson(task);
    let waiting = task.waiting(build);
    let mut time = lasts("about ", task.minutes(build), " of work");
    if waiting >= 1.0 {
        time.push_str(&lasts(", ", waiting, " of waiting"));
    }
    let setup = task.setup(build);
    let mut cautions = general(setup, build, refrigerant);
    cautions.extend(lesson.mind);
    Guide {
        heading: heading(task),
        why: lesson.why,
        steps: lesson.steps,
        tools: lesson.tools,
        time,
        power: power(setup),
        cautions,
    }
}

fn power(setup: Setup) -> &'static str {
    let is = |state: Option<bool>| state == Some(true);
    match (setup.plugged, is(setup.panel_off)) {
        (Some(true), true) => "Plugged in with cover and panel on; unplugged for the look behind",
        (Some(true), false) => "Plugged in, cover on",
        (Some(false), true) => "Unplugged, the panel in front of the evaporator off",
        (Some(false), false) if is(setup.pins_bare) => "Unplugged, cover off, pins bare",
        (Some(false), false) if is(setup.cover_off) => "Unplugged, cover off",
        (Some(false), false) => "Unplugged",
        (None, _) => "As it stands, plug in or out",
    }
}

/// What follows from the state that it must be in, the build and the gas.
fn general(setup: Setup, build: Build, refrigerant: Option<Refrigerant>) -> Vec<&'static str> {
    let is = |state: Option<bool>| state == Some(true);
    let text = |one: Caution| caution(one).text;
    let plugged = is(setup.plugged);
    let open = is(setup.cover_off) || is(setup.pins_bare);
    let gas = match refrigerant {
        Some(Refrigerant::OtherOrUnreadable) | None => Caution::UnknownRefrigerant,
        Some(_) => Caution::FlammableRefrigerant,
    };
    let burns = refrigerant.is_none_or(Refrigerant::burns);
    let panel = is(setup.panel_off);
    [
        (plugged, PLUGGED),
        (plugged, HANDS_OFF),
        (plugged && panel, PANEL_UNDER_POWER),
        (open, text(Caution::BeforeThePins)),
        (
            open && build == Build::Inverter,
            text(Caution::ChargedBoard),
        ),
        (panel, BEHIND_THE_PANEL),
        (plugged && burns, text(gas)),
    ]
    .into_iter()
    .filter_map(|(applies, said)| applies.then_some(said))
    .collect()
}

/// What is said of a task by hand. The unplugged checks have pages of their own.
pub(super) fn lesson(task: Task) -> Lesson {
    match task {
        Task::Clue(clue) => of_clue(clue),
        Task::Check(check) => Lesson {
            why: "It is safe to do first, and much rests on it.",
            tools: "what the check itself names",
            steps: of_check(check),
            mind: &[],
        },
        Task::History => Lesson {
            why: "How it stopped and what was done to it makes some faults several times likelier.",
            tools: "nothing but a question or two",
            steps: &[
                "Ask how it stopped, where it stood, and what was done to it.",
                "Tick what applies. Nothing ticked is an answer too.",
            ],
            mind: &[],
        },
    }
}

fn of_clue(clue: Clue) -> Lesson {
    let found = bench::lesson(clue)
        .or_else(|| cabinet::lesson(clue))
        .or_else(|| powered::lesson(clue))
        .or_else(|| running::lesson(clue));
    match (found, clue.check()) {
        (Some(lesson), _) => lesson,
        (None, Some(check)) => lesson(Task::Check(check)),
        // A test walks through every clue.
        (None, None) => Lesson {
            why: "",
            tools: "",
            steps: &[],
            mind: &[],
        },
    }
}
