//! What a leakage clamp and the log of trips say of the parts that may leak.
//!
//! A machine without a fault leaks a few tenths of a milliampere, one whose device trips several
//! to hundreds. All shares and factors here are judgement; the one figure from outside, 3.5 mA in
//! service (VDE 0701-0702:2008-06, 5.5), lies between both.

use job::{Answer, Job, Measured, Reading};
use libm::{exp, log, log10};
use quantity::{Accuracy, Amps, Observed, Typed};

use super::super::clue::{Clue, Task};
use super::super::fault::Fault::{self, *};
use super::choices::{shares, with_aside};
use super::{Entered, Weight, pooled};
use crate::checks::leakage::{LeakageFinding, Leaking, TripDevice, TripWhen};
use crate::choice::Choice;
use crate::{Check, Item, Machine};

/// Decades of milliamperes, mean and standard deviation: without a fault, and with a part that
/// leaks while it is measured.
const SOUND: (f64, f64) = (-0.4, 0.35);
const LEAKS: (f64, f64) = (1.1, 0.55);
/// How often a reading is a slip that can show anything from a microampere to an ampere: another
/// machine's cord, one conductor alone, the wrong range.
const SLIP: f64 = 0.02;
const DECADES: (f64, f64) = (-3.0, 3.0);
/// How often a leak isn't seen by a clamp: the earth wire was in it, or it comes and goes.
const UNSEEN: f64 = 0.15;
/// Another part than the compressor is energised while someone measures in so many cases: a
/// defrost heater is on for half an hour a day, a fan or a lamp as long as the machine is.
const ENERGISED: f64 = 0.55;
/// By how much a trip as a defrost begins speaks for the heater, beyond one that comes hours later.
const AT_DEFROST: f64 = 3.0;
/// Leaks that trip the device only together speak for a device without a fault behind it.
const ADDED_UP: f64 = 4.0;

/// When it trips, as weights on the clue that asks it in words; all else on the parts.
pub(super) fn leakage(job: &Job, machine: &Machine) -> Vec<Entered> {
    let known = Leaking::of(job, machine.mains);
    let pattern = pattern(job, &known).map(|weights| {
        Entered::new(
            Task::Clue(Clue::TripPattern),
            with_aside(Clue::TripPattern, weights),
        )
    });
    let mut weights = by_clamp(job);
    weights.extend(by_device(&known).iter().map(factor));
    if known.when == Some(TripWhen::AtDefrost) {
        weights.push(Weight::Fault(AnotherPartLeaks, AT_DEFROST));
    }
    if adds_up(&known) {
        weights.push(Weight::Fault(TripsByItself, ADDED_UP));
    }
    let parts = (!weights.is_empty()).then(|| Entered::new(Task::Check(Check::Leakage), weights));
    pattern.into_iter().chain(parts).collect()
}

fn factor(&(fault, factor): &(Fault, f64)) -> Weight {
    Weight::Fault(fault, factor)
}

/// When it trips, of devices that look for leaks. One that goes as a switch opens has no pattern
/// that the clue knows.
fn pattern(job: &Job, known: &Leaking) -> Option<Vec<f64>> {
    if is_for_too_much(known.device) {
        return None;
    }
    let named: Vec<&str> = job
        .answers(Check::Leakage.name(), Item::TripWhen.name())
        .into_iter()
        .filter_map(|(_, answer)| match answer {
            Answer::Choice(name) => TripWhen::from_name(name.as_str()),
            _ => None,
        })
        .map(|when| match when {
            TripWhen::AsItStops => TripWhen::Irregular.name(),
            TripWhen::AtDefrost => TripWhen::HoursLater.name(),
            other => other.name(),
        })
        .collect();
    shares(Clue::TripPattern, &named)
}

const fn is_for_too_much(device: Option<TripDevice>) -> bool {
    matches!(device, Some(TripDevice::Breaker | TripDevice::ArcFault))
}

/// A breaker goes for too much current. That can be a leak too where the earth is good, but then a
/// gross one; a motor that stands draws some times its running current, too little for most.
fn by_device(known: &Leaking) -> &'static [(Fault, f64)] {
    match (known.device, known.when) {
        (Some(TripDevice::Breaker), Some(TripWhen::AtStart)) => &[
            (TurnsShorted, 4.0),
            (RotorSeized, 1.5),
            (AnotherPartLeaks, 0.3),
        ],
        (Some(TripDevice::Breaker), Some(TripWhen::AtDefrost | TripWhen::HoursLater)) => {
            &[(WindingLeaks, 0.4), (TurnsShorted, 0.7)]
        }
        (Some(TripDevice::Breaker), _) => &[(TurnsShorted, 2.0), (WindingLeaks, 0.7)],
        // It takes the sparks of switches and brushes for arcs.
        (Some(TripDevice::ArcFault), _) => &[(TripsByItself, 2.0), (WindingLeaks, 0.7)],
        _ => &[],
    }
}

fn adds_up(known: &Leaking) -> bool {
    known
        .findings()
        .iter()
        .any(|finding| matches!(finding, LeakageFinding::Sum { trip, alone, .. } if trip > alone))
}

/// The clamp's reading, repeats pooled.
fn by_clamp(job: &Job) -> Vec<Weight> {
    let repeats: Vec<Vec<f64>> = job
        .answers(Check::Leakage.name(), Item::LeakageCurrent.name())
        .into_iter()
        .filter_map(|(_, answer)| match answer {
            Answer::Reading(Reading {
                measured: Measured::Amps(typed),
                accuracy,
                ..
            }) => ratios(*typed, *accuracy),
            _ => None,
        })
        .collect();
    let pooled = pooled(&repeats).unwrap_or_default();
    let parts = [WindingLeaks, AnotherPartLeaks].into_iter().zip(pooled);
    parts
        .map(|(fault, ln)| Weight::Fault(fault, exp(ln)))
        .collect()
}

/// How much likelier a reading is with a winding, and with another part, that leaks: natural
/// logarithms. Nothing from a display that is over its range.
fn ratios(typed: Typed<Amps>, accuracy: Accuracy) -> Option<Vec<f64>> {
    let Observed::Value(amps) = typed.observed else {
        return None;
    };
    let shown = (amps.get() * 1e3).max(1e-3);
    let standard = accuracy.standard(amps, typed.count).get() * 1e3;
    // The uncertainty of a logarithm is the relative one, over ln 10.
    let spread = (standard / shown).min(1.0) / core::f64::consts::LN_10;
    let at = log10(shown).clamp(DECADES.0, DECADES.1);
    let density = |(mean, deviation): (f64, f64)| {
        let deviation = libm::hypot(deviation, spread);
        let z = (at - mean) / deviation;
        exp(-0.5 * z * z) / (deviation * libm::sqrt(2.0 * core::f64::consts::PI))
    };
    let seen = |share: f64| {
        let both = share * density(LEAKS) + (1.0 - share) * density(SOUND);
        (1.0 - SLIP) * both + SLIP / (DECADES.1 - DECADES.0)
    };
    let ratio = |share: f64| log(seen(share) / seen(0.0));
    let while_on = 1.0 - UNSEEN;
    Some(vec![ratio(while_on), ratio(while_on * ENERGISED)])
}

#[cfg(test)]
mod tests {
    use super::*;
    use quantity::parse_reading;

    fn factors(typed: &str) -> [f64; 2] {
        let typed = parse_reading(typed, Amps::new(100.0)).unwrap();
        let accuracy = Accuracy::new(3.0, 5.0).unwrap();
        let both = ratios(typed, accuracy).unwrap();
        [exp(both[0]), exp(both[1])]
    }

    /// By hand: 20 mA lies 0.37 deviations over the middle of what leaks and 4.9 over that of what
    /// doesn't, so that there only the slip is left.
    #[test]
    fn tens_of_milliamperes_speak_for_both_and_more_for_the_compressor_which_is_on() {
        let [winding, other] = factors("20.0 mA");
        let leaks = 0.93 * 0.725;
        let slip = 0.02 / 6.0;
        let by_hand = |share: f64| (0.98 * share * leaks + slip) / slip;
        assert!((winding / by_hand(0.85) - 1.0).abs() < 0.1, "{winding}");
        assert!((other / by_hand(0.4675) - 1.0).abs() < 0.1, "{other}");
        assert!(winding < 400.0);
    }

    #[test]
    fn tenths_of_a_milliampere_leave_what_is_only_on_at_times() {
        let [winding, other] = factors("0.30 mA");
        assert!((winding - UNSEEN).abs() < 0.03, "{winding}");
        assert!(other > 0.45 && other < 0.65, "{other}");
        let [none, _] = factors("0 mA");
        assert!(none > 0.1 && none < 1.0, "{none}");
    }

    #[test]
    fn what_leaks_more_speaks_more_for_a_leak_from_tenths_to_tens() {
        let all = [
            "0.2 mA", "0.5 mA", "1.0 mA", "2.0 mA", "3.5 mA", "6.0 mA", "12.0 mA",
        ];
        let factors = all.map(|typed| factors(typed)[0]);
        assert!(
            factors.windows(2).all(|pair| pair[0] < pair[1]),
            "{factors:?}"
        );
    }
}
