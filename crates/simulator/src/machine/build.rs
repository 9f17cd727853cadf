//! A machine put together, with what is wrong in it.
//!
//! Answers: of which parts does this very machine consist? Must never know: how it is examined.

use quantity::{Celsius, Kilograms, Ohms, Ratio, Volts};

use super::ailment::Ailment;
use super::blueprint::{Blueprint, Gear};
use super::drive::{PluggedInverter, Turner};
use super::plugged::PluggedCompressor;
use super::traces::Trace;
use crate::appliance::{self, Appliance, Mains};
use crate::cabinet::CabinetFault;
use crate::compressor::{self, Compressor};
use crate::error::within;
use crate::inverter::{InverterCompressor, InverterParts};
use crate::supply::Supply;
use crate::{Chance, ParameterError};

/// Something wrong, and how badly: from 0, barely, to 1, as badly as can be.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Trouble {
    /// What is wrong.
    pub ailment: Ailment,
    /// How badly.
    pub severity: Ratio,
}

/// What a machine is made of while ailments change it.
pub(super) struct Build {
    pub(super) blueprint: Blueprint,
    pub(super) compressor: compressor::Parts,
    pub(super) inverter: InverterParts,
    pub(super) appliance: appliance::Parts,
    pub(super) supply: Supply,
    pub(super) frost: Ratio,
    pub(super) warm_load: Kilograms,
    pub(super) traces: Vec<Trace>,
    /// Which of two ways the same ailment takes.
    pub(super) halves: bool,
    /// A number from 0 to 1 for more than two.
    pub(super) draw: f64,
}

impl Build {
    fn new(blueprint: &Blueprint, chance: &Chance) -> Result<Self, ParameterError> {
        within("blueprint.room", blueprint.room.get(), 5.0, 40.0)?;
        Ok(Self {
            blueprint: *blueprint,
            compressor: blueprint.compressor(&mut chance.fork(1)),
            inverter: match blueprint.mains {
                Mains::V115F60 => InverterParts::example_115_volts(),
                Mains::V230F50 => InverterParts::example_230_volts(),
            },
            appliance: blueprint.appliance(&mut chance.fork(2))?,
            supply: blueprint.outlet(&mut chance.fork(3)),
            frost: Ratio::new(0.0),
            warm_load: Kilograms::new(0.0),
            traces: Vec::new(),
            halves: false,
            draw: 0.0,
        })
    }

    fn afflict(&mut self, trouble: &Trouble, chance: &mut Chance) {
        self.halves = chance.happens(0.5);
        self.draw = chance.share();
        trouble.ailment.afflict(trouble.severity.get(), self);
    }

    pub(super) fn afflict_cabinet(&mut self, fault: CabinetFault, severity: f64) {
        let cabinet = &mut self.appliance.cabinet;
        *cabinet = fault.in_cabinet(*cabinet, Ratio::new(severity));
    }

    /// Which part of the heater's circuit is open.
    pub(super) fn heater_fault(&self) -> CabinetFault {
        match self.draw {
            draw if draw < 1.0 / 3.0 => CabinetFault::Heater,
            draw if draw < 2.0 / 3.0 => CabinetFault::EndingOpen,
            _ => CabinetFault::Fuse,
        }
    }
}

/// One machine, of which it is known what is wrong.
#[derive(Debug, Clone)]
pub struct Machine {
    pub(super) blueprint: Blueprint,
    pub(super) troubles: Vec<Trouble>,
    /// What turns the pump, unless it is an inverter's.
    pub(super) compressor: Compressor,
    /// What turns it then.
    pub(super) inverter: InverterCompressor,
    pub(super) appliance: appliance::Parts,
    pub(super) supply: Supply,
    pub(super) traces: Vec<Trace>,
    frost: Ratio,
    warm_load: Kilograms,
    chance: Chance,
}

impl Machine {
    /// What it is made of, without what it is called: for comparing two of them.
    #[cfg(test)]
    pub(super) fn without_its_name(&self) -> String {
        let troubles = Vec::new();
        let nameless = Self {
            troubles,
            ..self.clone()
        };
        format!("{nameless:?}")
    }

    /// Builds a machine with what is wrong in it. What its kind can't have is left out.
    ///
    /// ```
    /// use quantity::Ratio;
    /// use simulator::{Chance, appliance::Kind};
    /// use simulator::machine::{Ailment, Blueprint, Machine, Trouble};
    /// let chance = Chance::new(1);
    /// let blueprint = Blueprint::drawn(Kind::ChestFreezer, false, &mut chance.fork(0));
    /// let seized = Trouble { ailment: Ailment::RotorSeized, severity: Ratio::new(1.0) };
    /// let machine = Machine::build(&blueprint, &[seized], chance)?;
    /// let session = machine.plug_in(quantity::Seconds::new(900.0))?;
    /// assert!(!session.has_run());
    /// # Ok::<(), simulator::ParameterError>(())
    /// ```
    ///
    /// # Errors
    /// [`ParameterError`] names the first parameter out of its bounds.
    pub fn build(
        blueprint: &Blueprint,
        troubles: &[Trouble],
        chance: Chance,
    ) -> Result<Self, ParameterError> {
        let mut build = Build::new(blueprint, &chance)?;
        let possible = |trouble: &&Trouble| trouble.ailment.exists_in(blueprint);
        let troubles: Vec<Trouble> = troubles.iter().filter(possible).copied().collect();
        for (place, trouble) in troubles.iter().enumerate() {
            within("trouble.severity", trouble.severity.get(), 0.0, 1.0)?;
            build.afflict(trouble, &mut chance.fork(10 + place as u64));
        }
        if build.supply.leaks.standing.is_none() {
            build.supply.leaks.standing = Some(SOUND_LEAK);
        }
        // One cylinder for motor and circuit.
        let displacement = build.appliance.circuit.pump.displacement;
        build.compressor.rotor.displacement = displacement;
        build.inverter.rotor.displacement = displacement;
        build.appliance.checked()?;
        let room = build.appliance.cabinet.room;
        Ok(Self {
            blueprint: *blueprint,
            troubles,
            compressor: Compressor::new(build.compressor)?.rested(room)?,
            inverter: InverterCompressor::new(build.inverter)?.rested(room)?,
            appliance: build.appliance,
            supply: build.supply,
            traces: build.traces,
            frost: build.frost,
            warm_load: build.warm_load,
            chance: chance.fork(4),
        })
    }

    /// Which machine it is.
    #[must_use]
    pub const fn blueprint(&self) -> &Blueprint {
        &self.blueprint
    }

    /// What is wrong with it.
    #[must_use]
    pub fn troubles(&self) -> &[Trouble] {
        &self.troubles
    }

    /// The room it stands in.
    #[must_use]
    pub const fn room(&self) -> Celsius {
        self.appliance.cabinet.room
    }

    /// The same machine with all frost thawed.
    #[must_use]
    pub const fn thawed(mut self) -> Self {
        self.frost = Ratio::new(0.0);
        self
    }

    /// Volts of its outlet with nothing on.
    #[must_use]
    pub const fn volts_at_rest(&self) -> Volts {
        self.supply.volts
    }

    pub(super) fn has(&self, trace: Trace) -> bool {
        self.traces.contains(&trace)
    }

    pub(super) const fn frost(&self) -> Ratio {
        self.frost
    }

    /// Whether current gets as far as the compressor's pins when it is called for.
    pub(super) fn is_called(&self) -> bool {
        let broken = [
            Trace::CordOpen,
            Trace::ConnectorOpen,
            Trace::SetOff,
            Trace::BoardDead,
        ];
        !broken.iter().any(|trace| self.has(*trace))
    }

    /// It, rested and warm inside, on an outlet with other start gear or another supply, perhaps.
    pub(super) fn plugged(
        &self,
        compressor: Compressor,
        supply: Supply,
        crank: u64,
    ) -> Result<Appliance<Turner>, ParameterError> {
        let chance = self.chance.fork(crank);
        let turner = if self.blueprint.gear == Gear::Inverter {
            let inverter = self.inverter.clone();
            Turner::Inverter(Box::new(PluggedInverter::new(inverter, supply, chance)))
        } else {
            Turner::Mains(Box::new(PluggedCompressor::new(compressor, supply, chance)))
        };
        let mut parts = self.appliance;
        if !self.is_called() {
            parts.cabinet.thermostat.contacts = crate::cabinet::Contacts::StuckOpen;
        }
        let mut appliance = Appliance::with_drive(parts, turner)?.rested();
        appliance.grow_frost(self.frost);
        if self.warm_load.get() > 0.0 {
            appliance.load(self.warm_load, self.room())?;
        }
        if self.has(Trace::StandsInDefrost) {
            appliance.begin_defrost();
        }
        Ok(appliance)
    }
}

/// What alternating current finds from a sound machine's wires to its metal: some nanofarads of
/// filter and windings, a few tenths of a milliampere (order of magnitude from memory).
pub(super) const SOUND_LEAK: Ohms = Ohms::new(300e3);
