//! What stands on a meter's face.

use job::Unit;
use leptos::prelude::*;
use wording::page::practice as words;

/// A reading as a meter shows it: digits, and the unit beside them.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Face {
    /// The digits, or that it is over range.
    pub(super) digits: String,
    /// The unit with its prefix.
    pub(super) unit: String,
}

impl Face {
    /// Of a reading as it is typed: digits with a letter for the prefix.
    pub(super) fn of(typed: &str, unit: Unit) -> Self {
        let symbol = match unit {
            Unit::Ohm => "Ω",
            Unit::Volt => "V",
            Unit::Celsius => "°C",
            Unit::Farad => "F",
            Unit::Ampere => "A",
            Unit::Watt => "W",
            Unit::Metre => "m",
            Unit::WattHour => "Wh",
        };
        let prefix = match typed.chars().last() {
            Some('k') => "k",
            Some('M') => "M",
            Some('u') => "µ",
            _ => "",
        };
        // Over range ends in a capital letter too, which is no prefix.
        let digits = typed.trim_end_matches(['k', 'M', 'u']);
        Self {
            digits: digits.to_owned(),
            unit: [prefix, symbol].concat(),
        }
    }

    /// What somebody types who reads it off. Degrees with their scale: the page may count in the
    /// other one.
    pub(super) fn typed(typed: &str, unit: Unit) -> String {
        match unit {
            Unit::Celsius => [typed, " °C"].concat(),
            _ => typed.to_owned(),
        }
    }

    /// The same as said.
    pub(super) fn said(&self) -> String {
        if self.digits == "OL" {
            return [words::SHOWS, " OL: ", words::OVER_RANGE, "."].concat();
        }
        [words::SHOWS, " ", &self.digits, "\u{a0}", &self.unit, "."].concat()
    }
}

/// A meter with the reading on its face. What it shows is said in words beside it.
pub(super) fn drawn(face: &Face) -> AnyView {
    view! {
        <div class="meter" aria-hidden="true">
            <span class="meter-window">
                <span class="meter-digits">{face.digits.clone()}</span>
                <span class="meter-unit">{face.unit.clone()}</span>
            </span>
            <svg class="drawing" viewBox="0 0 44 44">
                <circle cx="22" cy="22" r="16"></circle>
                <path d="M22 22 31 12M8 36l-4 4M36 36l4 4"></path>
            </svg>
        </div>
    }
    .into_any()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn digits_and_unit_stand_apart_and_over_range_is_no_unit() {
        let face = |typed: &str, unit| {
            let Face { digits, unit } = Face::of(typed, unit);
            (digits, unit)
        };
        let pair = |digits: &str, unit: &str| (digits.to_owned(), unit.to_owned());
        assert_eq!(face("4.7", Unit::Ohm), pair("4.7", "Ω"));
        assert_eq!(face("30.2k", Unit::Ohm), pair("30.2", "kΩ"));
        assert_eq!(face("1.204M", Unit::Ohm), pair("1.204", "MΩ"));
        assert_eq!(face("4.02u", Unit::Farad), pair("4.02", "µF"));
        assert_eq!(face("-18.0", Unit::Celsius), pair("-18.0", "°C"));
        assert_eq!(face("OL", Unit::Ohm), pair("OL", "Ω"));
        assert!(Face::of("OL", Unit::Ohm).said().contains("over range"));
        assert_eq!(
            Face::of("30.2k", Unit::Ohm).said(),
            "The meter shows 30.2\u{a0}kΩ."
        );
    }
}
