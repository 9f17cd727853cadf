//! A check that is worth doing: what, how, what it takes and why.

use diagnosis::{Action, Again, Check, Clue, NextCheck, Overturn, Setup, Task};

use super::answer::answer;
use super::guide::lesson;
use super::how::how;
use super::within;
use crate::Words;

/// A check ready to be shown.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TaskWords {
    /// What to do, as a heading.
    pub heading: &'static str,
    /// What it tells, in a sentence.
    pub tells: &'static str,
    /// How, its steps in a row.
    pub how: String,
    /// What it takes: plug, cover, panel, minutes.
    pub takes: String,
    /// What it could change, an answer each.
    pub why: Vec<String>,
}

impl TaskWords {
    /// What, why and what it takes, as one line of text. How is told where it is done.
    #[must_use]
    pub fn line(&self) -> String {
        let changes: String = self.why.iter().map(|one| format!(" {one}.")).collect();
        let Self {
            heading,
            tells,
            takes,
            ..
        } = self;
        format!("{heading}. {tells}{changes} ({takes})")
    }
}

/// How many changes of the verdict are told.
const TOLD: usize = 2;

/// Says a check that can be done now.
#[must_use]
pub fn next_check(check: &NextCheck) -> TaskWords {
    TaskWords {
        heading: heading(check.task),
        tells: lesson(check.task).why,
        how: how(check.task),
        takes: takes(check),
        why: changes(check),
    }
}

/// Why it is done again; or what it would come to after which answers, those that come to the same
/// in one.
fn changes(check: &NextCheck) -> Vec<String> {
    match check.again {
        Some(Again::DoesNotFit(factor)) => {
            return vec![format!(
                "Once more: it fits the other readings least, {} less likely beside them than by \
                 itself",
                times(factor)
            )];
        }
        Some(Again::RestsOnOne) => return vec![second(check.task).to_owned()],
        None => {}
    }
    let mut groups: Vec<(String, Vec<&Overturn>)> = Vec::new();
    for overturn in &check.overturns {
        let then = then(overturn);
        match groups.iter_mut().find(|(known, _)| *known == then) {
            Some((_, all)) => all.push(overturn),
            None => groups.push((then, vec![overturn])),
        }
    }
    let said = groups.iter().take(TOLD);
    let opens = check.opens.map(|opens| {
        let behind = within(heading(opens.task));
        format!("It clears the way for the next one: {behind}")
    });
    let said = said.map(|(then, all)| format!("If {}, {then}", seen(all, check.task)));
    opens.into_iter().chain(said).collect()
}

fn seen(overturns: &[&Overturn], task: Task) -> String {
    let mut said: Vec<String> = Vec::new();
    let mut last = None;
    for overturn in overturns {
        let clue = overturn.clue;
        let answer = answer(clue, overturn.answer).unwrap_or(overturn.answer);
        said.push(match task {
            // A check that brings several clues has to say which.
            Task::Check(Check::LookOver) => within(clue.words()),
            Task::Check(_) if last != Some(clue) => format!("{} “{answer}”", within(clue.words())),
            Task::Check(_) | Task::Clue(_) | Task::History => format!("“{answer}”"),
        });
        last = Some(clue);
    }
    said.join(" or ")
}

/// What is done then, in short. One answer alone condemns nothing.
fn then(overturn: &Overturn) -> String {
    match overturn.action {
        Action::Scrap => "it may come to scrap".to_owned(),
        Action::LicensedWork => "it may come to licensed work".to_owned(),
        Action::StopDoNotEnergise => "stop, and don't power it".to_owned(),
        Action::NothingToRepair => "there may be nothing to repair".to_owned(),
        Action::WaitAndRepeat => "best bet: give it a day".to_owned(),
        other => {
            let what = super::action(other, overturn.fault);
            format!("best bet: {}", within(&what))
        }
    }
}

/// Why what condemns a compressor is done twice.
fn second(task: Task) -> &'static str {
    match task {
        Task::Check(_) => {
            "Once more, on clean pins and cold: a compressor isn't given up on one reading"
        }
        _ => "Once more, after a day of rest: a compressor isn't given up on one try",
    }
}

/// By how much a reading fits less.
pub(super) fn times(factor: f64) -> String {
    match factor {
        factor if factor < 10.0 => format!("about {} times", libm::round(factor)),
        factor if factor < 100.0 => "over 10 times".to_owned(),
        _ => "over 100 times".to_owned(),
    }
}

fn takes(check: &NextCheck) -> String {
    let Setup {
        plugged,
        cover_off,
        pins_bare,
        panel_off,
    } = check.setup;
    let is = |state: Option<bool>| state == Some(true);
    let mut parts = Vec::new();
    match plugged {
        Some(true) => parts.push("protected outlet, its test button tried, cover on".to_owned()),
        Some(false) => parts.push("plug out".to_owned()),
        None => {}
    }
    if is(plugged) && is_a_try(check.task) {
        parts.push("unplug between tries".to_owned());
    }
    if is(pins_bare) {
        parts.push("pins bare".to_owned());
    } else if is(cover_off) {
        parts.push("cover off".to_owned());
    }
    if is(panel_off) {
        // Behind it are a fan and a heater.
        let when = if is(plugged) {
            ", only once unplugged"
        } else {
            ""
        };
        parts.push(format!("evaporator's panel off{when}"));
    }
    if check.declared_parts_only {
        parts.push("only the maker's part or one declared for this gas".to_owned());
    }
    parts.push(lasts("about ", check.minutes, " of work"));
    if check.waiting >= 1.0 {
        parts.push(lasts("", check.waiting, " of waiting"));
    }
    parts.join(", ")
}

/// Whether start gear is changed or the motor made to start against something.
fn is_a_try(task: Task) -> bool {
    matches!(
        task,
        Task::Clue(Clue::GoodDevice | Clue::StartKit | Clue::Restart | Clue::InstantRestart)
    )
}

/// A time in the coarsest unit that still tells something.
pub(super) fn lasts(before: &str, minutes: f64, behind: &str) -> String {
    let (number, one, more) = if minutes < 90.0 {
        (minutes, "minute", "minutes")
    } else if minutes < 2160.0 {
        (minutes / 60.0, "hour", "hours")
    } else {
        (minutes / 1440.0, "day", "days")
    };
    let number = libm::round(number).max(1.0);
    let unit = if number < 1.5 { one } else { more };
    format!("{before}{number} {unit}{behind}")
}

/// What to do, as a heading.
#[must_use]
pub fn heading(task: Task) -> &'static str {
    match task {
        Task::Check(check) => of_check(check),
        Task::Clue(clue) => of_clue(clue),
        Task::History => "Ask about its past",
    }
}

fn of_check(check: Check) -> &'static str {
    match check {
        Check::Machine => "Say what machine it is",
        Check::Refrigerant => "Read the refrigerant off the plate",
        Check::LookOver => "Look it over",
        Check::Ground => "Measure from the plug to earth and metal",
        Check::StoredCharge => "Look for what may hold a charge",
        Check::Windings => "Measure the windings",
        Check::Shell => "Measure each pin to the shell",
        Check::Protector => "Measure the overload protector",
        Check::StartDevice => "Look at the start device and measure it",
        Check::WindingTemperature => "Measure how hot the winding is",
        Check::Supply => "Look at the outlet and read its volts",
        Check::Running => "Read watts, volts and amperes",
        Check::CapacitorInCircuit => "Measure the capacitor as it works",
        Check::Leakage => "Measure what leaks, and note its trips",
    }
}

fn of_clue(clue: Clue) -> &'static str {
    match clue {
        // What the unplugged checks bring is brought by them.
        Clue::OpeningSeen
        | Clue::OpeningTold
        | Clue::CordDamaged
        | Clue::Burnt
        | Clue::OilStain
        | Clue::Puncture
        | Clue::EarlierSealedWork
        | Clue::Rodents
        | Clue::MissingParts
        | Clue::Wet
        | Clue::PlugInsulation
        | Clue::BladeToBlade
        | Clue::Pins
        | Clue::ShellInsulation
        | Clue::Protector
        | Clue::StartDeviceLooks
        | Clue::StartDeviceOhms
        | Clue::WindingHeat => clue.check().map_or("", of_check),
        Clue::Thermostat => "Measure the thermostat's contacts",
        Clue::ThermostatCold => "See whether the thermostat's contacts open",
        Clue::Thermistor => "Measure the temperature sensor",
        Clue::Capacitor => "Measure the capacitor, discharged",
        Clue::DefrostParts => "Measure the defrost parts",
        Clue::PartByPart => "Find the leak part by part",
        Clue::Lint => "Look at the condenser",
        Clue::Seal => "Try the door seal with paper",
        Clue::DoorLamp => "See whether the lamp goes out",
        Clue::DoorSwitch => "Press the door's switch",
        Clue::EvaporatorFanMotor => "Turn the evaporator fan and measure it",
        Clue::CondenserFanMotor => "Turn the condenser fan and measure it",
        Clue::Drain => "Look at the drain",
        Clue::CoilIce => "Look for ice on the evaporator",
        Clue::RoomTemperature => "Measure the room's temperature",
        Clue::OtherOutlet => "Try another protected outlet",
        Clue::TripPattern => "Say when it trips",
        Clue::RunPattern => "Say how it runs over half a day",
        Clue::Lamp => "See whether the lamp lights",
        Clue::PowerUp => "Plug it in and listen",
        Clue::Noise => "Listen to its noises",
        Clue::ClickInterval => "Time the hum to the click",
        Clue::PowerMeter => "Put a power meter in front of it",
        Clue::PowerLevel => "Compare its watts",
        Clue::WattsTrend => "Follow its watts for half an hour",
        Clue::ModesCleared => "Set it to coldest and clear its modes",
        Clue::TimerByHand => "Turn the defrost timer, or start the cooling test",
        Clue::FlashCode => "Count the flashes",
        Clue::SaggingVolts => "Read the volts while it tries to start",
        Clue::EvaporatorFan => "Feel for air from the evaporator",
        Clue::CondenserFan => "Feel for air from the condenser",
        Clue::AirOutlet => "Feel for air in the fresh food",
        Clue::Restart => "See after which rest it starts",
        Clue::InstantRestart => "Restart it at once, one time",
        Clue::GoodDevice => "Fit a known-good start device",
        Clue::StartKit => "Try a start kit, as a test only",
        Clue::CondenserWarmth => "Feel the condenser",
        Clue::Drier => "Feel the filter drier",
        Clue::SuctionLine => "Feel the suction line",
        Clue::Hiss => "Listen as the compressor stops",
        Clue::FrostPattern => "Look at the frost after two hours",
        Clue::Temperatures => "Measure both compartments",
        Clue::ThawTrial => "Thaw it fully, then run it",
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use diagnosis::{Build, Choice};

    fn every_task() -> impl Iterator<Item = Task> {
        Clue::ALL
            .iter()
            .map(|clue| clue.task())
            .chain([Task::History])
    }

    fn check_of(task: Task, setup: Setup, waiting: f64) -> NextCheck {
        NextCheck {
            task,
            value: 1.0,
            bits: 0.1,
            minutes: 3.4,
            waiting,
            price: 1.0,
            setup,
            declared_parts_only: false,
            overturns: Vec::new(),
            again: None,
            opens: None,
        }
    }

    #[test]
    fn every_task_says_what_and_how() {
        for task in every_task() {
            assert!(!heading(task).is_empty(), "{task:?}");
            assert!(how(task).ends_with(['.', '?']), "{task:?}");
        }
    }

    #[test]
    fn whatever_is_powered_is_told_with_its_outlet_and_its_cover() {
        for task in every_task() {
            for &build in Build::ALL {
                let setup = task.setup(build);
                let said = takes(&check_of(task, setup, 0.0));
                let is_powered = setup.plugged == Some(true);
                let is_told = said.contains("protected outlet, its test button tried, cover on");
                assert_eq!(is_powered, is_told, "{task:?}: {said}");
            }
        }
        let fit = Task::Clue(Clue::GoodDevice);
        let said = takes(&check_of(fit, fit.setup(Build::ManualDefrost), 30.0));
        assert!(said.contains("unplug between tries"), "{said}");
    }

    #[test]
    fn times_are_told_in_the_unit_that_a_person_would_use() {
        let told = |waiting| takes(&check_of(Task::History, Setup::default(), waiting));
        assert_eq!(told(0.0), "about 3 minutes of work");
        assert!(told(120.0).ends_with(", 2 hours of waiting"));
        assert!(told(720.0).ends_with(", 12 hours of waiting"));
        assert!(told(2880.0).ends_with(", 2 days of waiting"));
    }

    #[test]
    fn answers_that_come_to_the_same_are_told_in_one() {
        let overturn = |answer| Overturn {
            clue: Clue::Thermostat,
            answer,
            action: Action::Replace,
            fault: Some(diagnosis::Fault::ThermostatOpen),
        };
        let mut check = check_of(Task::Clue(Clue::Thermostat), Setup::default(), 0.0);
        check.overturns = vec![overturn("open"), overturn("unsteady")];
        assert_eq!(
            next_check(&check).why,
            [
                "If “over range: open” or “comes and goes when tapped”, best bet: replace the thermostat"
            ]
        );
    }
}
