//! A check as a page of its own: why, with what, how long, step by step, and what to mind.
//!
//! Times that a machine needs to show something, and figures of what is usual, are common
//! practice, no source.

mod bench;
mod cabinet;
mod powered;
mod running;

use diagnosis::{Build, Caution, Check, Clue, Refrigerant, Setup, Task};

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

impl Guide {
    /// What is needed, the state that it must be in, and the time, in one line.
    #[must_use]
    pub fn needs(&self) -> String {
        let Self {
            tools, power, time, ..
        } = self;
        format!(
            "You need {tools}. {power}. {}.",
            crate::windings_finding::capital(time)
        )
    }
}

const PLUGGED: &str = "Only through an outlet with ground-fault protection whose test button works, \
                       without an extension. If it trips, stop: it has told you something, and no \
                       other outlet is tried.";
const HANDS_OFF: &str = "Cover on, dry hands, and nothing behind a cover or panel touched while it \
                         is plugged in.";
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
    let mut cautions = general(task, build, refrigerant);
    cautions.extend(lesson.mind);
    Guide {
        heading: heading(task),
        why: lesson.why,
        steps: lesson.steps,
        tools: lesson.tools,
        time,
        power: power(task, setup),
        cautions,
    }
}

/// Whether start gear is changed on the pins in between.
fn changes_start_gear(task: Task) -> bool {
    matches!(task, Task::Clue(Clue::GoodDevice | Clue::StartKit))
}

fn power(task: Task, setup: Setup) -> &'static str {
    let is = |state: Option<bool>| state == Some(true);
    if task == Task::Clue(Clue::ThawTrial) {
        return "Unplugged while it thaws, then plugged in, cover on";
    }
    if changes_start_gear(task) {
        return "Unplugged while parts are changed; plugged in, cover on, for each try";
    }
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
fn general(task: Task, build: Build, refrigerant: Option<Refrigerant>) -> Vec<&'static str> {
    let setup = task.setup(build);
    let is = |state: Option<bool>| state == Some(true);
    let text = |one: Caution| caution(one).text;
    let plugged = is(setup.plugged);
    let open = is(setup.cover_off) || changes_start_gear(task);
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
            why: by_check(check),
            tools: "what its own page names",
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

/// What an unplugged check tells.
const fn by_check(check: Check) -> &'static str {
    match check {
        Check::Machine => "Which parts it has, and where the search begins.",
        Check::Refrigerant => "Whether its gas burns decides what may be done at all.",
        Check::LookOver => "Oil, burns, bites and earlier work are seen in five minutes.",
        Check::Ground => "Whether its metal may be live, and whether current gets through.",
        Check::StoredCharge => "What may still hold a charge when the plug is out.",
        Check::Windings => "Whether the motor is whole, and which pin is which.",
        Check::Shell => "Whether the motor leaks to metal: then it is never powered again.",
        Check::Protector => "A protector that stays open silences a sound compressor.",
        Check::StartDevice => "The commonest cheap fault of all, and one looks at it first.",
        Check::WindingTemperature => {
            "How hot the motor got says whether it works against something."
        }
        Check::Supply => {
            "Whether enough volts are left as it starts, and whether it is safe there."
        }
        Check::Running => "Whether it pumps, and against what, by watts more than by amperes.",
        Check::CapacitorInCircuit => "Whether the capacitor has what its marking says.",
        Check::Leakage => "Whether it leaks as it works, and which part a trip points to.",
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

#[cfg(test)]
mod tests {
    use super::*;
    use diagnosis::Choice;

    fn guides() -> impl Iterator<Item = (Task, Build, Guide)> {
        let own = Clue::ALL.iter().filter(|clue| clue.check().is_none());
        let tasks = own.map(|clue| Task::Clue(*clue)).chain([Task::History]);
        tasks.flat_map(|task| {
            let told = |build: &Build| (task, *build, guide(task, *build, None));
            Build::ALL.iter().map(told).collect::<Vec<_>>()
        })
    }

    #[test]
    fn every_check_is_told_in_whole_sentences_that_fit_a_phone() {
        for (task, _, said) in guides() {
            assert!(!said.heading.is_empty() && said.tools.len() > 3, "{task:?}");
            assert!((2..=5).contains(&said.steps.len()), "{task:?}");
            assert!(
                said.why.ends_with('.') && said.why.len() <= 100,
                "{task:?}: {}",
                said.why
            );
            for step in said.steps {
                assert!(step.ends_with(['.', '?']), "{step}");
                assert!(step.len() <= 170, "{step}");
            }
            for caution in &said.cautions {
                assert!(caution.ends_with('.'), "{caution}");
            }
            assert!(
                said.time.contains("minute") || said.time.contains("hour"),
                "{}",
                said.time
            );
        }
    }

    #[test]
    fn what_is_powered_is_told_with_outlet_and_cover_and_what_is_opened_with_its_charge() {
        for (task, build, said) in guides() {
            let setup = task.setup(build);
            let powered = setup.plugged == Some(true);
            assert_eq!(said.cautions.contains(&PLUGGED), powered, "{task:?}");
            assert_eq!(
                said.power.to_lowercase().contains("plugged in"),
                powered,
                "{task:?}"
            );
            let open = setup.cover_off == Some(true) || changes_start_gear(task);
            let pins = caution(Caution::BeforeThePins).text;
            assert_eq!(said.cautions.contains(&pins), open, "{task:?}");
            let board = caution(Caution::ChargedBoard).text;
            let told = said.cautions.contains(&board);
            assert_eq!(told, open && build == Build::Inverter, "{task:?}");
        }
    }

    #[test]
    fn gas_that_burns_or_is_not_known_is_minded_wherever_it_is_powered() {
        let task = Task::Clue(Clue::PowerUp);
        let told = |gas| guide(task, Build::FrostFree, gas).cautions;
        let burns = caution(Caution::FlammableRefrigerant).text;
        assert!(told(Some(Refrigerant::R600a)).contains(&burns));
        assert!(told(None).contains(&caution(Caution::UnknownRefrigerant).text));
        assert!(!told(Some(Refrigerant::R134a)).contains(&burns));
    }
}
