//! What is known before the visit, as it is offered.

use diagnosis::{Build, History};

use crate::Words;

impl Words for History {
    fn words(self) -> &'static str {
        match self {
            Self::CalledSealed => "Someone in the trade said “compressor” or “gas”",
            Self::StartDeviceReplaced => "The start device was replaced, without change",
            Self::StoppedAfterStorm => "It stopped after a storm or a power cut",
            Self::StoppedAfterMoving => "It stopped after it was moved or laid down",
            Self::DefrostedByBlade => "It was defrosted with a blade",
            Self::WorksAfterThaw => "It works for some days after each thaw",
            Self::FreezerColdRestWarm => "The freezer is cold, the fresh food warm",
            Self::UnusedForAYear => "It stood unused for over a year",
            Self::Outbuilding => "It stood in an outbuilding, damp or near the sea",
            Self::Old => "It is older than fifteen years",
            Self::Young => "It is younger than three years",
            Self::ExDisplay => "It stood in a shop",
            Self::ThickFrost => "Frost over a centimetre thick on all plates",
        }
    }
}

impl Words for Build {
    fn words(self) -> &'static str {
        match self {
            Self::ManualDefrost => "Frost thawed by hand",
            Self::FrostFree => "Frost-free, one speed",
            Self::Inverter => "Frost-free, with an inverter",
        }
    }

    fn hint(self) -> Option<&'static str> {
        Some(match self {
            Self::ManualDefrost => "Frost shows on its walls or plates",
            Self::FrostFree => "A fan blows cold air, no frost on the walls",
            Self::Inverter => "A board in a box at the compressor, three alike wires to it",
        })
    }
}
