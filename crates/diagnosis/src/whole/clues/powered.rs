//! What is heard, seen and read when it is plugged in, through a protected outlet.

use belief::BuildError;

use super::super::assembly::Parent::{Part as P, State};
use super::super::clue::Clue;
use super::super::conditions::{Conditions, call, compressor, motor, pump, supply, watts};
use super::super::fault::{Fault::*, Part::*};
use super::super::trouble;
use super::{Table, yes};

pub(super) fn add(table: &mut Table<'_>, c: &Conditions) -> Result<(), BuildError> {
    add_supply(table, c)?;
    add_power_up(table, c)?;
    add_power_meter(table, c)?;
    add_control(table)?;
    add_trials(table, c)
}

fn add_supply(table: &mut Table<'_>, c: &Conditions) -> Result<(), BuildError> {
    table.add(
        Clue::OtherOutlet,
        &[P(SupplyLine), P(ProtectiveDevice)],
        |given| {
            yes(match () {
                () if given.is(CordOpen) => 70.0,
                () if given.is(VoltageFalls) => 80.0,
                () if given.is(TripsByItself) => 78.0,
                () => 1.5,
            })
        },
    )?;
    // At once, at start, hours later, irregular.
    let leaking = [P(Insulation), P(OtherInsulation)];
    table.add(Clue::TripPattern, &leaking, |given| match () {
        () if given.is(WindingLeaks) => [45.0, 45.0, 5.0, 5.0],
        // A defrost heater leaks when the defrost comes.
        () if given.is(AnotherPartLeaks) => [28.0, 10.0, 47.0, 15.0],
        // No leak: the device itself, irregular more often than not.
        () => [16.0, 28.0, 14.0, 42.0],
    })?;
    table.add(Clue::Lamp, &[State(c.supply)], |given| {
        yes(match given.at(c.supply) {
            supply::DEAD => 97.0,
            supply::TRIPS => 60.0,
            // Bulbs fail too.
            _ => 8.0,
        })
    })?;
    table.add(
        Clue::SaggingVolts,
        &[State(c.supply), State(c.motor)],
        |given| match (given.at(c.supply), given.at(c.motor)) {
            (supply::SAGS, _) => [3.0, 15.0, 82.0],
            (_, motor::HUMS) => [66.0, 28.0, 6.0],
            _ => [75.0, 21.0, 4.0],
        },
    )
}

fn add_power_up(table: &mut Table<'_>, c: &Conditions) -> Result<(), BuildError> {
    // Runs, silent, hums then clicks, cuts out, knocks, trips.
    table.add(Clue::PowerUp, &[State(c.motor)], |given| {
        match given.at(c.motor) {
            // What a knock says of the valves is weighed by `aside`.
            motor::RUNS => [93.0, 1.0, 0.5, 1.5, 3.5, 0.5],
            motor::TOO_SELDOM => [80.0, 12.0, 4.0, 2.0, 1.5, 0.5],
            motor::CUTS_OUT => [4.0, 2.0, 8.0, 84.0, 2.0, 0.0],
            motor::HUMS => [1.0, 3.0, 94.0, 1.0, 1.0, 0.0],
            motor::SILENT | motor::CALLED_IN_VAIN | motor::DEFROSTING => {
                [3.0, 95.0, 1.0, 1.0, 0.0, 0.0]
            }
            motor::DEAD => [3.0, 97.0, 0.0, 0.0, 0.0, 0.0],
            _ => [4.0, 3.0, 1.0, 2.0, 0.0, 90.0],
        }
    })?;
    // No click, within seconds, after minutes.
    table.add(
        Clue::ClickInterval,
        &[State(c.motor)],
        |given| match given.at(c.motor) {
            motor::HUMS => [2.0, 93.0, 5.0],
            motor::CUTS_OUT => [8.0, 12.0, 80.0],
            _ => [95.0, 2.0, 3.0],
        },
    )
}

fn add_power_meter(table: &mut Table<'_>, c: &Conditions) -> Result<(), BuildError> {
    // Runs, nothing, standby, bursts, heater, stops by itself, trips.
    table.add(Clue::PowerMeter, &[State(c.motor)], |given| {
        match given.at(c.motor) {
            motor::RUNS => [97.0, 0.0, 1.0, 0.5, 0.5, 1.0, 0.0],
            motor::TOO_SELDOM => [79.0, 2.0, 16.0, 0.5, 1.0, 1.5, 0.0],
            motor::CUTS_OUT => [12.0, 0.0, 2.0, 6.0, 0.0, 80.0, 0.0],
            motor::HUMS => [2.0, 1.0, 4.0, 92.0, 0.0, 1.0, 0.0],
            motor::SILENT | motor::CALLED_IN_VAIN => [2.0, 22.0, 74.0, 0.0, 1.0, 1.0, 0.0],
            motor::DEFROSTING => [1.0, 1.0, 7.0, 0.0, 90.0, 1.0, 0.0],
            motor::DEAD => [3.0, 88.0, 8.0, 0.0, 0.0, 1.0, 0.0],
            _ => [5.0, 1.0, 2.0, 2.0, 0.0, 2.0, 88.0],
        }
    })?;
    // As expected, low, high.
    table.add(Clue::PowerLevel, &[State(c.watts)], |given| {
        match given.at(c.watts) {
            watts::USUAL => [96.0, 2.0, 2.0],
            watts::HIGH => [7.0, 0.0, 93.0],
            _ => [6.0, 94.0, 0.0],
        }
    })?;
    // Falls slowly, low and flat, falls in minutes, high and rising, high and steady.
    let parents = [State(c.watts), State(c.pump)];
    table.add(Clue::WattsTrend, &parents, |given| {
        match (given.at(c.watts), given.at(c.pump)) {
            (watts::USUAL, pump::BLOCKED) => [60.0, 5.0, 31.0, 2.0, 2.0],
            (watts::USUAL, _) => [90.0, 3.0, 1.0, 3.0, 3.0],
            (watts::HIGH, _) => [8.0, 0.0, 0.0, 58.0, 34.0],
            (_, pump::BLOCKED) => [3.0, 44.0, 51.0, 1.0, 1.0],
            (_, pump::FULL) => [10.0, 76.0, 10.0, 2.0, 2.0],
            _ => [5.0, 88.0, 6.0, 0.0, 1.0],
        }
    })
}

fn add_control(table: &mut Table<'_>) -> Result<(), BuildError> {
    table.add(
        Clue::TimerByHand,
        &[P(DefrostEnd), P(Board), P(Thermistor)],
        |given| {
            yes(match () {
                () if given.is(StuckInDefrost) => 92.0,
                () if given.is(ThermistorOff) => 45.0,
                () if given.is(BoardDoesNotCall) => 18.0,
                () => 3.0,
            })
        },
    )?;
    // None, motor or drive, no command, other. What it says of the board is weighed by `aside`.
    table.add(Clue::FlashCode, &[P(Drive), P(Windings)], |given| {
        match () {
            () if given.is(InverterMotorFailed) => [31.0, 62.0, 4.0, 3.0],
            () if given.is(DriveWithoutOutput) => [48.0, 40.0, 8.0, 4.0],
            () => [86.0, 2.0, 2.0, 10.0],
        }
    })
}

fn add_trials(table: &mut Table<'_>, c: &Conditions) -> Result<(), BuildError> {
    let waited = [P(Setting), State(c.trouble)];
    table.add(Clue::ModesCleared, &waited, |given| {
        yes(match () {
            () if given.is(SetNotToCool) => 88.0,
            // A delay that was waited for, pressures that had time to level: that is what was met in
            // four of ten (`looks`). What ran before can't start.
            () if given.at(c.trouble) == trouble::NONE => 40.0,
            () => 3.0,
        })
    })?;
    // Within minutes, only after a long rest, not at all.
    table.add(
        Clue::Restart,
        &[State(c.compressor), State(c.call)],
        |given| match (given.at(c.call), given.at(c.compressor)) {
            (call::DEFROSTING | call::IDLE, _) => [12.0, 3.0, 85.0],
            (_, compressor::RUNS) => [95.0, 4.0, 1.0],
            (_, compressor::CUTS_OUT) => [60.0, 32.0, 8.0],
            (_, compressor::AFTER_LONG_REST) => [5.0, 93.0, 2.0],
            _ => [3.0, 4.0, 93.0],
        },
    )?;
    add_start_trial(table, c, Clue::GoodDevice, [28.0, 70.0, 2.0])?;
    add_start_trial(table, c, Clue::StartKit, [70.0, 28.0, 2.0])
}

/// Starts, hums, silent: with something else in place of the old start device, and what comes of
/// it where the volts sag.
fn add_start_trial(
    table: &mut Table<'_>,
    c: &Conditions,
    clue: Clue,
    sagging: [f64; 3],
) -> Result<(), BuildError> {
    let parents = [State(c.started_by), State(c.motor), State(c.supply)];
    table.add(clue, &parents, |given| {
        let reaches = matches!(
            given.at(c.motor),
            motor::RUNS | motor::TOO_SELDOM | motor::CUTS_OUT | motor::HUMS
        );
        let turns = match given.at(c.started_by) {
            0 => true,
            kit_only => kit_only == 1 && clue == Clue::StartKit,
        };
        match (reaches, turns, given.at(c.supply)) {
            // Nothing calls, or the circuit is broken elsewhere.
            (false, ..) => [10.0, 3.0, 87.0],
            (_, true, supply::SAGS) => sagging,
            (_, true, _) => [96.0, 3.0, 1.0],
            _ => [2.0, 94.0, 4.0],
        }
    })
}
