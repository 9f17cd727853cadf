//! What is around a compressor on the bench.

use quantity::{Celsius, Pascals, WattsPerKelvin};
use simulator::compressor::Surroundings;
use simulator::rotor::Pressures;

/// A room of 25 °C and these pressures, in Pa.
pub(crate) fn around(low: f64, high: f64) -> Surroundings {
    Surroundings {
        room: Celsius::new(25.0),
        pressures: Pressures {
            suction: Pascals::new(low),
            discharge: Pascals::new(high),
        },
        gas_torque: None,
        gas_cooling: WattsPerKelvin::new(0.3),
    }
}
