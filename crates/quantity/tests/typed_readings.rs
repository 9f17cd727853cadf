//! What people type off a meter is understood, or refused for a reason that can be told.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used, clippy::panic, clippy::float_cmp)]

use proptest::prelude::*;
use quantity::{Celsius, Farads, Metres, Observed, Ohms, ParseError, Typed, Volts, parse_reading};

const TOP: Ohms = Ohms::new(40e6);

fn value(text: &str) -> (f64, f64) {
    match parse_reading(text, TOP) {
        Ok(Typed {
            observed: Observed::Value(value),
            count,
        }) => (value.get(), count.get()),
        other => panic!("{text:?} gave {other:?}"),
    }
}

fn refusal(text: &str) -> ParseError {
    parse_reading(text, TOP).unwrap_err()
}

#[test]
fn both_decimal_marks_mean_the_same() {
    assert_eq!(value("4,7"), (4.7, 0.1));
    assert_eq!(value("4.7"), (4.7, 0.1));
}

#[test]
fn the_size_of_a_count_follows_from_the_typed_decimals() {
    assert_eq!(value("4.70").1, 0.01);
    assert_eq!(value("5").1, 1.0);
    assert_eq!(value("4.7k").1, 100.0);
}

#[test]
fn prefixes_and_units_are_understood() {
    assert_eq!(value("4.7k"), (4700.0, 100.0));
    assert_eq!(value("0.3 Ω"), (0.3, 0.1));
    assert_eq!(value("0.3 \u{2126}"), (0.3, 0.1));
    assert_eq!(value("12 ohms"), (12.0, 1.0));
    assert_eq!(value("2 MΩ"), (2e6, 1e6));
    assert_eq!(value("300 mΩ"), (0.3, 0.001));
    assert_eq!(value("4k7"), (4700.0, 100.0));
    assert_eq!(value("4R7"), (4.7, 0.1));
}

#[test]
fn every_unit_is_read_with_its_own_prefixes() {
    let volts = parse_reading("230 V", Volts::new(600.0)).unwrap();
    assert_eq!(volts.observed, Observed::Value(Volts::new(230.0)));
    let room = parse_reading("-18,5 °C", Celsius::new(100.0)).unwrap();
    assert_eq!(room.observed, Observed::Value(Celsius::new(-18.5)));
    let cap = parse_reading("12 µF", Farads::new(1.0)).unwrap();
    assert_eq!(cap.observed, Observed::Value(Farads::new(12e-6)));
    assert_eq!(parse_reading("12uF", Farads::new(1.0)), Ok(cap));
    assert!(parse_reading::<Volts>("4.7 Ω", Volts::new(600.0)).is_err());
}

#[test]
fn a_trailing_mark_and_every_minus_sign_are_read() {
    assert_eq!(value("1."), (1.0, 1.0));
    assert_eq!(value("\u{2212}3"), (-3.0, 1.0));
    assert_eq!(value("- 3"), (-3.0, 1.0));
    assert_eq!(value(".5"), (0.5, 0.1));
}

#[test]
fn over_range_carries_the_end_of_the_range_it_was_in() {
    for text in ["OL", "ol", "O.L", ".0L", "0L MΩ", "∞", "OL k"] {
        let typed = parse_reading(text, Ohms::new(200.0)).unwrap();
        assert_eq!(
            typed.observed,
            Observed::OverRange {
                above: Ohms::new(200.0)
            },
            "{text}"
        );
    }
    let stated = parse_reading("> 20M", TOP).unwrap();
    assert_eq!(
        stated.observed,
        Observed::OverRange {
            above: Ohms::new(20e6)
        }
    );
}

#[test]
fn a_length_may_be_typed_in_feet_and_then_is_metres_only_where_a_length_is_asked_for() {
    let length = |text: &str| parse_reading(text, Metres::new(100.0));
    let typed = |metres: f64, count: f64| {
        Ok(Typed {
            observed: Observed::Value(Metres::new(metres)),
            count: Metres::new(count),
        })
    };
    assert_eq!(length("50 ft"), typed(50.0 * 0.3048, 0.3048));
    assert_eq!(length("50'"), typed(50.0 * 0.3048, 0.3048));
    assert_eq!(length("7.5m"), typed(7.5, 0.1));
    assert_eq!(refusal("50 ft"), ParseError::Unexpected { found: 'f' });
}

#[test]
fn what_does_not_fit_is_named() {
    assert_eq!(refusal("  "), ParseError::Empty);
    assert_eq!(refusal("4,7,2"), ParseError::TwoDecimalMarks);
    assert_eq!(refusal("1,234.5"), ParseError::TwoDecimalMarks);
    assert_eq!(refusal("four"), ParseError::Unexpected { found: 'f' });
    assert_eq!(refusal("4.7 V"), ParseError::Unexpected { found: 'V' });
    assert_eq!(refusal("4 7"), ParseError::Unexpected { found: '7' });
    assert_eq!(refusal("Ω"), ParseError::NoDigits);
    assert_eq!(refusal("-"), ParseError::NoDigits);
    assert_eq!(refusal("1234567890123456789012345"), ParseError::TooLong);
}

proptest! {
    #[test]
    fn no_text_makes_the_reader_panic_or_return_a_value_that_is_not_finite(text in "\\PC*") {
        if let Ok(Typed { observed: Observed::Value(value), count }) = parse_reading(&text, TOP) {
            prop_assert!(value.get().is_finite() && count.get() > 0.0);
        }
    }

    #[test]
    fn a_number_written_with_decimals_reads_back_as_itself(
        number in 0.0..1000.0f64,
        decimals in 0usize..4,
    ) {
        let text = format!("{number:.decimals$}");
        let expected: f64 = text.parse().unwrap();
        prop_assert_eq!(value(&text).0, expected);
        prop_assert_eq!(value(&text.replace('.', ",")).0, expected);
    }
}
