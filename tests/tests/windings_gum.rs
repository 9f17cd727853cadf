//! Propagation of uncertainty against a package that this project did not write.
//!
//! Source: `tests/reference/gum.py`, the `uncertainties` package, first order as in JCGM 100:2008.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used, clippy::panic)]

use quantity::{Accuracy, Ohms, Sources, Uncertain};
use serde_json::Value;

const REFERENCE: &str = include_str!("../reference/gum.json");

/// Both sides work in doubles; only rounding may differ.
const ROUNDING: f64 = 1e-9;

/// Leads and three readings, as one case has them.
fn inputs(case: &Value) -> [Uncertain<Ohms>; 4] {
    let ohms = |value: &Value| Ohms::new(value.as_f64().unwrap());
    let mut sources = Sources::default();
    let leads = Uncertain::exact(ohms(&case["leads"]["value"]))
        .with(sources.fresh(), ohms(&case["leads"]["standard"]));
    let mut reading = |place: usize| {
        let reading = &case["readings"][place];
        let percent = reading["percent"].as_f64().unwrap();
        let counts = reading["counts"].as_f64().unwrap();
        let accuracy = Accuracy::new(percent, counts).unwrap();
        accuracy.measured(
            ohms(&reading["value"]),
            ohms(&reading["count"]),
            &mut sources,
        )
    };
    let readings = [reading(0), reading(1), reading(2)];
    let [one, two, three] = readings;
    [leads, one, two, three]
}

fn combination(inputs: &[Uncertain<Ohms>; 4], coefficients: &Value) -> Uncertain<Ohms> {
    let mut sum = Uncertain::exact(Ohms::new(0.0));
    for (input, coefficient) in inputs.iter().zip(coefficients.as_array().unwrap()) {
        sum = &sum + &(input * coefficient.as_f64().unwrap());
    }
    sum
}

fn close(found: f64, expected: &Value, what: &str) {
    let expected = expected.as_f64().unwrap();
    let allowed = ROUNDING * (1.0 + expected.abs());
    assert!(
        (found - expected).abs() <= allowed,
        "{what}: {found} is not {expected}"
    );
}

#[test]
fn sums_differences_and_combinations_of_correlated_readings_agree() {
    let reference: Value = serde_json::from_str(REFERENCE).unwrap();
    let cases = reference["cases"].as_array().unwrap();
    assert!(cases.len() >= 40);
    for case in cases {
        let inputs = inputs(case);
        let combinations = case["combinations"].as_array().unwrap();
        let first = combination(&inputs, &combinations[0]["coefficients"]);
        for expected in combinations {
            let name = expected["name"].as_str().unwrap();
            let found = combination(&inputs, &expected["coefficients"]);
            close(found.value().get(), &expected["value"], name);
            close(found.standard().get(), &expected["standard"], name);
            close(
                first.covariance(&found),
                &expected["covariance_with_first"],
                name,
            );
        }
    }
}

#[test]
fn ratios_of_correlated_readings_agree() {
    let reference: Value = serde_json::from_str(REFERENCE).unwrap();
    for case in reference["cases"].as_array().unwrap() {
        let inputs = inputs(case);
        for expected in case["ratios"].as_array().unwrap() {
            let name = expected["name"].as_str().unwrap();
            let over = combination(&inputs, &expected["over"]);
            let under = combination(&inputs, &expected["under"]);
            let found = over.ratio(&under);
            close(found.value().get(), &expected["value"], name);
            close(found.standard().get(), &expected["standard"], name);
        }
    }
}
