//! What is looked at before a part is fetched to be fitted.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod story;

use diagnosis::{Action, Check, Clue, Decided, Item, Task, Whole};
use measure::windings::Pair;
use story::Story;

/// A chest freezer that hums and clicks, clear at the plug, the same at another outlet.
fn hums() -> Story {
    let mut story = Story::grounded("120-v-60-hz")
        .with("machine", "complaint", "hums-then-clicks")
        .with("power-up", "answer", "hums-then-clicks")
        .with("click-interval", "answer", "no-click")
        .with("other-outlet", "answer", "same")
        .with("run-pattern", "answer", "never");
    story.tick("history", "known", &[]);
    story
}

fn whole(story: &Story) -> Whole {
    story.now().whole.expect("something is known")
}

#[test]
fn the_old_start_device_is_looked_at_before_a_new_one_is_fitted_to_see() {
    let whole = whole(&hums());
    assert_eq!(whole.verdict.best.action, Action::TestFit);
    assert_eq!(whole.verdict.decided, Decided::GoOn);
    assert_eq!(whole.next[0].task, Task::Check(Check::StartDevice));
}

#[test]
fn pins_without_a_leak_come_before_the_trial_that_they_open() {
    let sound = hums()
        .with("start-device", "start-device-kind", "ptc")
        .with("start-device", "start-device-looks", "whole")
        .item(Item::PtcReading, "6.1");
    assert_eq!(whole(&sound).next[0].task, Task::Check(Check::Shell));
    let measured = sound
        .item(Item::PinOneToShell, "OL")
        .item(Item::PinTwoToShell, "OL")
        .item(Item::PinThreeToShell, "OL")
        .with("windings", "start-gear", "off")
        .read(Pair::OneTwo, "5.1")
        .read(Pair::OneThree, "9.9")
        .read(Pair::TwoThree, "14.8");
    let whole = whole(&measured);
    assert_eq!(whole.verdict.decided, Decided::GoOn);
    assert_eq!(whole.next[0].task, Task::Clue(Clue::GoodDevice));
}
