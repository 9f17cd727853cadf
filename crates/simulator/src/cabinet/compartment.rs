//! A compartment, its door and what lies in it.
//!
//! Answers: how much heat does it hold, how warm is food that holds so much? Must never know:
//! what cools it.

use crate::ParameterError;
use crate::error::within;
use quantity::{CubicMetres, JoulesPerKelvin, Kilograms, Ratio, WattsPerKelvin};

/// One room behind a door or lid.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Compartment {
    /// Inner volume, 5 … 1000 litres.
    pub volume: CubicMetres,
    /// Air and linings, which follow within minutes: 200 J/K … 100 kJ/K.
    pub air: JoulesPerKelvin,
    /// The depth of the wall, which follows within an hour: 500 J/K … 500 kJ/K.
    pub wall: JoulesPerKelvin,
    /// Heat through the wall, from the room to the air, 0.05 … 10 W/K.
    pub insulation: WattsPerKelvin,
    /// What lies in it.
    pub contents: Contents,
    /// Its door or lid.
    pub door: Door,
}

/// Food, taken as watery: it freezes from −1 °C downwards.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Contents {
    /// How much, 0.1 … 500 kg.
    pub mass: Kilograms,
    /// Heat between it and the air, 0.1 … 100 W/K.
    pub exchange: WattsPerKelvin,
}

/// A door or lid.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Door {
    /// Openings a day, evenly spread; each changes seven tenths of the air: 0 … 200.
    pub openings: f64,
    /// How far it gapes, from 0, tight, over a torn gasket to 1, left wide ajar.
    pub gap: Ratio,
}

impl Compartment {
    pub(super) fn checked(&self) -> Result<(), ParameterError> {
        within("compartment.volume", self.volume.get(), 5e-3, 1.0)?;
        within("compartment.air", self.air.get(), 200.0, 1e5)?;
        within("compartment.wall", self.wall.get(), 500.0, 5e5)?;
        within("compartment.insulation", self.insulation.get(), 0.05, 10.0)?;
        within("contents.mass", self.contents.mass.get(), 0.1, 500.0)?;
        within(
            "contents.exchange",
            self.contents.exchange.get(),
            0.1,
            100.0,
        )?;
        within("door.openings", self.door.openings, 0.0, 200.0)?;
        within("door.gap", self.door.gap.get(), 0.0, 1.0)
    }

    /// Cubic metres of air a second that the door lets change places, at so many kelvins between
    /// room and inside. A wide gap changes 5 litres a second at 40 K (from memory).
    pub(super) fn exchange(&self, difference: f64) -> f64 {
        let opened = 0.7 * self.volume.get() * self.door.openings / 86_400.0;
        let draught = libm::sqrt(difference.abs() / 40.0 + 1e-4);
        opened + 5e-3 * self.door.gap.get() * draught
    }
}

/// °C and J/kg above liquid at 0 °C, of food with 70 % of water that freezes from −1 °C on: the
/// share still liquid goes with 1/T, as a dilute solution's does. 3.6 and 2.0 kJ/(kg·K) above and
/// below, 230 kJ/kg to freeze: from memory, of the order of the tables of the ASHRAE Handbook,
/// Refrigeration.
const FOOD: [(f64, f64); 6] = [
    (-40.0, -305_850.0),
    (-20.0, -260_100.0),
    (-10.0, -228_600.0),
    (-5.0, -195_600.0),
    (-2.5, -144_600.0),
    (-1.0, -3_600.0),
];
const WARM_FOOD: f64 = 3600.0;

/// The temperature of food that holds so many J/kg.
pub(crate) fn food_temperature(enthalpy: f64) -> f64 {
    let [.., (top, most)] = FOOD;
    if enthalpy >= most {
        return top + (enthalpy - most) / WARM_FOOD;
    }
    let mut pair = (FOOD[0], FOOD[1]);
    for (&below, &above) in FOOD.iter().zip(&FOOD[1..]) {
        pair = (below, above);
        if enthalpy < above.1 {
            break;
        }
    }
    let (below, above) = pair;
    above.0 - (above.1 - enthalpy) * (above.0 - below.0) / (above.1 - below.1)
}

/// What a kilogram of food holds at a temperature, J/kg.
pub(crate) fn food_enthalpy(celsius: f64) -> f64 {
    let [.., (top, most)] = FOOD;
    if celsius >= top {
        return most + (celsius - top) * WARM_FOOD;
    }
    let mut pair = (FOOD[0], FOOD[1]);
    for (&below, &above) in FOOD.iter().zip(&FOOD[1..]) {
        pair = (below, above);
        if celsius < above.0 {
            break;
        }
    }
    let (below, above) = pair;
    above.1 - (above.0 - celsius) * (above.1 - below.1) / (above.0 - below.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn foods_heat_and_temperature_undo_each_other() {
        for tenth in -450..300 {
            let celsius = f64::from(tenth) / 10.0;
            let back = food_temperature(food_enthalpy(celsius));
            assert!((back - celsius).abs() < 1e-9, "{celsius} {back}");
        }
    }

    /// Each row is 2.0 kJ/(kg·K) and the ice that the law of dilute solutions gives.
    #[test]
    fn the_rows_follow_from_what_they_are_said_to() {
        for (celsius, enthalpy) in FOOD {
            let ice = 1.0 + 1.0 / celsius;
            let derived = -3600.0 + 2000.0 * (celsius + 1.0) - 230e3 * ice;
            assert!((derived - enthalpy).abs() < 1.0, "{celsius}: {derived}");
        }
    }

    #[test]
    fn a_gap_lets_more_in_and_nothing_comes_through_a_tight_door() {
        let mut it = Compartment {
            volume: CubicMetres::new(0.2),
            air: JoulesPerKelvin::new(2e3),
            wall: JoulesPerKelvin::new(2e4),
            insulation: WattsPerKelvin::new(1.0),
            contents: Contents {
                mass: Kilograms::new(1.0),
                exchange: WattsPerKelvin::new(1.0),
            },
            door: Door {
                openings: 0.0,
                gap: Ratio::new(0.0),
            },
        };
        assert!(it.exchange(40.0).abs() < 1e-15);
        it.door.gap = Ratio::new(0.1);
        let torn = it.exchange(40.0);
        it.door.gap = Ratio::new(1.0);
        assert!(torn > 0.0 && it.exchange(40.0) > torn);
    }
}
