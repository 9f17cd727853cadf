//! Start trials against adaptive integration of the same stated model by a script that shares
//! nothing with this crate.
//!
//! Source: `tests/reference/start_trials.py`, SciPy.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used, clippy::panic)]

use measure::start_trials::{Outcome, Place, RestBands, StartBelief, StartPrior, Trial};
use quantity::{Ratio, Seconds};
use serde_json::Value;

const REFERENCE: &str = include_str!("../../../tests/reference/start_trials.json");

/// Cells are 4.3 % of a rest wide, and the steepest curve rises over twice that: a percentile is
/// asked to lie within a tenth of a cell, a probability within 2 in 1,000.
const LOG_CLOSE: f64 = 0.0043;
const SHARE_CLOSE: f64 = 2e-3;

fn number(value: &Value) -> f64 {
    value.as_f64().unwrap()
}

fn numbers(value: &Value) -> Vec<f64> {
    value.as_array().unwrap().iter().map(number).collect()
}

fn trial(value: &Value) -> Trial {
    let outcome = match value[1].as_str().unwrap() {
        "started" => Outcome::Started,
        "hummed" => Outcome::HummedThenStarted,
        "failed" => Outcome::Failed,
        other => panic!("{other} is no outcome"),
    };
    let trial = Trial::new(Seconds::new(number(&value[0])), outcome).unwrap();
    let trial = trial.at_supply(Ratio::new(number(&value[3]))).unwrap();
    if value[2].as_bool().unwrap() {
        trial.from_cold()
    } else {
        trial
    }
}

fn belief(case: &Value) -> StartBelief {
    let prior = |key: &str| number(&case["prior"][key]);
    let prior = StartPrior {
        median: Seconds::new(prior("median")),
        deviation: prior("deviation"),
        at_once: Ratio::new(prior("at_once")),
        not_hot: Ratio::new(prior("not_hot")),
        not_even_cold: Ratio::new(prior("not_even_cold")),
    };
    let trials: Vec<Trial> = case["trials"]
        .as_array()
        .unwrap()
        .iter()
        .map(trial)
        .collect();
    StartBelief::of(&trials, &prior)
}

fn cases() -> (Value, Vec<Value>) {
    let reference: Value = serde_json::from_str(REFERENCE).unwrap();
    let cases = reference["cases"].as_array().unwrap().clone();
    assert_eq!(cases.len(), 13);
    (reference, cases)
}

fn close(found: f64, expected: f64, tolerance: f64, what: &str) {
    let off = (found - expected).abs();
    assert!(off <= tolerance, "{what}: {found} instead of {expected}");
}

#[test]
fn percentiles_of_the_threshold_agree_with_adaptive_integration() {
    let mut worst: f64 = 0.0;
    for case in cases().1 {
        let threshold = belief(&case).threshold();
        let found = [threshold.from, threshold.median, threshold.to];
        for (found, expected) in found
            .into_iter()
            .zip(case["percentiles"].as_array().unwrap())
        {
            match (found, expected.as_str()) {
                (Place::AtOnce, Some("at once")) | (Place::Beyond, Some("beyond")) => {}
                (Place::After(rest), None) => {
                    let off = libm::log(rest.get() / number(expected)).abs();
                    worst = worst.max(off);
                    assert!(off < LOG_CLOSE, "{rest:?} instead of {expected}: {case}");
                }
                _ => panic!("{found:?} instead of {expected}: {case}"),
            }
        }
    }
    println!("worst percentile: {:.3} % of the rest", worst * 100.0);
}

#[test]
fn zones_chances_and_information_agree_with_adaptive_integration() {
    for case in cases().1 {
        let name = case["name"].as_str().unwrap();
        let belief = belief(&case);
        let zones = belief.zones(RestBands {
            ordinary_from: Seconds::new(120.0),
            ordinary_to: Seconds::new(360.0),
            abnormal_from: Seconds::new(720.0),
        });
        let found = [zones.ordinary, zones.grey, zones.abnormal];
        for (found, expected) in found.into_iter().zip(numbers(&case["zones"])) {
            close(found, expected, SHARE_CLOSE, name);
        }
        let cold = belief.cold_start().probability;
        close(cold, number(&case["starts cold"]), SHARE_CLOSE, name);
        for pair in case["chances"].as_array().unwrap() {
            let found = belief.chance_after(Seconds::new(number(&pair[0])));
            close(found, number(&pair[1]), SHARE_CLOSE, name);
        }
        for pair in case["bits"].as_array().unwrap() {
            let found = belief.trial_at(Seconds::new(number(&pair[0]))).bits;
            close(found, number(&pair[1]), SHARE_CLOSE, name);
        }
    }
}

#[test]
fn gains_agree_with_adaptive_integration() {
    let (reference, cases) = cases();
    let named = |name: &Value| {
        let case = cases.iter().find(|case| case["name"] == *name);
        belief(case.unwrap())
    };
    for gain in reference["gains"].as_array().unwrap() {
        let found = named(&gain["of"]).gain_of(&named(&gain["over"]));
        let what = gain.to_string();
        close(
            found.chance_sooner,
            number(&gain["sooner"]),
            SHARE_CLOSE,
            &what,
        );
        let ratios = [found.from, found.median, found.to];
        for (found, expected) in ratios.into_iter().zip(numbers(&gain["ratios"])) {
            close(
                libm::log(found.get() / expected),
                0.0,
                2.0 * LOG_CLOSE,
                &what,
            );
        }
    }
}
