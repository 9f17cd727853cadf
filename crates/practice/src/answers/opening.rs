//! What is told before the first check: what machine it is, and what it did when it was last
//! plugged in.

use diagnosis::{Build, Choice, Complaint, Kind, MainsChoice, Refrigerant, Stores, ToldBy};
use job::Content;
use quantity::Celsius;
use simulator::appliance;
use simulator::machine::{Blueprint, Gear, Heard, Session};

use super::Sheet;
use super::entry::choice;
use super::felt::{self, Held};
use super::powered::is_heard_to_run;

pub(super) fn told(sheet: &mut Sheet) -> Vec<Content> {
    let blueprint = *sheet.machine.blueprint();
    let (complaint, told_by) = complaint(sheet);
    let stores = match blueprint.gear {
        Gear::Ptc => Stores::Nothing,
        Gear::PtcAndRunCapacitor | Gear::CurrentRelay => Stores::Capacitor,
        Gear::Inverter => Stores::InverterBoard,
    };
    [
        choice("machine", "kind", kind(&blueprint).name()),
        choice("machine", "mains", mains(&blueprint).name()),
        choice(
            "machine",
            "build",
            build_of(blueprint.kind, blueprint.gear == Gear::Inverter).name(),
        ),
        choice("refrigerant", "plate", gas(&blueprint).name()),
        choice("machine", "complaint", complaint.name()),
        choice("machine", "told-by", told_by.name()),
        choice("stored-charge", "stores", stores.name()),
    ]
    .into_iter()
    .flatten()
    .collect()
}

fn kind(blueprint: &Blueprint) -> Kind {
    match blueprint.kind {
        appliance::Kind::ChestFreezer => Kind::ChestFreezer,
        appliance::Kind::UprightFreezer => Kind::UprightFreezer,
        appliance::Kind::FrostFree | appliance::Kind::FrostFreeOneThermostat => Kind::FridgeFreezer,
        appliance::Kind::PlateRefrigerator => Kind::Refrigerator,
    }
}

fn mains(blueprint: &Blueprint) -> MainsChoice {
    match blueprint.mains {
        appliance::Mains::V115F60 => MainsChoice::V120F60,
        appliance::Mains::V230F50 => MainsChoice::V230F50,
    }
}

/// The build of machine that the app would weigh it as.
pub(crate) fn build_of(kind: appliance::Kind, is_inverter: bool) -> Build {
    match kind {
        _ if is_inverter => Build::Inverter,
        appliance::Kind::FrostFree | appliance::Kind::FrostFreeOneThermostat => Build::FrostFree,
        _ => Build::ManualDefrost,
    }
}

fn gas(blueprint: &Blueprint) -> Refrigerant {
    match blueprint.refrigerant {
        simulator::Refrigerant::R134a => Refrigerant::R134a,
        simulator::Refrigerant::R600a => Refrigerant::R600a,
        simulator::Refrigerant::R290 => Refrigerant::R290,
    }
}

/// What it did: heard in the first quarter of an hour, or found the next morning. Of a machine that
/// does what it should, it is said to run and stay warm: given no time, or moved. Who says so follows
/// from nothing that is wrong with it: else one word would tell the sound machines.
fn complaint(sheet: &mut Sheet) -> (Complaint, ToldBy) {
    let found = symptom(sheet);
    let told_by = if sheet.is_told_by_seller() {
        ToldBy::Seller
    } else {
        ToldBy::Myself
    };
    (found.unwrap_or(Complaint::RunsStaysWarm), told_by)
}

/// What anybody would complain of; nothing where it works.
pub(super) fn symptom(sheet: &mut Sheet) -> Option<Complaint> {
    if let Some(complaint) = heard(sheet.quarter()?) {
        return Some(complaint);
    }
    let night = sheet.night()?;
    if let Some(complaint) = heard(night) {
        return Some(complaint);
    }
    let never_stops = night.running_share() > 0.92;
    // As what lies in it has it: a defrost that is just over is nobody's complaint.
    let (first, second) = night.settled();
    let kind = sheet.machine.blueprint().kind;
    match felt::held(kind, first.get(), second.map(Celsius::get)) {
        // A freezer that was warm runs all night when it is sound.
        Held::Cold if never_stops && kind == appliance::Kind::PlateRefrigerator => {
            Some(Complaint::NeverStops)
        }
        Held::Cold => None,
        Held::FreezerAlone => Some(Complaint::OneSideWarm),
        // There are no words for a freezer that isn't cold beside fresh food that is.
        Held::Half | Held::Warm | Held::FreshFoodAlone => Some(Complaint::RunsStaysWarm),
        Held::TooCold => Some(Complaint::TooCold),
    }
}

/// What an ear makes of it, unless it just runs.
fn heard(session: &Session) -> Option<Complaint> {
    let hums = session.times(Heard::Hums);
    let clicks = session.times(Heard::Clicks);
    let runs = is_heard_to_run(session);
    match () {
        () if session.is_tripped() => Some(Complaint::TripsTheOutlet),
        () if !runs && (hums > 0 || clicks > 0) => Some(Complaint::HumsThenClicks),
        () if !runs => Some(Complaint::Silent),
        () if clicks > 0 => Some(Complaint::RunsThenStops),
        () => None,
    }
}
