//! Refrigerants: pressure, density and heat of saturated liquid and vapour.
//!
//! Answers: at which pressure does it boil at this temperature, how dense is it, what does a
//! kilogram take up? Valid for −50 … +80 °C; outside, curves go on along their tangents.
//!
//! Must never know: pipes, pumps or machines.

mod properties;

use properties::Properties;

use quantity::{Celsius, Pascals};

const ZERO_CELSIUS: f64 = 273.15;

/// Molar gas constant, exact in the SI of 2019, J/(mol·K).
const GAS_CONSTANT: f64 = 8.314_462_618_153_24;

/// What circulates in the pipes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Refrigerant {
    /// Tetrafluoroethane.
    R134a,
    /// Isobutane.
    R600a,
    /// Propane.
    R290,
}

impl Refrigerant {
    /// Each of them.
    pub const ALL: [Self; 3] = [Self::R134a, Self::R600a, Self::R290];

    const fn properties(self) -> &'static Properties {
        match self {
            Self::R134a => &properties::R134A,
            Self::R600a => &properties::R600A,
            Self::R290 => &properties::R290,
        }
    }

    /// The pressure at which it boils at a temperature.
    ///
    /// ```
    /// use quantity::Celsius;
    /// use simulator::Refrigerant;
    /// // The normal boiling point of isobutane, −11.75 °C by CoolProp.
    /// let pressure = Refrigerant::R600a.saturation_pressure(Celsius::new(-11.75)).get();
    /// assert!((pressure / 101_325.0 - 1.0).abs() < 1e-3);
    /// ```
    #[must_use]
    pub fn saturation_pressure(self, temperature: Celsius) -> Pascals {
        let inverse = 1000.0 / (temperature.get() + ZERO_CELSIUS);
        Pascals::new(libm::exp(
            self.properties().pressure_of_temperature.at(inverse),
        ))
    }

    /// The temperature at which it boils at a pressure above 0.
    #[must_use]
    pub fn saturation_temperature(self, pressure: Pascals) -> Celsius {
        Celsius::new(self.boils_at(libm::log(pressure.get())))
    }

    /// Density of saturated liquid in kg/m³.
    #[must_use]
    pub fn liquid_density(self, temperature: Celsius) -> f64 {
        self.properties().liquid_density.at(temperature.get())
    }

    /// Density of saturated vapour in kg/m³.
    #[must_use]
    pub fn vapour_density(self, temperature: Celsius) -> f64 {
        let pressure = libm::log(self.saturation_pressure(temperature).get());
        libm::exp(self.properties().vapour_of_pressure.at(pressure))
            / (temperature.get() + ZERO_CELSIUS)
    }

    /// What a kilogram takes up as it boils, J/kg.
    #[must_use]
    pub fn latent_heat(self, temperature: Celsius) -> f64 {
        self.properties().latent_heat.at(temperature.get())
    }

    /// Enthalpy of saturated liquid above that of liquid at 0 °C, J/kg.
    #[must_use]
    pub fn liquid_enthalpy(self, temperature: Celsius) -> f64 {
        self.properties().liquid_enthalpy.at(temperature.get())
    }

    /// The gas constant of one kilogram of it, J/(kg·K).
    #[must_use]
    pub fn gas_constant(self) -> f64 {
        GAS_CONSTANT / self.properties().molar_mass
    }

    /// Mean heat capacity of its cold vapour, J/(kg·K).
    #[must_use]
    pub fn vapour_heat(self) -> f64 {
        self.properties().vapour_heat
    }

    /// The isentropic exponent of its vapour in a freezer's compressor.
    #[must_use]
    pub fn isentropic_exponent(self) -> f64 {
        self.properties().exponent
    }

    /// °C at which it boils, by the logarithm of pascals.
    pub(crate) fn boils_at(self, log_pressure: f64) -> f64 {
        // A tangent on the reciprocal would cross 0 far out in vacuum; the floor is 33 K.
        let inverse = self.properties().temperature_of_pressure.at(log_pressure);
        1000.0 / inverse.clamp(2.0, 30.0) - ZERO_CELSIUS
    }

    /// Pascals of so much vapour in a room, by its kg·K/m³. Below saturation the density goes
    /// with 1/T at equal pressure, as that of an ideal gas.
    pub(crate) fn vapour_pressure(self, density_times_kelvin: f64) -> f64 {
        let dense = libm::log(density_times_kelvin.max(1e-9));
        libm::exp(self.properties().pressure_of_vapour.at(dense))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_curves_undo_each_other() {
        for refrigerant in Refrigerant::ALL {
            for celsius in -50..=80 {
                let temperature = Celsius::new(f64::from(celsius));
                let pressure = refrigerant.saturation_pressure(temperature);
                let back = refrigerant.saturation_temperature(pressure);
                assert!((back - temperature).get().abs() < 0.01, "{back:?}");
                let dense = refrigerant.vapour_density(temperature) * (temperature.get() + 273.15);
                let again = refrigerant.vapour_pressure(dense);
                assert!((again / pressure.get() - 1.0).abs() < 1e-3, "{celsius}");
            }
        }
    }

    #[test]
    fn a_deep_vacuum_has_a_temperature_below_the_fit() {
        for refrigerant in Refrigerant::ALL {
            let deep = refrigerant.saturation_temperature(Pascals::new(500.0));
            assert!(deep.get() < -70.0 && deep.get() > -200.0, "{deep:?}");
        }
    }
}
