//! What is felt, heard and seen of the cold, on a machine that runs.

use diagnosis::Clue;
use job::Content;
use quantity::{Celsius, KelvinDelta, Ratio, Seconds, parse_decimal};
use simulator::Senses;
use simulator::appliance::{Kind, Observation};
use simulator::machine::{Heard, Session};

use super::Sheet;
use super::entry::{clue as shown, there_is_none};
use super::sheet::is_left_alone;

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
        Clue::RunPattern => pattern(sheet.night()?)?,
        Clue::Temperatures => temperatures(sheet)?,
        Clue::ThawTrial => thaw(sheet)?,
        _ => return None,
    };
    let told = sheet.senses.told(place, clue.answers().len());
    Some(shown(clue, told).into_iter().collect())
}

/// Half an hour in, where it ran all the time and still does.
fn running(sheet: &mut Sheet) -> Option<Observation> {
    let session = sheet.half_hour()?;
    ran_on(session).then(|| session.now().seen)
}

/// Whether it has run without a stop: what it feels like says little otherwise.
fn ran_on(session: &Session) -> bool {
    session.is_turning() && session.times(Heard::Clicks) == 0
}

/// A difference that a hand takes for none: twice what it errs by (`Senses::ordinary`), which is
/// how far apart two metals felt one after the other must be.
const NOTHING: f64 = 3.0;

/// How warm fingertips are: some 31 °C in a room of 20 °C, and they follow the room by half (order
/// of magnitude from memory). What isn't warmer than they are doesn't feel warm, only less cold.
fn fingertips(room: Celsius) -> f64 {
    (31.0 + 0.5 * (room.get() - 20.0)).min(36.0)
}

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
    let warm = fingertips(seen.room) - seen.room.get();
    match () {
        () if inlet < NOTHING => 4,
        () if middle > 28.0 => 1,
        () if inlet < warm => 3,
        () if middle < warm || outlet < NOTHING => 2,
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
    if !ran_on(session) {
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

/// Above this nothing settles: the dew point of a shut cabinet's air, °C (judgement).
const DRY: f64 = 3.0;

/// Even, first part only, none, block of ice, wet film, patchy, after two hours.
fn frost(sheet: &mut Sheet) -> Option<usize> {
    let share = sheet.machine.bench().frost();
    let session = sheet.two_hours()?;
    // What didn't run for most of the time has no frost to show.
    if session.running_share() < 0.6 || is_left_alone(session) {
        return None;
    }
    let [inlet, middle, end] = session.now().seen.evaporator.map(Celsius::get);
    let is_block = sheet.senses.seen(share).get() > 0.6;
    Some(match () {
        () if is_block => 3,
        () if inlet > DRY => 2,
        // A film lies all over; where the rest is dry, it is the first turns that are cold.
        () if inlet > -2.0 && end < DRY => 4,
        () if end > -2.0 || middle > -2.0 => 1,
        () => 0,
    })
}

/// On and off, all the time, short runs, never.
fn pattern(session: &Session) -> Option<usize> {
    Some(match () {
        // An outlet that is dead lets nobody listen.
        () if session.is_tripped() => return None,
        () if !session.has_run() => 3,
        () if session.times(Heard::Clicks) > 2 => 2,
        () if session.running_share() > 0.92 => 1,
        () => 0,
    })
}

/// What the compartments hold after half a day.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Held {
    /// All that there are, near their targets.
    Cold,
    /// The freezer is cold and the fresh food isn't.
    FreezerAlone,
    /// Neither is cold enough, nor warm.
    Half,
    /// As warm as the room, or nearly.
    Warm,
    /// The fresh food is as it should be and the freezer isn't.
    FreshFoodAlone,
    /// Colder than it should be.
    TooCold,
}

/// What a machine of this kind holds, °C. What a person complains of and what a thermometer says
/// go by the same limits. Ice cream is soft above −12 °C, milk turns above 9 °C; targets are −18
/// and 4 °C (IEC 62552, from memory).
pub(super) fn held(kind: Kind, first: f64, second: Option<f64>) -> Held {
    match (kind, second) {
        (Kind::PlateRefrigerator, _) => alone(first, 9.0, 14.0, -2.0),
        (_, None) => alone(first, FREEZER, 2.0, TOO_COLD),
        (_, Some(fresh)) => two_compartments(first, fresh),
    }
}

/// A freezer above this isn't cold, below the other one too cold.
const FREEZER: f64 = -12.0;
const TOO_COLD: f64 = -28.0;
/// Fresh food above this isn't cold.
const FRESH_FOOD: f64 = 9.0;

/// Both near their targets, freezer cold and the rest warm, half cold, both warm, freezer warm
/// alone, too cold.
fn temperatures(sheet: &mut Sheet) -> Option<usize> {
    let kind = sheet.machine.blueprint().kind;
    let night = sheet.night()?;
    if night.is_tripped() {
        return None;
    }
    let (first, second) = night.settled();
    let first = parse_decimal(&sheet.kit.celsius(first).text)?;
    let second = match second {
        Some(air) => Some(parse_decimal(&sheet.kit.celsius(air).text)?),
        None => None,
    };
    Some(match held(kind, first, second) {
        Held::Cold => 0,
        Held::FreezerAlone => 1,
        Held::Half => 2,
        Held::Warm => 3,
        Held::FreshFoodAlone => 4,
        Held::TooCold => 5,
    })
}

fn two_compartments(freezer: f64, fresh: f64) -> Held {
    match (freezer < FREEZER, fresh < FRESH_FOOD) {
        _ if freezer < TOO_COLD || fresh < -1.0 => Held::TooCold,
        (true, true) => Held::Cold,
        (true, false) => Held::FreezerAlone,
        (false, true) => Held::FreshFoodAlone,
        (false, false) if freezer < 2.0 || fresh < 14.0 => Held::Half,
        (false, false) => Held::Warm,
    }
}

fn alone(air: f64, cold: f64, half: f64, too_cold: f64) -> Held {
    match air {
        air if air < too_cold => Held::TooCold,
        air if air < cold => Held::Cold,
        air if air < half => Held::Half,
        _ => Held::Warm,
    }
}

/// Strong, none, weak, with the door's switch held in.
fn air(sheet: &mut Sheet) -> Option<usize> {
    let session = sheet.quarter()?;
    if session.is_tripped() {
        return None;
    }
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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_cold_freezer_beside_warm_fresh_food_is_told_from_the_other_way_round() {
        let kind = Kind::FrostFree;
        assert_eq!(held(kind, -18.0, Some(12.0)), Held::FreezerAlone);
        assert_eq!(held(kind, -8.0, Some(4.0)), Held::FreshFoodAlone);
        assert_eq!(held(kind, -8.0, Some(12.0)), Held::Half);
        assert_eq!(held(kind, -18.0, Some(4.0)), Held::Cold);
        assert_eq!(held(kind, 20.0, Some(21.0)), Held::Warm);
        assert_eq!(held(Kind::ChestFreezer, -11.0, None), Held::Half);
        assert_eq!(held(Kind::PlateRefrigerator, -4.0, None), Held::TooCold);
    }

    #[test]
    fn fingertips_follow_the_room_but_not_all_the_way() {
        assert!((fingertips(Celsius::new(20.0)) - 31.0).abs() < 1e-12);
        assert!(fingertips(Celsius::new(10.0)) < fingertips(Celsius::new(20.0)));
        // Blood is no warmer than that, whatever the room is.
        assert!((fingertips(Celsius::new(45.0)) - 36.0).abs() < 1e-12);
    }
}
