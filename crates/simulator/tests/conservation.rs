//! Charge and energy are kept, whatever happens and whatever is broken.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used)]

use quantity::{Celsius, Kilograms, Ratio, Seconds};
use simulator::Refrigerant;
use simulator::appliance::{Appliance, Kind, Mains, Parts};
use simulator::cabinet::CabinetFault;
use simulator::circuit::CircuitFault;

fn parts(kind: Kind, refrigerant: Refrigerant) -> Parts {
    Parts::example(kind, Mains::V230F50, refrigerant).unwrap()
}

/// Follows a machine minute by minute; all that is stored must be what was brought, relative to
/// all that has passed.
fn kept(mut it: Appliance, hours: u32) -> f64 {
    let charge = it.charge().get();
    let mut worst: f64 = 0.0;
    let mut passed = 1.0;
    for _ in 0..hours * 60 {
        let before = it.energy();
        it.advance(Seconds::new(60.0)).unwrap();
        let now = it.energy();
        passed += (now.mains - before.mains).get().abs() + (now.room - before.room).get().abs();
        let brought = now.mains + now.room + now.moisture + now.brought;
        worst = worst.max((now.stored - brought).get().abs() / passed);
        if charge > 0.0 {
            worst = worst.max((it.charge().get() / charge - 1.0).abs());
        }
    }
    worst
}

#[test]
fn sound_machines_keep_charge_and_energy() {
    for kind in Kind::ALL {
        for refrigerant in Refrigerant::ALL {
            let it = Appliance::new(parts(kind, refrigerant)).unwrap();
            let worst = kept(it, 14);
            assert!(worst < 1e-9, "{kind:?} {refrigerant:?}: {worst:e}");
        }
    }
}

#[test]
fn broken_machines_keep_them_too() {
    for fault in CircuitFault::ALL {
        for severity in [0.3, 1.0] {
            let mut broken = parts(Kind::ChestFreezer, Refrigerant::R600a);
            broken.circuit = fault.in_circuit(broken.circuit, Ratio::new(severity));
            let worst = kept(Appliance::new(broken).unwrap(), 6);
            assert!(worst < 1e-9, "{fault:?} {severity}: {worst:e}");
        }
    }
    for fault in CabinetFault::ALL {
        let mut broken = parts(Kind::FrostFree, Refrigerant::R134a);
        broken.cabinet = fault.in_cabinet(broken.cabinet, Ratio::new(1.0));
        let worst = kept(Appliance::new(broken).unwrap().chilled(), 14);
        assert!(worst < 1e-9, "{fault:?}: {worst:e}");
    }
}

#[test]
fn food_put_in_and_parts_changed_are_booked() {
    let mut it = Appliance::new(parts(Kind::UprightFreezer, Refrigerant::R290)).unwrap();
    it.advance(Seconds::new(20_000.0)).unwrap();
    it.load(Kilograms::new(10.0), Celsius::new(20.0)).unwrap();
    it.advance(Seconds::new(5000.0)).unwrap();
    let mut leaky = *it.parts();
    leaky.circuit.charge = leaky.circuit.charge * 0.6;
    leaky.cabinet.first.air = leaky.cabinet.first.air * 1.5;
    it.alter(leaky).unwrap();
    let charge = it.charge().get();
    assert!((charge / leaky.circuit.charge.get() - 1.0).abs() < 0.01);
    assert!(kept(it, 3) < 1e-9);
}
