//! What the supply gives turns up as heat, work or motion; and what no compressor has is refused.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used)]

mod surroundings;

use proptest::prelude::*;
use quantity::{Celsius, CubicMetres, Hertz, Kilograms, NewtonMetres, Ohms, Ratio, Seconds, Volts};
use simulator::Chance;
use simulator::compressor::{Compressor, Energy, Parts, Period, StartRecord, Surroundings};
use simulator::supply::Supply;
use surroundings::around;

/// The bound of the conservation laws here, relative to what was taken.
const KEPT: f64 = 1e-9;

fn miss(energy: &Energy) -> f64 {
    let taken = energy.taken.get();
    (energy.gone().get() - taken).abs() / taken.max(1e-6)
}

/// Every number of a record.
fn numbers(record: &StartRecord) -> Vec<f64> {
    let mut all: Vec<f64> = record
        .trace
        .iter()
        .flat_map(|one| {
            [
                one.line.get(),
                one.main.get(),
                one.start.get(),
                one.watts.get(),
                one.speed.get(),
            ]
        })
        .collect();
    all.push(record.energy.gone().get());
    all.push(record.peak_line.get());
    all
}

fn outlet() -> Supply {
    Supply::outlet(Volts::new(115.0), Hertz::new(60.0))
}

#[test]
fn a_try_keeps_its_energy_whatever_comes_of_it() {
    for (low, high) in [(4e5, 4e5), (3e5, 5.5e5), (1.1e5, 1.1e6)] {
        for seed in 0..8 {
            let mut compressor = Compressor::new(Parts::example_115_volts()).unwrap();
            let mut chance = Chance::new(seed);
            let record = compressor
                .start(
                    &outlet(),
                    &around(low, high),
                    Seconds::new(30.0),
                    &mut chance,
                )
                .unwrap();
            assert!(miss(&record.energy) < KEPT, "{}", miss(&record.energy));
        }
    }
}

#[test]
fn hours_of_running_resting_and_tripping_keep_their_energy() {
    let mut seized = Parts::example_115_volts();
    seized.rotor.dry_friction = NewtonMetres::new(10.0);
    for parts in [Parts::example_115_volts(), seized] {
        let mut compressor = Compressor::new(parts).unwrap();
        let mut chance = Chance::new(5);
        for hour in 0..4 {
            let period: Period = compressor
                .advance(
                    Seconds::new(3600.0),
                    hour != 2,
                    &outlet(),
                    &around(3.9e5, 4.1e5),
                    &mut chance,
                )
                .unwrap();
            assert!(miss(&period.energy) < KEPT, "{}", miss(&period.energy));
        }
    }
}

/// Without friction, gas or a voltage there is nothing to slow it; with no volts nothing to move it.
#[test]
fn no_volts_no_current_and_no_turning() {
    let mut dead = outlet();
    dead.volts = Volts::new(0.0);
    let mut compressor = Compressor::new(Parts::example_115_volts()).unwrap();
    let mut chance = Chance::new(1);
    let surroundings = around(4e5, 4e5);
    let record = compressor
        .start(&dead, &surroundings, Seconds::new(5.0), &mut chance)
        .unwrap();
    assert!(!record.came_up && record.peak_line.get() < 1e-30);
    assert!(record.trace.iter().all(|one| one.speed.get().abs() < 1e-30));
    let time = Seconds::new(600.0);
    let period = compressor
        .advance(time, true, &dead, &surroundings, &mut chance)
        .unwrap();
    assert!(period.energy.taken.get() < 1e-30 && period.turned.get() < 1e-30);
}

#[test]
fn the_same_seed_gives_the_same_record_to_the_last_bit() {
    let run = |seed: u64| {
        let mut compressor = Compressor::new(Parts::example_115_volts()).unwrap();
        let longest = Seconds::new(30.0);
        compressor
            .start(
                &outlet(),
                &around(2.5e5, 6.5e5),
                longest,
                &mut Chance::new(seed),
            )
            .unwrap()
    };
    assert_eq!(run(7), run(7));
    assert_ne!(run(7), run(8));
}

#[test]
fn absurd_surroundings_times_and_supplies_are_refused_by_name() {
    let mut compressor = Compressor::new(Parts::example_115_volts()).unwrap();
    let mut chance = Chance::new(1);
    let mut refused = |time: f64, supply: &Supply, around: &Surroundings| {
        compressor
            .advance(Seconds::new(time), true, supply, around, &mut chance)
            .unwrap_err()
            .parameter
    };
    let fine = around(4e5, 4e5);
    assert_eq!(refused(1e6, &outlet(), &fine), "time");
    assert_eq!(refused(-1.0, &outlet(), &fine), "time");
    let mut wild = outlet();
    wild.frequency = Hertz::new(400.0);
    assert_eq!(refused(1.0, &wild, &fine), "supply.frequency");
    let vacuum = around(-1.0, 4e5);
    assert_eq!(
        refused(1.0, &outlet(), &vacuum),
        "surroundings.pressures.suction"
    );
    let mut oven = fine;
    oven.room = Celsius::new(f64::NAN);
    assert_eq!(refused(1.0, &outlet(), &oven), "surroundings.room");
}

fn parts() -> impl Strategy<Value = Parts> {
    let windings = (
        0.5..200.0_f64,
        0.0..200.0_f64,
        0.5..200.0_f64,
        0.0..200.0_f64,
    );
    let rotor = (0.5..200.0_f64, 0.0..200.0_f64, 20.0..5000.0_f64);
    let shaft = (0.2..5.0_f64, 0.0..3.0_f64, 0.0..5e-5_f64, 0.005..0.2_f64);
    let faults = (0.0..0.9_f64, 0.0..0.9_f64, 0.0..1.0_f64, 0.5..500.0_f64);
    (windings, rotor, shaft, faults).prop_map(|(windings, rotor, shaft, faults)| {
        let mut parts = Parts::example_230_volts();
        let motor = &mut parts.motor;
        motor.main.resistance = Ohms::new(windings.0);
        motor.main.reactance = Ohms::new(windings.1);
        motor.start.resistance = Ohms::new(windings.2);
        motor.start.reactance = Ohms::new(windings.3);
        motor.rotor_resistance = Ohms::new(rotor.0);
        motor.rotor_reactance = Ohms::new(rotor.1);
        motor.magnetising_reactance = Ohms::new(rotor.2);
        motor.main.shorted_share = Ratio::new(faults.0);
        motor.start.shorted_share = Ratio::new(faults.1);
        parts.rotor.mass = Kilograms::new(shaft.0);
        parts.rotor.dry_friction = NewtonMetres::new(shaft.1);
        parts.rotor.displacement = CubicMetres::new(shaft.2);
        parts.rotor.clearance = Ratio::new(shaft.3);
        parts.gear = simulator::start_gear::StartGear::ptc(Ohms::new(faults.3))
            .with_run_capacitor(4.0 * faults.2)
            .with_relay_kit(200.0 * faults.2, Volts::new(180.0));
        parts
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 60, failure_persistence: None, ..ProptestConfig::default() })]

    /// Anything inside the bounds gives numbers, however odd the machine.
    #[test]
    fn whatever_is_let_in_gives_numbers(
        parts in parts(),
        volts in 0.0..300.0_f64,
        low in 0.0..1e6_f64,
        high in 0.0..3e6_f64,
        cord in 0.0..20.0_f64,
        seed in any::<u64>(),
    ) {
        let mut supply = Supply::outlet(Volts::new(volts), Hertz::new(50.0));
        supply.extension = Ohms::new(cord);
        let mut compressor = Compressor::new(parts).unwrap();
        let mut chance = Chance::new(seed);
        let surroundings = around(low, high);
        let record = compressor
            .start(&supply, &surroundings, Seconds::new(4.0), &mut chance)
            .unwrap();
        prop_assert!(numbers(&record).iter().all(|number| number.is_finite()));
        let period = compressor
            .advance(Seconds::new(300.0), true, &supply, &surroundings, &mut chance)
            .unwrap();
        prop_assert!(period.energy.gone().get().is_finite());
        prop_assert!((period.lasted.get() - 300.0).abs() < 70.0);
        for celsius in [compressor.shell(), compressor.main_winding()] {
            prop_assert!(celsius.get().is_finite());
        }
        prop_assert!(miss(&record.energy) < KEPT, "{}", miss(&record.energy));
        prop_assert!(miss(&period.energy) < KEPT, "{}", miss(&period.energy));
    }
}
