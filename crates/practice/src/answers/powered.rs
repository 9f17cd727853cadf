//! What is seen, heard and read with the plug in, from a rest on.

use diagnosis::Clue;
use job::Content;
use quantity::{Seconds, Watts, parse_decimal};
use simulator::appliance::Kind;
use simulator::machine::{Ailment, Blueprint, Gear, Heard, Machine, Session, Trace};

use super::Sheet;
use super::entry::{clue as shown, there_is_none};

pub(super) fn clue(sheet: &mut Sheet, clue: Clue) -> Option<Vec<Content>> {
    let found = match clue {
        Clue::Lamp => usize::from(!sheet.quarter()?.has_power()),
        Clue::PowerUp => heard(sheet.quarter()?),
        Clue::ClickInterval => first_click(sheet.quarter()?),
        Clue::Noise => return noise(sheet),
        Clue::PowerMeter => meter(sheet)?,
        Clue::PowerLevel => return level(sheet),
        Clue::WattsTrend => return trend(sheet),
        Clue::ModesCleared => usize::from(has(sheet, Trace::SetOff)),
        Clue::TimerByHand if !sheet.machine.blueprint().is_frost_free() => {
            return Some(there_is_none(clue).into_iter().collect());
        }
        Clue::TimerByHand => usize::from(has(sheet, Trace::StandsInDefrost)),
        Clue::FlashCode => flashes(sheet),
        Clue::OtherOutlet => other_outlet(sheet)?,
        Clue::TripPattern => return trips(sheet),
        Clue::SaggingVolts => sagging(sheet)?,
        Clue::Restart => return restart(sheet),
        Clue::InstantRestart => return instant(sheet),
        Clue::GoodDevice => trial(&sheet.machine.with_good_device(A_TRY).ok()?)?,
        Clue::StartKit => trial(&sheet.machine.with_start_kit(A_TRY).ok()?)?,
        _ => return None,
    };
    let told = sheet.senses.told(found, clue.answers().len());
    Some(shown(clue, told).into_iter().collect())
}

/// A try at the start.
const A_TRY: Seconds = Seconds::new(20.0);

fn has(sheet: &Sheet, trace: Trace) -> bool {
    sheet.machine.bench().traces().contains(&trace)
}

/// None, motor or drive, no command, other. Half of the boards tell what they miss.
fn flashes(sheet: &Sheet) -> usize {
    let machine = &sheet.machine;
    let ailments = machine.troubles().iter().map(|trouble| trouble.ailment);
    let tells = machine.volts_at_rest().get().to_bits().is_multiple_of(2);
    let codes = ailments.map(|ailment| match ailment {
        Ailment::PhaseOpen | Ailment::DriveDead if tells => 1,
        Ailment::SensorOff if tells => 3,
        _ => 0,
    });
    codes.max().unwrap_or(0)
}

/// A protector that clicks within so many seconds of a start ends what an ear takes for a hum: a
/// motor under load sounds much like one that doesn't turn (judgement).
const A_HUM: f64 = 20.0;

/// Whether it is heard to run, and not to hum a little longer.
pub(super) fn is_heard_to_run(session: &Session) -> bool {
    let first = |heard: fn(&Heard) -> bool| {
        let mut events = session.events().iter();
        events
            .find(|event| heard(&event.heard))
            .map(|one| one.at.get())
    };
    let starts = first(|heard| *heard == Heard::Starts);
    let clicks = first(|heard| *heard == Heard::Clicks);
    let is_short = match (starts, clicks) {
        (Some(starts), Some(clicks)) => clicks >= starts && clicks - starts < A_HUM,
        _ => false,
    };
    session.has_run() && !is_short
}

/// Runs, silent, hums then clicks, cuts out, knocks, trips.
fn heard(session: &Session) -> usize {
    match () {
        () if session.is_tripped() => 5,
        () if is_heard_to_run(session) && session.times(Heard::Clicks) > 0 => 3,
        () if is_heard_to_run(session) => 0,
        () if session.has_run() || session.times(Heard::Hums) > 0 => 2,
        () => 1,
    }
}

/// No click, within seconds, after minutes.
fn first_click(session: &Session) -> usize {
    let clicks = |event: &&simulator::machine::Event| event.heard == Heard::Clicks;
    match session.events().iter().find(clicks) {
        None => 0,
        Some(click) if click.at.get() < 60.0 => 1,
        Some(_) => 2,
    }
}

/// Nothing is said of a machine that doesn't run. Ice that has just reached the blades scrapes.
fn noise(sheet: &mut Sheet) -> Option<Vec<Content>> {
    if !sheet.quarter()?.is_turning() {
        return None;
    }
    let frost = sheet.machine.bench().frost().get();
    let scrapes = sheet.machine.blueprint().is_frost_free() && (0.9..0.94).contains(&frost);
    let truth = if scrapes { 4 } else { 0 };
    let told = sheet.senses.told(truth, Clue::Noise.answers().len());
    Some(shown(Clue::Noise, told).into_iter().collect())
}

/// A board's own supply, in watts (from memory).
const STANDBY: f64 = 2.0;

/// Runs, nothing, standby, bursts, heater, stops by itself, trips.
fn meter(sheet: &mut Sheet) -> Option<usize> {
    let by_board = sheet.machine.bench().sensor_error().is_some();
    let session = sheet.quarter()?;
    let now = session.now();
    let standby = if by_board && session.has_power() {
        STANDBY
    } else {
        0.0
    };
    Some(match () {
        () if session.is_tripped() => 6,
        () if session.times(Heard::Hums) > 0 && !session.has_run() => 3,
        () if session.is_turning() && session.times(Heard::Clicks) == 0 => 0,
        () if is_heard_to_run(session) => 5,
        () if session.has_run() => 3,
        () if now.seen.heating => 4,
        () if now.watts.get() + standby < 1.0 => 1,
        () => 2,
    })
}

/// What the instructions call usual, in watts.
fn usual(blueprint: &Blueprint) -> (f64, f64) {
    match blueprint.kind {
        Kind::ChestFreezer => (60.0, 140.0),
        Kind::UprightFreezer => (75.0, 140.0),
        Kind::FrostFree | Kind::FrostFreeOneThermostat => (90.0, 170.0),
        // No figure is given: as a small freezer.
        Kind::PlateRefrigerator => (50.0, 95.0),
    }
}

/// As expected, low, high; of an inverter nobody can say.
fn level(sheet: &mut Sheet) -> Option<Vec<Content>> {
    let blueprint = *sheet.machine.blueprint();
    let now = running(sheet)?.now();
    if blueprint.gear == Gear::Inverter {
        return None;
    }
    let shown_watts = parse_decimal(&sheet.kit.watts(now.watts).text)?;
    let (least, most) = usual(&blueprint);
    let place = match shown_watts {
        watts if watts < least => 1,
        watts if watts > most => 2,
        _ => 0,
    };
    Some(shown(Clue::PowerLevel, place).into_iter().collect())
}

/// The machine after half an hour, where it ran all the time and still does.
fn running(sheet: &mut Sheet) -> Option<&Session> {
    let session = sheet.half_hour()?;
    let steady = session.is_turning() && session.times(Heard::Clicks) == 0;
    steady.then_some(session)
}

/// Falls slowly, low and flat, falls in minutes, high and rising, high and steady.
fn trend(sheet: &mut Sheet) -> Option<Vec<Content>> {
    let (least, most) = usual(sheet.machine.blueprint());
    let session = running(sheet)?;
    let at = |minute: usize| session.course().samples.get(minute).map(|one| one.watts);
    let watts = [at(2)?, at(10)?, at(30)?];
    let mut read = |watts: Watts| -> Option<f64> { parse_decimal(&sheet.kit.watts(watts).text) };
    let [first, early, late] = watts;
    let (first, early, late) = (read(first)?, read(early)?, read(late)?);
    let place = match () {
        () if late > most && late > 1.04 * early => 3,
        () if late > most => 4,
        () if first > least && early < 0.8 * first && late < least => 2,
        () if late < least => 1,
        () => 0,
    };
    Some(shown(Clue::WattsTrend, place).into_iter().collect())
}

/// Whether it does the same on an outlet that is known to be good. Not after a trip.
fn other_outlet(sheet: &mut Sheet) -> Option<usize> {
    let here = heard(sheet.quarter()?);
    if here == 5 {
        return None;
    }
    let there = heard(&sheet.machine.plug_in_elsewhere(Seconds::new(900.0)).ok()?);
    Some(usize::from(here != 0 && there == 0))
}

/// At once, at the start, hours later, irregular; nothing where it never tripped.
fn trips(sheet: &mut Sheet) -> Option<Vec<Content>> {
    let session = sheet.night()?;
    let tripped = |event: &&simulator::machine::Event| event.heard == Heard::OutletTrips;
    let at = session.events().iter().find(tripped)?.at.get();
    let started = session.has_run() || session.times(Heard::Hums) > 0;
    let truth = match at {
        at if at > 1_800.0 => 2,
        _ if started => 1,
        _ => 0,
    };
    let told = sheet.senses.told(truth, Clue::TripPattern.answers().len());
    Some(shown(Clue::TripPattern, told).into_iter().collect())
}

/// Under 5, to 10, over 10 per cent, on a meter's volts.
fn sagging(sheet: &mut Sheet) -> Option<usize> {
    let machine: Machine = sheet.machine.clone();
    let lowest = sheet.quarter()?.lowest_volts(&machine);
    let rest = sheet.kit.volts(machine.volts_at_rest()).text;
    let lowest = sheet.kit.volts(lowest).text;
    let (rest, lowest) = (parse_decimal(&rest)?, parse_decimal(&lowest)?);
    Some(match 1.0 - lowest / rest {
        fall if fall < 0.05 => 0,
        fall if fall < 0.1 => 1,
        _ => 2,
    })
}

/// Within minutes, only after a long rest, not at all.
fn restart(sheet: &mut Sheet) -> Option<Vec<Content>> {
    let session = sheet.quarter()?;
    let tries = session.has_run() || session.times(Heard::Hums) > 0;
    // Nobody tries again what trips.
    if !tries || session.is_tripped() {
        return None;
    }
    let starts = |rest: f64| {
        let again = session.again(Seconds::new(rest), A_TRY);
        again.is_ok_and(|again| is_heard_to_run(&again))
    };
    let truth = match () {
        () if starts(300.0) => 0,
        () if starts(1_800.0) || starts(4.0 * 3_600.0) => 1,
        () => 2,
    };
    let told = sheet.senses.told(truth, Clue::Restart.answers().len());
    Some(shown(Clue::Restart, told).into_iter().collect())
}

/// Hums, starts: at once after a quarter of an hour of running.
fn instant(sheet: &mut Sheet) -> Option<Vec<Content>> {
    let is_inverter = sheet.machine.blueprint().gear == Gear::Inverter;
    let session = sheet.quarter()?;
    // A board waits some minutes before it tries again.
    if is_inverter || !session.is_turning() || session.times(Heard::Clicks) > 0 {
        return None;
    }
    let again = session.again(Seconds::new(3.0), A_TRY).ok()?;
    let told = sheet.senses.told(usize::from(again.has_run()), 2);
    Some(shown(Clue::InstantRestart, told).into_iter().collect())
}

/// Starts, hums, silent; what trips at once shows nothing.
fn trial(session: &Session) -> Option<usize> {
    Some(match () {
        () if session.is_tripped() => return None,
        () if is_heard_to_run(session) => 0,
        () if session.has_run() || session.times(Heard::Hums) > 0 => 1,
        () => 2,
    })
}
