//! Classes of refrigerators and freezers in the American energy rule.

use quantity::CubicMetres;

/// A class of product, named as 10 CFR 430.32(a) numbers it ([`Class::number`]).
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Class {
    /// Refrigerators and refrigerator-freezers defrosted by hand.
    Manual,
    /// All-refrigerators defrosted by hand.
    ManualAllRefrigerator,
    /// Refrigerator-freezers with partial automatic defrost.
    PartialAutomatic,
    /// Automatic defrost, freezer on top, no ice through the door.
    TopFreezer,
    /// All-refrigerators with automatic defrost.
    AutomaticAllRefrigerator,
    /// Automatic defrost, freezer beside, no ice through the door.
    SideFreezer,
    /// Automatic defrost, freezer below, no ice through the door.
    BottomFreezer,
    /// Automatic defrost, freezer below, ice through the door.
    BottomFreezerIceThroughDoor,
    /// Automatic defrost, freezer on top, ice through the door.
    TopFreezerIceThroughDoor,
    /// Automatic defrost, freezer beside, ice through the door.
    SideFreezerIceThroughDoor,
    /// Upright freezers defrosted by hand.
    UprightFreezerManual,
    /// Upright freezers with automatic defrost.
    UprightFreezerAutomatic,
    /// Chest freezers and all others that are not compact.
    ChestFreezer,
    /// Chest freezers with automatic defrost.
    ChestFreezerAutomatic,
    /// Compact, defrosted by hand.
    CompactManual,
    /// Compact all-refrigerators defrosted by hand.
    CompactManualAllRefrigerator,
    /// Compact, partial automatic defrost.
    CompactPartialAutomatic,
    /// Compact, automatic defrost, freezer on top.
    CompactTopFreezer,
    /// Compact all-refrigerators with automatic defrost.
    CompactAutomaticAllRefrigerator,
    /// Compact, automatic defrost, freezer beside.
    CompactSideFreezer,
    /// Compact, automatic defrost, freezer below.
    CompactBottomFreezer,
    /// Compact upright freezers defrosted by hand.
    CompactUprightFreezerManual,
    /// Compact upright freezers with automatic defrost.
    CompactUprightFreezerAutomatic,
    /// Compact chest freezers.
    CompactChestFreezer,
    /// Built in: automatic defrost, freezer on top.
    BuiltInTopFreezer,
    /// Built in: all-refrigerators with automatic defrost.
    BuiltInAllRefrigerator,
    /// Built in: freezer beside, no ice through the door.
    BuiltInSideFreezer,
    /// Built in: freezer below, no ice through the door.
    BuiltInBottomFreezer,
    /// Built in: freezer below, ice through the door.
    BuiltInBottomFreezerIceThroughDoor,
    /// Built in: freezer beside, ice through the door.
    BuiltInSideFreezerIceThroughDoor,
    /// Built in: upright freezers with automatic defrost.
    BuiltInUprightFreezer,
    /// Built in: upright freezers with ice through the door, a class of its own from 2029 on.
    BuiltInUprightFreezerIceThroughDoor,
}

/// What a class is made of, as far as its volumes count differently.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Compartments {
    /// A refrigerator with a freezer of 0 °F.
    RefrigeratorFreezer,
    /// A refrigerator with a colder compartment of 15 °F at most, as many small ones have.
    BasicRefrigerator,
    /// No frozen compartment to speak of.
    AllRefrigerator,
    /// Nothing but a freezer.
    Freezer,
}

impl Class {
    /// All of them, in the rule's order.
    pub const ALL: [Self; 32] = [
        Self::Manual,
        Self::ManualAllRefrigerator,
        Self::PartialAutomatic,
        Self::TopFreezer,
        Self::AutomaticAllRefrigerator,
        Self::SideFreezer,
        Self::BottomFreezer,
        Self::BottomFreezerIceThroughDoor,
        Self::TopFreezerIceThroughDoor,
        Self::SideFreezerIceThroughDoor,
        Self::UprightFreezerManual,
        Self::UprightFreezerAutomatic,
        Self::ChestFreezer,
        Self::ChestFreezerAutomatic,
        Self::CompactManual,
        Self::CompactManualAllRefrigerator,
        Self::CompactPartialAutomatic,
        Self::CompactTopFreezer,
        Self::CompactAutomaticAllRefrigerator,
        Self::CompactSideFreezer,
        Self::CompactBottomFreezer,
        Self::CompactUprightFreezerManual,
        Self::CompactUprightFreezerAutomatic,
        Self::CompactChestFreezer,
        Self::BuiltInTopFreezer,
        Self::BuiltInAllRefrigerator,
        Self::BuiltInSideFreezer,
        Self::BuiltInBottomFreezer,
        Self::BuiltInBottomFreezerIceThroughDoor,
        Self::BuiltInSideFreezerIceThroughDoor,
        Self::BuiltInUprightFreezer,
        Self::BuiltInUprightFreezerIceThroughDoor,
    ];

    /// The rule's own number.
    #[must_use]
    pub const fn number(self) -> &'static str {
        match self {
            Self::Manual => "1",
            Self::ManualAllRefrigerator => "1A",
            Self::PartialAutomatic => "2",
            Self::TopFreezer => "3",
            Self::AutomaticAllRefrigerator => "3A",
            Self::SideFreezer => "4",
            Self::BottomFreezer => "5",
            Self::BottomFreezerIceThroughDoor => "5A",
            Self::TopFreezerIceThroughDoor => "6",
            Self::SideFreezerIceThroughDoor => "7",
            Self::UprightFreezerManual => "8",
            Self::UprightFreezerAutomatic => "9",
            Self::ChestFreezer => "10",
            Self::ChestFreezerAutomatic => "10A",
            Self::CompactManual => "11",
            Self::CompactManualAllRefrigerator => "11A",
            Self::CompactPartialAutomatic => "12",
            Self::CompactTopFreezer => "13",
            Self::CompactAutomaticAllRefrigerator => "13A",
            Self::CompactSideFreezer => "14",
            Self::CompactBottomFreezer => "15",
            Self::CompactUprightFreezerManual => "16",
            Self::CompactUprightFreezerAutomatic => "17",
            Self::CompactChestFreezer => "18",
            Self::BuiltInTopFreezer => "3-BI",
            Self::BuiltInAllRefrigerator => "3A-BI",
            Self::BuiltInSideFreezer => "4-BI",
            Self::BuiltInBottomFreezer => "5-BI",
            Self::BuiltInBottomFreezerIceThroughDoor => "5A-BI",
            Self::BuiltInSideFreezerIceThroughDoor => "7-BI",
            Self::BuiltInUprightFreezer => "9-BI",
            Self::BuiltInUprightFreezerIceThroughDoor => "9A-BI",
        }
    }

    /// Whether the class is one of freezers and nothing else.
    #[must_use]
    pub const fn is_freezer(self) -> bool {
        matches!(
            self,
            Self::UprightFreezerManual
                | Self::UprightFreezerAutomatic
                | Self::ChestFreezer
                | Self::ChestFreezerAutomatic
                | Self::CompactUprightFreezerManual
                | Self::CompactUprightFreezerAutomatic
                | Self::CompactChestFreezer
                | Self::BuiltInUprightFreezer
                | Self::BuiltInUprightFreezerIceThroughDoor
        )
    }

    /// Whether the class is one of compact products: below 7.75 cubic feet in all (10 CFR
    /// 430.32(a)), and 36 inches high at most (from memory).
    #[must_use]
    pub const fn is_compact(self) -> bool {
        matches!(
            self,
            Self::CompactManual
                | Self::CompactManualAllRefrigerator
                | Self::CompactPartialAutomatic
                | Self::CompactTopFreezer
                | Self::CompactAutomaticAllRefrigerator
                | Self::CompactSideFreezer
                | Self::CompactBottomFreezer
                | Self::CompactUprightFreezerManual
                | Self::CompactUprightFreezerAutomatic
                | Self::CompactChestFreezer
        )
    }

    /// Whether the class is one of all-refrigerators.
    #[must_use]
    pub const fn is_all_refrigerator(self) -> bool {
        matches!(
            self,
            Self::ManualAllRefrigerator
                | Self::AutomaticAllRefrigerator
                | Self::CompactManualAllRefrigerator
                | Self::CompactAutomaticAllRefrigerator
                | Self::BuiltInAllRefrigerator
        )
    }

    /// Whether products of both kinds stand in the class, so that it has to be asked what the colder
    /// compartment is.
    #[must_use]
    pub const fn may_be_basic(self) -> bool {
        matches!(self, Self::Manual | Self::CompactManual)
    }

    /// Whether the rule has the class with and without an automatic icemaker, as 3I beside 3 or 9I
    /// beside 9: ice through the door has one in its limit, and no chest freezer has a class with one
    /// (10 CFR 430.32(a)).
    #[must_use]
    pub const fn may_have_icemaker(self) -> bool {
        matches!(
            self,
            Self::TopFreezer
                | Self::SideFreezer
                | Self::BottomFreezer
                | Self::UprightFreezerAutomatic
                | Self::CompactTopFreezer
                | Self::CompactSideFreezer
                | Self::CompactBottomFreezer
                | Self::BuiltInTopFreezer
                | Self::BuiltInSideFreezer
                | Self::BuiltInBottomFreezer
                | Self::BuiltInUprightFreezer
        )
    }

    /// What its products are made of, unless [`Class::may_be_basic`] and that is known.
    #[must_use]
    pub const fn compartments(self) -> Compartments {
        if self.is_freezer() {
            Compartments::Freezer
        } else if self.is_all_refrigerator() {
            Compartments::AllRefrigerator
        } else {
            Compartments::RefrigeratorFreezer
        }
    }
}

/// One cubic foot, exact by the foot of 1959: 0.3048³ m³.
pub const CUBIC_FOOT: CubicMetres = CubicMetres::new(0.3048 * 0.3048 * 0.3048);
