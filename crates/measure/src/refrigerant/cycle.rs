//! The two pressures between which a compressor works.

use quantity::{Celsius, Pascals, Ratio, Uncertain};

use super::curve::SaturationError;
use super::kind::Refrigerant;

/// Both pressures, and what follows from them.
#[derive(Debug, Clone, PartialEq)]
pub struct Cycle {
    /// Above vacuum, where it evaporates.
    pub low: Uncertain<Pascals>,
    /// Above vacuum, where it condenses.
    pub high: Uncertain<Pascals>,
    /// High over low, both above vacuum.
    pub pressure_ratio: Uncertain<Ratio>,
    /// Whether a leak on the low side would draw air in.
    pub low_side: LowSide,
}

/// The low side held against the air around.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LowSide {
    /// Below the air's pressure beyond its expanded uncertainty: a leak draws air in.
    BelowAtmosphere,
    /// Above it: a leak lets refrigerant out.
    AboveAtmosphere,
    /// Too close to tell.
    CannotTell,
}

/// Why there is no cycle.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum CycleError {
    /// No pressure for where it evaporates.
    Evaporating(SaturationError),
    /// No pressure for where it condenses.
    Condensing(SaturationError),
    /// It would condense no warmer than it evaporates: nothing is pumped, or the readings were
    /// swapped.
    NotPumping,
    /// The air's pressure isn't positive.
    Atmosphere,
}

impl Cycle {
    /// What belongs to an evaporating and a condensing temperature, in air of that pressure.
    ///
    /// # Errors
    /// [`CycleError`] says which of the figures doesn't fit.
    ///
    /// ```
    /// use measure::refrigerant::{Cycle, LowSide, Refrigerant, STANDARD_ATMOSPHERE};
    /// use quantity::{Celsius, Sources, Uncertain};
    /// let mut sources = Sources::default();
    /// let cold = Uncertain::exact(Celsius::new(-25.0)).with(sources.fresh(), Celsius::new(1.0));
    /// let hot = Uncertain::exact(Celsius::new(45.0)).with(sources.fresh(), Celsius::new(1.0));
    /// let found = Cycle::of(Refrigerant::R600a, &cold, &hot, STANDARD_ATMOSPHERE).unwrap();
    /// assert!((found.pressure_ratio.value().get() - 10.35).abs() < 0.02);
    /// assert_eq!(found.low_side, LowSide::BelowAtmosphere);
    /// ```
    pub fn of(
        refrigerant: Refrigerant,
        evaporating: &Uncertain<Celsius>,
        condensing: &Uncertain<Celsius>,
        atmosphere: Pascals,
    ) -> Result<Self, CycleError> {
        if !(atmosphere.get() > 0.0 && atmosphere.get().is_finite()) {
            return Err(CycleError::Atmosphere);
        }
        let low = refrigerant
            .saturation_pressure_of(evaporating)
            .map_err(CycleError::Evaporating)?;
        let high = refrigerant
            .saturation_pressure_of(condensing)
            .map_err(CycleError::Condensing)?;
        if high.value() <= low.value() {
            return Err(CycleError::NotPumping);
        }
        Ok(Self {
            pressure_ratio: high.ratio(&low),
            low_side: low_side(&low, atmosphere),
            low,
            high,
        })
    }
}

fn low_side(low: &Uncertain<Pascals>, atmosphere: Pascals) -> LowSide {
    let gauge = low.value().gauge(atmosphere).get();
    if gauge.abs() <= low.expanded().get() {
        LowSide::CannotTell
    } else if gauge < 0.0 {
        LowSide::BelowAtmosphere
    } else {
        LowSide::AboveAtmosphere
    }
}

#[cfg(test)]
mod tests {
    use super::super::STANDARD_ATMOSPHERE;
    use super::*;
    use quantity::Sources;

    fn at(celsius: f64, standard: f64, sources: &mut Sources) -> Uncertain<Celsius> {
        Uncertain::exact(Celsius::new(celsius)).with(sources.fresh(), Celsius::new(standard))
    }

    fn cycle(refrigerant: Refrigerant, cold: f64, hot: f64) -> Result<Cycle, CycleError> {
        let mut sources = Sources::default();
        let cold = at(cold, 0.5, &mut sources);
        let hot = at(hot, 0.5, &mut sources);
        Cycle::of(refrigerant, &cold, &hot, STANDARD_ATMOSPHERE)
    }

    #[test]
    fn pressure_ratios_of_a_freezer_are_those_of_published_pressures() {
        // −25/45 °C, from CoolProp 8.0.0: 1082.1/123.5, 1729.2/201.4, 1159.9/106.4, 604.4/58.4 and
        // 1534.3/203.4 kPa.
        let expected = [8.762, 8.586, 10.90, 10.35, 7.543];
        for (refrigerant, expected) in Refrigerant::ALL.into_iter().zip(expected) {
            let found = cycle(refrigerant, -25.0, 45.0).unwrap().pressure_ratio;
            let off = found.value().get() / expected - 1.0;
            assert!(off.abs() < 0.002, "{refrigerant:?}: {found:?}");
        }
    }

    #[test]
    fn a_low_side_near_the_air_s_pressure_is_not_told() {
        let side = |refrigerant, cold| cycle(refrigerant, cold, 40.0).unwrap().low_side;
        // R134a boils at −26.1 °C in the open.
        assert_eq!(side(Refrigerant::R134a, -26.0), LowSide::CannotTell);
        assert_eq!(side(Refrigerant::R134a, -30.0), LowSide::BelowAtmosphere);
        assert_eq!(side(Refrigerant::R134a, -22.0), LowSide::AboveAtmosphere);
        assert_eq!(side(Refrigerant::R290, -30.0), LowSide::AboveAtmosphere);
    }

    #[test]
    fn each_wrong_figure_is_named() {
        let unknown = SaturationError::UnknownRefrigerant;
        let found = cycle(Refrigerant::Other, -25.0, 45.0);
        assert_eq!(found, Err(CycleError::Evaporating(unknown)));
        let hot = cycle(Refrigerant::R22, -25.0, 90.0);
        assert!(matches!(hot, Err(CycleError::Condensing(_))));
        let swapped = cycle(Refrigerant::R22, 45.0, -25.0);
        assert_eq!(swapped, Err(CycleError::NotPumping));
        let mut sources = Sources::default();
        let (cold, hot) = (at(-25.0, 1.0, &mut sources), at(45.0, 1.0, &mut sources));
        let vacuum = Cycle::of(Refrigerant::R22, &cold, &hot, Pascals::new(0.0));
        assert_eq!(vacuum, Err(CycleError::Atmosphere));
    }
}
