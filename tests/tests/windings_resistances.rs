//! Windings and leads in ohms against weighted least squares by a script that shares nothing with
//! the measuring crate.
//!
//! Source: `tests/reference/windings_resistances.py`, numpy.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used, clippy::panic)]

use measure::MeterKind;
use measure::windings::{
    Inspection, Leads, Mains, Pair, PairReading, Pin, StartGear, WindingPriors, Windings,
};
use quantity::parse_reading;
use serde_json::Value;

const REFERENCE: &str = include_str!("../reference/windings_resistances.json");

/// Both sides solve the same linear equations in doubles.
const ROUNDING: f64 = 1e-9;

#[test]
fn run_start_and_leads_with_their_covariance_agree_with_least_squares() {
    let reference: Value = serde_json::from_str(REFERENCE).unwrap();
    let cases = reference["cases"].as_array().unwrap();
    for case in cases {
        let windings = Windings::of(&inspection(case), &WindingPriors::default());
        let found = windings.resistances.unwrap();
        let close = |found: f64, expected: &Value| {
            let expected = expected.as_f64().unwrap();
            assert!(
                (found - expected).abs() < ROUNDING,
                "{found} {expected} {case}"
            );
        };
        for (place, value) in [&found.run, &found.start, &found.leads].iter().enumerate() {
            close(value.value().get(), &case["values"][place]);
            close(value.standard().get(), &case["standards"][place]);
        }
        close(found.run.covariance(&found.start), &case["run with start"]);
        close(found.run.covariance(&found.leads), &case["run with leads"]);
    }
    assert!(cases.len() >= 60);
}

/// Pin 1 is common, pin 2 run, pin 3 start, as letters beside the pins say.
fn inspection(case: &Value) -> Inspection {
    let text = |key: &str| case[key].as_str().unwrap();
    let meter = match text("meter") {
        "good" => MeterKind::Good.automatic(),
        "basic" => MeterKind::Basic.automatic(),
        other => panic!("{other} is no meter"),
    };
    let read = |typed: &str| parse_reading(typed, meter.top).unwrap();
    let mut inspection = Inspection::default();
    inspection.mains = Some(Mains::V120F60);
    inspection.start_gear = StartGear::Off;
    inspection.wiring.marked = [Some(Pin::One), Some(Pin::Three), Some(Pin::Two)];
    inspection.leads = match text("leads") {
        "unknown" => Leads::Unknown,
        "zeroed" => Leads::Zeroed,
        measured => Leads::Measured(read(measured), meter.accuracy),
    };
    for (pair, key) in [
        (Pair::OneTwo, "common-run"),
        (Pair::OneThree, "common-start"),
        (Pair::TwoThree, "start-run"),
    ] {
        inspection.set(PairReading {
            pair,
            typed: read(text(key)),
            accuracy: meter.accuracy,
        });
    }
    inspection
}
