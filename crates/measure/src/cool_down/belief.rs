//! What is believed of a cabinet's course: every pace of a grid, weighed by how likely it makes the
//! readings.

use super::ends::WIDE;
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
/// How far that wanders, in kelvins, in a freezer: a control that cycles, food that freezes, frost.
const WANDERS: [f64; 3] = [0.5, 2.0, 6.0];
/// How likely each of those is beforehand where it is as strong as it was made; weakened ones have all alike
/// (judgement). Strong cooling is soon through with walls that a weak one works on all day: heat over watts
/// per kelvin. And it goes on evenly until a control stops it, while ice in a capillary or on a coil lets it
/// come and go.
const SOUND_WALLS: [f64; 5] = [0.3, 0.35, 0.25, 0.08, 0.02];
/// The same of air that gets what another compartment leaves, sound or not: it waits for that one's walls too.
const BESIDE_WALLS: [f64; 5] = [0.1, 0.15, 0.25, 0.25, 0.25];
const SOUND_WANDERS: [f64; 3] = [0.45, 0.45, 0.1];
/// Errors of one reading beside the others, in kelvins: steps and fans.
const NOISES: [f64; 3] = [0.05, 0.2, 0.8];
/// In the first minutes the evaporator has yet to get cold and the thermometer to follow: readings
/// count for less by so many kelvins, which fade in so many seconds.
const AT_FIRST: (f64, f64) = (1.5, 600.0);
/// So much of the way to the end is the share of plates and coil alone, which cool at once; the rest
/// waits for the walls. With its spread in kelvins (judgement).
const AT_ONCE: (f64, f64) = (0.4, 7.0);
/// What is less likely than this share of the likeliest is left out, and under the wide end before.
const FAINT: f64 = 1e-5;
const FAINT_AT_FIRST: f64 = 1e-8;

/// One pace out of all that may be true, with how likely it is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Part {
    pub(super) weight: f64,
    pub(super) pace: Pace,
    /// Of one reading, in kelvins.
    pub(super) noise: f64,
    /// How likely its pace is beforehand in a sound machine and in a weakened one.
    pub(super) odds: [f64; 2],
    /// Whether it ends as sound ones do, or as weakened ones.
    pub(super) is_sound: bool,
    /// After the last reading.
    pub(super) state: State,
}

/// What may be true of a log, its weights summing to one.
pub(super) fn parts(log: &Thinned, beforehand: &Beforehand) -> Vec<Part> {
    let first = beforehand.first();
    let air = AIR.map(|constant| left(log, constant));
    let walls = WALLS.map(|constant| left(log, constant));
    let likely = likely_walls(beforehand);
    let mut parts = Vec::new();
    for (air, &air_constant) in air.iter().zip(&AIR) {
        let walls = walls.iter().zip(&WALLS).zip(&likely);
        for ((walls, &walls_constant), likely_walls) in walls {
            for (wander, likely_wander) in WANDERS.into_iter().zip(&SOUND_WANDERS) {
                let sound = likely_walls[0] * likely_wander;
                let odds = [sound, likely_walls[1] / WANDERS.len() as f64];
                let pace = Pace {
                    air: air_constant,
                    walls: walls_constant,
                    wander: wander * beforehand.wander,
                };
                let stretches: Vec<Stretch> = air
                    .iter()
                    .zip(walls)
                    .map(|(air, walls)| pace.stretch(*air, *walls))
                    .collect();
                for noise in NOISES {
                    let part = followed(log, first, pace, noise, &stretches);
                    parts.push(Part { odds, ..part });
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
    parts.retain(|part| part.weight > FAINT_AT_FIRST);
    let split = parts.iter().flat_map(|part| beforehand.ends.split(part));
    weighed(split.collect())
}

/// Without the faint ones, and weights that sum to one.
pub(super) fn weighed(mut parts: Vec<Part>) -> Vec<Part> {
    let top = parts.iter().fold(0.0, |top, part| part.weight.max(top));
    if top <= 0.0 {
        // Readings that nothing thought of beforehand could have made say nothing between them.
        for part in &mut parts {
            part.weight = 1.0;
        }
    }
    parts.retain(|part| part.weight > FAINT * top);
    let whole: f64 = parts.iter().map(|part| part.weight).sum();
    for part in &mut parts {
        part.weight /= whole;
    }
    parts
}

/// How likely each of the walls' paces is in a sound machine and in a weakened one.
fn likely_walls(beforehand: &Beforehand) -> [[f64; 2]; WALLS.len()] {
    let alike = 1.0 / WALLS.len() as f64;
    if beforehand.loss.is_some() {
        SOUND_WALLS.map(|sound| [sound, alike])
    } else {
        BESIDE_WALLS.map(|one| [one, one])
    }
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
        odds: [1.0; 2],
        is_sound: true,
        state,
    }
}

impl Beforehand {
    /// Air, what it goes towards, and a wide end, when it is switched on.
    pub(super) fn first(&self) -> State {
        let share = AT_ONCE.0;
        let square = |deviation: f64| deviation * deviation;
        let (start, end) = (square(self.start.deviation), square(WIDE.deviation));
        let kept = 1.0 - share;
        State {
            mean: [
                self.start.mean,
                kept * self.start.mean + share * WIDE.mean,
                WIDE.mean,
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
