//! When probes on the sealed circuit count, and what they say of the circuit itself.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used, clippy::panic)]

mod story;

use diagnosis::{Change, Circuit, Clue, Fault, Item, Task};
use job::{
    ColdEventKind::{CompressorOff, CompressorOn, DefrostBegan, SwitchedOn},
    Place,
};
use measure::refrigerant::{CycleError, LowSide, SaturationError};
use story::Story;

/// A fridge-freezer in a room of 22 °C that is switched on, and heard to start.
fn running() -> Story {
    switched_on().event(102, CompressorOn)
}

fn switched_on() -> Story {
    Story::grounded("120-v-60-hz")
        .with("machine", "kind", "fridge-freezer")
        .with("machine", "build", "frost-free")
        .event(100, SwitchedOn)
        .spot(101, Place::Room, "22.0")
}

fn chance(story: &Story, fault: Fault) -> f64 {
    let whole = story.now().whole.unwrap();
    let found = whole.suspects.iter().find(|one| one.fault == Some(fault));
    found.map_or(0.0, |one| one.probability)
}

/// A condenser as the room: nothing is pumped, if it runs.
fn cool_condenser(story: Story, minute: i64) -> Story {
    story.spot(minute, Place::Condenser, "22.5")
}

fn counts(story: &Story) -> bool {
    Circuit::of(&story.job).is_some()
}

#[test]
fn nothing_counts_before_it_has_run_for_a_quarter_of_an_hour_or_after_it_stopped() {
    assert!(!counts(&cool_condenser(running(), 116)));
    assert!(counts(&cool_condenser(running(), 118)));
    assert!(!counts(&cool_condenser(
        running().event(150, CompressorOff),
        160
    )));
    assert!(!counts(&cool_condenser(
        running().event(150, DefrostBegan),
        160
    )));
    assert!(!counts(&cool_condenser(running().stopped(150), 160)));
    let again = running().event(150, CompressorOff).event(170, CompressorOn);
    assert!(counts(&cool_condenser(again, 190)));
    // It never started, as far as anybody knows.
    assert!(!counts(&cool_condenser(switched_on(), 160)));
    let heard = switched_on().with("power-up", "answer", "runs");
    assert!(counts(&cool_condenser(heard, 160)));
    // A warm condenser tells that it runs.
    assert!(counts(&switched_on().spot(160, Place::Condenser, "34.0")));
}

#[test]
fn a_control_may_have_stopped_it_once_it_was_cold() {
    let cold = running().spot(300, Place::FreshFood, "3.0");
    assert!(!counts(&cool_condenser(cold, 320)));
    let cold = running()
        .spot(300, Place::FreshFood, "3.0")
        .event(310, CompressorOn);
    assert!(counts(&cool_condenser(cold, 330)));
}

#[test]
fn what_was_read_before_a_change_is_another_machines() {
    let changed = cool_condenser(running(), 160).changed(Change::SealedSystem);
    assert!(!counts(&changed));
    // It is off until somebody switches it on again.
    assert!(!counts(&changed.spot(200, Place::Condenser, "35.0")));
}

#[test]
fn what_does_not_count_weighs_nothing() {
    let bare = chance(&running(), Fault::ChargeGone);
    let early = chance(&cool_condenser(running(), 110), Fault::ChargeGone);
    assert!((early - bare).abs() < 1e-12);
    let settled = chance(&cool_condenser(running(), 160), Fault::ChargeGone);
    assert!(settled > 2.0 * bare, "{settled} of {bare}");
}

#[test]
fn a_probe_stands_for_the_hand_and_beside_a_hand_both_count() {
    let of = |clue: Clue, story: &Story| Task::Clue(clue).asks(&story.job).is_empty();
    let bare = running();
    let probed = running()
        .spot(160, Place::Condenser, "34.0")
        .spot(161, Place::DrierOutlet, "28.0")
        .spot(162, Place::SuctionLine, "17.0");
    for clue in [Clue::CondenserWarmth, Clue::Drier, Clue::SuctionLine] {
        assert!(!of(clue, &bare) && of(clue, &probed), "{clue:?}");
    }
    // Four kelvins: barely warm all over, or warm in its first tubes only.
    let between = || running().spot(160, Place::Condenser, "26.5");
    let felt = |answer| between().with("condenser-warmth", "answer", answer);
    let ratio = |story: &Story| {
        chance(story, Fault::ValvesWorn) / chance(story, Fault::CapillaryRestricted)
    };
    let (all_over, first) = (felt("barely-warm"), felt("first-part-warm"));
    assert!(ratio(&all_over) > 1.5 * ratio(&between()));
    assert!(ratio(&between()) > 1.5 * ratio(&first));
}

#[test]
fn a_probe_on_the_evaporator_is_a_hint_and_a_look_at_the_frost_replaces_it() {
    let task = Task::Clue(Clue::FrostPattern);
    let air = || running().spot(260, Place::Freezer, "5.0");
    // Before two hours a sound one is dry there too.
    let early = running().spot(160, Place::Freezer, "5.0");
    let early = early.spot(161, Place::Evaporator, "5.0");
    assert!(chance(&early, Fault::ChargeGone) < 1.3 * chance(&running(), Fault::ChargeGone));
    let dry = air().spot(261, Place::Evaporator, "5.0");
    let whole = dry.now().whole.unwrap();
    assert!(whole.next.iter().any(|one| one.task == task));
    assert!(!task.asks(&dry.job).is_empty());
    let bare = chance(&air(), Fault::ChargeGone);
    assert!(chance(&dry, Fault::ChargeGone) > 2.0 * bare);
    let looked = |story: Story| story.with("frost-pattern", "answer", "even");
    let (with, without) = (looked(dry), looked(air()));
    let off = chance(&with, Fault::ChargeGone) - chance(&without, Fault::ChargeGone);
    assert!(off.abs() < 1e-12);
}

/// Watts on the label of 120 W, and what they are held against.
fn watts(story: Story, watts: &str) -> Story {
    let mut story = story;
    story.later(230);
    story
        .item(Item::LateWatts, watts)
        .with("running", "label-of", "compressor")
        .item(Item::LabelWatts, "120")
}

#[test]
fn a_warm_cabinet_asks_for_somewhat_more_watts_than_a_cold_one() {
    let inside = |air: &str| running().spot(225, Place::Freezer, air);
    let dirt = |story: Story| {
        let before = chance(&story, Fault::CondenserMatted);
        chance(&watts(story, "165"), Fault::CondenserMatted) / before
    };
    // 165 of 120 W is far too much once it is cold, and less so while it is warm.
    let (cold, warm) = (dirt(inside("-15.0")), dirt(inside("8.0")));
    assert!(cold > 3.0 && cold > 1.4 * warm, "{cold} and {warm}");
}

#[test]
fn watts_that_a_cold_evaporator_explains_are_no_second_sign() {
    let cold = |evaporator: &str| {
        running()
            .spot(224, Place::Freezer, "-5.0")
            .spot(225, Place::Evaporator, evaporator)
    };
    let moved = |evaporator: &str| {
        let before = chance(&cold(evaporator), Fault::ChargeLow);
        chance(&watts(cold(evaporator), "72"), Fault::ChargeLow) / before
    };
    // 72 W of 120 W belong to −40 °C, and not to −20 °C.
    let (explained, unexplained) = (moved("-40.0"), moved("-20.0"));
    assert!((0.7..1.4).contains(&explained), "{explained}");
    assert!(unexplained > 1.5 * explained, "{unexplained}");
}

#[test]
fn the_circuit_is_told_from_both_surfaces() {
    let story = running()
        .with("refrigerant", "plate", "r600a")
        .spot(225, Place::Freezer, "-10.0")
        .spot(226, Place::Evaporator, "-27.0")
        .spot(227, Place::Condenser, "39.0");
    let found = Circuit::of(&watts(story, "45").job).unwrap();
    let cold = found.evaporating.as_ref().unwrap();
    let warm = found.condensing.as_ref().unwrap();
    assert!((cold.temperature.value().get() + 28.0).abs() < 1e-9);
    assert!((warm.temperature.value().get() - 40.0).abs() < 1e-9);
    assert_eq!((cold.by, warm.by), (Place::Evaporator, Place::Condenser));
    // R600a: 531.2 kPa at 40 °C and 51.2 kPa at −28 °C (CoolProp 8.0.0).
    let cycle = found.cycle.unwrap().unwrap();
    assert!((cycle.pressure_ratio.value().get() - 10.4).abs() < 0.1);
    assert_eq!(cycle.low_side, LowSide::BelowAtmosphere);
    // 45 W are less than any compressor takes that pumps at −28 °C and has 120 W on its label.
    let draw = found.draw.unwrap();
    let share = draw.share();
    assert!((share.value() + share.expanded()).get() < 1.0, "{share:?}");
}

#[test]
fn without_a_probe_on_the_condenser_the_room_tells_it_and_an_unknown_gas_tells_nothing() {
    let inside = |plate| {
        let story = running().with("refrigerant", "plate", plate);
        Circuit::of(&story.spot(226, Place::Evaporator, "-27.0").job).unwrap()
    };
    let known = inside("r134a");
    let warm = known.condensing.unwrap();
    // 10 to 20 K above the room.
    assert!((warm.temperature.value().get() - 37.0).abs() < 1e-9);
    assert_eq!(warm.by, Place::Room);
    assert!(known.cycle.unwrap().is_ok());
    let unknown = CycleError::Evaporating(SaturationError::UnknownRefrigerant);
    assert_eq!(inside("other-or-unreadable").cycle, Some(Err(unknown)));
}
