//! What a task takes: minutes, waiting, and the state in which the machine must be.

use super::build::Build;
use super::clue::{Clue, Task};
use crate::Check;

/// The state of a machine on the bench, as far as changing it takes time. `None` where a task
/// doesn't mind.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Setup {
    /// Plugged in, on a protected outlet.
    pub plugged: Option<bool>,
    /// The cover over the compressor's terminals is off.
    pub cover_off: Option<bool>,
    /// Start device and protector are off the pins.
    pub pins_bare: Option<bool>,
    /// The panel in front of the evaporator is off.
    pub panel_off: Option<bool>,
}

/// How a machine is met, and left after each check that doesn't say otherwise.
pub(super) const AS_FOUND: Setup = Setup {
    plugged: Some(false),
    cover_off: Some(false),
    pins_bare: Some(false),
    panel_off: Some(false),
};

/// What may have to be open before something is done.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Needs {
    /// It is done unplugged, or asked.
    NoPower,
    /// The plug-level ground check.
    LookAndListen,
    /// The pin-level ground check too.
    Trials,
}

/// What a task takes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Effort {
    pub(super) minutes: f64,
    pub(super) waiting: f64,
    pub(super) setup: Setup,
    pub(super) needs: Needs,
}

/// Minutes to change one thing about the state of a machine (judgement): cover 6, start gear 4,
/// panel 15, plug half a minute.
pub(super) fn minutes_between(now: Setup, wanted: Setup) -> f64 {
    let pairs = [
        (now.plugged, wanted.plugged, 0.5),
        (now.cover_off, wanted.cover_off, 6.0),
        (now.pins_bare, wanted.pins_bare, 4.0),
        (now.panel_off, wanted.panel_off, 15.0),
    ];
    pairs
        .into_iter()
        .filter(|(now, wanted, _)| wanted.is_some_and(|wanted| now.unwrap_or(false) != wanted))
        .map(|(_, _, minutes)| minutes)
        .sum()
}

/// The state after a task: as it wanted it, the rest as before.
pub(super) fn after(now: Setup, done: Setup) -> Setup {
    Setup {
        plugged: done.plugged.or(now.plugged),
        cover_off: done.cover_off.or(now.cover_off),
        pins_bare: done.pins_bare.or(now.pins_bare),
        panel_off: done.panel_off.or(now.panel_off),
    }
}

const OPEN_ENDED: Setup = Setup {
    plugged: None,
    cover_off: None,
    pins_bare: None,
    panel_off: None,
};
const UNPLUGGED: Setup = Setup {
    plugged: Some(false),
    ..OPEN_ENDED
};
const AT_THE_TERMINALS: Setup = Setup {
    cover_off: Some(true),
    ..UNPLUGGED
};
const AT_THE_PINS: Setup = Setup {
    pins_bare: Some(true),
    ..AT_THE_TERMINALS
};
/// Everything in its place: nothing is powered with the cover off.
const POWERED: Setup = Setup {
    plugged: Some(true),
    cover_off: Some(false),
    pins_bare: Some(false),
    panel_off: None,
};

impl Task {
    /// The state that the machine must be in.
    #[must_use]
    pub fn setup(self, build: Build) -> Setup {
        self.effort(build).setup
    }

    /// Minutes of work, without the change of access (judgement).
    #[must_use]
    pub fn minutes(self, build: Build) -> f64 {
        self.effort(build).minutes
    }

    /// Minutes of waiting on top (judgement).
    #[must_use]
    pub fn waiting(self, build: Build) -> f64 {
        self.effort(build).waiting
    }

    /// What it takes on a machine built so. Minutes are judgement, hands-on for someone who has
    /// done it before.
    pub(super) fn effort(self, build: Build) -> Effort {
        match self {
            Self::Check(check) => of_check(check),
            Self::History => effort(1.0, 0.0, OPEN_ENDED, Needs::NoPower),
            Self::Clue(clue) => of_clue(clue, build),
        }
    }
}

const fn effort(minutes: f64, waiting: f64, setup: Setup, needs: Needs) -> Effort {
    Effort {
        minutes,
        waiting,
        setup,
        needs,
    }
}

fn of_check(check: Check) -> Effort {
    let (minutes, setup) = match check {
        Check::Machine | Check::Refrigerant => (1.0, OPEN_ENDED),
        Check::LookOver => (5.0, UNPLUGGED),
        Check::Ground | Check::StoredCharge => (2.0, UNPLUGGED),
        Check::Windings => (5.0, AT_THE_PINS),
        Check::Shell | Check::Protector => (3.0, AT_THE_PINS),
        Check::StartDevice => (6.0, AT_THE_PINS),
        Check::WindingTemperature => (5.0, AT_THE_PINS),
        Check::Supply => return effort(5.0, 0.0, POWERED, Needs::Trials),
        Check::Running => return effort(5.0, 30.0, POWERED, Needs::LookAndListen),
        Check::CapacitorInCircuit => return effort(15.0, 5.0, POWERED, Needs::Trials),
        Check::Leakage => return effort(10.0, 0.0, POWERED, Needs::LookAndListen),
    };
    effort(minutes, 0.0, setup, Needs::NoPower)
}

fn of_clue(clue: Clue, build: Build) -> Effort {
    use Needs::{LookAndListen, NoPower, Trials};
    let behind_panel = |powered: Setup| match build {
        Build::ManualDefrost => powered,
        Build::FrostFree | Build::Inverter => Setup {
            panel_off: Some(true),
            ..powered
        },
    };
    let (minutes, waiting, setup, needs) = match clue {
        Clue::Thermostat => (12.0, 0.0, UNPLUGGED, NoPower),
        Clue::ThermostatCold => (8.0, 0.0, UNPLUGGED, NoPower),
        Clue::EvaporatorFanMotor => (6.0, 0.0, behind_panel(UNPLUGGED), NoPower),
        Clue::CondenserFanMotor => (8.0, 0.0, UNPLUGGED, NoPower),
        Clue::Thermistor => (12.0, 10.0, UNPLUGGED, NoPower),
        Clue::Capacitor => (6.0, 0.0, AT_THE_TERMINALS, NoPower),
        Clue::DefrostParts => (10.0, 0.0, behind_panel(UNPLUGGED), NoPower),
        Clue::PartByPart => (15.0, 0.0, AT_THE_TERMINALS, NoPower),
        Clue::Lint => (1.0, 0.0, OPEN_ENDED, NoPower),
        Clue::Seal => (4.0, 0.0, OPEN_ENDED, NoPower),
        Clue::DoorLamp => (1.0, 0.0, POWERED, LookAndListen),
        Clue::DoorSwitch => (3.0, 0.0, POWERED, LookAndListen),
        Clue::Drain => (3.0, 0.0, OPEN_ENDED, NoPower),
        Clue::CoilIce => (2.0, 0.0, behind_panel(UNPLUGGED), NoPower),
        Clue::RunPattern => (2.0, 0.0, OPEN_ENDED, NoPower),
        Clue::Noise => (2.0, 15.0, POWERED, LookAndListen),
        Clue::RoomTemperature | Clue::TripPattern => (1.0, 0.0, OPEN_ENDED, NoPower),
        Clue::OtherOutlet => (4.0, 15.0, POWERED, LookAndListen),
        Clue::Lamp => (1.0, 0.0, POWERED, LookAndListen),
        Clue::PowerUp => (2.0, 15.0, POWERED, LookAndListen),
        Clue::ClickInterval => (1.0, 5.0, POWERED, LookAndListen),
        Clue::PowerMeter => (3.0, 15.0, POWERED, LookAndListen),
        Clue::PowerLevel => (2.0, 5.0, POWERED, LookAndListen),
        Clue::WattsTrend => (4.0, 30.0, POWERED, LookAndListen),
        Clue::ModesCleared => (3.0, 15.0, POWERED, LookAndListen),
        Clue::TimerByHand => (5.0, 0.0, POWERED, LookAndListen),
        Clue::FlashCode => (3.0, 0.0, POWERED, LookAndListen),
        Clue::EvaporatorFan | Clue::AirOutlet => (2.0, 0.0, POWERED, LookAndListen),
        Clue::CondenserFan => (1.0, 5.0, POWERED, LookAndListen),
        Clue::CondenserWarmth | Clue::Drier | Clue::SuctionLine => {
            (3.0, 30.0, POWERED, LookAndListen)
        }
        Clue::Hiss => (3.0, 20.0, POWERED, LookAndListen),
        Clue::FrostPattern => (2.0, 120.0, behind_panel(POWERED), LookAndListen),
        Clue::Temperatures => (4.0, 720.0, POWERED, LookAndListen),
        Clue::ThawTrial => (20.0, 2880.0, POWERED, LookAndListen),
        Clue::InstantRestart => (3.0, 15.0, POWERED, Trials),
        Clue::Restart => (8.0, 40.0, POWERED, Trials),
        Clue::GoodDevice | Clue::StartKit => (15.0, 30.0, POWERED, Trials),
        Clue::SaggingVolts => (3.0, 0.0, POWERED, Trials),
        // What the unplugged checks bring has their effort.
        _ => {
            return clue
                .check()
                .map_or(effort(1.0, 0.0, OPEN_ENDED, NoPower), of_check);
        }
    };
    effort(minutes, waiting, setup, needs)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Choice;

    #[test]
    fn nothing_is_powered_with_the_terminals_uncovered_or_without_a_gate() {
        for &build in Build::ALL {
            for &clue in Clue::ALL {
                let effort = clue.task().effort(build);
                if effort.setup.plugged == Some(true) {
                    assert_eq!(effort.setup.cover_off, Some(false), "{clue:?}");
                    assert_ne!(effort.needs, Needs::NoPower, "{clue:?}");
                }
            }
        }
    }

    #[test]
    fn going_on_at_the_pins_is_cheaper_than_covering_them_and_plugging_in() {
        let at_pins = after(AS_FOUND, AT_THE_PINS);
        assert!(minutes_between(at_pins, AT_THE_PINS) < 0.1);
        assert!(minutes_between(at_pins, POWERED) > 10.0);
    }
}
