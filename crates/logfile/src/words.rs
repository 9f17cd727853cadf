//! What headings say, in English, German, French, Spanish and Swedish.
//!
//! Headings are compared without capitals and accents. The lists are short on purpose: what is not
//! in them is asked.

use crate::layout::ElapsedUnit;

/// A place that a heading names. Only a hint: the person says where a probe was.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PlaceHint {
    /// The freezer.
    Freezer,
    /// The fresh-food compartment.
    FreshFood,
    /// The room or the air around.
    Room,
    /// The evaporator.
    Evaporator,
    /// The condenser.
    Condenser,
}

/// Small letters without accents, as far as Latin-1 has them. The general change of case would bring
/// tables of 24 kB into the page.
pub(crate) fn folded(text: &str) -> String {
    text.chars().map(folded_letter).collect()
}

pub(crate) const fn folded_letter(letter: char) -> char {
    match letter {
        'À'..='Å' | 'à'..='å' => 'a',
        'Ç' | 'ç' => 'c',
        'È'..='Ë' | 'è'..='ë' => 'e',
        'Ì'..='Ï' | 'ì'..='ï' => 'i',
        'Ñ' | 'ñ' => 'n',
        'Ò'..='Ö' | 'Ø' | 'ò'..='ö' | 'ø' => 'o',
        'Ù'..='Ü' | 'ù'..='ü' => 'u',
        _ => letter.to_ascii_lowercase(),
    }
}

/// The words of a heading: what is between anything that is no letter and no digit.
pub(crate) fn tokens(folded: &str) -> impl Iterator<Item = &str> {
    folded
        .split(|letter: char| !letter.is_ascii_alphanumeric())
        .filter(|token| !token.is_empty())
}

fn any_begins(heading: &str, beginnings: &[&str]) -> bool {
    tokens(heading).any(|token| beginnings.iter().any(|begin| token.starts_with(begin)))
}

fn any_is(heading: &str, words: &[&str]) -> bool {
    tokens(heading).any(|token| words.contains(&token))
}

/// Whether a heading (folded) names another quantity than a temperature, or the dew point, which
/// is none of a place.
pub(crate) fn names_another_quantity(heading: &str) -> bool {
    const BEGINNINGS: &[&str] = &[
        "hum",
        "feucht",
        "luftfeucht",
        "fukt",
        "luftfukt",
        "batt",
        "akku",
        "volt",
        "spannung",
        "tension",
        "press",
        "druck",
        "presion",
        "lufttryck",
        "status",
        "alarm",
        "event",
        "ereignis",
        "dew",
        "taupunkt",
        "rosee",
        "rocio",
        "daggpunkt",
        "lux",
        "light",
        "watt",
        "power",
        "leist",
        "puiss",
        "potencia",
        "rssi",
        "signal",
        "strom",
        "current",
        "courant",
        "corriente",
        "kwh",
        "energ",
        "door",
        "tur",
        "porte",
        "puerta",
    ];
    const WORDS: &[&str] = &["rh", "rf", "hr", "mv", "ma", "wh", "hpa", "mbar", "ppm"];
    // A letter alone is more often that of a probe.
    const IN_BRACKETS: &[&str] = &["(v)", "[v]", "(a)", "[a]", "(w)", "[w]"];
    heading.contains('%')
        || any_begins(heading, BEGINNINGS)
        || any_is(heading, WORDS)
        || IN_BRACKETS.iter().any(|unit| heading.contains(unit))
}

/// Whether a heading (folded) says temperature in so many words.
pub(crate) fn names_temperature(heading: &str) -> bool {
    any_begins(heading, &["temp", "lufttemp", "innentemp", "aussentemp"])
}

/// Whether a heading (folded) says that rows are numbered.
pub(crate) fn names_a_number(heading: &str) -> bool {
    const BEGINNINGS: &[&str] = &[
        "idx", "index", "sample", "record", "lfd", "zeile", "row", "scan", "messung", "num",
        "muestra", "echant", "count", "reading", "mesure", "registro", "rad", "lopnr",
    ];
    heading.starts_with('#')
        || any_is(heading, &["no", "nr", "n", "id", "pos"])
        || any_begins(heading, BEGINNINGS)
}

/// Whether a heading (folded) says time, of whatever kind.
pub(crate) fn names_time(heading: &str) -> bool {
    const BEGINNINGS: &[&str] = &[
        "time", "zeit", "uhrzeit", "datum", "date", "fecha", "hora", "heure", "tiempo", "tid",
        "stamp", "unix", "epoch",
    ];
    // A letter alone is time only where nothing but its unit stands beside it: "T (s)".
    let is_letter = elapsed_unit_named(heading).is_some() && heading.starts_with("t ");
    any_begins(heading, BEGINNINGS)
        || any_is(heading, &["temps", "ts"])
        || is_letter
        || names_elapsed(heading)
}

/// Whether a heading (folded) says that time is counted from the beginning.
pub(crate) fn names_elapsed(heading: &str) -> bool {
    const BEGINNINGS: &[&str] = &[
        "elaps",
        "dauer",
        "laufzeit",
        "verstrich",
        "since",
        "duree",
        "ecoul",
        "transcurr",
        "durac",
        "forflut",
        "duration",
    ];
    any_begins(heading, BEGINNINGS)
}

/// What a heading (folded) says that time is counted in, if one thing.
pub(crate) fn elapsed_unit_named(heading: &str) -> Option<ElapsedUnit> {
    const UNITS: &[(ElapsedUnit, &[&str], &[&str])] = &[
        (ElapsedUnit::Milliseconds, &["ms", "msec"], &["millis"]),
        (
            ElapsedUnit::Seconds,
            &["s", "sec", "secs"],
            &["second", "sek", "seg"],
        ),
        (ElapsedUnit::Minutes, &["mn"], &["min"]),
        (
            ElapsedUnit::Hours,
            &["h", "hr", "hrs", "std", "heures", "horas", "timmar"],
            &["hour", "stund"],
        ),
        (
            ElapsedUnit::Days,
            &["d", "dias"],
            &["day", "tag", "jour", "dag"],
        ),
    ];
    let mut named = UNITS
        .iter()
        .filter(|(_, words, beginnings)| any_is(heading, words) || any_begins(heading, beginnings));
    let unit = named.next()?.0;
    named.next().is_none().then_some(unit)
}

/// The place that a heading (folded) speaks of, if one.
pub(crate) fn place_named(heading: &str) -> Option<PlaceHint> {
    const PLACES: &[(PlaceHint, &[&str])] = &[
        (
            PlaceHint::Freezer,
            &[
                "freez", "gefrier", "tiefkuhl", "tk", "congel", "frys", "frz",
            ],
        ),
        (
            PlaceHint::FreshFood,
            &["fridge", "fresh", "kuhl", "refri", "frigo", "nevera", "kyl"],
        ),
        (
            PlaceHint::Room,
            &[
                "room", "ambient", "ambiant", "raum", "umgeb", "piece", "sala", "habita", "rum",
                "garage",
            ],
        ),
        (PlaceHint::Evaporator, &["evap", "verdampf", "forang"]),
        (PlaceHint::Condenser, &["cond", "verflussig", "kondens"]),
    ];
    let named = PLACES.iter().find(|(_, words)| any_begins(heading, words));
    named.map(|(place, _)| *place)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn headings_are_read_in_five_languages() {
        let place = |heading: &str| place_named(&folded(heading));
        assert_eq!(place("Gefrierfach °C"), Some(PlaceHint::Freezer));
        assert_eq!(place("Kühlteil"), Some(PlaceHint::FreshFood));
        assert_eq!(place("Température congélateur"), Some(PlaceHint::Freezer));
        assert_eq!(place("Sala"), Some(PlaceHint::Room));
        assert_eq!(place("Kylskåp"), Some(PlaceHint::FreshFood));
        assert_eq!(place("Probe 1"), None);
    }

    #[test]
    fn other_quantities_are_no_temperatures() {
        let other = |heading: &str| names_another_quantity(&folded(heading));
        for heading in [
            "Humidity (%RH)",
            "Luftfeuchte",
            "Humedad relativa",
            "Battery V",
            "Point de rosée °C",
            "Supply (V)",
        ] {
            assert!(other(heading), "{heading}");
        }
        for heading in ["Temperature (°C)", "Probe A1", "Fühler 2", "Freezer"] {
            assert!(!other(heading), "{heading}");
        }
    }
}
