//! Values with their unit and uncertainty.

use quantity::{Observed, Ohms, Prefix, Quantity, Typed, Uncertain};

use crate::Locale;

/// A reading as it was understood: "4.7 Ω", or "over range: more than 2 MΩ".
#[must_use]
pub fn observed(typed: Typed<Ohms>, locale: &Locale) -> String {
    match typed.observed {
        Observed::Value(value) => with_count(value, typed.count, locale),
        Observed::OverRange { above } => {
            format!("over range: more than {}", ohms(above, locale))
        }
    }
}

/// A round value, such as the end of a range: "2 MΩ", "200 Ω".
#[must_use]
pub fn ohms(value: Ohms, locale: &Locale) -> String {
    let prefix = prefix_for(value.get());
    let shown = value.get() / prefix.factor();
    let whole = (shown - libm::round(shown)).abs() < 1e-9;
    unit(locale.number(shown, usize::from(!whole)), prefix)
}

/// An uncertain value with its expanded uncertainty (k = 2): "4.4 ± 0.4 Ω".
#[must_use]
pub fn uncertain_ohms(value: &Uncertain<Ohms>, locale: &Locale) -> String {
    let expanded = value.expanded().get();
    let decimals = decimals_for(expanded);
    let best = locale.number(value.value().get(), decimals);
    let spread = locale.number(expanded, decimals);
    format!("{best} ± {spread} {}", Ohms::SYMBOL)
}

/// The digits that were typed, and no others.
fn with_count(value: Ohms, count: Ohms, locale: &Locale) -> String {
    let prefix = prefix_for(value.get());
    let step = count.get() / prefix.factor();
    let decimals = (0..8)
        .find(|&decimals| libm::pow(10.0, -f64::from(decimals)) <= step * 1.000_001)
        .unwrap_or(8);
    let shown = locale.number(value.get() / prefix.factor(), decimals as usize);
    unit(shown, prefix)
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

fn prefix_for(value: f64) -> Prefix {
    let size = value.abs();
    if size >= 1e6 {
        Prefix::Mega
    } else if size >= 1e3 {
        Prefix::Kilo
    } else {
        Prefix::One
    }
}

fn unit(number: String, prefix: Prefix) -> String {
    format!("{number} {}{}", prefix.symbol(), Ohms::SYMBOL)
}

#[cfg(test)]
mod tests {
    use super::*;
    use quantity::parse_reading;

    fn said(text: &str) -> String {
        observed(
            parse_reading(text, Ohms::new(40e6)).unwrap(),
            &Locale::default(),
        )
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
