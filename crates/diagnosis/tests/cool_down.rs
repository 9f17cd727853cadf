//! What a cool-down says, told as stories.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used, clippy::panic)]

mod story;

use diagnosis::{Change, Clue, ColdSign, Compartment, CoolDown, Item, ScaleDoubt, Task};
use job::{ColdEventKind, Place};
use measure::cool_down::{CoolDownError, Verdict};
use story::{Story, moment};

use ColdEventKind::{
    CompressorOff, CompressorOn, DefrostBegan, DefrostEnded, SetPointChanged, SwitchedOff,
    SwitchedOn, Tripped,
};

fn of(story: &Story, minute: i64) -> CoolDown {
    CoolDown::of(&story.job, moment(minute)).unwrap()
}

/// From 20 °C towards an end, most of the way in so many minutes.
fn towards(end: f64, minutes: f64) -> impl Fn(f64) -> f64 {
    move |minute| end + (20.0 - end) * libm::exp(-minute / minutes)
}

fn switched_on() -> Story {
    Story::grounded("120-v-60-hz").event(100, SwitchedOn)
}

fn verdict(story: &Story, minute: i64) -> Verdict {
    let found = of(story, minute);
    let course = found.course(Compartment::Freezer).unwrap();
    course.foretold().unwrap().verdict
}

#[test]
fn a_freezer_on_its_way_will_get_there_and_one_that_stops_short_will_not() {
    let good = switched_on().logged(Place::Freezer, (100, 820), towards(-25.0, 120.0));
    let said = verdict(&good, 820);
    assert!(matches!(said, Verdict::WillReach { .. }), "{said:?}");
    let weak = switched_on().logged(Place::Freezer, (100, 400), towards(-4.0, 70.0));
    assert!(matches!(verdict(&weak, 400), Verdict::WillNot { .. }));
    // Half an hour in nobody knows.
    let early = switched_on().logged(Place::Freezer, (100, 135), towards(-25.0, 120.0));
    assert!(matches!(verdict(&early, 135), Verdict::TooEarly { .. }));
}

#[test]
fn a_few_minutes_foretell_nothing() {
    let brief = switched_on().logged(Place::Freezer, (100, 125), towards(-25.0, 120.0));
    let found = of(&brief, 130);
    let course = found.course(Compartment::Freezer).unwrap();
    let Some(Err(CoolDownError::TooShort { .. })) = course.forecast else {
        panic!("{:?}", course.forecast);
    };
}

#[test]
fn what_went_before_the_last_change_or_the_last_switching_on_was_another_run() {
    let weak = switched_on().logged(Place::Freezer, (100, 400), towards(-4.0, 70.0));
    let changed = weak.changed(Change::Condenser);
    assert_eq!(CoolDown::of(&changed.job, moment(500)), None);
    let again = changed.event(500, SwitchedOn);
    let again = again.logged(Place::Freezer, (500, 1_220), towards(-25.0, 120.0));
    let found = of(&again, 1_220);
    assert_eq!(found.began, moment(500));
    let points = &found.course(Compartment::Freezer).unwrap().points;
    assert_eq!(points.first().unwrap().0, moment(500));
    assert!(matches!(verdict(&again, 1_220), Verdict::WillReach { .. }));
}

#[test]
fn what_was_read_after_it_was_switched_off_is_no_part_of_it() {
    let story = switched_on()
        .logged(Place::Freezer, (100, 600), towards(-25.0, 120.0))
        .event(400, SwitchedOff);
    let found = of(&story, 900);
    assert_eq!(found.ended, Some(moment(400)));
    let last = found
        .course(Compartment::Freezer)
        .unwrap()
        .latest()
        .unwrap();
    assert_eq!(last.0, moment(400));
}

#[test]
fn a_chest_freezer_has_no_fresh_food_and_a_fridge_freezer_has_both() {
    let both = |kind: &str| {
        let story = switched_on()
            .with("machine", "kind", kind)
            .logged(Place::Freezer, (200, 500), towards(-25.0, 120.0))
            .logged(Place::FreshFood, (200, 500), towards(3.0, 90.0));
        of(&story, 500).courses.len()
    };
    assert_eq!(both("chest-freezer"), 1);
    assert_eq!(both("fridge-freezer"), 2);
    assert_eq!(both("refrigerator"), 1);
}

#[test]
fn degrees_fahrenheit_are_asked_about_and_nothing_is_foretold_from_them() {
    let fahrenheit = |celsius: f64| celsius * 1.8 + 32.0;
    let course = towards(-20.0, 120.0);
    let read = |minute| fahrenheit(course(minute));
    let story = switched_on().logged(Place::Freezer, (100, 500), read);
    let found = of(&story, 500);
    let Some(ScaleDoubt::TooWarm { place, shown }) = found.doubt else {
        panic!("{:?}", found.doubt);
    };
    assert_eq!(place, Place::Freezer);
    assert!((shown.get() - 68.0).abs() < 0.1);
    assert_eq!(found.courses[0].forecast, None);
    // Looked at once it was cold: 0 °F is what it should be.
    let late = switched_on().logged(Place::Freezer, (900, 1_200), |_| 0.5);
    let doubt = of(&late, 1_200).doubt;
    assert!(
        matches!(doubt, Some(ScaleDoubt::StandsNearZero { .. })),
        "{doubt:?}"
    );
    // A room of 70 °F.
    let room = switched_on().spot(110, Place::Room, "70");
    assert!(matches!(
        of(&room, 120).doubt,
        Some(ScaleDoubt::TooWarm {
            place: Place::Room,
            ..
        })
    ));
    let both = switched_on()
        .with("machine", "kind", "fridge-freezer")
        .spot(900, Place::Freezer, "2")
        .spot(900, Place::FreshFood, "38");
    assert!(matches!(
        of(&both, 901).doubt,
        Some(ScaleDoubt::FarApart { .. })
    ));
}

#[test]
fn a_weak_freezer_that_was_seen_warm_is_believed_in_celsius() {
    let weak = switched_on().logged(Place::Freezer, (100, 700), towards(0.0, 70.0));
    assert_eq!(of(&weak, 700).doubt, None);
    let with_unit = switched_on().spot(110, Place::Room, "70 °F");
    assert_eq!(of(&with_unit, 120).doubt, None);
}

#[test]
fn trips_short_runs_and_a_defrost_without_end_are_seen() {
    let mut story = switched_on();
    for run in 0..4 {
        let minute = 110 + run * 20;
        story = story.event(minute, CompressorOn).event(minute + 4, Tripped);
    }
    let signs = of(&story, 300).signs;
    assert!(signs.contains(&ColdSign::TripsAgainAndAgain { times: 4 }));
    assert!(signs.contains(&ColdSign::ShortRuns { runs: 4 }));
    let long = switched_on().event(200, DefrostBegan);
    assert_eq!(of(&long, 255).signs, []);
    let since = moment(200);
    let endless = ColdSign::DefrostDoesNotEnd { since };
    assert_eq!(of(&long, 270).signs, [endless]);
    let ended = long.event(225, DefrostEnded);
    assert_eq!(of(&ended, 270).signs, []);
}

#[test]
fn a_cold_machine_may_run_as_briefly_as_it_likes() {
    let mut story = switched_on().spot(600, Place::Freezer, "-19");
    for run in 0..4 {
        let minute = 610 + run * 30;
        story = story
            .event(minute, CompressorOn)
            .event(minute + 8, CompressorOff);
    }
    assert_eq!(of(&story, 800).signs, []);
}

#[test]
fn a_control_that_was_moved_is_told() {
    let story = switched_on().event(300, SetPointChanged);
    let at = moment(300);
    assert_eq!(of(&story, 400).signs, [ColdSign::ControlMoved { at }]);
}

#[test]
fn a_struck_entry_counts_nothing() {
    let story = switched_on().spot(200, Place::Freezer, "-20");
    let entry = story.job.entries().len() - 1;
    let struck = story.strike(entry);
    assert!(of(&struck, 300).courses.is_empty());
}

/// That nothing is wrong, by everything weighed together.
fn sound(story: &Story) -> f64 {
    story.now().whole.unwrap().nothing_wrong.probability
}

/// What comes next holds the check of both compartments.
fn asks_for_temperatures(story: &Story) -> bool {
    let task = Task::Clue(Clue::Temperatures);
    let whole = story.now().whole.unwrap();
    whole.next.iter().any(|one| one.task == task) || !task.asks(&story.job).is_empty()
}

/// It was heard running, so that a course says nothing of that.
fn running() -> Story {
    switched_on().with("power-up", "answer", "runs")
}

#[test]
fn a_course_stands_for_the_words_and_weighs_as_surely_as_it_is_known() {
    let bare = running();
    // As long as it takes until no food is left to freeze: until then it may end colder yet.
    let weak = || running().logged(Place::Freezer, (100, 1_060), towards(-4.0, 70.0));
    let good = running().logged(Place::Freezer, (100, 500), towards(-24.0, 110.0));
    let brief = running().logged(Place::Freezer, (100, 135), towards(-24.0, 110.0));
    let before = sound(&bare);
    // It weighs about as much as the word for what it shows.
    let word = |word: &str| sound(&running().with("temperatures", "answer", word));
    let against = sound(&weak()) / word("half-cold");
    assert!((0.7..1.5).contains(&against), "{against}");
    assert!(
        sound(&weak()) < before / 2.0,
        "{} {} {before}",
        sound(&weak()),
        word("half-cold")
    );
    let with = sound(&good) / word("both-near-target");
    assert!((0.7..1.2).contains(&with), "{with}");
    assert!(sound(&good) > before * 1.5, "{} of {before}", sound(&good));
    // Half an hour says less than half of what six hours do.
    let says = |story: &Story| libm::log(sound(story) / before).abs();
    assert!(says(&brief) < says(&good) / 2.0, "{}", says(&brief));
    assert!(asks_for_temperatures(&bare));
    assert!(!asks_for_temperatures(&good));
    // The word for the same counts no more.
    let told = weak().with("temperatures", "answer", "both-near-target");
    assert!((sound(&told) - sound(&weak())).abs() < 1e-12);
}

#[test]
fn what_gets_no_colder_may_not_have_run() {
    let before = sound(&switched_on());
    let flat = switched_on().logged(Place::Freezer, (100, 500), |_| 20.0);
    assert!(sound(&flat) < before, "{} of {before}", sound(&flat));
}

#[test]
fn degrees_in_doubt_and_another_setting_weigh_nothing() {
    let before = sound(&switched_on());
    let fahrenheit = switched_on().logged(Place::Freezer, (900, 1_200), |_| 0.5);
    assert!((sound(&fahrenheit) - before).abs() < 1e-12);
    let moved = switched_on()
        .logged(Place::Freezer, (100, 500), towards(-4.0, 70.0))
        .event(300, SetPointChanged);
    assert!((sound(&moved) - before).abs() < 1e-12);
}

#[test]
fn a_change_parts_the_courses_and_the_earlier_one_still_tells_what_it_was() {
    let weak = switched_on().logged(Place::Freezer, (100, 500), towards(-4.0, 70.0));
    let mended = weak
        .changed(Change::SealedSystem)
        .event(600, SwitchedOn)
        .logged(Place::Freezer, (600, 1_000), towards(-24.0, 110.0));
    let whole = mended.now().whole.unwrap();
    let before = sound(&switched_on().logged(Place::Freezer, (100, 500), towards(-4.0, 70.0)));
    let after = whole.nothing_wrong.probability;
    assert!(after > 3.0 * before, "{after} of {before}");
}

#[test]
fn a_room_that_was_read_needs_no_asking() {
    let hot = switched_on().spot(120, Place::Room, "38");
    let task = Task::Clue(Clue::RoomTemperature);
    assert!(task.asks(&hot.job).is_empty());
    let found = hot.now().cool_down.unwrap();
    assert_eq!(found.room.map(quantity::Celsius::get), Some(38.0));
}

/// Where the freezer ends, and that it won't get there.
fn end(story: &Story, minute: i64) -> (f64, f64) {
    let found = of(story, minute);
    let foretold = found.course(Compartment::Freezer).unwrap();
    let foretold = foretold.foretold().unwrap().clone();
    (
        foretold.end.median.get(),
        foretold.chance_below(quantity::Celsius::new(-18.0)),
    )
}

/// An hour of one that goes towards −20 °C.
fn an_hour() -> Story {
    switched_on().logged(Place::Freezer, (100, 160), towards(-20.0, 200.0))
}

#[test]
fn a_coil_no_colder_than_the_air_makes_a_warm_end_likelier_and_one_read_before_says_nothing() {
    let coil =
        |minute: i64, shown: &str| end(&an_hour().spot(minute, Place::Evaporator, shown), 160);
    let before = end(&an_hour(), 160);
    let feeble = coil(158, "9.0");
    assert!(feeble.0 > before.0, "{feeble:?} of {before:?}");
    assert!(feeble.1 < before.1 - 0.1, "{feeble:?} of {before:?}");
    let strong = coil(158, "0.5");
    assert!(strong.1 > feeble.1 + 0.1, "{strong:?} of {feeble:?}");
    assert_eq!(coil(90, "9.0"), before);
}

#[test]
fn few_watts_make_a_warm_end_likelier_and_those_of_another_time_say_nothing() {
    let chest = || an_hour().with("machine", "kind", "chest-freezer");
    let read = |minute: i64, watts: &str| {
        let mut story = chest();
        story.later(minute);
        end(&story.item(Item::LateWatts, watts), 160)
    };
    let before = end(&chest(), 160);
    let few = read(150, "35");
    assert!(few.1 < before.1 - 0.1, "{few:?} of {before:?}");
    let usual = read(150, "95");
    assert!(usual.1 >= before.1 - 0.02, "{usual:?} of {before:?}");
    assert_eq!(read(50, "35"), before);
}
