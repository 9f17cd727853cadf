//! The words of the screen with facts about a refrigerant.

use measure::refrigerant::{Concentration, InAir, Refrigerant, SafetyClass, SaturationError};

use crate::Locale;

/// The page's heading.
pub const TITLE: &str = "Facts about the refrigerant";
/// Which of them.
pub const WHICH: &str = "Which one?";
/// No reading here asks for gauges.
pub const SEALED: &str = "The circuit stays closed: no gauge, no piercing valve, no charge. These \
                          figures are for reading surfaces and plates, and for knowing what would \
                          be in the room.";
/// Above temperature and pressure.
pub const SATURATION: &str = "Boils and condenses";
/// The field of a temperature.
pub const TEMPERATURE: &str = "At a temperature of";
/// The field of a pressure.
pub const PRESSURE: &str = "Under a pressure of";
/// The choice of how a pressure is counted.
pub const COUNTED: &str = "That pressure is";
/// From the air around.
pub const GAUGE: &str = "Gauge: above the air around";
/// From vacuum.
pub const ABSOLUTE: &str = "Absolute: above vacuum";
/// For which air.
pub const SEA_LEVEL: &str =
    "For air at sea level, 1.013 bar or 14.7 psi. High up a gauge shows more.";
/// Above what a charge makes of a room.
pub const IN_A_ROOM: &str = "If all of it leaked out";
/// The field of the charge.
pub const CHARGE: &str = "Charge on the plate, in grams";
/// The field of the room's volume.
pub const ROOM: &str = "The room, in cubic metres";
/// The field of the cabinet's volume.
pub const CABINET: &str = "The cabinet, in litres";
/// The room, before its answer.
pub const ROOM_NAME: &str = "Room";
/// The cabinet, before its answer.
pub const CABINET_NAME: &str = "Cabinet";
/// What is taken for granted there, and isn't so.
pub const MIXED: &str = "Reckoned as evenly mixed. Gas that leaks lies on the floor and in the cabinet \
                         first: a figure below the limit clears nothing.";
/// What to do where it burns and may have leaked.
pub const IF_IT_BURNS: &str = "It burns. Where it may have leaked: doors and windows open, no switch, no \
                              plug pulled in the room, no flame; cut the power at the breaker.";
/// It doesn't burn.
pub const SAFE_FROM_FIRE: &str = "It doesn't burn, but it takes the place of air, and near a flame or hot metal it \
                                 breaks down to poison. Letting it out is forbidden in most places.";
/// More than a household machine may hold.
pub const BEYOND_LIMIT: &str = "More than 150 g: no household machine holds so much of what burns. Look at the \
                                plate again.";
/// No number.
pub const NOT_A_NUMBER: &str = "That isn't a number.";

/// What it is called.
#[must_use]
pub const fn name(gas: Refrigerant) -> &'static str {
    match gas {
        Refrigerant::Other => "Another, or not known",
        Refrigerant::R600a => "R600a, isobutane",
        Refrigerant::R290 => "R290, propane",
        Refrigerant::R12 => "R12",
        Refrigerant::R22 => "R22",
        Refrigerant::R134a => "R134a",
    }
}

/// Class and boiling point in lines.
#[must_use]
pub fn facts(gas: Refrigerant, locale: &Locale) -> Vec<String> {
    let class = match gas.safety_class() {
        Some(SafetyClass::A1) => "Safety class A1: not poisonous, doesn't burn.",
        Some(SafetyClass::A3) => "Safety class A3: not poisonous, burns easily.",
        None => "Safety class not known: taken as one that burns.",
    };
    let mut facts = vec![class.to_owned()];
    if let Some(boils) = gas.boiling_point() {
        facts.push(format!(
            "Boils at {} in the open, at sea level.",
            locale.temperature(boils)
        ));
    }
    facts
}

/// Why the curve has no answer.
#[must_use]
pub fn beyond(why: SaturationError, locale: &Locale) -> String {
    match why {
        SaturationError::UnknownRefrigerant => {
            "Which refrigerant it is isn't known, so its pressures aren't.".to_owned()
        }
        SaturationError::Temperature { range } => {
            let [from, to] = range.map(|end| locale.temperature(end));
            format!("Told from {from} to {to}.")
        }
        SaturationError::Pressure { .. } => {
            "So much or so little it never has between −50\u{a0}°C and 70\u{a0}°C.".to_owned()
        }
    }
}

/// What a charge makes of a volume of air.
#[must_use]
pub fn in_air(found: &InAir, locale: &Locale) -> String {
    let grams = found.concentration.get() * 1_000.0;
    let share = found.of_limit.get() * 100.0;
    let means = match found.reaches {
        Concentration::BelowQuarter => "under a quarter of what burns",
        Concentration::QuarterToLimit => "a quarter or more of what burns: everyone leaves",
        Concentration::Limit => "it can burn or explode",
    };
    let decimals = usize::from(grams < 10.0);
    format!(
        "{}\u{a0}g a cubic metre, {}\u{a0}% of the lower flammable limit: {means}.",
        locale.number(grams, decimals),
        locale.number(share, 0)
    )
}
