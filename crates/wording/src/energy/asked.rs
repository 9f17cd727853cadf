//! What is asked about a machine's energy, and what may be answered.

use diagnosis::{
    Asked, Choice, ColdCompartment, ENERGY, EnergyClass, EnergyFigure, EnergyNeed, FigureError,
    Icemaker,
};
use job::Question;

use crate::Words;
use crate::page::asked;

/// What a question about energy is about; `None` for others.
pub(crate) fn about(question: &Question) -> Option<&'static str> {
    if question.check.as_str() != ENERGY {
        return None;
    }
    let item = question.item.as_str();
    let choices = [
        (EnergyClass::ITEM, "Class in the energy rule"),
        (ColdCompartment::ITEM, "The colder compartment"),
        (Icemaker::ITEM, "Icemaker"),
    ];
    let choice = choices
        .iter()
        .find(|(name, _)| *name == item)
        .map(|(_, words)| *words);
    choice.or_else(|| EnergyFigure::from_name(item).map(about_figure))
}

/// The words of a choice that answers one of these questions.
pub(crate) fn energy_choice(question: &Question, name: &str) -> Option<&'static str> {
    asked::<EnergyClass>(question, name)
        .or_else(|| asked::<ColdCompartment>(question, name))
        .or_else(|| asked::<Icemaker>(question, name))
}

/// What a figure is.
#[must_use]
pub const fn about_figure(figure: EnergyFigure) -> &'static str {
    match figure {
        EnergyFigure::FreshVolume => "Volume for fresh food",
        EnergyFigure::FrozenVolume => "Volume for frozen food",
        EnergyFigure::YearMade => "Year of make",
        EnergyFigure::Price => "Price of a kilowatt hour",
    }
}

impl Words for EnergyFigure {
    fn words(self) -> &'static str {
        match self {
            Self::FreshVolume => "How large is the fresh-food part, and in what unit?",
            Self::FrozenVolume => "How large is the freezer, and in what unit?",
            Self::YearMade => "When was it made?",
            Self::Price => "What does a kilowatt hour cost?",
        }
    }

    fn hint(self) -> Option<&'static str> {
        Some(match self {
            Self::FreshVolume | Self::FrozenVolume => "As the plate has it: 13.5 cu ft, or 382 l",
            Self::YearMade => "Four digits; the plate or the serial number tells",
            Self::Price => "Off a bill, in whatever currency",
        })
    }
}

impl Words for ColdCompartment {
    fn words(self) -> &'static str {
        match self {
            Self::Freezer => "A freezer for frozen food",
            Self::IceBox => "A box for ice, not that cold",
        }
    }
}

impl Words for Icemaker {
    fn words(self) -> &'static str {
        match self {
            Self::Has => "It makes ice by itself",
            Self::HasNot => "No icemaker",
        }
    }
}

impl Words for EnergyClass {
    fn words(self) -> &'static str {
        match self {
            Self::Manual => "Refrigerator or fridge-freezer, defrosted by hand",
            Self::ManualAllRefrigerator => "Refrigerator without freezer, defrosted by hand",
            Self::PartialAutomatic => "Fridge-freezer, freezer defrosted by hand",
            Self::TopFreezer => "Frost-free, freezer on top",
            Self::AutomaticAllRefrigerator => "Frost-free refrigerator without freezer",
            Self::SideFreezer => "Frost-free, freezer beside",
            Self::BottomFreezer => "Frost-free, freezer below",
            Self::BottomFreezerIceThroughDoor => "Frost-free, freezer below, ice through the door",
            Self::TopFreezerIceThroughDoor => "Frost-free, freezer on top, ice through the door",
            Self::SideFreezerIceThroughDoor => "Frost-free, freezer beside, ice through the door",
            Self::UprightFreezerManual => "Upright freezer, defrosted by hand",
            Self::UprightFreezerAutomatic => "Upright freezer, frost-free",
            Self::ChestFreezer => "Chest freezer",
            Self::ChestFreezerAutomatic => "Chest freezer, frost-free",
            Self::CompactManual => "Compact refrigerator, defrosted by hand",
            Self::CompactManualAllRefrigerator => "Compact, without freezer, defrosted by hand",
            Self::CompactPartialAutomatic => "Compact fridge-freezer, freezer defrosted by hand",
            Self::CompactTopFreezer => "Compact, frost-free, freezer on top",
            Self::CompactAutomaticAllRefrigerator => "Compact, frost-free, without freezer",
            Self::CompactSideFreezer => "Compact, frost-free, freezer beside",
            Self::CompactBottomFreezer => "Compact, frost-free, freezer below",
            Self::CompactUprightFreezerManual => "Compact upright freezer, defrosted by hand",
            Self::CompactUprightFreezerAutomatic => "Compact upright freezer, frost-free",
            Self::CompactChestFreezer => "Compact chest freezer",
            Self::BuiltInTopFreezer => "Built in, freezer on top",
            Self::BuiltInAllRefrigerator => "Built in, without freezer",
            Self::BuiltInSideFreezer => "Built in, freezer beside",
            Self::BuiltInBottomFreezer => "Built in, freezer below",
            Self::BuiltInBottomFreezerIceThroughDoor => {
                "Built in, freezer below, ice through the door"
            }
            Self::BuiltInSideFreezerIceThroughDoor => {
                "Built in, freezer beside, ice through the door"
            }
            Self::BuiltInUprightFreezer => "Built-in upright freezer",
            Self::BuiltInUprightFreezerIceThroughDoor => {
                "Built-in upright freezer, ice through the door"
            }
            Self::OtherRules => "Not sold in the United States",
        }
    }
}

/// Something that is not known yet.
#[must_use]
pub const fn need(need: EnergyNeed) -> &'static str {
    match need {
        EnergyNeed::Metering => "energy over a day, by a meter in the outlet",
        EnergyNeed::Class => "its class in the energy rule",
        EnergyNeed::ColdCompartment => "what its colder compartment is",
        EnergyNeed::Icemaker => "whether it makes ice by itself",
        EnergyNeed::Room => "how warm the room was meanwhile",
        EnergyNeed::Figure(EnergyFigure::FreshVolume) => "the volume for fresh food",
        EnergyNeed::Figure(EnergyFigure::FrozenVolume) => "the volume for frozen food",
        EnergyNeed::Figure(EnergyFigure::YearMade) => "the year of make",
        EnergyNeed::Figure(EnergyFigure::Price) => "the price of a kilowatt hour",
    }
}

/// Why a figure isn't understood.
#[must_use]
pub const fn figure_error(error: FigureError) -> &'static str {
    match error {
        FigureError::NotANumber => "Begin with a number, like 13.5.",
        FigureError::WhichUnit => "In what unit? Write 13.5 cu ft or 382 l.",
        FigureError::OtherUnit => {
            "Volumes are in litres (l), cubic feet (cu ft) or cubic metres (m3)."
        }
        FigureError::TooLarge => "No household machine is that large: look at the unit.",
        FigureError::NoSuchYear => "A year from 1930 on, in four digits.",
        FigureError::NoSuchPrice => "No kilowatt hour costs that.",
    }
}
