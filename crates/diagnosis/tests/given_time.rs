//! To give a machine time and look again is advice until that was done.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used)]

mod story;

use diagnosis::{Action, Whole};
use job::{Answer, ColdEventKind, NotDone, Place};
use story::Story;

/// A combined machine that runs and stays warm, whose cabinet, fans and room are as they should be.
fn all_looks_right() -> Story {
    let looks = [
        ("machine", "kind", "fridge-freezer"),
        ("machine", "build", "inverter"),
        ("machine", "complaint", "runs-stays-warm"),
        ("machine", "told-by", "myself"),
        ("refrigerant", "plate", "r600a"),
        ("power-up", "answer", "runs"),
        ("evaporator-fan-air", "answer", "strong"),
        ("condenser-fan-air", "answer", "blows"),
        ("air-outlet", "answer", "blows"),
        ("lint", "answer", "clear"),
        ("condenser-warmth", "answer", "evenly-warm"),
        ("door-lamp", "answer", "goes-out"),
        ("run-pattern", "answer", "all-the-time"),
        ("seal", "answer", "drags-all-round"),
        ("drain", "answer", "clear"),
        ("coil-ice", "answer", "clear"),
        ("defrost-parts", "answer", "all-good"),
        ("other-outlet", "answer", "same"),
        ("door-switch", "answer", "both-follow"),
        ("modes-cleared", "answer", "no-change"),
        ("timer-by-hand", "answer", "no-change"),
    ];
    let story = looks.into_iter().fold(
        Story::grounded("120-v-60-hz"),
        |story, (check, item, said)| story.with(check, item, said),
    );
    story.event(100, ColdEventKind::SwitchedOn)
}

/// Half a day, half hour by half hour: the freezer goes to so many degrees, the fresh food to 4.
fn half_a_day(freezer: f64) -> Story {
    cooled(all_looks_right(), freezer)
}

fn cooled(story: Story, freezer: f64) -> Story {
    (1..=24).fold(story, |story, half_hours| {
        let keeps = libm::exp(-f64::from(half_hours) / 5.0);
        let minute = 100 + 30 * i64::from(half_hours);
        let typed = |end: f64| format!("{:.1}", end + (20.0 - end) * keeps);
        story.spot(minute, Place::Freezer, &typed(freezer)).spot(
            minute,
            Place::FreshFood,
            &typed(4.0),
        )
    })
}

/// The same, where nothing else can be done any more.
fn nothing_left(mut story: Story) -> Whole {
    let whole = story.now().whole.unwrap();
    for one in whole.next.iter().filter(|one| one.again.is_none()) {
        let cannot = Answer::NotDone(NotDone::NoTool);
        story.answer(one.task.name(), "answer", cannot);
    }
    story.now().whole.unwrap()
}

#[test]
fn a_freezer_that_half_a_day_left_half_cold_is_given_no_more_time() {
    for end in [-9.0, -10.0, -11.0] {
        let verdict = nothing_left(half_a_day(end)).verdict;
        assert_ne!(verdict.best.action, Action::WaitAndRepeat, "{verdict:?}");
    }
}

#[test]
fn one_that_got_there_is_watched_once_more_or_nothing_is_wrong() {
    let best = nothing_left(half_a_day(-21.0)).verdict.best;
    let time = [Action::WaitAndRepeat, Action::NothingToRepair];
    assert!(time.contains(&best.action), "{best:?}");
}

#[test]
fn nothing_is_given_up_for_time_in_vain_that_is_rather_sound() {
    let machines = [
        ("chest-freezer", "manual-defrost"),
        ("upright-freezer", "manual-defrost"),
        ("upright-freezer", "frost-free"),
        ("fridge-freezer", "frost-free"),
        ("fridge-freezer", "inverter"),
    ];
    for (kind, build) in machines {
        for end in (-18..=-6).step_by(2) {
            let story = Story::grounded("120-v-60-hz")
                .with("machine", "kind", kind)
                .with("machine", "build", build)
                .with("machine", "complaint", "runs-stays-warm")
                .with("machine", "told-by", "myself")
                .with("refrigerant", "plate", "r134a")
                .with("power-up", "answer", "runs")
                .event(100, ColdEventKind::SwitchedOn);
            let best = nothing_left(cooled(story, f64::from(end))).verdict.best;
            let gives_up = matches!(best.action, Action::Scrap | Action::LicensedWork);
            assert!(
                !gives_up || best.right >= 0.5,
                "{kind} {build} {end}: {best:?}"
            );
        }
    }
}
