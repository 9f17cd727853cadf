//! Words for the choices of the unplugged bench.

use diagnosis::{
    Choice, Closed, Contact, EarthPin, Inverted, Looks, PlateMains, ProtectorKind, Sign,
    StartDeviceKind, Stores, TesterChoice, Upright, Warmth,
};

use job::Question;

use crate::Words;
use crate::page::asked;
use crate::powered_choices::powered_choice;

/// The words of a choice that answers one of the bench's questions.
pub(crate) fn bench_choice(question: &Question, name: &str) -> Option<&'static str> {
    asked::<PlateMains>(question, name)
        .or_else(|| asked::<EarthPin>(question, name))
        .or_else(|| asked::<TesterChoice>(question, name))
        .or_else(|| asked::<ProtectorKind>(question, name))
        .or_else(|| asked::<Warmth>(question, name))
        .or_else(|| asked::<StartDeviceKind>(question, name))
        .or_else(|| asked::<Looks>(question, name))
        .or_else(|| asked::<Upright>(question, name))
        .or_else(|| asked::<Inverted>(question, name))
        .or_else(|| asked::<Contact>(question, name))
        .or_else(|| asked::<Stores>(question, name))
        .or_else(|| powered_choice(question, name))
        .or_else(|| Sign::from_name(name).map(Words::words))
}

impl Words for PlateMains {
    fn words(self) -> &'static str {
        match self {
            Self::V120F60 => "110 to 127 V",
            Self::V230F50 => "220 to 240 V, 50 Hz or both",
            Self::V220F60 => "220 to 240 V, 60 Hz only",
            Self::V100 => "100 V",
            Self::Unreadable => "Gone, or I can't read it",
        }
    }
}

impl Words for Sign {
    fn words(self) -> &'static str {
        match self {
            Self::CordDamaged => "Cord or plug cut, crushed or scorched",
            Self::Burnt => "Soot, melted plastic or a burnt smell",
            Self::OilStain => "Oil on a tube or under the compressor",
            Self::Puncture => "A hole or a nick in a tube or a wall",
            Self::EarlierSealedWork => "A valve clamped on a tube, or a second braze",
            Self::Rodents => "Droppings, a nest or chewed wires",
            Self::MissingParts => "A cover or a part is missing",
            Self::Wet => "Wiring or boards are wet",
        }
    }
}

impl Words for EarthPin {
    fn words(self) -> &'static str {
        match self {
            Self::Has => "It has an earth pin",
            Self::None => "No earth pin",
        }
    }
}

impl Words for TesterChoice {
    fn words(self) -> &'static str {
        match self {
            Self::Ohmmeter => "Multimeter on ohms",
            Self::Tester250 => "Insulation tester, 250 V",
            Self::Tester500 => "Insulation tester, 500 V",
        }
    }
}

impl Words for ProtectorKind {
    fn words(self) -> &'static str {
        match self {
            Self::External => "A small disc or box at the compressor",
            Self::Inside => "None to be seen",
        }
    }
}

impl Words for Warmth {
    fn words(self) -> &'static str {
        match self {
            Self::Rested => "Rested half an hour or more",
            Self::Warm => "Powered lately, or still warm",
        }
    }
}

impl Words for StartDeviceKind {
    fn words(self) -> &'static str {
        match self {
            Self::Ptc => "PTC start device",
            Self::CurrentRelay => "Current relay",
            Self::PotentialRelay => "Potential relay",
            Self::Electronic => "Electronic start device",
            Self::NotFound => "There is none, or I can't find it",
        }
    }

    fn hint(self) -> Option<&'static str> {
        match self {
            Self::Ptc => Some("A flat box, a disc inside, nothing moves"),
            Self::CurrentRelay => Some("Thick wire on a coil; it clicks when turned over"),
            Self::PotentialRelay => Some("A box with terminals 1, 2 and 5"),
            Self::Electronic => Some("A sealed module with a circuit board"),
            Self::NotFound => None,
        }
    }
}

impl Words for Looks {
    fn words(self) -> &'static str {
        match self {
            Self::Whole => "Whole, and silent when shaken",
            Self::Rattles => "Something rattles in it",
            Self::Burnt => "Cracked, burnt or smelling of it",
        }
    }
}

impl Words for Upright {
    fn words(self) -> &'static str {
        match self {
            Self::Open => "Over range",
            Self::Closed => "Reads next to nothing",
        }
    }
}

impl Words for Inverted {
    fn words(self) -> &'static str {
        match self {
            Self::Closed => "Reads next to nothing",
            Self::Open => "Over range",
        }
    }
}

impl Words for Contact {
    fn words(self) -> &'static str {
        match self {
            Self::Closed => "Reads next to nothing",
            Self::Open => "Over range",
        }
    }
}

impl Words for Stores {
    fn words(self) -> &'static str {
        match self {
            Self::Nothing => "Neither capacitor nor board",
            Self::Capacitor => "A start or run capacitor",
            Self::InverterBoard => "An inverter's board",
        }
    }

    fn hint(self) -> Option<&'static str> {
        match self {
            Self::Capacitor => Some("A can or a block, marked µF"),
            Self::InverterBoard => Some("A board in a box at the compressor, three thick wires"),
            Self::Nothing => None,
        }
    }
}

impl Words for Closed {
    fn words(self) -> &'static str {
        match self {
            Self::Stop => "something above says stop",
            Self::PlugNotChecked => "the ground check at the plug isn't done",
            Self::PlugNotClear => "the ground check at the plug isn't clear",
            Self::PinsNotChecked => "the pins to the shell aren't measured",
            Self::PinsNotClear => "a pin leaks, or may leak, to the shell",
        }
    }
}
