//! The compartments that are to get cold, by kind of machine.

use job::Place;
use measure::cool_down::{CabinetKind, CoolDownPrior, Goal};
use quantity::Celsius;

use super::CoolDown;
use crate::Kind;

/// What is to get cold.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Compartment {
    /// The freezer.
    Freezer,
    /// The fresh-food compartment.
    FreshFood,
}

impl Compartment {
    /// Those that a machine of this kind has; all where nobody has said what it is. An ice box in
    /// a refrigerator has no target of its own.
    #[must_use]
    pub const fn of_kind(kind: Option<Kind>) -> &'static [Self] {
        match kind {
            Some(Kind::ChestFreezer | Kind::UprightFreezer) => &[Self::Freezer],
            Some(Kind::Refrigerator) => &[Self::FreshFood],
            Some(Kind::FridgeFreezer) | None => &[Self::Freezer, Self::FreshFood],
        }
    }

    /// Where its thermometer lies.
    #[must_use]
    pub const fn place(self) -> Place {
        match self {
            Self::Freezer => Place::Freezer,
            Self::FreshFood => Place::FreshFood,
        }
    }

    /// What it is to reach within a day: 0 °F and 40 °F (USDA FSIS and FDA).
    #[must_use]
    pub const fn goal(self) -> Goal {
        let target = match self {
            Self::Freezer => Celsius::new(-18.0),
            Self::FreshFood => Celsius::new(4.0),
        };
        Goal {
            target,
            within: CoolDown::DAY,
        }
    }

    pub(crate) const fn prior(self, kind: Option<Kind>) -> CoolDownPrior {
        match (self, kind) {
            (Self::Freezer, Some(Kind::ChestFreezer)) => CabinetKind::ChestFreezer.prior(),
            (Self::Freezer, Some(Kind::FridgeFreezer)) => CabinetKind::CombinedFreezer.prior(),
            (Self::Freezer, _) => CabinetKind::UprightFreezer.prior(),
            (Self::FreshFood, Some(Kind::FridgeFreezer)) => CabinetKind::CombinedFreshFood.prior(),
            (Self::FreshFood, _) => CabinetKind::Refrigerator.prior(),
        }
    }
}
