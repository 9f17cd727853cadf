//! How well a cool-down is judged from its first hours: simulated machines of which the end is
//! known, by length of log and by kind.
//!
//! `cargo run --profile host -p practice --example cooling [machines] [seed]`

use std::collections::BTreeMap;

use measure::cool_down::CoolDown;
use practice::cooling::{CoolingMachine, Counted, HOURS, Logger, Outcome, Place};
use simulator::{Chance, ParameterError};

fn main() -> Result<(), ParameterError> {
    let mut arguments = std::env::args().skip(1);
    let mut number = |otherwise: u64| {
        let given = arguments.next().and_then(|text| text.parse().ok());
        given.unwrap_or(otherwise)
    };
    let (machines, seed) = (number(1_000), number(2));
    let mut counts: BTreeMap<(usize, Option<Place>), Counted> = BTreeMap::new();
    let (mut stand, mut refused) = (0, 0);
    for machine in 0..machines {
        let Some(cooling) = CoolingMachine::drawn(seed, machine)? else {
            stand += 1;
            continue;
        };
        for place in cooling.places().iter().copied() {
            let mut chance = Chance::new(seed)
                .fork(1_000_000 + machine)
                .fork(place as u64);
            let logger = Logger::drawn(&mut chance);
            let air = cooling.air(place);
            let truth = Outcome::of(&cooling.samples, &air);
            for (row, hours) in HOURS.into_iter().enumerate() {
                let readings = logger.readings(&air, hours, &mut chance.fork(7));
                let Ok(found) = CoolDown::of(&readings, &place.kind().prior()) else {
                    refused += 1;
                    continue;
                };
                let goal = place.goal();
                for of in [None, Some(place)] {
                    let count = counts.entry((row, of)).or_default();
                    count.take(&truth, &found, &goal);
                }
            }
        }
    }
    println!("{machines} machines from seed {seed}; {stand} stand still; {refused} logs too short");
    for of in core::iter::once(None).chain(Place::ALL.map(Some)) {
        let name = of.map_or("all".to_owned(), |place| format!("{place:?}"));
        for (row, hours) in HOURS.into_iter().enumerate() {
            if let Some(count) = counts.get(&(row, of)) {
                println!("{name:18} {hours:3} h: {}", count.line());
            }
        }
    }
    Ok(())
}
