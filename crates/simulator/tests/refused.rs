//! What can't be is refused by its name; what can be never becomes no number and never hangs.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used)]

use proptest::prelude::*;
use quantity::{Celsius, CubicMetres, Kilograms, Ratio, Seconds, WattsPerKelvin};
use simulator::Refrigerant;
use simulator::appliance::{Appliance, Kind, Mains, Parts};
use simulator::cabinet::CabinetFault;
use simulator::circuit::CircuitFault;

fn parts(kind: Kind) -> Parts {
    Parts::example(kind, Mains::V115F60, Refrigerant::R600a).unwrap()
}

/// The name by which a changed chest freezer is refused.
fn refused(change: impl Fn(&mut Parts)) -> &'static str {
    let mut parts = parts(Kind::FrostFree);
    change(&mut parts);
    Appliance::new(parts).unwrap_err().parameter
}

#[test]
fn absurd_parts_are_refused_by_name() {
    let nan = f64::NAN;
    assert_eq!(
        refused(|it| it.circuit.charge = Kilograms::new(-0.01)),
        "circuit.charge"
    );
    assert_eq!(
        refused(|it| it.circuit.air = Kilograms::new(nan)),
        "circuit.air"
    );
    assert_eq!(
        refused(|it| it.circuit.pump.displacement = CubicMetres::new(0.0)),
        "pump.displacement"
    );
    assert_eq!(
        refused(|it| it.circuit.capillary.opening = f64::INFINITY),
        "capillary.opening"
    );
    assert_eq!(
        refused(|it| it.cabinet.room = Celsius::new(400.0)),
        "cabinet.room"
    );
    assert_eq!(
        refused(|it| it.cabinet.first.insulation = WattsPerKelvin::new(nan)),
        "compartment.insulation"
    );
    assert_eq!(
        refused(|it| it.cabinet.thermostat.opens = Celsius::new(20.0)),
        "thermostat.opens"
    );
    assert_eq!(
        refused(|it| {
            if let Some(defrost) = &mut it.cabinet.defrost {
                defrost.timer.turn = Seconds::new(1e9);
            }
        }),
        "timer.turn"
    );
}

#[test]
fn stretches_of_time_that_can_not_be_are_refused() {
    let mut it = Appliance::new(parts(Kind::ChestFreezer)).unwrap();
    for wrong in [-1.0, f64::NAN, f64::INFINITY, 366.0 * 86_400.0] {
        let error = it.advance(Seconds::new(wrong)).unwrap_err();
        assert_eq!(error.parameter, "seconds");
    }
    let course = it.advance(Seconds::new(0.0)).unwrap();
    assert_eq!(course.samples.len(), 1);
    assert!(it.advance(Seconds::new(1e-9)).is_ok());
}

#[test]
fn food_that_can_not_be_is_refused_and_changes_nothing() {
    let mut it = Appliance::new(parts(Kind::ChestFreezer)).unwrap();
    let before = it.energy();
    let mut name = |mass, celsius| {
        it.load(Kilograms::new(mass), Celsius::new(celsius))
            .unwrap_err()
            .parameter
    };
    assert_eq!(name(1e4, 20.0), "load.mass");
    assert_eq!(name(f64::NAN, 20.0), "load.mass");
    assert_eq!(name(1.0, 500.0), "load.temperature");
    assert_eq!(it.energy(), before);
}

#[test]
fn the_same_machine_does_the_same_to_the_last_bit() {
    for kind in Kind::ALL {
        let run = || {
            let mut it = Appliance::new(parts(kind)).unwrap();
            let course = it.advance(Seconds::new(40_000.0)).unwrap();
            (course, it.energy(), it.observe())
        };
        assert_eq!(run(), run());
    }
}

#[test]
fn a_fortnight_of_a_sound_machine_has_an_end() {
    let mut it = Appliance::new(parts(Kind::FrostFree)).unwrap();
    let course = it.advance(Seconds::new(14.0 * 86_400.0)).unwrap();
    assert!(course.samples.iter().all(|it| it.air.get().is_finite()));
    assert!(course.samples.iter().any(|it| it.defrosting));
}

/// Parts anywhere within their bounds, more often at an edge than chance would have it.
fn edge(least: f64, most: f64) -> impl Strategy<Value = f64> {
    prop_oneof![Just(least), Just(most), least..most]
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 40, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn whatever_is_within_bounds_stays_a_number(
        kind in prop::sample::select(Kind::ALL.to_vec()),
        refrigerant in prop::sample::select(Refrigerant::ALL.to_vec()),
        circuit in (edge(0.0, 1.0), edge(0.0, 0.02), edge(0.0, 1.0), edge(1e-7, 5e-5),
                    edge(0.0, 1e-5), edge(2e-5, 2e-3), edge(1e-9, 1e-6), edge(0.0, 1.0),
                    edge(2e-5, 3e-3), edge(5.0, 1000.0)),
        cabinet in (edge(-10.0, 50.0), edge(0.0, 1.0), edge(0.0, 1.0), edge(0.0, 1.0),
                    edge(200.0, 1e5), edge(0.05, 10.0), edge(0.1, 500.0), edge(0.0, 1.0)),
    ) {
        let mut it = Parts::example(kind, Mains::V115F60, refrigerant).unwrap();
        let c = &mut it.circuit;
        c.charge = Kilograms::new(circuit.0);
        c.air = Kilograms::new(circuit.1);
        c.moisture = Ratio::new(circuit.2);
        c.pump.displacement = CubicMetres::new(circuit.3);
        c.pump.back_leak = circuit.4;
        c.condenser.volume = CubicMetres::new(circuit.5);
        c.capillary.opening = circuit.6;
        c.capillary.free = Ratio::new(circuit.7);
        c.evaporator.volume = CubicMetres::new(circuit.8);
        c.evaporator.inner = WattsPerKelvin::new(circuit.9);
        it.cabinet.room = Celsius::new(cabinet.0);
        it.cabinet.humidity = Ratio::new(cabinet.1);
        it.cabinet.first.door.gap = Ratio::new(cabinet.2);
        it.cabinet.condenser.dirt = Ratio::new(cabinet.3);
        it.cabinet.first.air = quantity::JoulesPerKelvin::new(cabinet.4);
        it.cabinet.first.insulation = WattsPerKelvin::new(cabinet.5);
        it.cabinet.first.contents.mass = Kilograms::new(cabinet.6);
        let mut it = Appliance::new(it).unwrap();
        let course = it.advance(Seconds::new(3.0 * 3600.0)).unwrap();
        for sample in &course.samples {
            for value in [sample.air.get(), sample.food.get(), sample.suction.get(),
                          sample.discharge.get(), sample.watts.get(), sample.shell.get(),
                          sample.boiling.get(), sample.condenser.get()] {
                prop_assert!(value.is_finite());
            }
            prop_assert!(sample.suction.get() > 0.0 && sample.watts.get() >= 0.0);
        }
    }

    #[test]
    fn every_fault_at_every_severity_runs(
        kind in prop::sample::select(Kind::ALL.to_vec()),
        circuit in prop::sample::select(CircuitFault::ALL.to_vec()),
        cabinet in prop::sample::select(CabinetFault::ALL.to_vec()),
        severities in (edge(0.0, 1.0), edge(0.0, 1.0)),
    ) {
        let mut it = parts(kind);
        it.circuit = circuit.in_circuit(it.circuit, Ratio::new(severities.0));
        it.cabinet = cabinet.in_cabinet(it.cabinet, Ratio::new(severities.1));
        let mut it = Appliance::new(it).unwrap().chilled();
        it.advance(Seconds::new(12.0 * 3600.0)).unwrap();
        let seen = it.observe();
        prop_assert!(seen.air.get() > -60.0 && seen.air.get() < 120.0);
        prop_assert!(seen.suction.get().is_finite() && seen.discharge.get().is_finite());
    }
}
