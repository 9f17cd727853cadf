//! What is wrong with a simulated machine, as the app would call it.
//!
//! One fault of the app's can be several ailments of the simulator's (either winding open); each
//! ailment belongs to one fault.

use diagnosis::Fault;
use simulator::Chance;
use simulator::machine::Ailment;

/// The fault that an ailment is.
#[must_use]
pub const fn fault_of(ailment: Ailment) -> Fault {
    match ailment {
        Ailment::CordOpen => Fault::CordOpen,
        Ailment::ThinSupply => Fault::VoltageFalls,
        Ailment::TouchyDevice => Fault::TripsByItself,
        Ailment::SetOff => Fault::SetNotToCool,
        Ailment::ThermostatOpen => Fault::ThermostatOpen,
        Ailment::ThermostatStuck => Fault::ControlStaysOn,
        Ailment::SensorOff => Fault::ThermistorOff,
        Ailment::BoardDead => Fault::BoardDoesNotCall,
        Ailment::StuckInDefrost => Fault::StuckInDefrost,
        Ailment::ColdRoom => Fault::RoomTooCold,
        Ailment::ProtectorOpen => Fault::OverloadOpen,
        Ailment::ProtectorWeak => Fault::OverloadWeak,
        Ailment::ConnectorBurnt => Fault::WiringBurnt,
        Ailment::InnerProtectorOpen => Fault::InnerProtectorOpen,
        Ailment::MainWindingOpen | Ailment::StartWindingOpen => Fault::WindingOpen,
        Ailment::TurnsShorted => Fault::TurnsShorted,
        Ailment::PhaseOpen => Fault::InverterMotorFailed,
        Ailment::WindingLeaks => Fault::WindingLeaks,
        Ailment::WiringLeaks => Fault::AnotherPartLeaks,
        Ailment::StartDeviceOpen => Fault::StartDeviceOpen,
        Ailment::StartDeviceWeak => Fault::StartDeviceWeak,
        Ailment::StartDeviceStaysIn => Fault::StartDeviceStaysIn,
        Ailment::CapacitorWeak | Ailment::CapacitorShorted => Fault::CapacitorFailed,
        Ailment::RotorTight => Fault::RotorTight,
        Ailment::RotorSeized => Fault::RotorSeized,
        Ailment::DriveDead => Fault::DriveWithoutOutput,
        Ailment::ValvesWorn => Fault::ValvesWorn,
        Ailment::CapillaryNarrow => Fault::CapillaryRestricted,
        Ailment::ChargeLow => Fault::ChargeLow,
        Ailment::ChargeGone => Fault::ChargeGone,
        Ailment::Moisture | Ailment::WrongCharge => Fault::ChargeContaminated,
        Ailment::BlowerStopped => Fault::EvaporatorFanStopped,
        Ailment::NeverDefrosts => Fault::NeverDefrosts,
        Ailment::HeaterOpen => Fault::DefrostHeaterOpen,
        Ailment::IcedUp => Fault::IcedUp,
        Ailment::CondenserMatted => Fault::CondenserMatted,
        Ailment::RoomFanStopped => Fault::CondenserFanStopped,
        Ailment::SealLeaks => Fault::SealLeaks,
        Ailment::DamperShut => Fault::DamperStuck,
        Ailment::LampOn => Fault::HeatStaysOn,
        Ailment::TooMuchAsked => Fault::TooMuchAsked,
    }
}

/// One of the ailments that a fault can be, each as likely as any other.
#[must_use]
pub fn ailment_of(fault: Fault, chance: &mut Chance) -> Option<Ailment> {
    let all: Vec<Ailment> = Ailment::ALL
        .iter()
        .copied()
        .filter(|ailment| fault_of(*ailment) == fault)
        .collect();
    let place = (chance.share() * all.len() as f64) as usize;
    all.get(place).copied()
}

#[cfg(test)]
mod tests {
    use super::*;
    use diagnosis::Choice;

    #[test]
    fn every_fault_of_the_app_can_be_simulated() {
        let mut chance = Chance::new(1);
        for fault in Fault::ALL {
            let ailment = ailment_of(*fault, &mut chance);
            assert_eq!(ailment.map(fault_of), Some(*fault));
        }
    }
}
