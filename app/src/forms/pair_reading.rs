//! What was typed off the meter: whether it can be entered, and as what.
//!
//! The page keeps the typed text; this decides what it means. Nothing here changes the text.

use diagnosis::{WindingsKnown, item_of_pair};
use job::{Answer, Measured, Reading, Text};
use measure::Meter;
use measure::windings::{Pair, PairDoubt, doubt_about_pair};
use quantity::{Observed, Ohms, ParseError, Strictness, Typed, parse_reading};

/// What the meter is asked about.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Target {
    /// Two pins.
    Pair(Pair),
    /// The probes touched together: the leads themselves.
    Leads,
}

/// Why a text can't be entered.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Refusal {
    /// It is no reading.
    Unreadable(ParseError),
    /// It is one, but can't be.
    Impossible(PairDoubt),
    /// Over range with the probes together: they don't touch, or a lead is broken.
    LeadsOpen,
}

/// A text that was looked at.
#[derive(Debug, Clone, PartialEq)]
pub enum Checked {
    /// Can't be entered.
    Refused(Refusal),
    /// Can be entered once the person says that it is right.
    Unusual(PairDoubt, Answer),
    /// Can be entered.
    Fine(Answer),
}

impl Target {
    /// The check and item under which a job keeps the reading.
    #[must_use]
    pub const fn names(self) -> (&'static str, &'static str) {
        match self {
            Self::Pair(pair) => ("windings", item_of_pair(pair)),
            Self::Leads => WindingsKnown::LEADS_READING,
        }
    }

    /// The pair, where it is one.
    #[must_use]
    pub const fn pair(self) -> Option<Pair> {
        match self {
            Self::Pair(pair) => Some(pair),
            Self::Leads => None,
        }
    }
}

/// What a text says so far, for the echo beside the field. Nothing while it isn't a reading yet.
#[must_use]
pub fn understood(text: &str, meter: Meter) -> Option<Typed<Ohms>> {
    parse_reading(text, meter.top).ok()
}

/// Looks at a text that is about to be entered.
#[must_use]
pub fn checked(text: &str, target: Target, meter: Meter) -> Checked {
    let typed = match parse_reading(text, meter.top) {
        Ok(typed) => typed,
        Err(error) => return Checked::Refused(Refusal::Unreadable(error)),
    };
    let Ok(kept) = Text::new(text.trim()) else {
        // Only a control character gets here: the longest reading is far below a text's limit.
        let found = text.chars().find(|c| c.is_control()).unwrap_or(' ');
        return Checked::Refused(Refusal::Unreadable(ParseError::Unexpected { found }));
    };
    let answer = Answer::Reading(Reading {
        typed: kept,
        measured: Measured::Ohms(typed),
        accuracy: meter.accuracy,
    });
    let open_leads =
        target == Target::Leads && matches!(typed.observed, Observed::OverRange { .. });
    match doubt_about_pair(typed) {
        _ if open_leads => Checked::Refused(Refusal::LeadsOpen),
        Some((Strictness::Hard, doubt)) => Checked::Refused(Refusal::Impossible(doubt)),
        Some((Strictness::Soft, doubt)) => Checked::Unusual(doubt, answer),
        None => Checked::Fine(answer),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use measure::MeterKind;

    const PAIR: Target = Target::Pair(Pair::OneThree);

    fn look(text: &str) -> Checked {
        checked(text, PAIR, MeterKind::Good.automatic())
    }

    fn reading(checked: Checked) -> Reading {
        match checked {
            Checked::Fine(Answer::Reading(reading)) => reading,
            other => panic!("not entered: {other:?}"),
        }
    }

    #[test]
    fn a_reading_is_kept_as_typed_and_as_understood() {
        let reading = reading(look(" 4,7 "));
        assert_eq!(reading.typed.as_str(), "4,7");
        let Measured::Ohms(typed) = reading.measured;
        assert_eq!(typed.observed, Observed::Value(Ohms::new(4.7)));
        assert_eq!(reading.accuracy, MeterKind::Good.automatic().accuracy);
    }

    #[test]
    fn over_range_carries_the_end_of_the_range_that_the_meter_was_set_to() {
        let meter = MeterKind::Basic.set_to(Ohms::new(200.0));
        let reading = reading(checked("OL", PAIR, meter));
        let Measured::Ohms(typed) = reading.measured;
        let above = Ohms::new(200.0);
        assert_eq!(typed.observed, Observed::OverRange { above });
    }

    #[test]
    fn letters_two_marks_and_nothing_are_refused_each_for_its_own_reason() {
        let unreadable = |error| Checked::Refused(Refusal::Unreadable(error));
        assert_eq!(
            look("abc"),
            unreadable(ParseError::Unexpected { found: 'a' })
        );
        assert_eq!(look("4,7,1"), unreadable(ParseError::TwoDecimalMarks));
        assert_eq!(look("  "), unreadable(ParseError::Empty));
    }

    #[test]
    fn ohms_below_zero_are_refused() {
        let refused = Checked::Refused(Refusal::Impossible(PairDoubt::Negative));
        assert_eq!(look("-3"), refused);
        assert_eq!(look("\u{2212}3"), refused);
    }

    #[test]
    fn a_kilo_ohm_slip_is_asked_about_and_can_still_be_entered() {
        let Checked::Unusual(PairDoubt::LargeForAWinding, Answer::Reading(reading)) = look("4.7k")
        else {
            panic!("not asked about");
        };
        assert_eq!(reading.typed.as_str(), "4.7k");
    }

    #[test]
    fn leads_that_read_over_range_are_refused_while_a_pair_may() {
        let meter = MeterKind::Good.automatic();
        let leads = checked("OL", Target::Leads, meter);
        assert_eq!(leads, Checked::Refused(Refusal::LeadsOpen));
        assert!(matches!(look("OL"), Checked::Fine(_)));
    }

    #[test]
    fn the_echo_says_nothing_until_the_text_is_a_reading() {
        let meter = MeterKind::Good.automatic();
        assert_eq!(understood("", meter), None);
        assert_eq!(understood(",", meter), None);
        assert!(understood("4,", meter).is_some());
    }
}
