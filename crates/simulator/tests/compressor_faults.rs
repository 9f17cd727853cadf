//! What faults show as, one at a time, on machines that are sound otherwise.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used)]

mod surroundings;

use quantity::{Amps, Celsius, Farads, Hertz, NewtonMetres, Ohms, Ratio, Seconds, Volts};
use simulator::Chance;
use simulator::compressor::{Compressor, Parts, Period, StartRecord};
use simulator::protector::ProtectorFault;
use simulator::start_gear::{Capacitor, Contact, Ptc, StartGear, Switch};
use simulator::supply::{GroundFaultDevice, Supply};
use surroundings::around;

const LEVEL: (f64, f64) = (4e5, 4e5);
const WORKING: (f64, f64) = (1.1e5, 1.1e6);

fn outlet() -> Supply {
    Supply::outlet(Volts::new(115.0), Hertz::new(60.0))
}

fn started(parts: Parts, pressures: (f64, f64), seed: u64) -> (Compressor, StartRecord) {
    let mut compressor = Compressor::new(parts).unwrap();
    let around = around(pressures.0, pressures.1);
    let longest = Seconds::new(60.0);
    let record = compressor
        .start(&outlet(), &around, longest, &mut Chance::new(seed))
        .unwrap();
    (compressor, record)
}

/// How many of twenty tries come up.
fn of_twenty(parts: &Parts, pressures: (f64, f64)) -> usize {
    (0..20)
        .filter(|&seed| started(parts.clone(), pressures, seed).1.came_up)
        .count()
}

fn running(parts: Parts, seconds: f64) -> Period {
    let (mut compressor, _) = started(parts, LEVEL, 1);
    let around = around(WORKING.0, WORKING.1);
    let time = Seconds::new(seconds);
    compressor
        .advance(time, true, &outlet(), &around, &mut Chance::new(2))
        .unwrap()
}

fn with_ptc(change: impl Fn(&mut Ptc)) -> Parts {
    let mut parts = Parts::example_115_volts();
    for branch in &mut parts.gear.branches {
        if let Switch::Ptc(ptc) = &mut branch.switch {
            change(ptc);
        }
    }
    parts
}

/// Current relay and start capacitor, the relay's contact as given.
fn with_relay(contact: Contact, capacitance: f64) -> Parts {
    let mut parts = Parts::example_115_volts();
    let capacitor = Capacitor::electrolytic(capacitance);
    let coil = Ohms::new(0.3);
    parts.gear = StartGear::current_relay((Amps::new(7.6), Amps::new(6.8)), coil, Some(capacitor));
    for branch in &mut parts.gear.branches {
        if let Switch::CurrentRelay(relay) = &mut branch.switch {
            relay.contact = contact;
        }
    }
    parts
}

#[test]
fn it_starts_at_level_pressures_and_against_working_ones_by_luck() {
    let sound = Parts::example_115_volts();
    assert_eq!(of_twenty(&sound, LEVEL), 20);
    // Cold, the crank's resting place decides: a run-up of most of a turn carries it over the top.
    let by_luck = of_twenty(&sound, WORKING);
    assert!(by_luck > 0 && by_luck < 20, "{by_luck}");
}

#[test]
fn a_start_capacitor_starts_against_more() {
    let sound = of_twenty(&Parts::example_115_volts(), WORKING);
    let helped = of_twenty(&with_relay(Contact::Sound, 150.0), WORKING);
    assert!(helped > sound, "{helped} {sound}");
}

/// Starting torque follows the square of the volts (*Theory and Calculation of Electrical
/// Apparatus*, C. P. Steinmetz, 1917, T = k·Im·Ia·sin α): without friction all of it goes into
/// speed, so twice the volts give four times the speed after the first moments.
#[test]
fn torque_follows_the_square_of_the_volts() {
    let early = |volts: f64| {
        let mut supply = outlet();
        supply.volts = Volts::new(volts);
        let mut parts = Parts::example_115_volts();
        parts.rotor.dry_friction = NewtonMetres::new(0.0);
        parts.rotor.oil_friction = NewtonMetres::new(0.0);
        let mut compressor = Compressor::new(parts).unwrap();
        let around = around(LEVEL.0, LEVEL.1);
        let longest = Seconds::new(0.1);
        let record = compressor
            .start(&supply, &around, longest, &mut Chance::new(1))
            .unwrap();
        record.trace[1].speed.get()
    };
    let ratio = early(115.0) / early(57.5);
    // The slip of the faster one is a hundredth less by then.
    assert!((ratio - 4.0).abs() < 0.08, "{ratio}");
}

#[test]
fn without_a_start_winding_it_hums_and_trips() {
    let mut open = Parts::example_115_volts();
    open.motor.start.is_open = true;
    let no_pellet = with_ptc(|ptc| ptc.area_left = Ratio::new(0.0));
    let never = with_relay(Contact::NeverCloses, 150.0);
    let dry = with_relay(Contact::Sound, 0.0);
    for parts in [open, no_pellet, never, dry] {
        let (_, record) = started(parts, LEVEL, 1);
        assert!(!record.came_up);
        // 4 to 30 s (from memory), with current in the main winding alone.
        let tripped = record.tripped.unwrap().get();
        assert!(tripped > 4.0 && tripped < 30.0, "{tripped}");
        assert!(record.trace.iter().all(|one| one.start.get() < 1e-12));
    }
}

#[test]
fn a_start_winding_that_stays_in_trips_a_machine_that_turns() {
    let short = with_ptc(|ptc| ptc.short = Some(Ohms::new(1.0)));
    let welded = with_relay(Contact::Welded, 150.0);
    for parts in [short, welded] {
        let (compressor, record) = started(parts.clone(), LEVEL, 1);
        assert!(record.time_to_speed.is_some() && record.let_go.is_none());
        let period = running(parts, 60.0);
        assert!(
            period.trips > 0,
            "{:?} {:?}",
            compressor.speed(),
            period.line
        );
    }
    assert_eq!(running(Parts::example_115_volts(), 3600.0).trips, 0);
}

#[test]
fn a_seized_rotor_trips_again_and_again_and_a_tight_one_takes_more() {
    let mut seized = Parts::example_115_volts();
    seized.rotor.dry_friction = NewtonMetres::new(10.0);
    let (mut compressor, record) = started(seized, LEVEL, 1);
    assert!(!record.came_up && record.tripped.is_some());
    let around = around(LEVEL.0, LEVEL.1);
    let hour = Seconds::new(3600.0);
    let period = compressor
        .advance(hour, true, &outlet(), &around, &mut Chance::new(1))
        .unwrap();
    // Resets after 0.5 to 5 min (from memory).
    assert!(
        period.trips >= 10 && period.trips <= 120,
        "{}",
        period.trips
    );
    assert!(period.turned.get() < 1e-9);

    let mut tight = Parts::example_115_volts();
    tight.rotor.dry_friction = NewtonMetres::new(0.15);
    let (sound, slow) = (
        running(Parts::example_115_volts(), 3600.0),
        running(tight.clone(), 3600.0),
    );
    assert!(slow.watts.get() > sound.watts.get() + 20.0);
    let up = |parts: Parts| started(parts, LEVEL, 1).1.time_to_speed.unwrap();
    assert!(up(tight) > up(Parts::example_115_volts()));
}

#[test]
fn shorted_turns_take_more_current() {
    let mut short = Parts::example_115_volts();
    short.motor.main.shorted_share = Ratio::new(0.08);
    let (sound, short) = (
        running(Parts::example_115_volts(), 30.0),
        running(short, 30.0),
    );
    assert!(short.line.get() > 1.3 * sound.line.get());
}

/// A run capacitor brings the line's current nearer to its voltage.
#[test]
fn a_lost_run_capacitor_costs_amperes() {
    let mut with = Parts::example_115_volts();
    with.gear = with.gear.with_run_capacitor(12.0);
    let mut lost = with.clone();
    for branch in &mut lost.gear.branches {
        if let Some(capacitor) = &mut branch.capacitor {
            capacitor.capacitance = Farads::new(0.0);
        }
    }
    let (with, lost) = (running(with, 3600.0), running(lost, 3600.0));
    assert!(lost.line.get() > 1.1 * with.line.get());
}

#[test]
fn a_protector_fails_to_a_side() {
    let mut open = Parts::example_115_volts();
    open.protector.fault = ProtectorFault::Open;
    let (_, record) = started(open, LEVEL, 1);
    assert!(!record.came_up && record.peak_line.get() < 1e-30);
    let mut weak = Parts::example_115_volts();
    weak.protector.opens = Celsius::new(45.0);
    weak.protector.closes = Celsius::new(38.0);
    assert!(running(weak, 7200.0).trips > 0);
    let mut welded = Parts::example_115_volts();
    welded.rotor.dry_friction = NewtonMetres::new(10.0);
    welded.protector.fault = ProtectorFault::Welded;
    let (mut compressor, record) = started(welded, LEVEL, 1);
    assert!(record.tripped.is_none());
    // Minutes locked burn windings: past what the highest usual class, 180 °C, bears (IEC 60085).
    let around = around(LEVEL.0, LEVEL.1);
    let time = Seconds::new(600.0);
    let mut chance = Chance::new(2);
    compressor
        .advance(time, true, &outlet(), &around, &mut chance)
        .unwrap();
    assert!(
        compressor.main_winding().get() > 180.0,
        "{:?}",
        compressor.main_winding()
    );
}

#[test]
fn a_second_try_at_once_finds_the_pellet_hot() {
    let (mut compressor, record) = started(Parts::example_115_volts(), WORKING, 1);
    assert!(!record.came_up && compressor.pellet().unwrap().get() > 120.0);
    let level = around(LEVEL.0, LEVEL.1);
    let mut try_after = |seconds: f64| {
        let mut chance = Chance::new(3);
        compressor
            .advance(Seconds::new(seconds), false, &outlet(), &level, &mut chance)
            .unwrap();
        let longest = Seconds::new(3.0);
        compressor
            .start(&outlet(), &level, longest, &mut chance)
            .unwrap()
            .came_up
    };
    // Pressures are level, so that only the other clock counts.
    assert!(!try_after(2.0));
    assert!(try_after(400.0));
}

/// 4 to 6 mA at 120 V are 30 to 20 kΩ (UL 943).
#[test]
fn a_leaking_winding_trips_the_ground_fault_device_and_sound_ones_do_not() {
    let mut guarded = outlet();
    guarded.ground_fault_device = Some(GroundFaultDevice::CLASS_A);
    let surroundings = around(LEVEL.0, LEVEL.1);
    for (ohms, trips) in [(15_000.0, true), (2e6, false)] {
        let mut parts = Parts::example_115_volts();
        parts.motor.main.leak_to_shell = Some(Ohms::new(ohms));
        let mut compressor = Compressor::new(parts).unwrap();
        let longest = Seconds::new(5.0);
        let record = compressor
            .start(&guarded, &surroundings, longest, &mut Chance::new(1))
            .unwrap();
        assert_eq!(record.guard_tripped.is_some(), trips);
        assert_eq!(record.came_up, !trips);
        assert_eq!(compressor.guard_is_tripped(), trips);
        compressor.reset_guard();
        let time = Seconds::new(60.0);
        let mut chance = Chance::new(2);
        let off = compressor
            .advance(time, false, &guarded, &surroundings, &mut chance)
            .unwrap();
        // Unswitched, the winding is dead and can't leak.
        assert!(!compressor.guard_is_tripped() && off.energy.taken.get() < 1e-30);
    }
}

#[test]
fn a_long_thin_cord_takes_starts_away() {
    let with_cord = |ohms: f64| {
        let mut supply = outlet();
        supply.extension = Ohms::new(ohms);
        (0..20)
            .filter(|&seed| {
                let mut compressor = Compressor::new(Parts::example_115_volts()).unwrap();
                let surroundings = around(WORKING.0, WORKING.1);
                let longest = Seconds::new(3.0);
                compressor
                    .start(&supply, &surroundings, longest, &mut Chance::new(seed))
                    .unwrap()
                    .came_up
            })
            .count()
    };
    // 100 ft of 18 AWG, out and back, at 75 °C (NEC chapter 9, table 8): 1.6 Ω.
    assert!(
        with_cord(1.6) < with_cord(0.0),
        "{} {}",
        with_cord(1.6),
        with_cord(0.0)
    );
}
