//! Sentences of the record that hold a figure or a moment.

use diagnosis::{Compartment, Course};
use job::{Moment, Tried};
use measure::windings::Pin;
use quantity::{Celsius, Seconds};

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
    let read = format!(
        "{} readings, from {} after {} to {} after {}.",
        course.points.len(),
        degrees(first.1),
        after(began, first.0),
        degrees(last.1),
        after(began, last.0),
    );
    let mut lines = vec![[&cool_down::stands(course, locale), " ", &read].concat()];
    // What was read needs no forecast.
    if course.reached.is_none() {
        lines.extend(cool_down::foretold(course, locale));
    }
    lines
}

/// What happened so long after it was switched on.
#[must_use]
pub fn happened(what: &str, began: Moment, at: Moment) -> String {
    format!("{} after {}", what.to_lowercase(), after(began, at))
}

/// A mark of time under a curve: "12 h".
#[must_use]
pub fn hours_after(time: Seconds, locale: &Locale) -> String {
    let hours = time.get() / 3_600.0;
    format!("{}\u{a0}h", locale.number(hours, 0))
}

fn after(began: Moment, at: Moment) -> String {
    lasting(began.until(at))
}

/// One thing with what is said of it.
#[must_use]
pub fn about(what: &str, says: &str) -> String {
    format!("{what}: {says}")
}

/// The letter of a meter in the list of [`meters`].
#[must_use]
pub fn letter(place: usize) -> String {
    let letter = u8::try_from(place).ok().filter(|place| *place < 26);
    letter.map_or_else(
        || (place + 1).to_string(),
        |place| char::from(b'a' + place).to_string(),
    )
}

/// The meters by their data sheets, and what that means.
#[must_use]
pub fn meters(all: &[String]) -> String {
    let each = all.iter().enumerate();
    let each = each.map(|(place, meter)| format!("{}\u{a0}{meter}", letter(place)));
    let each: Vec<String> = each.collect();
    format!("Meters: {}. {}", each.join(", "), super::HOW_SURE)
}

/// What nobody has looked at.
#[must_use]
pub fn never_looked(checks: &[&str]) -> String {
    let checks = checks.join(", ").to_lowercase();
    format!("Never looked at: {checks}.")
}

/// What a pin is, in a sentence.
#[must_use]
pub fn pin_is(pin: Pin, is: &str) -> String {
    format!("Pin {}: {is}.", pin.number())
}

/// How much the test leads add.
#[must_use]
pub fn leads(ohms: &str) -> String {
    format!("Leads and contacts: {ohms}, taken out of what is said of the windings.")
}

/// What the shapes on the line of rests are, as far as they are there.
#[must_use]
pub fn shapes(there: &[Tried]) -> String {
    let shapes = Tried::ALL.into_iter().filter(|one| there.contains(one));
    let shapes = shapes.map(|one| match one {
        Tried::Started => "a disc started at once",
        Tried::HummedThenStarted => "a ring hummed first",
        Tried::HummedAndTripped => "a cross hummed and clicked off",
        Tried::Silent => "a dash was silent",
        Tried::OutletTripped => "a wedge tripped the outlet",
    });
    format!(
        "Each try lies at the rest before it: {}. The broad band is where sound machines lie; the \
         bar is where this one lies, nine times in ten.",
        shapes.collect::<Vec<_>>().join(", ")
    )
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

/// What the lines of a curve are, and what its numbers stand for.
#[must_use]
pub fn key_of_curve(happened: &[String]) -> String {
    let mut key = "Solid: what was read. Dashed: the target. Grey: where it goes, nine times in \
                   ten."
        .to_owned();
    if !happened.is_empty() {
        let numbered = happened.iter().enumerate();
        let numbered = numbered.map(|(place, what)| format!("{}\u{a0}{what}", place + 1));
        let numbered: Vec<String> = numbered.collect();
        key.push_str(&format!(" Dotted: {}.", numbered.join(", ")));
    }
    key
}
