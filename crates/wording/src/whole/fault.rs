//! What a person calls a part, and the ways in which it fails.

use diagnosis::{Fault, Part};

use crate::Words;

impl Words for Fault {
    fn words(self) -> &'static str {
        match self {
            Self::CordOpen => "No supply: outlet, fuse, plug or cord open",
            Self::VoltageFalls => "Voltage falls under load",
            Self::TripsByItself => "Protective device trips with no leak in the machine",
            Self::SetNotToCool => "Control off, set too warm, or in a holiday or showroom mode",
            Self::ThermostatOpen => "Thermostat doesn't close",
            Self::ControlStaysOn => "Control never lets the compressor stop",
            Self::ThermistorOff => "Temperature sensor off its curve",
            Self::BoardDoesNotCall => "Main board doesn't ask for cooling",
            Self::StuckInDefrost => "Stuck in defrost",
            Self::RoomTooCold => "Room too cold for its control",
            Self::OverloadOpen => "Overload protector open",
            Self::OverloadWeak => "Overload protector weak, opens too early",
            Self::WiringBurnt => "Wiring at the compressor burnt, loose or wrong",
            Self::InnerProtectorOpen => "Protector inside the compressor open for good",
            Self::WindingOpen => "Start or run winding open",
            Self::TurnsShorted => "Turns of a winding shorted",
            Self::InverterMotorFailed => "Inverter compressor's motor failed",
            Self::WindingLeaks => "Winding leaks to the shell",
            Self::AnotherPartLeaks => "Heater, fan or wiring leaks to earth",
            Self::StartDeviceOpen => "Start device open",
            Self::StartDeviceWeak => "Start device weak or slow",
            Self::StartDeviceStaysIn => "Start device never lets go",
            Self::CapacitorFailed => "Capacitor open, weak or shorted",
            Self::RotorTight => "Rotor tight, starts hard",
            Self::RotorSeized => "Rotor seized",
            Self::DriveWithoutOutput => "Inverter board gives no output",
            Self::ValvesWorn => "Compressor's valves worn or broken",
            Self::CapillaryRestricted => "Capillary or filter drier restricted",
            Self::ChargeLow => "Part of the refrigerant lost",
            Self::ChargeGone => "Refrigerant lost",
            Self::ChargeContaminated => "Moisture, air or a wrong charge in the sealed system",
            Self::EvaporatorFanStopped => "Evaporator fan moves no air",
            Self::NeverDefrosts => "Defrost never begins",
            Self::DefrostHeaterOpen => "Defrost heater, its thermostat or its fuse open",
            Self::IcedUp => "Iced up: drain blocked, or frost left to grow",
            Self::CondenserMatted => "Condenser matted with lint or boxed in",
            Self::CondenserFanStopped => "Condenser fan stopped or weak",
            Self::SealLeaks => "Door or lid doesn't seal",
            Self::DamperStuck => "Damper between the compartments stuck",
            Self::HeatStaysOn => "Lamp or a heater stays on inside",
            Self::TooMuchAsked => "Too much asked: hot room, warm load or too little time",
        }
    }
}

impl Words for Part {
    fn words(self) -> &'static str {
        match self {
            Self::SupplyLine => "Cord or plug",
            Self::ProtectiveDevice => "Protective device of the outlet",
            Self::Setting => "Setting",
            Self::Thermostat => "Thermostat",
            Self::Thermistor => "Temperature sensor",
            Self::Board => "Main board",
            Self::DefrostEnd => "Defrost timer or its board",
            Self::Room => "Room",
            Self::Overload => "Overload protector",
            Self::Wiring => "Wiring at the compressor",
            Self::InnerProtector => "Protector inside the compressor",
            Self::Windings => "Windings",
            Self::Insulation => "Insulation of the windings",
            Self::OtherInsulation => "Heater, fan or wiring that leaks",
            Self::StartDevice => "Start device",
            Self::Capacitor => "Capacitor",
            Self::Rotor => "Rotor",
            Self::Drive => "Inverter board",
            Self::Valves => "Compressor's valves",
            Self::Capillary => "Capillary and filter drier",
            Self::Charge => "Refrigerant",
            Self::EvaporatorFan => "Evaporator fan",
            Self::DefrostStart => "Defrost timer, or its board or sensor",
            Self::DefrostHeater => "Defrost heater, its thermostat or its fuse",
            Self::Drain => "Drain",
            Self::Condenser => "Condenser",
            Self::CondenserFan => "Condenser fan",
            Self::Seal => "Door gasket or hinge",
            Self::Damper => "Damper",
            Self::Lamp => "Lamp switch or the heater",
            Self::Demand => "What is asked of it",
        }
    }
}
