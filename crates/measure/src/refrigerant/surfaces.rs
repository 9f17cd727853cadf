//! Where a refrigerant evaporates and condenses, judged by what can be touched.
//!
//! A surface is never quite where the refrigerant is: heat has to flow. All differences here and
//! their uncertainties are judgement (the room's: condensing 10 to 20 K above it, from memory).
//! They are meant for a compressor that has run for a quarter of an hour or more; before that
//! nothing has settled.

use quantity::{Celsius, KelvinDelta, Source, Uncertain};

/// What the temperature on the cold side was taken of.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum EvaporatingSign {
    /// A tube of the evaporator that frosts, the probe bound to it and covered.
    Tube,
    /// The plate or inner wall that the tubes are fixed to.
    ColdWall,
    /// Air in the cold compartment, half way up, once it has settled.
    Air,
}

/// What the temperature on the hot side was taken of.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CondensingSign {
    /// A tube half way along the condenser, the probe bound to it and covered. Its first tubes
    /// are hotter (vapour still gives up its heat), its last ones cooler.
    Tube,
    /// The warmest stripe of an outer wall that has the condenser behind it.
    WarmWall,
    /// The room's air.
    Room,
}

impl EvaporatingSign {
    /// How far below the reading the refrigerant evaporates, and that difference's standard
    /// uncertainty (judgement).
    #[must_use]
    pub const fn below(self) -> (KelvinDelta, KelvinDelta) {
        let (mean, standard) = match self {
            Self::Tube => (1.0, 1.0),
            Self::ColdWall => (4.0, 2.0),
            Self::Air => (8.0, 3.0),
        };
        (KelvinDelta::new(mean), KelvinDelta::new(standard))
    }

    /// The evaporating temperature. `difference` is the source that the sign's own uncertainty
    /// gets, beside what is in the reading.
    ///
    /// ```
    /// use measure::refrigerant::EvaporatingSign;
    /// use quantity::{Celsius, Sources, Uncertain};
    /// let mut sources = Sources::default();
    /// let read = Uncertain::exact(Celsius::new(-22.0)).with(sources.fresh(), Celsius::new(0.6));
    /// let found = EvaporatingSign::ColdWall.evaporating(&read, sources.fresh());
    /// assert!((found.value().get() + 26.0).abs() < 1e-12);
    /// assert!((found.standard().get() - (0.36f64 + 4.0).sqrt()).abs() < 1e-12);
    /// ```
    #[must_use]
    pub fn evaporating(
        self,
        reading: &Uncertain<Celsius>,
        difference: Source,
    ) -> Uncertain<Celsius> {
        let (mean, standard) = self.below();
        moved(reading, -mean.get(), standard, difference)
    }
}

impl CondensingSign {
    /// How far above the reading the refrigerant condenses, and that difference's standard
    /// uncertainty (judgement).
    #[must_use]
    pub const fn above(self) -> (KelvinDelta, KelvinDelta) {
        let (mean, standard) = match self {
            Self::Tube => (1.0, 1.0),
            Self::WarmWall => (4.0, 2.5),
            // Rectangular between 10 and 20 K: 5/√3.
            Self::Room => (15.0, 2.9),
        };
        (KelvinDelta::new(mean), KelvinDelta::new(standard))
    }

    /// The condensing temperature, as [`EvaporatingSign::evaporating`].
    #[must_use]
    pub fn condensing(
        self,
        reading: &Uncertain<Celsius>,
        difference: Source,
    ) -> Uncertain<Celsius> {
        let (mean, standard) = self.above();
        moved(reading, mean.get(), standard, difference)
    }
}

fn moved(
    reading: &Uncertain<Celsius>,
    by: f64,
    standard: KelvinDelta,
    difference: Source,
) -> Uncertain<Celsius> {
    let shift = Uncertain::exact(Celsius::new(by));
    &(reading + &shift)
        + &Uncertain::exact(Celsius::new(0.0)).with(difference, Celsius::new(standard.get()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use quantity::Sources;

    #[test]
    fn the_refrigerant_is_colder_than_what_it_cools_and_hotter_than_what_cools_it() {
        let mut sources = Sources::default();
        let read = Uncertain::exact(Celsius::new(20.0)).with(sources.fresh(), Celsius::new(0.5));
        for sign in [
            EvaporatingSign::Tube,
            EvaporatingSign::ColdWall,
            EvaporatingSign::Air,
        ] {
            let found = sign.evaporating(&read, sources.fresh());
            assert!(found.value() < read.value(), "{sign:?}");
            assert!(found.standard() > read.standard(), "{sign:?}");
        }
        for sign in [
            CondensingSign::Tube,
            CondensingSign::WarmWall,
            CondensingSign::Room,
        ] {
            let found = sign.condensing(&read, sources.fresh());
            assert!(found.value() > read.value(), "{sign:?}");
            assert!(found.standard() > read.standard(), "{sign:?}");
        }
    }

    #[test]
    fn one_thermometer_on_both_sides_is_in_both() {
        let mut sources = Sources::default();
        let thermometer = sources.fresh();
        let read =
            |celsius| Uncertain::exact(Celsius::new(celsius)).with(thermometer, Celsius::new(1.0));
        let cold = EvaporatingSign::Tube.evaporating(&read(-25.0), sources.fresh());
        let hot = CondensingSign::Tube.condensing(&read(40.0), sources.fresh());
        assert!((cold.covariance(&hot) - 1.0).abs() < 1e-12);
    }
}
