//! What can be wrong, each as a change of a physical parameter.
//!
//! Answers: which parameters differ in such a machine, and by how much at which severity? Must
//! never know: what anybody notices of it.
//!
//! Ranges of severity are this crate's own judgement: from "barely worse than sound" to "as bad as
//! it gets", each as likely as any other.

mod nature;

use quantity::{Amps, Celsius, KelvinDelta, Kilograms, Ohms, Ratio};

use super::build::Build;
use super::traces::Trace;
use crate::appliance::Mains;
use crate::cabinet::CabinetFault;
use crate::circuit::CircuitFault;
use crate::inverter::BoardFault;
use crate::protector::{Place, ProtectorFault};
use crate::start_gear::{Contact, Switch};

macro_rules! ailments {
    ($($(#[$doc:meta])* $name:ident,)*) => {
        /// What is wrong.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
        pub enum Ailment {
            $($(#[$doc])* $name,)*
        }

        impl Ailment {
            /// Each of them.
            pub const ALL: &'static [Self] = &[$(Self::$name,)*];
        }
    };
}

ailments! {
    /// Plug, fuse or cord doesn't conduct.
    CordOpen,
    /// A long thin extension, or a contact that gives way under load.
    ThinSupply,
    /// The outlet's device goes at a fraction of its current.
    TouchyDevice,
    /// It is set to off.
    SetOff,
    /// The thermostat never closes.
    ThermostatOpen,
    /// The thermostat never opens.
    ThermostatStuck,
    /// A sensor reads much colder than it is.
    SensorOff,
    /// The board never switches anything on.
    BoardDead,
    /// The timer stands in its turn for the heater.
    StuckInDefrost,
    /// A room so cold that the fresh food doesn't call.
    ColdRoom,
    /// The protector is open for good.
    ProtectorOpen,
    /// The protector opens far too early.
    ProtectorWeak,
    /// A connector at the compressor is burnt.
    ConnectorBurnt,
    /// The lead inside, or the protector there, is open for good.
    InnerProtectorOpen,
    /// The main winding is open.
    MainWindingOpen,
    /// The start winding is open.
    StartWindingOpen,
    /// Turns of the main winding are shorted.
    TurnsShorted,
    /// A phase of an inverter's motor is open.
    PhaseOpen,
    /// A winding leaks to the shell.
    WindingLeaks,
    /// The defrost heater, or else some wiring, leaks to metal.
    WiringLeaks,
    /// The start device doesn't let current through.
    StartDeviceOpen,
    /// The start device lets too little through.
    StartDeviceWeak,
    /// The start device never lets go.
    StartDeviceStaysIn,
    /// The start or run capacitor is open or weak.
    CapacitorWeak,
    /// The start or run capacitor is shorted.
    CapacitorShorted,
    /// The rotor sticks, and turns a little heavily once it is free.
    RotorTight,
    /// The rotor doesn't turn.
    RotorSeized,
    /// The inverter's board gives nothing.
    DriveDead,
    /// Valves leak back, or the cylinder is worn.
    ValvesWorn,
    /// The capillary or the drier passes too little.
    CapillaryNarrow,
    /// Part of the gas has leaked out.
    ChargeLow,
    /// All of it has, or nearly.
    ChargeGone,
    /// Water in the circuit freezes at the capillary's end.
    Moisture,
    /// Too much was filled in, or air came with it.
    WrongCharge,
    /// The evaporator's fan stands or crawls.
    BlowerStopped,
    /// The defrost never begins; frost has grown meanwhile.
    NeverDefrosts,
    /// Heater, its thermostat or its fuse is open; frost has grown meanwhile.
    HeaterOpen,
    /// The drain is blocked, or frost was left to grow.
    IcedUp,
    /// The condenser is matted or boxed in.
    CondenserMatted,
    /// The condenser's fan stands or crawls.
    RoomFanStopped,
    /// Gasket or lid leaks.
    SealLeaks,
    /// The damper stays shut.
    DamperShut,
    /// Lamp or a heater stays on inside.
    LampOn,
    /// A hot room, or a warm load.
    TooMuchAsked,
}

impl Ailment {
    /// Changes what is built. The severity lies between 0 and 1.
    pub(super) fn afflict(self, severity: f64, build: &mut Build) {
        let severity = severity.clamp(0.0, 1.0);
        self.afflict_supply(severity, build);
        self.afflict_compressor(severity, build);
        self.afflict_circuit(severity, build);
        self.afflict_cabinet(severity, build);
    }

    fn afflict_supply(self, severity: f64, build: &mut Build) {
        let supply = &mut build.supply;
        match self {
            Self::CordOpen => build.traces.push(Trace::CordOpen),
            Self::ThinSupply => {
                // 230 V machines draw half the current: it takes four times the ohms.
                let share = supply.volts.get() / 115.0;
                supply.extension = Ohms::new(between(0.8, 5.0, severity) * share * share);
            }
            Self::TouchyDevice => {
                if let Some(device) = &mut supply.ground_fault_device {
                    device.trips_at = device.trips_at * between(0.07, 0.01, severity);
                }
            }
            Self::WiringLeaks => {
                let ohms = Ohms::new(between_log(500.0, 40e3, 1.0 - severity));
                if build.blueprint.is_frost_free() && build.halves {
                    supply.leaks.switched = Some(ohms);
                } else {
                    supply.leaks.standing = Some(ohms);
                }
            }
            _ => {}
        }
    }

    fn afflict_compressor(self, severity: f64, build: &mut Build) {
        // Up to what its own start device can't turn and a kit's capacitor can, and beyond.
        let tight = torque(build.blueprint.mains, between(0.7, 2.5, severity));
        let parts = &mut build.compressor;
        match self {
            Self::ProtectorOpen => parts.protector.fault = ProtectorFault::Open,
            Self::ProtectorWeak => {
                parts.protector.opens = Celsius::new(between(88.0, 66.0, severity));
                parts.protector.closes = Celsius::new(between(60.0, 50.0, severity));
            }
            Self::ConnectorBurnt => build.traces.push(Trace::ConnectorOpen),
            Self::InnerProtectorOpen => {
                parts.protector.place = Place::Windings;
                parts.protector.fault = ProtectorFault::Open;
            }
            Self::MainWindingOpen => parts.motor.main.is_open = true,
            Self::StartWindingOpen => parts.motor.start.is_open = true,
            Self::TurnsShorted => {
                parts.motor.main.shorted_share = Ratio::new(between(0.05, 0.5, severity));
            }
            Self::WindingLeaks => {
                let ohms = between_log(200.0, 60e3, 1.0 - severity);
                parts.motor.main.leak_to_shell = Some(Ohms::new(ohms));
                build.inverter.winding.leak_to_shell = Some(Ohms::new(ohms));
            }
            Self::RotorTight => {
                parts.rotor.sticking = tight;
                // On its film it has a tenth of that.
                parts.rotor.dry_friction = parts.rotor.dry_friction + tight * 0.1;
            }
            Self::RotorSeized => {
                parts.rotor.dry_friction = quantity::NewtonMetres::new(50.0);
            }
            Self::StartDeviceOpen | Self::StartDeviceWeak | Self::StartDeviceStaysIn => {
                self.afflict_start_device(severity, build);
            }
            Self::CapacitorWeak | Self::CapacitorShorted => {
                let capacitors = parts.gear.branches.iter_mut();
                for capacitor in capacitors.filter_map(|branch| branch.capacitor.as_mut()) {
                    if self == Self::CapacitorShorted {
                        capacitor.short = true;
                        continue;
                    }
                    let left = (1.0 - severity * 1.4).max(0.0);
                    capacitor.capacitance = capacitor.capacitance * left;
                }
            }
            Self::PhaseOpen => build.inverter.open_phase = Some(1),
            Self::DriveDead => build.inverter.board.fault = BoardFault::Dead,
            _ => {}
        }
    }

    fn afflict_start_device(self, severity: f64, build: &mut Build) {
        for branch in &mut build.compressor.gear.branches {
            match (&mut branch.switch, self) {
                (Switch::Ptc(ptc), Self::StartDeviceOpen) => {
                    ptc.area_left = Ratio::new(0.0);
                    if build.halves {
                        build.traces.push(Trace::StartDeviceRattles);
                    }
                }
                (Switch::Ptc(ptc), Self::StartDeviceWeak) => {
                    ptc.area_left = Ratio::new(between(0.6, 0.15, severity));
                }
                (Switch::Ptc(ptc), _) => {
                    ptc.short = Some(Ohms::new(between_log(0.3, 60.0, 1.0 - severity)));
                }
                (Switch::CurrentRelay(relay), Self::StartDeviceOpen) => {
                    relay.contact = Contact::NeverCloses;
                }
                (Switch::CurrentRelay(relay), Self::StartDeviceWeak) => {
                    relay.pick_up = Amps::new(relay.pick_up.get() * between(1.2, 2.0, severity));
                }
                (Switch::CurrentRelay(relay), _) => relay.contact = Contact::Welded,
                _ => {}
            }
        }
    }

    fn afflict_circuit(self, severity: f64, build: &mut Build) {
        let circuit = &mut build.appliance.circuit;
        let (fault, severity) = match self {
            Self::ValvesWorn if build.halves => (CircuitFault::LeakingValves, severity),
            Self::ValvesWorn => (CircuitFault::WornPump, between(0.4, 1.0, severity)),
            Self::CapillaryNarrow if build.halves => {
                (CircuitFault::CloggedDrier, between(0.8, 1.0, severity))
            }
            Self::CapillaryNarrow => (CircuitFault::NarrowCapillary, between(0.3, 1.0, severity)),
            Self::ChargeLow => (CircuitFault::Leak, between(0.2, 0.8, severity)),
            Self::ChargeGone => (CircuitFault::Leak, between(0.92, 1.0, severity)),
            Self::Moisture => (CircuitFault::Moisture, between(0.3, 1.0, severity)),
            Self::WrongCharge if build.halves => (CircuitFault::Air, severity),
            Self::WrongCharge => (CircuitFault::Overcharge, between(0.2, 1.0, severity)),
            _ => return,
        };
        *circuit = fault.in_circuit(*circuit, Ratio::new(severity));
        if matches!(self, Self::ChargeLow | Self::ChargeGone) {
            build.traces.push(Trace::of_leak(build.draw));
        }
    }

    fn afflict_cabinet(self, severity: f64, build: &mut Build) {
        let frost_free = build.blueprint.is_frost_free();
        let (fault, degree) = match self {
            Self::SetOff => return build.traces.push(Trace::SetOff),
            Self::BoardDead => return build.traces.push(Trace::BoardDead),
            Self::ThermostatOpen => (CabinetFault::ThermostatOpen, 1.0),
            Self::ThermostatStuck => (CabinetFault::ThermostatStuck, 1.0),
            Self::BlowerStopped => (CabinetFault::Blower, between(0.7, 1.0, severity)),
            Self::NeverDefrosts => (CabinetFault::Timer, 1.0),
            Self::HeaterOpen => (build.heater_fault(), 1.0),
            Self::IcedUp if frost_free => (CabinetFault::Drain, 1.0),
            Self::CondenserMatted => (CabinetFault::DirtyCondenser, between(0.5, 1.0, severity)),
            Self::RoomFanStopped => (CabinetFault::RoomFan, between(0.6, 1.0, severity)),
            Self::SealLeaks if build.halves => {
                (CabinetFault::DoorAjar, between(0.1, 0.6, severity))
            }
            Self::SealLeaks => (CabinetFault::Gasket, between(0.3, 1.0, severity)),
            Self::DamperShut => (CabinetFault::DamperShut, 1.0),
            Self::LampOn => (CabinetFault::Lamp, between(0.5, 1.0, severity)),
            _ => {
                self.ask_much(severity, build);
                return;
            }
        };
        build.afflict_cabinet(fault, degree);
        if matches!(self, Self::NeverDefrosts | Self::HeaterOpen | Self::IcedUp) {
            build.frost = Ratio::new(between(0.6, 1.0, severity));
        }
    }

    /// What is asked of the machine, and what frost was left on it.
    fn ask_much(self, severity: f64, build: &mut Build) {
        let cabinet = &mut build.appliance.cabinet;
        match self {
            Self::SensorOff => {
                let off = KelvinDelta::new(between(-8.0, -30.0, severity));
                cabinet.thermostat.drift = cabinet.thermostat.drift + off;
            }
            Self::ColdRoom => cabinet.room = Celsius::new(between(12.0, 2.0, severity)),
            Self::TooMuchAsked if build.halves => {
                cabinet.room = Celsius::new(between(33.0, 43.0, severity));
            }
            Self::TooMuchAsked => {
                build.warm_load = Kilograms::new(between(10.0, 60.0, severity));
            }
            Self::StuckInDefrost => {
                if let Some(defrost) = &mut cabinet.defrost {
                    defrost.timer.advances = false;
                }
                build.traces.push(Trace::StandsInDefrost);
            }
            Self::IcedUp => build.frost = Ratio::new(between(0.3, 1.0, severity)),
            _ => {}
        }
    }
}

/// From one end at severity 0 to the other at 1.
pub(super) fn between(least: f64, most: f64, severity: f64) -> f64 {
    least + (most - least) * severity
}

/// The same in equal ratios.
fn between_log(least: f64, most: f64, share: f64) -> f64 {
    least * libm::pow(most / least, share)
}

/// A share of what the motor gives at rest with its start device sound.
fn torque(mains: Mains, share: f64) -> quantity::NewtonMetres {
    let example = match mains {
        Mains::V115F60 => 0.40,
        Mains::V230F50 => 0.48,
    };
    quantity::NewtonMetres::new(example * share)
}
