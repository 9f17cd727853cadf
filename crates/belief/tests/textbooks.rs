//! Networks whose posteriors are printed in the literature, to the digits printed there. The
//! digits are quoted from memory; the same networks are checked against other programs to 1e-9
//! in `outside.rs`.

// What prepares a test may stop it, as the test itself may.
#![allow(clippy::unwrap_used)]

mod support;

use belief::{Evidence, JunctionTree, Network};
use support::textbook::{alarm, chest_clinic, sprinkler};

/// The chance of the second state of a variable when others are seen in theirs.
fn chance(network: Network, of: &str, seen: &[(&str, usize)]) -> f64 {
    let mut evidence = Evidence::new();
    for (name, state) in seen {
        let variable = network.find(name).unwrap();
        evidence.observe(&network, variable, *state).unwrap();
    }
    let tree = JunctionTree::compile(network).unwrap();
    let mut workspace = tree.workspace();
    let posterior = tree.propagate(&evidence, &mut workspace).unwrap();
    posterior.marginal(tree.network().find(of).unwrap())[1]
}

fn assert_prints(found: f64, printed: f64, last_digit: f64) {
    assert!(
        (found - printed).abs() <= last_digit / 2.0 + 1e-12,
        "{found} is not {printed}"
    );
}

/// Russell and Norvig: both neighbours call, ⟨0.284, 0.716⟩.
#[test]
fn a_burglary_when_both_neighbours_call() {
    let seen = [("john_calls", 1), ("mary_calls", 1)];
    assert_prints(chance(alarm().unwrap(), "burglary", &seen), 0.284, 0.001);
}

/// Murphy: the lawn is wet.
#[test]
fn rain_and_the_sprinkler_explain_each_other_away() {
    let wet = [("wet", 1)];
    let with_rain = [("wet", 1), ("rain", 1)];
    assert_prints(chance(sprinkler().unwrap(), "wet", &[]), 0.6471, 0.0001);
    assert_prints(
        chance(sprinkler().unwrap(), "sprinkler", &wet),
        0.4298,
        0.0001,
    );
    assert_prints(chance(sprinkler().unwrap(), "rain", &wet), 0.7079, 0.0001);
    assert_prints(
        chance(sprinkler().unwrap(), "sprinkler", &with_rain),
        0.1945,
        0.0001,
    );
}

/// Lauritzen and Spiegelhalter: before anything is known of the patient, in per cent.
#[test]
fn the_chest_clinic_before_any_finding() {
    let printed = [
        ("tuberculosis", 1.04),
        ("cancer", 5.50),
        ("bronchitis", 45.0),
        ("either", 6.48),
        ("x_ray", 11.03),
        ("dyspnoea", 43.60),
    ];
    for (name, per_cent) in printed {
        assert_prints(
            chance(chest_clinic().unwrap(), name, &[]) * 100.0,
            per_cent,
            0.01,
        );
    }
}

/// Three doors, a host who knows: a puzzle whose answer everybody can count.
#[test]
fn changing_the_door_wins_two_times_in_three() {
    const DOORS: [&str; 3] = ["left", "middle", "right"];
    let third = [1.0 / 3.0; 3];
    let mut network = Network::new();
    let prize = network.prior("prize", &DOORS, &third).unwrap();
    let pick = network.prior("pick", &DOORS, &third).unwrap();
    let rows: Vec<[f64; 3]> = (0..9)
        .map(|place| {
            let (prize, pick) = (place / 3, place % 3);
            let free = (0..3).filter(|&door| door != prize && door != pick).count() as f64;
            [0, 1, 2].map(|door| {
                if door == prize || door == pick {
                    0.0
                } else {
                    1.0 / free
                }
            })
        })
        .collect();
    network
        .table("opened", &DOORS, &[prize, pick], &rows)
        .unwrap();
    let won_by_staying = chance(network, "prize", &[("pick", 1), ("opened", 0)]);
    assert!((won_by_staying - 1.0 / 3.0).abs() < 1e-12);
}
