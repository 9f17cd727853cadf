//! The published schema, and documents against it by a validator of others: the `jsonschema`
//! crate, which passes the official JSON Schema test suite. It was chosen over a script because
//! it runs in the same process, so that thousands of random documents can be checked as well.

use std::sync::LazyLock;

use job::Origin;
use jsonschema::Validator;
use serde_json::Value;

use crate::fixtures::opened;
use crate::{compare, documents};

static VALIDATOR: LazyLock<Validator> = LazyLock::new(|| {
    let published = std::fs::read_to_string(crate::repository("public/job.schema.json")).unwrap();
    jsonschema::draft202012::new(&serde_json::from_str(&published).unwrap()).unwrap()
});

/// Panics with every place where a text doesn't hold to the published schema.
pub(crate) fn hold_to_schema(name: &str, text: &str) {
    let value: Value = serde_json::from_str(text.trim_start_matches('\u{feff}')).unwrap();
    let errors: Vec<_> = VALIDATOR
        .iter_errors(&value)
        .map(|error| format!("{}: {error}", error.instance_path()))
        .collect();
    assert!(errors.is_empty(), "{name}: {errors:#?}");
}

fn holds_to_schema(bytes: &[u8]) -> Option<bool> {
    let value: Value = serde_json::from_slice(bytes).ok()?;
    Some(VALIDATOR.is_valid(&value))
}

#[test]
fn the_published_schema_is_the_one_made_from_the_types() {
    let made = serde_json::to_string_pretty(&jobfile::schema()).unwrap();
    compare("public/job.schema.json", &format!("{made}\n"));
}

#[test]
fn the_published_schema_is_a_schema() {
    let published: Value = serde_json::from_str(&jobfile::schema().to_string()).unwrap();
    assert!(jsonschema::meta::is_valid(&published));
}

#[test]
fn every_document_that_opens_holds_to_the_schema_before_and_after_saving() {
    for (name, bytes) in documents("tests/documents/good") {
        hold_to_schema(&name, std::str::from_utf8(&bytes).unwrap());
        hold_to_schema(&name, &jobfile::save(&opened(&bytes).0));
    }
}

#[test]
fn the_examples_open_without_a_notice_say_that_they_are_invented_and_hold_to_the_schema() {
    let examples = documents("demo-data");
    assert!(examples.len() >= 6, "{} examples", examples.len());
    for (name, bytes) in examples {
        let (document, notices) = opened(&bytes);
        assert_eq!(notices, [], "{name}");
        assert_eq!(document.job().origin(), Origin::Invented, "{name}");
        hold_to_schema(&name, std::str::from_utf8(&bytes).unwrap());
    }
}

/// What only the door can see: it would take more than a schema to say.
const BEYOND_A_SCHEMA: &[&str] = &[
    "created-before-1970.json",
    "created-in-month-13.json",
    "created-with-an-offset-of-a-day.json",
    "entry-on-30-february.json",
    "log-goes-back-in-time.json",
    "log-warmer-than-any-place.json",
    "log-with-a-temperature-too-few.json",
    "metered-ends-before-it-begins.json",
    "repeated-field-deep.json",
    "repeated-field.json",
    "same-id-different-content.json",
];

#[test]
fn the_schema_refuses_what_the_door_refuses_but_for_a_few_named_cases() {
    let held: Vec<String> = documents("tests/documents/bad")
        .into_iter()
        .filter(|(_, bytes)| holds_to_schema(bytes) == Some(true))
        .map(|(name, _)| name)
        .collect();
    assert_eq!(held, BEYOND_A_SCHEMA);
}

#[test]
fn a_newer_version_does_not_hold_to_the_schema_of_version_1() {
    for (name, bytes) in documents("tests/documents/newer") {
        let text = String::from_utf8(bytes).unwrap();
        let bytes = text.trim_start_matches('\u{feff}').as_bytes();
        assert_eq!(holds_to_schema(bytes), Some(false), "{name}");
    }
}
