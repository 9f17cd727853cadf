//! Machines from the whole space inside the bounds, however odd: always numbers, never a hang.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used)]

use proptest::prelude::*;
use quantity::{
    Celsius, CubicMetres, Hertz, JoulesPerKelvin, Kilograms, Metres, NewtonMetres, Ohms, Pascals,
    Ratio, Seconds, Volts, WattsPerKelvin,
};
use simulator::Chance;
use simulator::compressor::{Compressor, Pair, Parts, StartRecord, Surroundings};
use simulator::rotor::Pressures;
use simulator::start_gear::{Ptc, StartGear, Switch};
use simulator::supply::Supply;

/// Shares of one, used up one after the other.
struct Shares(Vec<f64>);

impl Shares {
    /// Between two bounds, each decade as likely as any other.
    fn decades(&mut self, least: f64, most: f64) -> f64 {
        let share = self.0.pop().unwrap();
        (least * libm::pow(most / least, share)).clamp(least, most)
    }

    fn evenly(&mut self, least: f64, most: f64) -> f64 {
        let share = self.0.pop().unwrap();
        (least + (most - least) * share).clamp(least, most)
    }
}

fn ptc(shares: &mut Shares) -> Ptc {
    let mut ptc = Ptc::of(Ohms::new(shares.decades(0.5, 1e4)));
    ptc.rise = Ratio::new(shares.decades(1.0, 1e6));
    ptc.switch_temperature = Celsius::new(shares.evenly(40.0, 250.0));
    ptc.area_left = Ratio::new(shares.evenly(0.0, 1.0));
    ptc.heat_capacity = JoulesPerKelvin::new(shares.decades(0.05, 50.0));
    ptc.cooling = WattsPerKelvin::new(shares.decades(0.001, 1.0));
    ptc
}

fn parts(shares: &mut Shares) -> Parts {
    let mut parts = Parts::example_115_volts();
    let motor = &mut parts.motor;
    for winding in [&mut motor.main, &mut motor.start] {
        winding.resistance = Ohms::new(shares.decades(0.05, 2000.0));
        winding.reactance = Ohms::new(shares.decades(0.01, 5000.0));
        winding.shorted_share = Ratio::new(shares.evenly(-0.9, 0.9).max(0.0));
    }
    motor.rotor_resistance = Ohms::new(shares.decades(0.1, 1000.0));
    motor.rotor_reactance = Ohms::new(shares.decades(0.01, 1000.0));
    motor.magnetising_reactance = Ohms::new(shares.decades(1.0, 1e7));
    motor.turns_ratio = Ratio::new(shares.decades(0.2, 5.0));
    motor.poles = [2, 4, 6, 8][(shares.evenly(0.0, 3.99)) as usize];
    motor.iron = Ohms::new(shares.decades(50.0, 1e12));
    let rotor = &mut parts.rotor;
    rotor.mass = Kilograms::new(shares.decades(0.2, 20.0));
    rotor.radius_of_gyration = Metres::new(shares.decades(0.01, 0.2));
    rotor.dry_friction = NewtonMetres::new(shares.decades(1e-4, 100.0));
    rotor.oil_friction = NewtonMetres::new(shares.decades(1e-4, 10.0));
    rotor.displacement = CubicMetres::new(shares.decades(1e-7, 1e-4));
    rotor.clearance = Ratio::new(shares.decades(0.005, 1.0));
    rotor.exponent = Ratio::new(shares.evenly(1.01, 1.67));
    let heat = &mut parts.heat;
    heat.main_winding = JoulesPerKelvin::new(shares.decades(1.0, 1e6));
    heat.start_winding = JoulesPerKelvin::new(shares.decades(1.0, 1e6));
    heat.core = JoulesPerKelvin::new(shares.decades(1.0, 1e6));
    heat.main_to_core = WattsPerKelvin::new(shares.decades(0.01, 1000.0));
    heat.start_to_core = WattsPerKelvin::new(shares.decades(0.01, 1000.0));
    heat.shell_to_room = WattsPerKelvin::new(shares.decades(0.01, 1000.0));
    parts.gear = StartGear::ptc(Ohms::new(5.0)).with_run_capacitor(shares.decades(1e-7, 200.0));
    parts.gear.branches[0].switch = Switch::Ptc(ptc(shares));
    parts
}

fn are_numbers(record: &StartRecord) -> bool {
    let samples = record.trace.iter().all(|one| {
        let sum = one.line.get() + one.main.get() + one.start.get();
        (sum + one.watts.get() + one.speed.get()).is_finite()
    });
    samples && record.energy.gone().get().is_finite() && record.energy.taken.get().is_finite()
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 80, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn any_machine_inside_the_bounds_gives_numbers(
        shares in prop::collection::vec(0.0..1.0_f64, 50),
        seed in any::<u64>(),
    ) {
        let mut shares = Shares(shares);
        let parts = parts(&mut shares);
        let volts = Volts::new(shares.evenly(0.0, 300.0));
        let mut supply = Supply::outlet(volts, Hertz::new(shares.evenly(40.0, 70.0)));
        supply.house = Ohms::new(shares.decades(1e-3, 100.0));
        let surroundings = Surroundings {
            room: Celsius::new(shares.evenly(-40.0, 70.0)),
            pressures: Pressures {
                suction: Pascals::new(shares.decades(1.0, 5e6)),
                discharge: Pascals::new(shares.decades(1.0, 1e7)),
            },
            gas_torque: None,
            gas_cooling: WattsPerKelvin::new(shares.decades(1e-3, 100.0)),
        };
        let mut compressor = Compressor::new(parts).unwrap();
        let mut chance = Chance::new(seed);
        let longest = Seconds::new(5.0);
        let record = compressor
            .start(&supply, &surroundings, longest, &mut chance)
            .unwrap();
        prop_assert!(are_numbers(&record));
        for is_called in [true, false, true] {
            let time = Seconds::new(200.0);
            let period = compressor
                .advance(time, is_called, &supply, &surroundings, &mut chance)
                .unwrap();
            prop_assert!(period.energy.gone().get().is_finite());
            prop_assert!(period.watts.get().is_finite() && period.line.get().is_finite());
        }
        for celsius in [compressor.shell(), compressor.main_winding()] {
            prop_assert!(celsius.get().is_finite());
        }
        prop_assert!(compressor.pellet().unwrap().get().is_finite());
        for pair in [Pair::CommonRun, Pair::CommonStart, Pair::StartRun] {
            let ohms = compressor.winding_ohms(pair, true).map_or(1.0, Ohms::get);
            prop_assert!(ohms.is_finite() && ohms > 0.0, "{ohms}");
        }
        let taken = record.energy.taken.get();
        let miss = (record.energy.gone().get() - taken).abs() / taken.max(1e-6);
        prop_assert!(miss < 1e-9, "{miss}");
    }
}
