//! How much air a charge can make burn.
//!
//! The lower flammable limit is told in volume per cent and reckoned in mass per volume: each
//! mole of gas takes up R·T/p, 24.465 litres at 25 °C and 101,325 Pa. Everything here is fully
//! mixed. Gas that leaks lies on the floor first, so a figure below the limit clears nothing; one
//! above it is a warning that stands.

use quantity::{CubicMetres, Kilograms, KilogramsPerCubicMetre, Ratio};

use super::kind::Refrigerant;

/// The most that a household machine may hold of what burns, for each circuit (IEC 60335-2-24,
/// clause from memory; in the US the same since 2018-09-07, 83 FR 38969).
pub const HOUSEHOLD_CHARGE_LIMIT: Kilograms = Kilograms::new(0.150);

/// From this share of the lower flammable limit on, people leave (40 CFR 82 subpart G,
/// appendix R).
pub const EVACUATE_AT: Ratio = Ratio::new(0.25);

/// A charge beyond this is no household machine's (judgement).
const MOST_CHARGE: Kilograms = Kilograms::new(5.0);
/// R·298.15 K/101,325 Pa, in m³/mol.
const MOLAR_VOLUME: f64 = 8.314_462_618 * 298.15 / 101_325.0;

/// A charge spread evenly through a volume.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct InAir {
    /// Mass in the volume.
    pub concentration: KilogramsPerCubicMetre,
    /// That as a share of the lower flammable limit.
    pub of_limit: Ratio,
    /// What that comes to.
    pub reaches: Concentration,
}

/// How far a concentration reaches.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Concentration {
    /// Under a quarter of the limit.
    BelowQuarter,
    /// From a quarter of the limit up to it.
    QuarterToLimit,
    /// The limit, or above. In a small volume there may even be too much gas to burn, but the
    /// way out leads through a mixture that does.
    Limit,
}

/// Why no concentration can be told.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FlammableError {
    /// It doesn't burn.
    DoesNotBurn,
    /// The charge isn't above zero, or above 5 kg.
    Charge,
    /// The volume isn't above zero, or not finite.
    Volume,
    /// The share isn't above zero, or above one.
    Share,
}

/// The mass in a volume that belongs to a share of it at 25 °C and 101,325 Pa:
/// share · M/24.465 l. `molar` is the mass of one mole.
///
/// ```
/// use measure::refrigerant::lower_flammable_limit_of;
/// use quantity::{Kilograms, Ratio};
/// let isobutane = lower_flammable_limit_of(Ratio::new(0.018), Kilograms::new(0.05812));
/// assert!((isobutane.get() - 0.0428).abs() < 5e-5);
/// ```
#[must_use]
pub fn lower_flammable_limit_of(by_volume: Ratio, molar: Kilograms) -> KilogramsPerCubicMetre {
    KilogramsPerCubicMetre::new(by_volume.get() * molar.get() / MOLAR_VOLUME)
}

impl Refrigerant {
    /// The lower flammable limit, from 1.8 (R600a) and 2.1 (R290) volume per cent (both from
    /// memory). What isn't known is taken for propane, whose limit is the lower (judgement).
    ///
    /// `None` for what doesn't burn.
    #[must_use]
    pub fn lower_flammable_limit(self) -> Option<KilogramsPerCubicMetre> {
        let (by_volume, molar) = match self {
            Self::R12 | Self::R22 | Self::R134a => return None,
            Self::R600a => (0.018, 0.058_122_2),
            Self::R290 | Self::Other => (0.021, 0.044_095_62),
        };
        let molar = Kilograms::new(molar);
        Some(lower_flammable_limit_of(Ratio::new(by_volume), molar))
    }

    /// What a charge makes of the air of a room or of a closed cabinet, all of it escaped and
    /// fully mixed.
    ///
    /// # Errors
    /// [`FlammableError`].
    ///
    /// ```
    /// use measure::refrigerant::{Concentration, Refrigerant};
    /// use quantity::{CubicMetres, Kilograms};
    /// let charge = Kilograms::new(0.018);
    /// let cabinet = Refrigerant::R600a.in_air(charge, CubicMetres::new(0.050)).unwrap();
    /// assert_eq!(cabinet.reaches, Concentration::Limit);
    /// let room = Refrigerant::R600a.in_air(charge, CubicMetres::new(30.0)).unwrap();
    /// assert_eq!(room.reaches, Concentration::BelowQuarter);
    /// ```
    pub fn in_air(self, charge: Kilograms, volume: CubicMetres) -> Result<InAir, FlammableError> {
        let limit = self
            .lower_flammable_limit()
            .ok_or(FlammableError::DoesNotBurn)?;
        check(charge)?;
        if !(volume.get() > 0.0 && volume.get().is_finite()) {
            return Err(FlammableError::Volume);
        }
        let concentration = KilogramsPerCubicMetre::new(charge.get() / volume.get());
        let of_limit = concentration / limit;
        Ok(InAir {
            concentration,
            of_limit,
            reaches: if of_limit < EVACUATE_AT {
                Concentration::BelowQuarter
            } else if of_limit < Ratio::new(1.0) {
                Concentration::QuarterToLimit
            } else {
                Concentration::Limit
            },
        })
    }

    /// The volume in which a charge comes to that share of the limit, fully mixed.
    ///
    /// # Errors
    /// [`FlammableError`].
    pub fn volume_at(self, charge: Kilograms, share: Ratio) -> Result<CubicMetres, FlammableError> {
        let limit = self
            .lower_flammable_limit()
            .ok_or(FlammableError::DoesNotBurn)?;
        check(charge)?;
        if !(share.get() > 0.0 && share.get() <= 1.0) {
            return Err(FlammableError::Share);
        }
        Ok(CubicMetres::new(charge.get() / (share.get() * limit.get())))
    }

    /// Whether a charge is more than a household machine may hold of this
    /// ([`HOUSEHOLD_CHARGE_LIMIT`]): then the plate was misread, or it is no household machine.
    #[must_use]
    pub fn is_beyond_household_limit(self, charge: Kilograms) -> bool {
        self.burns() && charge > HOUSEHOLD_CHARGE_LIMIT
    }
}

fn check(charge: Kilograms) -> Result<(), FlammableError> {
    if charge.get() > 0.0 && charge <= MOST_CHARGE {
        Ok(())
    } else {
        Err(FlammableError::Charge)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const ROOM: CubicMetres = CubicMetres::new(20.0);

    #[test]
    fn limits_by_mass_are_those_of_the_standards() {
        // 0.043 and 0.038 kg/m³ are the rounded figures of IEC 60335-2-24 (from memory).
        let limit = |one: Refrigerant| one.lower_flammable_limit().map(|found| found.get());
        assert!((limit(Refrigerant::R600a).unwrap() - 0.043).abs() < 5e-4);
        assert!((limit(Refrigerant::R290).unwrap() - 0.038).abs() < 5e-4);
        for refrigerant in Refrigerant::ALL {
            assert_eq!(limit(refrigerant).is_some(), refrigerant.burns());
        }
    }

    #[test]
    fn what_is_not_known_burns_as_soon_as_any() {
        let other = Refrigerant::Other.lower_flammable_limit().unwrap();
        for known in [Refrigerant::R600a, Refrigerant::R290] {
            assert!(other <= known.lower_flammable_limit().unwrap());
        }
    }

    #[test]
    fn volumes_and_concentrations_follow_from_mass_over_limit() {
        // 150 g of isobutane: 0.150/0.0428 = 3.5 m³ at the limit, 14.0 at a quarter of it.
        let charge = HOUSEHOLD_CHARGE_LIMIT;
        for (share, expected) in [(1.0, 3.508), (0.25, 14.03)] {
            let found = Refrigerant::R600a
                .volume_at(charge, Ratio::new(share))
                .unwrap();
            assert!((found.get() / expected - 1.0).abs() < 1e-3, "{found:?}");
            let there = Refrigerant::R600a.in_air(charge, found).unwrap();
            assert!((there.of_limit.get() - share).abs() < 1e-12);
        }
        // 18 g in 50 litres: 360 g/m³, over eight times the limit.
        let cabinet = Refrigerant::R600a
            .in_air(Kilograms::new(0.018), CubicMetres::new(0.05))
            .unwrap();
        assert!((cabinet.concentration.get() - 0.36).abs() < 1e-12);
        assert!((cabinet.of_limit.get() - 8.42).abs() < 0.01);
        let between = Refrigerant::R290.in_air(Kilograms::new(0.1), CubicMetres::new(6.0));
        assert_eq!(between.unwrap().reaches, Concentration::QuarterToLimit);
    }

    #[test]
    fn figures_that_cannot_be_are_named() {
        let charge = Kilograms::new(0.05);
        let r290 = Refrigerant::R290;
        let harmless = Refrigerant::R134a.in_air(charge, ROOM);
        assert_eq!(harmless, Err(FlammableError::DoesNotBurn));
        for wrong in [0.0, -1.0, 5.1, f64::NAN] {
            let found = r290.in_air(Kilograms::new(wrong), ROOM);
            assert_eq!(found, Err(FlammableError::Charge));
            let volume = r290.in_air(charge, CubicMetres::new(wrong.min(0.0)));
            assert_eq!(volume, Err(FlammableError::Volume));
            let share = r290.volume_at(charge, Ratio::new(wrong));
            assert_eq!(share, Err(FlammableError::Share));
        }
    }

    #[test]
    fn only_what_burns_is_held_against_the_household_limit() {
        let heavy = Kilograms::new(0.2);
        assert!(Refrigerant::R290.is_beyond_household_limit(heavy));
        assert!(Refrigerant::Other.is_beyond_household_limit(heavy));
        assert!(!Refrigerant::R134a.is_beyond_household_limit(heavy));
        assert!(!Refrigerant::R290.is_beyond_household_limit(HOUSEHOLD_CHARGE_LIMIT));
    }
}
