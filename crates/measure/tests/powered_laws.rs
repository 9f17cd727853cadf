//! What is computed of powered readings moves with each of them as its formula does: slopes by
//! the covariance with an input, against finite differences of the same function.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used)]

use measure::capacitance;
use measure::running::{both_windings_bound, power_factor, run_winding_bound};
use measure::supply::source_resistance;
use proptest::prelude::*;
use quantity::{Amps, Hertz, Ohms, Quantity, Ratio, Sources, Uncertain, Volts, Watts};

/// A value with a standard uncertainty of one, so that a covariance with it is the slope.
fn unit<Q: Quantity>(value: f64, sources: &mut Sources) -> Uncertain<Q> {
    Uncertain::exact(Q::new(value)).with(sources.fresh(), Q::new(1.0))
}

fn exact<Q: Quantity>(value: f64) -> Uncertain<Q> {
    Uncertain::exact(Q::new(value))
}

/// The slope of `of` at `at`, by a central difference.
fn difference(at: f64, of: impl Fn(f64) -> f64) -> f64 {
    let step = 1e-5 * at;
    (of(at + step) - of(at - step)) / (2.0 * step)
}

fn same(found: f64, expected: f64) -> bool {
    (found - expected).abs() <= 1e-6 * expected.abs()
}

proptest! {
    #[test]
    fn capacitance_moves_with_current_and_volts(i in 0.1..20.0f64, u in 50.0..400.0f64) {
        let mut sources = Sources::default();
        let (amps, volts) = (unit::<Amps>(i, &mut sources), unit::<Volts>(u, &mut sources));
        let found = capacitance(&amps, &volts, Hertz::new(60.0)).unwrap();
        let of = |i, u| {
            let found = capacitance(&exact(i), &exact(u), Hertz::new(60.0)).unwrap();
            found.value().get()
        };
        prop_assert!(same(found.covariance(&amps), difference(i, |i| of(i, u))));
        prop_assert!(same(found.covariance(&volts), difference(u, |u| of(i, u))));
    }

    #[test]
    fn the_ways_resistance_moves_with_all_three_readings(
        idle in 110.0..130.0f64, lost in 2.0..30.0f64, i in 1.0..30.0f64,
    ) {
        let mut sources = Sources::default();
        let during = idle - lost;
        let before = unit::<Volts>(idle, &mut sources);
        let starting = unit::<Volts>(during, &mut sources);
        let amps = unit::<Amps>(i, &mut sources);
        let factor = Ratio::new(0.8);
        let found = source_resistance(&before, &starting, &amps, factor).unwrap();
        let of = |idle, during, i| {
            let found = source_resistance(&exact(idle), &exact(during), &exact(i), factor);
            found.unwrap().value().get()
        };
        prop_assert!(same(found.covariance(&before), difference(idle, |at| of(at, during, i))));
        prop_assert!(same(found.covariance(&starting), difference(during, |at| of(idle, at, i))));
        prop_assert!(same(found.covariance(&amps), difference(i, |at| of(idle, during, at))));
    }

    #[test]
    fn a_power_factor_moves_with_all_three_readings(
        u in 100.0..250.0f64, i in 0.3..5.0f64, share in 0.1..0.9f64,
    ) {
        let mut sources = Sources::default();
        let p = u * i * share;
        let watts = unit::<Watts>(p, &mut sources);
        let volts = unit::<Volts>(u, &mut sources);
        let amps = unit::<Amps>(i, &mut sources);
        let found = power_factor(&watts, &volts, &amps).unwrap();
        let of = |p, u, i| power_factor(&exact(p), &exact(u), &exact(i)).unwrap().value().get();
        prop_assert!(same(found.covariance(&watts), difference(p, |at| of(at, u, i))));
        prop_assert!(same(found.covariance(&volts), difference(u, |at| of(p, at, i))));
        prop_assert!(same(found.covariance(&amps), difference(i, |at| of(p, u, at))));
    }

    #[test]
    fn bounds_from_windings_move_with_their_ohms(
        run in 1.0..30.0f64, start in 2.0..50.0f64, device in 0.0..30.0f64,
    ) {
        let mut sources = Sources::default();
        let (volts, device) = (Volts::new(115.0), Ohms::new(device));
        let main = unit::<Ohms>(run, &mut sources);
        let auxiliary = unit::<Ohms>(start, &mut sources);
        let alone = |run| run_winding_bound(volts, &exact(run)).unwrap().value().get();
        let both = |run, start| {
            let found = both_windings_bound(volts, &exact(run), &exact(start), device);
            found.unwrap().value().get()
        };
        let found = run_winding_bound(volts, &main).unwrap();
        prop_assert!(same(found.covariance(&main), difference(run, alone)));
        let found = both_windings_bound(volts, &main, &auxiliary, device).unwrap();
        prop_assert!(same(found.covariance(&main), difference(run, |at| both(at, start))));
        prop_assert!(same(found.covariance(&auxiliary), difference(start, |at| both(run, at))));
        prop_assert!(both(run, start) > alone(run));
    }
}
