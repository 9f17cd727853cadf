//! What a job holds about the windings, gathered for the measuring side.

use job::{Answer, Job, Measured, Reading};
use measure::windings::{Inspection, Leads, Pair, PairReading, StartGear, WiringAsFound};
use quantity::{Accuracy, Ohms, Typed};

use super::{CHECK, GearChoice, LeadsChoice, PairChoice, PinChoice, WindingsKnown, item_of_pair};
use crate::checks::machine::Machine;
use crate::choice::{Asked, Choice, answered};

/// Gathers what a job holds about the windings.
pub(super) fn inspection_of(job: &Job, machine: &Machine) -> Inspection {
    let mut inspection = Inspection::default();
    inspection.leads = leads_of(job);
    inspection.start_gear = match answered(job) {
        Some(GearChoice::Off) => StartGear::Off,
        Some(GearChoice::StillOn) => StartGear::StillOn,
        None => StartGear::Unknown,
    };
    inspection.mains = machine.mains.map(Into::into);
    inspection.wiring = wiring_of(job);
    for pair in Pair::ALL {
        if let Some((typed, accuracy)) = ohms_of(job, (CHECK, item_of_pair(pair))) {
            inspection.set(PairReading {
                pair,
                typed,
                accuracy,
            });
        }
    }
    inspection
}

fn ohms_of(job: &Job, (check, item): (&str, &str)) -> Option<(Typed<Ohms>, Accuracy)> {
    match job.answer(check, item) {
        Some(Answer::Reading(Reading {
            measured: Measured::Ohms(typed),
            accuracy,
            ..
        })) => Some((*typed, *accuracy)),
        _ => None,
    }
}

/// Where the probes were read together and the leads called zeroed, the later counts.
fn leads_of(job: &Job) -> Leads {
    let choice = answered::<LeadsChoice>(job);
    let (check, item) = WindingsKnown::LEADS_READING;
    let read_at = job.counting(check, item).map(|(entry, _)| entry.id.clone());
    let said_at = job
        .counting(LeadsChoice::CHECK, LeadsChoice::ITEM)
        .map(|(entry, _)| entry.id.clone());
    let mut ids = job.entries().iter().rev().map(|entry| Some(&entry.id));
    let latest = ids.find(|id| *id == read_at.as_ref() || *id == said_at.as_ref());
    let read_last = latest == Some(read_at.as_ref());
    match (choice, ohms_of(job, WindingsKnown::LEADS_READING)) {
        (Some(LeadsChoice::Zeroed), Some(_)) if !read_last => Leads::Zeroed,
        (_, Some((typed, accuracy))) => Leads::Measured(typed, accuracy),
        (Some(LeadsChoice::Zeroed), None) => Leads::Zeroed,
        (Some(LeadsChoice::NotZeroed), None) => Leads::NotZeroed,
        (Some(LeadsChoice::Unknown) | None, None) => Leads::Unknown,
    }
}

fn wiring_of(job: &Job) -> WiringAsFound {
    let pin = |(check, item): (&str, &str)| {
        PinChoice::from_name(job.choice(check, item)?).and_then(PinChoice::pin)
    };
    let (check, item) = WindingsKnown::START_DEVICE_PAIR;
    WiringAsFound {
        overload_on: pin(WindingsKnown::OVERLOAD_PIN),
        line_on: pin(WindingsKnown::LINE_PIN),
        start_device_on: job
            .choice(check, item)
            .and_then(PairChoice::from_name)
            .and_then(PairChoice::pair),
        marked: WindingsKnown::MARKED.map(pin),
    }
}
