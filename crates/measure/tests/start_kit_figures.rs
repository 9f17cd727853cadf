//! Start capacitors against textbooks' worked examples, to the digits printed.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used)]

use measure::start_kit::{Impedance, Standstill, capacitance_of, capacitor};
use quantity::{Farads, Hertz, Ohms, Volts};

fn close(found: f64, expected: f64, tolerance: f64, what: &str) {
    let off = (found - expected).abs();
    assert!(off <= tolerance, "{what}: {found} instead of {expected}");
}

fn winding(resistance: f64, reactance: f64) -> Impedance {
    Impedance::new(Ohms::new(resistance), Ohms::new(reactance))
}

fn motor(main: (f64, f64), start: (f64, f64)) -> Standstill {
    Standstill::new(winding(main.0, main.1), winding(start.0, start.1)).unwrap()
}

/// Main 4.5 + j3.7 Ω, auxiliary 9.5 + j3.5 Ω, 120 V.
fn split_phase() -> Standstill {
    motor((4.5, 3.7), (9.5, 3.5))
}

fn micro(reactance: Ohms, hertz: f64) -> f64 {
    capacitance_of(reactance, Hertz::new(hertz)).unwrap().get() * 1e6
}

fn with_micro(motor: Standstill, micro: f64, hertz: f64) -> Standstill {
    motor.with_start_series(capacitor(Farads::new(micro * 1e-6), Hertz::new(hertz)).unwrap())
}

/// Source: Fitzgerald, Kingsley & Umans, *Electric Machinery*, 6e, example 9.1 (printed 177 µF,
/// which gives 89.83°; exact arithmetic 176.2), and practice problem 9.1 (200 µF, 85.2°).
#[test]
fn the_textbooks_capacitor_for_a_right_angle() {
    let motor = split_phase();
    close(motor.quadrature().get(), 15.054, 0.0005, "ohms");
    close(micro(motor.quadrature(), 60.0), 176.2, 0.05, "60 Hz");
    close(
        with_micro(motor, 177.0, 60.0).angle_degrees(),
        89.83,
        0.005,
        "177 µF",
    );
    close(
        with_micro(motor, 200.0, 60.0).angle_degrees(),
        85.21,
        0.005,
        "200 µF",
    );
}

/// Source: B. L. Theraja, *A Textbook of Electrical Technology*, chapter 36: the same windings on
/// 230 V, 50 Hz (attribution from memory), printed 211 to 212 µF.
#[test]
fn the_same_windings_at_fifty_hertz() {
    close(
        micro(split_phase().quadrature(), 50.0),
        211.4,
        0.05,
        "50 Hz",
    );
}

/// Source: derived from the same example: currents, angle and torque without a capacitor, with
/// that for a right angle, and with that for the greatest torque.
#[test]
fn currents_and_torque_without_and_with_capacitors() {
    let (motor, volts) = (split_phase(), Volts::new(120.0));
    close(motor.main_current(volts).get(), 20.60, 0.005, "main");
    close(motor.start_current(volts).get(), 11.85, 0.005, "start");
    close(motor.angle_degrees(), 19.20, 0.005, "angle");
    close(motor.line_current(volts).get(), 32.03, 0.005, "line");
    close(motor.torque(volts), 80.30, 0.005, "torque");

    let right = motor.with_start_series(winding(0.0, -motor.quadrature().get()));
    close(right.start_current(volts).get(), 8.02, 0.005, "start");
    close(right.angle_degrees(), 90.0, 1e-9, "angle");
    close(right.line_current(volts).get(), 22.105, 0.0005, "line");
    close(right.torque(volts), 165.2, 0.05, "torque");

    let greatest = motor.greatest_torque();
    close(greatest.get(), 7.988, 0.0005, "ohms");
    close(micro(greatest, 60.0), 332.1, 0.05, "microfarads");
    let best = motor.with_start_series(winding(0.0, -greatest.get()));
    close(best.torque(volts), 212.7, 0.05, "torque");
}

/// The power factor that the supply's module takes for a rotor at rest is this motor's.
#[test]
fn the_power_factor_of_a_rotor_at_rest_is_the_same_motors() {
    let (motor, volts) = (split_phase(), Volts::new(120.0));
    let (main, start) = (
        motor.main_current(volts).get(),
        motor.start_current(volts).get(),
    );
    let watts = main * main * 4.5 + start * start * 9.5;
    let factor = watts / (120.0 * motor.line_current(volts).get());
    let stated = measure::supply::LOCKED_ROTOR_POWER_FACTOR.get();
    close(stated, factor, 0.0005, "power factor");
}

/// Source: an examination question: main 100 V, 2 A, 40 W; auxiliary 80 V, 1 A, 50 W; 50 Hz.
/// Worked answer 47.1 µF for the greatest torque; both answers circulate.
#[test]
fn windings_by_volts_amperes_and_watts() {
    let by = |volts: f64, amps: f64, watts: f64| {
        let (size, resistance) = (volts / amps, watts / (amps * amps));
        (resistance, (size * size - resistance * resistance).sqrt())
    };
    let motor = motor(by(100.0, 2.0, 40.0), by(80.0, 1.0, 50.0));
    close(motor.main().reactance.get(), 48.99, 0.005, "main");
    close(motor.start().reactance.get(), 62.45, 0.005, "start");
    close(motor.greatest_torque().get(), 67.50, 0.005, "ohms");
    close(
        micro(motor.greatest_torque(), 50.0),
        47.16,
        0.005,
        "greatest",
    );
    close(micro(motor.quadrature(), 50.0), 43.81, 0.005, "quadrature");
}

/// Source: C. P. Steinmetz, *Theory and Calculation of Electrical Apparatus* (1917), §70, p. 108
/// (public domain): two like circuits Z with Z1 and Z2 in series. Printed: 2.23 e, torque 5,
/// current 10 e; and 0.743 e, 0.555, 3.33 e. Torque there is e1·e2·sin φ of the windings' volts.
#[test]
fn the_printed_monocyclic_devices() {
    let rows = [
        ((0.1, 0.3), -0.2, -0.4, 2.236, 5.0, 10.0),
        ((0.3, 0.1), 0.2, -0.4, 0.745, 0.556, 3.333),
    ];
    for ((r, x), one, other, volts, torque, line) in rows {
        let motor = motor((r, x + one), (r, x + other));
        let unit = Volts::new(1.0);
        let size = winding(r, x).size().get();
        close(motor.main_current(unit).get() * size, volts, 0.0005, "e1");
        close(motor.start_current(unit).get() * size, volts, 0.0005, "e2");
        close(motor.torque(unit) * size * size, torque, 0.0005, "torque");
        close(motor.line_current(unit).get(), line, 0.0005, "line");
        close(motor.angle_degrees(), 90.0, 1e-9, "angle");
    }
}

/// Source: Fitzgerald, Kingsley & Umans, *Electric Machinery*, chapter 9, problem (attribution
/// from memory): a running motor of 120 V, 60 Hz with 41.3 µF; 4.89 A and 3.32 A at a right
/// angle, 659 W, power factor 0.930, 213.2 V across the capacitor. At one slip it is two
/// impedances too.
#[test]
fn a_running_motor_with_its_capacitor() {
    let volts = Volts::new(120.0);
    let motor = with_micro(motor((13.79, 20.30), (29.89, 43.91)), 41.3, 60.0);
    let (main, start) = (
        motor.main_current(volts).get(),
        motor.start_current(volts).get(),
    );
    close(main, 4.89, 0.005, "main");
    close(start, 3.32, 0.005, "start");
    close(motor.angle_degrees(), 90.0, 0.05, "angle");
    let reactance = capacitor(Farads::new(41.3e-6), Hertz::new(60.0))
        .unwrap()
        .size();
    // 3.32 A is rounded to 0.15 %, and so are the impedances made of it.
    close(start * reactance.get(), 213.2, 0.3, "capacitor");
    let watts = main * main * 13.79 + start * start * 29.89;
    close(watts, 659.0, 0.5, "watts");
    close(
        watts / (120.0 * motor.line_current(volts).get()),
        0.930,
        0.0005,
        "power factor",
    );
}

/// Source: derived, a 6-pole motor of 230 V, 50 Hz (arithmetic only; data unconfirmed).
#[test]
fn a_six_pole_motor() {
    let motor = motor((8.6, 19.8), (19.5, 13.5));
    close(
        micro(motor.greatest_torque(), 50.0),
        181.4,
        0.05,
        "greatest",
    );
    close(micro(motor.quadrature(), 50.0), 144.9, 0.05, "quadrature");
}
