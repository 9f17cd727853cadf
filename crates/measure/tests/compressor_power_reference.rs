//! A compressor's work against a property library that shares nothing with this crate.
//!
//! Source: `tests/reference/compressor_power.py`, CoolProp: real gas, isentropic, with the same dead
//! space.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used)]

use measure::refrigerant::Refrigerant;
use quantity::Celsius;
use serde_json::Value;

const REFERENCE: &str = include_str!("../../../tests/reference/compressor_power.json");

/// The error that `Refrigerant::power_share` allows for, of the logarithm, as the exponents were fitted.
const CLOSE: f64 = 0.04;

#[test]
fn the_share_of_the_rating_is_that_of_the_real_gas() {
    let reference: Value = serde_json::from_str(REFERENCE).unwrap();
    let number = |value: &Value| value.as_f64().unwrap();
    let cases = reference["cases"].as_array().unwrap();
    assert_eq!(cases.len(), 5 * 99);
    let mut most = 0.0f64;
    for refrigerant in Refrigerant::ALL {
        let name = format!("{refrigerant:?}");
        for case in cases.iter().filter(|case| case["refrigerant"] == name) {
            let [cold, warm] = ["evaporating", "condensing"].map(|at| number(&case[at]));
            let found = refrigerant.work_share(Celsius::new(cold), Celsius::new(warm));
            let off = libm::log(found.unwrap().get() / number(&case["share"])).abs();
            assert!(off < CLOSE, "{name} {cold}/{warm}: {off}");
            most = most.max(off);
        }
    }
    println!("off by {:.2} % at most", most * 100.0);
}
