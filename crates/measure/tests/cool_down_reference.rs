//! Cool-downs against brute force over the same stated model by a script that shares nothing with
//! this crate.
//!
//! Source: `tests/reference/cool_down.py`, SciPy.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used)]

use measure::cool_down::{
    CabinetKind, CoolDown, CoolDownPrior, Goal, Reach, TemperatureAt, TemperatureBand,
};
use quantity::{Celsius, Seconds};
use serde_json::Value;

const REFERENCE: &str = include_str!("../../../tests/reference/cool_down.json");

/// A tenth of the standard deviation moves a 90 % band's end by what moves its share by one in a
/// hundred.
const OF_DEVIATION: f64 = 0.1;
const CHANCE_CLOSE: f64 = 0.01;

fn number(value: &Value) -> f64 {
    value.as_f64().unwrap()
}

fn pair(value: &Value) -> [f64; 2] {
    [number(&value[0]), number(&value[1])]
}

/// Our own priors, which the script states anew: they have to be the same.
fn prior(case: &Value) -> CoolDownPrior {
    let stated = &case["prior"];
    let same = |kind: &CabinetKind| {
        let prior = kind.prior();
        let held = [
            ("end", prior.end.get(), prior.end_deviation.get()),
            ("start", prior.start.get(), prior.start_deviation.get()),
            ("quick", prior.quick.get(), prior.quick_deviation.get()),
            (
                "time_constant",
                prior.time_constant.get(),
                prior.time_constant_spread,
            ),
            ("delay", prior.delay.get(), prior.delay_spread),
            ("noise", prior.noise.get(), prior.noise_spread),
        ];
        held.into_iter().all(|(name, one, other)| {
            let [first, second] = pair(&stated[name]);
            (first - one).abs() < 1e-9 && (second - other).abs() < 1e-9
        })
    };
    let kind = CabinetKind::ALL.into_iter().find(same);
    kind.unwrap().prior()
}

fn found(case: &Value) -> CoolDown {
    let readings = case["readings"].as_array().unwrap().iter().map(pair);
    let readings: Vec<TemperatureAt> = readings
        .map(|[at, temperature]| TemperatureAt {
            at: Seconds::new(at),
            temperature: Celsius::new(temperature),
        })
        .collect();
    CoolDown::of(&readings, &prior(case)).unwrap()
}

fn cases() -> Vec<Value> {
    let reference: Value = serde_json::from_str(REFERENCE).unwrap();
    let cases = reference["cases"].as_array().unwrap().clone();
    assert_eq!(cases.len(), 4);
    cases
}

#[track_caller]
fn close(found: f64, expected: f64, tolerance: f64, what: &str) {
    println!("{what}: {found:.4}, expected {expected:.4}, within {tolerance:.4}");
    assert!(
        (found - expected).abs() <= tolerance,
        "{what}: {found} instead of {expected}, {tolerance} allowed"
    );
}

fn band_close(band: TemperatureBand, expected: &Value, what: &str) {
    let expected: Vec<f64> = expected.as_array().unwrap().iter().map(number).collect();
    let deviation = (expected[2] - expected[0]) / 3.29;
    let band = [band.from, band.median, band.to];
    for (found, expected) in band.into_iter().zip(expected) {
        close(found.get(), expected, OF_DEVIATION * deviation, what);
    }
}

#[test]
fn ends_and_time_constants_agree_with_brute_force() {
    for case in cases() {
        let name = case["name"].as_str().unwrap();
        let cool_down = found(&case);
        assert!(cool_down.left_out().get() < f64::EPSILON, "{name}");
        band_close(cool_down.end(), &case["end"], name);
        let last = case["readings"].as_array().unwrap().last().unwrap();
        let later = Seconds::new(2.0 * number(&last[0]));
        band_close(
            cool_down.temperature_at(later),
            &case["twice as late"],
            name,
        );
        let [mean, deviation] = pair(&case["ln time constant"]);
        let [from, median, to] = cool_down.time_constant();
        let within = OF_DEVIATION * deviation;
        close(libm::log(median.get()), mean, within, name);
        let spread = libm::log(to.get() / from.get()) / 3.29;
        close(spread, deviation, within, name);
        let together = number(&case["end with ln time constant"]);
        close(cool_down.end_with_time_constant(), together, 0.05, name);
        let noise = libm::log(cool_down.noise().get());
        close(noise, number(&case["ln noise"]), 0.05, name);
    }
}

#[test]
fn chances_and_times_agree_with_brute_force() {
    for case in cases() {
        let name = case["name"].as_str().unwrap();
        let cool_down = found(&case);
        let goal = Goal {
            target: Celsius::new(number(&case["target"])),
            within: Seconds::new(86_400.0),
        };
        close(
            cool_down.chance(&goal),
            number(&case["chance"]),
            CHANCE_CLOSE,
            name,
        );
        let reach = cool_down.reach(&goal);
        let places = [reach.from, reach.median, reach.to];
        for (found, expected) in places.into_iter().zip(case["reach"].as_array().unwrap()) {
            match found {
                Reach::After(after) => {
                    let off = libm::log(after.get() / number(expected));
                    close(off, 0.0, 0.03, name);
                }
                Reach::Beyond => assert_eq!(expected.as_str(), Some("beyond"), "{name}"),
            }
        }
    }
}
