//! Cool-downs of simulated cabinets: the bands hold, and verdicts are seldom wrong. A thousand of
//! them are measured by `cargo xtask measure cooling`; here are as many as a test has time for.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used)]

use measure::cool_down::CoolDown;
use practice::cooling::{CoolingMachine, Counted, Logger, Outcome};
use simulator::Chance;

const MACHINES: u64 = 30;
const SEED: u64 = 5;

#[test]
fn bands_hold_on_cabinets_that_nobody_drew_from_the_model() {
    let machines: Vec<(u64, CoolingMachine)> = (0..MACHINES)
        .filter_map(|number| Some((number, CoolingMachine::drawn(SEED, number).unwrap()?)))
        .collect();
    for hours in [1.0, 2.0, 4.0] {
        let (mut counted, mut with) = (Counted::default(), Counted::default());
        for (number, machine) in &machines {
            for place in machine.places().iter().copied() {
                let mut chance = Chance::new(SEED).fork(1_000 + number).fork(place as u64);
                let logger = Logger::drawn(&mut chance);
                let air = machine.air(place);
                let truth = Outcome::of(&machine.samples, &air);
                let readings = logger.readings(&air, hours, &mut chance);
                let found = CoolDown::of(&readings, &place.kind().prior()).unwrap();
                counted.take(&truth, &found, &place.goal());
                let support = machine.support(place, hours, &mut chance);
                with.take(&truth, &found.with(&support), &place.goal());
            }
        }
        println!("{hours} h: {}", counted.line());
        println!("{hours} h with coil and watts: {}", with.line());
        // Nine in ten, less three standard deviations of so few courses.
        let courses = counted.courses as f64;
        let least = 0.9 * courses - 3.0 * libm::sqrt(0.09 * courses);
        for counted in [counted, with] {
            assert!(counted.ends as f64 >= least, "{hours} h: {}", counted.ends);
            assert!(
                counted.twice as f64 >= least,
                "{hours} h: {}",
                counted.twice
            );
            assert!(counted.verdicts.0 <= 2, "{hours} h: {:?}", counted.verdicts);
        }
        // What else is read narrows the bands.
        assert!(with.widths < counted.widths, "{hours} h: {}", with.widths);
    }
}
