//! Limits that need no figures: nothing in the pipes, nothing through the capillary, nothing that
//! turns; and more of a fault is no less of its sign.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used)]

use quantity::{Celsius, Kilograms, Pascals, Ratio, Seconds};
use simulator::Refrigerant;
use simulator::appliance::{Appliance, Demand, Drive, Kind, Mains, Parts, Turning};
use simulator::circuit::CircuitFault;

const HOUR: f64 = 3600.0;

fn chest(refrigerant: Refrigerant) -> Parts {
    Parts::example(Kind::ChestFreezer, Mains::V230F50, refrigerant).unwrap()
}

/// A chest freezer with a circuit's fault, after so many hours.
fn after(fault: CircuitFault, severity: f64, hours: f64) -> Appliance {
    let mut parts = chest(Refrigerant::R600a);
    parts.circuit = fault.in_circuit(parts.circuit, Ratio::new(severity));
    let mut it = Appliance::new(parts).unwrap();
    it.advance(Seconds::new(hours * HOUR)).unwrap();
    it
}

#[test]
fn without_charge_nothing_gets_cold_while_the_pump_turns() {
    for refrigerant in Refrigerant::ALL {
        let mut parts = chest(refrigerant);
        parts.circuit.charge = Kilograms::new(0.0);
        let mut it = Appliance::new(parts).unwrap();
        it.advance(Seconds::new(12.0 * HOUR)).unwrap();
        let seen = it.observe();
        assert!(seen.running);
        assert!((seen.air.get() - 25.0).abs() < 0.1, "{seen:?}");
        assert!((seen.condenser.get() - 25.0).abs() < 0.1, "{seen:?}");
    }
}

#[test]
fn a_blocked_capillary_or_drier_leaves_a_deep_vacuum_and_no_cold() {
    for fault in [CircuitFault::NarrowCapillary, CircuitFault::CloggedDrier] {
        let it = after(fault, 1.0, 8.0);
        let seen = it.observe();
        assert!(seen.suction < Pascals::new(2.5e4), "{seen:?}");
        assert!(seen.air > Celsius::new(20.0), "{seen:?}");
        assert!(seen.liquid_flow.abs() < 1e-12);
    }
}

/// Something that never turns.
#[derive(Debug, Clone, Copy)]
struct Dead;

impl Drive for Dead {
    fn step(&mut self, demand: &Demand) -> Turning {
        Turning {
            refused: demand.calls,
            ..Turning::default()
        }
    }
}

#[test]
fn with_a_dead_drive_everything_drifts_to_the_room() {
    for kind in [Kind::ChestFreezer, Kind::PlateRefrigerator] {
        let parts = Parts::example(kind, Mains::V115F60, Refrigerant::R134a).unwrap();
        let mut it = Appliance::with_drive(parts, Dead).unwrap().chilled();
        it.advance(Seconds::new(13.0 * 24.0 * HOUR)).unwrap();
        let seen = it.observe();
        assert!(seen.refused && !seen.running);
        for place in [
            seen.air,
            seen.food,
            seen.shell,
            seen.condenser,
            seen.evaporator[1],
        ] {
            assert!((place.get() - 25.0).abs() < 0.2, "{seen:?}");
        }
    }
}

#[test]
fn after_a_long_rest_both_sides_have_the_pressure_of_the_coldest_place() {
    for refrigerant in Refrigerant::ALL {
        let mut it = Appliance::with_drive(chest(refrigerant), Dead)
            .unwrap()
            .chilled();
        for _ in 0..20 {
            it.advance(Seconds::new(6.0 * HOUR)).unwrap();
            let seen = it.observe();
            let gap = (seen.discharge - seen.suction).get().abs();
            assert!(gap < 0.01 * seen.suction.get(), "{seen:?}");
            let coldest = seen
                .evaporator
                .iter()
                .fold(seen.condenser, |a, &b| if b < a { b } else { a });
            let level = refrigerant.saturation_pressure(coldest);
            let off = seen.suction.get() / level.get() - 1.0;
            assert!(off.abs() < 0.02, "{off} {seen:?}");
        }
    }
}

#[test]
fn less_charge_wets_less_of_the_evaporator() {
    let wetted: Vec<f64> = (0..=9)
        .map(|tenth| {
            after(CircuitFault::Leak, f64::from(tenth) / 10.0, 3.0)
                .observe()
                .wetted
                .get()
        })
        .collect();
    for pair in wetted.windows(2) {
        assert!(pair[1] <= pair[0] + 1e-3, "{wetted:?}");
    }
    assert!(wetted[0] > 0.9 && wetted[6] < 0.4, "{wetted:?}");
}

#[test]
fn a_partly_lost_charge_leaves_the_inlet_cold_and_the_end_warm() {
    let seen = after(CircuitFault::Leak, 0.5, 3.0).observe();
    let [inlet, _, end] = seen.evaporator;
    assert!((end - inlet).get() > 10.0, "{seen:?}");
    // The condenser is only lukewarm beside that of a sound one.
    let sound = after(CircuitFault::Leak, 0.0, 3.0).observe();
    assert!(seen.condenser < sound.condenser);
}

#[test]
fn more_dirt_on_the_condenser_means_more_pressure() {
    use simulator::cabinet::CabinetFault;
    let mut before = Pascals::new(0.0);
    for tenth in [0, 3, 6, 9] {
        let mut parts = chest(Refrigerant::R600a);
        let severity = Ratio::new(f64::from(tenth) / 10.0);
        parts.cabinet = CabinetFault::DirtyCondenser.in_cabinet(parts.cabinet, severity);
        let mut it = Appliance::new(parts).unwrap();
        it.advance(Seconds::new(1.5 * HOUR)).unwrap();
        let now = it.observe().discharge;
        assert!(now > before, "{tenth}: {now:?}");
        before = now;
    }
}

/// Low charge and a narrow capillary starve the evaporator alike. Where they leave the same food
/// equally cool, frost and watts hardly differ: what tells them apart must be sought elsewhere.
#[test]
fn low_charge_and_a_restriction_are_not_told_apart_by_frost_and_watts() {
    let signs = |fault, severity| {
        let mut it = after(fault, severity, 3.0);
        let watts = it.advance(Seconds::new(60.0)).unwrap().samples[0].watts;
        let seen = it.observe();
        (seen.air.get(), seen.wetted.get(), watts.get())
    };
    let (_, whole, full) = signs(CircuitFault::Leak, 0.0);
    for leak in [0.5, 0.6, 0.7] {
        let (air, wetted, watts) = signs(CircuitFault::Leak, leak);
        let (mut least, mut most) = (0.0, 1.0);
        for _ in 0..20 {
            let middle = (least + most) / 2.0;
            if signs(CircuitFault::NarrowCapillary, middle).0 > air {
                most = middle;
            } else {
                least = middle;
            }
        }
        let narrow = signs(CircuitFault::NarrowCapillary, least);
        assert!((narrow.0 - air).abs() < 0.1, "{narrow:?} {air}");
        assert!((narrow.1 - wetted).abs() < 0.1, "{narrow:?} {wetted}");
        // Liquid that backs up keeps the pressure of a restriction a little higher; mains within
        // their limits move the watts as much.
        assert!((narrow.2 / watts - 1.0).abs() < 0.1, "{narrow:?} {watts}");
        assert!(wetted < 0.5 * whole && watts < 0.9 * full);
    }
}

/// Water in the circuit freezes, blocks, thaws and is washed on: it cools at times.
#[test]
fn moisture_makes_the_cold_come_and_go() {
    let mut parts = chest(Refrigerant::R134a);
    parts.circuit = CircuitFault::Moisture.in_circuit(parts.circuit, Ratio::new(0.5));
    let mut it = Appliance::new(parts).unwrap();
    let course = it.advance(Seconds::new(48.0 * HOUR)).unwrap();
    // Once cold, the evaporator crosses −8 °C upwards again and again while the pump turns.
    let crossings = course
        .samples
        .windows(2)
        .filter(|pair| pair[0].running && pair[1].running)
        .filter(|pair| pair[0].evaporator.get() <= -8.0 && pair[1].evaporator.get() > -8.0)
        .count();
    assert!(crossings >= 3, "{crossings}");
}

#[test]
fn a_worn_pump_draws_few_watts_and_wets_the_evaporator_without_getting_it_cold() {
    for fault in [CircuitFault::WornPump, CircuitFault::LeakingValves] {
        let watts = |it: &mut Appliance| {
            let course = it.advance(Seconds::new(60.0)).unwrap();
            course.samples[0].watts
        };
        let (mut sound, mut worn) = (after(fault, 0.0, 3.0), after(fault, 0.7, 3.0));
        let (whole, seen) = (sound.observe(), worn.observe());
        assert!(seen.wetted.get() > 0.9 && seen.evaporator[1] > whole.evaporator[1]);
        assert!(seen.suction > whole.suction && seen.discharge < whole.discharge);
        assert!(watts(&mut worn).get() < 0.8 * watts(&mut sound).get());
    }
}

#[test]
fn too_much_charge_brings_liquid_into_the_suction_line_and_air_brings_pressure() {
    let sound = after(CircuitFault::Overcharge, 0.0, 3.0).observe();
    let full = after(CircuitFault::Overcharge, 0.8, 3.0).observe();
    assert!(full.suction_line.get() < 0.0 && sound.suction_line.get() > 20.0);
    assert!(full.discharge > sound.discharge);
    let air = after(CircuitFault::Air, 0.3, 3.0).observe();
    assert!(air.discharge.get() > 1.2 * sound.discharge.get());
    // Air leaves the condenser no hotter than the pressure says.
    assert!((air.condenser - sound.condenser).get() < 3.0);
}

#[test]
fn a_suction_line_off_the_capillary_is_cold_outside_and_cools_less() {
    let sound = after(CircuitFault::LooseExchanger, 0.0, 3.0).observe();
    let loose = after(CircuitFault::LooseExchanger, 1.0, 3.0).observe();
    assert!(loose.suction_line.get() < 0.0 && sound.suction_line.get() > 20.0);
    assert!(loose.carried_liquid.get() < 1e-9 && loose.air > sound.air);
    assert!((loose.condenser - sound.condenser).get().abs() < 3.0);
}

#[test]
fn a_clogged_drier_is_cold_behind_and_warm_before() {
    let seen = after(CircuitFault::CloggedDrier, 0.9, 3.0).observe();
    assert!((seen.condenser_outlet - seen.drier_outlet).get() > 10.0);
    let sound = after(CircuitFault::CloggedDrier, 0.0, 3.0).observe();
    assert!((sound.condenser_outlet - sound.drier_outlet).get() < 2.0);
}
