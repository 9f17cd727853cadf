//! Numbers off a meter where the app's pages take one in place of a word.

use diagnosis::{Caught, Choice, Clue, Item, Protection, Task};
use job::{Answer, Content, Unit};
use quantity::{Seconds, Watts};
use simulator::machine::{Gear, Heard, Session};

use super::super::Sheet;
use super::super::entry::{answer, choice, reading, typed};

/// When watts are read, counted from the start.
const EARLY: Seconds = Seconds::new(300.0);
const LATE: Seconds = Seconds::new(1_800.0);

/// What is read for a task; nothing where it shows no number.
pub(super) fn read(sheet: &mut Sheet, task: Task, again: bool) -> Option<Vec<Content>> {
    let Task::Clue(clue) = task else { return None };
    sheet.take_up_tools_for(task, again);
    match clue {
        Clue::PowerLevel => watts(sheet, &[(Item::LateWatts, LATE)]),
        Clue::WattsTrend => watts(sheet, &[(Item::EarlyWatts, EARLY), (Item::LateWatts, LATE)]),
        Clue::SaggingVolts => volts(sheet),
        Clue::Capacitor => farads(sheet),
        Clue::RoomTemperature => room(sheet),
        _ => None,
    }
}

/// The watts of a machine that has run on since it was plugged in. What a board drives changes all
/// the time: nobody reads it.
fn watts(sheet: &mut Sheet, items: &[(Item, Seconds)]) -> Option<Vec<Content>> {
    if sheet.machine.blueprint().gear == Gear::Inverter {
        return None;
    }
    let session = sheet.half_hour()?;
    if !session.is_turning() || session.times(Heard::Clicks) > 0 {
        return None;
    }
    let shown: Option<Vec<(Item, Watts)>> = items
        .iter()
        .map(|(item, at)| Some((*item, at_time(session, *at)?)))
        .collect();
    let meter = sheet.meter;
    let read = shown?.into_iter().map(|(item, watts)| {
        let display = sheet.kit.watts(watts);
        reading(item, &display, meter)
    });
    read.collect()
}

/// What was drawn so long after it was plugged in.
fn at_time(session: &Session, time: Seconds) -> Option<Watts> {
    let samples = &session.course().samples;
    let sample = samples.iter().find(|sample| sample.time >= time)?;
    Some(sample.watts)
}

/// Volts before a try, and the lowest while it hums.
fn volts(sheet: &mut Sheet) -> Option<Vec<Content>> {
    let machine = sheet.machine.clone();
    let session = sheet.quarter()?;
    if session.is_tripped() {
        return None;
    }
    let hums = session.times(Heard::Hums) > 0;
    let lowest = session.lowest_volts(&machine);
    let idle = sheet.kit.volts(machine.volts_at_rest());
    let lowest = sheet.kit.volts(lowest);
    // A start is over before a display has changed.
    let caught = if hums {
        Caught::HumLasted
    } else {
        Caught::Neither
    };
    let chosen = |item: Item, name: &str| choice(item.check().name(), item.name(), name);
    [
        chosen(Item::OutletProtection, Protection::TripsByItsButton.name()),
        reading(Item::IdleVolts, &idle, sheet.meter),
        reading(Item::LowestVolts, &lowest, sheet.meter),
        chosen(Item::LowestCaught, caught.name()),
    ]
    .into_iter()
    .collect()
}

/// What is printed on a capacitor and what is left of it; words where it shows nothing that it
/// could be judged by.
fn farads(sheet: &mut Sheet) -> Option<Vec<Content>> {
    let clue = Task::Clue(Clue::Capacitor);
    let (_, left) = sheet.machine.bench().capacitor()?;
    left?;
    let of = |sheet: &mut Sheet, item: &str| {
        let reading = sheet.capacitor(item)?;
        answer(clue.name(), item, Answer::Reading(reading))
    };
    ["marking", "measured"]
        .into_iter()
        .map(|item| of(sheet, item))
        .collect()
}

fn room(sheet: &mut Sheet) -> Option<Vec<Content>> {
    let display = sheet.kit.celsius(sheet.machine.room());
    let reading = typed(&display, Unit::Celsius, sheet.meter)?;
    let clue = Task::Clue(Clue::RoomTemperature);
    let content = answer(clue.name(), diagnosis::ANSWER, Answer::Reading(reading))?;
    Some(vec![content])
}
