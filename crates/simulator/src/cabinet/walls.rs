//! Metal between refrigerant and air, with frost, dust and fans.
//!
//! Answers: how well does heat pass it? Must never know: which way it goes.

use crate::ParameterError;
use crate::error::within;
use quantity::{JoulesPerKelvin, Kilograms, Ratio, Watts, WattsPerKelvin};

/// Metal of the evaporator.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct EvaporatorWall {
    /// All of its metal, 100 J/K … 50 kJ/K.
    pub metal: JoulesPerKelvin,
    /// Heat from still air, without frost, 0.1 … 100 W/K.
    pub still: WattsPerKelvin,
    /// The fan behind it, where there is one.
    pub blower: Option<Blower>,
    /// How frost lies on it.
    pub rime: Rime,
}

/// A fan that drives a compartment's air through the evaporator.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Blower {
    /// Air through clean fins, m³/s: 10⁻³ … 0.1.
    pub flow: f64,
    /// How far the air takes on the evaporator's temperature, 0.1 … 0.95.
    pub exchange: Ratio,
    /// Share of its speed that it reaches, 0 … 1: nought when stuck.
    pub turning: Ratio,
    /// What it draws, 0 … 50 W, all of which warms the air.
    pub power: Watts,
}

/// How frost lies.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rime {
    /// Area it lies on, m²: 0.05 … 10.
    pub area: f64,
    /// Frost that fills the spaces between the fins, 50 g … 20 kg.
    pub fills: Kilograms,
}

/// Conductivity over density of frost: 0.2 W/(m·K) and 250 kg/m³, middle values from memory.
const RIME_CONDUCTIVITY: f64 = 0.2;
const RIME_DENSITY: f64 = 250.0;

impl Rime {
    /// What is left of a conductance under so much frost.
    pub(super) fn through(&self, bare: f64, frost: f64) -> f64 {
        let thickness = frost.max(0.0) / (RIME_DENSITY * self.area);
        bare / (1.0 + bare * thickness / (RIME_CONDUCTIVITY * self.area))
    }

    /// Share of the air that still passes the fins: what is left of the space between them, to
    /// the power of one and a half, from the loss of a narrowed channel. Common practice.
    pub(super) fn passes(&self, frost: f64) -> f64 {
        let space = 1.0 - (frost.max(0.0) / self.fills.get()).min(1.0);
        0.02 + 0.98 * space * libm::sqrt(space)
    }
}

/// Metal of the condenser.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CondenserWall {
    /// All of its metal, 100 J/K … 50 kJ/K.
    pub metal: JoulesPerKelvin,
    /// Heat to still air, when clean, 0.5 … 50 W/K.
    pub still: WattsPerKelvin,
    /// The fan beside it, where there is one.
    pub fan: Option<RoomFan>,
    /// How dirty or boxed in, 0 … 1: at 1 seven tenths of the heat no longer pass.
    pub dirt: Ratio,
    /// Heat into the wall of the first compartment, where it lies in the skin: 0 … 5 W/K.
    pub into_wall: WattsPerKelvin,
}

/// A fan that blows at the condenser and the compressor.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RoomFan {
    /// Heat to the room on top, 0 … 50 W/K.
    pub blown: WattsPerKelvin,
    /// Share of its speed that it reaches, 0 … 1.
    pub turning: Ratio,
    /// What it draws, 0 … 50 W.
    pub power: Watts,
}

impl CondenserWall {
    /// W/K to the room.
    pub(super) fn given_off(&self, fan_is_on: bool) -> f64 {
        let blown = match &self.fan {
            Some(fan) if fan_is_on => fan.blown.get() * fan.turning.get(),
            _ => 0.0,
        };
        (self.still.get() + blown) * (1.0 - 0.7 * self.dirt.get())
    }
}

/// The compressor's shell.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shell {
    /// Steel and copper, 500 J/K … 50 kJ/K.
    pub metal: JoulesPerKelvin,
    /// Heat to the room, 0.2 … 20 W/K.
    pub to_room: WattsPerKelvin,
}

impl EvaporatorWall {
    pub(super) fn checked(&self) -> Result<(), ParameterError> {
        within("evaporator.metal", self.metal.get(), 100.0, 5e4)?;
        within("evaporator.still", self.still.get(), 0.1, 100.0)?;
        within("rime.area", self.rime.area, 0.05, 10.0)?;
        within("rime.fills", self.rime.fills.get(), 0.05, 20.0)?;
        if let Some(blower) = &self.blower {
            within("blower.flow", blower.flow, 1e-3, 0.1)?;
            within("blower.exchange", blower.exchange.get(), 0.1, 0.95)?;
            within("blower.turning", blower.turning.get(), 0.0, 1.0)?;
            within("blower.power", blower.power.get(), 0.0, 50.0)?;
        }
        Ok(())
    }
}

impl CondenserWall {
    pub(super) fn checked(&self) -> Result<(), ParameterError> {
        within("condenser.metal", self.metal.get(), 100.0, 5e4)?;
        within("condenser.still", self.still.get(), 0.5, 50.0)?;
        within("condenser.dirt", self.dirt.get(), 0.0, 1.0)?;
        within("condenser.into_wall", self.into_wall.get(), 0.0, 5.0)?;
        if let Some(fan) = &self.fan {
            within("room_fan.blown", fan.blown.get(), 0.0, 50.0)?;
            within("room_fan.turning", fan.turning.get(), 0.0, 1.0)?;
            within("room_fan.power", fan.power.get(), 0.0, 50.0)?;
        }
        Ok(())
    }
}

impl Shell {
    pub(super) fn checked(&self) -> Result<(), ParameterError> {
        within("shell.metal", self.metal.get(), 500.0, 5e4)?;
        within("shell.to_room", self.to_room.get(), 0.2, 20.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn more_frost_lets_less_heat_and_less_air_through() {
        let rime = Rime {
            area: 0.5,
            fills: Kilograms::new(1.0),
        };
        let mut before = (f64::INFINITY, f64::INFINITY);
        for gram in (0..=1500).step_by(100) {
            let frost = f64::from(gram) / 1000.0;
            let now = (rime.through(10.0, frost), rime.passes(frost));
            assert!(now.0 < before.0 && now.1 <= before.1 && now.1 > 0.0);
            before = now;
        }
        // 250 g on half a square metre are 2 mm: 0.01 m²·K/W and 0.1 K/W of bare metal.
        assert!((rime.through(10.0, 0.25) - 1.0 / (0.1 + 0.02)).abs() < 1e-9);
    }
}
