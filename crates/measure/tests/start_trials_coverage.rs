//! Intervals and chosen rests on machines drawn from the stated prior, from a fixed seed.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used)]

mod drawn;
mod draws;

use drawn::{Machine, width};
use draws::Draws;
use measure::start_trials::{StartBelief, StartKind, StartPrior, Trial, Waiting};
use quantity::{Ratio, Seconds};

const MACHINES: usize = 2_000;
const TRIALS: usize = 3;

/// Three rests chosen one by one, and what they cost.
fn chosen(machine: &Machine, prior: &StartPrior, draws: &mut Draws) -> (StartBelief, Seconds) {
    let mut trials: Vec<Trial> = Vec::new();
    let mut waited = Seconds::new(0.0);
    for _ in 0..TRIALS {
        let belief = StartBelief::of(&trials, prior);
        let next = belief.next_rest(&Waiting::default()).unwrap();
        waited = waited + next.rest;
        trials.push(machine.tried(next.rest, draws));
    }
    (StartBelief::of(&trials, prior), waited)
}

/// Three rests fixed beforehand, each twice the one before, of the same total.
fn fixed(machine: &Machine, prior: &StartPrior, total: Seconds, draws: &mut Draws) -> StartBelief {
    let trials: Vec<Trial> = [1.0, 2.0, 4.0]
        .iter()
        .map(|part| machine.tried(total * (part / 7.0), draws))
        .collect();
    StartBelief::of(&trials, prior)
}

fn median(mut values: Vec<f64>) -> f64 {
    values.sort_by(f64::total_cmp);
    values[values.len() / 2]
}

#[test]
fn nine_in_ten_intervals_hold_the_truth_with_rests_chosen_one_by_one() {
    for kind in StartKind::ALL {
        let prior = kind.prior(false);
        let mut draws = Draws::new(1913);
        let mut held = 0;
        for _ in 0..MACHINES {
            let machine = Machine::draw(&prior, &mut draws);
            let (belief, _) = chosen(&machine, &prior, &mut draws);
            held += usize::from(machine.lies_in(&belief.threshold()));
        }
        let share = held as f64 / MACHINES as f64;
        println!(
            "{kind:?}: {:.1} % of intervals hold the truth",
            share * 100.0
        );
        assert!((0.87..=0.93).contains(&share), "{kind:?}: {share}");
    }
}

#[test]
fn chosen_rests_tell_more_than_fixed_ones_of_the_same_total() {
    let prior = StartKind::Ptc.prior(false);
    let mut draws = Draws::new(1917);
    let machines: Vec<Machine> = (0..MACHINES)
        .map(|_| Machine::draw(&prior, &mut draws))
        .collect();
    let ours: Vec<(StartBelief, Seconds)> = machines
        .iter()
        .map(|machine| chosen(machine, &prior, &mut draws))
        .collect();
    let waited: f64 = ours.iter().map(|(_, waited)| waited.get()).sum();
    let total = Seconds::new(waited / MACHINES as f64);
    println!("mean total of rests: {:.1} min", total.get() / 60.0);
    let theirs: Vec<StartBelief> = machines
        .iter()
        .map(|machine| fixed(machine, &prior, total, &mut draws))
        .collect();
    let ratio = |band: &dyn Fn(f64) -> bool| {
        let widths = |belief: &dyn Fn(usize) -> f64| {
            let places = (0..MACHINES).filter(|&place| band(machines[place].log_threshold));
            median(places.map(belief).collect())
        };
        let chosen = widths(&|place| width(&ours[place].0.threshold()));
        let fixed = widths(&|place| width(&theirs[place].threshold()));
        println!(
            "chosen {chosen:.2}, fixed {fixed:.2}, ratio {:.2}",
            chosen / fixed
        );
        chosen / fixed
    };
    let minutes = |log: f64| libm::exp(log) / 60.0;
    for (from, to) in [
        (0.0, 2.0),
        (2.0, 6.0),
        (6.0, 12.0),
        (12.0, 240.0),
        (240.0, f64::INFINITY),
    ] {
        print!("truth {from} to {to} min: ");
        ratio(&|log| minutes(log) >= from && (minutes(log) < to || to.is_infinite()));
    }
    print!("all: ");
    assert!(ratio(&|_| true) < 1.0);
}

#[test]
fn without_places_beside_the_density_the_share_held_is_the_same() {
    let none = Ratio::new(0.0);
    let prior = StartPrior {
        at_once: none,
        not_hot: none,
        not_even_cold: none,
        ..StartPrior::default()
    };
    let mut draws = Draws::new(1911);
    let mut held = 0;
    for _ in 0..MACHINES {
        let machine = Machine::draw(&prior, &mut draws);
        let (belief, _) = chosen(&machine, &prior, &mut draws);
        held += usize::from(machine.lies_in(&belief.threshold()));
    }
    let share = held as f64 / MACHINES as f64;
    println!("{:.1} % of intervals hold the truth", share * 100.0);
    assert!((0.87..=0.93).contains(&share), "{share}");
}
