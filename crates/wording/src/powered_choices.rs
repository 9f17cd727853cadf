//! Words for the choices of what is measured on a live machine.

use diagnosis::{
    CapacitorKind, Caught, CordConductors, LabelOf, OutletWiring, PowerSource, Protection,
    TripCompany, TripDevice, TripWhen,
};
use job::Question;
use measure::supply::Conductors;

use crate::Words;
use crate::energy::energy_choice;
use crate::page::asked;

/// The words of a choice that answers one of these questions.
pub(crate) fn powered_choice(question: &Question, name: &str) -> Option<&'static str> {
    asked::<Protection>(question, name)
        .or_else(|| asked::<OutletWiring>(question, name))
        .or_else(|| asked::<PowerSource>(question, name))
        .or_else(|| asked::<CordConductors>(question, name))
        .or_else(|| asked::<Caught>(question, name))
        .or_else(|| asked::<LabelOf>(question, name))
        .or_else(|| asked::<CapacitorKind>(question, name))
        .or_else(|| asked::<TripDevice>(question, name))
        .or_else(|| asked::<TripWhen>(question, name))
        .or_else(|| asked::<TripCompany>(question, name))
        .or_else(|| energy_choice(question, name))
}

impl Words for Protection {
    fn words(self) -> &'static str {
        match self {
            Self::TripsByItsButton => "A device that trips by its test button",
            Self::None => "None",
            Self::ButtonDoesNothing => "There is one, its button does nothing",
        }
    }
}

impl Words for OutletWiring {
    fn words(self) -> &'static str {
        match self {
            Self::Right => "Earth is there, poles are right",
            Self::EarthMissing => "Earth is missing",
            Self::PolesSwapped => "The poles are swapped",
            Self::NotLooked => "I haven't looked",
        }
    }
}

impl Words for PowerSource {
    fn words(self) -> &'static str {
        match self {
            Self::OutletAlone => "The outlet, nothing in between",
            Self::ExtensionCord => "An extension cord or a strip",
            Self::Generator => "A generator, or an inverter on a battery",
        }
    }
}

impl Words for CordConductors {
    fn words(self) -> &'static str {
        conductors(self.into())
    }
}

/// The size of conductors as it is printed.
pub(crate) const fn conductors(conductors: Conductors) -> &'static str {
    match conductors {
        Conductors::Awg18 => "18 AWG",
        Conductors::Awg16 => "16 AWG",
        Conductors::Awg14 => "14 AWG",
        Conductors::Awg12 => "12 AWG",
        Conductors::Awg10 => "10 AWG",
        Conductors::Square0_5 => "0.5 mm²",
        Conductors::Square0_75 => "0.75 mm²",
        Conductors::Square1_0 => "1.0 mm²",
        Conductors::Square1_5 => "1.5 mm²",
        Conductors::Square2_5 => "2.5 mm²",
    }
}

impl Words for Caught {
    fn words(self) -> &'static str {
        match self {
            Self::HumLasted => "It hummed for three seconds or more",
            Self::MeterKeepsLowest => "The meter keeps the lowest by itself",
            Self::Neither => "Neither, it was a moment",
        }
    }
}

impl Words for LabelOf {
    fn words(self) -> &'static str {
        match self {
            Self::Compressor => "The compressor's own",
            Self::WholeMachine => "The machine's plate",
        }
    }
}

impl Words for CapacitorKind {
    fn words(self) -> &'static str {
        match self {
            Self::Run => "Run capacitor, printed on it",
            Self::RunByPlate => "Run capacitor, only the plate names it",
            Self::Start => "Start capacitor, one number",
            Self::StartRange => "Start capacitor, a range",
        }
    }

    fn hint(self) -> Option<&'static str> {
        match self {
            Self::Run | Self::RunByPlate => Some("In circuit all the time, some µF"),
            Self::Start | Self::StartRange => {
                Some("In circuit for a second: measured discharged only")
            }
        }
    }
}

impl Words for TripDevice {
    fn words(self) -> &'static str {
        match self {
            Self::GroundFault => "A ground-fault device, 6 mA",
            Self::ResidualCurrent => "A residual-current device, 30 mA",
            Self::Breaker => "A breaker or a fuse",
            Self::ArcFault => "A device that looks for arcs",
        }
    }
}

impl Words for TripWhen {
    fn words(self) -> &'static str {
        match self {
            Self::AtOnce => "As the plug goes in",
            Self::AtStart => "As the compressor starts",
            Self::AtDefrost => "As a defrost begins",
            Self::HoursLater => "Hours later",
            Self::AsItStops => "As it stops, or something switches off",
            Self::Irregular => "Without a pattern",
        }
    }
}

impl Words for TripCompany {
    fn words(self) -> &'static str {
        match self {
            Self::Nothing => "Nothing else",
            Self::Others => "Other things too",
        }
    }
}
