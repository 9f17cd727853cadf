//! Probes on the sealed circuit, as weights on the clues that ask for the same by hand.
//!
//! A number stands for the word of its clue. Where both are there for the condenser, both count: a
//! hand goes along all of it, a probe lies at one place. On the evaporator one place tells little of
//! a pattern: such a reading is a hint, and frost is still worth a look.
//!
//! The room's own error is in each of them, as if each had a room of its own: that makes each say a
//! little less than it does.

use job::{Job, Place};
use quantity::Seconds;

use super::super::clue::{ANSWER, Clue, Task};
use super::super::gauge::Gauge;
use super::{Entered, Weight};
use crate::Kind;
use crate::choice::Choice;
use crate::circuit::{ROOM_OFF, Surface, Surfaces};

/// How often a hand that goes along a condenser tells the right one of five (judgement).
const BY_HAND: f64 = 0.8;
/// How often a probe lies where nothing boils, on an evaporator that is fed in part (judgement).
const ON_A_DRY_PLACE: f64 = 0.5;
/// Before it has run for so long, a sound evaporator is fed in part too (as the clue has it).
const FROSTED: Seconds = Seconds::new(7_200.0);
/// From this air on a sound one may run dry in its last turns, and at the other it does, in °C
/// (judgement; capillaries pass little more for much heat: ASHRAE Handbook, Refrigeration, from memory).
const DRY_FROM: f64 = -10.0;
const DRY_TO: f64 = 10.0;
/// So many readings of a long course say what all of them do.
const ENOUGH: usize = 24;
/// So many kelvins up and down again while it runs is none of a steady evaporator (judgement).
const SWING: f64 = 8.0;
/// Defrosts look the same, and nobody notes each of them; they are this far apart or further (common
/// practice, no source: 6 to 12 hours of running).
const DEFROSTS_APART: Seconds = Seconds::new(6.0 * 3_600.0);
/// How often more swings than defrosts are seen where it cools now and then, and where it doesn't
/// (judgement).
const SWINGS: (f64, f64) = (0.5, 0.08);

/// Whether a clue needs no word any more.
pub(in crate::whole) fn stands_for(clue: Clue, job: &Job) -> bool {
    matches!(
        clue,
        Clue::CondenserWarmth | Clue::Drier | Clue::SuctionLine
    ) && probed(job).iter().any(|one| one.answers(Task::Clue(clue)))
}

/// What was probed, one for each clue.
pub(super) fn probed(job: &Job) -> Vec<Entered> {
    let Some(surfaces) = Surfaces::of(job) else {
        return Vec::new();
    };
    // Behind the walls of a chest lie both.
    let is_wall = crate::answered(job) == Some(Kind::ChestFreezer);
    let beside_room = surfaces.room.map_or_else(Vec::new, |room| {
        let room = room.get();
        let of = |place: Place, gauge: Gauge| {
            let found = surfaces.middle(place);
            found.map(|one| weights(&one, ROOM_OFF, &gauge))
        };
        let condenser = of(Place::Condenser, Gauge::condenser(room, is_wall));
        [
            (
                Clue::CondenserWarmth,
                condenser.map(|found| with_the_hand(job, found)),
            ),
            (Clue::Drier, of(Place::DrierOutlet, Gauge::drier(room))),
            (
                Clue::SuctionLine,
                of(Place::SuctionLine, Gauge::suction_line(room)),
            ),
        ]
        .into_iter()
        .filter_map(|(clue, found)| Some(one(clue, found?)))
        .collect()
    });
    let hint = evaporator(job, &surfaces, is_wall).map(|found| Entered {
        is_hint: true,
        ..one(Clue::FrostPattern, found)
    });
    beside_room.into_iter().chain(hint).collect()
}

fn one(clue: Clue, weights: Vec<f64>) -> Entered {
    Entered::new(
        Task::Clue(clue),
        vec![Weight::Clue(clue, weights), Weight::Ran],
    )
}

fn weights(found: &Surface, around_off: f64, gauge: &Gauge) -> Vec<f64> {
    let off = libm::hypot(found.standard, around_off);
    gauge.degrees(found.shown.get(), off)
}

/// With what a hand felt along all of the condenser, where it did.
fn with_the_hand(job: &Job, weights: Vec<f64>) -> Vec<f64> {
    let clue = Clue::CondenserWarmth;
    let felt = job.choice(clue.name(), ANSWER);
    let Some(felt) = felt.and_then(|name| clue.answer(name)) else {
        return weights;
    };
    let others = (1.0 - BY_HAND) / (clue.answers().len() - 1) as f64;
    let of = |answer: usize| if answer == felt { BY_HAND } else { others };
    let each = weights.into_iter().enumerate();
    each.map(|(answer, weight)| weight + libm::log(of(answer)))
        .collect()
}

/// Against the air of its compartment, unless somebody has looked at the frost.
fn evaporator(job: &Job, surfaces: &Surfaces, is_wall: bool) -> Option<Vec<f64>> {
    let clue = Clue::FrostPattern;
    let looked = job.choice(clue.name(), ANSWER);
    if looked.is_some_and(|name| clue.answer(name).is_some()) {
        return None;
    }
    let against_air = |one: &Surface| {
        let air = surfaces.air_at(one.at)?;
        if one.ran < FROSTED {
            return None;
        }
        let gauge = Gauge::evaporator(air.shown.get(), is_wall);
        let mut found = weights(one, air.standard, &gauge);
        // It boils there now and then.
        mix_in_dry(&mut found, "patchy", ON_A_DRY_PLACE);
        // Much heat makes the last turns of a sound one run dry.
        let dry = ((air.shown.get() - DRY_FROM) / (DRY_TO - DRY_FROM)).clamp(0.0, 1.0);
        mix_in_dry(&mut found, "even", ON_A_DRY_PLACE * dry);
        Some(found)
    };
    let count = surfaces.at_place(Place::Evaporator).count();
    let some = surfaces.at_place(Place::Evaporator);
    let some = some.step_by(count.div_ceil(ENOUGH).max(1));
    let each: Vec<Vec<f64>> = some.filter_map(against_air).collect();
    let mut found = super::pooled(&each)?;
    // It boils there always, or never.
    mix_in_dry(&mut found, "first-part-only", ON_A_DRY_PLACE);
    if swings_besides_defrosts(surfaces) > 1 {
        let patchy = clue.answer("patchy");
        for (answer, weight) in found.iter_mut().enumerate() {
            let (now_and_then, steady) = SWINGS;
            let often = if patchy == Some(answer) {
                now_and_then
            } else {
                steady
            };
            *weight += libm::log(often);
        }
    }
    Some(found)
}

/// Where only a part is fed, the probe may lie on the rest, which is as the air.
fn mix_in_dry(weights: &mut [f64], fed_in_part: &str, how_often: f64) {
    let of = |name: &str| Clue::FrostPattern.answer(name);
    let (Some(part), Some(none)) = (of(fed_in_part), of("none")) else {
        return;
    };
    let wet = (1.0 - how_often) * libm::exp(weights[part]);
    weights[part] = libm::log(wet + how_often * libm::exp(weights[none]));
}

/// How often the evaporator became warmer and cold again while it ran, more often than it may have been
/// defrosted.
fn swings_besides_defrosts(surfaces: &Surfaces) -> usize {
    let mut shown = surfaces.at_place(Place::Evaporator);
    let first = shown.next().map(|one| one.at);
    let last = shown.next_back().map(|one| one.at);
    let span = first
        .zip(last)
        .map_or(0.0, |(first, last)| first.until(last).get());
    // Whole and small: a job spans days.
    let defrosts = (span / DEFROSTS_APART.get()).clamp(0.0, 1e6) as usize;
    swings(surfaces).saturating_sub(defrosts)
}

/// How often the evaporator became warmer and cold again while it ran.
fn swings(surfaces: &Surfaces) -> usize {
    let mut shown = surfaces.at_place(Place::Evaporator);
    let Some(first) = shown.next() else {
        return 0;
    };
    let (mut coldest, mut warmest) = (first.shown.get(), f64::NEG_INFINITY);
    let mut count = 0;
    for one in shown {
        let now = one.shown.get();
        if warmest.is_finite() {
            warmest = warmest.max(now);
            if warmest - now >= SWING {
                count += 1;
                (coldest, warmest) = (now, f64::NEG_INFINITY);
            }
        } else {
            coldest = coldest.min(now);
            if now - coldest >= SWING {
                warmest = now;
            }
        }
    }
    count
}
