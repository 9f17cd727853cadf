//! Sentences of the record that hold a figure or a moment.

use diagnosis::{Compartment, Course};
use job::Moment;
use measure::windings::{Pair, Pin};
use quantity::Celsius;

use crate::start_trials::lasting;
use crate::windings_finding::capital;
use crate::{Locale, Words, cool_down};

/// What a course of temperatures has come to, in sentences: the same that its drawing shows.
#[must_use]
pub fn course(course: &Course, began: Moment, locale: &Locale) -> Vec<String> {
    let degrees = |value: Celsius| locale.temperature(value);
    let (Some(first), Some(last)) = (course.points.first(), course.points.last()) else {
        return Vec::new();
    };
    let mut lines = vec![format!(
        "{} readings, from {} after {} to {} after {}.",
        course.points.len(),
        degrees(first.1),
        after(began, first.0),
        degrees(last.1),
        after(began, last.0),
    )];
    lines.push(cool_down::stands(course, locale));
    // What was read needs no forecast.
    if course.reached.is_none() {
        lines.extend(cool_down::foretold(course, locale));
    }
    lines
}

/// How long after it was switched on.
#[must_use]
pub fn after(began: Moment, at: Moment) -> String {
    lasting(began.until(at))
}

/// What a pin is, in a sentence.
#[must_use]
pub fn pin_is(pin: Pin, is: &str) -> String {
    format!("Pin {}: {is}.", pin.number())
}

/// Two pins, in front of what was read between them.
#[must_use]
pub fn pins(pair: Pair) -> String {
    let [one, other] = pair.pins().map(Pin::number);
    format!("Pins {one} and {other}")
}

/// How much the test leads add.
#[must_use]
pub fn leads(ohms: &str) -> String {
    format!("Leads and contacts: {ohms}, taken out of what is said of the windings.")
}

/// What the shapes on the line of rests are.
#[must_use]
pub fn shapes() -> Vec<String> {
    [
        "Each try lies at the rest before it: a disc started at once, a ring hummed first, a \
         cross hummed and clicked off, a dash was silent, a wedge tripped the outlet.",
        "The broad band is where sound machines lie; the bar is where this one lies, nine times \
         in ten.",
    ]
    .map(str::to_owned)
    .to_vec()
}

/// When it was switched on, and how warm the room was.
#[must_use]
pub fn switched_on(began: Moment, room: Option<Celsius>, locale: &Locale) -> String {
    let room = room.map_or_else(
        || "how warm the room was, nobody read".to_owned(),
        |room| format!("the room at {}", locale.temperature(room)),
    );
    format!("Switched on at {}, {room}.", locale.moment(began))
}

/// What a curve is called.
#[must_use]
pub fn course_of(which: Compartment) -> String {
    format!(
        "{}: its temperature since it was switched on",
        capital(which.words())
    )
}

/// What the lines of a curve are.
#[must_use]
pub fn key_of_curve() -> Vec<String> {
    vec![
        "Solid: what was read. Dashed: the target. Grey: where it goes, nine times in ten. Dotted \
         lines with a number: what happened, below."
            .to_owned(),
    ]
}
