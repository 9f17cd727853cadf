//! The driven compressor: what it draws, what stops it, and that its energy is kept.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used)]

mod surroundings;

use proptest::prelude::*;
use quantity::{Hertz, NewtonMetres, Ohms, Ratio, Seconds, Volts};
use simulator::Chance;
use simulator::compressor::{Energy, Period, StartRecord};
use simulator::inverter::{BoardFault, InverterCompressor, InverterParts};
use simulator::supply::{GroundFaultDevice, Supply};
use surroundings::around;

fn outlet() -> Supply {
    Supply::outlet(Volts::new(230.0), Hertz::new(50.0))
}

fn kept(energy: &Energy) -> bool {
    let taken = energy.taken.get();
    (energy.gone().get() - taken).abs() <= 1e-9 * taken.max(1e-6)
}

fn started(parts: InverterParts, supply: &Supply) -> (InverterCompressor, StartRecord) {
    let mut compressor = InverterCompressor::new(parts).unwrap();
    let level = around(4e5, 4e5);
    let record = compressor
        .start(Hertz::new(50.0), supply, &level, &mut Chance::new(1))
        .unwrap();
    (compressor, record)
}

fn running(parts: InverterParts, turns: f64) -> Period {
    let (mut compressor, _) = started(parts, &outlet());
    compressor
        .advance(
            Seconds::new(3600.0),
            Some(Hertz::new(turns)),
            &outlet(),
            &around(1.1e5, 1.1e6),
            &mut Chance::new(2),
        )
        .unwrap()
}

#[test]
fn it_comes_up_softly_and_draws_by_its_speed() {
    let parts = InverterParts::example_230_volts();
    let (compressor, record) = started(parts, &outlet());
    assert!(record.came_up && kept(&record.energy));
    assert!((compressor.speed().get() - 50.0).abs() < 3.0);
    // No surge: never more than a few times what it then runs on.
    let (slow, fast) = (running(parts, 25.0), running(parts, 60.0));
    assert!(kept(&slow.energy) && kept(&fast.energy));
    assert!(fast.watts.get() > 1.8 * slow.watts.get());
    assert!(record.peak_line.get() < 3.0 * fast.line.get());
}

#[test]
fn a_board_without_life_or_signal_leaves_it_at_rest() {
    for (fault, watts) in [(BoardFault::Dead, 0.0), (BoardFault::NoSignal, 2.0)] {
        let mut parts = InverterParts::example_230_volts();
        parts.board.fault = fault;
        let (_, record) = started(parts, &outlet());
        assert!(!record.came_up && record.trace.is_empty());
        let period = running(parts, 50.0);
        assert!((period.watts.get() - watts).abs() < 0.01 && kept(&period.energy));
        assert!(period.turned.get() < 1e-12);
    }
}

#[test]
fn a_seized_pump_a_lost_phase_or_low_volts_keep_it_from_coming_up() {
    let mut seized = InverterParts::example_230_volts();
    seized.rotor.dry_friction = NewtonMetres::new(10.0);
    let (mut compressor, record) = started(seized, &outlet());
    assert!(!record.came_up && kept(&record.energy) && record.peak_line.get() > 0.0);
    // It tries again and again.
    let time = Seconds::new(120.0);
    let demand = Some(Hertz::new(50.0));
    let level = around(4e5, 4e5);
    let period = compressor
        .advance(time, demand, &outlet(), &level, &mut Chance::new(3))
        .unwrap();
    assert!(period.tries >= 5 && kept(&period.energy));

    let mut low = outlet();
    low.volts = Volts::new(120.0);
    assert!(!started(InverterParts::example_230_volts(), &low).1.came_up);
    let mut broken = InverterParts::example_230_volts();
    broken.winding.is_open = true;
    assert!(!started(broken, &outlet()).1.came_up);
}

/// Against working pressures two windings fail where three don't.
#[test]
fn two_windings_do_less_than_three() {
    let count = |parts: InverterParts| {
        (0..20)
            .filter(|&seed| {
                let mut compressor = InverterCompressor::new(parts).unwrap();
                compressor
                    .start(
                        Hertz::new(50.0),
                        &outlet(),
                        &around(2.0e5, 8.0e5),
                        &mut Chance::new(seed),
                    )
                    .unwrap()
                    .came_up
            })
            .count()
    };
    let whole = InverterParts::example_230_volts();
    let mut two = whole;
    two.board.fault = BoardFault::OpenSwitch;
    assert!(count(two) < count(whole), "{} {}", count(two), count(whole));
}

#[test]
fn shorted_turns_brake_and_too_thin_cords_stop_it() {
    let sound = InverterParts::example_230_volts();
    let mut short = sound;
    short.winding.shorted_share = Ratio::new(0.05);
    assert!(running(short, 50.0).watts.get() > running(sound, 50.0).watts.get() + 1.0);
    let mut thin = outlet();
    thin.extension = Ohms::new(100.0);
    assert!(!started(sound, &thin).1.came_up);
}

#[test]
fn a_leaking_winding_trips_the_ground_fault_device() {
    let mut guarded = outlet();
    guarded.ground_fault_device = Some(GroundFaultDevice::RESIDUAL_30);
    for (ohms, trips) in [(5_000.0, true), (2e6, false)] {
        let mut parts = InverterParts::example_230_volts();
        parts.winding.leak_to_shell = Some(Ohms::new(ohms));
        let (compressor, record) = started(parts, &guarded);
        assert_eq!(record.came_up, !trips);
        assert_eq!(compressor.guard_is_tripped(), trips);
    }
}

#[test]
fn a_demand_beyond_any_board_is_refused_by_name() {
    let mut compressor = InverterCompressor::new(InverterParts::example_115_volts()).unwrap();
    let error = compressor
        .start(
            Hertz::new(1000.0),
            &outlet(),
            &around(4e5, 4e5),
            &mut Chance::new(1),
        )
        .unwrap_err();
    assert_eq!(error.parameter, "demand");
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 30, failure_persistence: None, ..ProptestConfig::default() })]

    /// Anything inside the bounds gives numbers and keeps its energy, however odd the machine.
    #[test]
    fn whatever_is_let_in_gives_numbers(
        ohms in 0.1..100.0_f64,
        magnet in 0.1..10.0_f64,
        friction in 0.0..2.0_f64,
        volts in 0.0..300.0_f64,
        cord in 0.0..50.0_f64,
        share in 0.0..0.9_f64,
        high in 0.0..3e6_f64,
        demand in 5.0..150.0_f64,
        seed in any::<u64>(),
    ) {
        let mut parts = InverterParts::example_230_volts();
        parts.winding.resistance = Ohms::new(ohms);
        parts.winding.shorted_share = Ratio::new(share);
        parts.volts_per_turn = Volts::new(magnet);
        parts.rotor.dry_friction = NewtonMetres::new(friction);
        let mut supply = outlet();
        supply.volts = Volts::new(volts);
        supply.cord = Ohms::new(cord);
        let surroundings = around(1e5, high);
        let mut compressor = InverterCompressor::new(parts).unwrap();
        let mut chance = Chance::new(seed);
        let period = compressor
            .advance(
                Seconds::new(100.0),
                Some(Hertz::new(demand)),
                &supply,
                &surroundings,
                &mut chance,
            )
            .unwrap();
        prop_assert!(period.energy.gone().get().is_finite());
        prop_assert!(kept(&period.energy), "{:?}", period.energy);
        prop_assert!(compressor.shell().get().is_finite() && compressor.speed().get().is_finite());
    }
}
