//! What is looked at before advice is acted on, and what a look tells.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used, clippy::panic, clippy::expect_used)]

mod told;

use diagnosis::{Action, Clue, Decided, Fault, Task, Whole};

fn whole(lines: &[&str]) -> Whole {
    told::assessed(lines).whole.expect("a machine was told")
}

fn probability(whole: &Whole, fault: Fault) -> f64 {
    let mut suspects = whole.suspects.iter();
    let found = suspects.find(|one| one.fault == Some(fault));
    found.map_or(0.0, |one| one.probability)
}

/// A frost-free machine of which everything that is quickly seen is as it should be.
const NOTHING_TO_BE_SEEN: [&str; 23] = [
    "machine/kind: fridge-freezer",
    "machine/mains: 230-v-50-hz",
    "machine/build: frost-free",
    "machine/complaint: runs-stays-warm",
    "machine/told-by: myself",
    "refrigerant/plate: r134a",
    "look-over/signs: none",
    "ground/earth-pin: has",
    "ground/blades-to-earth = OL",
    "ground/blades-to-metal = OL",
    "ground/earth-to-metal = 0.3",
    "ground/blade-to-blade = 13.2",
    "evaporator-fan-air/answer: strong",
    "condenser-fan-air/answer: blows",
    "lint/answer: clear",
    "power-level/answer: as-expected",
    "door-lamp/answer: goes-out",
    "air-outlet/answer: blows",
    "seal/answer: drags-all-round",
    "run-pattern/answer: all-the-time",
    "condenser-warmth/answer: evenly-warm",
    "room-temperature/answer: usual",
    "coil-ice/answer: clear",
];

/// A chest freezer of the same kind, of which more was seen.
const LITTLE_LEFT: [&str; 23] = [
    "machine/kind: chest-freezer",
    "machine/mains: 230-v-50-hz",
    "machine/complaint: runs-stays-warm",
    "machine/told-by: myself",
    "refrigerant/plate: r134a",
    "look-over/signs: none",
    "ground/earth-pin: has",
    "ground/blades-to-earth = OL",
    "ground/blades-to-metal = OL",
    "ground/earth-to-metal = 0.3",
    "ground/blade-to-blade = 13.2",
    "coil-ice/answer: clear",
    "run-pattern/answer: all-the-time",
    "power-level/answer: as-expected",
    "lint/answer: clear",
    "door-lamp/answer: goes-out",
    "seal/answer: drags-all-round",
    "frost-pattern/answer: even",
    "condenser-warmth/answer: evenly-warm",
    "hiss/answer: fades-in-minutes",
    "drain/answer: clear",
    "other-outlet/answer: same",
    "room-temperature/answer: usual",
];

/// To give it a day and look again is what the thermometers of that day are for.
#[test]
fn who_is_to_wait_a_day_measures_what_it_holds_after_that_day() {
    let before = whole(&LITTLE_LEFT);
    let is_worthwhile = |whole: &Whole| {
        let mut checks = whole.next.iter().filter(|one| one.task != Task::History);
        checks.any(diagnosis::NextCheck::is_worthwhile)
    };
    assert!(!is_worthwhile(&before), "{:?}", before.next);
    assert_eq!(before.verdict.best.action, Action::WaitAndRepeat);
    assert_eq!(before.verdict.decided, Decided::GoOn);
    assert_eq!(before.next[0].task, Task::Clue(Clue::Temperatures));
    let mut cold = LITTLE_LEFT.to_vec();
    cold.push("temperatures/answer: both-near-target");
    let after = whole(&cold);
    assert_ne!(after.verdict.decided, Decided::GoOn, "{:?}", after.verdict);
    assert!(after.nothing_wrong.probability > 1.5 * before.nothing_wrong.probability);
}

/// Weak pumping shows where it is coldest first: a freezer that isn't cold beside fresh food that
/// is speaks for it, and against nothing being wrong.
#[test]
fn a_warm_freezer_beside_cold_fresh_food_is_not_nothing() {
    let before = whole(&NOTHING_TO_BE_SEEN);
    let mut told = NOTHING_TO_BE_SEEN.to_vec();
    told.push("temperatures/answer: freezer-warm-rest-fine");
    let after = whole(&told);
    assert!(after.nothing_wrong.probability < 0.5 * before.nothing_wrong.probability);
    let low = |whole: &Whole| probability(whole, Fault::ChargeLow);
    assert!(low(&after) > low(&before));
}

/// What calls the compressor calls the fan: a fan that blows beside a silent compressor blames its
/// drive, one that stands blames the board that calls neither.
#[test]
fn a_fan_tells_a_dead_drive_from_a_board_that_does_not_call() {
    let silent = [
        "machine/kind: fridge-freezer",
        "machine/build: inverter",
        "machine/complaint: silent",
        "machine/told-by: myself",
        "lamp-at-power-up/answer: lit",
        "power-up/answer: silent",
    ];
    let ratio = |air: &str| {
        let air = format!("evaporator-fan-air/answer: {air}");
        let whole = whole(&[&silent[..], &[air.as_str()]].concat());
        probability(&whole, Fault::DriveWithoutOutput)
            / probability(&whole, Fault::BoardDoesNotCall)
    };
    assert!(ratio("strong") > 4.0, "{}", ratio("strong"));
    assert!(ratio("none") < 1.0, "{}", ratio("none"));
}

/// Where the bulb sits on the last turns of a plate that runs half dry, the first ones freeze all.
#[test]
fn what_is_too_cold_and_never_stops_may_have_lost_gas() {
    let mut told = vec![
        "machine/kind: refrigerator",
        "machine/complaint: too-cold",
        "machine/told-by: myself",
        "run-pattern/answer: all-the-time",
        "thermostat-cold/answer: opens",
    ];
    let ratio = |told: &[&str]| {
        let whole = whole(told);
        probability(&whole, Fault::ChargeLow) / probability(&whole, Fault::ControlStaysOn)
    };
    let before = ratio(&told);
    told.push("frost-pattern/answer: first-part-only");
    let frosted = ratio(&told);
    assert!(
        frosted > 4.0 * before && frosted > 1.0,
        "{before} {frosted}"
    );
    // The thermometer says what was complained of already: neither way is that news.
    told.push("temperatures/answer: too-cold");
    let measured = ratio(&told);
    assert!((measured / frosted - 1.0).abs() < 1e-6, "{measured}");
}
