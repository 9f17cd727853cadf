//! How well a cool-down is judged from its first hours: simulated machines of which the end is
//! known, by length of log and by kind, by the air alone and with its coil and watts.
//!
//! `cargo run --profile host -p practice --example cooling [machines] [seed]`

use std::collections::BTreeMap;

use measure::cool_down::CoolDown;
use practice::cooling::{CoolingMachine, Counted, HOURS, Logger, Outcome, Place};
use simulator::{Chance, ParameterError};

/// By what is read, by length of log, and by kind; all kinds together come first.
type Row = (bool, Option<Place>, usize);

#[derive(Default)]
struct Table {
    counts: BTreeMap<Row, Counted>,
    refused: usize,
}

fn main() -> Result<(), ParameterError> {
    let mut arguments = std::env::args().skip(1);
    let mut number = |otherwise: u64| {
        let given = arguments.next().and_then(|text| text.parse().ok());
        given.unwrap_or(otherwise)
    };
    let (machines, seed) = (number(1_000), number(1_001));
    let mut table = Table::default();
    let mut stand = 0;
    for machine in 0..machines {
        match CoolingMachine::drawn(seed, machine)? {
            Some(cooling) => table.take(&cooling, seed, machine),
            None => stand += 1,
        }
    }
    let refused = table.refused;
    println!("{machines} machines from seed {seed}; {stand} stand still; {refused} logs too short");
    table.print();
    Ok(())
}

impl Table {
    fn take(&mut self, cooling: &CoolingMachine, seed: u64, machine: u64) {
        for place in cooling.places().iter().copied() {
            let mut chance = Chance::new(seed)
                .fork(1_000_000 + machine)
                .fork(place as u64);
            let logger = Logger::drawn(&mut chance);
            let air = cooling.air(place);
            let truth = Outcome::of(&cooling.samples, &air);
            for (row, hours) in HOURS.into_iter().enumerate() {
                let readings = logger.readings(&air, hours, &mut chance.fork(7));
                let Ok(plain) = CoolDown::of(&readings, &place.kind().prior()) else {
                    self.refused += 1;
                    continue;
                };
                let support = cooling.support(place, hours, &mut chance.fork(9));
                for (is_with, found) in [(false, plain.clone()), (true, plain.with(&support))] {
                    for of in [None, Some(place)] {
                        let count = self.counts.entry((is_with, of, row)).or_default();
                        count.take(&truth, &found, &place.goal());
                    }
                }
            }
        }
    }

    fn print(&self) {
        for ((is_with, of, row), count) in &self.counts {
            let name = of.map_or("all".to_owned(), |place| format!("{place:?}"));
            let with = if *is_with { "coil, watts" } else { "air" };
            println!("{with:11} {name:17} {:3} h: {}", HOURS[*row], count.line());
        }
    }
}
