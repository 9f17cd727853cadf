//! Powered measurements against figures from standards, textbooks and closed forms.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used)]

use measure::{Against, CapacitorMarking, capacitance};
use proptest::prelude::*;
use quantity::{Accuracy, Amps, Farads, Hertz, Sources, Uncertain, Volts};

fn close(found: f64, expected: f64, tolerance: f64, what: &str) {
    let off = (found - expected).abs();
    assert!(off <= tolerance, "{what}: {found} instead of {expected}");
}

fn microfarads(amps: f64, volts: f64, hertz: f64) -> f64 {
    let amps = Uncertain::exact(Amps::new(amps));
    let volts = Uncertain::exact(Volts::new(volts));
    let found = capacitance(&amps, &volts, Hertz::new(hertz)).unwrap();
    found.value().get() * 1e6
}

/// Source: Fitzgerald, Kingsley & Umans, *Electric Machinery*, chapter 9, problem on a permanent
/// split-capacitor motor (attribution from memory): 3.32 A at 213.2 V, 60 Hz is 41.3 µF. The
/// factors 2652.6 (60 Hz) and 3183.1 (50 Hz) are 10⁶/(2πf).
#[test]
fn capacitance_in_circuit_is_that_of_the_textbook() {
    close(microfarads(3.32, 213.2, 60.0), 41.3, 0.05, "textbook");
    close(microfarads(1.0, 1.0, 60.0), 2652.6, 0.05, "60 Hz");
    close(microfarads(1.0, 1.0, 50.0), 3183.1, 0.05, "50 Hz");
}

/// Source: derived by JCGM 100:2008, equation 10, with rectangular limits (4.3.7): a clamp of
/// ±3 % beside volts of ±1 % is u = 1.83 %, U = 3.65 %; one of ±5 % is 2.94 and 5.9 %.
#[test]
fn a_clamp_decides_how_well_capacitance_is_known() {
    for (clamp, standard, expanded) in [(3.0, 1.83, 3.65), (5.0, 2.94, 5.89)] {
        let mut sources = Sources::default();
        let percent = |of: f64, value: f64| of / 100.0 * value / 3f64.sqrt();
        let amps = Uncertain::exact(Amps::new(3.32))
            .with(sources.fresh(), Amps::new(percent(clamp, 3.32)));
        let volts = Uncertain::exact(Volts::new(213.2))
            .with(sources.fresh(), Volts::new(percent(1.0, 213.2)));
        let found = capacitance(&amps, &volts, Hertz::new(60.0)).unwrap();
        let share = 100.0 / found.value().get();
        close(found.standard().get() * share, standard, 0.005, "standard");
        close(found.expanded().get() * share, expanded, 0.005, "expanded");
    }
}

/// Source: ±6 % of 45 µF is 42.3 to 47.7 µF; with U = 3.65 % the textbook's 41.3 µF (39.8 to
/// 42.8 µF) can't be told from the lower limit, and with 36.1 µF it can.
#[test]
fn a_value_near_its_limit_is_not_condemned() {
    let marking = CapacitorMarking::run(Farads::new(45e-6));
    let mut sources = Sources::default();
    let mut judged = |micro: f64| {
        let value = Farads::new(micro * 1e-6);
        let standard = value * 0.01825;
        marking.judge(&Uncertain::exact(value).with(sources.fresh(), standard))
    };
    assert_eq!(judged(41.3), Against::CannotTell);
    assert_eq!(judged(36.1), Against::Below);
    assert_eq!(judged(45.0), Against::Within);
    assert_eq!(judged(52.0), Against::Above);
}

proptest! {
    #[test]
    fn relative_errors_of_current_and_volts_add_as_squares(
        amps in 0.1..20.0f64, volts in 50.0..400.0f64, a in 0.001..0.05f64, b in 0.001..0.05f64,
    ) {
        let mut sources = Sources::default();
        let current = Uncertain::exact(Amps::new(amps)).with(sources.fresh(), Amps::new(amps * a));
        let across = Uncertain::exact(Volts::new(volts))
            .with(sources.fresh(), Volts::new(volts * b));
        let found = capacitance(&current, &across, Hertz::new(50.0)).unwrap();
        let relative = found.standard().get() / found.value().get();
        prop_assert!((relative - (a * a + b * b).sqrt()).abs() < 1e-12);
    }

    #[test]
    fn a_better_meter_never_turns_a_verdict_round(
        micro in 20.0..70.0f64, good in 0.1..2.0f64, worse in 1.0..5.0f64,
    ) {
        let marking = CapacitorMarking::run(Farads::new(45e-6));
        let judged = |percent: f64| {
            let meter = Accuracy::new(percent, 0.0).unwrap();
            let value = Farads::new(micro * 1e-6);
            let shown = meter.measured(value, Farads::new(1e-9), &mut Sources::default());
            marking.judge(&shown)
        };
        let (sharp, blunt) = (judged(good), judged(good * worse));
        prop_assert!(blunt == Against::CannotTell || blunt == sharp);
    }
}
