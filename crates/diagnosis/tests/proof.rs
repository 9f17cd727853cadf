//! What is proved of a machine, told as stories.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used, clippy::panic)]

mod story;

use diagnosis::{
    Change, Compartment, Failure, HeldBack, Missing, NotNeeded, Proof, ProofPoint, ProofState,
    Proven,
};
use job::{ColdEventKind, Place, SetUp, Tried};
use story::Story;

use ColdEventKind::{CompressorOn, DefrostBegan, DefrostEnded, DefrostWater, SwitchedOn, Tripped};

/// Cools to −21 °C in some hours and then swings around −19 °C, 40 minutes each way.
fn sound_freezer(minute: f64) -> f64 {
    let way = -24.0 + 44.0 * libm::exp(-minute / 110.0);
    let swing = (minute / 40.0) % 2.0;
    let triangle = if swing < 1.0 { swing } else { 2.0 - swing };
    way.max(-21.0 + 3.0 * triangle)
}

fn found(kind: &str, build: &str) -> Story {
    Story::grounded("120-v-60-hz")
        .with("machine", "kind", kind)
        .with("machine", "build", build)
}

/// A chest freezer with a new start device that started, was timed, and has run since.
fn mended() -> Story {
    let mut story = found("chest-freezer", "manual-defrost").changed(Change::StartDevice);
    story.tick("look-over", "signs", &[]);
    story
        .tried(60, SetUp::Original, 7.0, Tried::Started)
        .tried(90, SetUp::Original, 8.0, Tried::Started)
        .with("seal", "answer", "drags-all-round")
        .event(100, SwitchedOn)
}

/// Somebody read it each half hour of the first two hours.
fn stood_by(mut story: Story) -> Story {
    for (look, shown) in [(1, "12"), (2, "5"), (3, "0"), (4, "-3")] {
        story = story.spot(100 + look * 30, Place::Freezer, shown);
    }
    story
}

fn proof(story: &Story) -> Proof {
    story.now().proof.unwrap()
}

fn state(story: &Story, point: ProofPoint) -> ProofState {
    let found = proof(story);
    let state = found.state(point);
    state.unwrap_or_else(|| panic!("{:?}", found.held_back))
}

fn missing(story: &Story, point: ProofPoint) -> (Missing, f64) {
    match state(story, point) {
        ProofState::NotYet { missing, takes } => (missing, takes.get() / 60.0),
        other => panic!("{point:?} {other:?}"),
    }
}

const DAY: i64 = 1_440;

#[test]
fn a_machine_that_did_all_of_it_is_proved() {
    let logged = mended().logged(Place::Freezer, (100, 100 + 2 * DAY), sound_freezer);
    // A logger was there, and nobody else.
    assert_eq!(
        missing(&logged, ProofPoint::FirstTwoHours).0,
        Missing::StandBy
    );
    let story = stood_by(logged);
    let found = proof(&story);
    assert_eq!(found.proven(), Proven::All, "{found:?}");
    let defrost = state(&story, ProofPoint::Defrost);
    let by_hand = ProofState::NotNeeded(NotNeeded::DefrostedByHand);
    assert_eq!(defrost, by_hand);
    let watts = state(&story, ProofPoint::SteadyPower);
    assert_eq!(watts, ProofState::NotNeeded(NotNeeded::NoMeter));
}

#[test]
fn nothing_is_held_for_a_day_before_a_day_is_over() {
    let story = mended().logged(Place::Freezer, (100, 100 + 20 * 60), sound_freezer);
    assert_eq!(state(&story, ProofPoint::TargetReached), ProofState::Done);
    let (what, takes) = missing(&story, ProofPoint::HeldForADay);
    assert_eq!(what, Missing::Time);
    // It was there after some four hours.
    assert!((6.0 * 60.0..10.0 * 60.0).contains(&takes), "{takes}");
    assert_eq!(missing(&story, ProofPoint::NoTrips), (what, takes));
    assert_eq!(proof(&story).proven(), Proven::NotYet);
    assert!((proof(&story).takes().get() / 60.0 - takes).abs() < 1e-9);
}

#[test]
fn two_readings_a_day_apart_show_no_day() {
    let story = mended()
        .spot(400, Place::Freezer, "-19")
        .spot(400 + DAY, Place::Freezer, "-19");
    assert_eq!(missing(&story, ProofPoint::HeldForADay).0, Missing::Gap);
    let mut story = mended();
    for reading in 0..5 {
        story = story.spot(400 + reading * 400, Place::Freezer, "-19");
    }
    assert_eq!(missing(&story, ProofPoint::HeldForADay).0, Missing::Cycles);
}

#[test]
fn what_got_there_and_warmed_again_did_not_hold() {
    let fades = |minute: f64| sound_freezer(minute).max(-30.0 + minute / 60.0);
    let story = mended().logged(Place::Freezer, (100, 100 + 2 * DAY), fades);
    let failed = Failure::DidNotHold(Compartment::Freezer);
    assert_eq!(
        state(&story, ProofPoint::HeldForADay),
        ProofState::Failed(failed)
    );
    assert_eq!(proof(&story).proven(), Proven::Failed);
}

#[test]
fn a_day_without_the_target_has_failed_and_half_a_day_has_not() {
    let weak = |minute: f64| -14.0 + 34.0 * libm::exp(-minute / 100.0);
    let half = mended().logged(Place::Freezer, (100, 100 + DAY / 2), weak);
    let (what, takes) = missing(&half, ProofPoint::TargetReached);
    assert_eq!(what, Missing::Target(Compartment::Freezer));
    assert!((takes - 12.0 * 60.0).abs() < 6.0, "{takes}");
    let mut day = mended();
    for reading in 1..5 {
        day = day.spot(100 + reading * DAY / 4, Place::Freezer, "-14");
    }
    let failed = ProofState::Failed(Failure::TooWarm(Compartment::Freezer));
    assert_eq!(state(&day, ProofPoint::TargetReached), failed);
}

#[test]
fn two_starts_after_a_normal_rest_are_asked_since_the_start_device_is_new() {
    let changed = |story: Story| story.changed(Change::StartDevice).event(200, SwitchedOn);
    let before = found("chest-freezer", "manual-defrost")
        .tried(60, SetUp::Original, 7.0, Tried::Started)
        .tried(90, SetUp::Original, 8.0, Tried::Started);
    let story = changed(before);
    assert_eq!(missing(&story, ProofPoint::Restarts).0, Missing::Starts(2));
    let once = story.tried(300, SetUp::Original, 6.0, Tried::Started);
    assert_eq!(missing(&once, ProofPoint::Restarts).0, Missing::Starts(1));
    // After an hour's rest it is no restart.
    let long = once.tried(400, SetUp::Original, 60.0, Tried::Started);
    assert_eq!(missing(&long, ProofPoint::Restarts).0, Missing::Starts(1));
    let failed = long.tried(500, SetUp::Original, 7.0, Tried::HummedAndTripped);
    let no_start = ProofState::Failed(Failure::NoStart);
    assert_eq!(state(&failed, ProofPoint::Restarts), no_start);
}

#[test]
fn a_trip_fails_it_and_an_hour_unwatched_is_owed_again() {
    let story = mended().logged(Place::Freezer, (100, 100 + 2 * DAY), sound_freezer);
    let tripped = story.event(900, Tripped);
    let failed = ProofState::Failed(Failure::Tripped(1));
    assert_eq!(state(&tripped, ProofPoint::NoTrips), failed);
    let away = mended()
        .spot(110, Place::Freezer, "18")
        .spot(300, Place::Freezer, "-5");
    assert_eq!(
        missing(&away, ProofPoint::FirstTwoHours).0,
        Missing::StandBy
    );
    let mut by = mended();
    for look in 1..5 {
        by = by.spot(100 + look * 30, Place::Freezer, "5");
    }
    assert_eq!(state(&by, ProofPoint::FirstTwoHours), ProofState::Done);
}

#[test]
fn a_frost_free_machine_owes_a_defrost_until_one_was_seen_to_its_end() {
    let cold = || {
        let story = found("upright-freezer", "frost-free");
        stood_by(story.changed(Change::StartDevice).event(100, SwitchedOn))
            .tried(260, SetUp::Original, 7.0, Tried::Started)
            .tried(290, SetUp::Original, 8.0, Tried::Started)
            .with("seal", "answer", "drags-all-round")
            .logged(Place::Freezer, (100, 100 + 2 * DAY), sound_freezer)
    };
    assert_eq!(proof(&cold()).proven(), Proven::ColdDefrostNotProven);
    assert_eq!(
        missing(&cold(), ProofPoint::Defrost).0,
        Missing::DefrostBegin
    );
    let at = 100 + DAY;
    let began = cold().event(at, DefrostBegan);
    // That nobody noted an end is none that it didn't end.
    assert_eq!(missing(&began, ProofPoint::Defrost).0, Missing::DefrostEnd);
    let endless = began.event(at + 90, DefrostEnded);
    let failed = ProofState::Failed(Failure::DefrostWithoutEnd);
    assert_eq!(state(&endless, ProofPoint::Defrost), failed);
    let began = cold().event(at, DefrostBegan);
    let ended = began.event(at + 25, DefrostEnded);
    assert_eq!(
        missing(&ended, ProofPoint::Defrost).0,
        Missing::DefrostWater
    );
    let water = ended.event(at + 30, DefrostWater);
    let on = water.event(at + 40, CompressorOn);
    assert_eq!(state(&on, ProofPoint::Defrost), ProofState::Done);
    assert_eq!(proof(&on).proven(), Proven::All);
}

#[test]
fn a_seal_that_was_replaced_is_looked_at_again() {
    let leaks = mended().with("seal", "answer", "stands-off");
    let failed = ProofState::Failed(Failure::SealLeaks);
    assert_eq!(state(&leaks, ProofPoint::Seal), failed);
    let replaced = leaks.changed(Change::Seal);
    assert_eq!(missing(&replaced, ProofPoint::Seal).0, Missing::SealLook);
    let looked = replaced.with("seal", "answer", "drags-all-round");
    assert_eq!(state(&looked, ProofPoint::Seal), ProofState::Done);
}

#[test]
fn a_machine_whose_gas_may_be_out_is_not_run_for_proof() {
    for gas in ["r600a", "other-or-unreadable"] {
        let mut story = mended().with("refrigerant", "plate", gas);
        story.tick("look-over", "signs", &["oil-stain"]);
        let found = proof(&story);
        assert_eq!(found.held_back, Some(HeldBack::GasMayBeOut), "{gas}");
        assert_eq!((found.items.len(), found.proven()), (0, Proven::HeldBack));
    }
}

#[test]
fn degrees_in_doubt_prove_nothing() {
    let fahrenheit = |minute: f64| sound_freezer(minute) * 1.8 + 32.0;
    let story = mended().logged(Place::Freezer, (100, 100 + 2 * DAY), fahrenheit);
    let owed = missing(&story, ProofPoint::TargetReached);
    assert_eq!(owed, (Missing::Scale, 0.0));
}

#[test]
fn nothing_is_due_before_anything_was_done() {
    let story = found("chest-freezer", "manual-defrost");
    assert_eq!(story.now().proof, None);
}
