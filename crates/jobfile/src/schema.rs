//! The JSON Schema of the document, made from the structs that are written.
//!
//! Every text that the door takes as version 1 holds to it. The other way round the door is
//! stricter: two entries with one identifier, or 30 February, are beyond a schema.

// These types stand for texts and numbers in the schema alone; none is ever built.
#![allow(dead_code)]

use schemars::{JsonSchema, generate::SchemaSettings};
use serde_json::{Value, json};

pub(crate) const CONTENTS: &[&str] = &[
    "answer", "trial", "stop", "spot", "log", "event", "metered", "note", "strike",
];
pub(crate) const SHAPES: &[&str] = &["reading", "choice", "choices", "text", "not-done"];
pub(crate) const ID: &str = "^[A-Za-z0-9-]{1,64}$";
pub(crate) const NAME: &str = "^[a-z0-9-]{1,40}$";
pub(crate) const TIME: &str = "^[0-9]{4}-[0-9]{2}-[0-9]{2}[Tt][0-9]{2}:[0-9]{2}:[0-9]{2}\
    (\\.[0-9]{1,3})?([Zz]|[+-][0-9]{2}:[0-9]{2})$";
/// No control characters but the tab and both line breaks.
const TEXT: &str = r"^[^\u0000-\u0008\u000B\u000C\u000E-\u001F\u007F-\u009F]*$";

#[derive(JsonSchema)]
#[schemars(inline)]
pub(crate) struct Id(#[schemars(regex(pattern = ID))] String);

#[derive(JsonSchema)]
#[schemars(inline)]
pub(crate) struct Name(#[schemars(regex(pattern = NAME))] String);

#[derive(JsonSchema)]
#[schemars(inline)]
pub(crate) struct Text(#[schemars(regex(pattern = TEXT), length(max = 2_000))] String);

#[derive(JsonSchema)]
#[schemars(inline)]
pub(crate) struct Number(#[schemars(range(min = -1e30, max = 1e30))] f64);

#[derive(JsonSchema)]
#[schemars(inline)]
pub(crate) struct Rest(#[schemars(range(min = 0.0, max = 604_800.0))] f64);

#[derive(JsonSchema)]
#[schemars(inline)]
pub(crate) struct Step(#[schemars(range(max = 1e30), extend("exclusiveMinimum" = 0.0))] f64);

#[derive(JsonSchema)]
#[schemars(inline)]
pub(crate) struct Choices(#[schemars(length(max = 100), extend("uniqueItems" = true))] Vec<Name>);

/// The JSON Schema (2020-12) of version 1.
#[must_use]
pub fn schema() -> Value {
    SchemaSettings::draft2020_12()
        .into_generator()
        .into_root_schema_for::<crate::version_1::Document>()
        .to_value()
}

/// Any two of these fields together.
pub(crate) fn two_of(names: &[&str]) -> Value {
    let pairs = names.iter().enumerate().flat_map(|(index, one)| {
        let others = names.iter().skip(index + 1);
        others.map(move |other| json!({"required": [one, other]}))
    });
    json!({"anyOf": pairs.collect::<Vec<_>>()})
}

/// A reading in a unit that this version knows.
pub(crate) fn in_a_known_unit() -> Value {
    json!({"properties": {"unit": {"enum": job::Unit::ALL.map(crate::describe::unit)}}})
}

/// What such a reading has to have.
pub(crate) fn complete() -> Value {
    json!({
        "required": ["accuracy"],
        "oneOf": [{"required": ["value", "count"]}, {"required": ["above"]}],
        "not": {"required": ["value", "above"]},
    })
}
