//! A temperature, out of what was tapped and typed.

use job::{Measured, Moment, Place, Reading, Spot, Text};
use quantity::{Accuracy, Celsius, Observed, ParseError, parse_reading};
use wording::Degrees;

use super::windings_keys::Units;

/// What a text comes to, typed as a temperature.
#[derive(Debug, Clone, PartialEq)]
pub enum Looked {
    /// Can be entered.
    Fine(Spot),
    /// Can be entered once the person says that it is right: no place of the kind is like that.
    Unusual(Spot),
    /// Can't be entered.
    Refused(NotTaken),
}

/// Why something can't be entered.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum NotTaken {
    /// It is no temperature.
    Unreadable(ParseError),
    /// No thermometer for a cabinet shows that.
    Impossible,
}

/// What no thermometer for a cabinet shows lies outside of these, in °C (as for a course out of a
/// file).
const SHOWN: (f64, f64) = (-100.0, 200.0);

/// A household thermometer's: 1 % and two of the last digit (common practice, no source).
const THERMOMETER: Accuracy = match Accuracy::new(1.0, 2.0) {
    Some(accuracy) => accuracy,
    // Both lie within their ranges; this is worked out while compiling.
    None => unreachable!(),
};

/// What a place may well have, in °C; outside of it the person is asked (judgement).
const fn usual(place: Place) -> (f64, f64) {
    match place {
        Place::Freezer => (-45.0, 45.0),
        Place::FreshFood => (-25.0, 45.0),
        Place::Room => (-10.0, 45.0),
        Place::Evaporator => (-50.0, 45.0),
        Place::SuctionLine => (-45.0, 60.0),
        Place::Condenser | Place::DrierOutlet => (-10.0, 85.0),
        Place::Shell => (-10.0, 130.0),
    }
}

/// What a bare number means first, and what the unit key changes it to.
#[must_use]
pub const fn units(degrees: Degrees) -> Units {
    match degrees {
        Degrees::Celsius => &[("", "°C"), (" °F", "°F")],
        Degrees::Fahrenheit => &[("", "°F"), (" °C", "°C")],
    }
}

/// Looks at a text that is about to be entered for a place and a moment.
#[must_use]
pub fn looked(typed: &str, degrees: Degrees, place: Place, at: Moment) -> Looked {
    let text = with_unit(typed, degrees);
    let read = match parse_reading(&text, Celsius::new(SHOWN.1)) {
        Err(error) => return Looked::Refused(NotTaken::Unreadable(error)),
        Ok(read) => read,
    };
    let Observed::Value(value) = read.observed else {
        return Looked::Refused(NotTaken::Impossible);
    };
    if !(SHOWN.0..=SHOWN.1).contains(&value.get()) {
        return Looked::Refused(NotTaken::Impossible);
    }
    let Ok(typed) = Text::new(&text) else {
        // Only a control character gets here: the longest reading is far below a text's limit.
        let found = text.chars().find(|c| c.is_control()).unwrap_or(' ');
        return Looked::Refused(NotTaken::Unreadable(ParseError::Unexpected { found }));
    };
    let spot = Spot {
        place,
        at,
        reading: Reading {
            typed,
            measured: Measured::Celsius(read),
            accuracy: THERMOMETER,
        },
    };
    let (least, most) = usual(place);
    if (least..=most).contains(&value.get()) {
        Looked::Fine(spot)
    } else {
        Looked::Unusual(spot)
    }
}

/// A bare number is one of the reader's scale, and is kept with it, so that it reads the same
/// everywhere.
fn with_unit(typed: &str, degrees: Degrees) -> String {
    let typed = typed.trim();
    let is_bare = typed.ends_with(|last: char| last.is_ascii_digit() || matches!(last, '.' | ','));
    let unit = match degrees {
        Degrees::Celsius => " °C",
        Degrees::Fahrenheit => " °F",
    };
    [typed, if is_bare { unit } else { "" }].concat()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 25 November 2026, 13:05 by a clock an hour east of UTC.
    fn now() -> Moment {
        Moment::new(1_795_608_300_000, 60).unwrap()
    }

    fn value(looked: &Looked) -> f64 {
        let (Looked::Fine(spot) | Looked::Unusual(spot)) = looked else {
            panic!("{looked:?}");
        };
        match spot.reading.measured {
            Measured::Celsius(typed) => match typed.observed {
                Observed::Value(value) => value.get(),
                Observed::OverRange { .. } => panic!(),
            },
            _ => panic!(),
        }
    }

    #[test]
    fn a_bare_number_is_of_the_readers_scale_and_kept_with_it() {
        let look = |typed, degrees| looked(typed, degrees, Place::Freezer, now());
        assert!((value(&look("-18,5", Degrees::Celsius)) + 18.5).abs() < 1e-9);
        assert!((value(&look("0", Degrees::Fahrenheit)) + 160.0 / 9.0).abs() < 1e-9);
        assert!((value(&look("0 °C", Degrees::Fahrenheit))).abs() < 1e-9);
        let Looked::Fine(spot) = look("0", Degrees::Fahrenheit) else {
            panic!();
        };
        assert_eq!(spot.reading.typed.as_str(), "0 °F");
    }

    #[test]
    fn what_no_place_has_is_asked_about_and_what_no_thermometer_shows_is_refused() {
        let look = |typed, place| looked(typed, Degrees::Celsius, place, now());
        assert!(matches!(look("68", Place::Freezer), Looked::Unusual(_)));
        assert!(matches!(look("68", Place::Shell), Looked::Fine(_)));
        let impossible = Looked::Refused(NotTaken::Impossible);
        assert_eq!(look("1800", Place::Freezer), impossible);
        assert_eq!(look("OL", Place::Freezer), impossible);
        assert_eq!(
            look("", Place::Freezer),
            Looked::Refused(NotTaken::Unreadable(ParseError::Empty))
        );
    }
}
