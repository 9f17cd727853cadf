//! How long it takes to weigh three readings, beside a piece of arithmetic of fixed size that
//! any machine can run: the ratio of both says more than milliseconds of one machine.
//!
//! ```text
//! cargo run --profile host -p coldcase-tests --example speed
//! ```
//!
//! Ends with 1 when weighing takes more than half as long as the piece of arithmetic.

use std::hint::black_box;
use std::process::ExitCode;
use std::time::{Duration, Instant};

use coldcase_tests::motors::{Bench, Kind, Machine, Noting, Random, RatioSpread};
use measure::windings::{Inspection, WindingPriors, Windings};

const READINGS: usize = 2_000;
/// Side of the matrices that the reference multiplies: two million products and sums.
const SIDE: usize = 128;

fn main() -> ExitCode {
    let inspections = inspections();
    let priors = WindingPriors::default();
    let mut weighing = Vec::with_capacity(READINGS);
    let mut reference = Vec::with_capacity(READINGS / 10);
    let (left, right) = (matrix(1), matrix(2));
    for (place, inspection) in inspections.iter().enumerate() {
        weighing.push(timed(|| Windings::of(black_box(inspection), &priors)));
        // Interleaved, so that both meet the same other work on the machine.
        if place % 10 == 0 {
            reference.push(timed(|| product(black_box(&left), black_box(&right))));
        }
    }
    weighing.sort();
    reference.sort();
    let (median, slow) = (weighing[READINGS / 2], weighing[READINGS * 95 / 100]);
    let piece = reference[reference.len() / 2];
    let ratio = median.as_secs_f64() / piece.as_secs_f64();
    println!("weighing three readings: median {median:.1?}, 95 of 100 within {slow:.1?}");
    println!("multiplying two {SIDE} by {SIDE} matrices: median {piece:.1?}");
    println!("ratio {ratio:.3} (at most 0.5)");
    ExitCode::from(u8::from(ratio > 0.5))
}

/// Sound motors and every fault in turn, as a person would enter them.
fn inspections() -> Vec<Inspection> {
    let mut random = Random::seeded(7);
    let bench = Bench {
        noting: Noting::Everything { wrong: 0.01 },
    };
    let kinds = Kind::ALL.into_iter().cycle().take(READINGS);
    kinds
        .map(|kind| {
            let machine = Machine::draw(kind, RatioSpread::Stated, &mut random);
            bench.measure(&machine, &mut random)
        })
        .collect()
}

fn timed<T>(work: impl FnOnce() -> T) -> Duration {
    let start = Instant::now();
    black_box(work());
    start.elapsed()
}

fn matrix(seed: u64) -> Vec<f64> {
    let mut random = Random::seeded(seed);
    (0..SIDE * SIDE).map(|_| random.unit()).collect()
}

/// The plain three loops: what the compiler makes of them is part of the reference.
fn product(left: &[f64], right: &[f64]) -> Vec<f64> {
    let mut out = vec![0.0; SIDE * SIDE];
    for i in 0..SIDE {
        for k in 0..SIDE {
            let factor = left[i * SIDE + k];
            for j in 0..SIDE {
                out[i * SIDE + j] += factor * right[k * SIDE + j];
            }
        }
    }
    out
}
