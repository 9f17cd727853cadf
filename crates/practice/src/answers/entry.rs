//! Entries as a page would make them.

use diagnosis::{Ask, Choice, Clue, Item, THERE_IS_NONE, Task, usual_accuracy};
use job::{Answer, Content, Measured, Name, NotDone, Question, Reading, Text, Unit};
use measure::MeterKind;
use quantity::{Amps, Celsius, Farads, Metres, Volts, WattHours, Watts, parse_reading};
use simulator::Display;

/// The answer to a question; nothing where a page would have no such question.
pub(crate) fn answer(check: &str, item: &str, answer: Answer) -> Option<Content> {
    let question = Question::new(check, item).ok()?;
    Some(Content::Answer { question, answer })
}

/// One of the choices of an item.
pub(super) fn choice(check: &str, item: &str, name: &str) -> Option<Content> {
    answer(check, item, Answer::Choice(Name::new(name).ok()?))
}

/// Any of the choices of an item.
pub(super) fn choices(check: &str, item: &str, names: &[&str]) -> Option<Content> {
    let names = names.iter().filter_map(|name| Name::new(name).ok());
    answer(check, item, Answer::Choices(names.collect()))
}

/// What a clue shows, by the place of the answer.
pub(super) fn clue(clue: Clue, place: usize) -> Option<Content> {
    let name = clue.answers().get(place)?;
    let (check, item) = Ask::Answer(clue).names();
    choice(check, item, name)
}

/// That a machine has no such part.
pub(super) fn there_is_none(clue: Clue) -> Option<Content> {
    let (check, item) = Ask::Answer(clue).names();
    choice(check, item, THERE_IS_NONE)
}

/// That nobody can say.
pub(super) fn not_sure(task: Task) -> Option<Content> {
    let item = match task {
        Task::Clue(clue) => Ask::Answer(clue).names().1,
        Task::Check(_) | Task::History => return None,
    };
    answer(task.name(), item, Answer::NotDone(NotDone::NotSure))
}

/// A reading of an item, typed off a display.
pub(super) fn reading(item: Item, display: &Display, meter: MeterKind) -> Option<Content> {
    let unit = item.unit()?;
    let reading = typed(display, unit, meter)?;
    answer(item.check().name(), item.name(), Answer::Reading(reading))
}

/// What a display shows, as it is typed in.
pub(super) fn typed(display: &Display, unit: Unit, meter: MeterKind) -> Option<Reading> {
    let text = display.text.as_str();
    let meter = meter.automatic();
    let accuracy = usual_accuracy(unit).unwrap_or(meter.accuracy);
    let measured = match unit {
        Unit::Ohm => Measured::Ohms(parse_reading(text, meter.top).ok()?),
        Unit::Volt => Measured::Volts(parse_reading(text, Volts::new(600.0)).ok()?),
        Unit::Celsius => Measured::Celsius(parse_reading(text, Celsius::new(200.0)).ok()?),
        Unit::Farad => Measured::Farads(parse_reading(text, Farads::new(1.0)).ok()?),
        Unit::Ampere => Measured::Amps(parse_reading(text, Amps::new(100.0)).ok()?),
        Unit::Watt => Measured::Watts(parse_reading(text, Watts::new(4_000.0)).ok()?),
        Unit::Metre => Measured::Metres(parse_reading(text, Metres::new(100.0)).ok()?),
        Unit::WattHour => Measured::WattHours(parse_reading(text, WattHours::new(1e6)).ok()?),
    };
    Some(Reading {
        typed: Text::new(text).ok()?,
        measured,
        accuracy,
    })
}
