//! Jobs in which something was done to the machine: what was read before speaks of it as it was,
//! what is read after of it as it is now. Worked cases stand with their reasons in
//! `tests/cases/changes.json`.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used, clippy::panic, clippy::expect_used)]

mod shown;
mod told;

use diagnosis::{
    Action, Assessment, CHANGE, Caution, Change, Choice, Fault, Gate, Model, Whole, assess,
};
use job::{Answer, Content, Entry, Id, Name, Question};
use serde_json::Value;
use std::time::{Duration, Instant};

const CASES: &str = include_str!("../cases/changes.json");

/// Every key that a case may have: a misspelt expectation would otherwise hold by itself.
const KEYS: [&str; 9] = [
    "name",
    "why",
    "source",
    "told",
    "top",
    "likely",
    "unlikely",
    "nothing wrong",
    "action",
];

#[test]
fn every_worked_case_with_changes_comes_out_as_a_technician_has_it() {
    let cases: Value = serde_json::from_str(CASES).unwrap();
    let wrong: Vec<String> = cases.as_array().unwrap().iter().flat_map(check).collect();
    assert!(wrong.is_empty(), "{wrong:#?}");
}

/// What does not come out as the case has it.
fn check(case: &Value) -> Vec<String> {
    let name = text(&case["name"]);
    for key in case.as_object().unwrap().keys() {
        assert!(KEYS.contains(&key.as_str()), "{name}: {key}");
    }
    assert!(!text(&case["why"]).is_empty() && !text(&case["source"]).is_empty());
    let told: Vec<&str> = case["told"].as_array().unwrap().iter().map(text).collect();
    let whole = whole(&told);
    if std::env::var("SHOW").is_ok() {
        shown::show(name, &whole);
    }
    let mut wrong = Vec::new();
    for (key, at_least) in [("likely", true), ("unlikely", false)] {
        for (fault, bound) in case[key].as_object().into_iter().flatten() {
            let found = chance(&whole, named(fault));
            if (found >= bound.as_f64().unwrap()) != at_least {
                wrong.push(format!(
                    "{name}: {fault} has {found:.3}, {key} says {bound}"
                ));
            }
        }
    }
    if let Some(top) = case["top"].as_str()
        && whole.suspects[0].fault != Some(named(top))
    {
        wrong.push(format!("{name}: on top is {:?}", whole.suspects[0].fault));
    }
    let nothing = whole.nothing_wrong.probability;
    if case["nothing wrong"]
        .as_f64()
        .is_some_and(|least| nothing < least)
    {
        wrong.push(format!("{name}: nothing wrong has {nothing:.3}"));
    }
    let actions = case["action"].as_array().into_iter().flatten();
    let actions: Vec<Action> = actions.map(|one| named(text(one))).collect();
    let best = whole.verdict.best;
    if !actions.is_empty() && !actions.contains(&best.action) {
        wrong.push(format!("{name}: the verdict is {best:?}"));
    }
    wrong
}

fn whole(lines: &[&str]) -> Whole {
    told::assessed(lines).whole.expect("a machine was told")
}

fn chance(whole: &Whole, fault: Fault) -> f64 {
    let found = whole.suspects.iter().find(|one| one.fault == Some(fault));
    found.map_or(0.0, |one| one.probability)
}

fn named<C: Choice>(name: &str) -> C {
    C::from_name(name).unwrap_or_else(|| panic!("{name} is no name"))
}

fn text(value: &Value) -> &str {
    value.as_str().unwrap_or_default()
}

const HUMMING: [&str; 5] = [
    "machine/kind: chest-freezer",
    "machine/build: manual-defrost",
    "machine/complaint: hums-then-clicks",
    "machine/told-by: myself",
    "power-up: hums-then-clicks",
];

fn humming(then: &[&'static str]) -> Vec<&'static str> {
    HUMMING.iter().chain(then).copied().collect()
}

#[test]
fn the_same_reading_counts_before_and_after_each_for_its_own_time() {
    let before = whole(&humming(&[]));
    let started = whole(&humming(&[
        "change/start-device: replaced",
        "power-up: runs",
    ]));
    let hums = whole(&humming(&[
        "change/start-device: replaced",
        "power-up: hums-then-clicks",
    ]));
    let device = Fault::StartDeviceOpen;
    assert_eq!(before.suspects[0].fault, Some(device));
    assert!(chance(&started, device) < 0.05 && chance(&hums, device) < 0.1);
    let rotor = Fault::RotorSeized;
    assert!(chance(&started, rotor) < 0.05);
    let (was, is) = (chance(&before, rotor), chance(&hums, rotor));
    assert!(is > 1.5 * was, "{was} {is}");
    // A known-good device in its place says much the same.
    let substituted = whole(&humming(&["good-device: hums"]));
    let apart = is - chance(&substituted, rotor);
    println!(
        "rotor seized: {was:.3}, a new device hums {is:.3}, a known-good one {:.3}",
        is - apart
    );
    assert!(apart.abs() < 0.15, "{apart}");
    // What it did before still counts: the old device took the blame with it.
    let new_only = whole(&[
        HUMMING[0],
        HUMMING[1],
        "change/start-device: replaced",
        "power-up: runs",
    ]);
    assert!(started.nothing_wrong.probability > new_only.nothing_wrong.probability);
}

#[test]
fn what_comes_before_a_change_and_what_after_is_told_by_the_order_of_entries() {
    let after = whole(&humming(&[
        "change/start-device: replaced",
        "power-up: runs",
    ]));
    let before = whole(&humming(&[
        "power-up: runs",
        "change/start-device: replaced",
    ]));
    assert!(after.changed.read_since && !before.changed.read_since);
    assert!(after.nothing_wrong.probability > before.nothing_wrong.probability + 0.1);
    // Within one period the order leaves no trace.
    let rest = ["power-level: as-expected", "lint: matted"];
    let one = whole(&humming(&[
        "change/start-device: replaced",
        rest[0],
        rest[1],
    ]));
    let other = whole(&humming(&[
        "change/start-device: replaced",
        rest[1],
        rest[0],
    ]));
    assert_eq!(one.suspects, other.suspects);
    assert_eq!(one.verdict.best, other.verdict.best);
}

#[test]
fn a_new_part_has_to_be_looked_at_anew_and_other_readings_stand() {
    let told = humming(&[
        "look-over/signs: none",
        "start-device/start-device-kind: ptc",
        "start-device/start-device-looks: rattles",
        "start-device/ptc-marking = 4.7",
        "start-device/ptc-reading = OL",
        "lint: matted",
    ]);
    let mut replaced = told.clone();
    replaced.push("change/start-device: replaced");
    let (before, after) = (told::assessed(&told), told::assessed(&replaced));
    assert!(before.findings.len() > after.findings.len());
    let offers = |all: &Assessment, name: &str| {
        let next = &all.whole.as_ref().unwrap().next;
        next.iter().any(|one| one.task.name() == name)
    };
    assert!(!offers(&before, "start-device") && offers(&after, "start-device"));
    assert!(!offers(&after, "lint") && !offers(&after, "look-over"));
}

#[test]
fn once_wires_were_mended_metal_is_measured_again_before_it_is_powered() {
    let told = humming(&[
        "ground/earth-pin: has",
        "ground/tester: ohmmeter",
        "ground/blades-to-earth = OL",
        "ground/blades-to-metal = OL",
        "ground/earth-to-metal = 0.3",
        "look-over/signs: none",
    ]);
    let open = |lines: &[&str]| told::assessed(lines).gates.look_and_listen == Gate::Open;
    assert!(open(&told));
    let offers_a_look = |lines: &[&str]| {
        let whole = whole(lines);
        let mut next = whole.next.iter();
        next.any(|one| one.task.name() == "look-over")
    };
    for (change, stays_open) in [
        (Change::StartDevice, true),
        (Change::Condenser, true),
        (Change::Wiring, false),
        (Change::Cord, false),
        (Change::Compressor, false),
        (Change::LeakingPart, false),
    ] {
        let line = format!("change/{}: {}", change.name(), change.how());
        let mut changed = told.clone();
        changed.push(&line);
        assert_eq!(open(&changed), stays_open, "{line}");
        let mended = matches!(change, Change::Cord | Change::Wiring);
        assert_eq!(offers_a_look(&changed), mended, "{line}");
    }
}

#[test]
fn a_stop_by_what_was_seen_stands_until_someone_has_looked_again() {
    let told = humming(&["look-over/signs: cord-damaged", "change/cord: replaced"]);
    let damaged = |lines: &[&str]| {
        let cautions = told::assessed(lines).cautions;
        cautions.contains(&Caution::DamagedCord)
    };
    assert!(damaged(&told));
    let mut again = told.clone();
    again.push("look-over/signs: none");
    assert!(!damaged(&again));
}

/// A struck change, or one that this program doesn't know, leaves everything as it was.
#[test]
fn a_change_that_does_not_count_leaves_no_trace() {
    let plain = humming(&["lint: matted"]);
    let mut struck = told::job(&humming(&["lint: matted", "change/start-device: replaced"]));
    let entry = |id: &str, content: Content| Entry {
        id: Id::new(id).unwrap(),
        at: told::moment(99),
        content,
    };
    let target = struck.entries().last().unwrap().id.clone();
    struck
        .add(entry("strike", Content::Strike(target)))
        .unwrap();
    let now = told::moment(100);
    let of = |job: &job::Job| assess(&Model::default(), job, now).whole.unwrap();
    let expected = of(&told::job(&plain));
    assert_eq!(of(&struck), expected);
    let mut newer = told::job(&plain);
    for (place, (item, answer)) in [("gyroscope", "replaced"), ("start-device", "painted")]
        .into_iter()
        .enumerate()
    {
        let content = Content::Answer {
            question: Question::new(CHANGE, item).unwrap(),
            answer: Answer::Choice(Name::new(answer).unwrap()),
        };
        newer
            .add(entry(&format!("newer-{place}"), content))
            .unwrap();
    }
    assert_eq!(of(&newer), expected);
}

#[test]
fn a_fifth_change_folds_the_first_and_says_so() {
    let mut lines = humming(&[]);
    let mut last = 0.0;
    for count in 1..=6 {
        lines.extend([
            "change/start-device: replaced",
            "power-up: hums-then-clicks",
        ]);
        let whole = whole(&lines);
        assert_eq!(whole.changed.changes.len(), count);
        assert_eq!(whole.changed.folded, count.saturating_sub(4));
        let rotor = chance(&whole, Fault::RotorSeized);
        assert!(rotor > 0.3 && rotor > last - 0.05, "{count}: {rotor}");
        last = rotor;
    }
}

#[test]
fn every_change_is_taken_alone_and_keeps_probabilities_whole() {
    for change in Change::ALL {
        let line = format!("change/{}: {}", change.name(), change.how());
        let whole = whole(&[
            "machine/kind: fridge-freezer",
            "machine/complaint: runs-stays-warm",
            "power-up: runs",
            &line,
            "temperatures: both-warm",
        ]);
        assert_eq!(whole.changed.changes, [*change]);
        let all = whole.suspects.iter().chain([&whole.nothing_wrong]);
        for one in all {
            assert!(
                (0.0..=1.0 + 1e-9).contains(&one.probability),
                "{change:?} {one:?}"
            );
        }
        assert!((whole.builds.iter().sum::<f64>() - 1.0).abs() < 1e-9);
        assert!(!whole.next.is_empty());
    }
}

#[test]
fn the_report_says_what_a_change_has_come_to() {
    let text = |lines: &[&str]| {
        let job = told::job(lines);
        let assessment = assess(&Model::default(), &job, told::moment(99));
        wording::report(&assessment, &job, &wording::Locale::default()).text()
    };
    let mut lines = humming(&["change/start-device: replaced"]);
    let unread = text(&lines);
    assert!(unread.contains("Since the start device was replaced: nothing was read yet."));
    lines.push("power-up: runs");
    let read = text(&lines);
    let expected = "Since the start device was replaced: likeliest now is: nothing wrong, ";
    assert!(read.contains(expected), "{read}");
    assert!(!text(&HUMMING).contains("Since"));
}

/// Printed; the bound is many times what a small machine takes.
#[test]
fn weighing_with_changes_takes_a_moment() {
    let mut lines = humming(&["lint: clear", "seal: drags-all-round"]);
    for (count, change) in [
        "start-device: replaced",
        "overload: replaced",
        "wiring: mended",
    ]
    .into_iter()
    .enumerate()
    {
        let change: &'static str = format!("change/{change}").leak();
        lines.extend([change, "power-up: hums-then-clicks"]);
        let job = told::job(&lines);
        let model = Model::default();
        let each = || {
            let begin = Instant::now();
            let _ = assess(&model, &job, told::moment(lines.len()));
            begin.elapsed()
        };
        let (first, again) = (each(), each());
        println!("{} changes: {first:?}, again {again:?}", count + 1);
        assert!(again < Duration::from_secs(5));
    }
}
