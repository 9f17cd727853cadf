//! How large the networks become with changes: a gate, printed.

use super::build::Build;
use super::change::Change::{self, *};
use super::clue::Clue;
use super::entered::{Entered, Weight, with_aside};
use super::networks::{self, Assumptions};
use super::spanned::Spanned;
use crate::choice::Choice;

/// No network may have more entries.
const GATE: usize = 1_500_000;

const CHOICES: [[Change; 4]; 10] = [
    [StartDevice, Overload, Wiring, Capacitor],
    [Outlet, Control, Thermostat, StartDevice],
    [StartDevice, StartDevice, StartDevice, StartDevice],
    [Outlet, StartDevice, Thermostat, Condenser],
    [Condenser, Frost, EvaporatorFan, Seal],
    [Frost, DefrostHeater, DefrostTimer, Damper],
    [Board, Thermistor, Drive, EvaporatorFan],
    [Place, Condenser, CondenserFan, Seal],
    [StartDevice, StartGear, Overload, Compressor],
    [SealedSystem, SealedSystem, SealedSystem, SealedSystem],
];

/// Something seen of a clue, in a period.
fn seen(clue: Clue, period: usize) -> Entered {
    let mut weights = vec![f64::NEG_INFINITY; clue.answers().len()];
    weights[0] = 0.0;
    let mut one = Entered::new(clue.task(), with_aside(clue, weights));
    one.period = period;
    one
}

/// What the changes come to: the largest network's entries, and how many were folded.
fn spanned(
    assumptions: &Assumptions,
    build: Build,
    changes: &[Change],
    outcomes: &[Clue],
) -> (usize, usize) {
    let steps: Vec<Vec<Change>> = changes.iter().map(|change| vec![*change]).collect();
    let mut factors = [0.0; 3];
    factors[build.column()] = 1.0;
    let mut entered = vec![seen(Clue::OpeningSeen, 0)];
    entered[0].weights.push(Weight::Build(factors));
    for period in 0..=changes.len() {
        entered.extend(outcomes.iter().map(|clue| seen(*clue, period)));
    }
    let all = assumptions.networks().unwrap();
    let mut desk = networks::desk(&all);
    let odds = Build::odds(None);
    let spanned = Spanned::of(assumptions, odds, steps, entered, &mut desk).unwrap();
    let networks = spanned.networks();
    let sizes = networks.iter().map(|one| one.tree.sizes().total);
    (sizes.max().unwrap(), spanned.folded)
}

#[test]
fn four_changes_stay_small() {
    let assumptions = Assumptions::default();
    let usual = [Clue::PowerUp];
    let many = [
        Clue::PowerUp,
        Clue::PowerLevel,
        Clue::Temperatures,
        Clue::Restart,
    ];
    let mut worst = 0;
    for changes in &CHOICES {
        for &build in Build::ALL {
            for (looked, outcomes) in [("powered up", &usual[..]), ("looked at all over", &many)] {
                for count in [1, 2, 4] {
                    let (entries, folded) =
                        spanned(&assumptions, build, &changes[..count], outcomes);
                    println!(
                        "{:?} {}, {looked} each time: {entries} entries, {folded} folded",
                        &changes[..count],
                        build.name(),
                    );
                    worst = worst.max(entries);
                }
            }
        }
    }
    println!("the largest has {worst} entries");
    assert!(worst <= GATE);
}
