//! Start gear of every kind, and the two clocks that run after a stop.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used)]

mod surroundings;

use quantity::WattsPerKelvin;
use quantity::{Amps, Hertz, NewtonMetres, Ohms, Ratio, Seconds, Volts};
use simulator::Chance;
use simulator::compressor::{Compressor, Parts, StartRecord};
use simulator::protector::Place;
use simulator::start_gear::{Branch, Capacitor, Contact, Electronic, StartGear, Switch};
use simulator::supply::Supply;
use surroundings::around;

fn outlet() -> Supply {
    Supply::outlet(Volts::new(115.0), Hertz::new(60.0))
}

fn with_gear(gear: StartGear) -> Parts {
    Parts {
        gear,
        ..Parts::example_115_volts()
    }
}

fn electronic() -> StartGear {
    let starter = Electronic {
        closed_for: Seconds::new(0.7),
        ready_after: Seconds::new(60.0),
        resistance: Ohms::new(1.0),
        contact: Contact::Sound,
    };
    let branch = Branch {
        switch: Switch::Electronic(starter),
        capacitor: Some(Capacitor::electrolytic(120.0)),
    };
    StartGear {
        branches: vec![branch],
    }
}

fn relay() -> StartGear {
    let capacitor = Capacitor::electrolytic(150.0);
    StartGear::current_relay(
        (Amps::new(7.6), Amps::new(6.8)),
        Ohms::new(0.3),
        Some(capacitor),
    )
}

fn potential() -> StartGear {
    StartGear { branches: vec![] }
        .with_relay_kit(150.0, Volts::new(130.0))
        .with_run_capacitor(8.0)
}

fn started(parts: Parts) -> (Compressor, StartRecord) {
    let mut compressor = Compressor::new(parts).unwrap();
    let longest = Seconds::new(10.0);
    let record = compressor
        .start(&outlet(), &around(4e5, 4e5), longest, &mut Chance::new(4))
        .unwrap();
    (compressor, record)
}

/// A start must be over within 3.5 s (common practice, no source).
#[test]
fn gear_of_every_kind_starts_and_lets_go() {
    for gear in [
        StartGear::ptc(Ohms::new(5.0)),
        StartGear::ptc(Ohms::new(5.0)).with_run_capacitor(10.0),
        StartGear::ptc(Ohms::new(5.0)).with_relay_kit(150.0, Volts::new(130.0)),
        StartGear::ptc(Ohms::new(5.0)).with_ptc_kit(150.0, Ohms::new(5.0)),
        relay(),
        potential(),
        electronic(),
    ] {
        let (mut compressor, record) = started(with_gear(gear));
        assert!(record.came_up);
        assert!(record.let_go.unwrap().get() < 3.5);
        let hour = Seconds::new(3600.0);
        let working = around(1.1e5, 1.1e6);
        let period = compressor
            .advance(hour, true, &outlet(), &working, &mut Chance::new(5))
            .unwrap();
        assert!(period.trips == 0 && (period.turned.get() - 3600.0).abs() < 1e-6);
    }
}

/// Two to three times the torque with a start capacitor, seen as a faster run-up (torque by the
/// formulas of the starting examples in `motor_textbooks.rs`).
#[test]
fn a_start_capacitor_brings_it_up_faster() {
    let up = |gear: StartGear| {
        let (_, record) = started(with_gear(gear));
        record.time_to_speed.unwrap().get()
    };
    let plain = up(StartGear::ptc(Ohms::new(5.0)));
    assert!(up(relay()) < 0.7 * plain);
    assert!(up(potential()) < 0.7 * plain);
}

/// An hour of running, a rest in which pressures level with a time constant of 70 s (they level in
/// three to five minutes: common practice, no source), and a try. Of twelve.
fn after_a_rest(gear: &StartGear, seconds: f64) -> usize {
    let come_up = |seed: u64| {
        let mut compressor = Compressor::new(with_gear(gear.clone())).unwrap();
        let mut chance = Chance::new(seed);
        let longest = Seconds::new(5.0);
        let level = around(4e5, 4e5);
        compressor
            .start(&outlet(), &level, longest, &mut chance)
            .unwrap();
        let hour = Seconds::new(3600.0);
        let working = around(1.1e5, 1.1e6);
        compressor
            .advance(hour, true, &outlet(), &working, &mut chance)
            .unwrap();
        let left = libm::exp(-seconds / 70.0);
        let then = around(4e5 - 2.9e5 * left, 4e5 + 7e5 * left);
        compressor
            .advance(Seconds::new(seconds), false, &outlet(), &then, &mut chance)
            .unwrap();
        let record = compressor
            .start(&outlet(), &then, longest, &mut chance)
            .unwrap();
        record.came_up
    };
    (0..12).filter(|&seed| come_up(seed)).count()
}

#[test]
fn a_hot_pellet_and_apart_pressures_refuse_until_both_clocks_have_run() {
    let plain = StartGear::ptc(Ohms::new(5.0));
    assert_eq!(after_a_rest(&plain, 15.0), 0);
    assert_eq!(after_a_rest(&plain, 600.0), 12);
    // A relay kit has no pellet to wait for.
    let kit = plain.with_relay_kit(150.0, Volts::new(130.0));
    assert!(after_a_rest(&kit, 30.0) > 6);
}

/// Shell protectors reset in minutes, those among the windings in 20 min and more (from memory).
/// Here no more is asked than that the inner one takes longer.
#[test]
fn a_protector_among_the_windings_takes_longer_to_reset() {
    let tries_in_an_hour = |place: Place, cooling: f64| {
        let mut parts = Parts::example_115_volts();
        parts.rotor.dry_friction = NewtonMetres::new(10.0);
        parts.protector.place = place;
        parts.protector.cooling = Ratio::new(cooling);
        let mut compressor = Compressor::new(parts).unwrap();
        let hour = Seconds::new(3600.0);
        let level = around(4e5, 4e5);
        let mut chance = Chance::new(1);
        compressor
            .advance(hour, true, &outlet(), &level, &mut chance)
            .unwrap()
            .trips
    };
    let outside = tries_in_an_hour(Place::Shell, 1.0);
    assert!(tries_in_an_hour(Place::Windings, 1.0) < outside);
    assert!(tries_in_an_hour(Place::Shell, 0.3) < outside);
}

/// A fan that blows over the shell keeps it cooler.
#[test]
fn a_better_cooled_shell_is_cooler() {
    let shell = |path: f64| {
        let mut parts = Parts::example_115_volts();
        parts.heat.shell_to_room = WattsPerKelvin::new(path);
        let (mut compressor, _) = started(parts);
        let time = Seconds::new(4.0 * 3600.0);
        let working = around(1.1e5, 1.1e6);
        compressor
            .advance(time, true, &outlet(), &working, &mut Chance::new(2))
            .unwrap();
        compressor.shell().get()
    };
    let usual = shell(1.6);
    // 50 to 80 °C is ordinary in a warm room (common practice, no source); this one is at 25 °C.
    assert!(usual > 45.0 && usual < 80.0, "{usual}");
    assert!(shell(3.0) < usual - 5.0);
}
