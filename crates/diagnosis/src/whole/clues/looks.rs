//! What it did, and what can be seen at the first look.

use belief::BuildError;

use super::super::assembly::Parent::{Part as P, State};
use super::super::clue::Clue;
use super::super::conditions::{Conditions, motor};
use super::super::fault::{Fault::*, Part::*};
use super::super::trouble;
use super::{Table, yes};

/// What is heard of machines on average. A seller's words are worth three fifths of one's own
/// ears, the rest is this.
const AVERAGE: [f64; 5] = [53.0, 22.0, 17.0, 3.0, 5.0];

/// A sound machine that is offered as faulty was met in a restart delay, or before its pressures
/// were level, in so many of a hundred cases; in the others it ran and was expected to do more.
const NOTHING_WRONG: [f64; 5] = [60.0, 25.0, 13.0, 1.0, 1.0];

/// Runs, silent, hums then clicks, trips, runs and then stops.
fn opening(motor: usize, trouble: usize) -> [f64; 5] {
    match motor {
        motor::RUNS if trouble == trouble::NONE => NOTHING_WRONG,
        motor::RUNS => [95.0, 2.0, 0.8, 1.0, 1.2],
        motor::TOO_SELDOM => [61.0, 22.0, 12.0, 1.0, 4.0],
        // Who doesn't stay with it takes it for one that runs.
        motor::CUTS_OUT => [40.0, 5.0, 14.0, 2.0, 39.0],
        motor::HUMS => [3.0, 6.0, 90.0, 0.0, 1.0],
        motor::SILENT | motor::CALLED_IN_VAIN | motor::DEFROSTING => [9.0, 88.5, 1.0, 1.0, 0.5],
        motor::DEAD => [3.0, 96.5, 0.0, 0.0, 0.5],
        _ => [5.0, 4.0, 1.0, 89.0, 1.0],
    }
}

pub(super) fn add(table: &mut Table<'_>, c: &Conditions) -> Result<(), BuildError> {
    let heard = [State(c.motor), State(c.trouble)];
    table.add(Clue::OpeningSeen, &heard, |given| {
        opening(given.at(c.motor), given.at(c.trouble))
    })?;
    table.add(Clue::OpeningTold, &heard, |given| {
        let mut row = opening(given.at(c.motor), given.at(c.trouble));
        for (chance, average) in row.iter_mut().zip(AVERAGE) {
            *chance = 0.6 * *chance + 0.4 * average;
        }
        row
    })?;
    add_electric_signs(table)?;
    add_sealed_signs(table)
}

fn add_electric_signs(table: &mut Table<'_>) -> Result<(), BuildError> {
    table.add(Clue::CordDamaged, &[P(SupplyLine)], |given| {
        yes(match () {
            () if given.is(CordOpen) => 30.0,
            () if given.is(VoltageFalls) => 20.0,
            () => 3.0,
        })
    })?;
    let driver = if table.assembly.part(StartDevice).is_some() {
        StartDevice
    } else {
        Drive
    };
    table.add(Clue::Burnt, &[P(Wiring), P(driver)], |given| {
        yes(match () {
            () if given.is(WiringBurnt) => 60.0,
            () if given.is(StartDeviceOpen) || given.is(StartDeviceStaysIn) => 18.0,
            () if given.is(DriveWithoutOutput) => 14.0,
            () if given.is(StartDeviceWeak) => 8.0,
            () => 3.0,
        })
    })?;
    table.add(Clue::Rodents, &[P(Wiring)], |given| {
        yes(if given.is(WiringBurnt) { 22.0 } else { 3.0 })
    })?;
    table.add(Clue::MissingParts, &[P(StartDevice), P(Wiring)], |given| {
        yes(if given.is(StartDeviceOpen) || given.is(WiringBurnt) {
            8.0
        } else {
            3.0
        })
    })?;
    table.add(Clue::Wet, &[P(OtherInsulation)], |given| {
        yes(if given.is(AnotherPartLeaks) {
            30.0
        } else {
            5.0
        })
    })
}

fn add_sealed_signs(table: &mut Table<'_>) -> Result<(), BuildError> {
    table.add(Clue::OilStain, &[P(Charge), P(Capillary)], |given| {
        yes(match () {
            () if given.is(ChargeGone) => 28.0,
            () if given.is(ChargeLow) => 20.0,
            () if given.is(ChargeContaminated) => 6.0,
            () if given.is(CapillaryRestricted) => 4.0,
            () => 1.5,
        })
    })?;
    table.add(Clue::Puncture, &[P(Charge)], |given| {
        yes(match () {
            () if given.is(ChargeGone) => 12.0,
            () if given.is(ChargeLow) => 5.0,
            () => 0.7,
        })
    })?;
    let sealed = [P(Charge), P(Capillary), P(Valves)];
    table.add(Clue::EarlierSealedWork, &sealed, |given| {
        yes(match () {
            () if given.is(ChargeContaminated) => 85.0,
            () if given.is(CapillaryRestricted) => 22.0,
            () if given.is(ChargeLow) || given.is(ChargeGone) => 18.0,
            () if given.is(ValvesWorn) => 8.0,
            () => 4.0,
        })
    })
}
