//! The unplugged bench against figures from standards, handbooks and closed forms.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used)]

use measure::{
    Band, Conductor, ProtectiveDevice, Trip, can_hurt, class_a_longest_time, discharge_time,
    leakage, peak_power, stored_energy, winding_temperature,
};
use quantity::{Amps, Celsius, Farads, Ohms, Sources, Uncertain, Volts};

fn close(found: f64, expected: f64, tolerance: f64, what: &str) {
    let off = (found - expected).abs();
    assert!(off <= tolerance, "{what}: {found} instead of {expected}");
}

fn hot(ratio: f64, conductor: Conductor) -> f64 {
    let cold = Uncertain::exact(Ohms::new(4.0));
    let hot = Uncertain::exact(Ohms::new(4.0 * ratio));
    let found = winding_temperature(&cold, Celsius::new(25.0), &hot, conductor).unwrap();
    found.value().get()
}

/// Source: IEC 60335-1, 11.8 (formula; clause from memory), with k = 234.5 for copper and 225
/// for aluminium as a UL product standard, §49, prints them. Ratios from 25 °C are derived from
/// it: (234.5 + T)/259.5.
#[test]
fn winding_temperature_follows_the_standards_formula() {
    close(
        hot(1.30, Conductor::Copper),
        102.85,
        0.01,
        "copper, ratio 1.30",
    );
    close(
        hot(1.30, Conductor::Aluminium),
        100.0,
        0.01,
        "aluminium, ratio 1.30",
    );
    for (ratio, expected) in [
        (1.135, 60.0),
        (1.212, 80.0),
        (1.289, 100.0),
        (1.405, 130.0),
        (1.443, 140.0),
    ] {
        // Half of the ratio's last digit is 0.13 K.
        close(hot(ratio, Conductor::Copper), expected, 0.13, "copper");
    }
}

/// Source: derived by JCGM 100:2008, equation 10, from ±0.1 Ω on 4.0 and on 5.2 Ω.
#[test]
fn a_tenth_of_an_ohm_is_six_kelvins() {
    let mut sources = Sources::default();
    let tenth = Ohms::new(0.1 / 3f64.sqrt());
    let cold = Uncertain::exact(Ohms::new(4.0)).with(sources.fresh(), tenth);
    let hot = Uncertain::exact(Ohms::new(5.2)).with(sources.fresh(), tenth);
    let found = winding_temperature(&cold, Celsius::new(25.0), &hot, Conductor::Copper).unwrap();
    close(found.standard().get(), 6.1, 0.05, "standard uncertainty");
}

/// Source: UL 943, T = (20/I)^1.43 for 6 to 264 mA.
#[test]
fn a_class_a_device_has_no_longer_than_its_standard_gives() {
    for (milliamps, seconds, digit) in [
        (6.0, 5.59, 0.005),
        (20.0, 1.00, 0.005),
        (30.0, 0.56, 0.005),
        (100.0, 0.10, 0.005),
        (264.0, 0.025, 0.0005),
    ] {
        let found = class_a_longest_time(Amps::new(milliamps / 1e3)).unwrap();
        close(found, seconds, digit, "longest time");
    }
    assert!(class_a_longest_time(Amps::new(5.9e-3)).is_none());
    assert!(class_a_longest_time(Amps::new(0.265)).is_none());
}

/// Source: UL 943 (no trip below 4 mA, trip from 6 mA) and IEC 61008-1 (15 and 30 mA); ohms are
/// derived by R = V/I.
#[test]
fn ohms_that_trip_are_those_of_the_standards_currents() {
    let class_a = |ohms| {
        ProtectiveDevice::GroundFault6Milliamps.at(leakage(Volts::new(120.0), Ohms::new(ohms)))
    };
    assert_eq!(class_a(30_001.0), Trip::No);
    assert_eq!(class_a(29_999.0), Trip::May);
    assert_eq!(class_a(20_001.0), Trip::May);
    assert_eq!(class_a(19_999.0), Trip::Must);
    let rcd = |ohms| {
        ProtectiveDevice::ResidualCurrent30Milliamps.at(leakage(Volts::new(230.0), Ohms::new(ohms)))
    };
    assert_eq!(rcd(15_400.0), Trip::No);
    assert_eq!(rcd(15_300.0), Trip::May);
    assert_eq!(rcd(7_600.0), Trip::Must);
    close(
        leakage(Volts::new(120.0), Ohms::new(2e6)).get(),
        60e-6,
        1e-12,
        "2 MΩ at 120 V",
    );
    close(
        leakage(Volts::new(240.0), Ohms::new(2e6)).get(),
        120e-6,
        1e-12,
        "2 MΩ at 240 V",
    );
}

/// Source: closed form ½·C·V²; rows for common household sizes at 115√2 and 230√2 V.
#[test]
fn stored_energy_is_half_c_v_squared() {
    for (microfarads, volts, joules, digit) in [
        (12.0, 163.0, 0.16, 0.005),
        (15.0, 350.0, 0.92, 0.005),
        (100.0, 163.0, 1.33, 0.005),
        (200.0, 163.0, 2.66, 0.005),
        (200.0, 325.0, 10.6, 0.05),
    ] {
        let found = stored_energy(Farads::new(microfarads * 1e-6), Volts::new(volts));
        close(found.get(), joules, digit, "energy");
    }
}

/// Source: closed form t = R·C·ln(V/V_end), P = V²/R, for 200 µF.
#[test]
fn discharge_takes_as_long_as_the_closed_form_says() {
    let c = Farads::new(200e-6);
    for (volts, kilo_ohms, to_50, to_5, watts) in [
        (163.0, 10.0, 2.4, 7.0, 2.7),
        (163.0, 15.0, 3.5, 10.5, 1.8),
        (325.0, 15.0, 5.6, 12.5, 7.0),
    ] {
        let (from, r) = (Volts::new(volts), Ohms::new(kilo_ohms * 1e3));
        let time = |to| discharge_time(c, r, from, Volts::new(to)).unwrap().get();
        close(time(50.0), to_50, 0.05, "to 50 V");
        close(time(5.0), to_5, 0.05, "to 5 V");
        close(peak_power(r, from).unwrap().get(), watts, 0.05, "power");
    }
    assert!(discharge_time(c, Ohms::new(1e4), Volts::new(100.0), Volts::new(0.0)).is_none());
    let below = discharge_time(c, Ohms::new(1e4), Volts::new(20.0), Volts::new(50.0)).unwrap();
    close(below.get(), 0.0, 0.0, "already below");
}

/// Source: from memory, after NFPA 70E and the DOE electrical safety rules: above 100 V and 1 J.
#[test]
fn a_run_capacitor_is_below_and_a_start_capacitor_above_the_hazard_line() {
    assert!(!can_hurt(Farads::new(12e-6), Volts::new(163.0)));
    assert!(can_hurt(Farads::new(200e-6), Volts::new(163.0)));
}

/// Source: component table of PTC types by maximum volts, 25 °C ±25 % (common practice).
#[test]
fn a_printed_ptc_may_be_off_by_a_quarter() {
    for nominal in [3.3, 4.7, 6.8, 10.0, 15.0, 22.0, 33.0, 47.0, 100.0] {
        let band = Band::of_marked(Ohms::new(nominal));
        close(band.least.get(), 0.75 * nominal, 1e-9, "least");
        close(band.most.get(), 1.25 * nominal, 1e-9, "most");
    }
}
