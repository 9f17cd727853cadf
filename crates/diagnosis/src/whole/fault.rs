//! The parts that can be at fault, and in which ways.

use crate::Link;
use crate::choice::{Choice, choices};

choices! {
    /// Something that can be at fault, in the order of the Path. Each is sound or has one of its
    /// faults; several parts can be at fault at once.
    pub enum Part {
        /// Outlet, plug, its fuse, cord.
        SupplyLine = "supply-line",
        /// The ground-fault or residual-current device in front of the machine.
        ProtectiveDevice = "protective-device",
        /// What the control is set to.
        Setting = "setting",
        /// A thermostat with contacts, its bulb and capillary; or what stands for it on a board.
        Thermostat = "thermostat",
        /// A temperature sensor and its harness.
        Thermistor = "thermistor",
        /// The main board.
        Board = "board",
        /// What ends a defrost: timer or board.
        DefrostEnd = "defrost-end",
        /// The room, where one control serves two compartments.
        Room = "room",
        /// The overload protector on the compressor.
        Overload = "overload",
        /// Wires and connectors at the compressor.
        Wiring = "wiring",
        /// The protector inside the compressor, or its common lead.
        InnerProtector = "inner-protector",
        /// The motor's windings.
        Windings = "windings",
        /// The insulation between windings and shell.
        Insulation = "insulation",
        /// The insulation of everything else: heater, fans, wiring.
        OtherInsulation = "other-insulation",
        /// PTC, relay or electronic start device.
        StartDevice = "start-device",
        /// Start or run capacitor.
        Capacitor = "capacitor",
        /// The compressor's rotor and bearings.
        Rotor = "rotor",
        /// The inverter's drive board.
        Drive = "drive",
        /// Valves, gasket and discharge tube inside the compressor.
        Valves = "valves",
        /// Capillary and filter drier.
        Capillary = "capillary",
        /// The refrigerant.
        Charge = "charge",
        /// The fan at the evaporator, with its door switch.
        EvaporatorFan = "evaporator-fan",
        /// What begins a defrost: timer, board or its sensor.
        DefrostStart = "defrost-start",
        /// Defrost heater, its thermostat and thermal fuse.
        DefrostHeater = "defrost-heater",
        /// The drain; on machines without defrost the frost left to grow.
        Drain = "drain",
        /// The condenser's surface and the air that it is given.
        Condenser = "condenser",
        /// The fan at the condenser.
        CondenserFan = "condenser-fan",
        /// Door or lid and their seal.
        Seal = "seal",
        /// Damper, diverter valve or fan between two compartments.
        Damper = "damper",
        /// Lamp and heaters inside.
        Lamp = "lamp",
        /// What is asked of it: the room's heat, the load, the time.
        Demand = "demand",
    }
}

choices! {
    /// One way for a part to be at fault.
    pub enum Fault {
        /// Outlet dead, fuse blown, cord or plug open.
        CordOpen = "cord-open",
        /// The voltage falls under load.
        VoltageFalls = "voltage-falls",
        /// The protective device trips with no fault in the machine.
        TripsByItself = "trips-by-itself",
        /// Off, warm, or in a holiday, showroom or locked mode.
        SetNotToCool = "set-not-to-cool",
        /// Contacts open, bulb's charge lost, bulb out of its place.
        ThermostatOpen = "thermostat-open",
        /// The control never lets go: contacts welded, a relay stuck, a bulb that feels no cold.
        ControlStaysOn = "control-stays-on",
        /// A sensor off its curve, open or wet.
        ThermistorOff = "thermistor-off",
        /// The board doesn't ask for cooling.
        BoardDoesNotCall = "board-does-not-call",
        /// The defrost never ends.
        StuckInDefrost = "stuck-in-defrost",
        /// A room too cold for a control that feels the fresh food only.
        RoomTooCold = "room-too-cold",
        /// The overload protector failed open.
        OverloadOpen = "overload-open",
        /// The overload protector opens at a normal current.
        OverloadWeak = "overload-weak",
        /// Burnt, loose, chewed or wrongly refitted wiring at the compressor.
        WiringBurnt = "wiring-burnt",
        /// The protector inside failed open, or the common lead is broken.
        InnerProtectorOpen = "inner-protector-open",
        /// Run or start winding open.
        WindingOpen = "winding-open",
        /// Turns shorted.
        TurnsShorted = "turns-shorted",
        /// A phase of an inverter's motor open or shorted, or the motor seized.
        InverterMotorFailed = "inverter-motor-failed",
        /// A winding leaks to the shell.
        WindingLeaks = "winding-leaks",
        /// Another part leaks to earthed metal.
        AnotherPartLeaks = "another-part-leaks",
        /// Start device open, cracked, its contact or coil open.
        StartDeviceOpen = "start-device-open",
        /// Start device weak or slow.
        StartDeviceWeak = "start-device-weak",
        /// Start device never lets go: welded or shorted.
        StartDeviceStaysIn = "start-device-stays-in",
        /// Start or run capacitor open, weak or shorted.
        CapacitorFailed = "capacitor-failed",
        /// The rotor is tight: starts with help or after a long rest only.
        RotorTight = "rotor-tight",
        /// The rotor is seized.
        RotorSeized = "rotor-seized",
        /// The drive gives no output.
        DriveWithoutOutput = "drive-without-output",
        /// Worn or broken valves, a cracked tube inside the shell.
        ValvesWorn = "valves-worn",
        /// Capillary or drier restricted.
        CapillaryRestricted = "capillary-restricted",
        /// Part of the charge is lost.
        ChargeLow = "charge-low",
        /// The charge is lost.
        ChargeGone = "charge-gone",
        /// Moisture, air or a wrong charge after earlier work.
        ChargeContaminated = "charge-contaminated",
        /// The evaporator's fan moves no air.
        EvaporatorFanStopped = "evaporator-fan-stopped",
        /// The defrost never begins.
        NeverDefrosts = "never-defrosts",
        /// Defrost heater, its thermostat or fuse open.
        DefrostHeaterOpen = "defrost-heater-open",
        /// Drain blocked, or frost left to grow.
        IcedUp = "iced-up",
        /// Condenser matted with lint, or boxed in.
        CondenserMatted = "condenser-matted",
        /// Condenser fan stopped or weak.
        CondenserFanStopped = "condenser-fan-stopped",
        /// Door or lid doesn't seal, or is held open.
        SealLeaks = "seal-leaks",
        /// Damper, diverter or fresh-food fan stuck.
        DamperStuck = "damper-stuck",
        /// Lamp or a heater stays on.
        HeatStaysOn = "heat-stays-on",
        /// A hot room, a warm load, too little time.
        TooMuchAsked = "too-much-asked",
    }
}

impl Part {
    /// Its faults, in order.
    pub fn faults(self) -> impl Iterator<Item = Fault> {
        Fault::ALL
            .iter()
            .copied()
            .filter(move |fault| fault.part() == self)
    }
}

impl Fault {
    /// Its place in tables.
    pub(super) const fn place(self) -> usize {
        self as usize
    }

    /// The part that has it.
    #[must_use]
    pub const fn part(self) -> Part {
        match self {
            Self::CordOpen | Self::VoltageFalls => Part::SupplyLine,
            Self::TripsByItself => Part::ProtectiveDevice,
            Self::SetNotToCool => Part::Setting,
            Self::ThermostatOpen | Self::ControlStaysOn => Part::Thermostat,
            Self::ThermistorOff => Part::Thermistor,
            Self::BoardDoesNotCall => Part::Board,
            Self::StuckInDefrost => Part::DefrostEnd,
            Self::NeverDefrosts => Part::DefrostStart,
            Self::RoomTooCold => Part::Room,
            Self::OverloadOpen | Self::OverloadWeak => Part::Overload,
            Self::WiringBurnt => Part::Wiring,
            Self::InnerProtectorOpen => Part::InnerProtector,
            Self::WindingOpen | Self::TurnsShorted | Self::InverterMotorFailed => Part::Windings,
            Self::WindingLeaks => Part::Insulation,
            Self::AnotherPartLeaks => Part::OtherInsulation,
            Self::StartDeviceOpen | Self::StartDeviceWeak | Self::StartDeviceStaysIn => {
                Part::StartDevice
            }
            Self::CapacitorFailed => Part::Capacitor,
            Self::RotorTight | Self::RotorSeized => Part::Rotor,
            Self::DriveWithoutOutput => Part::Drive,
            Self::ValvesWorn => Part::Valves,
            Self::CapillaryRestricted => Part::Capillary,
            Self::ChargeLow | Self::ChargeGone | Self::ChargeContaminated => Part::Charge,
            Self::EvaporatorFanStopped => Part::EvaporatorFan,
            Self::DefrostHeaterOpen => Part::DefrostHeater,
            Self::IcedUp => Part::Drain,
            Self::CondenserMatted => Part::Condenser,
            Self::CondenserFanStopped => Part::CondenserFan,
            Self::SealLeaks => Part::Seal,
            Self::DamperStuck => Part::Damper,
            Self::HeatStaysOn => Part::Lamp,
            Self::TooMuchAsked => Part::Demand,
        }
    }

    /// The link of the Path that it breaks first.
    #[must_use]
    pub const fn link(self) -> Link {
        match self {
            Self::CordOpen | Self::VoltageFalls | Self::TripsByItself => Link::Supply,
            Self::SetNotToCool
            | Self::ThermostatOpen
            | Self::ControlStaysOn
            | Self::ThermistorOff
            | Self::BoardDoesNotCall
            | Self::StuckInDefrost
            | Self::RoomTooCold => Link::Call,
            Self::OverloadOpen
            | Self::WiringBurnt
            | Self::InnerProtectorOpen
            | Self::WindingOpen
            | Self::TurnsShorted
            | Self::WindingLeaks
            | Self::AnotherPartLeaks => Link::Circuit,
            Self::StartDeviceOpen
            | Self::StartDeviceWeak
            | Self::CapacitorFailed
            | Self::RotorTight
            | Self::RotorSeized
            | Self::DriveWithoutOutput
            | Self::InverterMotorFailed => Link::Start,
            Self::OverloadWeak | Self::StartDeviceStaysIn => Link::Run,
            Self::ValvesWorn
            | Self::CapillaryRestricted
            | Self::ChargeLow
            | Self::ChargeGone
            | Self::ChargeContaminated => Link::Pump,
            Self::NeverDefrosts
            | Self::TooMuchAsked
            | Self::EvaporatorFanStopped
            | Self::DefrostHeaterOpen
            | Self::IcedUp
            | Self::CondenserMatted
            | Self::CondenserFanStopped
            | Self::SealLeaks
            | Self::DamperStuck
            | Self::HeatStaysOn => Link::Exchange,
        }
    }

    /// Whether it grows with use and alone is often not noticed: seal, lint, frost, cord.
    #[must_use]
    pub const fn is_wear(self) -> bool {
        matches!(
            self,
            Self::CordOpen
                | Self::VoltageFalls
                | Self::IcedUp
                | Self::CondenserMatted
                | Self::SealLeaks
        )
    }

    /// Whether it condemns the compressor or opens the sealed system.
    #[must_use]
    pub const fn is_sealed(self) -> bool {
        matches!(
            self,
            Self::InnerProtectorOpen
                | Self::WindingOpen
                | Self::TurnsShorted
                | Self::InverterMotorFailed
                | Self::WindingLeaks
                | Self::RotorSeized
                | Self::ValvesWorn
                | Self::CapillaryRestricted
                | Self::ChargeLow
                | Self::ChargeGone
                | Self::ChargeContaminated
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_part_has_a_fault_and_parts_follow_the_order_of_their_faults() {
        for part in Part::ALL {
            assert!(part.faults().next().is_some(), "{part:?}");
        }
        let parts: Vec<Part> = Fault::ALL.iter().map(|fault| fault.part()).collect();
        assert!(parts.is_sorted());
    }
}
