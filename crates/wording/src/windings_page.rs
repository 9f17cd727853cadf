//! The plain strings of the windings check.

use measure::windings::{Label, Pair, Pin, Role};
use quantity::{Ohms, Uncertain};

use crate::finding::{label, pair, pin};
use crate::windings_finding::capital;
use crate::{Locale, uncertain_ohms};

/// The heading of the check.
pub const HEADING: &str = "Windings";
/// The state of the plug, above the heading.
pub const PLUG_OUT: &str = "Plug out";

/// The question before anything is measured.
pub const BARE_QUESTION: &str = "Are the three pins bare?";
/// What to do first.
pub const BARE_HOW: &str =
    "Plug out. Pull start device and protector off the three pins; take a photo first.";
/// Answers it.
pub const THEY_ARE_OFF: &str = "They are off";
/// Answers it.
pub const STILL_ON: &str = "Still on";
/// Told where they are still on.
pub const STILL_ON_HEADING: &str = "Still on? The numbers would be wrong.";
/// Told where they are still on.
pub const STILL_ON_TEXT: &str = "A start device joins two pins and changes all three readings. \
                                 Pull it and the protector straight off the pins, plug out.";
/// Answers it.
pub const OFF_NOW: &str = "They are off now";
/// Goes on with the start device left on.
pub const MEASURE_ALL_THE_SAME: &str = "Measure all the same";
/// What is thought of readings taken so.
pub const ALL_THE_SAME_HINT: &str = "The readings are then understood as taken with it on.";

/// The question for the shape.
pub const SHAPE_QUESTION: &str = "Which looks like yours?";
/// How to look.
pub const SHAPE_HOW: &str = "Hold the phone beside the compressor and look straight at the pins. They are numbered 1, 2, 3 \
     until you know more.";
/// Turns the pictures by a quarter.
pub const TURN: &str = "Turn";
/// Leads back to the question for the shape.
pub const CHANGE_SHAPE: &str = "The pins lie another way";
/// Told where the shape is changed after something was read.
pub const SHAPE_KEEPS_NUMBERS: &str = "Readings stay with their numbers. Choose the picture in \
                                       which 1, 2 and 3 are the pins you measured.";
/// Leaves the shape as it is.
pub const KEEP_SHAPE: &str = "Leave it as it is";

/// The heading over what was found.
pub const MEANING: &str = "What it means";
/// The heading over the next step.
pub const NEXT: &str = "Next";
/// Where to go when the check is done.
pub const BACK_TO_JOB: &str = "Back to the job";
/// Takes the last entry back.
pub const UNDO: &str = "Undo";

/// Enters what was typed.
pub const ENTER: &str = "Enter";
/// Closes the field of a pair that has been read.
pub const LEAVE_AS_READ: &str = "Leave it as read";
/// Goes back from the leads to the pins.
pub const BACK_TO_PINS: &str = "Back to the pins";
/// Changes to the keyboard of the phone.
pub const PHONE_KEYBOARD: &str = "Use the phone's keyboard";
/// Changes back.
pub const OWN_KEYPAD: &str = "Use the keypad here";
/// What the keypad is called.
pub const KEYPAD: &str = "Keypad";
/// Over range as short as on a meter's display.
pub const OVER_RANGE: &str = "OL";
/// The key for over range, read aloud.
pub const OVER_RANGE_KEY: &str = "Over range";
/// The key for below zero, read aloud.
pub const SIGN_KEY: &str = "Below zero or above";
/// The key that takes away, read aloud.
pub const BACKSPACE_KEY: &str = "Take away the last character";
/// The key for the decimal mark, read aloud.
pub const DECIMAL_KEY: &str = "Decimal mark";
/// What may be typed, below the field.
pub const FIELD_HINT: &str = "As the meter shows it: 4.7, 4,7, 4.7k or OL";

/// Enters an unusual value.
pub const YES_ENTER_IT: &str = "Yes, enter it";
/// Goes back to an unusual value.
pub const CHANGE_IT: &str = "Change it";
/// Over range with the probes together.
pub const LEADS_OPEN: &str = "Over range with the probes together: they don't touch, or a lead is \
                              broken. Press the tips together and type what shows then.";

/// Opens the reasons for not measuring.
pub const CANNOT_DO: &str = "Can't do this";
/// The question above the reasons.
pub const WHY_NOT: &str = "Why not? It is written down and counts for nothing else.";

/// Opens the choice of the meter.
pub const CHANGE: &str = "change";
/// The question for the meter's kind.
pub const WHICH_METER: &str = "Your meter";
/// The question for its range.
pub const WHICH_RANGE: &str = "Its range on ohms";
/// The meter chooses its range.
pub const PICKS_ITSELF: &str = "It picks its range itself";
/// What the range is good for.
pub const RANGE_HINT: &str = "It decides what OL means: more than the end of the range.";
/// The question for the leads.
pub const WHICH_LEADS: &str = "Probes touched together";
/// Opens the field for the leads.
pub const ENTER_LEADS: &str = "Touch them and enter what shows";
/// What was read with the probes together.
#[must_use]
pub fn leads_read(reading: &str) -> String {
    format!("They read {reading}.")
}

/// Opens the wiring.
pub const WIRING: &str = "Wiring as found";
/// What it is good for.
pub const WIRING_HOW: &str = "From your photo, or from what you remember. It tells start from run \
                              where ohms can't. Leave out what you don't know.";
/// The overload protector's pin.
pub const OVERLOAD_PIN: &str = "The overload protector's lead was on";
/// The start device's pins.
pub const START_DEVICE_PINS: &str = "The start device sat on";
/// The other mains wire's pin.
pub const LINE_PIN: &str = "The other mains wire was on";

/// Over the readings in words.
pub const IN_WORDS: &str = "The pins in words";
/// A column.
pub const PINS: &str = "Pins";
/// A column.
pub const READS: &str = "Reads";
/// Before a reading that no longer counts.
pub const EARLIER: &str = "earlier";
/// Between two foretold values.
pub const OR: &str = " or ";
/// A line without a reading.
pub const NOT_READ: &str = "not read yet";
/// A line that the person could not measure.
pub const GIVEN_UP: &str = "not measured";
/// A pin without a label.
pub const NOTHING_YET: &str = "nothing yet";
/// Over a foretold value.
pub const EXPECT: &str = "expect";

/// The question for a pair.
#[must_use]
pub fn touch(which: Pair) -> String {
    let [one, other] = which.pins().map(Pin::number);
    format!("Touch {one} and {other}. What does it show?")
}

/// The question for the leads.
pub const TOUCH_LEADS: &str = "Touch the probes together. What does it show?";

/// A pair in the shortest way.
#[must_use]
pub fn short_pair(which: Pair) -> String {
    let [one, other] = which.pins().map(Pin::number);
    format!("{one}–{other}")
}

/// The question for what stands beside the pins.
#[must_use]
pub fn marked(role: Role) -> &'static str {
    match role {
        Role::Common => "C or “common” stands beside",
        Role::Start => "S or “start” stands beside",
        Role::Run => "R or “run” stands beside",
    }
}

/// How many things of the wiring were noted.
#[must_use]
pub fn noted(count: usize) -> String {
    match count {
        0 => "nothing noted".to_owned(),
        more => format!("{more} noted"),
    }
}

/// The meter in a line.
#[must_use]
pub fn meter_line(kind: &str, range: Option<&str>) -> String {
    match range {
        None => format!("{kind}, picks its range itself"),
        Some(end) => format!("{kind}, set to {end}"),
    }
}

/// A range set by hand.
#[must_use]
pub fn ends_at(end: &str) -> String {
    format!("Set by hand to {end}")
}

/// The key that changes the unit, read aloud: what a press does.
#[must_use]
pub fn unit_key(next: &str) -> String {
    let unit = match next {
        "A" => "amperes",
        "mA" => "milliamperes",
        "V" => "volts",
        "mV" => "millivolts",
        "W" => "watts",
        "kW" => "kilowatts",
        "µF" => "microfarads",
        "nF" => "nanofarads",
        "m" => "metres",
        "ft" => "feet",
        other => return format!("Make it {}", spoken(other)),
    };
    format!("Make it {unit}")
}

/// The second of two foretold values.
#[must_use]
pub fn or_value(value: &str) -> String {
    format!("or {value}")
}

/// What stands on the line of the run winding.
#[must_use]
pub fn run_winding(value: &Uncertain<Ohms>, locale: &Locale) -> String {
    format!("run {}", best(value, locale))
}

/// What stands on the line of the start winding.
#[must_use]
pub fn start_winding(value: &Uncertain<Ohms>, locale: &Locale) -> String {
    format!("start {}", best(value, locale))
}

/// What stands on the line that has both windings in it.
#[must_use]
pub fn both_windings(value: &Uncertain<Ohms>, locale: &Locale) -> String {
    format!("both {}", best(value, locale))
}

/// A line of the diagram as a button, read aloud.
#[must_use]
pub fn line_name(which: Pair, reading: Option<&str>, expected: &[String]) -> String {
    let between = format!("Between {}", pair(which));
    match (reading, expected) {
        (Some(reading), _) => format!("{between}: {}. Measure again.", spoken(reading)),
        (None, []) => format!("{between}: not read yet. Measure."),
        (None, expected) => {
            let values: Vec<String> = expected.iter().map(|value| spoken(value)).collect();
            format!("{between}: expect {}. Measure.", values.join(" or "))
        }
    }
}

/// All labels in one sentence; nothing while no pin has one.
#[must_use]
pub fn labels_said(labels: [Label; 3]) -> Option<String> {
    let said: Vec<String> = Pin::ALL
        .into_iter()
        .zip(labels)
        .filter(|(_, said)| *said != Label::Nothing)
        .map(|(which, said)| format!("{}: {}", pin(which), label(said)))
        .collect();
    (!said.is_empty()).then(|| format!("{}.", capital(&said.join("; "))))
}

/// A value for the ear.
#[must_use]
pub fn spoken(text: &str) -> String {
    text.replace("kΩ", "kilo-ohms")
        .replace("MΩ", "mega-ohms")
        .replace('Ω', "ohms")
        .replace('±', "plus or minus")
}

/// The best estimate alone, where there is no room for its uncertainty.
fn best(value: &Uncertain<Ohms>, locale: &Locale) -> String {
    let whole = uncertain_ohms(value, locale);
    let number = whole.split('±').next().unwrap_or_default();
    number.trim_end().to_owned()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_line_says_what_it_reads_or_what_to_expect_and_what_a_press_does() {
        let of = |reading, expected: &[String]| line_name(Pair::OneTwo, reading, expected);
        assert_eq!(
            of(Some("4.7 Ω"), &[]),
            "Between pins 1 and 2: 4.7 ohms. Measure again."
        );
        assert_eq!(
            of(None, &[]),
            "Between pins 1 and 2: not read yet. Measure."
        );
        let expected = ["12.0 ± 0.7 Ω".to_owned(), "2.9 ± 0.7 Ω".to_owned()];
        assert_eq!(
            of(None, &expected),
            "Between pins 1 and 2: expect 12.0 plus or minus 0.7 ohms or 2.9 plus or minus 0.7 \
             ohms. Measure."
        );
    }

    #[test]
    fn only_pins_with_a_label_are_named_aloud() {
        let common = Label::Is {
            role: Role::Common,
            surely: true,
        };
        let labels = [Label::StartOrRun, common, Label::Nothing];
        assert_eq!(
            labels_said(labels).as_deref(),
            Some("Pin 1: start or run; pin 2: common, surely.")
        );
        assert_eq!(labels_said([Label::Nothing; 3]), None);
    }
}
