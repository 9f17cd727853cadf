//! Random sound motors and random faults, a smaller sample of what
//! `cargo run --release -p coldcase-tests --example motors` counts.
//!
//! A rate that the program promises is held to be broken only where luck alone would bring as
//! many misses in fewer than one of a thousand samples.

use coldcase_tests::motors::{Kind, Noting, RatioSpread, Score, Trial};

const NOTED: Noting = Noting::Everything { wrong: 0.01 };

fn score(kind: Kind, noting: Noting, machines: u32, seed: u64) -> Score {
    let spread = RatioSpread::Stated;
    let trial = Trial {
        kind,
        spread,
        noting,
    };
    Score::of(trial, machines, seed)
}

/// The most misses that a true rate brings in all but one of a thousand samples (Poisson).
fn most_misses(of: u32, rate: f64) -> u32 {
    let mean = f64::from(of) * rate;
    let mut probability = libm::exp(-mean);
    let mut below = probability;
    let mut misses = 0;
    while below < 0.999 {
        misses += 1;
        probability *= mean / f64::from(misses);
        below += probability;
    }
    misses
}

fn misses_are_luck(what: &str, misses: u32, of: u32, rate: f64) {
    let most = most_misses(of, rate);
    assert!(
        misses <= most,
        "{what}: {misses} misses of {of}, {most} at the most"
    );
}

#[test]
fn the_allowance_for_luck_is_that_of_the_poisson_distribution() {
    // P(X > 10 | mean 4) = 0.0028 and P(X > 11 | mean 4) = 0.0009: tables of the Poisson
    // distribution.
    assert_eq!(most_misses(4000, 0.001), 11);
}

#[test]
fn pins_of_sound_motors_are_right_and_never_wrong_while_sure() {
    let noted = score(Kind::Sound, NOTED, 2000, 101);
    let bare = score(Kind::Sound, Noting::Nothing, 2000, 102);
    let mut all = noted;
    all.merge(&bare);
    assert_eq!(all.machines, 4000);
    misses_are_luck(
        "common pin",
        all.machines - all.common_right,
        all.machines,
        0.001,
    );
    misses_are_luck(
        "all three, noted",
        noted.machines - noted.all_right,
        noted.machines,
        0.005,
    );
    misses_are_luck(
        "wrong while sure",
        all.wrong_while_sure,
        all.machines,
        0.001,
    );
    // Being sure of nothing would pass all of the above.
    assert!(
        noted.share(noted.sure) > 0.85,
        "sure of {}",
        noted.share(noted.sure)
    );
    assert!(
        bare.share(bare.sure) > 0.30,
        "sure of {}",
        bare.share(bare.sure)
    );
}

#[test]
fn what_is_said_to_be_so_sure_is_so_often_true() {
    let score = score(Kind::Sound, Noting::Nothing, 10_000, 103);
    for decile in &score.calibration.deciles {
        let allowed = 0.02 + 3.3 * decile.standard_error();
        assert!(decile.machines > 300, "too few: {decile:?}");
        assert!(allowed < 0.12, "the sample says too little: {decile:?}");
        assert!(decile.gap().abs() < allowed, "{} {decile:?}", decile.gap());
    }
}

#[test]
fn an_open_winding_is_never_taken_for_a_sound_motor() {
    for kind in [Kind::CommonOpen, Kind::StartOpen, Kind::RunOpen] {
        for (noting, seed) in [(Noting::Nothing, 104), (NOTED, 105)] {
            let score = score(kind, noting, 500, seed);
            assert!(score.taken_for(Kind::Sound) == 0.0, "{kind:?}");
        }
    }
}

#[test]
fn with_the_wiring_noted_the_open_part_is_named() {
    for kind in [Kind::CommonOpen, Kind::StartOpen, Kind::RunOpen] {
        let score = score(kind, NOTED, 500, 106);
        assert!(
            score.taken_for(kind) > 0.95,
            "{kind:?} {}",
            score.taken_for(kind)
        );
    }
}

#[test]
fn three_equal_windings_are_recognised_and_sound_ones_not_taken_for_them() {
    let equal = score(Kind::EqualWindings, Noting::Nothing, 500, 107);
    assert!(equal.taken_for(Kind::EqualWindings) > 0.95);
    let sound = score(Kind::Sound, Noting::Nothing, 2000, 108);
    assert!(sound.taken_for(Kind::EqualWindings) == 0.0);
}
