//! Worked cases of whole machines, each with its reason beside it in `tests/cases/machines.json`.
//!
//! What is expected of every case of a sort: two faults that were each measured once stand three
//! times above what they were, or more; where nothing is wrong, that is likelier than any fault
//! (a day of cold doesn't prove it: faults of the defrost and of starting hide for weeks).

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used, clippy::panic, clippy::expect_used)]

mod shown;
mod told;

use diagnosis::{Action, Assessment, Choice, Fault, Hold, Suspect, Whole};
use serde_json::Value;

const CASES: &str = include_str!("../cases/machines.json");

/// Every key that a case may have: a misspelt expectation would otherwise hold by itself.
const KEYS: [&str; 15] = [
    "name",
    "why",
    "source",
    "of",
    "told",
    "top",
    "likely",
    "unlikely",
    "raised",
    "nothing wrong",
    "action",
    "hold",
    "no hold",
    "decided",
    "conflict",
];

#[test]
fn every_worked_case_comes_out_as_a_technician_has_it() {
    let cases: Value = serde_json::from_str(CASES).unwrap();
    let cases = cases.as_array().unwrap();
    let of = |kind: &str| cases.iter().filter(|case| case["of"] == kind).count();
    assert!(cases.len() >= 40, "{} cases", cases.len());
    assert!(of("two faults") >= 10);
    assert!(of("nothing wrong") >= 8);
    assert!(of("misleading reading") >= 6);
    let wrong: Vec<String> = cases.iter().flat_map(check).collect();
    assert!(wrong.is_empty(), "{wrong:#?}");
}

/// What does not come out as the case has it.
fn check(case: &Value) -> Vec<String> {
    let name = text(&case["name"]);
    for key in ["why", "source", "of"] {
        assert!(!text(&case[key]).is_empty(), "{name} has no {key}");
    }
    for key in case.as_object().unwrap().keys() {
        assert!(KEYS.contains(&key.as_str()), "{name}: {key}");
    }
    let told: Vec<&str> = case["told"].as_array().unwrap().iter().map(text).collect();
    let assessment = told::assessed(&told);
    let whole = assessment.whole.as_ref().expect("something was told");
    if std::env::var("SHOW").is_ok() {
        shown::show(name, whole);
    }
    let mut wrong = Vec::new();
    wrong.extend(wrong_suspects(case, whole));
    wrong.extend(wrong_verdict(case, &assessment, whole));
    wrong
        .into_iter()
        .map(|what| format!("{name}: {what}"))
        .collect()
}

fn wrong_suspects(case: &Value, whole: &Whole) -> Vec<String> {
    let mut wrong = Vec::new();
    if let Some(top) = case["top"].as_str() {
        let top = fault(top);
        let found = whole.suspects.first().and_then(|suspect| suspect.fault);
        if found != Some(top) {
            wrong.push(format!("on top is {found:?}, not {top:?}"));
        }
    }
    for (key, at_least) in [("likely", true), ("unlikely", false)] {
        for (name, bound) in case[key].as_object().into_iter().flatten() {
            let found = probability(whole, fault(name));
            let bound = bound.as_f64().unwrap();
            if (found >= bound) != at_least {
                wrong.push(format!("{name} has {found:.3}, {key} says {bound}"));
            }
        }
    }
    for (name, factor) in case["raised"].as_object().into_iter().flatten() {
        let suspects = &whole.suspects;
        let found = suspects.iter().find(|one| one.fault == Some(fault(name)));
        let raised = found.map_or(0.0, |one| one.probability / one.before);
        if raised < factor.as_f64().unwrap() {
            wrong.push(format!("{name} was raised {raised:.1} times, not {factor}"));
        }
    }
    if let Some(least) = case["nothing wrong"].as_f64() {
        let found = whole.nothing_wrong.probability;
        if found < least {
            wrong.push(format!("nothing wrong has {found:.3}, not {least}"));
        }
        let beaten = |suspect: &Suspect| suspect.probability > found;
        if let Some(suspect) = whole.suspects.iter().find(|one| beaten(one)) {
            wrong.push(format!("{:?} beats nothing wrong", suspect.fault));
        }
    }
    wrong
}

fn wrong_verdict(case: &Value, assessment: &Assessment, whole: &Whole) -> Vec<String> {
    let mut wrong = Vec::new();
    let actions: Vec<Action> = match &case["action"] {
        Value::Array(all) => all.iter().map(|one| named(text(one))).collect(),
        Value::String(one) => vec![named(one)],
        _ => Vec::new(),
    };
    let found = whole.verdict.best;
    if !actions.is_empty() && !actions.contains(&found.action) {
        wrong.push(format!("the verdict is {found:?}, not {actions:?}"));
    }
    for hold in case["hold"].as_array().into_iter().flatten() {
        let hold: Hold = named(text(hold));
        if !whole.verdict.hold.contains(&hold) {
            wrong.push(format!("{hold:?} is missing in {:?}", whole.verdict.hold));
        }
    }
    for hold in case["no hold"].as_array().into_iter().flatten() {
        let hold: Hold = named(text(hold));
        if whole.verdict.hold.contains(&hold) {
            wrong.push(format!("{hold:?} has no reason here"));
        }
    }
    if let Some(decided) = case["decided"].as_str() {
        let found = whole.verdict.decided;
        if found != named(decided) {
            wrong.push(format!("decided: {found:?}, not {decided}"));
        }
    }
    if let Some(repeat) = case["conflict"].as_str() {
        let found = whole.conflict.map(|conflict| conflict.repeat.name());
        if found != Some(repeat) {
            wrong.push(format!("to repeat: {found:?}, not {repeat}"));
        }
    }
    if assessment.must_stop()
        && whole
            .next
            .iter()
            .any(|next| next.setup.plugged == Some(true))
    {
        wrong.push("something powered is offered though it must stop".to_owned());
    }
    wrong
}

fn probability(whole: &Whole, fault: Fault) -> f64 {
    let found = whole
        .suspects
        .iter()
        .find(|suspect| suspect.fault == Some(fault));
    found.map_or(0.0, |suspect| suspect.probability)
}

fn fault(name: &str) -> Fault {
    named(name)
}

fn named<C: Choice>(name: &str) -> C {
    C::from_name(name).unwrap_or_else(|| panic!("{name} is no name"))
}

fn text(value: &Value) -> &str {
    value.as_str().unwrap_or_default()
}
