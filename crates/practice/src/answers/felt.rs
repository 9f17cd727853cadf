//! What is felt, heard and seen of the cold, on a machine that runs.

use diagnosis::Clue;
use job::Content;
use quantity::{Celsius, KelvinDelta, Ratio, Seconds, parse_decimal};
use simulator::Senses;
use simulator::appliance::{Kind, Observation};
use simulator::machine::{Heard, Session};

use super::Sheet;
use super::entry::{clue as shown, there_is_none};

pub(super) fn clue(sheet: &mut Sheet, clue: Clue) -> Option<Vec<Content>> {
    let frost_free = sheet.machine.blueprint().is_frost_free();
    let none = || Some(there_is_none(clue).into_iter().collect());
    let place = match clue {
        Clue::EvaporatorFan | Clue::AirOutlet if !frost_free => return none(),
        Clue::CondenserFan if sheet.machine.bench().room_fan().is_none() => return none(),
        Clue::EvaporatorFan => air(sheet)?,
        Clue::AirOutlet => outlet(sheet)?,
        Clue::CondenserFan => {
            let turning = running(sheet)?.room_fan;
            usize::from(sheet.senses.seen(turning).get() < 0.6)
        }
        Clue::CondenserWarmth => warmth(&running(sheet)?, &mut sheet.senses),
        Clue::Drier => {
            let seen = running(sheet)?;
            beside_room(sheet.senses.felt(seen.drier_outlet - seen.room))
        }
        Clue::SuctionLine => suction(&running(sheet)?, &mut sheet.senses),
        Clue::Hiss => hiss(sheet)?,
        Clue::FrostPattern => frost(sheet)?,
        Clue::RunPattern => pattern(sheet.night()?),
        Clue::Temperatures => temperatures(sheet)?,
        Clue::ThawTrial => thaw(sheet)?,
        _ => return None,
    };
    let told = sheet.senses.told(place, clue.answers().len());
    Some(shown(clue, told).into_iter().collect())
}

/// Half an hour in, where it runs.
fn running(sheet: &mut Sheet) -> Option<Observation> {
    let session = sheet.half_hour()?;
    session.is_turning().then(|| session.now().seen)
}

/// A difference that a hand takes for none.
const NOTHING: f64 = 1.5;

/// Warmer than the room, as the room, colder.
fn beside_room(difference: KelvinDelta) -> usize {
    match difference.get() {
        kelvins if kelvins > NOTHING => 0,
        kelvins if kelvins < -NOTHING => 2,
        _ => 1,
    }
}

/// Evenly warm, hot all over, first part warm, barely warm, room temperature.
fn warmth(seen: &Observation, senses: &mut Senses) -> usize {
    let felt = [seen.condenser_inlet, seen.condenser, seen.condenser_outlet]
        .map(|part| senses.felt(part - seen.room).get());
    let [inlet, middle, outlet] = felt;
    match () {
        () if inlet < NOTHING => 4,
        () if middle > 28.0 => 1,
        () if middle < 9.0 && inlet < 14.0 => 3,
        () if outlet < 0.25 * inlet => 2,
        () => 0,
    }
}

/// Cool, as the room, frosted, where it comes out of the cabinet.
fn suction(seen: &Observation, senses: &mut Senses) -> usize {
    let felt = senses.felt(seen.suction_line - seen.room).get();
    match () {
        () if seen.suction_line < Celsius::new(0.0) => 2,
        () if felt < -NOTHING => 0,
        () => 1,
    }
}

/// Fades in minutes, weak, long and faint, none, from when it stops.
fn hiss(sheet: &mut Sheet) -> Option<usize> {
    let session = sheet.half_hour()?;
    if !session.is_turning() {
        return None;
    }
    let flow = |later: f64| -> Option<f64> {
        let seen = session.unplugged(Seconds::new(later)).ok()?.now().seen;
        Some(seen.liquid_flow + seen.vapour_flow)
    };
    let (first, later) = (flow(5.0)?, flow(480.0)?);
    // A sound machine passes about this much at the stop, in kg/s: an ear has heard such ones.
    let loud = sheet.senses.heard(Ratio::new(first / USUAL_FLOW)).get();
    Some(match () {
        () if loud < 0.1 => 3,
        () if later > 0.35 * first => 2,
        () if loud < 0.4 => 1,
        () => 0,
    })
}

/// A hundred watts over some two hundred kilojoules a kilogram.
const USUAL_FLOW: f64 = 5e-4;

/// Even, first part only, none, block of ice, wet film, patchy, after two hours.
fn frost(sheet: &mut Sheet) -> Option<usize> {
    let share = sheet.machine.bench().frost();
    let session = sheet.two_hours()?;
    // What didn't run for most of the time has no frost to show.
    if session.running_share() < 0.6 {
        return None;
    }
    let [inlet, middle, end] = session.now().seen.evaporator.map(Celsius::get);
    let is_block = sheet.senses.seen(share).get() > 0.6;
    Some(match () {
        () if is_block => 3,
        () if inlet > 3.0 => 2,
        () if inlet > -2.0 => 4,
        () if end > -2.0 || middle > -2.0 => 1,
        () => 0,
    })
}

/// On and off, all the time, short runs, never.
fn pattern(session: &Session) -> usize {
    match () {
        () if !session.has_run() => 3,
        () if session.times(Heard::Clicks) > 2 => 2,
        () if session.running_share() > 0.92 => 1,
        () => 0,
    }
}

/// Both near their targets, freezer cold and the rest warm, half cold, both warm, freezer warm
/// alone, too cold.
fn temperatures(sheet: &mut Sheet) -> Option<usize> {
    let freezes = sheet.machine.blueprint().kind != Kind::PlateRefrigerator;
    let (first, second) = sheet.night()?.settled();
    let first = parse_decimal(&sheet.kit.celsius(first).text)?;
    let second = match second {
        Some(air) => Some(parse_decimal(&sheet.kit.celsius(air).text)?),
        None => None,
    };
    Some(match (freezes, second) {
        (true, Some(fresh)) => two_compartments(first, fresh),
        (true, None) => alone(first, -10.0, 2.0, -28.0),
        (false, _) => alone(first, 9.0, 14.0, -2.0),
    })
}

fn two_compartments(freezer: f64, fresh: f64) -> usize {
    match (freezer, fresh) {
        (freezer, fresh) if freezer < -28.0 || fresh < -1.0 => 5,
        (freezer, fresh) if freezer < -10.0 && fresh < 9.0 => 0,
        (freezer, _) if freezer < -10.0 => 1,
        (freezer, fresh) if freezer > -3.0 && fresh < 8.0 => 4,
        (freezer, fresh) if freezer < 2.0 || fresh < 14.0 => 2,
        _ => 3,
    }
}

fn alone(air: f64, cold: f64, half: f64, too_cold: f64) -> usize {
    match air {
        air if air < too_cold => 5,
        air if air < cold => 0,
        air if air < half => 2,
        _ => 3,
    }
}

/// Strong, none, weak, with the door's switch held in.
fn air(sheet: &mut Sheet) -> Option<usize> {
    let session = sheet.quarter()?;
    let blown = session.now().seen.fan_flow;
    let full = sheet.machine.bench().full_air()?;
    Some(match sheet.senses.seen(Ratio::new(blown / full)).get() {
        share if share > 0.6 => 0,
        share if share > 0.08 => 2,
        _ => 1,
    })
}

/// Blows, little or none, into the fresh food.
fn outlet(sheet: &mut Sheet) -> Option<usize> {
    let open = sheet.machine.bench().damper_is_open()?;
    let session = sheet.quarter()?;
    if !session.is_turning() {
        return None;
    }
    let blown = session.now().seen.fan_flow;
    let full = sheet.machine.bench().full_air()?;
    let arrives = if open { blown / full } else { 0.0 };
    Some(usize::from(
        sheet.senses.seen(Ratio::new(arrives)).get() < 0.3,
    ))
}

/// Cools properly, partly, no change, after a thaw.
fn thaw(sheet: &mut Sheet) -> Option<usize> {
    let before = temperatures(sheet)?;
    let mut thawed = sheet.thawed();
    let after = temperatures(&mut thawed)?;
    Some(match (before, after) {
        (_, 0) => 0,
        (3, 1 | 2 | 4) | (2, 1 | 4) => 1,
        _ => 2,
    })
}
