//! Sound machines keep within what is common of such machines. The ranges are common practice or
//! from memory, with no source that could be cited: they show that nothing is far off, no more.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used)]

use quantity::Seconds;
use simulator::Refrigerant;
use simulator::appliance::{Appliance, Course, Kind, Mains, Sample};

const DAY: f64 = 86_400.0;

fn sound() -> impl Iterator<Item = (Kind, Mains, Refrigerant)> {
    let mains = [Mains::V115F60, Mains::V230F50];
    Kind::ALL.into_iter().flat_map(move |kind| {
        mains.into_iter().flat_map(move |mains| {
            Refrigerant::ALL
                .into_iter()
                .map(move |refrigerant| (kind, mains, refrigerant))
        })
    })
}

fn running_mean(course: &Course, of: impl Fn(&Sample) -> f64) -> f64 {
    let turning: Vec<&Sample> = course.samples.iter().filter(|it| it.running).collect();
    turning.iter().map(|it| of(it)).sum::<f64>() / turning.len() as f64
}

/// Freezers pass 0 °C in 1 … 3 h and reach −18 °C in up to 12 h; here with a little food in them.
#[test]
fn freezers_get_cold_within_hours() {
    for (kind, mains, refrigerant) in sound() {
        let mut it = Appliance::example(kind, mains, refrigerant).unwrap();
        let course = it.advance(Seconds::new(DAY)).unwrap();
        let hours = |below: f64| {
            let passed = course.samples.iter().find(|it| it.air.get() < below);
            passed.map_or(f64::INFINITY, |it| it.time.get() / 3600.0)
        };
        let told = format!(
            "{kind:?} {mains:?} {refrigerant:?}: {} {}",
            hours(0.0),
            hours(-18.0)
        );
        match kind {
            Kind::PlateRefrigerator => assert!(hours(6.0) < 3.0 && it.observe().food.get() > -1.5),
            // Its air circulates before its food cools.
            Kind::FrostFreeOneThermostat => {
                assert!(hours(0.0) > 0.3 && hours(-18.0) < 12.0, "{told}")
            }
            _ => assert!(
                (1.0..3.0).contains(&hours(0.0)) && hours(-18.0) < 12.0,
                "{told}"
            ),
        }
    }
}

/// Boiling at −25 … −30 °C, condensing 10 … 20 K above the room, running 20 … 55 % of the time.
#[test]
fn once_cold_machines_cycle_as_such_machines_do() {
    for (kind, mains, refrigerant) in sound() {
        let mut it = Appliance::example(kind, mains, refrigerant).unwrap();
        it.advance(Seconds::new(1.5 * DAY)).unwrap();
        let course = it.advance(Seconds::new(DAY)).unwrap();
        let share = course.running.get() / DAY;
        let boiling = running_mean(&course, |it| it.boiling.get());
        let above = running_mean(&course, |it| it.condenser.get()) - 25.0;
        let watts = running_mean(&course, |it| it.watts.get());
        let told = format!(
            "{kind:?} {mains:?} {refrigerant:?}: {share:.2} {boiling:.1} {above:.1} {watts:.0}"
        );
        println!("{told}");
        assert!((0.2..0.55).contains(&share), "{told}");
        assert!((-30.0..-23.0).contains(&boiling), "{told}");
        assert!((9.0..20.0).contains(&above), "{told}");
        assert!((40.0..150.0).contains(&watts), "{told}");
        // One to four starts an hour.
        assert!(
            (10..=96).contains(&course.starts),
            "{told} {}",
            course.starts
        );
    }
}

/// Pressures level within 2 … 5 minutes after a stop (3 … 5 is common practice; what the oil gives
/// back, which takes longest, is left out).
#[test]
fn pressures_level_within_minutes_of_a_stop() {
    for (kind, mains, refrigerant) in sound() {
        let mut it = Appliance::example(kind, mains, refrigerant).unwrap();
        it.advance(Seconds::new(DAY)).unwrap();
        let mut ran = false;
        while !ran || it.observe().running {
            ran |= it.observe().running;
            it.advance(Seconds::new(10.0)).unwrap();
        }
        let gap = |it: &Appliance| {
            let seen = it.observe();
            (seen.discharge - seen.suction).get()
        };
        let (first, mut seconds) = (gap(&it), 0);
        while gap(&it) > 0.05 * first {
            it.advance(Seconds::new(5.0)).unwrap();
            seconds += 5;
        }
        let told = format!("{kind:?} {mains:?} {refrigerant:?}: {seconds} s");
        println!("{told}");
        assert!((120..300).contains(&seconds), "{told}");
    }
}

/// A day in two halves is the day in one but for where the last steps were cut.
#[test]
fn the_length_of_a_call_does_not_matter() {
    for kind in Kind::ALL {
        let fresh = Appliance::example(kind, Mains::V230F50, Refrigerant::R600a).unwrap();
        let (mut one, mut other) = (fresh.clone(), fresh);
        let whole = one.advance(Seconds::new(DAY)).unwrap();
        let mut running = 0.0;
        for _ in 0..144 {
            running += other.advance(Seconds::new(600.0)).unwrap().running.get();
        }
        let shares = (whole.running.get() / DAY, running / DAY);
        assert!((shares.0 - shares.1).abs() < 0.02, "{kind:?} {shares:?}");
        let food = (one.observe().food - other.observe().food).get();
        assert!(food.abs() < 0.3, "{kind:?} {food}");
    }
}

/// What the drive says it draws is what it gives to gas and shell.
#[test]
fn the_watts_that_are_seen_are_the_watts_that_are_booked() {
    for kind in Kind::ALL {
        let mut it = Appliance::example(kind, Mains::V115F60, Refrigerant::R134a).unwrap();
        let course = it.advance(Seconds::new(DAY)).unwrap();
        let off = course.drawn.get() / it.energy().mains.get() - 1.0;
        assert!(off.abs() < 2e-3, "{kind:?}: {off}");
    }
}
