//! What the unplugged checks have brought, from the items that they ask.

use job::{Answer, Job};
use measure::windings::{Explanation, Pair};
use measure::{CurrentRelay, PotentialRelay};
use quantity::Observed;

use super::super::clue::{Clue, Task};
use super::super::fault::Fault::*;
use super::super::gauge::Gauge;
use super::super::history::beyond_the_motor;
use super::choices::with_aside;
use super::{Entered, Weight, choices, mains_of, ohms};
use crate::checks::look_over::Sign;
use crate::checks::protector::{ProtectorKind, Warmth};
use crate::checks::start_device::{Contact, Inverted, Looks, StartDeviceKind, Upright};
use crate::checks::stored_charge::Stores;
use crate::checks::windings::{WindingsKnown, item_of_pair};
use crate::choice::{Choice, answered};
use crate::{Check, Complaint, Item, Machine, Refrigerant, ToldBy};

/// What a part is still worth as a suspect when it isn't there.
const OVERLOOKED: f64 = 0.02;
/// A seller's word is worth this share of the weight of one's own eyes (judgement).
const TOLD: f64 = 0.6;
/// How often a protector that reads open is only hot, when nobody made sure that it had cooled
/// (judgement: most of those that read open are).
const ONLY_HOT: f64 = 0.3;
/// The same once it was found open twice with an hour between, or had rested.
const HOT_AFTER_REST: f64 = 0.01;
/// How often a machine with an electronic drive has one coil in place of three windings, and a
/// third pin all the same (judgement: such motors are rare, and have two pins).
const LINEAR: f64 = 0.01;
/// How often a probe that missed misses again on the same pair (judgement).
const MISSED_TWICE: f64 = 0.1;

pub(super) fn entered(job: &Job, machine: &Machine, windings: &WindingsKnown) -> Vec<Entered> {
    let check = |check: Check, weights: Vec<Weight>| Entered::new(Task::Check(check), weights);
    vec![
        check(Check::Machine, of_machine(job, machine)),
        check(Check::Refrigerant, of_refrigerant(machine)),
        check(Check::LookOver, of_look_over(job)),
        check(Check::Ground, of_ground(job, machine)),
        check(Check::StoredCharge, of_stored_charge(job)),
        check(Check::Windings, of_windings(job, windings)),
        check(Check::Shell, of_shell(job)),
        check(Check::Protector, of_protector(job)),
        check(Check::StartDevice, of_start_device(job, machine)),
        check(Check::WindingTemperature, of_winding_heat(job)),
    ]
}

fn of_machine(job: &Job, machine: &Machine) -> Vec<Weight> {
    let mut weights: Vec<Weight> = choices::build(job).into_iter().collect();
    let Some(complaint) = machine.complaint else {
        return weights;
    };
    let answer = match complaint {
        Complaint::Silent => "silent",
        Complaint::HumsThenClicks => "hums-then-clicks",
        Complaint::RunsThenStops => "cuts-out",
        Complaint::TripsTheOutlet => "trips-the-outlet",
        Complaint::RunsStaysWarm
        | Complaint::OneSideWarm
        | Complaint::TooCold
        | Complaint::NeverStops
        | Complaint::Noisy => "runs-stays-warm",
        Complaint::NotPluggedIn | Complaint::Unknown => return weights,
    };
    let (clue, trust) = match machine.told_by {
        Some(ToldBy::Myself) => (Clue::OpeningSeen, 1.0),
        Some(ToldBy::Seller) | None => (Clue::OpeningTold, TOLD),
    };
    weights.extend(choices::shares(clue, &[answer]).map(|shares| Weight::Clue(clue, shares)));
    let beyond = beyond_the_motor(complaint).iter();
    weights
        .extend(beyond.map(|&(fault, factor)| choices::weight(&(fault, libm::pow(factor, trust)))));
    weights
}

fn of_refrigerant(machine: &Machine) -> Vec<Weight> {
    match machine.refrigerant {
        // Gone from new machines before inverters came.
        Some(Refrigerant::R12 | Refrigerant::R22) => vec![Weight::Build([1.0, 0.8, 0.02])],
        _ => Vec::new(),
    }
}

fn of_look_over(job: &Job) -> Vec<Weight> {
    let Some(Answer::Choices(names)) = job.answer(Check::LookOver.name(), Item::Signs.name())
    else {
        return Vec::new();
    };
    let saw = |sign: Sign| names.iter().any(|name| name.as_str() == sign.name());
    Sign::ALL
        .iter()
        .flat_map(|&sign| {
            let clue = match sign {
                Sign::CordDamaged => Clue::CordDamaged,
                Sign::Burnt => Clue::Burnt,
                Sign::OilStain => Clue::OilStain,
                Sign::Puncture => Clue::Puncture,
                Sign::EarlierSealedWork => Clue::EarlierSealedWork,
                Sign::Rodents => Clue::Rodents,
                Sign::MissingParts => Clue::MissingParts,
                Sign::Wet => Clue::Wet,
            };
            let answer = if saw(sign) { "present" } else { "absent" };
            choices::shares(clue, &[answer])
                .map_or_else(Vec::new, |shares| with_aside(clue, shares))
        })
        .collect()
}

/// From several places to metal, which see the same leak: the place that speaks loudest for one
/// counts. That others are clear doesn't make it good.
fn leak(job: &Job, clue: Clue, items: &[Item]) -> Option<Weight> {
    let gauge = Gauge::of(clue, None)?;
    let for_a_leak = |weights: &[f64]| weights[2].max(weights[1]) - weights[0];
    let mut loudest: Option<Vec<f64>> = None;
    for weights in items.iter().filter_map(|item| ohms(job, *item, &gauge)) {
        let louder = loudest
            .as_ref()
            .is_none_or(|known| for_a_leak(&weights) > for_a_leak(known));
        if louder {
            loudest = Some(weights);
        }
    }
    Some(Weight::Clue(clue, loudest?))
}

fn of_ground(job: &Job, machine: &Machine) -> Vec<Weight> {
    let places = [Item::BladesToEarth, Item::BladesToMetal];
    let mut weights: Vec<Weight> = leak(job, Clue::PlugInsulation, &places)
        .into_iter()
        .collect();
    let between = Gauge::of(Clue::BladeToBlade, mains_of(machine))
        .and_then(|gauge| ohms(job, Item::BladeToBlade, &gauge));
    weights.extend(between.map(|weights| Weight::Clue(Clue::BladeToBlade, weights)));
    weights
}

fn of_shell(job: &Job) -> Vec<Weight> {
    let pins = [
        Item::PinOneToShell,
        Item::PinTwoToShell,
        Item::PinThreeToShell,
    ];
    leak(job, Clue::ShellInsulation, &pins)
        .into_iter()
        .collect()
}

fn of_stored_charge(job: &Job) -> Vec<Weight> {
    match answered::<Stores>(job) {
        Some(Stores::Nothing) => vec![
            Weight::Fault(CapacitorFailed, OVERLOOKED),
            Weight::Build([1.0, 1.0, 0.05]),
        ],
        // Where there is one it can fail; two machines in three have none.
        Some(Stores::Capacitor) => vec![
            Weight::Fault(CapacitorFailed, 3.0),
            Weight::Build([1.0, 1.0, 0.05]),
        ],
        Some(Stores::InverterBoard) => vec![Weight::Build([0.01, 0.02, 1.0])],
        None => Vec::new(),
    }
}

/// The explanations of the pins, gathered into the clue's answers.
fn of_windings(job: &Job, windings: &WindingsKnown) -> Vec<Weight> {
    if windings.inspection.readings().next().is_none() {
        return Vec::new();
    }
    let ln = |explanation: Explanation| {
        let scored = windings.windings.explanations.iter();
        scored
            .filter(|one| one.explanation == explanation)
            .map(|one| one.log_likelihood)
            .fold(f64::NEG_INFINITY, f64::max)
    };
    let either = |one: Explanation, other: Explanation| {
        let (one, other) = (ln(one), ln(other));
        let top = one.max(other);
        top + libm::log((libm::exp(one - top) + libm::exp(other - top)) / 2.0)
    };
    let open = ln(Explanation::ProtectorOpen);
    let hot = if found_open_twice(job) {
        HOT_AFTER_REST
    } else {
        ONLY_HOT
    };
    let missed = if times_open(job) >= 2 {
        MISSED_TWICE
    } else {
        1.0
    };
    let whole = either(Explanation::Sound, Explanation::LeadsNotZeroed);
    let weights = vec![
        whole.max(open + libm::log(hot)),
        open,
        either(Explanation::StartOpen, Explanation::RunOpen),
        ln(Explanation::ShortedTurns),
        ln(Explanation::EqualWindings).max(ln(Explanation::SingleCoil) + libm::log(LINEAR)),
        either(Explanation::StartDeviceOn, Explanation::ProbeMissed) + libm::log(missed),
    ];
    if weights.iter().all(|weight| !weight.is_finite()) {
        return Vec::new();
    }
    vec![Weight::Clue(Clue::Pins, weights)]
}

/// Whether a pair was over range twice, an hour or more apart.
fn found_open_twice(job: &Job) -> bool {
    Pair::ALL.iter().any(|pair| {
        let open = moments_open(job, *pair);
        let apart = open.iter().max().zip(open.iter().min());
        apart.is_some_and(|(last, first)| last - first >= 3_600_000)
    })
}

/// How often one pair was found over range, at most.
fn times_open(job: &Job) -> usize {
    let pairs = Pair::ALL.iter();
    pairs
        .map(|pair| moments_open(job, *pair).len())
        .max()
        .unwrap_or(0)
}

/// When a pair was found over range, in milliseconds.
fn moments_open(job: &Job, pair: Pair) -> Vec<i64> {
    job.answers(Check::Windings.name(), item_of_pair(pair))
        .into_iter()
        .filter(|(_, answer)| match answer {
            Answer::Reading(reading) => {
                matches!(reading.measured.numbers().0, Observed::OverRange { .. })
            }
            _ => false,
        })
        .map(|(entry, _)| entry.at.unix_milliseconds())
        .collect()
}

fn of_protector(job: &Job) -> Vec<Weight> {
    if answered::<ProtectorKind>(job) == Some(ProtectorKind::Inside) {
        return vec![
            Weight::Fault(OverloadOpen, OVERLOOKED),
            Weight::Fault(OverloadWeak, OVERLOOKED),
        ];
    }
    let Some(mut weights) = Gauge::of(Clue::Protector, None)
        .and_then(|gauge| ohms(job, Item::ProtectorReading, &gauge))
    else {
        return Vec::new();
    };
    let hot = match answered::<Warmth>(job) {
        Some(Warmth::Rested) => HOT_AFTER_REST,
        Some(Warmth::Warm) | None => ONLY_HOT,
    };
    weights[0] = weights[0].max(weights[1] + libm::log(hot));
    vec![Weight::Clue(Clue::Protector, weights)]
}

fn of_start_device(job: &Job, machine: &Machine) -> Vec<Weight> {
    let kind = answered::<StartDeviceKind>(job);
    let mut weights = Vec::new();
    if let Some(looks) = answered::<Looks>(job) {
        let answer = if looks == Looks::Whole {
            "whole"
        } else {
            "broken"
        };
        weights.extend(
            choices::shares(Clue::StartDeviceLooks, &[answer])
                .map(|shares| Weight::Clue(Clue::StartDeviceLooks, shares)),
        );
    }
    let ohms = match kind {
        Some(StartDeviceKind::Ptc) => ptc(job, machine),
        Some(StartDeviceKind::CurrentRelay) => current_relay(job),
        Some(StartDeviceKind::PotentialRelay) => potential_relay(job),
        // Ohms say nothing about an electronic one.
        Some(StartDeviceKind::Electronic | StartDeviceKind::NotFound) | None => None,
    };
    let ohms = ohms.map(|ohms| with_aside(Clue::StartDeviceOhms, ohms));
    weights.extend(ohms.into_iter().flatten());
    weights.extend(kind.map(|kind| match kind {
        StartDeviceKind::NotFound => Weight::Build([0.3, 0.3, 1.0]),
        _ => Weight::Build([1.0, 1.0, 0.02]),
    }));
    weights
}

fn ptc(job: &Job, machine: &Machine) -> Option<Vec<f64>> {
    let marked = Item::PtcMarking
        .ohms(job)
        .and_then(|(typed, _)| match typed.observed {
            Observed::Value(value) if value.get() > 0.0 => Some(measure::Band::of_marked(value)),
            _ => None,
        });
    let band = marked.or_else(|| mains_of(machine).map(measure::Band::of_mains))?;
    ohms(job, Item::PtcReading, &Gauge::ptc(band))
}

/// One answer for certain; slips are in the clue's table.
fn exactly(answer: &str) -> Option<Vec<f64>> {
    choices::shares(Clue::StartDeviceOhms, &[answer])
}

fn current_relay(job: &Job) -> Option<Vec<f64>> {
    let upright = answered::<Upright>(job)? == Upright::Closed;
    let inverted = answered::<Inverted>(job)? == Inverted::Closed;
    exactly(match measure::current_relay(upright, inverted) {
        CurrentRelay::Sound => "as-it-should",
        CurrentRelay::Welded => "near-zero",
        CurrentRelay::NeverMakes => "open",
    })
}

fn potential_relay(job: &Job) -> Option<Vec<f64>> {
    let (coil, _) = Item::RelayCoil.ohms(job)?;
    let closed = answered::<Contact>(job)? == Contact::Closed;
    exactly(match measure::potential_relay(coil.observed, closed) {
        PotentialRelay::Sound => "as-it-should",
        PotentialRelay::CoilOpen | PotentialRelay::ContactOpen => "open",
    })
}

fn of_winding_heat(job: &Job) -> Vec<Weight> {
    let known = crate::WindingTemperature::of(job);
    let weights = known
        .now
        .zip(Gauge::of(Clue::WindingHeat, None))
        .map(|(now, gauge)| gauge.degrees(now.value().get(), now.standard().get()));
    weights
        .map(|weights| Weight::Clue(Clue::WindingHeat, weights))
        .into_iter()
        .collect()
}
