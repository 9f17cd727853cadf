//! What a refrigerant does at a temperature or under a pressure, and in a room, as typed.

use measure::refrigerant::{InAir, Refrigerant, STANDARD_ATMOSPHERE, SaturationError};
use quantity::{
    Celsius, CubicMetres, GaugePascals, Kilograms, Observed, Pascals, parse_decimal, parse_reading,
};
use wording::Degrees;

/// In which unit pressures are told, by the reader's scale of temperatures.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PressureUnit {
    /// bar
    Bar,
    /// pounds-force a square inch
    Psi,
}

impl PressureUnit {
    /// Who reads degrees Fahrenheit reads psi.
    #[must_use]
    pub const fn of(degrees: Degrees) -> Self {
        match degrees {
            Degrees::Celsius => Self::Bar,
            Degrees::Fahrenheit => Self::Psi,
        }
    }

    /// In pascals. A pound-force a square inch is 4.4482216152605 N over 6.4516 cm², both exact
    /// by definition.
    #[must_use]
    pub const fn pascals(self) -> f64 {
        match self {
            Self::Bar => 100_000.0,
            Self::Psi => 4.448_221_615_260_5 / 6.451_6e-4,
        }
    }
}

/// From what a pressure is counted.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CountedFrom {
    /// As a gauge does: from the air around.
    Air,
    /// Absolute.
    Vacuum,
}

/// Why nothing is told.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum NotTold {
    /// Nothing was typed.
    Empty,
    /// It is no number.
    NotANumber,
    /// The curve doesn't reach there, or which gas it is isn't known.
    Beyond(SaturationError),
    /// It doesn't burn, or charge or volume aren't above nothing.
    NoMixture,
}

/// A temperature of saturation, its pressure above vacuum, and what a gauge shows at sea level.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Saturated {
    /// Where it boils or condenses.
    pub at: Celsius,
    /// Above vacuum.
    pub absolute: Pascals,
    /// Above the air at sea level.
    pub gauge: GaugePascals,
}

impl Saturated {
    fn new(at: Celsius, absolute: Pascals) -> Self {
        Self {
            at,
            absolute,
            gauge: absolute.gauge(STANDARD_ATMOSPHERE),
        }
    }
}

/// The pressure that belongs to a temperature; a bare number is one of the reader's scale.
///
/// # Errors
/// [`NotTold`].
pub fn at_temperature(
    gas: Refrigerant,
    typed: &str,
    degrees: Degrees,
) -> Result<Saturated, NotTold> {
    let typed = typed.trim();
    if typed.is_empty() {
        return Err(NotTold::Empty);
    }
    let is_bare = typed.ends_with(|last: char| last.is_ascii_digit());
    let unit = match degrees {
        Degrees::Fahrenheit if is_bare => " °F",
        _ => "",
    };
    let read = parse_reading([typed, unit].concat().as_str(), Celsius::new(200.0));
    let Ok(Observed::Value(at)) = read.map(|read| read.observed) else {
        return Err(NotTold::NotANumber);
    };
    let absolute = gas.saturation_pressure(at).map_err(NotTold::Beyond)?;
    Ok(Saturated::new(at, absolute))
}

/// The temperature that belongs to a pressure at sea level.
///
/// # Errors
/// [`NotTold`].
pub fn under_pressure(
    gas: Refrigerant,
    typed: &str,
    unit: PressureUnit,
    from: CountedFrom,
) -> Result<Saturated, NotTold> {
    let number = number(typed)? * unit.pascals();
    let absolute = match from {
        CountedFrom::Vacuum => Pascals::new(number),
        CountedFrom::Air => GaugePascals::new(number).absolute(STANDARD_ATMOSPHERE),
    };
    let at = gas
        .saturation_temperature(absolute)
        .map_err(NotTold::Beyond)?;
    Ok(Saturated::new(at, absolute))
}

/// What a charge in grams makes of a room in cubic metres and of a cabinet in litres.
///
/// # Errors
/// [`NotTold`].
pub fn in_air(gas: Refrigerant, grams: &str, cubic_metres: f64) -> Result<InAir, NotTold> {
    let charge = Kilograms::new(number(grams)? / 1_000.0);
    gas.in_air(charge, CubicMetres::new(cubic_metres))
        .map_err(|_| NotTold::NoMixture)
}

/// A number as typed, with a minus sign of any kind.
///
/// # Errors
/// [`NotTold::Empty`] and [`NotTold::NotANumber`].
pub fn number(typed: &str) -> Result<f64, NotTold> {
    let typed = typed.trim().replace(',', ".").replace('\u{2212}', "-");
    if typed.is_empty() {
        return Err(NotTold::Empty);
    }
    parse_decimal(&typed).ok_or(NotTold::NotANumber)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn gauge_and_absolute_are_told_apart_by_the_air_at_sea_level() {
        let bar = PressureUnit::Bar;
        let gauge = under_pressure(Refrigerant::R134a, "0", bar, CountedFrom::Air).unwrap();
        // Boiling in the open at sea level: −26.1 °C.
        assert!((gauge.at.get() + 26.1).abs() < 0.1, "{gauge:?}");
        let absolute = under_pressure(Refrigerant::R134a, "1,01325", bar, CountedFrom::Vacuum);
        assert!((absolute.unwrap().at.get() - gauge.at.get()).abs() < 1e-6);
    }

    #[test]
    fn there_and_back_comes_to_the_same() {
        for gas in [Refrigerant::R600a, Refrigerant::R290, Refrigerant::R22] {
            let cold = at_temperature(gas, "-13", Degrees::Fahrenheit).unwrap();
            assert!((cold.at.get() + 25.0).abs() < 1e-9);
            let psi = cold.gauge.get() / PressureUnit::Psi.pascals();
            let typed = format!("{psi:.6}");
            let back = under_pressure(gas, &typed, PressureUnit::Psi, CountedFrom::Air).unwrap();
            assert!((back.at.get() + 25.0).abs() < 1e-4, "{gas:?}");
        }
    }

    #[test]
    fn what_is_no_number_or_beyond_the_curve_is_told() {
        let at = |typed| at_temperature(Refrigerant::R12, typed, Degrees::Celsius);
        assert_eq!(at(" "), Err(NotTold::Empty));
        assert_eq!(at("cold"), Err(NotTold::NotANumber));
        assert!(matches!(at("90"), Err(NotTold::Beyond(_))));
        let other = at_temperature(Refrigerant::Other, "0", Degrees::Celsius);
        assert!(matches!(
            other,
            Err(NotTold::Beyond(SaturationError::UnknownRefrigerant))
        ));
    }

    #[test]
    fn a_charge_that_burns_nothing_says_so() {
        assert_eq!(
            in_air(Refrigerant::R134a, "60", 30.0),
            Err(NotTold::NoMixture)
        );
        assert_eq!(
            in_air(Refrigerant::R600a, "0", 30.0),
            Err(NotTold::NoMixture)
        );
        let found = in_air(Refrigerant::R600a, "18", 0.05).unwrap();
        assert_eq!(found.reaches, measure::refrigerant::Concentration::Limit);
    }
}
