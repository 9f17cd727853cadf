//! How long the flow through the capillary is heard after a stop, and whether a restart finds the
//! pressures level: directions that follow from how much has to pass how narrow an opening.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used)]

use quantity::{Pascals, Ratio, Seconds};
use simulator::Refrigerant;
use simulator::appliance::{Appliance, Kind, Mains, Parts};
use simulator::cabinet::Contacts;
use simulator::circuit::CircuitFault;

/// A chest freezer that has run for three hours and is then switched off.
fn stopped(fault: CircuitFault, severity: f64) -> Appliance {
    let mut parts = Parts::example(Kind::ChestFreezer, Mains::V230F50, Refrigerant::R600a).unwrap();
    parts.circuit = fault.in_circuit(parts.circuit, Ratio::new(severity));
    let mut it = Appliance::new(parts).unwrap();
    it.advance(Seconds::new(3.0 * 3600.0)).unwrap();
    parts.cabinet.thermostat.contacts = Contacts::StuckOpen;
    it.alter(parts).unwrap();
    it.advance(Seconds::new(1.0)).unwrap();
    it
}

fn gap(it: &Appliance) -> Pascals {
    let seen = it.observe();
    seen.discharge - seen.suction
}

/// Seconds until nineteen twentieths of the difference are gone, and for how many of them more
/// liquid than vapour passes: a hiss, not a gurgle.
fn levelling(fault: CircuitFault, severity: f64) -> (u32, u32) {
    let mut it = stopped(fault, severity);
    let first = gap(&it);
    let (mut seconds, mut hiss) = (0, 0);
    while gap(&it) > first * 0.05 && seconds < 20_000 {
        it.advance(Seconds::new(5.0)).unwrap();
        seconds += 5;
        let seen = it.observe();
        if seen.liquid_flow > seen.vapour_flow {
            hiss = seconds;
        }
    }
    (seconds, hiss)
}

#[test]
fn little_charge_and_leaking_valves_level_sooner_and_a_restriction_later() {
    let sound = levelling(CircuitFault::Leak, 0.0);
    for (fault, severity) in [
        (CircuitFault::Leak, 0.7),
        (CircuitFault::WornPump, 0.7),
        (CircuitFault::LeakingValves, 0.3),
    ] {
        let now = levelling(fault, severity);
        assert!(
            now.0 < sound.0 && now.1 < sound.1,
            "{fault:?} {now:?} {sound:?}"
        );
    }
    for (fault, severity) in [
        (CircuitFault::NarrowCapillary, 0.3),
        (CircuitFault::CloggedDrier, 0.9),
        (CircuitFault::Overcharge, 0.6),
    ] {
        let now = levelling(fault, severity);
        assert!(
            now.0 > sound.0 && now.1 > sound.1,
            "{fault:?} {now:?} {sound:?}"
        );
    }
    let blocked = levelling(CircuitFault::NarrowCapillary, 1.0);
    assert!(blocked.0 >= 20_000);
}

/// The drive of the example starts against 2.5 bar at most, as one without a start capacitor does
/// (common practice, no source, for the figure).
#[test]
fn a_restart_too_early_is_refused_until_the_pressures_have_come_near() {
    let mut it = stopped(CircuitFault::Leak, 0.0);
    let mut parts = *it.parts();
    parts.cabinet.thermostat.contacts = Contacts::StuckClosed;
    it.alter(parts).unwrap();
    it.advance(Seconds::new(5.0)).unwrap();
    assert!(it.observe().refused && gap(&it) > Pascals::new(2.5e5));
    let course = it.advance(Seconds::new(300.0)).unwrap();
    assert!(it.observe().running && course.starts == 1);
}
