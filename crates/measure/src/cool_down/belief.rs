//! What is believed of a cabinet's course: every pace of a grid, weighed by how likely it makes the
//! readings.

use super::motion::{Pace, State, Stretch};
use super::prior::Beforehand;
use super::symmetric::Symmetric;
use super::thinned::Thinned;

const HOUR: f64 = 3600.0;
/// Time constants of the air, with thermometer and plates: all alike likely beforehand (judgement).
const AIR: [f64; 6] = [
    0.1 * HOUR,
    0.2 * HOUR,
    0.4 * HOUR,
    0.8 * HOUR,
    1.6 * HOUR,
    3.2 * HOUR,
];
/// Of walls and contents, which what the air goes towards follows.
const WALLS: [f64; 5] = [1.1 * HOUR, 2.2 * HOUR, 4.4 * HOUR, 8.8 * HOUR, 17.6 * HOUR];
/// How far that wanders, in kelvins: a control that cycles, food that freezes, frost.
const WANDERS: [f64; 3] = [1.0, 3.0, 8.0];
/// Errors of one reading beside the others, in kelvins: steps and fans.
const NOISES: [f64; 3] = [0.05, 0.2, 0.8];
/// In the first minutes the evaporator has yet to get cold and the thermometer to follow: readings
/// count for less by so many kelvins, which fade in so many seconds.
const AT_FIRST: (f64, f64) = (1.5, 600.0);
/// So much of the way to the end is the share of plates and coil alone, which cool at once; the rest
/// waits for the walls. With its spread in kelvins (judgement).
const AT_ONCE: (f64, f64) = (0.4, 7.0);
/// What is less likely than this share of the likeliest is left out.
const FAINT: f64 = 1e-5;

/// One pace out of all that may be true, with how likely it is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Part {
    pub(super) weight: f64,
    pub(super) pace: Pace,
    /// Of one reading, in kelvins.
    pub(super) noise: f64,
    /// After the last reading.
    pub(super) state: State,
}

/// What may be true of a log, its weights summing to one.
pub(super) fn parts(log: &Thinned, beforehand: &Beforehand) -> Vec<Part> {
    let first = beforehand.first();
    let air = AIR.map(|constant| left(log, constant));
    let walls = WALLS.map(|constant| left(log, constant));
    let mut parts = Vec::new();
    for (air, &air_constant) in air.iter().zip(&AIR) {
        for (walls, &walls_constant) in walls.iter().zip(&WALLS) {
            for wander in WANDERS {
                let pace = Pace {
                    air: air_constant,
                    walls: walls_constant,
                    wander,
                };
                let stretches: Vec<Stretch> = air
                    .iter()
                    .zip(walls)
                    .map(|(air, walls)| pace.stretch(*air, *walls))
                    .collect();
                for noise in NOISES {
                    parts.push(followed(log, first, pace, noise, &stretches));
                }
            }
        }
    }
    let top = parts
        .iter()
        .fold(f64::NEG_INFINITY, |top, part| top.max(part.weight));
    for part in &mut parts {
        part.weight = libm::exp(part.weight - top);
    }
    parts.retain(|part| part.weight > FAINT);
    let whole: f64 = parts.iter().map(|part| part.weight).sum();
    for part in &mut parts {
        part.weight /= whole;
    }
    parts
}

/// What is left of an exponential over each stretch, from the switching on to the first reading, from
/// there to the second, and so on.
fn left(log: &Thinned, constant: f64) -> Vec<f64> {
    let mut before = 0.0;
    log.at
        .iter()
        .map(|&at| {
            let left = libm::exp((before - at) / constant);
            before = at;
            left
        })
        .collect()
}

/// Goes along the readings. The weight is its logarithm.
fn followed(log: &Thinned, first: State, pace: Pace, noise: f64, stretches: &[Stretch]) -> Part {
    let mut state = first;
    let mut weight = 0.0;
    let readings = log.at.iter().zip(&log.temperature);
    for ((&at, &reading), stretch) in readings.zip(stretches) {
        let early = AT_FIRST.0 * libm::exp(-at / AT_FIRST.1);
        let variance = noise * noise + early * early;
        let (next, likely) = state.after(stretch).with(reading, variance);
        state = next;
        weight += likely;
    }
    Part {
        weight,
        pace,
        noise,
        state,
    }
}

impl Beforehand {
    /// Air, what it goes towards, and end, when it is switched on.
    pub(super) fn first(&self) -> State {
        let share = AT_ONCE.0;
        let square = |deviation: f64| deviation * deviation;
        let (start, end) = (square(self.start.deviation), square(self.end.deviation));
        let kept = 1.0 - share;
        State {
            mean: [
                self.start.mean,
                kept * self.start.mean + share * self.end.mean,
                self.end.mean,
            ],
            covariance: Symmetric([
                start,
                kept * start,
                0.0,
                square(kept) * start + square(share) * end + square(AT_ONCE.1),
                share * end,
                end,
            ]),
        }
    }
}
