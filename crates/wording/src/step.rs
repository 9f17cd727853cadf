//! What to do next, in words.

use diagnosis::{Check, Step};
use quantity::Celsius;

use crate::{Locale, Words, pair};

/// A step ready to be shown.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StepWords {
    /// What to do, as a heading.
    pub heading: String,
    /// How, one sentence or two.
    pub how: String,
    /// Why now.
    pub why: &'static str,
    /// Plug state, minutes and tools in one line.
    pub takes: String,
}

impl StepWords {
    /// The whole step as one line of text.
    #[must_use]
    pub fn line(&self) -> String {
        format!("{}. {} ({})", self.heading, self.how, self.takes)
    }
}

/// Says a step.
#[must_use]
pub fn step(step: Step, locale: &Locale) -> StepWords {
    StepWords {
        heading: heading(step),
        how: how(step, locale),
        why: why(step),
        takes: takes(step),
    }
}

fn heading(step: Step) -> String {
    match step {
        Step::Do(Check::Machine) => "Say what machine it is".to_owned(),
        Step::Do(Check::Refrigerant) => "Read the refrigerant off the plate".to_owned(),
        Step::Do(Check::LookOver) => "Look it over".to_owned(),
        Step::Do(Check::Ground) => "Is the metal live? Measure from the plug".to_owned(),
        Step::Do(Check::StoredCharge) => "Look for what may hold a charge".to_owned(),
        Step::Do(Check::Windings) => "Measure the windings".to_owned(),
        Step::Do(Check::Shell) => "Measure each pin to the shell".to_owned(),
        Step::Do(Check::Protector) => "Measure the overload protector".to_owned(),
        Step::Do(Check::StartDevice) => "Look at the start device".to_owned(),
        Step::Do(Check::WindingTemperature) => "Measure how hot the winding is".to_owned(),
        Step::Do(Check::Supply) => "Look at the outlet and read its volts".to_owned(),
        Step::Do(Check::Running) => "Read watts, volts and amperes as it runs".to_owned(),
        Step::Do(Check::CapacitorInCircuit) => "Measure the capacitor as it works".to_owned(),
        Step::Do(Check::Leakage) => "Measure what leaks, and note its trips".to_owned(),
        Step::BareThePins => "Bare the compressor's three pins".to_owned(),
        Step::TakeStartGearOff => "Take everything off the pins".to_owned(),
        Step::TouchProbes => "Touch the probes together".to_owned(),
        Step::Measure(which) => format!("Measure {}", pair(which)),
        Step::Repeat(which) => format!("Repeat {}", pair(which)),
        Step::CoolAndRepeat { .. } => "Let it cool, then repeat the open pairs".to_owned(),
        Step::NoteWiring => "Look where the start device sat".to_owned(),
    }
}

fn how(step: Step, locale: &Locale) -> String {
    match step {
        Step::Do(Check::Refrigerant) => {
            "The plate is inside the cabinet, at the back, or on the compressor. Look for R and a \
             number."
                .to_owned()
        }
        Step::Do(Check::Shell) => {
            "Highest ohms range, one probe on each pin in turn, the other on bare metal of the \
             shell, paint scratched off. It should read more than 2 MΩ; below that it leaks, \
             and stays unplugged until that is cleared."
                .to_owned()
        }
        Step::Do(check) => format!("{}.", check.hint().unwrap_or_default()),
        Step::BareThePins => {
            "Plug out. Open the cover at the compressor. Take a photo of every wire, then pull \
             start device and protector off the three pins."
                .to_owned()
        }
        Step::TakeStartGearOff => {
            "Pull start device and protector off, so that nothing bridges the pins. Then measure \
             all three pairs again."
                .to_owned()
        }
        Step::TouchProbes => {
            "Hold the two probe tips on each other and enter what the meter shows. Over range \
             there means a broken lead or the wrong range."
                .to_owned()
        }
        Step::Measure(_) => "Meter on ohms, lowest range. One probe on each pin.".to_owned(),
        Step::Repeat(_) => "Scrape both pins to bright metal and press harder.".to_owned(),
        Step::CoolAndRepeat { minutes_left } => cooling(minutes_left, locale),
        Step::NoteWiring => {
            "The start device sat on start and run, the overload protector on common, the other \
             mains wire on run. Enter what you saw under “Wiring as found”."
                .to_owned()
        }
    }
}

fn cooling(minutes_left: u16, locale: &Locale) -> String {
    let warm = locale.temperature(Celsius::new(60.0));
    let when = match minutes_left {
        0 => "An hour has passed. ".to_owned(),
        1 => "In a minute an hour has passed. ".to_owned(),
        left => format!("Give it {left} more minutes. "),
    };
    format!(
        "{when}A protector inside stays open while the shell is warm, above about {warm} often; \
         it may take hours. Repeat when the shell is as cold as the room."
    )
}

fn why(step: Step) -> &'static str {
    match step {
        Step::Do(Check::Machine) => "It decides which readings are usual.",
        Step::Do(Check::Refrigerant) => "Some burn, and that decides what is safe.",
        Step::Do(Check::LookOver) => "It decides safety and worth, and often shows the fault.",
        Step::Do(Check::Ground) => "Nobody should plug it in before knowing.",
        Step::Do(Check::StoredCharge) => "It can hurt long after the plug is out.",
        Step::Do(Check::Shell) => "Whole windings can still leak to the metal you touch.",
        Step::Do(Check::Protector) => "An open protector makes a sound machine silent.",
        Step::Do(Check::StartDevice) => "It is the part that fails most, and the cheapest.",
        Step::Do(Check::WindingTemperature) => "A hot winding explains an open protector.",
        Step::Do(Check::Supply) => "Too few volts look just like a tired compressor.",
        Step::Do(Check::Running) => "Watts tell whether it pumps, and against what.",
        Step::Do(Check::CapacitorInCircuit) => "A weak capacitor takes the torque.",
        Step::Do(Check::Leakage) => "A trip is evidence, and milliamperes say of what.",
        Step::Do(Check::Windings) | Step::Measure(_) => {
            "It shows whether current can reach whole windings, and which pin is which."
        }
        Step::BareThePins => "With anything still on the pins the numbers would be wrong.",
        Step::TakeStartGearOff => "A start device across two pins changes all three readings.",
        Step::TouchProbes => "Near zero the leads count as much as the winding.",
        Step::Repeat(_) => "A poor contact is commoner than a broken winding.",
        Step::CoolAndRepeat { .. } => "An open protector inside is not a dead compressor.",
        Step::NoteWiring => "Ohms can't tell start from run here; the wires can.",
    }
}

fn takes(step: Step) -> String {
    let minutes = match step.minutes() {
        1 => "1 minute".to_owned(),
        more => format!("{more} minutes"),
    };
    let tools: Vec<&str> = step.tools().iter().map(|tool| tool.words()).collect();
    format!("{}, {minutes}, {}", step.power().words(), tools.join(", "))
}
