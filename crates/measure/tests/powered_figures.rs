//! Powered measurements against figures from standards, textbooks and closed forms.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used)]

use measure::running::{both_windings_bound, power_factor, run_winding_bound};
use measure::supply::{Conductors, SUPPLY_STANDARDS, VoltageStandard, longest_cord, torque_left};
use measure::{Against, CapacitorMarking, capacitance};
use proptest::prelude::*;
use quantity::{
    Accuracy, Amps, Celsius, Farads, Hertz, Metres, Ohms, Sources, Uncertain, Volts, Watts,
};

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

/// Source: derived from V/R, since reactance only lowers a current: 4 Ω at 115 V can't draw
/// 28.75 A, 18 Ω at 230 V not 12.8 A. Both windings are in parallel.
#[test]
fn windings_bound_the_current_with_the_rotor_locked() {
    let ohms = |value| Uncertain::exact(Ohms::new(value));
    let bound = |volts, run| run_winding_bound(Volts::new(volts), &ohms(run)).unwrap();
    close(bound(115.0, 4.0).value().get(), 28.75, 1e-9, "115 V");
    close(bound(230.0, 18.0).value().get(), 12.8, 0.05, "230 V");
    let volts = Volts::new(115.0);
    let both = both_windings_bound(volts, &ohms(4.0), &ohms(7.0), Ohms::new(5.0)).unwrap();
    let parallel = 4.0 * 12.0 / 16.0;
    close(both.value().get(), 115.0 / parallel, 1e-9, "both");
}

/// Source: Fitzgerald, Kingsley & Umans, *Electric Machinery*, 6e, example 9.2 (data from memory):
/// 147.4 W out at an efficiency of 0.599, 110 V and 3.605 A: power factor 0.621. Uncertainties by
/// JCGM 100:2008, equation 10: 1, 0.5 and 2 % add as squares.
#[test]
fn a_power_factor_carries_the_errors_of_all_three_readings() {
    let mut sources = Sources::default();
    let watts = 147.4 / 0.599;
    let power = Uncertain::exact(Watts::new(watts)).with(sources.fresh(), Watts::new(0.01 * watts));
    let volts = Uncertain::exact(Volts::new(110.0)).with(sources.fresh(), Volts::new(0.55));
    let amps = Uncertain::exact(Amps::new(3.605)).with(sources.fresh(), Amps::new(0.0721));
    let found = power_factor(&power, &volts, &amps).unwrap();
    close(found.value().get(), 0.621, 0.0005, "power factor");
    let relative = found.standard().get() / found.value().get();
    close(
        relative,
        (1.0f64 + 0.25 + 4.0).sqrt() / 100.0,
        1e-9,
        "standard",
    );
}

/// Source: NEC, chapter 9, table 8 (7 strands, 75 °C), brought to 20 °C by copper's 234.5:
/// 254.5/309.5 = 0.822. Drops at 15 A on 50 and 100 ft, there and back.
#[test]
fn cords_by_gauge_drop_what_the_table_gives() {
    let room = Celsius::new(20.0);
    let rows = [
        (Conductors::Awg18, 9.8, 19.6),
        (Conductors::Awg16, 6.2, 12.3),
        (Conductors::Awg14, 3.9, 7.7),
        (Conductors::Awg12, 2.4, 4.9),
    ];
    for (conductors, fifty, hundred) in rows {
        for (feet, expected) in [(50.0, fifty), (100.0, hundred)] {
            let length = Metres::new(feet * 0.3048);
            let cord = conductors.loop_resistance(length, room).unwrap();
            close(cord.get() * 15.0, expected, 0.05, "volts");
            let allowed = Volts::new(cord.get() * 15.0);
            let longest = longest_cord(conductors, room, Amps::new(15.0), allowed).unwrap();
            close(longest.get(), length.get(), 1e-9, "metres");
        }
    }
}

/// Source: IEC 60228, class 5 at 20 °C, 25 m there and back.
#[test]
fn cords_by_square_millimetres_have_what_the_standard_allows() {
    let rows = [
        (Conductors::Square0_75, 1.30),
        (Conductors::Square1_0, 0.98),
        (Conductors::Square1_5, 0.67),
    ];
    for (conductors, expected) in rows {
        let cord = conductors.loop_resistance(Metres::new(25.0), Celsius::new(20.0));
        close(cord.unwrap().get(), expected, 0.0051, "ohms");
    }
    let cold = Conductors::Square2_5.loop_resistance(Metres::new(500.0), Celsius::new(20.0));
    close(cold.unwrap().get(), 7.98, 1e-12, "the table itself");
}

/// Source: derived, torque in proportion to both windings' currents: 0.90, 0.85 and 0.80 of the
/// volts leave 0.81, 0.72 and 0.64 of the torque.
#[test]
fn starting_torque_goes_with_the_square_of_the_volts() {
    for (share, expected) in [(0.9, 0.81), (0.85, 0.72), (0.8, 0.64)] {
        let left = torque_left(Volts::new(230.0 * share), Volts::new(230.0)).unwrap();
        close(left.get(), expected, 0.005, "torque");
    }
    assert_eq!(torque_left(Volts::new(100.0), Volts::new(0.0)), None);
}

/// Source: ANSI C84.1 range B is 0.87 to 1.06 of 120 V, rounded; 230 V ±10 % is 207 to 253 V
/// (IEC 60038); 115 V ±10 % is 103.5 to 126.5 V, which is what NEMA MG 1 allows a 115 V motor.
#[test]
fn standards_are_those_their_percentages_give() {
    let volts = |place: usize| {
        let standard = SUPPLY_STANDARDS[place];
        (standard.least.get(), standard.most.get())
    };
    close(volts(1).0, 0.87 * 120.0, 0.5, "range B");
    close(volts(1).1, 1.06 * 120.0, 0.5, "range B");
    let motor = VoltageStandard::of_motor(Volts::new(230.0));
    close(motor.least.get(), volts(3).0, 1e-9, "230 V");
    close(motor.most.get(), volts(3).1, 1e-9, "230 V");
    let motor = VoltageStandard::of_motor(Volts::new(115.0));
    close(motor.least.get(), volts(4).0, 1e-9, "115 V");
    close(motor.most.get(), volts(4).1, 1e-9, "115 V");
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
