//! Laws that the weighing of a whole machine obeys whatever was told.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used, clippy::panic, clippy::expect_used)]

mod told;

use diagnosis::{
    Assumptions, Build, Choice, Clue, Fault, Model, Priors, Setup, Task, Whole, WhyWithheld,
    assess, assess_checks,
};
use proptest::prelude::*;
use std::time::{Duration, Instant};

/// What any machine may be told, each line by itself.
const LINES: [&str; 30] = [
    "machine/complaint: hums-then-clicks",
    "machine/told-by: myself",
    "look-over/signs: burnt, rodents",
    "ground/blades-to-earth = OL",
    "ground/blade-to-blade = 6.4",
    "windings/pair-1-2 = 4.7",
    "windings/pair-2-3 = 7.6",
    "windings/pair-1-3 = 12.0",
    "shell/pin-1-to-shell = OL",
    "protector/protector-reading = 0.2",
    "start-device/start-device-kind: ptc",
    "start-device/ptc-marking = 4.7",
    "start-device/ptc-reading = 22",
    "power-up: runs",
    "power-level: low",
    "condenser-warmth: hot-all-over",
    "frost-pattern: first-part-only",
    "coil-ice: iced",
    "seal: stands-off",
    "thaw-trial: no-change",
    "temperatures/freezer = -9",
    "room-temperature = 31",
    "history: stopped-after-storm, over-fifteen-years",
    "evaporator-fan-air: weak",
    "run-pattern: all-the-time",
    "noise: fan-scrapes",
    "door-switch: both-follow",
    "evaporator-fan-motor: open",
    "thermostat-cold: opens",
    "capacitor: low",
];

const CHEST: &str = "machine/kind: chest-freezer";

fn whole(lines: &[&str]) -> Whole {
    told::assessed(lines).whole.expect("a machine was told")
}

fn with_chest(lines: &[&'static str]) -> Vec<&'static str> {
    std::iter::once(CHEST)
        .chain(lines.iter().copied())
        .collect()
}

/// Every number that is shown, in order.
fn numbers(whole: &Whole) -> Vec<f64> {
    let suspects = whole.suspects.iter().map(|one| one.probability);
    let links = whole.links.iter().map(|one| one.broken);
    suspects
        .chain(links)
        .chain([whole.nothing_wrong.probability, whole.verdict.best.cost])
        .collect()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn the_order_of_readings_leaves_no_trace(
        chosen in prop::sample::subsequence(LINES.to_vec(), 1..10).prop_shuffle()
    ) {
        let mut sorted = chosen.clone();
        sorted.sort_unstable();
        let (one, other) = (whole(&with_chest(&chosen)), whole(&with_chest(&sorted)));
        // What comes next depends on how the last reading left the machine; beliefs don't.
        prop_assert_eq!(&one.suspects, &other.suspects);
        prop_assert_eq!(&one.links, &other.links);
        prop_assert_eq!(one.verdict.best, other.verdict.best);
    }

    #[test]
    fn every_probability_is_one_and_every_factor_is_a_factor(
        chosen in prop::sample::subsequence(LINES.to_vec(), 0..14)
    ) {
        let whole = whole(&with_chest(&chosen));
        let inside = |p: f64| (0.0..=1.0 + 1e-9).contains(&p);
        for one in whole.suspects.iter().chain([&whole.nothing_wrong]) {
            prop_assert!(inside(one.probability) && inside(one.before));
            for weighed in one.pointing_to.iter().chain(&one.pointing_away) {
                prop_assert!(weighed.factor > 0.0 && inside(weighed.without));
            }
        }
        prop_assert!(whole.links.iter().all(|link| inside(link.broken)));
        prop_assert!((whole.builds.iter().sum::<f64>() - 1.0).abs() < 1e-9);
        prop_assert!(whole.verdict.best.cost <= whole.verdict.runner_up.cost + 1e-9);
        for next in &whole.next {
            prop_assert!(next.value >= 0.0 && next.bits >= 0.0 && next.minutes > 0.0);
        }
    }

    #[test]
    fn what_was_not_sure_is_no_evidence(
        chosen in prop::sample::subsequence(LINES.to_vec(), 1..8)
    ) {
        let plain = whole(&with_chest(&chosen));
        let mut more = with_chest(&chosen);
        more.extend(["hiss - not-sure", "drier - not-sure", "lint - not-sure"]);
        let unsure = whole(&more);
        prop_assert_eq!(numbers(&plain), numbers(&unsure));
        let task = Task::Clue(Clue::Lint);
        prop_assert!(unsure.next.iter().all(|next| next.task != task));
    }

    #[test]
    fn repeats_are_pooled_not_multiplied(
        chosen in prop::sample::subsequence(LINES.to_vec(), 1..8)
    ) {
        let once = whole(&with_chest(&chosen));
        let mut thrice = with_chest(&chosen);
        let repeated = chosen.iter().filter(|line| !line.contains("OL"));
        thrice.extend(repeated.clone().chain(repeated.clone()).copied());
        let pooled = whole(&thrice);
        for (one, other) in numbers(&once).iter().zip(numbers(&pooled)) {
            prop_assert!((one - other).abs() < 1e-9, "{one} {other}");
        }
    }
}

#[test]
fn nothing_told_is_nothing_weighed_and_a_kind_alone_gives_what_is_usual() {
    assert!(told::assessed(&[]).whole.is_none());
    let usual = whole(&[CHEST]);
    assert!(usual.suspects.len() > 10);
    assert!(usual.suspects.iter().all(|one| one.pointing_to.is_empty()));
    assert!(usual.conflict.is_none());
}

#[test]
fn names_from_a_newer_program_are_passed_over() {
    let plain = whole(&[CHEST, "power-up: runs"]);
    let newer = whole(&[
        CHEST,
        "power-up: runs",
        "sniffer/answer-2: beeps",
        "history: struck-by-lightning",
    ]);
    assert_eq!(numbers(&plain), numbers(&newer));
}

#[test]
fn a_reading_of_a_part_that_such_a_machine_has_not_is_kept_and_moves_only_the_build() {
    let chest = [
        "machine/kind: chest-freezer",
        "machine/build: manual-defrost",
    ];
    let plain = whole(&chest);
    let fan = whole(&[chest[0], chest[1], "evaporator-fan-air: none"]);
    assert_eq!(plain.suspects.len(), fan.suspects.len());
    for (one, other) in plain.suspects.iter().zip(&fan.suspects) {
        assert!((one.probability - other.probability).abs() < 1e-12);
    }
    let unknown = whole(&["machine/kind: upright-freezer", "evaporator-fan-air: none"]);
    assert!(unknown.builds[Build::FrostFree as usize] > 0.7);
}

#[test]
fn contradictory_readings_give_an_answer_and_say_which_to_repeat() {
    let whole = whole(&[
        CHEST,
        "power-up: runs",
        "power-level: as-expected",
        "condenser-warmth: evenly-warm",
        "frost-pattern: even",
        "temperatures/freezer = -19",
        "hiss: none",
    ]);
    assert_eq!(
        whole.conflict.map(|one| one.repeat),
        Some(Task::Clue(Clue::Hiss))
    );
    assert!(whole.nothing_wrong.probability > 0.2);
}

#[test]
fn nothing_is_powered_before_the_ground_check_and_every_refusal_says_why() {
    let told = [
        CHEST,
        "machine/complaint: hums-then-clicks",
        "machine/told-by: myself",
    ];
    let before = whole(&told);
    let powered = |setup: Setup| setup.plugged == Some(true);
    assert!(before.next.iter().all(|next| !powered(next.setup)));
    assert!(!before.safety_first.is_empty());
    let why = before
        .withheld
        .iter()
        .find(|one| one.task == Task::Clue(Clue::PowerMeter));
    assert!(matches!(why.unwrap().why, WhyWithheld::Closed(_)));
    let mut after = told.to_vec();
    after.extend([
        "look-over/signs: none",
        "ground/earth-pin: has",
        "ground/blades-to-earth = OL",
        "ground/blades-to-metal = OL",
        "ground/earth-to-metal = 0.3",
    ]);
    let after = whole(&after);
    assert!(after.next.iter().any(|next| powered(next.setup)));
    let trial = after
        .withheld
        .iter()
        .find(|one| one.task == Task::Clue(Clue::GoodDevice));
    assert!(matches!(trial.unwrap().why, WhyWithheld::Closed(_)));
}

#[test]
fn with_gas_that_burns_and_a_charge_likely_lost_powered_work_stops() {
    let whole = whole(&[
        CHEST,
        "refrigerant/plate: r600a",
        "look-over/signs: none",
        "ground/earth-pin: has",
        "ground/blades-to-earth = OL",
        "ground/blades-to-metal = OL",
        "ground/earth-to-metal = 0.3",
        "condenser-warmth: room-temperature",
        "frost-pattern: none",
    ]);
    assert!(
        whole
            .next
            .iter()
            .all(|next| next.setup.plugged != Some(true))
    );
    assert!(
        whole
            .withheld
            .iter()
            .any(|one| one.why == WhyWithheld::GasMayBeOut)
    );
}

#[test]
fn an_edited_share_moves_what_follows_from_it() {
    let job = told::job(&[CHEST, "machine/build: manual-defrost"]);
    let now = told::moment(3);
    let fault = Some(Fault::ThermostatOpen);
    let mut priors = Priors::default();
    priors.set(Build::ManualDefrost, fault, 40.0).unwrap();
    let edited = Model {
        machines: Assumptions::new(priors),
        ..Model::default()
    };
    let of = |model: &Model| {
        let whole = assess(model, &job, now).whole.unwrap();
        let found = whole.suspects.into_iter().find(|one| one.fault == fault);
        found.map_or(0.0, |one| one.probability)
    };
    assert!(of(&Model::default()) < 0.1);
    assert!(of(&edited) > 0.35);
}

#[test]
fn a_reading_far_from_a_part_leaves_it_alone_once_the_rest_is_known() {
    // A lamp that stays on and a start device have nothing to do with each other but for how
    // many faults there are; with the same count of suspects left, odds move little.
    let plain = [
        CHEST,
        "machine/build: manual-defrost",
        "good-device: starts",
    ];
    let mut lamp = plain.to_vec();
    lamp.push("door-lamp: goes-out");
    let of = |lines: &[&str]| {
        let whole = whole(lines);
        let found = whole
            .suspects
            .iter()
            .find(|one| one.fault == Some(Fault::StartDeviceOpen));
        found.unwrap().probability
    };
    assert!((of(&plain) - of(&lamp)).abs() < 1e-3);
}

/// Printed; the bound is ten times what a small machine takes, so that a busy one doesn't fail.
#[test]
fn weighing_takes_milliseconds() {
    for (what, build) in [
        ("build known", Some("machine/build: manual-defrost")),
        ("build not known", None),
    ] {
        let lines: Vec<&str> = [CHEST]
            .into_iter()
            .chain(build)
            .chain(LINES[..13].iter().copied())
            .collect();
        let job = told::job(&lines);
        let now = told::moment(lines.len());
        let model = Model::default();
        let _ = assess(&model, &job, now);
        let timed = |what: &dyn Fn()| {
            let begin = Instant::now();
            (0..20).for_each(|_| what());
            begin.elapsed() / 20
        };
        let each = timed(&|| drop(assess(&model, &job, now)));
        let checks = timed(&|| drop(assess_checks(&model, &job, now)));
        println!(
            "{what}, {} lines: {each:?} in all, {checks:?} of it for the checks by themselves",
            lines.len()
        );
        assert!(each < Duration::from_millis(500));
    }
}

#[test]
fn every_clue_can_be_answered_and_moves_something() {
    for &clue in Clue::ALL.iter().filter(|clue| clue.check().is_none()) {
        let before = whole(&["machine/kind: fridge-freezer"]);
        for answer in clue.answers() {
            let line = format!("{}: {answer}", clue.name());
            let after = whole(&["machine/kind: fridge-freezer", &line]);
            assert_ne!(numbers(&before), numbers(&after), "{line}");
        }
    }
}
