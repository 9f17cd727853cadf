//! What has to hold of every cool-down: what is left out, what is seen, and how long it may take.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used)]

use measure::cool_down::{CabinetKind, CoolDown, Goal, Reach, Sign, TemperatureAt, Verdict};
use quantity::{Celsius, Seconds};

const GOAL: Goal = Goal {
    target: Celsius::new(-18.0),
    within: Seconds::new(86_400.0),
};

/// From 22 °C with 2.5 h after five minutes, a reading each two minutes, with a ripple of its own.
fn readings(end: f64, hours: f64, besides: impl Fn(f64) -> f64) -> Vec<TemperatureAt> {
    (0..=(hours * 30.0) as u32)
        .map(|place| {
            let hours = f64::from(place) / 30.0;
            let left = libm::exp(-(hours - 1.0 / 12.0).max(0.0) / 2.5);
            let ripple = 0.3 * libm::sin(hours * 37.0);
            TemperatureAt {
                at: Seconds::new(hours * 3600.0),
                temperature: Celsius::new(end + (22.0 - end) * left + ripple + besides(hours)),
            }
        })
        .collect()
}

fn nothing(_: f64) -> f64 {
    0.0
}

fn freezer(readings: &[TemperatureAt]) -> CoolDown {
    CoolDown::of(readings, &CabinetKind::ChestFreezer.prior()).unwrap()
}

#[test]
fn a_sound_freezer_will_and_a_warm_one_will_not() {
    let sound = freezer(&readings(-26.0, 8.0, nothing));
    assert!(matches!(sound.verdict(&GOAL), Verdict::WillReach { .. }));
    assert!(matches!(sound.reach(&GOAL).to, Reach::After(_)));
    assert_eq!(sound.signs(&GOAL), []);
    let warm = freezer(&readings(-6.0, 10.0, nothing));
    assert!(matches!(warm.verdict(&GOAL), Verdict::WillNot { .. }));
    assert_eq!(warm.reach(&GOAL).from, Reach::Beyond);
    println!(
        "{:?} {:?} {:?}",
        warm.end(),
        warm.time_constant(),
        warm.noise()
    );
    assert!(warm.signs(&GOAL).contains(&Sign::PlateauTooWarm));
}

#[test]
fn half_an_hour_of_an_ordinary_course_is_too_early() {
    let early = freezer(&readings(-22.0, 0.5, nothing));
    assert!(matches!(early.verdict(&GOAL), Verdict::TooEarly { .. }));
}

#[test]
fn bands_narrow_as_the_log_grows() {
    let widths = [0.5, 2.0, 6.0].map(|hours| {
        let end = freezer(&readings(-24.0, hours, nothing)).end();
        end.to.get() - end.from.get()
    });
    assert!(widths[0] > widths[1] && widths[1] > widths[2], "{widths:?}");
}

#[test]
fn a_defrost_and_a_door_hardly_move_the_end() {
    let plain = freezer(&readings(-24.0, 8.0, nothing));
    let disturbed = freezer(&readings(-24.0, 8.0, |hours| {
        let defrost = if (5.0..5.5).contains(&hours) {
            12.0
        } else {
            0.0
        };
        let door = if (3.0..3.1).contains(&hours) {
            9.0
        } else {
            0.0
        };
        defrost + door
    }));
    assert!(disturbed.left_out().get() > 0.05);
    let off = disturbed.end().median.get() - plain.end().median.get();
    assert!(off.abs() < 1.0, "{off}");
}

#[test]
fn one_that_gives_up_is_seen_to() {
    let failing = |hours: f64| 6.0 * (hours - 5.0).max(0.0);
    let found = freezer(&readings(-24.0, 7.0, failing));
    assert!(found.signs(&GOAL).contains(&Sign::WarmingAgain));
    let weaker = |hours: f64| 4.0 * (hours - 2.5).max(0.0);
    let found = freezer(&readings(-24.0, 4.0, weaker));
    assert!(found.signs(&GOAL).contains(&Sign::Slowing));
}

#[test]
fn a_hundred_thousand_readings_say_what_a_few_hundred_do() {
    let few = freezer(&readings(-24.0, 8.0, nothing));
    let many: Vec<TemperatureAt> = (0..100_000_u32)
        .map(|place| {
            let hours = f64::from(place) / 12_500.0;
            let left = libm::exp(-(hours - 1.0 / 12.0).max(0.0) / 2.5);
            let ripple = 0.3 * libm::sin(hours * 37.0);
            TemperatureAt {
                at: Seconds::new(hours * 3600.0),
                temperature: Celsius::new(-24.0 + 46.0 * left + ripple),
            }
        })
        .collect();
    let (few, many) = (few.end(), freezer(&many).end());
    let deviation = (few.to.get() - few.from.get()) / 3.29;
    let off = many.median.get() - few.median.get();
    println!("off by {off:.2} K of a standard deviation of {deviation:.2} K");
    assert!(off.abs() < 0.5 * deviation, "{off}");
}

#[test]
fn the_chance_to_get_there_grows_with_the_time_allowed_and_with_a_warmer_target() {
    let found = freezer(&readings(-20.0, 3.0, nothing));
    let chance = |target, hours: f64| {
        found.chance(&Goal {
            target: Celsius::new(target),
            within: Seconds::new(hours * 3600.0),
        })
    };
    assert!(chance(-18.0, 6.0) <= chance(-18.0, 12.0));
    assert!(chance(-18.0, 12.0) <= chance(-18.0, 48.0));
    assert!(chance(-18.0, 24.0) <= chance(-12.0, 24.0));
}

#[test]
fn a_thermometer_that_never_moves_is_no_reason_to_fail() {
    let still: Vec<TemperatureAt> = (0..=60)
        .map(|minute| TemperatureAt {
            at: Seconds::new(f64::from(minute) * 60.0),
            temperature: Celsius::new(21.0),
        })
        .collect();
    let found = freezer(&still);
    let chance = found.chance(&GOAL);
    assert!((0.0..=1.0).contains(&chance), "{chance}");
    assert!(found.end().median.get().is_finite());
}
