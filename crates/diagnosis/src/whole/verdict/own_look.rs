//! The look that is part of what is advised: a remedy that is itself a check, and the part that is
//! in hand anyway before another one is put in its place.
//!
//! What such a look takes is in what the remedy takes, so that it isn't weighed against its worth
//! once more. It is asked for last, when nothing else is worth its time, and only where the remedy
//! isn't nearly sure. Which check belongs to which remedy is common practice, no source.

use crate::Check;
use crate::whole::clue::{Clue, Task};
use crate::whole::fault::Fault::{self, *};
use crate::whole::remedy::Action;

/// The check that belongs to what is advised; nothing where that is to be opened by someone
/// licensed, or can't be told from outside.
pub(super) const fn own_look(action: Action, fault: Option<Fault>) -> Option<Task> {
    match (action, fault) {
        // To give it a day and look again is to see what it holds after that day.
        (Action::WaitAndRepeat, _) => Some(Task::Clue(Clue::Temperatures)),
        // These say at once whether they were the remedy.
        (Action::SetControl, _) => Some(Task::Clue(Clue::ModesCleared)),
        (Action::BetterOutlet, _) => Some(Task::Clue(Clue::OtherOutlet)),
        // Nobody carries a machine out of a room without a look at the thermometer.
        (Action::Move, _) => Some(Task::Clue(Clue::RoomTemperature)),
        // Mended for as long as a good device turns it.
        (Action::FitStartGear, _) => Some(Task::Clue(Clue::GoodDevice)),
        (Action::Clean, _) => Some(Task::Clue(Clue::Lint)),
        (Action::Thaw, _) => Some(Task::Clue(Clue::CoilIce)),
        (Action::Replace, Some(fault)) => part_in_hand(fault),
        _ => None,
    }
}

/// What is seen and measured of the old part before a new one is fetched.
const fn part_in_hand(fault: Fault) -> Option<Task> {
    Some(match fault {
        ThermostatOpen => Task::Clue(Clue::Thermostat),
        ControlStaysOn => Task::Clue(Clue::ThermostatCold),
        ThermistorOff => Task::Clue(Clue::Thermistor),
        StuckInDefrost | NeverDefrosts => Task::Clue(Clue::TimerByHand),
        OverloadOpen | OverloadWeak => Task::Check(Check::Protector),
        AnotherPartLeaks => Task::Clue(Clue::PartByPart),
        StartDeviceOpen | StartDeviceWeak | StartDeviceStaysIn => Task::Check(Check::StartDevice),
        CapacitorFailed => Task::Clue(Clue::Capacitor),
        // A board that drives a motor that can't turn is bought in vain.
        DriveWithoutOutput => Task::Check(Check::Windings),
        EvaporatorFanStopped => Task::Clue(Clue::EvaporatorFanMotor),
        CondenserFanStopped => Task::Clue(Clue::CondenserFanMotor),
        DefrostHeaterOpen => Task::Clue(Clue::DefrostParts),
        SealLeaks => Task::Clue(Clue::Seal),
        DamperStuck => Task::Clue(Clue::AirOutlet),
        HeatStaysOn => Task::Clue(Clue::DoorLamp),
        _ => return None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::choice::Choice;
    use crate::whole::build::Build;
    use crate::whole::remedy::stated;

    /// A look that no machine with the fault allows would be a slip of the table. (An inverter that
    /// never stops has its relay to blame, which no contacts at off tell.)
    #[test]
    fn what_is_looked_at_exists_where_the_fault_does() {
        for &fault in Fault::ALL {
            let builds = Build::ALL.iter().filter(|build| fault.exists_in(**build));
            let mut looks =
                builds.map(
                    |build| match own_look(stated(fault, *build).action, Some(fault)) {
                        Some(Task::Clue(clue)) => clue.exists_in(*build),
                        _ => true,
                    },
                );
            assert!(looks.any(|exists| exists), "{fault:?}");
        }
    }

    /// What opens the sealed system or ends a machine has proofs of its own.
    #[test]
    fn what_cannot_be_undone_is_no_look() {
        for action in [
            Action::Scrap,
            Action::LicensedWork,
            Action::StopDoNotEnergise,
        ] {
            assert_eq!(own_look(action, Some(RotorSeized)), None);
        }
    }
}
