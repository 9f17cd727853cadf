//! What the command line says of a machine that is cooling down.

// A test is allowed to fall over, and so is what helps it.
#![allow(clippy::unwrap_used)]

use std::io::Write;
use std::path::Path;
use std::process::{Command, Output, Stdio};

use serde_json::{Value, json};

fn assessed(arguments: &[&str], job: &Value) -> Output {
    let mut child = Command::new(env!("CARGO_BIN_EXE_coldcase"))
        .args(arguments)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    let mut input = child.stdin.take().unwrap();
    input.write_all(job.to_string().as_bytes()).unwrap();
    drop(input);
    let said = child.wait_with_output().unwrap();
    assert!(
        said.stderr.is_empty(),
        "{}",
        String::from_utf8_lossy(&said.stderr)
    );
    said
}

/// A chest freezer, switched on at noon and logged for so many hours towards an end.
fn job(hours: u32, shown: impl Fn(f64) -> f64) -> Value {
    let noon = "2026-12-01T12:00:00+01:00";
    let chosen = |id: &str, check: &str, item: &str, choice: &str| {
        let answer = json!({"check": check, "item": item, "choice": choice});
        json!({"id": id, "at": noon, "answer": answer})
    };
    let minutes: Vec<f64> = (0..=hours * 12).map(|step| f64::from(step) * 5.0).collect();
    let seconds: Vec<f64> = minutes.iter().map(|minute| minute * 60.0).collect();
    let celsius: Vec<f64> = minutes.iter().map(|minute| shown(*minute)).collect();
    json!({
        "type": "coldcase-job", "version": 1, "id": "j", "created": noon, "origin": "invented",
        "entries": [
            chosen("kind", "machine", "kind", "chest-freezer"),
            chosen("gas", "refrigerant", "plate", "r134a"),
            {"id": "on", "at": noon, "event": {"at": noon, "what": "switched-on"}},
            {"id": "log", "at": noon, "log": {"place": "freezer", "file": "a.csv", "rows": 4000,
                "from": noon, "seconds": seconds, "celsius": celsius}},
        ],
    })
}

/// What is left of the way: four per cent less each five minutes.
fn left(minute: f64) -> f64 {
    0.96f64.powi((minute / 5.0) as i32)
}

const NEXT_NOON: &str = "2026-12-02T12:00:00+01:00";

#[test]
fn a_course_is_told_in_words_and_in_json_that_holds_to_its_schema() {
    let job = job(6, |minute| -25.0 + 45.0 * left(minute));
    let said = assessed(&["assess", "--at", NEXT_NOON, "-"], &job);
    let text = String::from_utf8(said.stdout).unwrap();
    for line in [
        "Getting cold\n",
        "it gets to −18\u{a0}°C",
        "Proof\n",
        "Not proved yet.",
    ] {
        assert!(text.contains(line), "{line} in {text}");
    }
    let said = assessed(&["assess", "--json", "--at", NEXT_NOON, "-"], &job);
    let value: Value = serde_json::from_slice(&said.stdout).unwrap();
    let schema = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../public/assessment.schema.json");
    let schema = std::fs::read_to_string(schema).unwrap();
    let validator = jsonschema::draft202012::new(&serde_json::from_str(&schema).unwrap()).unwrap();
    let errors: Vec<String> = validator
        .iter_errors(&value)
        .map(|one| one.to_string())
        .collect();
    assert!(errors.is_empty(), "{errors:#?}");
    let course = &value[0]["cool-down"]["courses"][0];
    assert_eq!(course["compartment"], "freezer");
    assert_eq!(course["forecast"]["verdict"], "will-reach");
    let proof = &value[0]["proof"];
    assert_eq!(proof["proven"], "not-yet");
    assert_eq!(proof["items"].as_array().unwrap().len(), 8);
}

#[test]
fn fahrenheit_is_asked_about_and_not_judged() {
    let job = job(6, |minute| 1.8 * (-20.0 + 40.0 * left(minute)) + 32.0);
    let said = assessed(&["assess", "--at", NEXT_NOON, "-"], &job);
    let text = String::from_utf8(said.stdout).unwrap();
    assert!(text.contains("Are these degrees Fahrenheit?"), "{text}");
    assert!(!text.contains("it goes towards"), "{text}");
}
