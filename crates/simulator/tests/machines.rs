//! Whole machines do what such machines do, because of what they are made of.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used, clippy::panic)]

use proptest::prelude::*;
use quantity::{Celsius, Ratio, Seconds};
use simulator::appliance::Kind;
use simulator::machine::{Ailment, Blueprint, Gear, Heard, Machine, Session, Trouble};
use simulator::{Chance, ParameterError};

const QUARTER: Seconds = Seconds::new(900.0);
const NIGHT: Seconds = Seconds::new(43_200.0);

fn blueprint(kind: Kind, is_inverter: bool, seed: u64) -> Blueprint {
    Blueprint::drawn(kind, is_inverter, &mut Chance::new(seed))
}

fn machine(blueprint: &Blueprint, ailments: &[(Ailment, f64)], seed: u64) -> Machine {
    let troubles: Vec<Trouble> = ailments
        .iter()
        .map(|&(ailment, severity)| Trouble {
            ailment,
            severity: Ratio::new(severity),
        })
        .collect();
    Machine::build(blueprint, &troubles, Chance::new(seed)).unwrap()
}

/// A chest freezer with this start gear.
fn chest(gear: Gear, ailments: &[(Ailment, f64)]) -> Machine {
    let seeds = 0..200;
    let drawn = seeds.map(|seed| blueprint(Kind::ChestFreezer, false, seed));
    let blueprint = drawn.into_iter().find(|one| one.gear == gear).unwrap();
    machine(&blueprint, ailments, 9)
}

fn quarter(machine: &Machine) -> Session {
    machine.plug_in(QUARTER).unwrap()
}

#[test]
fn sound_machines_of_every_kind_start_and_get_cold_overnight() {
    for (seed, kind) in (0..).zip(Kind::ALL) {
        for is_inverter in [false, true] {
            let blueprint = blueprint(kind, is_inverter, seed);
            let night = machine(&blueprint, &[], seed).plug_in(NIGHT).unwrap();
            assert!(night.has_run() && !night.is_tripped(), "{blueprint:?}");
            let (air, _) = night.settled();
            let target = match kind {
                Kind::PlateRefrigerator => 9.0,
                Kind::FrostFreeOneThermostat => -6.0,
                _ => -12.0,
            };
            assert!(air.get() < target, "{blueprint:?}: {air:?}");
        }
    }
}

#[test]
fn a_seized_rotor_hums_until_the_protector_clicks_with_any_start_gear() {
    let seized = chest(Gear::Ptc, &[(Ailment::RotorSeized, 1.0)]);
    for session in [
        quarter(&seized),
        seized.with_good_device(QUARTER).unwrap(),
        seized.with_start_kit(QUARTER).unwrap(),
    ] {
        assert!(!session.has_run());
        assert!(session.times(Heard::Hums) > 0 && session.times(Heard::Clicks) > 0);
    }
}

#[test]
fn an_open_start_device_hums_and_a_good_one_in_its_place_starts() {
    let machine = chest(Gear::Ptc, &[(Ailment::StartDeviceOpen, 1.0)]);
    assert!(!quarter(&machine).has_run());
    assert!(machine.with_good_device(QUARTER).unwrap().has_run());
}

#[test]
fn a_rotor_that_sticks_hums_and_runs_as_any_other_once_a_kit_has_freed_it() {
    let tight = chest(Gear::Ptc, &[(Ailment::RotorTight, 0.4)]);
    assert!(!quarter(&tight).has_run());
    let freed = tight.with_start_kit(QUARTER).unwrap();
    assert!(freed.is_turning());
    let sound = quarter(&chest(Gear::Ptc, &[]));
    let (watts, usual) = (freed.now().watts.get(), sound.now().watts.get());
    // A tenth of what held it is little beside what the gas asks for.
    assert!(watts > usual && watts < 1.8 * usual, "{watts} for {usual}");
}

#[test]
fn what_is_off_or_cut_off_is_silent_and_draws_nothing() {
    for ailment in [
        Ailment::CordOpen,
        Ailment::SetOff,
        Ailment::ThermostatOpen,
        Ailment::ProtectorOpen,
        Ailment::InnerProtectorOpen,
        Ailment::ConnectorBurnt,
    ] {
        let machine = chest(Gear::Ptc, &[(ailment, 1.0)]);
        if machine.troubles().is_empty() {
            continue;
        }
        let session = quarter(&machine);
        assert!(session.events().is_empty(), "{ailment:?}");
        assert!(session.now().watts.get() < 1.0, "{ailment:?}");
    }
    assert!(!quarter(&chest(Gear::Ptc, &[(Ailment::CordOpen, 1.0)])).has_power());
}

#[test]
fn a_leak_to_the_shell_trips_its_outlet_and_is_found_by_a_meter() {
    let leaks = chest(Gear::Ptc, &[(Ailment::WindingLeaks, 0.9)]);
    assert!(quarter(&leaks).is_tripped());
    assert!(leaks.bench().pins_to_shell().is_some());
    assert!(leaks.bench().blades_to_metal().is_some());
    let touchy = chest(Gear::Ptc, &[(Ailment::TouchyDevice, 1.0)]);
    assert!(quarter(&touchy).is_tripped());
    assert!(touchy.bench().blades_to_metal().is_none());
    assert!(!touchy.plug_in_elsewhere(QUARTER).unwrap().is_tripped());
}

#[test]
fn an_open_winding_leaves_one_pair_and_sound_ones_add_up() {
    let ohms = |machine: &Machine| -> Vec<Option<f64>> {
        let bench = machine.bench();
        let pairs = [(1, 2), (1, 3), (2, 3)];
        pairs
            .map(|(one, other)| bench.between_pins(one, other).map(|ohms| ohms.get()))
            .to_vec()
    };
    let open = chest(Gear::Ptc, &[(Ailment::MainWindingOpen, 1.0)]);
    assert_eq!(ohms(&open).iter().flatten().count(), 1);
    let mut sound: Vec<f64> = ohms(&chest(Gear::Ptc, &[])).into_iter().flatten().collect();
    sound.sort_by(f64::total_cmp);
    assert!((sound[0] + sound[1] - sound[2]).abs() < 1e-9);
}

#[test]
fn frost_of_a_failed_defrost_lies_as_thick_as_the_fault_is_bad() {
    let blueprint = blueprint(Kind::FrostFree, false, 3);
    for ailment in [Ailment::NeverDefrosts, Ailment::HeaterOpen, Ailment::IcedUp] {
        let frost = |severity| {
            machine(&blueprint, &[(ailment, severity)], 3)
                .bench()
                .frost()
        };
        assert!((frost(0.0).get() - 0.6).abs() < 1e-12, "{ailment:?}");
        assert!((frost(1.0).get() - 1.0).abs() < 1e-12, "{ailment:?}");
    }
}

#[test]
fn less_charge_never_cools_better() {
    let blueprint = blueprint(Kind::ChestFreezer, false, 1);
    let air = |severity: f64| {
        let machine = machine(&blueprint, &[(Ailment::ChargeLow, severity)], 1);
        machine.plug_in(NIGHT).unwrap().settled().0.get()
    };
    let temperatures = [0.0, 0.5, 1.0].map(air);
    assert!(temperatures.is_sorted(), "{temperatures:?}");
    let gone = machine(&blueprint, &[(Ailment::ChargeGone, 1.0)], 1);
    assert!(gone.plug_in(NIGHT).unwrap().settled().0.get() > 10.0);
}

#[test]
fn pressures_that_are_not_level_hold_the_motor_for_a_moment_only() {
    let machine = chest(Gear::Ptc, &[]);
    let running = machine.plug_in(Seconds::new(2_100.0)).unwrap();
    let at_once = running
        .again(Seconds::new(3.0), Seconds::new(10.0))
        .unwrap();
    assert!(!at_once.has_run());
    let rested = running
        .again(Seconds::new(1_200.0), Seconds::new(10.0))
        .unwrap();
    assert!(rested.has_run());
}

#[test]
fn the_same_chance_gives_the_same_machine_to_the_bit() {
    let blueprint = blueprint(Kind::FrostFree, false, 5);
    let course = || {
        let machine = machine(&blueprint, &[(Ailment::RotorTight, 0.6)], 5);
        machine.plug_in(QUARTER).unwrap().course().clone()
    };
    assert_eq!(course(), course());
}

#[test]
fn what_no_machine_has_is_refused_by_its_name() {
    let mut odd = blueprint(Kind::FrostFree, false, 1);
    let trouble = |severity: f64| Trouble {
        ailment: Ailment::CordOpen,
        severity: Ratio::new(severity),
    };
    let refused = |blueprint: &Blueprint, severity: f64| -> ParameterError {
        Machine::build(blueprint, &[trouble(severity)], Chance::new(1)).unwrap_err()
    };
    assert_eq!(refused(&odd, 1.5).parameter, "trouble.severity");
    assert_eq!(refused(&odd, f64::NAN).parameter, "trouble.severity");
    odd.room = Celsius::new(-60.0);
    assert_eq!(refused(&odd, 0.5).parameter, "blueprint.room");
    let machine = chest(Gear::Ptc, &[]);
    for seconds in [f64::NAN, -1.0, 3.2e7] {
        let error = machine.plug_in(Seconds::new(seconds)).unwrap_err();
        assert_eq!(error.parameter, "seconds");
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(60))]

    #[test]
    fn any_two_ailments_at_any_severity_give_numbers(
        kind in 0..Kind::ALL.len(),
        is_inverter: bool,
        one in 0..Ailment::ALL.len(),
        other in 0..Ailment::ALL.len(),
        severities in [0.0..=1.0, 0.0..=1.0],
        seed: u64,
    ) {
        let blueprint = blueprint(Kind::ALL[kind], is_inverter, seed);
        let ailments = [
            (Ailment::ALL[one], severities[0]),
            (Ailment::ALL[other], severities[1]),
        ];
        let session = quarter(&machine(&blueprint, &ailments, seed));
        for sample in &session.course().samples {
            let numbers = [
                sample.air.get(),
                sample.evaporator.get(),
                sample.condenser.get(),
                sample.shell.get(),
                sample.suction.get(),
                sample.discharge.get(),
                sample.watts.get(),
            ];
            prop_assert!(numbers.iter().all(|number| number.is_finite()), "{:?}", ailments);
        }
    }
}
