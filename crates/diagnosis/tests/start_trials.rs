//! What tries to start say, and how they weigh with everything else.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used, clippy::panic)]

mod story;

use diagnosis::{Again, Clock, Clue, Fault, Item, Pause, StartTrials, Task};
use job::{Content, Entry, Id, Job, SetUp, Tried};
use measure::start_trials::{Knowledge, Place};
use story::{Story, moment};

use Tried::{HummedAndTripped, Silent, Started};

fn of(story: &Story, minute: i64) -> StartTrials {
    StartTrials::of(&story.job, moment(minute))
}

fn minutes(place: Place) -> f64 {
    match place {
        Place::AtOnce => 0.0,
        Place::After(rest) => rest.get() / 60.0,
        Place::Beyond => f64::INFINITY,
    }
}

/// Fails after 4 and 15 minutes, starts after 30, and with a kit after 3.
fn evening() -> Story {
    Story::grounded("120-v-60-hz")
        .with("machine", "complaint", "hums-then-clicks")
        .tried(100, SetUp::Original, 4.0, HummedAndTripped)
        .tried(115, SetUp::Original, 15.0, HummedAndTripped)
        .tried(140, SetUp::Original, 30.0, Started)
        .stopped(160)
        .tried(163, SetUp::Kit, 3.0, Started)
}

#[test]
fn failures_and_a_start_bound_the_rest_from_both_sides() {
    let trials = of(&evening(), 164);
    let found = trials.series(SetUp::Original).unwrap();
    assert_eq!(found.threshold.knowledge, Knowledge::Both);
    let median = minutes(found.threshold.median);
    assert!((12.0..30.0).contains(&median), "{median}");
    let zones = found.zones;
    assert!(zones.abnormal > 0.5 && zones.ordinary < 0.1, "{zones:?}");
    let kit = trials.series(SetUp::Kit).unwrap();
    assert_eq!(kit.threshold.knowledge, Knowledge::AtMost);
    let gain = kit.gain.unwrap();
    assert!(
        gain.median.get() > 2.0 && gain.chance_sooner > 0.95,
        "{gain:?}"
    );
    assert!(found.gain.is_none());
}

#[test]
fn a_silent_try_bounds_nothing() {
    let story = Story::grounded("120-v-60-hz").tried(100, SetUp::Original, 30.0, Silent);
    let trials = of(&story, 101);
    assert_eq!(trials.series[0].threshold.knowledge, Knowledge::Nothing);
}

#[test]
fn two_clocks_run_after_a_stop_and_a_failed_try_sets_back_only_the_second() {
    let story = Story::grounded("120-v-60-hz").stopped(100);
    let rests = |clock| match clock {
        Clock::Resting { turned, dead, .. } => {
            let minutes = |rest: job::Rest| rest.seconds().get() / 60.0;
            (minutes(turned), dead.map(minutes))
        }
        other => panic!("{other:?}"),
    };
    assert_eq!(rests(of(&story, 105).clock), (5.0, None));
    let story = story.tried(106, SetUp::Original, 6.0, HummedAndTripped);
    assert_eq!(rests(of(&story, 110).clock), (10.0, Some(4.0)));
    // Nothing was heard, so no current flowed.
    let story = story.tried(111, SetUp::Original, 11.0, Silent);
    assert_eq!(rests(of(&story, 112).clock), (12.0, Some(6.0)));
    let story = story.tried(120, SetUp::Original, 20.0, Started);
    assert_eq!(of(&story, 125).clock, Clock::Turning { since: moment(120) });
    let story = story.stopped(140);
    assert_eq!(rests(of(&story, 141).clock), (1.0, None));
}

#[test]
fn a_clock_that_was_set_back_is_noticed() {
    let story = Story::grounded("120-v-60-hz").stopped(100);
    let expected = Clock::SetBack {
        latest: moment(100),
    };
    assert_eq!(of(&story, 90).clock, expected);
    assert_eq!(of(&story, 100 + 8 * 24 * 60).clock, Clock::LongAgo);
    assert_eq!(
        of(&Story::grounded("120-v-60-hz"), 90).clock,
        Clock::NotStarted
    );
}

#[test]
fn after_three_failures_in_a_row_and_six_tries_an_hour_it_has_to_rest() {
    let mut story = Story::grounded("120-v-60-hz").stopped(100);
    for minute in [105, 106, 107] {
        assert_eq!(of(&story, minute).pause, None);
        story = story.tried(minute, SetUp::Original, 5.0, HummedAndTripped);
    }
    let until = moment(137);
    assert_eq!(of(&story, 110).pause, Some(Pause::ThreeInARow { until }));
    assert_eq!(of(&story, 138).pause, None);
    let mut story = Story::grounded("120-v-60-hz").stopped(100);
    for minute in [105, 110, 115, 120, 125, 130] {
        story = story.tried(minute, SetUp::Original, 5.0, Started);
    }
    let until = moment(165);
    assert_eq!(of(&story, 131).pause, Some(Pause::SixAnHour { until }));
}

#[test]
fn what_was_timed_is_weighed_and_not_asked_again() {
    let probability = |story: &Story, fault| {
        let whole = story.now().whole.unwrap();
        let found = whole.suspects.iter().find(|one| one.fault == Some(fault));
        found.map_or(0.0, |one| one.probability)
    };
    let before = Story::grounded("120-v-60-hz").with("machine", "complaint", "hums-then-clicks");
    let evening = evening();
    let whole = evening.now().whole.unwrap();
    for clue in [Clue::Restart, Clue::StartKit] {
        assert!(
            whole
                .next
                .iter()
                .all(|one| one.task != Task::Clue(clue) || one.again.is_some())
        );
    }
    // It starts, only late: nothing that never starts, and what starts hard all the more.
    let of = |fault| [&before, &evening].map(|story| probability(story, fault));
    let (seized, open) = (of(Fault::RotorSeized), of(Fault::StartDeviceOpen));
    let (tight, weak) = (of(Fault::RotorTight), of(Fault::StartDeviceWeak));
    assert!(seized[1] < 0.4 * seized[0], "{seized:?}");
    assert!(open[1] < open[0], "{open:?}");
    assert!(tight[1] > 1.2 * tight[0], "{tight:?}");
    assert!(weak[1] > 1.4 * weak[0], "{weak:?}");
}

#[test]
fn tries_count_for_more_than_the_same_thing_in_one_word() {
    let story = evening().with("restart", "answer", "within-minutes");
    let suspects = |story: &Story| story.now().whole.unwrap().suspects;
    assert_eq!(suspects(&story), suspects(&evening()));
}

#[test]
fn tries_before_a_new_start_device_were_made_with_another_machine() {
    let story = evening().with("change", "start-device", "replaced");
    assert!(of(&story, 200).series.is_empty());
    let story = story.tried(210, SetUp::Original, 4.0, Started);
    assert_eq!(of(&story, 211).series[0].tries.len(), 1);
}

#[test]
fn of_two_tries_at_one_time_both_are_kept() {
    let story = evening();
    let mut twice: Job = story.job.clone();
    let content = story.job.entries().last().unwrap().content.clone();
    let id = Id::new("from-another-tab").unwrap();
    let at = moment(163);
    twice
        .add(Entry {
            id,
            at,
            content: content.clone(),
        })
        .unwrap();
    let trials = StartTrials::of(&twice, moment(164));
    assert_eq!(trials.series(SetUp::Kit).unwrap().tries.len(), 2);
    assert!(matches!(content, Content::Trial(_)));
}

/// What can't be undone doesn't rest on one try, and not on a third one either: each waits for
/// windings and device to cool.
#[test]
fn a_second_hum_on_a_good_device_stands_for_doing_it_again() {
    let offers = |story: &Story, minute: i64| {
        let whole = story.after(minute).whole.unwrap();
        let mut next = whole.next.into_iter();
        let found = next.find(|one| one.task == Task::Clue(Clue::GoodDevice));
        found.map(|one| one.again)
    };
    let mut once = Story::grounded("120-v-60-hz")
        .with("machine", "kind", "chest-freezer")
        .with("machine", "complaint", "hums-then-clicks")
        .with("machine", "told-by", "myself")
        .with("refrigerant", "plate", "r134a");
    for item in [
        Item::PinOneToShell,
        Item::PinTwoToShell,
        Item::PinThreeToShell,
    ] {
        once = once.item(item, "OL");
    }
    let once = once.tried(100, SetUp::Substitute, 720.0, HummedAndTripped);
    assert_eq!(offers(&once, 101), Some(Some(Again::RestsOnOne)));
    let twice = once.tried(135, SetUp::Substitute, 755.0, HummedAndTripped);
    assert_eq!(offers(&twice, 136), None);
}
