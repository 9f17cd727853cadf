//! How long a simulated day takes: milliseconds per day of each kind of machine, beside a fixed
//! piece of arithmetic timed in the same run, so that one computer can be held against another.
//!
//! `cargo run --profile host -p simulator --example day_time`

use quantity::Seconds;
use simulator::Refrigerant;
use simulator::appliance::{Appliance, Kind, Mains};
use std::time::Instant;

/// The best of several, in milliseconds: what else runs only makes it slower.
fn best(mut run: impl FnMut()) -> f64 {
    (0..5)
        .map(|_| {
            let start = Instant::now();
            run();
            start.elapsed().as_secs_f64() * 1e3
        })
        .fold(f64::INFINITY, f64::min)
}

fn main() -> Result<(), simulator::ParameterError> {
    let mut sum = 0.0;
    let reference = best(|| {
        for number in 1..=1_000_000 {
            sum += libm::exp(-f64::from(number) * 1e-6);
        }
    });
    println!("reference, a million exponentials: {reference:.1} ms ({sum:.0})");
    for kind in Kind::ALL {
        let fresh = Appliance::example(kind, Mains::V230F50, Refrigerant::R600a)?;
        let mut problem = None;
        let time = best(|| {
            let mut it = fresh.clone();
            problem = it.advance(Seconds::new(86_400.0)).err();
        });
        if let Some(problem) = problem {
            return Err(problem);
        }
        println!(
            "{kind:?}: {time:.1} ms a day, {:.1} references",
            time / reference
        );
    }
    Ok(())
}
