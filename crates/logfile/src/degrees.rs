//! On which scale temperatures are.

use quantity::Celsius;

use crate::words::{folded, tokens};

/// A scale of temperature.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DegreeUnit {
    /// Degrees Celsius.
    Celsius,
    /// Degrees Fahrenheit.
    Fahrenheit,
    /// Kelvins.
    Kelvin,
}

impl DegreeUnit {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::Celsius, Self::Fahrenheit, Self::Kelvin];

    /// A number on this scale in degrees Celsius.
    ///
    /// ```
    /// use logfile::DegreeUnit;
    /// assert_eq!(DegreeUnit::Fahrenheit.to_celsius(-4.0).get(), -20.0);
    /// ```
    #[must_use]
    pub fn to_celsius(self, number: f64) -> Celsius {
        Celsius::new(match self {
            Self::Celsius => number,
            Self::Fahrenheit => (number - 32.0) / 1.8,
            Self::Kelvin => number - 273.15,
        })
    }

    /// The scale that stands behind a number in a cell: `°C`, `degF`, `K`.
    pub(crate) fn behind_number(text: &str) -> Option<Self> {
        let bare = text.trim_start_matches(['°', 'º', '˚', ' ', '\u{A0}', '\u{202F}']);
        let is = |spellings: &[&str]| spellings.iter().any(|one| bare.eq_ignore_ascii_case(one));
        match () {
            () if is(&["c", "℃", "degc", "deg c", "celsius", "deg. c"]) => Some(Self::Celsius),
            () if is(&["f", "℉", "degf", "deg f", "fahrenheit", "deg. f"]) => {
                Some(Self::Fahrenheit)
            }
            () if is(&["k", "kelvin"]) => Some(Self::Kelvin),
            () => None,
        }
    }

    /// The one scale that a heading or a line names. A single letter counts only behind a degree
    /// sign, in brackets, or behind "temp": "probe C" is the third probe.
    pub(crate) fn named_in(text: &str) -> Option<Self> {
        let text = folded(text);
        let mut named = Self::ALL.into_iter().filter(|unit| unit.is_named_in(&text));
        let unit = named.next()?;
        named.next().is_none().then_some(unit)
    }

    fn is_named_in(self, folded: &str) -> bool {
        let (letter, word, sign) = match self {
            Self::Celsius => ('c', "celsius", '℃'),
            Self::Fahrenheit => ('f', "fahrenheit", '℉'),
            Self::Kelvin => ('k', "kelvin", 'K'),
        };
        let behind_temp = {
            let mut words = tokens(folded).peekable();
            let mut found = false;
            while let Some(one) = words.next() {
                let says_temp = one.starts_with("temp") || one == "deg";
                let next_is = words
                    .peek()
                    .is_some_and(|next| next.len() == 1 && next.starts_with(letter));
                found |= says_temp && next_is;
            }
            found
        };
        let joined: bool = tokens(folded).any(|one| {
            one.strip_prefix("deg")
                .is_some_and(|rest| rest.len() == 1 && rest.starts_with(letter))
        });
        folded.contains(word)
            || folded.contains(sign)
            || behind_temp
            || joined
            || is_marked(folded, letter)
    }
}

/// Whether the letter stands alone behind a degree sign or in brackets.
fn is_marked(folded: &str, letter: char) -> bool {
    let alone = |rest: &str| {
        let mut rest = rest.trim_start().chars();
        rest.next() == Some(letter) && !rest.next().is_some_and(char::is_alphanumeric)
    };
    let behind = folded.split(['°', 'º', '˚']).skip(1);
    let bracketed = folded.split(['(', '[']).skip(1);
    let ends_bracket = |rest: &str| {
        rest.trim_start()
            .trim_start_matches(letter)
            .trim_start()
            .starts_with([')', ']'])
    };
    behind.into_iter().any(alone)
        || bracketed
            .into_iter()
            .any(|rest| alone(rest) && ends_bracket(rest))
}

/// How plausible each scale is, from the numbers alone; adds up to 1. The coldest and the warmest
/// number are held against four kinds of log: a cabinet that cools down from a room, a freezer and
/// a fresh-food compartment that hold their temperature, a room (`LOGS`). `None` where no scale
/// makes them plausible.
///
/// ```
/// use logfile::{DegreeUnit, plausible_units};
/// // A freezer from a warm room down, in degrees Fahrenheit.
/// let units = plausible_units(-2.0, 72.0).unwrap();
/// let likeliest = units.iter().max_by(|one, other| one.1.total_cmp(&other.1)).unwrap();
/// assert_eq!(likeliest.0, DegreeUnit::Fahrenheit);
/// ```
#[must_use]
pub fn plausible_units(coldest: f64, warmest: f64) -> Option<[(DegreeUnit, f64); 3]> {
    let density = |unit: DegreeUnit| {
        let [cold, warm] = [coldest, warmest].map(|number| unit.to_celsius(number).get());
        // Degrees Fahrenheit are smaller, so that each number has a smaller share.
        let step = if unit == DegreeUnit::Fahrenheit {
            1.8
        } else {
            1.0
        };
        let logs = LOGS
            .iter()
            .map(|(share, colds, warms)| share * bell(cold, *colds) * bell(warm, *warms));
        logs.sum::<f64>() / (step * step)
    };
    let densities = DegreeUnit::ALL.map(|unit| (unit, density(unit)));
    let sum: f64 = densities.iter().map(|one| one.1).sum();
    (sum > LEAST_DENSITY).then(|| densities.map(|(unit, one)| (unit, one / sum)))
}

/// A mean and a standard deviation in degrees Celsius.
type Bell = (f64, f64);

/// Kinds of log: how common, where their coldest and where their warmest number lies (judgement).
const LOGS: [(f64, Bell, Bell); 4] = [
    (0.4, (-12.0, 12.0), (21.0, 6.0)),
    (0.25, (-20.0, 5.0), (-14.0, 6.0)),
    (0.25, (3.0, 3.0), (7.0, 4.0)),
    (0.1, (18.0, 6.0), (24.0, 6.0)),
];
/// Six deviations off, on both numbers.
const LEAST_DENSITY: f64 = 1e-18;

fn bell(celsius: f64, (mean, deviation): Bell) -> f64 {
    let off = (celsius - mean) / deviation;
    libm::exp(-0.5 * off * off) / deviation
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn scales_are_found_in_headings_and_cells() {
        let named = DegreeUnit::named_in;
        for heading in [
            "Temp (°C)",
            "Temperatur [C]",
            "T ° C",
            "temp_c",
            "Celsius",
            "degC",
            "Fühler 1 ℃",
            "Temperature, deg C",
        ] {
            assert_eq!(named(heading), Some(DegreeUnit::Celsius), "{heading}");
        }
        for heading in ["Freezer ºF", "Temp F", "TEMP(F)", "degF"] {
            assert_eq!(named(heading), Some(DegreeUnit::Fahrenheit), "{heading}");
        }
        for heading in [
            "Probe C",
            "Channel F",
            "Temperature",
            "°C/°F",
            "Kanal (4)",
            "C",
        ] {
            assert_eq!(named(heading), None, "{heading}");
        }
        assert_eq!(
            DegreeUnit::behind_number(" °F"),
            Some(DegreeUnit::Fahrenheit)
        );
        assert_eq!(DegreeUnit::behind_number("%"), None);
    }

    #[test]
    fn numbers_alone_tell_what_is_clear_and_leave_open_what_is_not() {
        let chance = |unit, cold, warm| {
            let units = plausible_units(cold, warm).unwrap();
            units.iter().find(|one| one.0 == unit).unwrap().1
        };
        assert!(chance(DegreeUnit::Celsius, -19.0, 22.0) > 0.9);
        assert!(chance(DegreeUnit::Fahrenheit, -2.0, 74.0) > 0.95);
        assert!(chance(DegreeUnit::Fahrenheit, 34.0, 41.0) > 0.95);
        assert!(chance(DegreeUnit::Kelvin, 254.0, 295.0) > 0.99);
        // Fresh food cooled down from a room, or a freezer in degrees Fahrenheit.
        let open = chance(DegreeUnit::Celsius, 0.0, 20.0);
        assert!((0.2..0.9).contains(&open), "{open}");
        assert!(plausible_units(5000.0, 9000.0).is_none());
    }
}
