//! What can be said of an ailment before any machine has it.

use super::Ailment;
use crate::appliance::Kind;
use crate::machine::{Blueprint, Control, Gear};

impl Ailment {
    /// Whether such a machine can have it.
    #[must_use]
    pub fn exists_in(self, blueprint: &Blueprint) -> bool {
        let inverter = blueprint.gear == Gear::Inverter;
        match self {
            Self::SensorOff | Self::BoardDead => blueprint.control == Control::Board,
            Self::ThermostatOpen | Self::ThermostatStuck => {
                blueprint.control == Control::Thermostat
            }
            Self::ColdRoom => blueprint.kind == Kind::FrostFreeOneThermostat,
            Self::BlowerStopped
            | Self::NeverDefrosts
            | Self::HeaterOpen
            | Self::DamperShut
            | Self::RoomFanStopped
            | Self::StuckInDefrost => blueprint.is_frost_free(),
            Self::CapacitorWeak | Self::CapacitorShorted => blueprint.capacitor().is_some(),
            Self::PhaseOpen | Self::DriveDead => inverter,
            Self::ProtectorOpen
            | Self::ProtectorWeak
            | Self::InnerProtectorOpen
            | Self::MainWindingOpen
            | Self::StartWindingOpen
            | Self::TurnsShorted
            | Self::StartDeviceOpen
            | Self::StartDeviceWeak
            | Self::StartDeviceStaysIn
            | Self::RotorTight
            | Self::RotorSeized => !inverter,
            _ => true,
        }
    }

    /// Whether it sits inside of the compressor's shell.
    #[must_use]
    pub const fn is_in_compressor(self) -> bool {
        matches!(
            self,
            Self::InnerProtectorOpen
                | Self::MainWindingOpen
                | Self::StartWindingOpen
                | Self::TurnsShorted
                | Self::PhaseOpen
                | Self::WindingLeaks
                | Self::RotorTight
                | Self::RotorSeized
                | Self::ValvesWorn
        )
    }

    /// Whether it can be bad or less so. An open contact is open: there the severity says nothing.
    #[must_use]
    pub const fn is_graded(self) -> bool {
        !matches!(
            self,
            Self::CordOpen
                | Self::SetOff
                | Self::ThermostatOpen
                | Self::ThermostatStuck
                | Self::BoardDead
                | Self::StuckInDefrost
                | Self::ProtectorOpen
                | Self::ConnectorBurnt
                | Self::InnerProtectorOpen
                | Self::MainWindingOpen
                | Self::StartWindingOpen
                | Self::PhaseOpen
                | Self::StartDeviceOpen
                | Self::CapacitorShorted
                | Self::RotorSeized
                | Self::DriveDead
                | Self::ChargeGone
                | Self::DamperShut
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Chance;
    use crate::appliance::Kind;
    use crate::machine::{Machine, Trouble};
    use quantity::Ratio;

    fn built(blueprint: &Blueprint, ailment: Ailment, severity: f64) -> String {
        let severity = Ratio::new(severity);
        let trouble = Trouble { ailment, severity };
        let machine = Machine::build(blueprint, &[trouble], Chance::new(3)).unwrap();
        machine.without_its_name()
    }

    #[test]
    fn severity_changes_machines_where_an_ailment_is_graded_and_none_where_it_is_not() {
        let mut seen = std::collections::BTreeMap::new();
        for number in 0..40 {
            let mut chance = Chance::new(number);
            let kinds = [
                Kind::ChestFreezer,
                Kind::FrostFree,
                Kind::FrostFreeOneThermostat,
            ];
            let kind = kinds[number as usize % 3];
            let blueprint = Blueprint::drawn(kind, number % 5 == 0, &mut chance);
            let all = Ailment::ALL.iter();
            for ailment in all.filter(|one| one.exists_in(&blueprint)) {
                let [slight, bad] = [0.1, 0.6].map(|how| built(&blueprint, *ailment, how));
                // A relay's welded contact is no worse than welded, a pellet's short is.
                *seen.entry(format!("{ailment:?}")).or_insert(false) |= slight != bad;
            }
        }
        for ailment in Ailment::ALL {
            // All of it is gone, or nearly all: nobody would call that slight.
            if *ailment != Ailment::ChargeGone {
                let differs = seen.get(&format!("{ailment:?}")).copied();
                assert_eq!(differs, Some(ailment.is_graded()), "{ailment:?}");
            }
        }
    }
}
