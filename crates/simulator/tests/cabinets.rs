//! What thermostat, defrost, fans, damper, door and room do to a cabinet: directions that follow
//! from what each part is for.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used)]

use quantity::{Celsius, Ratio, Seconds};
use simulator::Refrigerant;
use simulator::appliance::{Appliance, Course, Kind, Mains, Parts};
use simulator::cabinet::{CabinetFault, Contacts};

const DAY: f64 = 86_400.0;

fn parts(kind: Kind) -> Parts {
    Parts::example(kind, Mains::V115F60, Refrigerant::R134a).unwrap()
}

fn with(kind: Kind, fault: CabinetFault, severity: f64) -> Appliance {
    let mut parts = parts(kind);
    parts.cabinet = fault.in_cabinet(parts.cabinet, Ratio::new(severity));
    Appliance::new(parts).unwrap().chilled()
}

fn days(it: &mut Appliance, days: f64) -> Course {
    it.advance(Seconds::new(days * DAY)).unwrap()
}

fn mean(course: &Course, of: impl Fn(&simulator::appliance::Sample) -> f64) -> f64 {
    course.samples.iter().map(of).sum::<f64>() / course.samples.len() as f64
}

fn second(course: &Course) -> f64 {
    mean(course, |it| it.second_air.unwrap().get())
}

/// Each part of the defrost that fails leaves the frost where it is, and weeks later the
/// fresh-food compartment warms first.
#[test]
fn a_failed_defrost_shows_after_weeks_and_in_the_fresh_food_first() {
    for fault in [
        CabinetFault::Timer,
        CabinetFault::Heater,
        CabinetFault::EndingOpen,
        CabinetFault::Fuse,
    ] {
        let mut it = with(Kind::FrostFree, fault, 1.0);
        let first = days(&mut it, 1.0);
        let (fresh, frozen) = (second(&first), mean(&first, |it| it.air.get()));
        let (mut fresh_warm, mut frozen_warm) = (None, None);
        for day in 1..42 {
            let course = days(&mut it, 1.0);
            if second(&course) > fresh + 1.0 {
                fresh_warm.get_or_insert(day);
            }
            if mean(&course, |it| it.air.get()) > frozen + 1.0 {
                frozen_warm.get_or_insert(day);
            }
        }
        let told = format!("{fault:?} {fresh_warm:?} {frozen_warm:?}");
        assert!(fresh_warm.is_some_and(|day| day > 6), "{told}");
        assert!(
            frozen_warm.is_none_or(|day| fresh_warm.unwrap() < day),
            "{told}"
        );
    }
}

#[test]
fn a_sound_defrost_melts_all_frost_and_its_ending_ends_it() {
    let mut it = Appliance::new(parts(Kind::FrostFree)).unwrap().chilled();
    let course = days(&mut it, 2.0);
    let at: Vec<_> = course.samples.iter().filter(|it| it.defrosting).collect();
    assert!(!at.is_empty());
    let least = at.iter().map(|it| it.frost.get()).fold(1.0, f64::min);
    assert!(least < 2e-3, "{least}");
    let hottest = at
        .iter()
        .map(|it| it.evaporator.get())
        .fold(-50.0, f64::max);
    assert!((5.0..25.0).contains(&hottest), "{hottest}");
    // 115 V on 29 Ω, and nothing beside it.
    let watts = at.iter().map(|it| it.watts.get()).fold(0.0, f64::max);
    assert!((watts - 115.0 * 115.0 / 29.0).abs() < 1e-6, "{watts}");
}

#[test]
fn an_ending_that_never_opens_melts_the_fuse() {
    let mut it = with(Kind::FrostFree, CabinetFault::EndingStuck, 1.0);
    let course = days(&mut it, 2.0);
    let hottest = course.samples.iter().map(|it| it.evaporator.get());
    let hottest = hottest.fold(-50.0, f64::max);
    assert!(hottest > 50.0, "{hottest}");
    let later = days(&mut it, 2.0);
    assert!(later.samples.iter().any(|it| it.defrosting));
    assert!(later.samples.iter().all(|it| it.watts.get() < 300.0));
}

#[test]
fn without_its_fan_the_fresh_food_warms_and_the_coil_gets_colder() {
    let (mut sound, mut still) = (
        with(Kind::FrostFree, CabinetFault::Blower, 0.0),
        with(Kind::FrostFree, CabinetFault::Blower, 1.0),
    );
    let (before, after) = (days(&mut sound, 2.0), days(&mut still, 2.0));
    assert!(second(&after) > second(&before) + 5.0);
    assert!(mean(&after, |it| it.boiling.get()) < mean(&before, |it| it.boiling.get()) - 5.0);
    assert!(after.running > before.running);
}

#[test]
fn a_damper_decides_over_the_fresh_food_and_not_over_the_freezer() {
    let of = |fault, severity| {
        let mut it = with(Kind::FrostFree, fault, severity);
        days(&mut it, 2.0);
        let course = days(&mut it, 1.0);
        (second(&course), mean(&course, |it| it.air.get()))
    };
    let sound = of(CabinetFault::DamperShut, 0.0);
    let (shut, open) = (
        of(CabinetFault::DamperShut, 1.0),
        of(CabinetFault::DamperOpen, 1.0),
    );
    assert!(shut.0 > sound.0 + 5.0 && open.0 < sound.0 - 2.0 && open.0 < 0.0);
    assert!((shut.1 - sound.1).abs() < 1.0 && (open.1 - sound.1).abs() < 1.0);
}

#[test]
fn contacts_that_stick_decide_over_running() {
    let mut never = with(Kind::ChestFreezer, CabinetFault::ThermostatOpen, 1.0);
    let course = days(&mut never, 3.0);
    assert!(course.starts == 0 && never.observe().food > Celsius::new(15.0));
    let mut always = with(Kind::ChestFreezer, CabinetFault::ThermostatStuck, 1.0);
    days(&mut always, 1.0);
    let course = days(&mut always, 1.0);
    assert!((course.running.get() - DAY).abs() < 1.0);
    assert!(always.observe().food < Celsius::new(-25.0));
}

#[test]
fn warm_air_by_the_door_means_more_running_and_more_frost() {
    let mut before = (0.0, 0.0);
    for severity in [0.0, 0.3, 0.6, 1.0] {
        let mut it = with(Kind::UprightFreezer, CabinetFault::Gasket, severity);
        let course = days(&mut it, 2.0);
        let now = (
            course.running.get(),
            course.samples.last().unwrap().frost.get(),
        );
        assert!(now.0 > before.0 && now.1 > before.1, "{severity}: {now:?}");
        before = now;
    }
}

/// With its only thermostat in the fresh food, a machine in a cold room has no reason to run, and
/// the freezer thaws.
#[test]
fn in_a_cold_room_a_machine_with_one_thermostat_lets_the_freezer_thaw() {
    let food = |kind: Kind, room: f64| {
        let mut parts = parts(kind);
        parts.cabinet.room = Celsius::new(room);
        let mut it = Appliance::new(parts).unwrap().chilled();
        days(&mut it, 6.0);
        it.observe().food.get()
    };
    assert!(food(Kind::FrostFreeOneThermostat, 5.0) > -2.0);
    assert!(food(Kind::FrostFreeOneThermostat, 25.0) < -12.0);
    assert!(food(Kind::FrostFree, 5.0) < -15.0);
}

#[test]
fn the_plate_of_a_refrigerator_thaws_at_each_stop() {
    let mut it = Appliance::new(parts(Kind::PlateRefrigerator)).unwrap();
    days(&mut it, 1.0);
    let course = days(&mut it, 1.0);
    let plate = |pick: fn(f64, f64) -> f64, start| {
        let all = course.samples.iter().map(|it| it.evaporator.get());
        all.fold(start, pick)
    };
    assert!(plate(f64::min, 99.0) < -10.0 && plate(f64::max, -99.0) > 2.0);
    assert!(course.samples.last().unwrap().frost.get() < 0.02);
}

/// A door shut again: the machine recovers.
#[test]
fn a_door_that_is_shut_lets_the_cold_come_back() {
    let mut it = with(Kind::ChestFreezer, CabinetFault::DoorAjar, 1.0);
    days(&mut it, 1.0);
    let warm = it.observe().air;
    let mut mended = *it.parts();
    mended.cabinet.first.door.gap = Ratio::new(0.0);
    it.alter(mended).unwrap();
    days(&mut it, 2.0);
    let cold = it.observe().air;
    assert!(
        warm > Celsius::new(0.0) && cold < Celsius::new(-15.0),
        "{warm:?} {cold:?}"
    );
    mended.cabinet.thermostat.contacts = Contacts::StuckOpen;
    it.alter(mended).unwrap();
    assert!(!days(&mut it, 0.1).samples.last().unwrap().running);
}
