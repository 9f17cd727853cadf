//! Changes against slow sums over every possibility, and folding against what is exact.

use belief::{Evidence, JunctionTree, Variable};

use super::assembly::{Assembly, Cause, Parent, with_slips};
use super::beliefs::Beliefs;
use super::build::Build;
use super::change::Change;
use super::clue::Clue;
use super::entered::{Entered, Weight, with_aside};
use super::fault::{Fault::*, Part};
use super::networks::{self, Assumptions};
use super::priors::Priors;
use super::spanned::Spanned;
use super::versions::{Plan, Versions};
use crate::choice::Choice;

const STATES: [&str; 3] = ["starts", "slow", "hums"];
const LEAK: [f64; 3] = [0.96, 0.03, 0.01];
/// By the start device's state: sound, open, weak, stays in.
const DEVICE: [[f64; 3]; 4] = [
    [1.0, 0.0, 0.0],
    [0.05, 0.15, 0.8],
    [0.3, 0.5, 0.2],
    [1.0, 0.0, 0.0],
];
/// By the rotor's: sound, tight, seized.
const ROTOR: [[f64; 3]; 3] = [[1.0, 0.0, 0.0], [0.2, 0.5, 0.3], [0.01, 0.09, 0.9]];
/// What is heard: it runs, or hums.
const HEARD: [[f64; 2]; 3] = [[95.0, 5.0], [60.0, 40.0], [4.0, 96.0]];

struct Small {
    tree: JunctionTree,
    devices: [Variable; 2],
    rotors: [Variable; 2],
    heard: [Variable; 2],
}

/// Two parts, one condition, one thing heard, before and after a change.
fn small(change: Change) -> Small {
    let plan = Plan {
        steps: vec![vec![change]],
        ..Plan::default()
    };
    let versions = Versions::new(&plan, None);
    let mut assembly = Assembly::new(Build::ManualDefrost, &Priors::default(), versions).unwrap();
    let look = |assembly: &mut Assembly| {
        let start = assembly
            .condition(
                "start",
                &STATES,
                &LEAK,
                &[
                    Cause::Fault(StartDeviceOpen, &DEVICE[1]),
                    Cause::Fault(StartDeviceWeak, &DEVICE[2]),
                    Cause::Fault(RotorTight, &ROTOR[1]),
                    Cause::Fault(RotorSeized, &ROTOR[2]),
                ],
            )
            .unwrap();
        let parents = [Parent::State(start)];
        let heard = assembly
            .finding("heard", &["runs", "hums"], &parents, &|given| {
                HEARD[given.at(start)].to_vec()
            })
            .unwrap();
        let part = |part: Part| assembly.part(part).unwrap().variable;
        (part(Part::StartDevice), part(Part::Rotor), heard)
    };
    let before = look(&mut assembly);
    assembly.change().unwrap();
    let after = look(&mut assembly);
    Small {
        tree: JunctionTree::compile(assembly.network).unwrap(),
        devices: [before.0, after.0],
        rotors: [before.1, after.1],
        heard: [before.2, after.2],
    }
}

/// The weight of every joint state of old device, old rotor, new device, new rotor: that it hums
/// before the change and runs after it.
fn enumerated(device: &[f64], rotor: &[f64], new_rotor: impl Fn(usize, usize) -> f64) -> Vec<f64> {
    let faulty = 1.0 - device[0];
    let new_device = |state: usize| match state {
        0 => 0.97,
        fault => 0.03 * device[fault] / faulty,
    };
    let rotor_stays = (0..3).all(|one| (new_rotor(one, one) - 1.0).abs() < 1e-12);
    let heard = |state: usize, what: usize| with_slips(&HEARD[state])[what];
    let mut weights = Vec::new();
    for (old, one) in (0..4).flat_map(|old| (0..3).map(move |one| (old, one))) {
        for (new, other) in (0..4).flat_map(|new| (0..3).map(move |other| (new, other))) {
            let prior = device[old] * rotor[one] * new_device(new) * new_rotor(one, other);
            let mut likelihood = 0.0;
            for number in 0..3usize.pow(5) {
                let [leak, a, b, c, d] = [1, 3, 9, 27, 81].map(|step| number / step % 3);
                // A rotor that stays brings about what it brings about once.
                let again = if rotor_stays {
                    f64::from(u8::from(d == b))
                } else {
                    ROTOR[other][d]
                };
                let chance = LEAK[leak] * DEVICE[old][a] * ROTOR[one][b] * DEVICE[new][c] * again;
                likelihood += chance * heard(leak.max(a).max(b), 1) * heard(leak.max(c).max(d), 0);
            }
            weights.push(prior * likelihood);
        }
    }
    let sum: f64 = weights.iter().sum();
    weights.iter().map(|weight| weight / sum).collect()
}

#[test]
fn marginals_with_a_change_are_those_of_slow_enumeration() {
    for change in [Change::StartDevice, Change::StartGear] {
        let small = small(change);
        let network = small.tree.network();
        let device = network.row(small.devices[0], &[]).unwrap();
        let rotor = network.row(small.rotors[0], &[]).unwrap();
        let faulty = 1.0 - rotor[0];
        let weights = enumerated(&device, &rotor, |one, other| match (change, one, other) {
            (Change::StartDevice, ..) => f64::from(u8::from(one == other)),
            (_, 0, 0) => 0.99,
            (_, 0, fault) => 0.01 * rotor[fault] / faulty,
            (_, fault, other) if other == 0 || other == fault => 0.5,
            _ => 0.0,
        });
        let mut evidence = Evidence::new();
        evidence.observe(network, small.heard[0], 1).unwrap();
        evidence.observe(network, small.heard[1], 0).unwrap();
        let mut workspace = small.tree.workspace();
        let posterior = small.tree.propagate(&evidence, &mut workspace).unwrap();
        let places = [(small.devices[0], 36, 4), (small.rotors[0], 12, 3)]
            .into_iter()
            .chain([(small.devices[1], 3, 4), (small.rotors[1], 1, 3)]);
        for (variable, stride, card) in places {
            for (state, found) in posterior.marginal(variable).iter().enumerate() {
                let expected: f64 = weights
                    .iter()
                    .enumerate()
                    .filter(|(number, _)| number / stride % card == state)
                    .map(|(_, weight)| weight)
                    .sum();
                assert!(
                    (found - expected).abs() < 1e-12,
                    "{change:?}: {found} {expected}"
                );
            }
        }
    }
}

/// Something seen of a clue, in a period.
fn seen(clue: Clue, answer: &str, period: usize) -> Entered {
    let mut weights = vec![f64::NEG_INFINITY; clue.answers().len()];
    weights[clue.answer(answer).unwrap()] = 0.0;
    let mut one = Entered::new(clue.task(), with_aside(clue, weights));
    one.period = period;
    one
}

/// Printed. The network in which the next check is chosen says of each fault what the exact one
/// says. Folding alone costs more: the last change of one is its worst case.
#[test]
fn folding_is_fitted_to_what_is_exact() {
    let assumptions = Assumptions::default();
    let all = assumptions.networks().unwrap();
    let mut desk = networks::desk(&all);
    let odds = Build::odds(None);
    let (mut worst, mut worst_folded) = (0.0, 0.0);
    for &build in Build::ALL {
        for (opening, change, then) in [
            ("hums-then-clicks", Change::StartDevice, "hums-then-clicks"),
            ("hums-then-clicks", Change::StartDevice, "runs"),
            ("silent", Change::Wiring, "silent"),
            ("silent", Change::Thermostat, "silent"),
            ("trips-the-outlet", Change::Outlet, "trips"),
            ("runs-stays-warm", Change::Condenser, "runs"),
            ("runs-stays-warm", Change::Condenser, "cuts-out"),
        ] {
            let mut first = seen(Clue::OpeningSeen, opening, 0);
            let mut factors = [0.0; 3];
            factors[build.column()] = 1.0;
            first.weights.push(Weight::Build(factors));
            let later = seen(Clue::PowerUp, then, 1);
            let entered = vec![first.clone(), later.clone()];
            let steps = vec![vec![change]];
            let spanned = Spanned::of(&assumptions, odds, steps, entered, &mut desk).unwrap();
            assert_eq!(spanned.folded, 0);
            let mut beliefs = |entered: &[Entered]| {
                Beliefs::of(&spanned.networks(), odds, entered, &mut desk).unwrap()
            };
            let (exact, before) = (beliefs(&spanned.entered), beliefs(&[first]));
            let (_, truth) =
                Beliefs::glance(&spanned.networks(), odds, &spanned.entered, &mut desk).unwrap();
            let since = spanned.since(&exact, odds, &all, &mut desk).unwrap();
            let folded = vec![before.carried(odds, &all, &[], &mut desk).unwrap(), later];
            let mut apart = |entered: &[Entered]| -> f64 {
                let (_, found) = Beliefs::glance(&all, odds, entered, &mut desk).unwrap();
                let pairs = truth.faults.iter().zip(&found.faults);
                let apart = pairs.map(|(one, other)| (one - other).abs());
                apart.fold((truth.nothing - found.nothing).abs(), f64::max)
            };
            let (fitted, folded) = (apart(&since), apart(&folded));
            println!(
                "{} {opening}, {change:?}, {then}: fitted {fitted:.4}, folded {folded:.3}",
                build.name()
            );
            worst = f64::max(worst, fitted);
            worst_folded = f64::max(worst_folded, folded);
        }
    }
    println!("at most {worst:.4} and {worst_folded:.3}");
    assert!(worst < 0.01 && worst_folded < 0.25);
}
