//! Saturation pressure and temperature.
//!
//! W. Wagner's equation (Cryogenics 13 (1973) 470):
//! ln(p/p_c) = T_c/T·Σ aᵢ·(1 − T/T_c)^eᵢ with the exponents 1, 1.5, 2.5 and 5. Critical points
//! and coefficients were fitted to CoolProp 8.0.0 by `tests/reference/refrigerant_saturation.py`;
//! off by 0.02 % of the pressure at most.

use quantity::{Celsius, Pascals, Uncertain};

use super::atmosphere::STANDARD_ATMOSPHERE;
use super::kind::Refrigerant;

/// From where to where the curves hold.
pub const SATURATION_RANGE: [Celsius; 2] = [Celsius::new(-50.0), Celsius::new(70.0)];

/// Why there is no pressure or temperature of saturation.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum SaturationError {
    /// Which refrigerant it is isn't known, so its pressures aren't.
    UnknownRefrigerant,
    /// The temperature lies outside of [`SATURATION_RANGE`], or is no number.
    Temperature {
        /// The lowest and the highest.
        range: [Celsius; 2],
    },
    /// The pressure lies outside of what belongs to [`SATURATION_RANGE`], or is no number.
    Pressure {
        /// The lowest and the highest, above vacuum.
        range: [Pascals; 2],
    },
}

const ZERO: f64 = 273.15;

/// The constants of one refrigerant.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Curve {
    /// In K.
    critical: f64,
    /// In Pa.
    highest: f64,
    coefficients: [f64; 4],
}

const fn curve(critical: f64, highest: f64, coefficients: [f64; 4]) -> Curve {
    Curve {
        critical,
        highest,
        coefficients,
    }
}

impl Curve {
    const R12: Self = curve(
        385.12,
        4_136_200.0,
        [-6.920688, 1.631713, -1.76255, -2.511154],
    );
    const R22: Self = curve(
        369.295,
        4_990_000.0,
        [-7.051076, 1.488219, -1.82687, -2.830325],
    );
    const R134A: Self = curve(
        374.212,
        4_059_300.0,
        [-7.633474, 1.744129, -2.569375, -3.482553],
    );
    const R600A: Self = curve(
        407.81,
        3_629_000.0,
        [-6.884269, 1.493657, -1.646421, -2.738307],
    );
    const R290: Self = curve(
        369.89,
        4_251_200.0,
        [-6.750202, 1.502825, -1.486722, -2.314817],
    );

    const fn of(refrigerant: Refrigerant) -> Result<Self, SaturationError> {
        match refrigerant {
            Refrigerant::R12 => Ok(Self::R12),
            Refrigerant::R22 => Ok(Self::R22),
            Refrigerant::R134a => Ok(Self::R134A),
            Refrigerant::R600a => Ok(Self::R600A),
            Refrigerant::R290 => Ok(Self::R290),
            Refrigerant::Other => Err(SaturationError::UnknownRefrigerant),
        }
    }

    /// ln(p in Pa) and its slope per kelvin.
    fn log_pressure(&self, celsius: f64) -> (f64, f64) {
        let kelvin = celsius + ZERO;
        let missing = 1.0 - kelvin / self.critical;
        let root = libm::sqrt(missing);
        let [a, b, c, d] = self.coefficients;
        let sum = missing
            * (a + b * root + c * missing * root + d * missing * missing * missing * missing);
        let slope = a
            + 1.5 * b * root
            + 2.5 * c * missing * root
            + 5.0 * d * missing * missing * missing * missing;
        let logarithm = libm::log(self.highest) + self.critical / kelvin * sum;
        // d/dT of T_c/T·Σ: the sum's own slope is −Σ′/T_c.
        let per_kelvin = -self.critical / (kelvin * kelvin) * sum - slope / kelvin;
        (logarithm, per_kelvin)
    }

    fn pressure(&self, celsius: f64) -> f64 {
        libm::exp(self.log_pressure(celsius).0)
    }

    /// ln p is nearly straight over 1/T and rises throughout, so that Newton's steps from the
    /// middle settle within a few.
    fn celsius(&self, pressure: f64) -> f64 {
        let sought = libm::log(pressure);
        let [least, most] = SATURATION_RANGE.map(Celsius::get);
        let mut celsius = 10.0;
        for _ in 0..20 {
            let (logarithm, per_kelvin) = self.log_pressure(celsius);
            let step = (sought - logarithm) / per_kelvin;
            celsius = (celsius + step).clamp(least, most);
            if step.abs() < 1e-10 {
                break;
            }
        }
        celsius
    }
}

impl Refrigerant {
    /// The pressure above vacuum at which it boils or condenses at this temperature, −50…+70 °C.
    ///
    /// # Errors
    /// [`SaturationError`]: an unknown refrigerant, or a temperature out of range.
    ///
    /// ```
    /// use measure::refrigerant::{Refrigerant, STANDARD_ATMOSPHERE};
    /// use quantity::Celsius;
    /// let low = Refrigerant::R600a.saturation_pressure(Celsius::new(-25.0)).unwrap();
    /// assert!((low.get() / 58_400.0 - 1.0).abs() < 0.003);
    /// assert!(low.gauge(STANDARD_ATMOSPHERE).get() < 0.0);
    /// ```
    pub fn saturation_pressure(self, at: Celsius) -> Result<Pascals, SaturationError> {
        let curve = Curve::of(self)?;
        if !within(at.get(), SATURATION_RANGE.map(Celsius::get)) {
            return Err(SaturationError::Temperature {
                range: SATURATION_RANGE,
            });
        }
        Ok(Pascals::new(curve.pressure(at.get())))
    }

    /// The temperature at which it boils or condenses under this pressure above vacuum.
    ///
    /// # Errors
    /// [`SaturationError`]: an unknown refrigerant, or a pressure out of range.
    ///
    /// ```
    /// use measure::refrigerant::{Refrigerant, STANDARD_ATMOSPHERE};
    /// use quantity::GaugePascals;
    /// let shown = GaugePascals::new(1_058_600.0);
    /// let at = Refrigerant::R134a.saturation_temperature(shown.absolute(STANDARD_ATMOSPHERE));
    /// assert!((at.unwrap().get() - 45.0).abs() < 0.1);
    /// ```
    pub fn saturation_temperature(self, under: Pascals) -> Result<Celsius, SaturationError> {
        let curve = Curve::of(self)?;
        let range = SATURATION_RANGE.map(|end| curve.pressure(end.get()));
        if !within(under.get(), range) {
            return Err(SaturationError::Pressure {
                range: range.map(Pascals::new),
            });
        }
        Ok(Celsius::new(curve.celsius(under.get())))
    }

    /// The same of a temperature with its uncertainty, which goes into the pressure to first
    /// order: 3 to 5 % for each kelvin. The curve's own error is far below that and left out.
    ///
    /// # Errors
    /// As [`Self::saturation_pressure`].
    pub fn saturation_pressure_of(
        self,
        at: &Uncertain<Celsius>,
    ) -> Result<Uncertain<Pascals>, SaturationError> {
        let pressure = self.saturation_pressure(at.value())?;
        let (_, per_kelvin) = Curve::of(self)?.log_pressure(at.value().get());
        let slope = pressure.get() * per_kelvin;
        Ok(Uncertain::following(pressure, (at, slope), (at, 0.0)))
    }

    /// Where it boils in the open, at sea level.
    ///
    /// `None` where it isn't known what it is.
    #[must_use]
    pub fn boiling_point(self) -> Option<Celsius> {
        self.saturation_temperature(STANDARD_ATMOSPHERE).ok()
    }
}

fn within(value: f64, range: [f64; 2]) -> bool {
    (range[0]..=range[1]).contains(&value)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::refrigerant::kind::KNOWN;
    use proptest::prelude::*;
    use quantity::Sources;

    #[test]
    fn the_constants_are_those_that_were_fitted() {
        const REFERENCE: &str =
            include_str!("../../../../tests/reference/refrigerant_saturation.json");
        let reference: serde_json::Value = serde_json::from_str(REFERENCE).unwrap();
        for refrigerant in KNOWN {
            let curve = Curve::of(refrigerant).unwrap();
            let [a, b, c, d] = curve.coefficients;
            let fitted = &reference["constants"][format!("{refrigerant:?}").as_str()];
            for (place, held) in [
                (0, curve.critical),
                (1, curve.highest),
                (3, a),
                (4, b),
                (5, c),
                (6, d),
            ] {
                assert_eq!(fitted[place].as_f64(), Some(held), "{refrigerant:?}");
            }
        }
    }

    #[test]
    fn outside_of_the_curves_there_is_no_answer() {
        for celsius in [-50.1, 70.1, f64::NAN] {
            let found = Refrigerant::R22.saturation_pressure(Celsius::new(celsius));
            let range = SATURATION_RANGE;
            assert_eq!(found, Err(SaturationError::Temperature { range }));
        }
        for pascals in [-1.0, 0.0, 1e7, f64::NAN] {
            let found = Refrigerant::R22.saturation_temperature(Pascals::new(pascals));
            let outside = matches!(found, Err(SaturationError::Pressure { .. }));
            assert!(outside, "{pascals}: {found:?}");
        }
        let unknown = Refrigerant::Other.saturation_pressure(Celsius::new(0.0));
        assert_eq!(unknown, Err(SaturationError::UnknownRefrigerant));
        assert_eq!(Refrigerant::Other.boiling_point(), None);
    }

    #[test]
    fn the_slope_is_that_of_the_curve() {
        for refrigerant in KNOWN {
            for celsius in [-49.0, -20.0, 15.0, 69.0] {
                let at = |celsius| {
                    let found = refrigerant.saturation_pressure(Celsius::new(celsius));
                    found.unwrap().get()
                };
                let between = (at(celsius + 1e-3) - at(celsius - 1e-3)) / 2e-3;
                let mut sources = Sources::default();
                let one = Uncertain::exact(Celsius::new(celsius))
                    .with(sources.fresh(), Celsius::new(1.0));
                let found = refrigerant.saturation_pressure_of(&one).unwrap();
                assert!((found.standard().get() / between - 1.0).abs() < 1e-6);
            }
        }
    }

    proptest! {
        #[test]
        fn there_and_back_is_the_same_temperature(celsius in -50.0..=70.0f64, which in 0usize..5) {
            let pressure = KNOWN[which].saturation_pressure(Celsius::new(celsius)).unwrap();
            let back = KNOWN[which].saturation_temperature(pressure).unwrap();
            prop_assert!((back.get() - celsius).abs() < 1e-6, "{celsius} became {back:?}");
        }
    }
}
