//! How long a simulated machine takes to draw and to work on, in milliseconds a machine on one
//! core. What is asked of the machine for the first time in one order is there for the next.
//!
//! `cargo run --profile host -p practice --example evaluation_time`

use std::time::Instant;

use diagnosis::{Model, Priors};
use measure::MeterKind;
use practice::{Order, drawn, walk};
use simulator::Chance;

const MACHINES: u64 = 60;

fn main() -> Result<(), simulator::ParameterError> {
    let model = Model::default();
    let mut draw = 0.0;
    let names = ["our next check", "fixed checklist", "any check"];
    let mut walked = [(0.0, 0_usize); 3];
    for number in 0..MACHINES {
        let start = Instant::now();
        let sheet = drawn(&Priors::default(), MeterKind::Basic, 1, number)?;
        draw += milliseconds(start);
        let Some(mut sheet) = sheet else { continue };
        let orders = [
            Order::Ours,
            Order::Checklist,
            Order::Random(Chance::new(1).fork(!number)),
        ];
        for (order, (all, steps)) in orders.into_iter().zip(&mut walked) {
            let start = Instant::now();
            let walk = walk(&mut sheet, &model, order);
            *all += milliseconds(start);
            *steps += walk.map_or(0, |walk| walk.tasks.len() + 1);
        }
    }
    let each = |sum: f64| sum / MACHINES as f64;
    println!("drawing {:21.1} ms a machine", each(draw));
    for (name, (all, steps)) in names.into_iter().zip(walked) {
        println!(
            "{name:16} {:12.1} ms a machine, {:.2} a step",
            each(all),
            all / steps.max(1) as f64
        );
    }
    Ok(())
}

fn milliseconds(since: Instant) -> f64 {
    since.elapsed().as_secs_f64() * 1e3
}
