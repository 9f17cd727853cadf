//! The greatest energy that a machine may use in a year by the American rule.

use quantity::CubicMetres;

use super::class::{CUBIC_FOOT, Class, Compartments};
use super::limit_table::{Standing, line};

/// From when on a machine was made for the limit to hold.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Era {
    /// From 1 January 1993 on.
    Of1993,
    /// From 1 July 2001 on.
    Of2001,
    /// From 15 September 2014 on.
    Of2014,
    /// From 31 January 2029 on, or 2030 for freestanding classes 1 to 7 but 5A, and 9 (89 FR 50205).
    Of2029,
}

impl Era {
    /// All of them.
    pub const ALL: [Self; 4] = [Self::Of1993, Self::Of2001, Self::Of2014, Self::Of2029];

    /// Year, month and day from which on it holds.
    #[must_use]
    pub const fn from(self, class: Class) -> (u16, u8, u8) {
        match self {
            Self::Of1993 => (1993, 1, 1),
            Self::Of2001 => (2001, 7, 1),
            Self::Of2014 => (2014, 9, 15),
            Self::Of2029 if comes_in_2030(class) => (2030, 1, 31),
            Self::Of2029 => (2029, 1, 31),
        }
    }

    /// Those that a machine of that year may have been made under: two where the limits changed
    /// within it, none before 1993.
    ///
    /// ```
    /// use measure::energy::{Class, Era};
    /// assert_eq!(Era::of_year(Class::ChestFreezer, 2005), [Era::Of2001]);
    /// assert_eq!(Era::of_year(Class::ChestFreezer, 2014), [Era::Of2001, Era::Of2014]);
    /// ```
    #[must_use]
    pub fn of_year(class: Class, year: u16) -> Vec<Self> {
        // From New Year's Day on, or from some day within the year on.
        let held = |era: &Self| era.from(class) <= (year, 1, 1);
        let begins = |era: &Self| era.from(class).0 == year && !held(era);
        let before = Self::ALL.into_iter().rfind(held);
        before
            .into_iter()
            .chain(Self::ALL.into_iter().filter(begins))
            .collect()
    }
}

const fn comes_in_2030(class: Class) -> bool {
    matches!(
        class,
        Class::Manual
            | Class::ManualAllRefrigerator
            | Class::PartialAutomatic
            | Class::TopFreezer
            | Class::AutomaticAllRefrigerator
            | Class::SideFreezer
            | Class::BottomFreezer
            | Class::TopFreezerIceThroughDoor
            | Class::SideFreezerIceThroughDoor
            | Class::UprightFreezerAutomatic
    )
}

/// What of a machine's doors and icemaker raises its limit.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Extras {
    /// An automatic icemaker: counted from 2014 on.
    pub icemaker: bool,
    /// What is special about its doors: counted from 2029 on.
    pub doors: Option<Doors>,
}

/// One special thing about doors. How several of them count together hasn't been confirmed, so that
/// no limit is told for those.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Doors {
    /// A transparent one.
    Transparent,
    /// A door in a door.
    DoorInDoor,
    /// So many outside doors.
    Outside(u8),
}

/// A machine as the rule sees it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Product {
    /// Its class.
    pub class: Class,
    /// What it is made of.
    pub compartments: Compartments,
    /// Fresh food.
    pub fresh: CubicMetres,
    /// Frozen food.
    pub frozen: CubicMetres,
    /// Icemaker and doors.
    pub extras: Extras,
}

/// The greatest energy allowed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct EnergyLimit {
    /// For which class.
    pub class: Class,
    /// When a machine was made under it.
    pub era: Era,
    /// In whole kilowatt hours a year.
    pub kilowatt_hours: u32,
    /// How well its line over volume is founded. The factors of adjusted volume are from memory in
    /// any case.
    pub standing: Standing,
    /// The adjusted volume that it was worked out with.
    pub adjusted_volume: CubicMetres,
}

/// Why there is no limit.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NoLimit {
    /// A volume is negative or no number, or both are zero.
    NoVolume,
    /// Refrigerators above 39 cubic feet and freezers above 30 are outside the rule.
    OutsideTheRule,
    /// A compact class, and 7.75 cubic feet or more.
    NotCompact,
    /// A class of full size, and less than 7.75 cubic feet.
    IsCompact,
    /// That class had no limit at that time, or none that is known here.
    NoneThen,
    /// So many outside doors, or that kind of door, aren't in the rule for this class.
    OtherDoors,
}

/// How much a cubic foot of frozen food counts as fresh food: the difference of the test room's 90 °F
/// to the frozen temperature over that to the fresh one. Since 2014 those are 0 and 39 °F, 15 °F in
/// basic refrigerators; before, 5 °F and 38 °F in refrigerator-freezers, 0 and 38 °F in freezers, 15
/// and 38 °F in refrigerators (10 CFR 430 subpart B appendices A, B, A1 and B1, from memory).
#[must_use]
pub const fn frozen_counts(compartments: Compartments, era: Era) -> f64 {
    let is_new = matches!(era, Era::Of2014 | Era::Of2029);
    match compartments {
        Compartments::RefrigeratorFreezer if is_new => 1.76,
        Compartments::RefrigeratorFreezer => 1.63,
        Compartments::Freezer if is_new => 1.76,
        Compartments::Freezer => 1.73,
        Compartments::BasicRefrigerator if is_new => 1.47,
        Compartments::AllRefrigerator if is_new => 1.00,
        Compartments::BasicRefrigerator | Compartments::AllRefrigerator => 1.44,
    }
}

impl Product {
    /// Fresh volume, and frozen volume as it counts.
    #[must_use]
    pub fn adjusted_volume(&self, era: Era) -> CubicMetres {
        CubicMetres::new(
            self.fresh.get() + frozen_counts(self.compartments, era) * self.frozen.get(),
        )
    }

    /// The greatest energy allowed for a machine made in that time.
    ///
    /// # Errors
    /// [`NoLimit`] says why there is none.
    ///
    /// ```
    /// use measure::energy::{CUBIC_FOOT, Class, Compartments, Era, Extras, Product};
    /// use quantity::CubicMetres;
    /// let feet = |count: f64| CubicMetres::new(count * CUBIC_FOOT.get());
    /// let product = Product {
    ///     class: Class::TopFreezer,
    ///     compartments: Compartments::RefrigeratorFreezer,
    ///     fresh: feet(13.5),
    ///     frozen: feet(4.5),
    ///     extras: Extras::default(),
    /// };
    /// assert_eq!(product.limit(Era::Of2001).unwrap().kilowatt_hours, 480);
    /// ```
    pub fn limit(&self, era: Era) -> Result<EnergyLimit, NoLimit> {
        self.check_volumes()?;
        let line = line(self.class, era).ok_or(NoLimit::NoneThen)?;
        let adjusted_volume = self.adjusted_volume(era);
        let feet = adjusted_volume.get() / CUBIC_FOOT.get();
        let plain = line.slope * feet + line.intercept;
        let year = match era {
            Era::Of1993 | Era::Of2001 => plain,
            Era::Of2014 => {
                plain
                    + if self.counts_icemaker() {
                        ICEMAKER_2014
                    } else {
                        0.0
                    }
            }
            Era::Of2029 => {
                let icemaker = if self.counts_icemaker() {
                    ICEMAKER_2029
                } else {
                    0.0
                };
                plain * self.door_factor()? + icemaker
            }
        };
        Ok(EnergyLimit {
            class: self.class,
            era,
            kilowatt_hours: rounded(year),
            standing: line.standing,
            adjusted_volume,
        })
    }

    fn check_volumes(&self) -> Result<(), NoLimit> {
        let volumes = [self.fresh.get(), self.frozen.get()];
        if volumes.iter().any(|one| !(*one >= 0.0 && one.is_finite())) {
            return Err(NoLimit::NoVolume);
        }
        // What was typed in cubic feet came here through metres.
        let feet = (volumes[0] + volumes[1]) / CUBIC_FOOT.get();
        let feet = libm::round(feet * 1e9) / 1e9;
        let most = if self.class.is_freezer() { 30.0 } else { 39.0 };
        if feet <= 0.0 {
            Err(NoLimit::NoVolume)
        } else if feet > most {
            Err(NoLimit::OutsideTheRule)
        } else if self.class.is_compact() && feet >= COMPACT_BELOW {
            Err(NoLimit::NotCompact)
        } else if !self.class.is_compact() && feet < COMPACT_BELOW && !self.is_built_in() {
            Err(NoLimit::IsCompact)
        } else {
            Ok(())
        }
    }

    fn is_built_in(&self) -> bool {
        self.class.number().ends_with("BI")
    }

    const fn counts_icemaker(&self) -> bool {
        self.class.may_have_icemaker() && self.extras.icemaker
    }

    fn door_factor(&self) -> Result<f64, NoLimit> {
        let Some(doors) = self.extras.doors else {
            return Ok(1.0);
        };
        let factors = door_factors(self.class).ok_or(NoLimit::OtherDoors)?;
        match doors {
            Doors::Transparent => Ok(factors.transparent),
            Doors::DoorInDoor => Ok(factors.door_in_door),
            Doors::Outside(count) => match factors.outside {
                None => Ok(1.0),
                Some((usual, most)) if count <= most => {
                    Ok(1.0 + 0.02 * f64::from(count.saturating_sub(usual)))
                }
                Some(_) => Err(NoLimit::OtherDoors),
            },
        }
    }
}

/// What an icemaker adds: 0.23 kWh a day over 365 days in 2014.
const ICEMAKER_2014: f64 = 84.0;
const ICEMAKER_2029: f64 = 28.0;
/// Cubic feet in all.
const COMPACT_BELOW: f64 = 7.75;

struct DoorFactors {
    transparent: f64,
    door_in_door: f64,
    /// As many as are usual, and the most that count.
    outside: Option<(u8, u8)>,
}

/// The factors K of 89 FR 3026 with 89 FR 50205, of which excerpts were seen.
const fn door_factors(class: Class) -> Option<DoorFactors> {
    let (transparent, door_in_door, outside) = match class {
        Class::PartialAutomatic | Class::CompactPartialAutomatic => (1.0, 1.0, Some((1, 2))),
        Class::UprightFreezerAutomatic => (1.0, 1.0, Some((1, 5))),
        Class::BuiltInUprightFreezer => (1.0, 1.0, Some((1, 3))),
        Class::AutomaticAllRefrigerator
        | Class::BuiltInAllRefrigerator
        | Class::CompactAutomaticAllRefrigerator => (1.10, 1.0, None),
        Class::SideFreezer
        | Class::BottomFreezer
        | Class::SideFreezerIceThroughDoor
        | Class::BuiltInSideFreezer
        | Class::BuiltInBottomFreezer
        | Class::BuiltInSideFreezerIceThroughDoor => (1.10, 1.06, Some((2, 5))),
        Class::BottomFreezerIceThroughDoor | Class::BuiltInBottomFreezerIceThroughDoor => {
            (1.10, 1.06, Some((3, 5)))
        }
        _ => return None,
    };
    Some(DoorFactors {
        transparent,
        door_in_door,
        outside,
    })
}

/// To the nearest whole kilowatt hour, halves up (10 CFR 430.32(a)). What lies below a half by no more
/// than doubles err is a half.
fn rounded(year: f64) -> u32 {
    libm::floor(year + 0.5 + 1e-9) as u32
}
