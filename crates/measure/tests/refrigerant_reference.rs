//! Saturation against a property library that shares nothing with this crate.
//!
//! Source: `tests/reference/refrigerant_saturation.py`, CoolProp.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used)]

use measure::refrigerant::Refrigerant;
use quantity::{Celsius, Pascals};
use serde_json::Value;

const REFERENCE: &str = include_str!("../../../tests/reference/refrigerant_saturation.json");
const NAMED: [(&str, Refrigerant); 5] = [
    ("R12", Refrigerant::R12),
    ("R22", Refrigerant::R22),
    ("R134a", Refrigerant::R134a),
    ("R600a", Refrigerant::R600a),
    ("R290", Refrigerant::R290),
];

/// What is asked is 0.3 %; a wrong coefficient would hide in that.
const PRESSURE_CLOSE: f64 = 5e-4;
/// 0.05 % of pressure is 0.02 K where the curve is flattest.
const TEMPERATURE_CLOSE: f64 = 0.02;

fn reference() -> Value {
    serde_json::from_str(REFERENCE).unwrap()
}

fn number(value: &Value) -> f64 {
    value.as_f64().unwrap()
}

#[test]
fn pressures_and_temperatures_are_those_of_the_library() {
    let reference = reference();
    let (mut pressure_off, mut temperature_off) = (0.0f64, 0.0f64);
    for (name, refrigerant) in NAMED {
        let cases = reference["cases"].as_array().unwrap();
        let cases: Vec<&Value> = cases
            .iter()
            .filter(|case| case["refrigerant"] == name)
            .collect();
        assert_eq!(cases.len(), 49, "{name}");
        for case in cases {
            let (celsius, pressure) = (number(&case["celsius"]), number(&case["pressure"]));
            let found = refrigerant
                .saturation_pressure(Celsius::new(celsius))
                .unwrap();
            pressure_off = pressure_off.max((found.get() / pressure - 1.0).abs());
            // The ends of the range are the curve's own, not the library's.
            if (-49.0..=69.0).contains(&celsius) {
                let back = refrigerant
                    .saturation_temperature(Pascals::new(pressure))
                    .unwrap();
                temperature_off = temperature_off.max((back.get() - celsius).abs());
            }
        }
    }
    println!(
        "pressure: {:.4} %, temperature: {temperature_off:.4} K",
        pressure_off * 100.0
    );
    assert!(pressure_off < PRESSURE_CLOSE, "{pressure_off}");
    assert!(temperature_off < TEMPERATURE_CLOSE, "{temperature_off}");
}

#[test]
fn boiling_points_are_those_of_the_library() {
    let reference = reference();
    for (name, refrigerant) in NAMED {
        let found = refrigerant.boiling_point().unwrap();
        let expected = number(&reference["boiling points"][name]);
        assert!(
            (found.get() - expected).abs() < TEMPERATURE_CLOSE,
            "{name}: {found:?}"
        );
    }
}
