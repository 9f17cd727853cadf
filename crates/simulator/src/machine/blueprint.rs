//! What machine is built.
//!
//! Answers: which kind, for which mains, with which gas and which start gear? Must never know:
//! what is wrong with it.

use quantity::{Amps, Celsius, Farads, Ohms, Ratio};

use crate::appliance::{self, Kind, Mains};
use crate::compressor;
use crate::start_gear::{Capacitor, StartGear};
use crate::supply::{GroundFaultDevice, Supply};
use crate::{Chance, ParameterError, Refrigerant};

/// What leads to the start winding, or stands in its place.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Gear {
    /// A PTC alone.
    Ptc,
    /// A PTC with a run capacitor across it.
    PtcAndRunCapacitor,
    /// A current relay with a start capacitor.
    CurrentRelay,
    /// A board that feeds three equal windings.
    Inverter,
}

/// What decides when it cools.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Control {
    /// A bulb and contacts.
    Thermostat,
    /// A sensor and a board.
    Board,
}

/// A machine as it left the works.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Blueprint {
    /// Which kind.
    pub kind: Kind,
    /// For which mains.
    pub mains: Mains,
    /// With which gas.
    pub refrigerant: Refrigerant,
    /// How it starts.
    pub gear: Gear,
    /// What decides when it cools.
    pub control: Control,
    /// The room it stands in, 5 to 40 °C.
    pub room: Celsius,
}

/// Microfarads of a run capacitor of a small compressor (one unit of 4 µF is on record, weak).
const RUN_CAPACITOR: f64 = 4.0;
/// Of a start capacitor: within the usual 88 to 200 (common practice, no source).
const START_CAPACITOR: f64 = 150.0;

impl Blueprint {
    /// Draws a machine of a kind: mains half and half; gas, gear and control as they go together.
    /// Shares are this crate's own judgement: no survey is known.
    #[must_use]
    pub fn drawn(kind: Kind, is_inverter: bool, chance: &mut Chance) -> Self {
        let mains = if chance.happens(0.5) {
            Mains::V115F60
        } else {
            Mains::V230F50
        };
        let refrigerant = match chance.share() {
            draw if is_inverter || draw < 0.4 => Refrigerant::R600a,
            draw if draw < 0.9 => Refrigerant::R134a,
            _ => Refrigerant::R290,
        };
        let gear = match chance.share() {
            _ if is_inverter => Gear::Inverter,
            draw if draw < 0.6 => Gear::Ptc,
            draw if draw < 0.85 => Gear::PtcAndRunCapacitor,
            // An open relay doesn't go with gas that burns.
            _ if refrigerant == Refrigerant::R134a && mains == Mains::V115F60 => Gear::CurrentRelay,
            _ => Gear::Ptc,
        };
        let has_fans = matches!(kind, Kind::FrostFree | Kind::FrostFreeOneThermostat);
        let board = if is_inverter {
            1.0
        } else if has_fans {
            0.5
        } else {
            0.15
        };
        Self {
            kind,
            mains,
            refrigerant,
            gear,
            control: if chance.happens(board) {
                Control::Board
            } else {
                Control::Thermostat
            },
            room: Celsius::new(chance.between(16.0, 28.0)),
        }
    }

    /// Microfarads printed on its capacitor, where it has one.
    #[must_use]
    pub const fn capacitor(&self) -> Option<Farads> {
        match self.gear {
            Gear::PtcAndRunCapacitor => Some(Farads::new(RUN_CAPACITOR * 1e-6)),
            Gear::CurrentRelay => Some(Farads::new(START_CAPACITOR * 1e-6)),
            Gear::Ptc | Gear::Inverter => None,
        }
    }

    /// Whether it has an evaporator fan, a defrost heater and a drain.
    #[must_use]
    pub const fn is_frost_free(&self) -> bool {
        matches!(self.kind, Kind::FrostFree | Kind::FrostFreeOneThermostat)
    }

    /// Whether its gas burns.
    #[must_use]
    pub const fn gas_burns(&self) -> bool {
        !matches!(self.refrigerant, Refrigerant::R134a)
    }

    /// The compressor as built: no two windings have just the same ohms.
    pub(super) fn compressor(&self, chance: &mut Chance) -> compressor::Parts {
        let mut parts = match self.mains {
            Mains::V115F60 => compressor::Parts::example_115_volts(),
            Mains::V230F50 => compressor::Parts::example_230_volts(),
        };
        let pellet = match self.mains {
            Mains::V115F60 => 5.0,
            Mains::V230F50 => 15.0,
        };
        // Component tables give cold ohms within a quarter.
        let pellet = Ohms::new(pellet * chance.between(0.8, 1.25));
        parts.gear = match self.gear {
            Gear::Ptc | Gear::Inverter => StartGear::ptc(pellet),
            Gear::PtcAndRunCapacitor => StartGear::ptc(pellet).with_run_capacitor(RUN_CAPACITOR),
            // Between what the main winding draws at rest, 8.5 A, and at speed.
            Gear::CurrentRelay => {
                let currents = (Amps::new(7.6), Amps::new(6.8));
                let capacitor = Capacitor::electrolytic(START_CAPACITOR);
                StartGear::current_relay(currents, Ohms::new(0.3), Some(capacitor))
            }
        };
        let spread = chance.between(0.92, 1.08);
        parts.motor.main.resistance = parts.motor.main.resistance * spread;
        parts.motor.start.resistance =
            parts.motor.start.resistance * (spread * chance.between(0.95, 1.05));
        parts
    }

    /// The rest as built.
    pub(super) fn appliance(
        &self,
        chance: &mut Chance,
    ) -> Result<appliance::Parts, ParameterError> {
        let mut parts = appliance::Parts::example(self.kind, self.mains, self.refrigerant)?;
        parts.cabinet.room = self.room;
        parts.cabinet.humidity = Ratio::new(chance.between(0.35, 0.7));
        parts.circuit.charge = parts.circuit.charge * chance.between(0.95, 1.05);
        let insulation = chance.between(0.9, 1.2);
        let first = &mut parts.cabinet.first.insulation;
        *first = *first * insulation;
        if let Some(second) = &mut parts.cabinet.second {
            second.insulation = second.insulation * insulation;
        }
        // The works choose an opening that keeps the freezer cold beside a satisfied refrigerator.
        if self.kind == Kind::FrostFreeOneThermostat {
            parts.cabinet.damper.fixed = Some(Ratio::new(0.25));
        }
        // Some dust lies on every used condenser.
        parts.cabinet.condenser.dirt = Ratio::new(chance.between(0.0, 0.2));
        Ok(parts)
    }

    /// The outlet of the examination: guarded, of common wiring.
    pub(super) fn outlet(&self, chance: &mut Chance) -> Supply {
        let (hertz, device) = match self.mains {
            Mains::V115F60 => (60.0, GroundFaultDevice::CLASS_A),
            Mains::V230F50 => (50.0, GroundFaultDevice::RESIDUAL_30),
        };
        // ANSI C84.1 range A and the European ±10 % are wider; most outlets are within 4 %.
        let volts = self.mains.volts() * chance.between(0.96, 1.03);
        let mut supply = Supply::outlet(volts, quantity::Hertz::new(hertz));
        supply.ground_fault_device = Some(device);
        supply
    }
}
