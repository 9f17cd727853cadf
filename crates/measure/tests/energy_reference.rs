//! Limits of energy against exact decimal arithmetic from a table stated once more, and errors of
//! metering against SciPy.
//!
//! Source: `tests/reference/energy_limits.py`; the worked machines by 10 CFR 430.32(a), from the
//! same lines by hand.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used)]

use measure::energy::{
    CUBIC_FOOT, Class, Compartments, Doors, Era, Extras, NoLimit, Product, metering_error,
};
use quantity::{CubicMetres, Seconds};
use serde_json::Value;

const REFERENCE: &str = include_str!("../../../tests/reference/energy_limits.json");

fn feet(count: f64) -> CubicMetres {
    CubicMetres::new(count * CUBIC_FOOT.get())
}

fn product(class: Class, compartments: Compartments, fresh: f64, frozen: f64) -> Product {
    Product {
        class,
        compartments,
        fresh: feet(fresh),
        frozen: feet(frozen),
        extras: Extras::default(),
    }
}

fn freezer(class: Class, volume: f64, era: Era) -> u32 {
    let product = product(class, Compartments::Freezer, 0.0, volume);
    product.limit(era).unwrap().kilowatt_hours
}

#[test]
fn limits_agree_with_decimal_arithmetic() {
    let reference: Value = serde_json::from_str(REFERENCE).unwrap();
    let cases = reference["cases"].as_array().unwrap();
    assert!(cases.len() > 700);
    for case in cases {
        let class = Class::ALL
            .into_iter()
            .find(|class| case["class"] == class.number());
        let made_of = match case["made of"].as_str().unwrap() {
            "freezer" => Compartments::Freezer,
            "basic-refrigerator" => Compartments::BasicRefrigerator,
            "all-refrigerator" => Compartments::AllRefrigerator,
            _ => Compartments::RefrigeratorFreezer,
        };
        let class = class.unwrap();
        if made_of != Compartments::BasicRefrigerator {
            assert_eq!(class.compartments(), made_of);
        }
        let [fresh, frozen] = ["fresh", "frozen"].map(|key| case[key].as_f64().unwrap());
        let mut product = product(class, made_of, fresh, frozen);
        product.extras.icemaker = case["icemaker"].as_bool().unwrap();
        let era = match case["era"].as_str().unwrap() {
            "1993" => Era::Of1993,
            "2001" => Era::Of2001,
            "2014" => Era::Of2014,
            _ => Era::Of2029,
        };
        let found = product
            .limit(era)
            .map(|limit| u64::from(limit.kilowatt_hours));
        let expected = case["limit"].as_u64().ok_or(NoLimit::NoneThen);
        assert_eq!(found, expected, "{case}");
    }
}

#[test]
fn worked_machines_have_their_limits() {
    let top = product(
        Class::TopFreezer,
        Compartments::RefrigeratorFreezer,
        13.5,
        4.5,
    );
    let adjusted = |era| top.adjusted_volume(era).get() / CUBIC_FOOT.get();
    assert!((adjusted(Era::Of2014) - 21.42).abs() < 1e-9);
    assert!((adjusted(Era::Of1993) - 20.835).abs() < 1e-9);
    let limits =
        [Era::Of2014, Era::Of2001, Era::Of1993].map(|era| top.limit(era).unwrap().kilowatt_hours);
    assert_eq!(limits, [407, 480, 688]);
    let sizes = |class, era| [10.0, 14.0, 20.0].map(|volume| freezer(class, volume, era));
    assert_eq!(sizes(Class::ChestFreezer, Era::Of2014), [236, 287, 364]);
    assert_eq!(
        sizes(Class::UprightFreezerManual, Era::Of2014),
        [292, 331, 390]
    );
    assert_eq!(
        sizes(Class::UprightFreezerAutomatic, Era::Of2014),
        [380, 441, 532]
    );
    assert_eq!(sizes(Class::ChestFreezer, Era::Of2001), [315, 383, 486]);
    assert_eq!(
        sizes(Class::UprightFreezerManual, Era::Of2001),
        [389, 441, 520]
    );
    assert_eq!(sizes(Class::ChestFreezer, Era::Of1993), [350, 426, 541]);
    let small = [5.0, 7.0].map(|volume| freezer(Class::CompactChestFreezer, volume, Era::Of2014));
    assert_eq!(small, [218, 251]);
}

#[test]
fn what_the_rule_does_not_cover_has_no_limit() {
    let error = |class: Class, fresh, frozen, era| {
        product(class, class.compartments(), fresh, frozen)
            .limit(era)
            .err()
    };
    assert_eq!(
        error(Class::TopFreezer, 30.0, 10.0, Era::Of2014),
        Some(NoLimit::OutsideTheRule)
    );
    assert_eq!(
        error(Class::ChestFreezer, 0.0, 31.0, Era::Of2014),
        Some(NoLimit::OutsideTheRule)
    );
    assert_eq!(error(Class::ChestFreezer, 0.0, 30.0, Era::Of2014), None);
    assert_eq!(
        error(Class::CompactChestFreezer, 0.0, 7.75, Era::Of2014),
        Some(NoLimit::NotCompact)
    );
    assert_eq!(
        error(Class::ChestFreezer, 0.0, 7.0, Era::Of2014),
        Some(NoLimit::IsCompact)
    );
    assert_eq!(
        error(Class::ChestFreezer, 0.0, 0.0, Era::Of2014),
        Some(NoLimit::NoVolume)
    );
    assert_eq!(
        error(Class::ChestFreezer, 0.0, f64::NAN, Era::Of2014),
        Some(NoLimit::NoVolume)
    );
    assert_eq!(
        error(Class::ChestFreezerAutomatic, 0.0, 14.0, Era::Of2001),
        Some(NoLimit::NoneThen)
    );
}

#[test]
fn a_year_within_which_limits_changed_leaves_both() {
    let eras = |class, year| Era::of_year(class, year);
    assert!(eras(Class::TopFreezer, 1992).is_empty());
    assert_eq!(eras(Class::TopFreezer, 1993), [Era::Of1993]);
    assert_eq!(eras(Class::TopFreezer, 2001), [Era::Of1993, Era::Of2001]);
    assert_eq!(eras(Class::TopFreezer, 2029), [Era::Of2014]);
    assert_eq!(eras(Class::TopFreezer, 2030), [Era::Of2014, Era::Of2029]);
    assert_eq!(eras(Class::ChestFreezer, 2029), [Era::Of2014, Era::Of2029]);
    assert_eq!(eras(Class::ChestFreezer, 2035), [Era::Of2029]);
}

/// By the factors of 89 FR 3026: (7.28·AV + 254.9)·K + 28·I, AV 20 cubic feet of fresh food.
#[test]
fn doors_count_from_2029_on() {
    let mut side = product(
        Class::SideFreezer,
        Compartments::RefrigeratorFreezer,
        20.0,
        0.0,
    );
    let mut limit = |doors, icemaker| {
        side.extras = Extras { icemaker, doors };
        side.limit(Era::Of2029).map(|limit| limit.kilowatt_hours)
    };
    assert_eq!(limit(None, false), Ok(401));
    assert_eq!(limit(Some(Doors::Transparent), true), Ok(469));
    assert_eq!(limit(Some(Doors::DoorInDoor), false), Ok(425));
    assert_eq!(limit(Some(Doors::Outside(4)), false), Ok(417));
    assert_eq!(
        limit(Some(Doors::Outside(6)), false),
        Err(NoLimit::OtherDoors)
    );
    side.extras = Extras {
        icemaker: false,
        doors: Some(Doors::Transparent),
    };
    // 8.51·20 + 297.8
    assert_eq!(
        side.limit(Era::Of2014).map(|limit| limit.kilowatt_hours),
        Ok(468)
    );
}

#[test]
fn errors_of_metering_agree_with_scipy() {
    let reference: Value = serde_json::from_str(REFERENCE).unwrap();
    let rows = reference["metering"].as_array().unwrap();
    assert_eq!(rows.len(), 7);
    for row in rows {
        let [minutes, expected] = [0, 1].map(|place| row[place].as_f64().unwrap());
        let found = metering_error(Seconds::new(minutes * 60.0)).unwrap().get();
        assert!(
            (found - expected).abs() < 1e-9,
            "{minutes}: {found} instead of {expected}"
        );
    }
}
