//! What is advised while little is known, and what is offered next.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used, clippy::panic, clippy::expect_used)]

mod told;

use diagnosis::{Action, Again, Ask, Check, Choice, Clue, Decided, Fault, NextCheck, Task, Whole};

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
            "runs-then-stops",
            "one-side-warm",
            "too-cold",
            "never-stops",
            "noisy",
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

fn offered(whole: &Whole, task: Task) -> Option<&NextCheck> {
    whole.next.iter().find(|check| check.task == task)
}

#[test]
fn the_past_is_asked_for_until_it_was_and_nothing_ticked_is_an_answer() {
    let told = ["machine/kind: chest-freezer", "machine/complaint: silent"];
    let before = whole(&told);
    let asked = offered(&before, Task::History).expect("it is a question or two");
    assert!(asked.is_worthwhile() && asked.overturns.is_empty());
    for line in [
        "history: none",
        "history: outbuilding",
        "history/known - not-sure",
    ] {
        let after = whole(&[told[0], told[1], line]);
        assert!(offered(&after, Task::History).is_none(), "{line}");
    }
}

/// A reading that fits the others least is asked for once more, with the reason; a second one
/// stands.
#[test]
fn a_doubtful_reading_is_offered_again_with_the_reason_once() {
    let mut told = vec![
        "machine/kind: chest-freezer",
        "look-over/signs: none",
        "ground/earth-pin: has",
        "ground/blades-to-earth = OL",
        "ground/blades-to-metal = OL",
        "ground/earth-to-metal = 0.3",
        "power-up: runs",
        "power-level: as-expected",
        "condenser-warmth: evenly-warm",
        "frost-pattern: even",
        "temperatures/freezer = -19",
        "hiss: none",
    ];
    let doubtful = Task::Clue(Clue::Hiss);
    let once = whole(&told);
    let conflict = once.conflict.expect("a machine that pumps hisses");
    assert_eq!(conflict.repeat, doubtful);
    let again = offered(&once, doubtful).expect("it is to be repeated");
    assert_eq!(again.again, Some(Again::DoesNotFit(conflict.factor)));
    assert!(again.is_worthwhile());
    assert!(
        once.next
            .iter()
            .filter(|check| check.again.is_some())
            .count()
            == 1
    );
    told.push("hiss: none");
    assert!(offered(&whole(&told), doubtful).is_none());
}

/// A compressor isn't given up on pins that were measured once.
#[test]
fn pins_that_condemn_a_motor_are_measured_twice() {
    let mut told = vec![
        "machine/kind: fridge-freezer",
        "machine/build: inverter",
        "machine/complaint: silent",
        "machine/told-by: myself",
        "windings/start-gear: off",
        "windings/pair-1-2 = 8.1",
        "windings/pair-2-3 = OL",
        "windings/pair-1-3 = OL",
        "flash-code: motor-or-drive",
    ];
    let windings = Task::Check(Check::Windings);
    let once = whole(&told);
    let again = offered(&once, windings).expect("once is not enough");
    assert_eq!(again.again, Some(Again::RestsOnOne));
    assert_eq!(once.verdict.decided, Decided::GoOn);
    told.extend(["windings/pair-2-3 = OL", "windings/pair-1-3 = OL"]);
    let twice = whole(&told);
    assert!(offered(&twice, windings).is_none());
    let motor = twice.suspects[0].fault;
    assert_eq!(motor, Some(Fault::InverterMotorFailed));
}

#[test]
fn a_part_that_there_is_not_is_not_asked_for_again() {
    let kind = "machine/kind: fridge-freezer";
    for &clue in Clue::ALL
        .iter()
        .filter(|clue| Ask::Answer(**clue).can_be_absent())
    {
        let line = format!("{}: {}", clue.name(), diagnosis::THERE_IS_NONE);
        let after = whole(&[kind, &line]);
        let task = Task::Clue(clue);
        assert!(offered(&after, task).is_none(), "{clue:?}");
        assert!(
            after.withheld.iter().all(|one| one.task != task),
            "{clue:?}"
        );
    }
}

/// Two numbers, or an impression where one of them can't be had.
#[test]
fn a_capacitor_is_asked_for_as_numbers_and_else_as_an_impression() {
    let items = |lines: &[&str]| -> Vec<&str> {
        let asks = Task::Clue(Clue::Capacitor).asks(&told::job(lines));
        asks.iter().map(|ask| ask.names().1).collect()
    };
    assert_eq!(items(&[]), ["marking", "measured"]);
    let told_before = "stored-charge/capacitor-marking = 12u";
    assert_eq!(items(&[told_before]), ["measured"]);
    let unread = "capacitor/marking - not-sure";
    assert_eq!(items(&[unread]), ["marking", "answer"]);
    let no_meter = "capacitor/measured - not-sure";
    assert_eq!(items(&[no_meter]), ["marking", "measured", "answer"]);
}

/// A machine that hums and clicks, its start device sound, its pins not measured to the shell.
const HUMS: [&str; 19] = [
    "machine/kind: chest-freezer",
    "machine/mains: 230-v-50-hz",
    "machine/complaint: hums-then-clicks",
    "machine/told-by: myself",
    "refrigerant/plate: r134a",
    "look-over/signs: none",
    "ground/earth-pin: has",
    "ground/tester: ohmmeter",
    "ground/blades-to-earth = OL",
    "ground/blades-to-metal = OL",
    "ground/earth-to-metal = 0.3",
    "ground/blade-to-blade = 14.1",
    "stored-charge/stores: nothing",
    "click-interval/answer: within-seconds",
    "other-outlet/answer: same",
    "start-device/start-device-kind: ptc",
    "start-device/start-device-looks: whole",
    "start-device/ptc-marking = 22",
    "start-device/ptc-reading = 22",
];

/// Condemning a sound compressor is the dearest mistake of the trade (common practice, no source):
/// the trial that could clear it comes first, and what that trial waits for before it.
#[test]
fn no_compressor_is_given_up_while_the_trial_that_could_clear_it_can_be_made() {
    let mut told = HUMS.to_vec();
    told.extend([
        "windings/start-gear: off",
        "windings/pair-1-2 = 11.4",
        "windings/pair-1-3 = 30.2",
        "windings/pair-2-3 = 18.9",
    ]);
    let found = whole(&told);
    assert_eq!(found.verdict.decided, Decided::GoOn);
    assert_eq!(found.next[0].task, Task::Check(Check::Shell));
    let opens = found.next[0].opens.expect("it clears the way");
    assert_eq!(opens.task, Task::Clue(Clue::GoodDevice));

    told.extend([
        "shell/pin-1-to-shell = OL",
        "shell/pin-2-to-shell = OL",
        "shell/pin-3-to-shell = OL",
    ]);
    let found = whole(&told);
    assert_eq!(found.verdict.decided, Decided::GoOn);
    assert_eq!(found.next[0].task, Task::Clue(Clue::GoodDevice));

    told.push("good-device/answer: hums");
    assert_ne!(whole(&told).next[0].task, Task::Check(Check::Shell));
}

/// Nobody throws a machine away on one touch of the hand (common practice, no source).
#[test]
fn a_sealed_system_is_given_up_on_two_signs_not_on_one() {
    let mut told = vec![
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
        "lint/answer: clear",
        "coil-ice/answer: clear",
        "power-level/answer: low",
    ];
    let found = whole(&told);
    assert_eq!(found.verdict.decided, Decided::GoOn, "{:?}", found.verdict);
    // Had in half an hour, where frost takes two.
    assert_eq!(found.next[0].task, Task::Clue(Clue::CondenserWarmth));
    told.push("condenser-warmth/answer: room-temperature");
    let found = whole(&told);
    assert_eq!(found.verdict.decided, Decided::GoOn, "{:?}", found.verdict);
    // What lies outside is looked at first: the room, then the door.
    assert_eq!(found.next[0].task, Task::Clue(Clue::RoomTemperature));
    told.push("room-temperature/answer = 21");
    assert_eq!(whole(&told).next[0].task, Task::Clue(Clue::Seal));
    told.push("seal/answer: drags-all-round");
    let found = whole(&told);
    assert_eq!(found.verdict.decided, Decided::NearlySure);
    assert_eq!(found.verdict.best.action, Action::Scrap);
}

#[test]
fn readings_that_clear_a_motor_are_not_asked_for_twice() {
    let told = [
        "machine/kind: fridge-freezer",
        "machine/build: inverter",
        "machine/complaint: silent",
        "machine/told-by: myself",
        "flash-code/answer: motor-or-drive",
        "windings/start-gear: off",
        "windings/pair-1-2 = 12.1",
        "windings/pair-1-3 = 12.0",
        "windings/pair-2-3 = 12.1",
    ];
    let found = whole(&told);
    let windings = Task::Check(Check::Windings);
    assert!(found.next.iter().all(|check| check.task != windings));
}

/// From the plug a heater's leak looks like a winding's, and winding leaks are the commoner ones on
/// a chest freezer: so the machine stays unplugged, and is not given up before that was told apart.
#[test]
fn a_leak_found_at_the_plug_condemns_no_compressor_before_the_pins_or_parts_were_measured() {
    let mut told = vec![
        "machine/kind: chest-freezer",
        "machine/build: manual-defrost",
        "machine/complaint: trips-the-outlet",
        "machine/told-by: myself",
        "look-over/signs: none",
        "ground/earth-pin: has",
        "ground/tester: ohmmeter",
        "ground/blades-to-earth = 1.1k",
        "ground/blades-to-metal = 1.1k",
        "ground/earth-to-metal = 0.3",
    ];
    let before = whole(&told);
    assert_eq!(before.verdict.decided, Decided::GoOn);
    assert!(matches!(
        before.next[0].task,
        Task::Check(Check::Shell) | Task::Clue(Clue::PartByPart)
    ));
    told.push("part-by-part: another-leaks");
    let after = whole(&told);
    assert_eq!(after.suspects[0].fault, Some(Fault::AnotherPartLeaks));
    assert_ne!(after.verdict.best.action, Action::StopDoNotEnergise);
}
