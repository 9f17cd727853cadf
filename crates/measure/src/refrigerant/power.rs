//! What a compressor takes between two temperatures of saturation, against its rating.
//!
//! The work of one sweep: gas fills what the dead space leaves of it and is squeezed isentropically,
//! p₁·κ/(κ−1)·(r^((κ−1)/κ) − 1)·(1 − c·(r^(1/κ) − 1)), with r the pressure ratio and c the dead space
//! (any textbook of thermodynamics). It doesn't ask how warm the gas is drawn in: warmer gas is thinner
//! by as much as its squeezing takes more. The κ of each refrigerant were fitted to CoolProp 8.0.0 by
//! `tests/reference/compressor_power.py`; the logarithm of the share is off by 0.04 at most.

use quantity::{Celsius, Ratio, Source, Uncertain};

use super::curve::SaturationError;
use super::cycle::CycleError;
use super::kind::Refrigerant;

/// Where compressors for low temperatures are rated, evaporating and condensing (ASHRAE 23, from
/// memory).
pub const LOW_TEMPERATURE_RATING: [Celsius; 2] = [Celsius::new(-23.3), Celsius::new(54.4)];

/// From where to where the power is told, evaporating.
const EVAPORATING: [Celsius; 2] = [Celsius::new(-45.0), Celsius::new(5.0)];
/// The same, condensing.
const CONDENSING: [Celsius; 2] = [Celsius::new(20.0), Celsius::new(60.0)];

/// The part of a sweep that is never emptied (small hermetic compressors: 2 to 3 %, from memory).
const DEAD_SPACE: f64 = 0.025;
/// What a compressor takes that squeezes nothing, as a share of its rating, and how surely that is
/// known: its motor's own losses, friction, oil (judgement: with the charge gone household machines
/// go on at 40 to 65 % of their running watts).
const IDLE: f64 = 0.4;
const IDLE_STANDARD: f64 = 0.1;
/// The fit's greatest error of the logarithm, taken for a rectangular limit.
const FIT: f64 = 0.04;
/// Kelvins either side over which slopes are taken: far less than any surface is known to.
const STEP: f64 = 0.05;

impl Refrigerant {
    /// The work of one sweep as a share of that at [`LOW_TEMPERATURE_RATING`], by the gas alone.
    ///
    /// # Errors
    /// [`CycleError`]: an unknown refrigerant, or not evaporating at −45…+5 and condensing at
    /// 20…60 °C.
    ///
    /// ```
    /// use measure::refrigerant::Refrigerant;
    /// use quantity::Celsius;
    /// let at = |cold| Refrigerant::R134a.work_share(Celsius::new(cold), Celsius::new(45.0)).unwrap();
    /// // A cold evaporator gives thin gas, and thin gas asks for little work.
    /// assert!(at(-35.0).get() < 0.65 && at(-10.0).get() > 1.3);
    /// ```
    pub fn work_share(
        self,
        evaporating: Celsius,
        condensing: Celsius,
    ) -> Result<Ratio, CycleError> {
        let rated = self.sweep(LOW_TEMPERATURE_RATING)?;
        let within = |at: Celsius, range: [Celsius; 2]| {
            let holds = at >= range[0] && at <= range[1];
            holds
                .then_some(())
                .ok_or(SaturationError::Temperature { range })
        };
        within(evaporating, EVAPORATING).map_err(CycleError::Evaporating)?;
        within(condensing, CONDENSING).map_err(CycleError::Condensing)?;
        Ok(Ratio::new(self.sweep([evaporating, condensing])? / rated))
    }

    /// What a compressor that fills its sweep should take off the mains, as a share of what it takes
    /// at [`LOW_TEMPERATURE_RATING`]. `losses` is the source that the uncertainty of its losses gets.
    ///
    /// # Errors
    /// As [`Self::work_share`].
    ///
    /// ```
    /// use measure::refrigerant::Refrigerant;
    /// use quantity::{Celsius, Sources, Uncertain};
    /// let mut sources = Sources::default();
    /// let cold = Uncertain::exact(Celsius::new(-35.0)).with(sources.fresh(), Celsius::new(2.0));
    /// let warm = Uncertain::exact(Celsius::new(40.0)).with(sources.fresh(), Celsius::new(2.0));
    /// let share = Refrigerant::R600a.power_share(&cold, &warm, sources.fresh()).unwrap();
    /// assert!((share.value().get() - 0.75).abs() < 0.02, "{share:?}");
    /// assert!(share.standard().get() < 0.08);
    /// ```
    pub fn power_share(
        self,
        evaporating: &Uncertain<Celsius>,
        condensing: &Uncertain<Celsius>,
        losses: Source,
    ) -> Result<Uncertain<Ratio>, CycleError> {
        let (cold, warm) = (evaporating.value().get(), condensing.value().get());
        let work = self
            .work_share(evaporating.value(), condensing.value())?
            .get();
        let at = |cold: f64, warm: f64| {
            let of = self.sweep([Celsius::new(cold), Celsius::new(warm)])?;
            Ok::<f64, CycleError>(of / self.sweep(LOW_TEMPERATURE_RATING)?)
        };
        let driven = 1.0 - IDLE;
        let by_cold = (at(cold + STEP, warm)? - at(cold - STEP, warm)?) / (2.0 * STEP);
        let by_warm = (at(cold, warm + STEP)? - at(cold, warm - STEP)?) / (2.0 * STEP);
        let share = Ratio::new(IDLE + driven * work);
        let of_surfaces = Uncertain::following(
            share,
            (evaporating, driven * by_cold),
            (condensing, driven * by_warm),
        );
        // The more it is like at its rating, the less its losses matter.
        let of_losses = IDLE_STANDARD * (1.0 - work);
        let of_fit = driven * work * FIT / libm::sqrt(3.0);
        Ok(of_surfaces.with(losses, Ratio::new(libm::hypot(of_losses, of_fit))))
    }

    /// Joules for each cubic metre swept.
    fn sweep(self, [evaporating, condensing]: [Celsius; 2]) -> Result<f64, CycleError> {
        let low = self.saturation_pressure(evaporating);
        let low = low.map_err(CycleError::Evaporating)?.get();
        let high = self.saturation_pressure(condensing);
        let high = high.map_err(CycleError::Condensing)?.get();
        let exponent = self.compression_exponent();
        let (ratio, part) = (high / low, (exponent - 1.0) / exponent);
        let left_behind = DEAD_SPACE * (libm::pow(ratio, 1.0 / exponent) - 1.0);
        Ok(low / part * (libm::pow(ratio, part) - 1.0) * (1.0 - left_behind))
    }

    /// κ of the perfect gas that comes closest. What isn't known has no pressures, and comes to
    /// nothing here.
    const fn compression_exponent(self) -> f64 {
        match self {
            Self::R12 => 1.1100,
            Self::R22 => 1.1477,
            Self::R134a => 1.0783,
            Self::R600a => 1.0634,
            Self::R290 | Self::Other => 1.1017,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::refrigerant::kind::KNOWN;
    use quantity::Sources;

    fn share(refrigerant: Refrigerant, cold: f64, warm: f64) -> Result<f64, CycleError> {
        let found = refrigerant.work_share(Celsius::new(cold), Celsius::new(warm));
        found.map(Ratio::get)
    }

    #[test]
    fn the_exponents_are_those_that_were_fitted() {
        const REFERENCE: &str = include_str!("../../../../tests/reference/compressor_power.json");
        let reference: serde_json::Value = serde_json::from_str(REFERENCE).unwrap();
        for refrigerant in KNOWN {
            let fitted = &reference["exponents"][format!("{refrigerant:?}").as_str()];
            assert_eq!(fitted.as_f64(), Some(refrigerant.compression_exponent()));
        }
    }

    #[test]
    fn the_rating_is_one_and_thin_gas_asks_for_less() {
        for refrigerant in KNOWN {
            assert!((share(refrigerant, -23.3, 54.4).unwrap() - 1.0).abs() < 1e-12);
            let colder: Vec<f64> = [-10.0, -20.0, -30.0, -40.0]
                .map(|cold| share(refrigerant, cold, 45.0).unwrap())
                .to_vec();
            assert!(colder.windows(2).all(|pair| pair[0] > pair[1]));
            let hot = share(refrigerant, -25.0, 55.0).unwrap();
            assert!(hot > share(refrigerant, -25.0, 35.0).unwrap());
        }
    }

    #[test]
    fn the_uncertainty_is_that_of_moving_what_it_follows_from() {
        let mut sources = Sources::default();
        let at = |celsius: f64| Uncertain::exact(Celsius::new(celsius));
        let cold = at(-30.0).with(sources.fresh(), Celsius::new(3.0));
        let losses = sources.fresh();
        let found = Refrigerant::R134a.power_share(&cold, &at(45.0), losses);
        let found = found.unwrap();
        let moved = |by: f64| share(Refrigerant::R134a, -30.0 + by, 45.0).unwrap();
        let by_cold = 0.6 * (moved(3.0) - moved(-3.0)) / 2.0;
        let by_losses = 0.1 * (1.0 - moved(0.0));
        let by_fit = 0.6 * moved(0.0) * 0.04 / 3f64.sqrt();
        let expected = (by_cold * by_cold + by_losses * by_losses + by_fit * by_fit).sqrt();
        let off = found.standard().get() / expected - 1.0;
        assert!(off.abs() < 0.01, "{found:?} {expected}");
    }

    #[test]
    fn each_wrong_figure_is_named() {
        let unknown = share(Refrigerant::Other, -25.0, 45.0);
        assert_eq!(
            unknown,
            Err(CycleError::Evaporating(SaturationError::UnknownRefrigerant))
        );
        for (cold, warm) in [(-46.0, 45.0), (6.0, 45.0), (f64::NAN, 45.0)] {
            let found = share(Refrigerant::R12, cold, warm);
            assert!(matches!(found, Err(CycleError::Evaporating(_))), "{cold}");
        }
        for warm in [19.0, 61.0, f64::NAN] {
            let found = share(Refrigerant::R12, -25.0, warm);
            assert!(matches!(found, Err(CycleError::Condensing(_))), "{warm}");
        }
    }
}
