//! Which motors fit a clamp's readings, against plain Monte Carlo of the same stated model by a
//! script that shares nothing with this crate.
//!
//! Source: `tests/reference/start_kit.py`, numpy, 1,000,000 motors a case.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used)]

use measure::start_kit::{Fit, FitError, KitPrior, LockedRotor, Spread, Useful};
use quantity::{Amps, Farads, Hertz, Ohms, Quantity, Source, Sources, Uncertain, Volts};
use serde_json::Value;

const REFERENCE: &str = include_str!("../../../tests/reference/start_kit.json");

fn amps(value: f64, source: Source) -> Uncertain<Amps> {
    Uncertain::exact(Amps::new(value)).with(source, Amps::new(0.025 * value))
}

fn read(case: &Value) -> LockedRotor {
    let number = |key: &str| case[key].as_f64();
    let mut sources = Sources::default();
    let mut ohms = |key| {
        let value = Uncertain::exact(Ohms::new(number(key).unwrap()));
        value.with(sources.fresh(), Ohms::new(0.1))
    };
    let (main, start) = (ohms("main"), ohms("start"));
    LockedRotor {
        main,
        start,
        device: Ohms::new(number("device").unwrap()),
        supply: Volts::new(number("volts").unwrap()),
        frequency: Hertz::new(number("hertz").unwrap()),
        main_alone: number("main alone").map(|value| amps(value, sources.fresh())),
        with_start: number("with start").map(|value| amps(value, sources.fresh())),
    }
}

/// Our 10th percentile lies between the reference's 7th and 13th, and so on: a fit of a few
/// hundred motors can't be closer (√(0.1·0.9/300) = 1.7 in 100 at the tails, 2.9 in the middle).
fn between<Q: Quantity>(found: Spread<Q>, case: &Value, key: &str, scale: f64) {
    let bounds: Vec<f64> = case[key]
        .as_array()
        .unwrap()
        .iter()
        .map(|bound| bound.as_f64().unwrap() / scale)
        .collect();
    for (place, value) in [found.tenth, found.median, found.ninetieth]
        .iter()
        .enumerate()
    {
        let (from, to) = (bounds[2 * place], bounds[2 * place + 1]);
        let value = value.get();
        assert!(
            (from..=to).contains(&value),
            "{key}, {}: {value} is not between {from} and {to}",
            case["name"]
        );
    }
}

#[test]
fn percentiles_over_all_motors_that_fit_agree_with_monte_carlo() {
    let reference: Value = serde_json::from_str(REFERENCE).unwrap();
    assert_eq!(reference["percents"].to_string(), "[7,13,45,55,87,93]");
    let cases = reference["cases"].as_array().unwrap();
    assert_eq!(cases.len(), 6);
    for case in cases {
        let fit = Fit::of(&read(case), &KitPrior::default()).unwrap();
        println!("{}: support {:.0}", case["name"], fit.support());
        let range = fit.useful_range(Ohms::new(0.0)).unwrap();
        between(range.from, case, "right angle", 1e6);
        between(range.to, case, "greatest torque", 1e6);
        let micro = case["microfarads"].as_f64().unwrap();
        let point = fit.at(Farads::new(micro * 1e-6), Ohms::new(0.0)).unwrap();
        between(point.torque, case, "torque", 1.0);
        between(point.line, case, "line", 1.0);
        between(point.capacitor_volts, case, "capacitor volts", 1.0);
    }
}

fn some_motor() -> LockedRotor {
    let reference: Value = serde_json::from_str(REFERENCE).unwrap();
    read(&reference["cases"][2])
}

#[test]
fn more_readings_narrow_the_range() {
    let width = |read: &LockedRotor| {
        let fit = Fit::of(read, &KitPrior::default()).unwrap();
        let to = fit.useful_range(Ohms::new(0.0)).unwrap().to;
        to.ninetieth.get() / to.tenth.get()
    };
    let both = some_motor();
    let ohms_only = LockedRotor {
        main_alone: None,
        with_start: None,
        ..both.clone()
    };
    assert!(width(&both) < 0.6 * width(&ohms_only));
}

#[test]
fn readings_that_cannot_be_have_their_error() {
    let mut sources = Sources::default();
    let error = |read: LockedRotor| Fit::of(&read, &KitPrior::default()).err();
    let zero = Uncertain::exact(Ohms::new(0.0));
    let changed = |main| LockedRotor {
        main,
        ..some_motor()
    };
    assert_eq!(error(changed(zero)), Some(FitError::NoWindings));
    let dark = LockedRotor {
        supply: Volts::new(0.0),
        ..some_motor()
    };
    assert_eq!(error(dark), Some(FitError::NoSupply));
    let exact = LockedRotor {
        main_alone: Some(Uncertain::exact(Amps::new(11.0))),
        ..some_motor()
    };
    assert_eq!(error(exact), Some(FitError::NoCurrent));
    // 112 V through 4 Ω can't be more than 28 A.
    let too_much = LockedRotor {
        main_alone: Some(amps(40.0, sources.fresh())),
        ..some_motor()
    };
    assert_eq!(error(too_much), Some(FitError::Contradiction));
    let mut prior = KitPrior::default();
    prior.turns.least = 5.0;
    assert_eq!(Fit::of(&some_motor(), &prior), Err(FitError::NoPrior));
}

#[test]
fn a_capacitor_is_judged_by_the_range_of_all_motors_that_fit() {
    let fit = Fit::of(&some_motor(), &KitPrior::default()).unwrap();
    let range = fit.useful_range(Ohms::new(0.0)).unwrap();
    let micro = |value: f64| range.judge(Farads::new(value * 1e-6));
    assert_eq!(micro(5.0), Useful::TooSmall);
    assert_eq!(micro(900.0), Useful::TooLarge);
    let middle = (range.from.median.get() + range.to.median.get()) / 2.0;
    assert_eq!(micro(middle * 1e6), Useful::Within);
    assert_eq!(micro(range.from.tenth.get() * 1.01e6), Useful::CannotTell);
}
