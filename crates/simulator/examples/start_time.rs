//! How long a start takes to work out, and a day of running, resting and failing.
//!
//! `cargo run --profile host -p simulator --example start_time`
//!
//! The reference is a million exponentials in the same run, by which machines can be compared.

#[path = "../tests/surroundings/mod.rs"]
mod surroundings;

use std::hint::black_box;
use std::time::Instant;

use quantity::{Hertz, NewtonMetres, Seconds, Volts};
use simulator::compressor::{Compressor, Parts};
use simulator::supply::Supply;
use simulator::{Chance, ParameterError};
use surroundings::around;

/// The median of so many runs, in milliseconds.
fn median<E>(runs: usize, mut run: impl FnMut(usize) -> Result<(), E>) -> Result<f64, E> {
    let mut times = Vec::new();
    for number in 0..runs {
        let started = Instant::now();
        run(number)?;
        times.push(started.elapsed().as_secs_f64() * 1e3);
    }
    times.sort_by(f64::total_cmp);
    Ok(times[runs / 2])
}

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let outlet = Supply::outlet(Volts::new(115.0), Hertz::new(60.0));
    let sound = Compressor::new(Parts::example_115_volts())?;
    let mut parts = Parts::example_115_volts();
    parts.rotor.dry_friction = NewtonMetres::new(10.0);
    let seized = Compressor::new(parts)?;

    let reference = median(21, |_| {
        let sum: f64 = (0..1_000_000)
            .map(|number| libm::exp(f64::from(black_box(number)) * -1e-6))
            .sum();
        black_box(sum);
        Ok::<(), std::convert::Infallible>(())
    })?;
    println!("{reference:8.3} ms  reference: a million exponentials");

    starts(&sound, &outlet)?;
    days(&sound, &seized, &outlet)?;
    Ok(())
}

fn starts(sound: &Compressor, outlet: &Supply) -> Result<(), ParameterError> {
    for (name, low, high) in [("level", 4e5, 4e5), ("working", 1.1e5, 1.1e6)] {
        let surroundings = around(low, high);
        let time = median(101, |number| {
            let mut compressor = sound.clone();
            let mut chance = Chance::new(number as u64);
            let longest = Seconds::new(60.0);
            let record = compressor.start(outlet, &surroundings, longest, &mut chance)?;
            black_box(record);
            Ok::<(), ParameterError>(())
        })?;
        println!("{time:8.3} ms  a start at {name} pressures");
    }
    Ok(())
}

fn days(sound: &Compressor, seized: &Compressor, outlet: &Supply) -> Result<(), ParameterError> {
    // Eight minutes on, twelve off, the pressures changing every ten seconds as a circuit would.
    let time = median(5, |number| {
        let mut compressor = sound.clone();
        let mut chance = Chance::new(number as u64);
        for step in 0..8640 {
            let is_called = step % 120 < 48;
            let (low, high) = if is_called {
                (1.1e5, 1.1e6)
            } else {
                (4e5, 4e5)
            };
            let first = step % 120 == 0;
            let surroundings = if first {
                around(4e5, 4e5)
            } else {
                around(low, high)
            };
            let time = Seconds::new(10.0);
            compressor.advance(time, is_called, outlet, &surroundings, &mut chance)?;
        }
        Ok::<(), ParameterError>(())
    })?;
    println!("{time:8.3} ms  a day of running and resting");

    let time = median(3, |number| {
        let mut compressor = seized.clone();
        let mut chance = Chance::new(number as u64);
        let day = Seconds::new(86_400.0);
        compressor.advance(day, true, outlet, &around(4e5, 4e5), &mut chance)?;
        Ok::<(), ParameterError>(())
    })?;
    println!("{time:8.3} ms  a day of tripping and trying again");
    Ok(())
}
