//! Starts against SciPy's integrator on the same physics, written down again.
//!
//! Source: `tests/reference/simulator_starts.py`, LSODA with a relative tolerance of 1e-10.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used, clippy::panic)]

use quantity::{Celsius, Hertz, NewtonMetres, Ohms, Pascals, Seconds, Volts, WattsPerKelvin};
use serde_json::Value;
use simulator::Chance;
use simulator::compressor::{Compressor, Parts, StartRecord, Surroundings};
use simulator::rotor::Pressures;
use simulator::supply::Supply;

const REFERENCE: &str = include_str!("../../../tests/reference/simulator_starts.json");

/// Two of the steps of half a millisecond.
const TO_SPEED: f64 = 1e-3;
/// One step of a shaft that is held while pellets warm.
const LET_GO: f64 = 5e-3;
/// Two steps of a shaft that is held.
const TRIPPED: f64 = 0.1;
/// Of the largest value of its kind: a third of what a good clamp can show.
const SHARE: f64 = 0.005;

fn started(case: &Value) -> StartRecord {
    let number = |name: &str| case[name].as_f64();
    let (mut parts, outlet) = if case["motor"] == "115" {
        let outlet = Supply::outlet(Volts::new(115.0), Hertz::new(60.0));
        (Parts::example_115_volts(), outlet)
    } else {
        let outlet = Supply::outlet(Volts::new(230.0), Hertz::new(50.0));
        (Parts::example_230_volts(), outlet)
    };
    let mut outlet = outlet;
    if let Some(cord) = number("cord") {
        outlet.cord = Ohms::new(cord);
    }
    if let Some(size) = number("run_capacitor") {
        parts.gear = parts.gear.with_run_capacitor(size);
    }
    if let Some(size) = number("kit") {
        parts.gear = parts.gear.with_ptc_kit(size, Ohms::new(5.0));
    }
    if let Some(dry) = number("dry") {
        parts.rotor.dry_friction = NewtonMetres::new(dry);
    }
    let around = Surroundings {
        room: Celsius::new(25.0),
        pressures: Pressures {
            suction: Pascals::new(number("low").unwrap()),
            discharge: Pascals::new(number("high").unwrap()),
        },
        gas_torque: None,
        gas_cooling: WattsPerKelvin::new(0.3),
    };
    let mut chance = Chance::new(case["seed"].as_u64().unwrap());
    let mut compressor = Compressor::new(parts).unwrap();
    compressor
        .start(&outlet, &around, Seconds::new(60.0), &mut chance)
        .unwrap()
}

fn is_near(found: Option<Seconds>, expected: &Value, allowed: f64) -> bool {
    match (found, expected.as_f64()) {
        (Some(found), Some(expected)) => (found.get() - expected).abs() <= allowed,
        // The record goes on for longer than the reference.
        (_, None) => true,
        (None, Some(_)) => false,
    }
}

#[test]
fn times_at_which_things_happen_agree() {
    let reference: Value = serde_json::from_str(REFERENCE).unwrap();
    let cases = reference["cases"].as_array().unwrap();
    assert!(cases.len() >= 8);
    let mut seen = [0; 3];
    for case in cases {
        let record = started(case);
        let noticed = [
            ("time_to_speed", record.time_to_speed, TO_SPEED),
            ("let_go", record.let_go, LET_GO),
            ("tripped", record.tripped, TRIPPED),
        ];
        for (place, (name, found, allowed)) in noticed.into_iter().enumerate() {
            seen[place] += usize::from(case[name].is_f64());
            assert!(
                is_near(found, &case[name], allowed),
                "{name} {found:?} {}",
                case[name]
            );
        }
    }
    assert!(seen.iter().all(|&count| count >= 2), "{seen:?}");
}

#[test]
fn currents_and_speed_agree_all_the_way() {
    let reference: Value = serde_json::from_str(REFERENCE).unwrap();
    let mut compared = 0;
    for case in reference["cases"].as_array().unwrap() {
        let record = started(case);
        let samples = case["samples"].as_array().unwrap();
        let most = |name: &str| {
            let values = samples.iter().map(|one| one[name].as_f64().unwrap());
            values.fold(1.0, f64::max)
        };
        let names = ["line", "main", "start", "speed"];
        let scales = names.map(most);
        for expected in samples {
            let time = expected["time"].as_f64().unwrap();
            let found = record
                .trace
                .iter()
                .find(|one| (one.time.get() - time).abs() < 1e-6);
            // After a start that came up the record ends.
            let Some(found) = found else {
                continue;
            };
            let values = [
                found.line.get(),
                found.main.get(),
                found.start.get(),
                found.speed.get(),
            ];
            for ((name, value), scale) in names.into_iter().zip(values).zip(scales) {
                let miss = (value - expected[name].as_f64().unwrap()) / scale;
                assert!(miss.abs() <= SHARE, "{name} at {time} s: {miss} {case}");
                compared += 1;
            }
        }
    }
    assert!(compared > 1000, "{compared}");
}
