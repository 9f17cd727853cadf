//! A cool-down that is watched: a thermometer in each compartment, read each half hour.

use diagnosis::{Clue, Compartment, CoolDown, Forecast, Task};
use job::{ColdEvent, ColdEventKind, Content, Place, Spot, Unit};
use measure::cool_down::Verdict;
use quantity::{Celsius, Seconds};
use simulator::appliance::{Kind, Sample};

use super::super::Sheet;
use super::super::entry::typed;
use super::super::sheet::is_left_alone;
use super::Notes;
use crate::cooling::{LAG, Probe};

/// Between two readings.
const EACH: Seconds = Seconds::new(1_800.0);
/// So long the task is stated to take; what isn't clear by then is given the rest of the day that an
/// empty cabinet has.
const HALF_A_DAY: Seconds = Seconds::new(12.0 * 3_600.0);
/// Before this nobody looks whether it is clear where it ends (judgement: a cabinet's walls follow
/// within hours).
const EARLIEST: Seconds = Seconds::new(4.0 * 3_600.0);

/// Switches it on warm and reads until it is clear where it ends, or a day is over. Nothing
/// where it doesn't run on: that needs no thermometer.
pub(super) fn watch(sheet: &mut Sheet, notes: &mut Notes) -> Option<()> {
    sheet.take_up_tools(Task::Clue(Clue::Temperatures));
    let night = sheet.night()?;
    if night.is_tripped() || is_left_alone(night) {
        return None;
    }
    let mut samples = night.course().samples.clone();
    let mut thermometers = thermometers(sheet);
    let began = notes.now;
    notes.write(Content::Event(ColdEvent {
        at: began,
        kind: ColdEventKind::SwitchedOn,
    }));
    let mut time = Seconds::new(0.0);
    while time < CoolDown::DAY {
        if time >= HALF_A_DAY {
            samples.clone_from(&sheet.day()?.course().samples);
        }
        time = time + EACH;
        notes.wait(EACH)?;
        for one in &mut thermometers {
            let shown = one.at(&samples, time);
            let display = sheet.kit.celsius(shown);
            notes.write(Content::Spot(Spot {
                place: one.place,
                at: notes.now,
                reading: typed(&display, Unit::Celsius, sheet.meter)?,
            }));
        }
        if time >= EARLIEST && is_clear(notes) {
            break;
        }
    }
    Some(())
}

/// Whether each compartment has shown its target, or is said to get there, or not.
fn is_clear(notes: &Notes) -> bool {
    let Some(found) = CoolDown::of(&notes.job, notes.now) else {
        return false;
    };
    let is_sure = |forecast: &Forecast| !matches!(forecast.verdict, Verdict::TooEarly { .. });
    let mut courses = found.courses.iter();
    courses.all(|course| course.reached.is_some() || course.foretold().is_some_and(is_sure))
}

/// A thermometer in a compartment.
struct Thermometer {
    place: Place,
    probe: Probe,
    is_second: bool,
    shown: f64,
    seen: usize,
}

impl Thermometer {
    fn at(&mut self, samples: &[Sample], time: Seconds) -> Celsius {
        for sample in &samples[self.seen..] {
            if sample.time > time {
                break;
            }
            let air = if self.is_second {
                sample.second_air.unwrap_or(sample.air)
            } else {
                sample.air
            };
            self.shown = self.probe.follow(sample.time.get(), air.get());
            self.seen += 1;
        }
        Celsius::new(self.shown)
    }
}

/// One in each compartment.
fn thermometers(sheet: &mut Sheet) -> Vec<Thermometer> {
    let kind = sheet.machine.blueprint().kind;
    let mut chance = sheet.chance_of(Clue::Temperatures);
    let mut one = |compartment: Compartment, is_second: bool| Thermometer {
        place: compartment.place(),
        probe: Probe::of(chance.between(LAG.0, LAG.1)),
        is_second,
        shown: 0.0,
        seen: 0,
    };
    match kind {
        Kind::PlateRefrigerator => vec![one(Compartment::FreshFood, false)],
        Kind::ChestFreezer | Kind::UprightFreezer => vec![one(Compartment::Freezer, false)],
        Kind::FrostFree | Kind::FrostFreeOneThermostat => vec![
            one(Compartment::Freezer, false),
            one(Compartment::FreshFood, true),
        ],
    }
}
