//! Cool-downs against full covariance matrices of the same stated model by a script that shares nothing with
//! this crate.
//!
//! Source: `tests/reference/cool_down.py`, SciPy.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used)]

use measure::cool_down::{
    CabinetKind, CoolDown, CoolDownPrior, Draw, Goal, Reach, Support, TemperatureAt,
    TemperatureBand,
};
use quantity::{Celsius, Seconds, Watts};
use serde_json::Value;

const REFERENCE: &str = include_str!("../../../tests/reference/cool_down.json");

/// Both reckon the same sums: what differs is rounding, and parts that weigh next to nothing.
const KELVINS_CLOSE: f64 = 0.01;
const CHANCE_CLOSE: f64 = 1e-3;

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
        let end = prior.end;
        let pairs = [
            ("start", prior.start.get(), prior.start_deviation.get()),
            ("sound", end.sound.get(), end.sound_deviation.get()),
            ("weak", end.weak.get(), end.weak_deviation.get()),
            ("held", prior.held.get(), prior.held_deviation.get()),
            ("to come", prior.to_come_mean.get(), prior.to_come.get()),
        ];
        let alone = [
            ("weak share", end.weak_share.get()),
            ("unheld", prior.unheld.get()),
            ("swing", prior.swing.get()),
            ("comes", prior.comes.get()),
            ("wander", prior.wander.get()),
            ("thermometer", prior.thermometer.get()),
        ];
        let loss = prior.loss.map(quantity::Ratio::get);
        pairs.into_iter().all(|(name, one, other)| {
            let [first, second] = pair(&stated[name]);
            (first - one).abs() < 1e-9 && (second - other).abs() < 1e-9
        }) && alone
            .into_iter()
            .all(|(name, one)| (number(&stated[name]) - one).abs() < 1e-9)
            && stated["loss"].as_f64() == loss
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
    let plain = CoolDown::of(&readings, &prior(case)).unwrap();
    let coil = case["coil"].as_array().map(|one| TemperatureAt {
        at: Seconds::new(number(&one[0])),
        temperature: Celsius::new(number(&one[1])),
    });
    let draw = case["draw"].as_array().map(|one| {
        let [watts, least, most] = [0, 1, 2].map(|place| Watts::new(number(&one[place])));
        Draw {
            watts,
            usual: [least, most],
        }
    });
    let support = Support {
        coil: coil.into_iter().collect(),
        room: Some(Celsius::new(number(&case["room"]))),
        draw,
    };
    plain.with(&support)
}

fn cases() -> Vec<Value> {
    let reference: Value = serde_json::from_str(REFERENCE).unwrap();
    let cases = reference["cases"].as_array().unwrap().clone();
    assert_eq!(cases.len(), 7);
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
    let band = [band.from, band.median, band.to];
    for (found, expected) in band.into_iter().zip(expected) {
        close(found.get(), expected, KELVINS_CLOSE, what);
    }
}

#[test]
fn bands_agree_with_full_covariance_matrices() {
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
        let noise = libm::log(cool_down.noise().get());
        close(noise, number(&case["ln noise"]), 1e-3, name);
    }
}

#[test]
fn chances_agree_with_full_covariance_matrices() {
    for case in cases() {
        let name = case["name"].as_str().unwrap();
        let cool_down = found(&case);
        let goal = |within: f64| Goal {
            target: Celsius::new(number(&case["target"])),
            within: Seconds::new(within),
        };
        let chance = cool_down.chance(&goal(86_400.0));
        close(chance, number(&case["chance"]), CHANCE_CLOSE, name);
        for [at, expected] in case["chances"].as_array().unwrap().iter().map(pair) {
            close(cool_down.chance(&goal(at)), expected, CHANCE_CLOSE, name);
        }
    }
}

#[test]
fn a_time_is_where_the_chance_is_its_share() {
    for case in cases() {
        let cool_down = found(&case);
        let mut goal = Goal {
            target: Celsius::new(number(&case["target"])),
            within: Seconds::new(86_400.0),
        };
        if let Reach::After(from) = cool_down.reach(&goal).from {
            goal.within = from;
            close(
                cool_down.chance(&goal),
                0.05,
                CHANCE_CLOSE,
                "the 5th percentile",
            );
        } else {
            assert!(number(&case["chance"]) < 0.05);
        }
    }
}
