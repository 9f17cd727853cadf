//! What a plug-in meter and a clamp say of a machine that runs.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used, clippy::panic)]

mod story;

use diagnosis::{Assessment, Caution, Clue, Fault, Finding, Item, MotorLoad, RunningFinding, Task};
use measure::running::{Plate, RunningError};
use measure::windings::Pair;
use measure::{Against, Direction};
use story::Story;

const US: &str = "120-v-60-hz";

fn running(now: &Assessment) -> Vec<RunningFinding> {
    let found = now.findings.iter().filter_map(|finding| match finding {
        Finding::Running(found) => Some(found.clone()),
        _ => None,
    });
    found.collect()
}

fn chance(now: &Assessment, fault: Fault) -> f64 {
    let suspects = &now.whole.as_ref().unwrap().suspects;
    let found = suspects.iter().find(|one| one.fault == Some(fault));
    found.map_or(0.0, |one| one.probability)
}

fn is_offered(now: &Assessment, task: Task) -> bool {
    let whole = now.whole.as_ref().unwrap();
    whole.next.iter().any(|one| one.task == task)
        || whole.withheld.iter().any(|one| one.task == task)
}

fn runs() -> Story {
    let mut story = Story::grounded(US);
    story.choose("machine", "complaint", "runs-stays-warm");
    story.choose("machine", "told-by", "myself");
    story
}

#[test]
fn watts_over_volt_amperes_are_the_power_factor_of_a_motor_at_work() {
    // 659 W at 120 V and 5.91 A (Fitzgerald, Kingsley & Umans, 6e, a textbook's running motor).
    let now = runs()
        .item(Item::LateWatts, "659")
        .item(Item::RunningVolts, "120.0")
        .item(Item::RunningAmps, "5.91")
        .now();
    let found = running(&now);
    let RunningFinding::PowerFactor { factor, load } = &found[0] else {
        panic!("{found:?}");
    };
    assert!((factor.value().get() - 0.929).abs() < 1e-3);
    assert!(factor.standard().get() > 0.004 && factor.standard().get() < 0.02);
    assert_eq!(*load, MotorLoad::Pumping);
    // An idling motor: 40 W of 168 volt-amperes. Behind a board nothing follows.
    let idle = |story: Story| {
        let now = story
            .item(Item::LateWatts, "40.0")
            .item(Item::RunningVolts, "120.0")
            .item(Item::RunningAmps, "1.40")
            .now();
        let found = running(&now);
        match &found[0] {
            RunningFinding::PowerFactor { load, .. } => *load,
            other => panic!("{other:?}"),
        }
    };
    assert_eq!(idle(runs()), MotorLoad::Idle);
    let board = runs().with("stored-charge", "stores", "inverter-board");
    assert_eq!(idle(board), MotorLoad::CannotTell);
}

#[test]
fn milliamperes_taken_for_amperes_are_named_and_nothing_is_built_on_them() {
    let now = runs()
        .item(Item::LateWatts, "95.0")
        .item(Item::RunningVolts, "120.0")
        .item(Item::RunningAmps, "1100")
        .with("running", "label-of", "compressor")
        .item(Item::LabelAmps, "1.5")
        .now();
    let milli = RunningFinding::Unusable(RunningError::Milliamperes);
    assert_eq!(running(&now), [milli]);
    assert!(!now.cautions.contains(&Caution::UnplugBeforeItBurns));
}

#[test]
fn a_current_is_held_against_the_compressors_label_and_hardly_against_the_machines() {
    let of = |amps, label_of| {
        let story = runs().item(Item::RunningAmps, amps);
        let story = story.with("running", "label-of", label_of);
        story.item(Item::LabelAmps, "1.50").now()
    };
    let stands = |now: &Assessment| {
        let found = running(now).into_iter().find_map(|one| match one {
            RunningFinding::AgainstLabel { whose, against, .. } => Some((whose, against)),
            _ => None,
        });
        found.unwrap()
    };
    let compressor = Plate::Compressor;
    assert_eq!(
        stands(&of("1.10", "compressor")),
        (compressor, Against::Within)
    );
    assert_eq!(
        stands(&of("0.60", "compressor")),
        (compressor, Against::Below)
    );
    assert_eq!(
        stands(&of("1.10", "whole-machine")),
        (Plate::Machine, Against::CannotTell)
    );
    let over = of("2.40", "compressor");
    assert_eq!(stands(&over), (compressor, Against::Above));
    let left_in = |now: &Assessment| {
        let found = running(now);
        let left_in =
            |one: &RunningFinding| matches!(one, RunningFinding::StartWindingLeftIn { .. });
        found.iter().any(left_in) && now.cautions.contains(&Caution::UnplugBeforeItBurns)
    };
    assert!(left_in(&over));
    assert!(!left_in(&of("1.70", "compressor")));
    assert!(!left_in(&of("2.40", "whole-machine")));
}

#[test]
fn two_readings_of_watts_are_a_trend_and_count_once() {
    let watts = |story: Story, early, late| {
        let story = story.item(Item::EarlyWatts, early);
        story.item(Item::LateWatts, late)
    };
    let now = watts(runs(), "41.0", "40.0").now();
    let trend = running(&now).into_iter().find_map(|one| match one {
        RunningFinding::Trend(trend) => Some(trend.direction),
        _ => None,
    });
    assert_eq!(trend, Some(Direction::Steady));
    let (level, trend) = (Task::Clue(Clue::PowerLevel), Task::Clue(Clue::WattsTrend));
    assert!(!is_offered(&now, level) && !is_offered(&now, trend));
    // A word for the level beside it adds nothing: both rest on the same watts.
    let said = watts(runs(), "41.0", "40.0").with("power-level", "answer", "low");
    let fault = Fault::ChargeGone;
    let (said, now) = (chance(&said.now(), fault), chance(&now, fault));
    assert!((said - now).abs() < 1e-12);
    // Low and flat is what a circuit without charge takes.
    assert!(now > 2.0 * chance(&runs().now(), fault));
    let sound = watts(runs(), "110.0", "95.0").now();
    assert!(chance(&sound, fault) < chance(&runs().now(), fault));
}

#[test]
fn nothing_at_first_and_numbers_that_cannot_be_leave_every_probability_a_number() {
    for (early, late, amps) in [
        ("0", "95.0", "0"),
        ("-5", "-5", "-1"),
        ("0", "0", "999999999"),
    ] {
        let now = runs()
            .item(Item::EarlyWatts, early)
            .item(Item::LateWatts, late)
            .item(Item::RunningVolts, "0")
            .item(Item::RunningAmps, amps)
            .with("running", "label-of", "compressor")
            .item(Item::LabelAmps, "0")
            .item(Item::LabelWatts, "0")
            .item(Item::IdleVolts, "0")
            .item(Item::LowestVolts, "0")
            .item(Item::StartingAmps, "0")
            .item(Item::CapacitorMarking, "0")
            .item(Item::CapacitorAmps, amps)
            .item(Item::CapacitorVolts, "0")
            .item(Item::LeakageCurrent, amps)
            .now();
        let whole = now.whole.unwrap();
        assert!(whole.suspects.iter().all(|one| one.probability.is_finite()));
        assert!(whole.nothing_wrong.probability.is_finite());
        assert!(!whole.suspects.is_empty());
    }
}

#[test]
fn one_reading_of_watts_is_a_level_and_amperes_come_second() {
    let fault = Fault::ChargeGone;
    let before = chance(&runs().now(), fault);
    let low = runs().item(Item::LateWatts, "38.0").now();
    assert!(!is_offered(&low, Task::Clue(Clue::PowerLevel)));
    assert!(chance(&low, fault) > 1.5 * before);
    let amps = runs()
        .item(Item::RunningAmps, "0.60")
        .with("running", "label-of", "compressor")
        .item(Item::LabelAmps, "1.50")
        .now();
    assert!(chance(&amps, fault) > 1.1 * before);
    // Amperes without a label say nothing, and the question stays.
    let bare = runs().item(Item::RunningAmps, "0.60").now();
    assert!((chance(&bare, fault) - before).abs() < 1e-12);
    assert!(is_offered(&bare, Task::Clue(Clue::PowerLevel)));
}

#[test]
fn what_windings_let_through_bounds_a_locked_rotor_and_shows_a_reading_of_something_else() {
    let windings = |amps| {
        Story::bare()
            .leads("0.0")
            .read(Pair::OneThree, "4.70")
            .read(Pair::TwoThree, "7.60")
            .read(Pair::OneTwo, "12.3")
            .item(Item::RunningAmps, "1.20")
            .item(Item::StartingAmps, amps)
            .now()
    };
    let now = windings("9.0");
    let locked = running(&now).into_iter().find_map(|one| match one {
        RunningFinding::LockedRotor { least, most, bound } => {
            Some((least.get(), most.get(), bound.unwrap().value().get()))
        }
        _ => None,
    });
    let (least, most, bound) = locked.unwrap();
    assert!((least - 4.8).abs() < 1e-9 && (most - 9.6).abs() < 1e-9);
    // Both windings at 132 V with nothing in the start winding's way.
    assert!((bound - (132.0 / 4.7 + 132.0 / 7.6)).abs() < 0.8, "{bound}");
    let more = |now: &Assessment| {
        let more = |one: &RunningFinding| matches!(one, RunningFinding::MoreThanItsWindings { .. });
        running(now).iter().any(more)
    };
    assert!(!more(&now) && more(&windings("60.0")));
}
