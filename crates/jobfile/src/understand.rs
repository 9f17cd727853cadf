//! From the stored form to what it says: the tolerant reader.
//!
//! What is unknown makes an entry unreadable, which is a notice. What is known but can't be
//! right is an error with its place.

use std::collections::{BTreeMap, BTreeSet};

use job::{Answer, Content, Entry, Id, Job, Measured, Moment, Name, NotDone, Origin};
use job::{Question, Reading, Text, Unit};
use quantity::{Accuracy, Observed, Quantity, Typed, parse_reading};

use crate::fields::Place;
use crate::limit::{MOST_CHOICES, MOST_MAGNITUDE};
use crate::{Limit, Notice, OpenError, Problem, Unreadable, describe, parse_timestamp, version_1};

/// A job as far as this program understands it, with what a person should know about it.
/// Entries that say the same under the same identifier are taken out of `stored`.
pub(crate) fn document(stored: &mut version_1::Document) -> Result<(Job, Vec<Notice>), OpenError> {
    let mut job = head(stored)?;
    let mut notices = Vec::new();
    let entries = Place::WHOLE.field("entries");
    let repeated = repeated(stored, &entries)?;
    for (index, entry) in stored.entries.iter().enumerate() {
        let place = entries.item(index);
        let (id, understood) = self::entry(entry, &place)?;
        let path = place.to_string();
        if repeated.contains(&index) {
            notices.push(Notice::Repeated { entry: id, path });
            continue;
        }
        let unreadable = match understood {
            Err(why) => Some(why),
            Ok(understood) => {
                notices.extend(disagreement(&understood, &path));
                add(&mut job, understood)
            }
        };
        if let Some(why) = unreadable {
            let entry = id;
            notices.push(Notice::Unreadable { entry, path, why });
        }
    }
    let mut index = 0;
    stored.entries.retain(|_| {
        index += 1;
        !repeated.contains(&(index - 1))
    });
    Ok((job, notices))
}

/// One entry: its identifier, and what it says or why that can't be read.
pub(crate) fn entry(
    stored: &version_1::Entry,
    place: &Place,
) -> Result<(Id, Result<Entry, Unreadable>), OpenError> {
    let id = self::id(&stored.id, &place.field("id"))?;
    let at = moment(&stored.at, &place.field("at"))?;
    let understood = content(stored, place)?.map(|content| Entry {
        id: id.clone(),
        at,
        content,
    });
    Ok((id, understood))
}

/// The document without its entries.
fn head(stored: &version_1::Document) -> Result<Job, OpenError> {
    let place = Place::WHOLE.field("origin");
    let origin = Origin::ALL
        .into_iter()
        .find(|origin| describe::origin(*origin) == stored.origin)
        .ok_or_else(|| place.wrong(Problem::Word(stored.origin.clone())))?;
    Ok(Job::new(
        id(&stored.id, &Place::WHOLE.field("id"))?,
        moment(&stored.created, &Place::WHOLE.field("created"))?,
        origin,
    ))
}

/// Which entries repeat an earlier one in every field.
fn repeated(stored: &version_1::Document, entries: &Place) -> Result<BTreeSet<usize>, OpenError> {
    let mut firsts = BTreeMap::new();
    let mut repeated = BTreeSet::new();
    for (index, entry) in stored.entries.iter().enumerate() {
        let Some((first, same)) = firsts.get(&entry.id) else {
            firsts.insert(&entry.id, (index, entry));
            continue;
        };
        if *same != entry {
            return Err(OpenError::SameId {
                id: id(&entry.id, &entries.item(index).field("id"))?,
                first: entries.item(*first).to_string(),
                second: entries.item(index).to_string(),
            });
        }
        repeated.insert(index);
    }
    Ok(repeated)
}

/// Adds an entry where it can be understood among the others.
fn add(job: &mut Job, entry: Entry) -> Option<Unreadable> {
    match job.add(entry) {
        // Two of one identifier were sorted out before.
        Ok(()) | Err(job::AddError::SameId(_)) => None,
        Err(job::AddError::NothingToStrike(target)) => Some(Unreadable::Strikes(target)),
    }
}

fn disagreement(entry: &Entry, path: &str) -> Option<Notice> {
    let Content::Answer {
        answer: Answer::Reading(reading),
        ..
    } = &entry.content
    else {
        return None;
    };
    if reads_as(reading.typed.as_str(), reading.measured) {
        return None;
    }
    Some(Notice::TypedDisagrees {
        entry: entry.id.clone(),
        path: path.to_owned(),
        typed: reading.typed.clone(),
        understood: reading.measured,
    })
}

/// Whether a text reads as what was understood by it.
fn reads_as(typed: &str, understood: Measured) -> bool {
    match understood {
        Measured::Ohms(understood) => reads_as_typed(typed, understood),
        Measured::Volts(understood) => reads_as_typed(typed, understood),
        Measured::Celsius(understood) => reads_as_typed(typed, understood),
        Measured::Farads(understood) => reads_as_typed(typed, understood),
        Measured::Amps(understood) => reads_as_typed(typed, understood),
        Measured::Watts(understood) => reads_as_typed(typed, understood),
        Measured::Metres(understood) => reads_as_typed(typed, understood),
        Measured::WattHours(understood) => reads_as_typed(typed, understood),
    }
}

fn reads_as_typed<Q: Quantity>(typed: &str, understood: Typed<Q>) -> bool {
    // What "over range" meant depends on the meter's range, which only the entry knows.
    let top = match understood.observed {
        Observed::OverRange { above } => above,
        Observed::Value(value) => value,
    };
    parse_reading(typed, top) == Ok(understood)
}

fn content(
    stored: &version_1::Entry,
    place: &Place,
) -> Result<Result<Content, Unreadable>, OpenError> {
    let given = [
        ("answer", stored.answer.is_some()),
        ("trial", stored.trial.is_some()),
        ("stop", stored.stop.is_some()),
        ("spot", stored.spot.is_some()),
        ("log", stored.log.is_some()),
        ("event", stored.event.is_some()),
        ("metered", stored.metered.is_some()),
        ("note", stored.note.is_some()),
        ("strike", stored.strike.is_some()),
    ];
    one_at_most(&given, place)?;
    if let Some(trial) = &stored.trial {
        return trial.understand(&place.field("trial"));
    }
    if let Some(stop) = &stored.stop {
        return stop.understand(&place.field("stop")).map(Ok);
    }
    if let Some(spot) = &stored.spot {
        return spot.understand(&place.field("spot"));
    }
    if let Some(log) = &stored.log {
        return log.understand(&place.field("log"));
    }
    if let Some(event) = &stored.event {
        return event.understand(&place.field("event"));
    }
    if let Some(metered) = &stored.metered {
        return metered.understand(&place.field("metered"));
    }
    if let Some(note) = &stored.note {
        return Ok(Ok(Content::Note(text(note, &place.field("note"))?)));
    }
    if let Some(target) = &stored.strike {
        return Ok(Ok(Content::Strike(id(target, &place.field("strike"))?)));
    }
    let Some(given) = &stored.answer else {
        return Ok(Err(Unreadable::Content));
    };
    let place = place.field("answer");
    let question = Question {
        check: name(&given.check, &place.field("check"))?,
        item: name(&given.item, &place.field("item"))?,
    };
    Ok(answer(given, &place)?.map(|answer| Content::Answer { question, answer }))
}

fn answer(
    stored: &version_1::Answer,
    place: &Place,
) -> Result<Result<Answer, Unreadable>, OpenError> {
    let given = [
        ("reading", stored.reading.is_some()),
        ("choice", stored.choice.is_some()),
        ("choices", stored.choices.is_some()),
        ("text", stored.text.is_some()),
        ("not-done", stored.not_done.is_some()),
    ];
    one_at_most(&given, place)?;
    if let Some(given) = &stored.reading {
        let reading = reading(given, &place.field("reading"))?;
        return Ok(reading.map(Answer::Reading));
    }
    if let Some(given) = &stored.choice {
        return Ok(Ok(Answer::Choice(name(given, &place.field("choice"))?)));
    }
    if let Some(given) = &stored.choices {
        return Ok(Ok(choices(given, &place.field("choices"))?));
    }
    if let Some(given) = &stored.text {
        return Ok(Ok(Answer::Text(text(given, &place.field("text"))?)));
    }
    let Some(given) = &stored.not_done else {
        return Ok(Err(Unreadable::Shape));
    };
    let known = NotDone::ALL
        .into_iter()
        .find(|why| describe::not_done(*why) == given);
    Ok(known
        .map(Answer::NotDone)
        .ok_or_else(|| Unreadable::Reason(given.clone())))
}

fn choices(given: &[String], place: &Place) -> Result<Answer, OpenError> {
    if given.len() > MOST_CHOICES {
        return Err(place.beyond(Limit::Choices));
    }
    let mut names = BTreeSet::new();
    for (index, choice) in given.iter().enumerate() {
        let place = place.item(index);
        if !names.insert(name(choice, &place)?) {
            return Err(place.wrong(Problem::Repeated(choice.clone())));
        }
    }
    Ok(Answer::Choices(names))
}

pub(crate) fn reading(
    stored: &version_1::Reading,
    place: &Place,
) -> Result<Result<Reading, Unreadable>, OpenError> {
    let typed = text(&stored.typed, &place.field("typed"))?;
    let value = magnitude(stored.value, &place.field("value"))?;
    let count = magnitude(stored.count, &place.field("count"))?;
    let above = magnitude(stored.above, &place.field("above"))?;
    if count.is_some_and(|count| count <= 0.0) {
        return Err(place.field("count").wrong(Problem::Count));
    }
    let accuracy = accuracy(stored.accuracy.as_ref(), &place.field("accuracy"))?;
    let Some(unit) = Unit::ALL
        .into_iter()
        .find(|unit| describe::unit(*unit) == stored.unit)
    else {
        return Ok(Err(Unreadable::Unit(stored.unit.clone())));
    };
    let missing = |name| place.field(name).wrong(Problem::Missing);
    let (observed, count) = match (value, above) {
        (Some(_), Some(_)) => return Err(place.wrong(Problem::Both("value", "above"))),
        (None, None) => return Err(place.wrong(Problem::Neither("value", "above"))),
        (Some(value), None) => (
            Observed::Value(value),
            count.ok_or_else(|| missing("count"))?,
        ),
        (None, Some(above)) => (Observed::OverRange { above }, 0.0),
    };
    Ok(Ok(Reading {
        typed,
        measured: Measured::new(unit, observed, count),
        accuracy: accuracy.ok_or_else(|| missing("accuracy"))?,
    }))
}

fn accuracy(
    stored: Option<&version_1::Accuracy>,
    place: &Place,
) -> Result<Option<Accuracy>, OpenError> {
    let Some(stored) = stored else {
        return Ok(None);
    };
    Accuracy::new(stored.percent, stored.counts)
        .map(Some)
        .ok_or_else(|| place.wrong(Problem::Accuracy))
}

/// A number within [`Limit::Magnitude`], and so a finite one.
fn magnitude(number: Option<f64>, place: &Place) -> Result<Option<f64>, OpenError> {
    match number {
        Some(number) if number.is_nan() || number.abs() > MOST_MAGNITUDE => {
            Err(place.beyond(Limit::Magnitude))
        }
        within => Ok(within),
    }
}

fn one_at_most(given: &[(&'static str, bool)], place: &Place) -> Result<(), OpenError> {
    let mut names = given.iter().filter(|(_, is_there)| *is_there);
    match (names.next(), names.next()) {
        (Some((one, _)), Some((other, _))) => Err(place.wrong(Problem::Both(one, other))),
        _ => Ok(()),
    }
}

pub(crate) fn id(text: &str, place: &Place) -> Result<Id, OpenError> {
    Id::new(text).map_err(|error| place.wrong(Problem::Name(error)))
}

fn name(text: &str, place: &Place) -> Result<Name, OpenError> {
    Name::new(text).map_err(|error| place.wrong(Problem::Name(error)))
}

pub(crate) fn text(text: &str, place: &Place) -> Result<Text, OpenError> {
    Text::new(text).map_err(|error| place.wrong(Problem::Text(error)))
}

pub(crate) fn moment(text: &str, place: &Place) -> Result<Moment, OpenError> {
    parse_timestamp(text).map_err(|error| place.wrong(Problem::Time(error)))
}
