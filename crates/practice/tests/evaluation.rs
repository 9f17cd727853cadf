//! The figures that are published come out the same, and mean what they say.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used)]

use diagnosis::{Decided, Model, Priors};
use measure::MeterKind;
use practice::{Evaluation, Order, Score, Tally, drawn, walk};

fn score(said: f64, right: bool) -> Score {
    Score {
        machine: "chest-freezer",
        meter: MeterKind::Basic,
        truth: Vec::new(),
        passes: false,
        first: (None, said),
        right_first: right,
        right_in_three: true,
        right_action: right,
        brier: 0.0,
        condemned_sound: false,
        repair_in_vain: false,
        unsafe_steps: 0,
        checks: 4,
        minutes: 10.0,
        waiting: 0.0,
    }
}

/// Odds that are wrong by two tenths throughout, and such as come true just as often.
#[test]
fn the_calibration_error_is_the_gap_between_what_was_said_and_what_was_so() {
    let mut off = Tally::default();
    let mut honest = Tally::default();
    for number in 0..1_000 {
        off.add(score(0.8, number % 5 < 3));
        honest.add(score(0.8, number % 5 < 4));
    }
    assert!((off.calibration_error() - 0.2).abs() < 1e-12);
    assert!(honest.calibration_error() < 1e-12);
    // Ten bins of a hundred: √(0.8 · 0.2 / 100) · √(2/π).
    assert!((off.calibration_noise() - 0.031_915).abs() < 1e-5);
}

/// No bound here is a figure to be proud of: they are what this seed has kept to, so that a change
/// that makes things worse is noticed.
#[test]
fn forty_machines_come_out_as_before_and_nobody_is_hurt() {
    let model = Model::default();
    let [mut ours, mut checklist] = [Tally::default(), Tally::default()];
    for number in 0..40 {
        let evaluation = Evaluation::of(&model, MeterKind::Basic, 2, number).unwrap();
        let Some(evaluation) = evaluation else {
            continue;
        };
        let [first, second, _] = evaluation.scores;
        ours.add(first);
        checklist.add(second);
    }
    let (ours, checklist) = (ours.row(), checklist.row());
    println!("{ours:?}\n{checklist:?}");
    assert!(ours.machines >= 38);
    assert!(ours.right_action >= 0.65);
    assert!(ours.minutes <= 0.65 * checklist.minutes);
    assert_eq!(ours.unsafe_steps, 0);
}

/// Each machine counts in its own kind's row and under its own meter, and in no other.
#[test]
fn tables_by_machine_and_meter_part_the_machines_among_them() {
    let mut tally = Tally::default();
    for number in 0..60 {
        let is_freezer = number % 3 == 0;
        let mut one = score(0.5, is_freezer);
        one.machine = if is_freezer {
            "upright-freezer"
        } else {
            "inverter"
        };
        if number % 4 == 0 {
            one.meter = MeterKind::Good;
            one.minutes = 30.0;
        }
        tally.add(one);
    }
    let by_machine = tally.by_machine();
    let names: Vec<_> = by_machine.iter().map(|(name, _)| *name).collect();
    assert_eq!(names, ["upright-freezer", "inverter"]);
    assert_eq!(by_machine[0].1.machines, 20);
    assert!(by_machine[0].1.right_action > 0.999);
    assert_eq!(by_machine[1].1.machines, 40);
    assert!(by_machine[1].1.right_action < 0.001);
    let by_meter = tally.by_meter();
    assert_eq!(by_meter[0].0, MeterKind::Basic);
    assert_eq!((by_meter[0].1.machines, by_meter[1].1.machines), (45, 15));
    assert!((by_meter[0].1.minutes - 10.0).abs() < 1e-9);
    assert!((by_meter[1].1.minutes - 30.0).abs() < 1e-9);
}

/// Who is told not to give a compressor up before a check makes it, though its minutes don't pay:
/// these machines hum, and their pins have to be measured before a start device is tried.
#[test]
fn a_walk_does_not_end_before_what_the_verdict_asks_for() {
    let model = Model::default();
    for number in [144, 367] {
        let meter = MeterKind::Basic;
        let mut sheet = drawn(&Priors::default(), meter, 5, number)
            .unwrap()
            .unwrap();
        let walked = walk(&mut sheet, &model, Order::Ours).unwrap();
        let asked = walked.whole.next.first();
        let is_open = asked.is_some_and(|next| !walked.tasks.contains(&next.task));
        let goes_on = walked.whole.verdict.decided == Decided::GoOn;
        assert!(
            !(goes_on && is_open),
            "{number}: {:?}",
            walked.whole.verdict
        );
    }
}

/// What was put in warm is cold some days later though nobody did anything, and then nothing is wrong
/// any more: to wait mends it.
#[test]
fn a_warm_load_passes_by_itself() {
    use quantity::{Ratio, Seconds};
    use simulator::Chance;
    use simulator::appliance::Kind;
    use simulator::machine::{Ailment, Blueprint, Machine, Trouble};
    let mut loads = 0;
    for seed in 0..5 {
        let blueprint = Blueprint::drawn(Kind::UprightFreezer, false, &mut Chance::new(seed));
        let trouble = Trouble {
            ailment: Ailment::TooMuchAsked,
            severity: Ratio::new(0.9),
        };
        let machine = Machine::build(&blueprint, &[trouble], Chance::new(seed)).unwrap();
        if machine.room().get() < 32.0 {
            loads += 1;
            let mut session = machine.plug_in(Seconds::new(43_200.0)).unwrap();
            let after_half_a_day = session.settled().0.get();
            session.go_on(Seconds::new(3.5 * 86_400.0)).unwrap();
            let end = session.settled().0.get();
            assert!(after_half_a_day > -12.0 && end < -15.0, "{seed}: {end}");
        }
    }
    assert!(loads > 1);
}
