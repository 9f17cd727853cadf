//! Version 1 of the document, as it lies in a file. Frozen: a change of meaning is version 2.
//!
//! These structs hold what a document says and not what it means: anything that is not known
//! here stays in `extra`, so an entry that this program can't read is still one of these and is
//! written as it came. The JSON Schema is made from them.

use serde::Serialize;
use serde_json::Value;

use crate::cold::{StoredEvent, StoredLog, StoredMetered, StoredSpot};
use crate::fields::{Extra, Fields, Place, list, number, text, whole_number};
use crate::limit::{MOST_CHOICES, MOST_ENTRIES};
#[cfg(feature = "schema")]
use crate::schema;
use crate::start_trial::{StoredStop, StoredTrial};
use crate::{Limit, OpenError};

/// A job: everything that was observed on one refrigerator or freezer.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(title = "Coldcase job, version 1"))]
pub(crate) struct Document {
    /// What kind of document this is.
    #[serde(rename = "type")]
    #[cfg_attr(feature = "schema", schemars(extend("const" = "coldcase-job")))]
    pub(crate) kind: String,
    /// The version of the form. A higher one may hold things that this schema doesn't know.
    #[cfg_attr(feature = "schema", schemars(extend("const" = 1)))]
    pub(crate) version: u64,
    /// The job's identifier.
    #[cfg_attr(feature = "schema", schemars(regex(pattern = schema::ID)))]
    pub(crate) id: String,
    /// When the job was begun: RFC 3339 with the offset of the clock on the wall.
    #[cfg_attr(feature = "schema", schemars(regex(pattern = schema::TIME)))]
    pub(crate) created: String,
    /// Made by a person about a machine, invented to try the program with, or made by a person about
    /// a simulated machine to practise on.
    #[cfg_attr(feature = "schema", schemars(extend("enum" = ["person", "invented", "practice"])))]
    pub(crate) origin: String,
    /// What was observed, in the order in which it was entered. Entries are only ever added.
    #[cfg_attr(feature = "schema", schemars(length(max = 10_000)))]
    pub(crate) entries: Vec<Entry>,
    #[serde(flatten)]
    pub(crate) extra: Extra,
}

/// One thing that was entered: an answer, a try to start, a stop, a temperature, a course of them, an
/// event, a count of energy, a note or a strike, or something of a newer program.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(extend("not" = schema::two_of(schema::CONTENTS))))]
pub(crate) struct Entry {
    /// The entry's identifier, used once in a job.
    #[cfg_attr(feature = "schema", schemars(regex(pattern = schema::ID)))]
    pub(crate) id: String,
    /// When it was entered: RFC 3339 with the offset of the clock on the wall.
    #[cfg_attr(feature = "schema", schemars(regex(pattern = schema::TIME)))]
    pub(crate) at: String,
    /// An answer to a question.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", schemars(with = "Answer", default))]
    pub(crate) answer: Option<Answer>,
    /// A try to start the compressor.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", schemars(with = "StoredTrial", default))]
    pub(crate) trial: Option<StoredTrial>,
    /// The compressor stopped.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", schemars(with = "StoredStop", default))]
    pub(crate) stop: Option<StoredStop>,
    /// A temperature that a person read.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", schemars(with = "StoredSpot", default))]
    pub(crate) spot: Option<StoredSpot>,
    /// A course of temperatures out of a file.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", schemars(with = "StoredLog", default))]
    pub(crate) log: Option<StoredLog>,
    /// Something happened while the machine was proved.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", schemars(with = "StoredEvent", default))]
    pub(crate) event: Option<StoredEvent>,
    /// What a plug-in meter counted.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", schemars(with = "StoredMetered", default))]
    pub(crate) metered: Option<StoredMetered>,
    /// A remark in the person's own words.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", schemars(with = "schema::Text", default))]
    pub(crate) note: Option<String>,
    /// The identifier of an earlier entry that no longer counts. Striking a strike brings the
    /// other back.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", schemars(with = "schema::Id", default))]
    pub(crate) strike: Option<String>,
    #[serde(flatten)]
    pub(crate) extra: Extra,
}

/// An answer to a question, in one of the shapes that an answer can have.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(extend("not" = schema::two_of(schema::SHAPES))))]
#[serde(rename_all = "kebab-case")]
pub(crate) struct Answer {
    /// The check, for example `windings`.
    #[cfg_attr(feature = "schema", schemars(regex(pattern = schema::NAME)))]
    pub(crate) check: String,
    /// What the check asks, for example `pair-1-2`.
    #[cfg_attr(feature = "schema", schemars(regex(pattern = schema::NAME)))]
    pub(crate) item: String,
    /// A number off a meter.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", schemars(with = "Reading", default))]
    pub(crate) reading: Option<Reading>,
    /// One of the choices offered.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", schemars(with = "schema::Name", default))]
    pub(crate) choice: Option<String>,
    /// Any of the choices offered; none of them is an answer too.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", schemars(with = "schema::Choices", default))]
    pub(crate) choices: Option<Vec<String>>,
    /// Words off a plate.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", schemars(with = "schema::Text", default))]
    pub(crate) text: Option<String>,
    /// It was not done, and why: cannot-reach, no-tool, not-safe or not-sure.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", schemars(with = "String", default))]
    pub(crate) not_done: Option<String>,
    #[serde(flatten)]
    pub(crate) extra: Extra,
}

/// A number off a meter: as typed and as understood.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(
    feature = "schema",
    schemars(extend("if" = schema::in_a_known_unit(), "then" = schema::complete()))
)]
pub(crate) struct Reading {
    /// Exactly what was typed.
    #[cfg_attr(feature = "schema", schemars(with = "schema::Text"))]
    pub(crate) typed: String,
    /// The unit of `value`, `above` and `count`: ohm, volt, celsius, farad,
    /// ampere, watt, metre or watt-hour.
    pub(crate) unit: String,
    /// What was understood. This or `above`.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", schemars(with = "schema::Number", default))]
    pub(crate) value: Option<f64>,
    /// One step of the last digit typed: 0.1 for 4.7. With `value` only.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", schemars(with = "schema::Step", default))]
    pub(crate) count: Option<f64>,
    /// The display was over range, so the truth lies above this. This or `value`.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", schemars(with = "schema::Number", default))]
    pub(crate) above: Option<f64>,
    /// The meter's accuracy at the time.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", schemars(with = "Accuracy", default))]
    pub(crate) accuracy: Option<Accuracy>,
    #[serde(flatten)]
    pub(crate) extra: Extra,
}

/// A meter's accuracy as its data sheet gives it: ±(percent of reading + counts).
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub(crate) struct Accuracy {
    /// Percent of the reading.
    #[cfg_attr(feature = "schema", schemars(range(min = 0.0, max = 20.0)))]
    pub(crate) percent: f64,
    /// Steps of the last digit.
    #[cfg_attr(feature = "schema", schemars(range(min = 0.0, max = 100.0)))]
    pub(crate) counts: f64,
    #[serde(flatten)]
    pub(crate) extra: Extra,
}

impl Document {
    pub(crate) fn read(value: &Value) -> Result<Self, OpenError> {
        let mut fields = Fields::of(value, &Place::WHOLE)?;
        Ok(Self {
            kind: fields.must("type", text)?,
            version: fields.must("version", whole_number)?,
            id: fields.must("id", text)?,
            created: fields.must("created", text)?,
            origin: fields.must("origin", text)?,
            entries: fields.must("entries", |value, place| {
                list(value, place, (MOST_ENTRIES, Limit::Entries), Entry::read)
            })?,
            extra: fields.rest(),
        })
    }
}

impl Entry {
    fn read(value: &Value, place: &Place) -> Result<Self, OpenError> {
        let mut fields = Fields::of(value, place)?;
        Ok(Self {
            id: fields.must("id", text)?,
            at: fields.must("at", text)?,
            answer: fields.may("answer", Answer::read)?,
            trial: fields.may("trial", StoredTrial::read)?,
            stop: fields.may("stop", StoredStop::read)?,
            spot: fields.may("spot", StoredSpot::read)?,
            log: fields.may("log", StoredLog::read)?,
            event: fields.may("event", StoredEvent::read)?,
            metered: fields.may("metered", StoredMetered::read)?,
            note: fields.may("note", text)?,
            strike: fields.may("strike", text)?,
            extra: fields.rest(),
        })
    }
}

impl Answer {
    fn read(value: &Value, place: &Place) -> Result<Self, OpenError> {
        let mut fields = Fields::of(value, place)?;
        Ok(Self {
            check: fields.must("check", text)?,
            item: fields.must("item", text)?,
            reading: fields.may("reading", Reading::read)?,
            choice: fields.may("choice", text)?,
            choices: fields.may("choices", |value, place| {
                list(value, place, (MOST_CHOICES, Limit::Choices), text)
            })?,
            text: fields.may("text", text)?,
            not_done: fields.may("not-done", text)?,
            extra: fields.rest(),
        })
    }
}

impl Reading {
    pub(crate) fn read(value: &Value, place: &Place) -> Result<Self, OpenError> {
        let mut fields = Fields::of(value, place)?;
        Ok(Self {
            typed: fields.must("typed", text)?,
            unit: fields.must("unit", text)?,
            value: fields.may("value", number)?,
            count: fields.may("count", number)?,
            above: fields.may("above", number)?,
            accuracy: fields.may("accuracy", Accuracy::read)?,
            extra: fields.rest(),
        })
    }
}

impl Accuracy {
    fn read(value: &Value, place: &Place) -> Result<Self, OpenError> {
        let mut fields = Fields::of(value, place)?;
        Ok(Self {
            percent: fields.must("percent", number)?,
            counts: fields.must("counts", number)?,
            extra: fields.rest(),
        })
    }
}
