//! What was typed off the meter: whether it can be entered, and as what.
//!
//! The page keeps the typed text; this decides what it means. Nothing here changes the text.

use diagnosis::{Ask, Item, WindingsKnown, item_of_pair, usual_accuracy};
use job::{Answer, Measured, Reading, Text, Unit};
use measure::running::doubt_about_amps;
use measure::windings::{Pair, doubt_about_pair};
use measure::{
    CAPACITOR_VOLTS, CORD_METRES, CapacitorDoubt, Doubt, LEAKAGE_AMPS, MACHINE_WATTS, MAINS_VOLTS,
    Meter, doubt_about_capacitance, doubt_about_insulation, doubt_about_leads, doubt_about_ohms,
    doubt_by,
};
use wording::Degrees;

use quantity::{
    Accuracy, Amps, Celsius, Farads, Metres, Observed, ParseError, Strictness, Volts, WattHours,
    Watts, parse_reading,
};

/// What the meter is asked about.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Target {
    /// Two pins.
    Pair(Pair),
    /// The probes touched together: the leads themselves.
    Leads,
    /// A question of another check.
    Ask(Ask),
}

/// Why a text can't be entered.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Refusal {
    /// It is no reading.
    Unreadable(ParseError),
    /// It is one, but can't be.
    Impossible(Doubt),
    /// Over range with the probes together: they don't touch, or a lead is broken.
    LeadsOpen,
}

/// A text that was looked at.
#[derive(Debug, Clone, PartialEq)]
pub enum Checked {
    /// Can't be entered.
    Refused(Refusal),
    /// Can be entered once the person says that it is right.
    Unusual(Doubt, Answer),
    /// Can be entered.
    Fine(Answer),
}

impl Target {
    /// The check and item under which a job keeps the reading.
    #[must_use]
    pub fn names(self) -> (&'static str, &'static str) {
        match self {
            Self::Pair(pair) => ("windings", item_of_pair(pair)),
            Self::Leads => WindingsKnown::LEADS_READING,
            Self::Ask(ask) => ask.names(),
        }
    }

    /// The pair, where it is one.
    #[must_use]
    pub const fn pair(self) -> Option<Pair> {
        match self {
            Self::Pair(pair) => Some(pair),
            Self::Leads | Self::Ask(_) => None,
        }
    }

    /// The unit of what is typed.
    #[must_use]
    pub fn unit(self) -> Unit {
        match self {
            Self::Pair(_) | Self::Leads => Unit::Ohm,
            Self::Ask(ask) => ask.unit().unwrap_or(Unit::Ohm),
        }
    }

    /// The unit, where a number is asked for at all.
    #[must_use]
    pub fn number(self) -> Option<Unit> {
        match self {
            Self::Pair(_) | Self::Leads => Some(Unit::Ohm),
            Self::Ask(ask) => ask.unit(),
        }
    }

    /// Whether it is read off a part's marking.
    #[must_use]
    pub fn is_printed(self) -> bool {
        matches!(self, Self::Ask(ask) if ask.is_printed())
    }

    /// How good the meter is at this. What is printed is exact.
    fn accuracy(self, meter: Meter) -> Accuracy {
        let fixed = if self.is_printed() {
            Accuracy::new(0.0, 0.0)
        } else {
            usual_accuracy(self.unit())
        };
        fixed.unwrap_or(meter.accuracy)
    }
}

/// What a text says so far, for the echo beside the field. Nothing while it isn't a reading yet.
#[must_use]
pub fn understood(text: &str, target: Target, meter: Meter, degrees: Degrees) -> Option<Measured> {
    read(&with_unit(text, target, degrees), target, meter).ok()
}

fn read(text: &str, target: Target, meter: Meter) -> Result<Measured, ParseError> {
    Ok(match target.unit() {
        Unit::Ohm => Measured::Ohms(parse_reading(text, meter.top)?),
        Unit::Volt => Measured::Volts(parse_reading(text, Volts::new(600.0))?),
        Unit::Celsius => Measured::Celsius(parse_reading(text, Celsius::new(200.0))?),
        Unit::Farad => Measured::Farads(parse_reading(text, Farads::new(1.0))?),
        Unit::Ampere => Measured::Amps(parse_reading(text, Amps::new(100.0))?),
        Unit::Watt => Measured::Watts(parse_reading(text, Watts::new(4_000.0))?),
        Unit::Metre => Measured::Metres(parse_reading(text, Metres::new(100.0))?),
        Unit::WattHour => Measured::WattHours(parse_reading(text, WattHours::new(1e6))?),
    })
}

/// A number alone means what people mean by it: microfarads on a capacitor, milliamperes of a leak,
/// and degrees of the reader's scale. It is kept with that unit, so that it reads the same everywhere.
fn with_unit(text: &str, target: Target, degrees: Degrees) -> String {
    let text = text.trim();
    let is_bare = text.ends_with(|last: char| last.is_ascii_digit() || matches!(last, '.' | ','));
    let unit = match target.unit() {
        Unit::Farad => " µF",
        Unit::Celsius if degrees == Degrees::Fahrenheit => " °F",
        Unit::Ampere if is_leakage(target) => " mA",
        _ => "",
    };
    [text, if is_bare { unit } else { "" }].concat()
}

pub(super) fn is_leakage(target: Target) -> bool {
    let items = [Item::LeakageCurrent, Item::LeakageOfOthers];
    matches!(target, Target::Ask(Ask::Item(item)) if items.contains(&item))
}

fn doubt(measured: Measured, target: Target) -> Option<(Strictness, Doubt)> {
    let typed = match measured {
        Measured::Ohms(typed) => typed,
        other => return doubt_of_other_units(other, target),
    };
    match target {
        Target::Pair(_) => doubt_about_pair(typed),
        Target::Leads => doubt_about_leads(typed),
        Target::Ask(Ask::Item(
            Item::BladesToEarth
            | Item::BladesToMetal
            | Item::PinOneToShell
            | Item::PinTwoToShell
            | Item::PinThreeToShell,
        )) => doubt_about_insulation(typed),
        Target::Ask(_) => doubt_about_ohms(typed),
    }
}

/// Anything but ohms. Direct volts may be anything, below zero too, and so may degrees.
fn doubt_of_other_units(measured: Measured, target: Target) -> Option<(Strictness, Doubt)> {
    let Target::Ask(ask) = target else {
        return None;
    };
    match (measured, ask) {
        (Measured::Volts(_), Ask::Item(Item::ChargeLeft)) => None,
        (Measured::Volts(typed), Ask::Item(Item::CapacitorVolts)) => {
            doubt_by(&CAPACITOR_VOLTS, typed)
        }
        (Measured::Volts(typed), _) => doubt_by(&MAINS_VOLTS, typed),
        (Measured::Watts(typed), _) => doubt_by(&MACHINE_WATTS, typed),
        (Measured::Metres(typed), _) => doubt_by(&CORD_METRES, typed),
        (Measured::Amps(typed), Ask::Item(Item::LeakageCurrent | Item::LeakageOfOthers)) => {
            doubt_by(&LEAKAGE_AMPS, typed)
        }
        (Measured::Amps(typed), _) => {
            doubt_about_amps(typed).map(|(how, doubt)| (how, Doubt::Current(doubt)))
        }
        (Measured::Farads(typed), _) => {
            let (how, doubt) = doubt_about_capacitance(typed)?;
            // A part that reads nothing is open, and that is a reading; a print is never zero.
            let is_open = doubt == CapacitorDoubt::Nothing && !ask.is_printed();
            let how = if is_open { Strictness::Soft } else { how };
            Some((how, Doubt::Capacitance(doubt)))
        }
        (Measured::Celsius(_) | Measured::WattHours(_) | Measured::Ohms(_), _) => None,
    }
}

/// Looks at a text that is about to be entered.
#[must_use]
pub fn checked(text: &str, target: Target, meter: Meter, degrees: Degrees) -> Checked {
    let text = with_unit(text, target, degrees);
    let measured = match read(&text, target, meter) {
        Ok(measured) => measured,
        Err(error) => return Checked::Refused(Refusal::Unreadable(error)),
    };
    let Ok(kept) = Text::new(&text) else {
        // Only a control character gets here: the longest reading is far below a text's limit.
        let found = text.chars().find(|c| c.is_control()).unwrap_or(' ');
        return Checked::Refused(Refusal::Unreadable(ParseError::Unexpected { found }));
    };
    let answer = Answer::Reading(Reading {
        typed: kept,
        measured,
        accuracy: target.accuracy(meter),
    });
    let is_over = matches!(measured.numbers().0, Observed::OverRange { .. });
    match doubt(measured, target) {
        _ if is_over && target == Target::Leads => Checked::Refused(Refusal::LeadsOpen),
        Some((Strictness::Hard, doubt)) => Checked::Refused(Refusal::Impossible(doubt)),
        Some((Strictness::Soft, doubt)) => Checked::Unusual(doubt, answer),
        None => Checked::Fine(answer),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use measure::MeterKind;
    use quantity::Ohms;

    const PAIR: Target = Target::Pair(Pair::OneThree);

    fn look(text: &str) -> Checked {
        checked(text, PAIR, MeterKind::Good.automatic(), Degrees::Celsius)
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
        assert_eq!(reading.measured.numbers().0, Observed::Value(4.7));
        assert_eq!(reading.accuracy, MeterKind::Good.automatic().accuracy);
    }

    #[test]
    fn over_range_carries_the_end_of_the_range_that_the_meter_was_set_to() {
        let meter = MeterKind::Basic.set_to(Ohms::new(200.0));
        let reading = reading(checked("OL", PAIR, meter, Degrees::Celsius));
        let above = 200.0;
        assert_eq!(reading.measured.numbers().0, Observed::OverRange { above });
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
        let refused = Checked::Refused(Refusal::Impossible(Doubt::Negative));
        assert_eq!(look("-3"), refused);
        assert_eq!(look("\u{2212}3"), refused);
    }

    #[test]
    fn a_kilo_ohm_slip_is_asked_about_and_can_still_be_entered() {
        let Checked::Unusual(Doubt::LargeForAWinding, Answer::Reading(reading)) = look("4.7k")
        else {
            panic!("not asked about");
        };
        assert_eq!(reading.typed.as_str(), "4.7k");
    }

    #[test]
    fn leads_that_read_over_range_are_refused_while_a_pair_may() {
        let meter = MeterKind::Good.automatic();
        let leads = checked("OL", Target::Leads, meter, Degrees::Celsius);
        assert_eq!(leads, Checked::Refused(Refusal::LeadsOpen));
        assert!(matches!(look("OL"), Checked::Fine(_)));
    }

    #[test]
    fn the_echo_says_nothing_until_the_text_is_a_reading() {
        let meter = MeterKind::Good.automatic();
        assert_eq!(understood("", PAIR, meter, Degrees::Celsius), None);
        assert_eq!(understood(",", PAIR, meter, Degrees::Celsius), None);
        assert!(understood("4,", PAIR, meter, Degrees::Celsius).is_some());
    }

    #[test]
    fn a_bare_number_on_a_capacitor_means_microfarads() {
        let meter = MeterKind::Good.automatic();
        let target = Target::Ask(Ask::Item(Item::CapacitorMarking));
        for text in ["12", "12 µF", "12uF"] {
            let checked = checked(text, target, meter, Degrees::Celsius);
            let found = reading(checked).measured.numbers().0;
            assert_eq!(found, Observed::Value(12e-6), "{text}");
        }
    }

    #[test]
    fn a_bare_temperature_is_of_the_readers_scale_and_kept_with_it() {
        let meter = MeterKind::Good.automatic();
        let target = Target::Ask(Ask::Item(Item::ColdTemperature));
        let in_scale = |text, degrees| reading(checked(text, target, meter, degrees));
        let us = in_scale("68", Degrees::Fahrenheit);
        assert_eq!(us.measured.numbers().0, Observed::Value(20.0));
        assert_eq!(us.typed.as_str(), "68 °F");
        let stated = in_scale("20 °C", Degrees::Fahrenheit);
        assert_eq!(stated.measured.numbers().0, Observed::Value(20.0));
        let here = in_scale("20", Degrees::Celsius);
        assert_eq!(here.measured.numbers().0, Observed::Value(20.0));
    }

    #[test]
    fn a_bare_number_of_a_leak_means_milliamperes_and_of_a_motor_amperes() {
        let meter = MeterKind::Good.automatic();
        let of = |item, text| {
            let target = Target::Ask(Ask::Item(item));
            reading(checked(text, target, meter, Degrees::Celsius)).measured
        };
        let numbers = |measured: Measured| measured.numbers().0;
        let leak = of(Item::LeakageCurrent, "3.5");
        assert_eq!(numbers(leak), Observed::Value(0.003_5));
        let motor = of(Item::RunningAmps, "1.2");
        assert_eq!(numbers(motor), Observed::Value(1.2));
    }

    #[test]
    fn bad_numbers_of_a_live_machine_are_refused_or_asked_about() {
        let meter = MeterKind::Good.automatic();
        let of = |item, text| {
            let target = Target::Ask(Ask::Item(item));
            checked(text, target, meter, Degrees::Celsius)
        };
        let refused = |doubt| Checked::Refused(Refusal::Impossible(doubt));
        let is_asked = |checked: Checked, wanted: Doubt| matches!(checked, Checked::Unusual(doubt, _) if doubt == wanted);
        let capacitance = Doubt::Capacitance;
        assert_eq!(
            of(Item::CapacitorMarking, "0"),
            refused(capacitance(CapacitorDoubt::Nothing))
        );
        assert_eq!(
            of(Item::CapacitorMarking, "9999"),
            refused(capacitance(CapacitorDoubt::BeyondAny))
        );
        let milli = Doubt::Current(measure::running::AmpsDoubt::MaybeMilliamperes);
        assert!(is_asked(of(Item::RunningAmps, "1100"), milli));
        assert!(is_asked(of(Item::LabelAmps, "130"), milli));
        assert!(is_asked(of(Item::IdleVolts, "12.1"), Doubt::NotMains));
        assert!(is_asked(
            of(Item::LeakageCurrent, "0.4 A"),
            Doubt::MuchForALeak
        ));
        assert!(is_asked(of(Item::CordLength, "100"), Doubt::LongForACord));
        assert_eq!(of(Item::LateWatts, "-5"), refused(Doubt::BelowZero));
        assert!(matches!(of(Item::ChargeLeft, "-12"), Checked::Fine(_)));
        assert!(matches!(of(Item::CapacitorVolts, "310"), Checked::Fine(_)));
    }

    #[test]
    fn megohms_typed_as_ohms_are_asked_about_only_towards_metal() {
        let meter = MeterKind::Good.automatic();
        let shell = checked(
            "40",
            Target::Ask(Ask::Item(Item::PinOneToShell)),
            meter,
            Degrees::Celsius,
        );
        assert!(matches!(shell, Checked::Unusual(Doubt::OhmsForMegohms, _)));
        let ptc = checked(
            "40",
            Target::Ask(Ask::Item(Item::PtcReading)),
            meter,
            Degrees::Celsius,
        );
        assert!(matches!(ptc, Checked::Fine(_)));
    }
}
