//! Minutes of work until enough is known, over the worked cases: our order of checks against a
//! fixed checklist along the Path.
//!
//! ```text
//! cargo run --profile host -p coldcase-tests --example minutes
//! ```

// The worked cases are right by construction.
#![allow(clippy::unwrap_used, clippy::panic)]

#[path = "../minutes/mod.rs"]
mod minutes;
#[allow(dead_code)] // What only the tests ask for.
#[path = "../tests/told/mod.rs"]
mod told;

use diagnosis::Assumptions;
use minutes::{Summary, stories};
use practice::Order;

fn main() {
    let stories = stories(&Assumptions::default());
    let rows = [
        ("ours", Order::Ours),
        ("a fixed checklist along the Path", Order::Checklist),
    ]
    .map(|(name, order)| (name, Summary::of(&stories, &order)));
    println!("{} worked cases, on average", stories.len());
    println!(
        "{:34} {:>7} {:>6} {:>7} {:>6} {:>4} {:>5}",
        "order", "minutes", "middle", "waiting", "checks", "told", "found"
    );
    for (name, row) in &rows {
        println!(
            "{name:34} {:7.1} {:6.1} {:7.0} {:6.1} {:4.1} {:5}",
            row.minutes, row.middle, row.waiting, row.checks, row.said, row.found
        );
    }
    let [(_, ours), (_, checklist)] = rows;
    let fewer = 100.0 * (1.0 - ours.minutes / checklist.minutes);
    println!("{fewer:.0} % fewer minutes (at least 30 % wanted)");
}
