//! What must hold for any trials of a set-up, and how long weighing many takes.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used)]

use std::time::Instant;

use measure::start_trials::{
    Knowledge, Outcome, Place, StartBelief, StartKind, StartPrior, Trial, Waiting,
};
use proptest::prelude::*;
use quantity::{Ratio, Seconds};

fn trial(rest: f64, outcome: Outcome) -> Trial {
    Trial::new(Seconds::new(rest), outcome).unwrap()
}

fn ptc() -> StartPrior {
    StartKind::Ptc.prior(false)
}

fn log(place: Place) -> f64 {
    match place {
        Place::AtOnce => 0.0,
        Place::After(rest) => libm::log(rest.get()),
        Place::Beyond => 20.0,
    }
}

fn outcome() -> impl Strategy<Value = Outcome> {
    prop_oneof![
        Just(Outcome::Started),
        Just(Outcome::HummedThenStarted),
        Just(Outcome::Failed)
    ]
}

fn trials() -> impl Strategy<Value = Vec<Trial>> {
    let one = (1.0..20_000.0f64, outcome(), any::<bool>(), 0.8..1.1f64);
    let one = one.prop_map(|(rest, outcome, cold, share)| {
        let trial = trial(rest, outcome).at_supply(Ratio::new(share)).unwrap();
        if cold { trial.from_cold() } else { trial }
    });
    proptest::collection::vec(one, 0..8)
}

proptest! {
    #[test]
    fn a_start_brings_the_threshold_down_and_a_failure_up(rest in 1.0..20_000.0f64) {
        let before = StartBelief::of(&[], &ptc()).threshold();
        let started = StartBelief::of(&[trial(rest, Outcome::Started)], &ptc()).threshold();
        let failed = StartBelief::of(&[trial(rest, Outcome::Failed)], &ptc()).threshold();
        for (down, middle, up) in [
            (started.from, before.from, failed.from),
            (started.median, before.median, failed.median),
            (started.to, before.to, failed.to),
        ] {
            prop_assert!(log(down) <= log(middle) + 1e-9 && log(middle) <= log(up) + 1e-9);
        }
    }

    #[test]
    fn the_order_of_trials_does_not_matter(trials in trials()) {
        let forwards = StartBelief::of(&trials, &ptc());
        let backwards: Vec<Trial> = trials.iter().rev().copied().collect();
        let backwards = StartBelief::of(&backwards, &ptc());
        for minutes in [1.0, 4.0, 15.0, 60.0] {
            let rest = Seconds::new(minutes * 60.0);
            let off = forwards.chance_after(rest) - backwards.chance_after(rest);
            prop_assert!(off.abs() < 1e-9);
        }
        prop_assert_eq!(forwards.threshold().knowledge, backwards.threshold().knowledge);
    }

    #[test]
    fn a_longer_rest_never_starts_less_often(trials in trials(), rest in 1.0..10_000.0f64) {
        let belief = StartBelief::of(&trials, &ptc());
        let (short, long) = (Seconds::new(rest), Seconds::new(rest * 1.3));
        prop_assert!(belief.chance_after(long) >= belief.chance_after(short) - 1e-12);
        prop_assert!((0.0..=1.0 + 1e-12).contains(&belief.chance_after(long)));
    }

    #[test]
    fn shares_of_zones_sum_to_one_and_the_interval_is_in_order(trials in trials()) {
        let belief = StartBelief::of(&trials, &ptc());
        let zones = belief.zones(StartKind::Ptc.bands(false));
        for share in [zones.ordinary, zones.grey, zones.abnormal] {
            prop_assert!((-1e-12..=1.0 + 1e-12).contains(&share));
        }
        let threshold = belief.threshold();
        prop_assert!(threshold.from <= threshold.median && threshold.median <= threshold.to);
    }

    #[test]
    fn what_hums_at_nothing_teaches_nothing(trials in trials(), rest in 1.0..10_000.0f64) {
        let mut more = trials.clone();
        more.push(trial(rest, Outcome::Silent));
        prop_assert_eq!(StartBelief::of(&more, &ptc()), StartBelief::of(&trials, &ptc()));
    }

    #[test]
    fn a_trial_from_cold_moves_no_threshold(rest in 3_600.0..80_000.0f64, outcome in outcome()) {
        let hot = [trial(300.0, Outcome::Failed), trial(900.0, Outcome::Started)];
        let mut with_cold = hot.to_vec();
        with_cold.push(trial(rest, outcome).from_cold());
        let prior = StartPrior { not_even_cold: Ratio::new(0.0), ..ptc() };
        let (one, other) = (StartBelief::of(&hot, &prior), StartBelief::of(&with_cold, &prior));
        for (one, other) in [
            (one.threshold().median, other.threshold().median),
            (one.threshold().to, other.threshold().to),
        ] {
            prop_assert!((log(one) - log(other)).abs() < 1e-9);
        }
        prop_assert_eq!(one.threshold().knowledge, other.threshold().knowledge);
        prop_assert_eq!(other.cold_start().trials, 1);
    }

    #[test]
    fn a_gain_turned_round_is_its_inverse(one in trials(), other in trials()) {
        let one = StartBelief::of(&one, &ptc());
        let other = StartBelief::of(&other, &StartKind::KitWithPtc.prior(false));
        let (there, back) = (one.gain_of(&other), other.gain_of(&one));
        prop_assert!((there.chance_sooner + back.chance_sooner - 1.0).abs() < 1e-9);
        prop_assert!(there.from <= there.median && there.median <= there.to);
        let turned = there.median.get() * back.median.get();
        // Where a median falls exactly between two steps, either may be told.
        prop_assert!((turned - 1.0).abs() < 0.1, "{turned}");
    }

    #[test]
    fn the_next_rest_keeps_within_its_bounds_and_tells_something(trials in trials()) {
        let belief = StartBelief::of(&trials, &ptc());
        let waiting = Waiting { longest: Seconds::new(1200.0), ..Waiting::default() };
        let next = belief.next_rest(&waiting).unwrap();
        prop_assert!(next.rest <= waiting.longest && next.rest >= waiting.shortest);
        prop_assert!(next.bits >= 0.0 && next.bits < libm::log2(3.0));
    }
}

#[test]
fn a_failure_on_low_voltage_says_less_of_the_threshold() {
    let failed = trial(400.0, Outcome::Failed);
    let low = failed.at_supply(Ratio::new(0.85)).unwrap();
    let median = |trial| log(StartBelief::of(&[trial], &ptc()).threshold().median);
    assert!(median(low) < median(failed) - 0.1);
}

#[test]
fn only_starts_are_at_most_only_failures_at_least() {
    let knowledge = |trials: &[Trial]| StartBelief::of(trials, &ptc()).threshold().knowledge;
    let started = trial(300.0, Outcome::HummedThenStarted);
    let failed = trial(200.0, Outcome::Failed);
    assert_eq!(knowledge(&[]), Knowledge::Nothing);
    assert_eq!(knowledge(&[started, started]), Knowledge::AtMost);
    assert_eq!(knowledge(&[failed]), Knowledge::AtLeast);
    assert_eq!(knowledge(&[failed, started]), Knowledge::Both);
    assert_eq!(knowledge(&[failed.from_cold()]), Knowledge::Nothing);
}

#[test]
fn a_hot_failure_is_no_cold_failure() {
    let hot = trial(180.0, Outcome::Failed);
    let after_hot = StartBelief::of(&[hot; 3], &ptc()).cold_start();
    let cold = trial(40_000.0, Outcome::Failed).from_cold();
    let after_cold = StartBelief::of(&[cold; 3], &ptc()).cold_start();
    assert!(after_hot.probability > 0.7, "{after_hot:?}");
    assert!(after_cold.probability < 0.001, "{after_cold:?}");
    assert_eq!((after_hot.trials, after_cold.trials), (0, 3));
}

#[test]
fn one_contradiction_leaves_many_trials_standing() {
    let mut trials = vec![trial(600.0, Outcome::Started); 5];
    trials.push(trial(3000.0, Outcome::Failed));
    let threshold = StartBelief::of(&trials, &ptc()).threshold();
    assert!(
        threshold.to < Place::After(Seconds::new(900.0)),
        "{threshold:?}"
    );
}

#[test]
fn no_rest_within_the_bounds_is_no_next_trial() {
    let waiting = Waiting {
        shortest: Seconds::new(4_000.0),
        ..Waiting::default()
    };
    assert_eq!(StartBelief::of(&[], &ptc()).next_rest(&waiting), None);
}

/// A page weighs everything anew at each entry. Measured on the machine it was written on: see
/// what it prints; the bound is about ten times as much, so that a busy machine doesn't fail.
#[test]
fn two_hundred_trials_are_weighed_at_once() {
    let outcomes = [Outcome::Failed, Outcome::Started];
    let trials: Vec<Trial> = (0..200)
        .map(|number| {
            trial(
                60.0 + 5.0 * f64::from(number),
                outcomes[number as usize / 100],
            )
        })
        .collect();
    let timed = || {
        let start = Instant::now();
        let belief = StartBelief::of(&trials, &ptc());
        let weighed = start.elapsed();
        let next = belief.next_rest(&Waiting::default());
        assert!(next.is_some() && belief.gain_of(&belief).chance_sooner > 0.4);
        (weighed, start.elapsed() - weighed)
    };
    let (weighed, rest) = (0..20).map(|_| timed()).min().unwrap();
    println!("200 trials {weighed:?}; next rest and gain {rest:?}");
    assert!(weighed.as_millis() < 5);
}
