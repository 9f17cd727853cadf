//! One newtype per unit, so that ohms are never added to volts.

use core::ops::{Add, Div, Mul, Neg, Sub};

/// A physical quantity held in one unit.
///
/// Values are finite wherever they come from a person or a file: [`crate::parse_reading`] and
/// the document reader refuse anything else.
pub trait Quantity: Copy + PartialEq + PartialOrd + core::fmt::Debug {
    /// The unit's symbol as printed, for example `Ω`.
    const SYMBOL: &'static str;

    /// Wraps a number that is already in this unit.
    fn new(value: f64) -> Self;

    /// The number in this unit.
    fn get(self) -> f64;
}

macro_rules! quantity {
    ($(#[$doc:meta])* $name:ident, $symbol:literal) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Default)]
        pub struct $name(f64);

        impl $name {
            /// Wraps a number that is already in this unit.
            pub const fn new(value: f64) -> Self {
                Self(value)
            }

            /// The number in this unit.
            pub const fn get(self) -> f64 {
                self.0
            }
        }

        impl Quantity for $name {
            const SYMBOL: &'static str = $symbol;

            fn new(value: f64) -> Self {
                Self(value)
            }

            fn get(self) -> f64 {
                self.0
            }
        }
    };
}

macro_rules! linear {
    ($($name:ident),*) => {$(
        impl Add for $name {
            type Output = Self;
            fn add(self, other: Self) -> Self {
                Self(self.0 + other.0)
            }
        }

        impl Sub for $name {
            type Output = Self;
            fn sub(self, other: Self) -> Self {
                Self(self.0 - other.0)
            }
        }

        impl Neg for $name {
            type Output = Self;
            fn neg(self) -> Self {
                Self(-self.0)
            }
        }

        impl Mul<f64> for $name {
            type Output = Self;
            fn mul(self, factor: f64) -> Self {
                Self(self.0 * factor)
            }
        }

        impl Div for $name {
            type Output = Ratio;
            fn div(self, other: Self) -> Ratio {
                Ratio(self.0 / other.0)
            }
        }
    )*};
}

quantity!(
    /// Electrical resistance in ohms.
    Ohms, "Ω"
);
quantity!(
    /// Electrical potential difference in volts.
    Volts, "V"
);
quantity!(
    /// Frequency in hertz.
    Hertz, "Hz"
);
quantity!(
    /// Electric current in amperes.
    Amps, "A"
);
quantity!(
    /// Capacitance in farads.
    Farads, "F"
);
quantity!(
    /// Energy in joules.
    Joules, "J"
);
quantity!(
    /// Power in watts.
    Watts, "W"
);
quantity!(
    /// Energy as it is paid for, in watt-hours.
    WattHours, "Wh"
);
quantity!(
    /// A length of time in seconds.
    Seconds, "s"
);
quantity!(
    /// Pressure in pascals, above vacuum.
    Pascals, "Pa"
);
quantity!(
    /// Pressure in pascals above the air around, as a gauge shows it. It neither adds to
    /// [`Pascals`] nor is taken from them: only with the air's own pressure is one the other
    /// ([`GaugePascals::absolute`], [`Pascals::gauge`]).
    GaugePascals, "Pa"
);
quantity!(
    /// Mass in a volume, in kilograms a cubic metre.
    KilogramsPerCubicMetre, "kg/m³"
);
quantity!(
    /// Torque in newton metres.
    NewtonMetres, "N·m"
);
quantity!(
    /// Mass in kilograms.
    Kilograms, "kg"
);
quantity!(
    /// Volume in cubic metres.
    CubicMetres, "m³"
);
quantity!(
    /// Length in metres.
    Metres, "m"
);
quantity!(
    /// Heat capacity in joules a kelvin.
    JoulesPerKelvin, "J/K"
);
quantity!(
    /// Heat that passes for each kelvin of difference, in watts a kelvin.
    WattsPerKelvin, "W/K"
);
quantity!(
    /// A quotient of two values of one unit.
    Ratio, ""
);
quantity!(
    /// A difference of temperatures in kelvins.
    KelvinDelta, "K"
);
quantity!(
    /// A temperature on the Celsius scale. Two of them don't add; their difference is a
    /// [`KelvinDelta`].
    Celsius, "°C"
);

linear!(
    Ohms,
    Volts,
    Hertz,
    Ratio,
    KelvinDelta,
    Amps,
    Farads,
    Joules,
    Watts,
    WattHours,
    Seconds,
    Pascals,
    NewtonMetres,
    Kilograms,
    CubicMetres,
    KilogramsPerCubicMetre,
    Metres,
    JoulesPerKelvin,
    WattsPerKelvin
);

impl Sub for Celsius {
    type Output = KelvinDelta;
    fn sub(self, other: Self) -> KelvinDelta {
        KelvinDelta(self.0 - other.0)
    }
}

impl Add<KelvinDelta> for Celsius {
    type Output = Self;
    fn add(self, difference: KelvinDelta) -> Self {
        Self(self.0 + difference.0)
    }
}

impl Pascals {
    /// What a gauge shows of this pressure in air of that pressure; below zero under it.
    ///
    /// ```
    /// # use quantity::{GaugePascals, Pascals};
    /// let air = Pascals::new(101_325.0);
    /// assert_eq!(Pascals::new(58_400.0).gauge(air), GaugePascals::new(-42_925.0));
    /// ```
    #[must_use]
    pub const fn gauge(self, atmosphere: Self) -> GaugePascals {
        GaugePascals(self.0 - atmosphere.0)
    }
}

impl GaugePascals {
    /// The pressure above vacuum, in air of that pressure.
    #[must_use]
    pub const fn absolute(self, atmosphere: Pascals) -> Pascals {
        Pascals(self.0 + atmosphere.0)
    }
}

impl Celsius {
    /// The same temperature in degrees Fahrenheit.
    ///
    /// ```
    /// # use quantity::Celsius;
    /// assert!((Celsius::new(60.0).to_fahrenheit() - 140.0).abs() < 1e-12);
    /// ```
    #[must_use]
    pub fn to_fahrenheit(self) -> f64 {
        self.0 * 1.8 + 32.0
    }
}

/// A decimal prefix that a meter shows in front of its unit.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Prefix {
    /// n, a thousand-millionth.
    Nano,
    /// µ, a millionth.
    Micro,
    /// m, a thousandth.
    Milli,
    /// No prefix.
    One,
    /// k, a thousand.
    Kilo,
    /// M, a million.
    Mega,
}

impl Prefix {
    /// What a displayed number is multiplied by.
    #[must_use]
    pub const fn factor(self) -> f64 {
        match self {
            Self::Nano => 1e-9,
            Self::Micro => 1e-6,
            Self::Milli => 1e-3,
            Self::One => 1.0,
            Self::Kilo => 1e3,
            Self::Mega => 1e6,
        }
    }

    /// The prefix as printed.
    #[must_use]
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::Nano => "n",
            Self::Micro => "µ",
            Self::Milli => "m",
            Self::One => "",
            Self::Kilo => "k",
            Self::Mega => "M",
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_difference_of_temperatures_is_not_a_temperature() {
        let rise = Celsius::new(102.9) - Celsius::new(25.0);
        assert!((rise.get() - 77.9).abs() < 1e-12);
        assert_eq!(Celsius::new(25.0) + rise, Celsius::new(102.9));
    }

    #[test]
    fn a_gauge_and_the_air_around_make_an_absolute_pressure() {
        let air = Pascals::new(84_560.0);
        let gauge = Pascals::new(1_159_900.0).gauge(air);
        assert_eq!(gauge, GaugePascals::new(1_075_340.0));
        assert_eq!(gauge.absolute(air), Pascals::new(1_159_900.0));
    }

    #[test]
    fn dividing_one_unit_by_itself_leaves_a_plain_ratio() {
        let ratio: Ratio = Ohms::new(7.0) / Ohms::new(4.0);
        assert_eq!(ratio, Ratio::new(1.75));
    }
}
