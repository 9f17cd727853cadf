//! What is measured unplugged.

use belief::BuildError;

use super::super::assembly::Parent::{Part as P, State};
use super::super::build::Build;
use super::super::clue::Clue;
use super::super::conditions::{Conditions, call, compressor, motor, supply};
use super::super::fault::{Fault::*, Part::*};
use super::{Table, yes};

pub(super) fn add(table: &mut Table<'_>, c: &Conditions) -> Result<(), BuildError> {
    add_insulation(table)?;
    add_circuit(table, c)?;
    add_start_device(table)?;
    add_control_parts(table)?;
    table.add(Clue::WindingHeat, &[State(c.motor)], |given| {
        yes(match given.at(c.motor) {
            motor::CUTS_OUT => 55.0,
            motor::HUMS => 40.0,
            _ => 15.0,
        })
    })
}

/// Clear, doubtful, leaks.
fn add_insulation(table: &mut Table<'_>) -> Result<(), BuildError> {
    let leaking = [P(Insulation), P(OtherInsulation)];
    table.add(Clue::PlugInsulation, &leaking, |given| match () {
        // An open thermostat or relay hides the compressor from the plug.
        () if given.is(WindingLeaks) => [22.0, 20.0, 58.0],
        () if given.is(AnotherPartLeaks) => [42.0, 18.0, 40.0],
        () => [97.5, 2.0, 0.5],
    })?;
    table.add(
        Clue::ShellInsulation,
        &[P(Insulation), P(Windings)],
        |given| match () {
            () if given.is(WindingLeaks) => [16.0, 18.0, 66.0],
            () if given.is(TurnsShorted) => [72.0, 14.0, 14.0],
            () if given.is(InverterMotorFailed) => [85.0, 7.0, 8.0],
            () => [97.5, 2.0, 0.5],
        },
    )?;
    let leaking = [P(Insulation), P(OtherInsulation)];
    table.add(Clue::PartByPart, &leaking, |given| {
        match (given.is(WindingLeaks), given.is(AnotherPartLeaks)) {
            (true, true) => [10.0, 45.0, 45.0],
            (true, false) => [18.0, 80.0, 2.0],
            (false, true) => [22.0, 2.0, 76.0],
            (false, false) => [97.0, 1.0, 2.0],
        }
    })
}

/// A board's relay is open without power, whatever is behind it; the board's own transformer may
/// read like a heater (judgement).
const RELAY_OPEN: [f64; 4] = [2.0, 84.0, 0.0, 14.0];

/// How many machines have a board and no contacts between plug and compressor (judgement): about
/// half of those that are frost-free, few of those that are thawed by hand.
const fn behind_a_relay(build: Build) -> f64 {
    match build {
        Build::ManualDefrost => 0.1,
        Build::FrostFree => 0.5,
        Build::Inverter => 1.0,
    }
}

/// One row in this share of cases, the first in the others.
fn mixed<const N: usize>(mut first: [f64; N], other: [f64; N], share: f64) -> [f64; N] {
    for (one, other) in first.iter_mut().zip(other) {
        *one = (1.0 - share) * *one + share * other;
    }
    first
}

fn add_circuit(table: &mut Table<'_>, c: &Conditions) -> Result<(), BuildError> {
    let between = [State(c.supply), State(c.call), State(c.compressor)];
    let behind_relay = behind_a_relay(table.assembly.build);
    // A few ohms, open, near zero, heater only.
    table.add(Clue::BladeToBlade, &between, |given| {
        let through = match (given.at(c.supply), given.at(c.call), given.at(c.compressor)) {
            (supply::DEAD, ..) => return [4.0, 94.0, 0.0, 2.0],
            (_, call::DEFROSTING, _) => return [3.0, 50.0, 0.0, 47.0],
            (_, call::IDLE, _) => return [22.0, 73.0, 0.0, 5.0],
            (_, _, compressor::BROKEN) => return [3.0, 72.0, 0.0, 25.0],
            (_, _, compressor::LEAKS) => [88.0, 1.0, 10.0, 1.0],
            _ => [96.0, 2.0, 1.0, 1.0],
        };
        mixed(through, RELAY_OPEN, behind_relay)
    })?;
    let three_equal = table.assembly.build == Build::Inverter;
    let motor = [P(InnerProtector), P(Windings)];
    // Two windings, common open, one open, does not add up, three equal, missed.
    table.add(Clue::Pins, &motor, |given| match () {
        () if given.is(InnerProtectorOpen) => [0.0, 97.0, 1.0, 0.0, 0.0, 2.0],
        () if given.is(WindingOpen) => [0.0, 2.0, 95.0, 1.0, 0.0, 2.0],
        () if given.is(TurnsShorted) => [28.0, 0.0, 0.0, 68.0, 0.0, 4.0],
        () if given.is(InverterMotorFailed) => [0.0, 3.0, 26.0, 16.0, 52.0, 3.0],
        () if three_equal => [0.0, 0.5, 0.3, 0.7, 96.0, 2.5],
        () => [96.0, 0.5, 0.3, 0.7, 0.0, 2.5],
    })?;
    let protector = [P(Overload), P(Wiring)];
    // Closed, open, resistive.
    table.add(Clue::Protector, &protector, |given| match () {
        () if given.is(OverloadOpen) => [2.0, 95.0, 3.0],
        () if given.is(OverloadWeak) => [76.0, 5.0, 19.0],
        () if given.is(WiringBurnt) => [80.0, 3.0, 17.0],
        () => [96.5, 1.7, 1.8],
    })
}

fn add_start_device(table: &mut Table<'_>) -> Result<(), BuildError> {
    let heated = [P(StartDevice), P(Rotor)];
    table.add(Clue::StartDeviceLooks, &heated, |given| {
        yes(match () {
            () if given.is(StartDeviceOpen) => 33.0,
            () if given.is(StartDeviceWeak) => 25.0,
            () if given.is(StartDeviceStaysIn) => 12.0,
            // The heat of a rotor that doesn't turn marks sound ones too.
            () if given.is(RotorSeized) || given.is(RotorTight) => 10.0,
            () => 3.0,
        })
    })?;
    // As it should, open, near zero, drifted.
    table.add(Clue::StartDeviceOhms, &[P(StartDevice)], |given| match () {
        () if given.is(StartDeviceOpen) => [11.0, 86.0, 0.0, 3.0],
        () if given.is(StartDeviceWeak) => [72.0, 10.0, 3.0, 15.0],
        () if given.is(StartDeviceStaysIn) => [38.0, 1.0, 58.0, 3.0],
        () => [94.5, 3.0, 0.5, 2.0],
    })
}

fn add_control_parts(table: &mut Table<'_>) -> Result<(), BuildError> {
    table.add(Clue::Thermostat, &[P(Thermostat)], |given| {
        if given.is(ThermostatOpen) {
            [24.0, 71.0, 5.0]
        } else {
            [97.5, 2.0, 0.5]
        }
    })?;
    // Opens, stays closed. A bulb out of its place, or a board's relay, leaves the contacts sound.
    table.add(Clue::ThermostatCold, &[P(Thermostat)], |given| {
        yes(if given.is(ControlStaysOn) { 70.0 } else { 3.0 })
    })?;
    table.add(Clue::Thermistor, &[P(Thermistor)], |given| {
        if given.is(ThermistorOff) {
            [12.0, 43.0, 45.0]
        } else {
            [95.0, 3.5, 1.5]
        }
    })?;
    table.add(Clue::Capacitor, &[P(Capacitor)], |given| {
        if given.is(CapacitorFailed) {
            [8.0, 72.0, 20.0]
        } else {
            [96.0, 3.0, 1.0]
        }
    })?;
    table.add(Clue::DefrostParts, &[P(DefrostHeater)], |given| {
        if given.is(DefrostHeaterOpen) {
            [8.0, 90.0, 2.0]
        } else {
            [96.0, 3.5, 0.5]
        }
    })
}
