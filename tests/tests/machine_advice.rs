//! What is advised while little is known, and what is offered next.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used, clippy::panic, clippy::expect_used)]

mod told;

use diagnosis::{Action, Check, Decided, Task, Whole};

fn whole(lines: &[&str]) -> Whole {
    told::assessed(lines).whole.expect("a machine was told")
}

/// One measures and looks before a machine is given up: a kind and a complaint condemn nothing.
#[test]
fn with_little_known_one_goes_on_and_nothing_is_scrapped() {
    for kind in [
        "chest-freezer",
        "upright-freezer",
        "fridge-freezer",
        "refrigerator",
    ] {
        for complaint in [
            "unknown",
            "silent",
            "hums-then-clicks",
            "runs-stays-warm",
            "trips-the-outlet",
        ] {
            for told_by in ["seller", "myself"] {
                let lines = [
                    format!("machine/kind: {kind}"),
                    format!("machine/complaint: {complaint}"),
                    format!("machine/told-by: {told_by}"),
                ];
                let lines: Vec<&str> = lines.iter().map(String::as_str).collect();
                let verdict = whole(&lines).verdict;
                let told = format!("{lines:?}: {verdict:?}");
                assert_eq!(verdict.decided, Decided::GoOn, "{told}");
                let gives_up = matches!(
                    verdict.best.action,
                    Action::Scrap | Action::LicensedWork | Action::StopDoNotEnergise
                );
                assert!(!gives_up, "{told}");
                assert!(verdict.best.cost <= verdict.runner_up.cost + 1e-9, "{told}");
            }
        }
    }
}

/// The old part comes off, is shaken and measured in six minutes; a good one takes a start trial.
#[test]
fn the_start_device_is_looked_at_before_a_known_good_one_is_fitted() {
    let told = [
        "machine/kind: chest-freezer",
        "machine/complaint: hums-then-clicks",
        "machine/told-by: myself",
        "look-over/signs: none",
        "ground/earth-pin: has",
        "ground/blades-to-earth = OL",
        "ground/blades-to-metal = OL",
        "ground/earth-to-metal = 0.3",
        "shell/pin-1-to-shell = OL",
        "shell/pin-2-to-shell = OL",
        "shell/pin-3-to-shell = OL",
    ];
    let before = whole(&told);
    assert_eq!(before.verdict.best.action, Action::TestFit);
    assert_eq!(before.next[0].task, Task::Check(Check::StartDevice));
    let mut looked = told.to_vec();
    looked.extend([
        "start-device/start-device-kind: ptc",
        "start-device/start-device-looks: whole",
        "start-device/ptc-marking = 4.7",
        "start-device/ptc-reading = 4.9",
    ]);
    let after = whole(&looked);
    let fit = Task::Clue(diagnosis::Clue::GoodDevice);
    let is_first = after.next[0].task == fit;
    assert_eq!(is_first, after.verdict.best.action == Action::TestFit);
}
