//! What turns a machine's pump: a motor on the mains, or an inverter's.
//!
//! Answers: which of the two, and what of it is heard? Must never know: what is wrong with it.

use quantity::{Hertz, Watts};

use super::plugged::{Event, PluggedCompressor, around};
use crate::Chance;
use crate::appliance::{Demand, Drive, Turning};
use crate::inverter::InverterCompressor;
use crate::supply::Supply;

/// The speed that a board asks for in a warm cabinet, turns a second. Such machines run at 25 to
/// 70 (common practice).
const SPEED: Hertz = Hertz::new(50.0);

/// An inverter's board and motor with the outlet that they hang on. It makes no noise that tells
/// one try from another.
#[derive(Debug, Clone)]
pub struct PluggedInverter {
    compressor: InverterCompressor,
    supply: Supply,
    chance: Chance,
}

impl PluggedInverter {
    /// Plugs it in.
    #[must_use]
    pub const fn new(compressor: InverterCompressor, supply: Supply, chance: Chance) -> Self {
        Self {
            compressor,
            supply,
            chance,
        }
    }
}

impl Drive for PluggedInverter {
    fn step(&mut self, demand: &Demand) -> Turning {
        let around = around(demand);
        let asked = demand.calls.then_some(SPEED);
        let passed =
            self.compressor
                .advance(demand.step, asked, &self.supply, &around, &mut self.chance);
        // As with a motor on the mains: what an extreme moment leaves over is a still step.
        let Ok(period) = passed else {
            return Turning::default();
        };
        let speed = self.compressor.speed();
        let lasted = period.lasted.get().max(1e-9);
        let gas = period.energy.gas.get() / lasted;
        Turning {
            speed,
            watts: period.watts,
            heat: Watts::new((period.watts.get() - gas).max(0.0)),
            refused: demand.calls && speed.get() <= 0.0,
        }
    }
}

/// What turns the pump.
#[derive(Debug, Clone)]
pub enum Turner {
    /// A motor on the mains.
    Mains(Box<PluggedCompressor>),
    /// An inverter's.
    Inverter(Box<PluggedInverter>),
}

impl Turner {
    /// What was heard of it; nothing of an inverter.
    #[must_use]
    pub fn events(&self) -> &[Event] {
        match self {
            Self::Mains(plugged) => plugged.events(),
            Self::Inverter(_) => &[],
        }
    }

    /// Whether the outlet's device has gone.
    #[must_use]
    pub fn outlet_is_dead(&self) -> bool {
        match self {
            Self::Mains(plugged) => plugged.outlet_is_dead(),
            Self::Inverter(plugged) => plugged.compressor.guard_is_tripped(),
        }
    }

    /// Switches what leaks only while something is on, a heater say.
    pub fn switch_leaks(&mut self, is_on: bool) {
        match self {
            Self::Mains(plugged) => plugged.switch_leaks(is_on),
            Self::Inverter(plugged) => plugged.supply.switched_on = is_on,
        }
    }
}

impl Drive for Turner {
    fn step(&mut self, demand: &Demand) -> Turning {
        match self {
            Self::Mains(plugged) => plugged.step(demand),
            Self::Inverter(plugged) => plugged.step(demand),
        }
    }
}
