//! The density of readings under four explanations, against the same model summed over dense
//! grids by a script that shares nothing with the measuring crate.
//!
//! Source: `tests/reference/windings_likelihood.py`, numpy and scipy.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used, clippy::panic)]

use measure::MeterKind;
use measure::windings::{
    Explanation, Inspection, Leads, Mains, MainsPriors, Normal, Pair, PairReading, WindingPriors,
    Windings,
};
use quantity::parse_reading;
use serde_json::Value;

const REFERENCE: &str = include_str!("../reference/windings_likelihood.json");

/// Natural logarithm. The quadrature has seven points for two resistances, five for three; a
/// factor of e^0.02 moves no probability by more than half of a percent.
const TOLERANCE: f64 = 0.02;

#[test]
fn log_likelihoods_agree_with_dense_grids() {
    let reference: Value = serde_json::from_str(REFERENCE).unwrap();
    let priors = priors(&reference["priors"]);
    let mut compared = 0;
    let mut wrong = Vec::new();
    for case in reference["cases"].as_array().unwrap() {
        let windings = Windings::of(&inspection(case), &priors);
        for (name, expected) in case["log_likelihoods"].as_object().unwrap() {
            let expected = expected.as_f64().unwrap();
            let found = log_likelihood(&windings, name);
            compared += 1;
            println!(
                "{:>60} {name:<18} {expected:9.4} {found:9.4} {:+.4}",
                case["name"].as_str().unwrap(),
                found - expected
            );
            if (found - expected).abs() > TOLERANCE {
                wrong.push(format!("{}: {name} {found} not {expected}", case["name"]));
            }
        }
    }
    assert!(compared >= 25, "only {compared} compared");
    assert!(wrong.is_empty(), "{wrong:#?}");
}

fn log_likelihood(windings: &Windings, name: &str) -> f64 {
    let explanation = match name {
        "sound" => Explanation::Sound,
        "leads_not_zeroed" => Explanation::LeadsNotZeroed,
        "start_device_on" => Explanation::StartDeviceOn,
        "equal_windings" => Explanation::EqualWindings,
        "protector_open" => Explanation::ProtectorOpen,
        other => panic!("{other} is not compared"),
    };
    let scored = windings
        .explanations
        .iter()
        .find(|scored| scored.explanation == explanation);
    scored.unwrap().log_likelihood
}

fn inspection(case: &Value) -> Inspection {
    let meter = match case["meter"].as_str().unwrap() {
        "good" => MeterKind::Good.automatic(),
        "basic" => MeterKind::Basic.automatic(),
        other => panic!("{other} is no meter"),
    };
    let mut inspection = Inspection::default();
    inspection.mains = case["mains"].as_str().map(|mains| match mains {
        "v120" => Mains::V120F60,
        "v230" => Mains::V230F50,
        other => panic!("{other} is no mains"),
    });
    inspection.leads = match case["leads"].as_str().unwrap() {
        "unknown" => Leads::Unknown,
        "zeroed" => Leads::Zeroed,
        "not_zeroed" => Leads::NotZeroed,
        other => panic!("{other} says nothing of leads"),
    };
    for (pair, text) in Pair::ALL.into_iter().zip(case["typed"].as_array().unwrap()) {
        if let Some(text) = text.as_str() {
            inspection.set(PairReading {
                pair,
                typed: parse_reading(text, meter.top).unwrap(),
                accuracy: meter.accuracy,
            });
        }
    }
    inspection
}

/// The script's own figures, so that both sides work with the same ones.
fn priors(from: &Value) -> WindingPriors {
    let normal =
        |value: &Value| Normal::new(value[0].as_f64().unwrap(), value[1].as_f64().unwrap());
    let mains = |value: &Value| MainsPriors {
        run: normal(&value["run"]),
        ratio: normal(&value["ratio"]),
    };
    WindingPriors {
        v120: mains(&from["v120"]),
        v230: mains(&from["v230"]),
        unusual: from["unusual"].as_f64().unwrap(),
        unusual_run_deviation: from["unusual_run_deviation"].as_f64().unwrap(),
        unusual_ratio: normal(&from["unusual_ratio"]),
        zeroed_leads: normal(&from["zeroed_leads"]),
        leads: normal(&from["leads"]),
        not_zeroed: from["not_zeroed"].as_f64().unwrap(),
        start_device: normal(&from["start_device"]),
        equal_windings: normal(&from["equal_windings"]),
        ..WindingPriors::default()
    }
}
