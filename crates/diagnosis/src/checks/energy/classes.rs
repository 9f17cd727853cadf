//! The classes of the American energy rule as choices.

use measure::energy::Class;

use crate::checks::machine::Kind;
use crate::choice::choices;

choices! {
    /// The class of a machine, as its label or its make tells.
    pub enum EnergyClass answers "energy" / "class" {
        /// Class 1 of 10 CFR 430.32(a).
        Manual = "class-1",
        /// Class 1A of 10 CFR 430.32(a).
        ManualAllRefrigerator = "class-1a",
        /// Class 2 of 10 CFR 430.32(a).
        PartialAutomatic = "class-2",
        /// Class 3 of 10 CFR 430.32(a).
        TopFreezer = "class-3",
        /// Class 3A of 10 CFR 430.32(a).
        AutomaticAllRefrigerator = "class-3a",
        /// Class 4 of 10 CFR 430.32(a).
        SideFreezer = "class-4",
        /// Class 5 of 10 CFR 430.32(a).
        BottomFreezer = "class-5",
        /// Class 5A of 10 CFR 430.32(a).
        BottomFreezerIceThroughDoor = "class-5a",
        /// Class 6 of 10 CFR 430.32(a).
        TopFreezerIceThroughDoor = "class-6",
        /// Class 7 of 10 CFR 430.32(a).
        SideFreezerIceThroughDoor = "class-7",
        /// Class 8 of 10 CFR 430.32(a).
        UprightFreezerManual = "class-8",
        /// Class 9 of 10 CFR 430.32(a).
        UprightFreezerAutomatic = "class-9",
        /// Class 10 of 10 CFR 430.32(a).
        ChestFreezer = "class-10",
        /// Class 10A of 10 CFR 430.32(a).
        ChestFreezerAutomatic = "class-10a",
        /// Class 11 of 10 CFR 430.32(a).
        CompactManual = "class-11",
        /// Class 11A of 10 CFR 430.32(a).
        CompactManualAllRefrigerator = "class-11a",
        /// Class 12 of 10 CFR 430.32(a).
        CompactPartialAutomatic = "class-12",
        /// Class 13 of 10 CFR 430.32(a).
        CompactTopFreezer = "class-13",
        /// Class 13A of 10 CFR 430.32(a).
        CompactAutomaticAllRefrigerator = "class-13a",
        /// Class 14 of 10 CFR 430.32(a).
        CompactSideFreezer = "class-14",
        /// Class 15 of 10 CFR 430.32(a).
        CompactBottomFreezer = "class-15",
        /// Class 16 of 10 CFR 430.32(a).
        CompactUprightFreezerManual = "class-16",
        /// Class 17 of 10 CFR 430.32(a).
        CompactUprightFreezerAutomatic = "class-17",
        /// Class 18 of 10 CFR 430.32(a).
        CompactChestFreezer = "class-18",
        /// Class 3-BI of 10 CFR 430.32(a).
        BuiltInTopFreezer = "class-3-bi",
        /// Class 3A-BI of 10 CFR 430.32(a).
        BuiltInAllRefrigerator = "class-3a-bi",
        /// Class 4-BI of 10 CFR 430.32(a).
        BuiltInSideFreezer = "class-4-bi",
        /// Class 5-BI of 10 CFR 430.32(a).
        BuiltInBottomFreezer = "class-5-bi",
        /// Class 5A-BI of 10 CFR 430.32(a).
        BuiltInBottomFreezerIceThroughDoor = "class-5a-bi",
        /// Class 7-BI of 10 CFR 430.32(a).
        BuiltInSideFreezerIceThroughDoor = "class-7-bi",
        /// Class 9-BI of 10 CFR 430.32(a).
        BuiltInUprightFreezer = "class-9-bi",
        /// Class 9A-BI of 10 CFR 430.32(a).
        BuiltInUprightFreezerIceThroughDoor = "class-9a-bi",
        /// Sold elsewhere, under other rules: nothing to compare with.
        OtherRules = "other-rules",
    }
}

impl EnergyClass {
    /// The class in the rule; none for machines of other rules.
    #[must_use]
    pub const fn class(self) -> Option<Class> {
        Some(match self {
            Self::Manual => Class::Manual,
            Self::ManualAllRefrigerator => Class::ManualAllRefrigerator,
            Self::PartialAutomatic => Class::PartialAutomatic,
            Self::TopFreezer => Class::TopFreezer,
            Self::AutomaticAllRefrigerator => Class::AutomaticAllRefrigerator,
            Self::SideFreezer => Class::SideFreezer,
            Self::BottomFreezer => Class::BottomFreezer,
            Self::BottomFreezerIceThroughDoor => Class::BottomFreezerIceThroughDoor,
            Self::TopFreezerIceThroughDoor => Class::TopFreezerIceThroughDoor,
            Self::SideFreezerIceThroughDoor => Class::SideFreezerIceThroughDoor,
            Self::UprightFreezerManual => Class::UprightFreezerManual,
            Self::UprightFreezerAutomatic => Class::UprightFreezerAutomatic,
            Self::ChestFreezer => Class::ChestFreezer,
            Self::ChestFreezerAutomatic => Class::ChestFreezerAutomatic,
            Self::CompactManual => Class::CompactManual,
            Self::CompactManualAllRefrigerator => Class::CompactManualAllRefrigerator,
            Self::CompactPartialAutomatic => Class::CompactPartialAutomatic,
            Self::CompactTopFreezer => Class::CompactTopFreezer,
            Self::CompactAutomaticAllRefrigerator => Class::CompactAutomaticAllRefrigerator,
            Self::CompactSideFreezer => Class::CompactSideFreezer,
            Self::CompactBottomFreezer => Class::CompactBottomFreezer,
            Self::CompactUprightFreezerManual => Class::CompactUprightFreezerManual,
            Self::CompactUprightFreezerAutomatic => Class::CompactUprightFreezerAutomatic,
            Self::CompactChestFreezer => Class::CompactChestFreezer,
            Self::BuiltInTopFreezer => Class::BuiltInTopFreezer,
            Self::BuiltInAllRefrigerator => Class::BuiltInAllRefrigerator,
            Self::BuiltInSideFreezer => Class::BuiltInSideFreezer,
            Self::BuiltInBottomFreezer => Class::BuiltInBottomFreezer,
            Self::BuiltInBottomFreezerIceThroughDoor => Class::BuiltInBottomFreezerIceThroughDoor,
            Self::BuiltInSideFreezerIceThroughDoor => Class::BuiltInSideFreezerIceThroughDoor,
            Self::BuiltInUprightFreezer => Class::BuiltInUprightFreezer,
            Self::BuiltInUprightFreezerIceThroughDoor => Class::BuiltInUprightFreezerIceThroughDoor,
            Self::OtherRules => return None,
        })
    }

    /// Whether a machine of that kind may be of the class: what is offered first. Built-in chests and
    /// the like aren't in the rule; a refrigerator with an ice box may be called one without a freezer.
    #[must_use]
    pub const fn fits(self, kind: Kind) -> bool {
        let Some(class) = self.class() else {
            return true;
        };
        let is_chest = matches!(
            class,
            Class::ChestFreezer | Class::ChestFreezerAutomatic | Class::CompactChestFreezer
        );
        match kind {
            Kind::ChestFreezer => is_chest,
            Kind::UprightFreezer => class.is_freezer() && !is_chest,
            Kind::Refrigerator => class.is_all_refrigerator() || class.may_be_basic(),
            Kind::FridgeFreezer => !class.is_freezer() && !class.is_all_refrigerator(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::choice::Choice;

    #[test]
    fn each_class_fits_some_kind_and_each_kind_a_part_of_them() {
        let fitting = |kind| EnergyClass::ALL.iter().filter(|one| one.fits(kind)).count();
        let counts = [
            Kind::ChestFreezer,
            Kind::UprightFreezer,
            Kind::Refrigerator,
            Kind::FridgeFreezer,
        ]
        .map(fitting);
        // Each with the other rules; both classes of basic refrigerators fit two kinds.
        assert_eq!(counts, [4, 7, 8, 19]);
        assert_eq!(counts.iter().sum::<usize>(), EnergyClass::ALL.len() + 3 + 2);
        assert!(
            EnergyClass::ALL
                .iter()
                .all(|one| Kind::ALL.iter().any(|kind| one.fits(*kind)))
        );
    }

    #[test]
    fn each_class_of_the_rule_is_offered_once_under_its_number() {
        let offered: Vec<Class> = EnergyClass::ALL
            .iter()
            .filter_map(|one| one.class())
            .collect();
        assert_eq!(offered, Class::ALL);
        for one in EnergyClass::ALL {
            let Some(class) = one.class() else { continue };
            assert_eq!(
                one.name(),
                format!("class-{}", class.number().to_ascii_lowercase())
            );
        }
    }
}
