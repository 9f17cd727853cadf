//! From what is known of a job to its stored form: the strict writer.

use job::{Answer, Content, Entry, Job, NotDone, Origin, Reading, Unit};
use quantity::Observed;

use crate::cold::{StoredEvent, StoredLog, StoredMetered, StoredSpot};
use crate::fields::Extra;
use crate::start_trial::{StoredStop, StoredTrial};
use crate::{TYPE, VERSION, version_1, write_timestamp};

/// A job without its entries, which are added one by one.
pub(crate) fn head(job: &Job) -> version_1::Document {
    version_1::Document {
        kind: TYPE.to_owned(),
        version: VERSION,
        id: job.id().as_str().to_owned(),
        created: write_timestamp(job.created()),
        origin: origin(job.origin()).to_owned(),
        entries: Vec::new(),
        extra: Extra::new(),
    }
}

pub(crate) fn entry(entry: &Entry) -> version_1::Entry {
    let mut stored = version_1::Entry {
        id: entry.id.as_str().to_owned(),
        at: write_timestamp(entry.at),
        answer: None,
        trial: None,
        stop: None,
        spot: None,
        log: None,
        event: None,
        metered: None,
        note: None,
        strike: None,
        extra: Extra::new(),
    };
    match &entry.content {
        Content::Note(text) => stored.note = Some(text.as_str().to_owned()),
        Content::Trial(trial) => stored.trial = Some(StoredTrial::describe(trial)),
        Content::Stop(stop) => stored.stop = Some(StoredStop::describe(stop)),
        Content::Spot(spot) => stored.spot = Some(StoredSpot::describe(spot)),
        Content::Log(log) => stored.log = Some(StoredLog::describe(log)),
        Content::Event(event) => stored.event = Some(StoredEvent::describe(event)),
        Content::Metered(metered) => stored.metered = Some(StoredMetered::describe(metered)),
        Content::Strike(target) => stored.strike = Some(target.as_str().to_owned()),
        Content::Answer {
            question,
            answer: given,
        } => {
            stored.answer = Some(answer(
                question.check.as_str(),
                question.item.as_str(),
                given,
            ));
        }
    }
    stored
}

pub(crate) const fn origin(origin: Origin) -> &'static str {
    match origin {
        Origin::Person => "person",
        Origin::Invented => "invented",
        Origin::Practice => "practice",
    }
}

pub(crate) const fn not_done(why: NotDone) -> &'static str {
    match why {
        NotDone::CannotReach => "cannot-reach",
        NotDone::NoTool => "no-tool",
        NotDone::NotSafe => "not-safe",
        NotDone::NotSure => "not-sure",
    }
}

fn answer(check: &str, item: &str, answer: &Answer) -> version_1::Answer {
    let mut stored = version_1::Answer {
        check: check.to_owned(),
        item: item.to_owned(),
        reading: None,
        choice: None,
        choices: None,
        text: None,
        not_done: None,
        extra: Extra::new(),
    };
    match answer {
        Answer::Reading(given) => stored.reading = Some(reading(given)),
        Answer::Choice(name) => stored.choice = Some(name.as_str().to_owned()),
        Answer::Choices(names) => {
            let names = names.iter().map(|name| name.as_str().to_owned());
            stored.choices = Some(names.collect());
        }
        Answer::Text(text) => stored.text = Some(text.as_str().to_owned()),
        Answer::NotDone(why) => stored.not_done = Some(not_done(*why).to_owned()),
    }
    stored
}

pub(crate) fn reading(reading: &Reading) -> version_1::Reading {
    let (observed, count) = reading.measured.numbers();
    let (value, count, above) = match observed {
        Observed::Value(value) => (Some(value), Some(count), None),
        Observed::OverRange { above } => (None, None, Some(above)),
    };
    version_1::Reading {
        typed: reading.typed.as_str().to_owned(),
        unit: unit(reading.measured.unit()).to_owned(),
        value,
        count,
        above,
        accuracy: Some(version_1::Accuracy {
            percent: reading.accuracy.percent(),
            counts: reading.accuracy.counts(),
            extra: Extra::new(),
        }),
        extra: Extra::new(),
    }
}

/// The name of a unit in a document.
pub(crate) fn unit(unit: Unit) -> &'static str {
    match unit {
        Unit::Ohm => "ohm",
        Unit::Volt => "volt",
        Unit::Celsius => "celsius",
        Unit::Farad => "farad",
        Unit::Ampere => "ampere",
        Unit::Watt => "watt",
        Unit::Metre => "metre",
        Unit::WattHour => "watt-hour",
    }
}
