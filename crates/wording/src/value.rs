//! Values with their unit and uncertainty.

use job::{Measured, Reading};
use quantity::{Accuracy, Celsius, Observed, Ohms, Prefix, Quantity, Ratio, Typed, Uncertain};

use crate::{Degrees, Locale};

/// A reading of any unit as it was understood: "4.7 Ω", "12 µF", "−18.5 °C". A value and its unit
/// never part at the end of a line.
#[must_use]
pub fn measured(reading: Measured, locale: &Locale) -> String {
    match reading {
        Measured::Ohms(typed) => observed(typed, locale),
        Measured::Volts(typed) => observed(typed, locale),
        Measured::Celsius(typed) => temperature(typed, locale),
        Measured::Farads(typed) => observed(typed, locale),
        Measured::Amps(typed) => observed(typed, locale),
        Measured::Watts(typed) => observed(typed, locale),
        Measured::Metres(typed) => observed(typed, locale),
        Measured::WattHours(typed) => observed(typed, locale),
    }
}

/// What stands before the end of a range that a reading lies beyond.
const OVER_RANGE: &str = "over range: ";

/// The same where room is short: "4.7 Ω", "more than 2 MΩ".
#[must_use]
pub fn measured_briefly(reading: Measured, locale: &Locale) -> String {
    let said = measured(reading, locale);
    let briefly = said.strip_prefix(OVER_RANGE).map(str::to_owned);
    briefly.unwrap_or(said)
}

/// How far a reading may be off by its meter (k = 2): "± 0.4 Ω". `None` for one over range.
///
/// ```
/// use job::{Measured, Reading, Text};
/// use quantity::{Accuracy, Ohms, parse_reading};
///
/// let typed = parse_reading("12.9", Ohms::new(40e6)).unwrap();
/// let reading = Reading {
///     typed: Text::new("12.9").unwrap(),
///     measured: Measured::Ohms(typed),
///     accuracy: Accuracy::new(0.8, 2.0).unwrap(),
/// };
/// let said = wording::expanded(&reading, &wording::Locale::default());
/// assert_eq!(said.as_deref(), Some("±\u{a0}0.4\u{a0}Ω"));
/// ```
#[must_use]
pub fn expanded(reading: &Reading, locale: &Locale) -> Option<String> {
    match reading.measured {
        Measured::Ohms(typed) => off_by(typed, reading.accuracy, locale),
        Measured::Volts(typed) => off_by(typed, reading.accuracy, locale),
        Measured::Celsius(typed) => off_by(typed, reading.accuracy, locale),
        Measured::Farads(typed) => off_by(typed, reading.accuracy, locale),
        Measured::Amps(typed) => off_by(typed, reading.accuracy, locale),
        Measured::Watts(typed) => off_by(typed, reading.accuracy, locale),
        Measured::Metres(typed) => off_by(typed, reading.accuracy, locale),
        Measured::WattHours(typed) => off_by(typed, reading.accuracy, locale),
    }
}

fn off_by<Q: Quantity>(typed: Typed<Q>, accuracy: Accuracy, locale: &Locale) -> Option<String> {
    let Observed::Value(value) = typed.observed else {
        return None;
    };
    let expanded = 2.0 * accuracy.standard(value, typed.count).get();
    let is_fahrenheit = Q::SYMBOL == "°C" && locale.degrees == Degrees::Fahrenheit;
    let prefix = prefix_for(value);
    let shown = expanded / prefix.factor() * if is_fahrenheit { 1.8 } else { 1.0 };
    // The first digit of it is shown, and no more than that.
    let shows = |&decimals: &u16| shown * libm::pow(10.0, f64::from(decimals)) >= 0.95;
    let decimals = usize::from((0..6).find(shows).unwrap_or(6));
    let number = locale.number(shown, decimals);
    Some(if is_fahrenheit {
        format!("±\u{a0}{number}\u{a0}°F")
    } else {
        format!("±\u{a0}{}", unit::<Q>(&number, prefix))
    })
}

/// A meter as its data sheet states it: "±(0.8 % + 2 digits)".
#[must_use]
pub fn data_sheet(accuracy: Accuracy, locale: &Locale) -> String {
    let number = |value: f64| {
        let is_whole = (value - libm::round(value)).abs() < 1e-9;
        locale.number(value, usize::from(!is_whole))
    };
    let (percent, counts) = (number(accuracy.percent()), number(accuracy.counts()));
    let digits = if counts == "1" { "digit" } else { "digits" };
    match percent.as_str() {
        "0" => format!("±{counts}\u{a0}{digits}"),
        _ => format!("±({percent}\u{a0}% + {counts}\u{a0}{digits})"),
    }
}

/// A temperature on the reader's scale, with the digits that were typed.
fn temperature(typed: Typed<Celsius>, locale: &Locale) -> String {
    match (typed.observed, locale.degrees) {
        (Observed::Value(value), Degrees::Fahrenheit) => {
            let shown = value.to_fahrenheit();
            let decimals = decimals_of(typed.count.get() * 1.8);
            format!("{}\u{a0}°F", locale.number(shown, decimals))
        }
        _ => observed(typed, locale),
    }
}

/// A reading as it was understood: "4.7 Ω", or "over range: more than 2 MΩ".
#[must_use]
pub fn observed<Q: Quantity>(typed: Typed<Q>, locale: &Locale) -> String {
    match typed.observed {
        Observed::Value(value) => with_count(value, typed.count, locale),
        Observed::OverRange { above } => {
            format!("{OVER_RANGE}more than {}", round(above, locale))
        }
    }
}

/// A round value, such as the end of a range: "2 MΩ", "200 Ω".
#[must_use]
pub fn ohms(value: Ohms, locale: &Locale) -> String {
    round(value, locale)
}

fn round<Q: Quantity>(value: Q, locale: &Locale) -> String {
    let prefix = prefix_for(value);
    let shown = value.get() / prefix.factor();
    let whole = (shown - libm::round(shown)).abs() < 1e-9;
    unit::<Q>(&locale.number(shown, usize::from(!whole)), prefix)
}

/// An uncertain value with its expanded uncertainty (k = 2): "4.4 ± 0.4 Ω".
#[must_use]
pub fn uncertain_ohms(value: &Uncertain<Ohms>, locale: &Locale) -> String {
    scaled(value, 1.0, Ohms::SYMBOL, locale)
}

/// A share with its expanded uncertainty, in percent: "13.4 ± 0.8 %".
pub(crate) fn percent(share: &Uncertain<Ratio>, locale: &Locale) -> String {
    scaled(share, 100.0, "%", locale)
}

/// An uncertain value with its expanded uncertainty, multiplied for the unit in which it is told.
pub(crate) fn scaled<Q: Quantity>(
    value: &Uncertain<Q>,
    factor: f64,
    unit: &str,
    locale: &Locale,
) -> String {
    let expanded = value.expanded().get() * factor;
    let decimals = decimals_for(expanded);
    let best = locale.number(value.value().get() * factor, decimals);
    let spread = locale.number(expanded, decimals);
    format!("{best} ±\u{a0}{spread}\u{a0}{unit}")
}

/// The digits that were typed, and no others.
fn with_count<Q: Quantity>(value: Q, count: Q, locale: &Locale) -> String {
    let prefix = prefix_for(value);
    let decimals = decimals_of(count.get() / prefix.factor());
    let shown = locale.number(value.get() / prefix.factor(), decimals);
    unit::<Q>(&shown, prefix)
}

/// As many decimals as a display has whose last digit goes in such steps.
fn decimals_of(step: f64) -> usize {
    let fits = |&decimals: &u16| libm::pow(10.0, -f64::from(decimals)) <= step * 1.000_001;
    usize::from((0..8).find(fits).unwrap_or(8))
}

/// Enough decimals to show the first digit of the uncertainty.
fn decimals_for(expanded: f64) -> usize {
    if expanded < 0.095 {
        2
    } else if expanded < 9.5 {
        1
    } else {
        0
    }
}

/// Ohms go up in thousands, farads down; volts and degrees stay as they are.
fn prefix_for<Q: Quantity>(value: Q) -> Prefix {
    let size = value.get().abs();
    match Q::SYMBOL {
        "Ω" if size >= 1e6 => Prefix::Mega,
        "Ω" if size >= 1e3 => Prefix::Kilo,
        "F" if size < 1e-6 => Prefix::Nano,
        "F" if size < 1e-3 => Prefix::Micro,
        _ => Prefix::One,
    }
}

fn unit<Q: Quantity>(number: &str, prefix: Prefix) -> String {
    format!("{number}\u{a0}{}{}", prefix.symbol(), Q::SYMBOL)
}

#[cfg(test)]
mod tests {
    use super::*;
    use quantity::{Farads, parse_reading};

    #[test]
    fn farads_and_degrees_are_echoed_in_the_prefix_that_people_use() {
        let locale = Locale::default();
        let cap = parse_reading("12 µF", Farads::new(1.0)).unwrap();
        assert_eq!(measured(Measured::Farads(cap), &locale), "12\u{a0}µF");
        let cold = parse_reading("-18,5", Celsius::new(100.0)).unwrap();
        assert_eq!(measured(Measured::Celsius(cold), &locale), "−18.5\u{a0}°C");
        let us = Locale {
            degrees: Degrees::Fahrenheit,
            ..locale
        };
        assert_eq!(measured(Measured::Celsius(cold), &us), "−1.3\u{a0}°F");
        let warm = parse_reading("68 °F", Celsius::new(100.0)).unwrap();
        assert_eq!(measured(Measured::Celsius(warm), &us), "68\u{a0}°F");
        assert_eq!(measured(Measured::Celsius(warm), &locale), "20.0\u{a0}°C");
    }

    fn said(text: &str) -> String {
        observed(
            parse_reading(text, Ohms::new(40e6)).unwrap(),
            &Locale::default(),
        )
        .replace('\u{a0}', " ")
    }

    #[test]
    fn a_reading_is_echoed_with_the_digits_that_were_typed() {
        assert_eq!(said("4,7"), "4.7 Ω");
        assert_eq!(said("4.70"), "4.70 Ω");
        assert_eq!(said("5"), "5 Ω");
        assert_eq!(said("4.7k"), "4.7 kΩ");
        assert_eq!(said("4700"), "4.700 kΩ");
        assert_eq!(said("1."), "1 Ω");
        assert_eq!(said("300 mΩ"), "0.300 Ω");
        assert_eq!(said("OL"), "over range: more than 40 MΩ");
        assert_eq!(said(">1.5k"), "over range: more than 1.5 kΩ");
    }
}
