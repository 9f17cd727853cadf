//! What is seen of the cabinet: doors, frost, air, fans, room.

use belief::BuildError;

use super::super::assembly::Parent::{Part as P, State};
use super::super::build::Build;
use super::super::clue::Clue;
use super::super::conditions::{Conditions, hold, pump, turns};
use super::super::fault::{Fault::*, Part::*};
use super::{Table, yes};

pub(super) fn add(table: &mut Table<'_>, c: &Conditions) -> Result<(), BuildError> {
    add_looks(table, c)?;
    add_air(table, c)?;
    add_temperatures(table, c)
}

fn add_looks(table: &mut Table<'_>, c: &Conditions) -> Result<(), BuildError> {
    table.add(Clue::Lint, &[P(Condenser), P(CondenserFan)], |given| {
        yes(match () {
            () if given.is(CondenserMatted) => 92.0,
            () if given.is(CondenserFanStopped) => 45.0,
            () => 15.0,
        })
    })?;
    table.add(Clue::Seal, &[P(Seal)], |given| {
        if given.is(SealLeaks) {
            [8.0, 62.0, 30.0]
        } else {
            // A gap that one can see is the fault itself.
            [89.0, 10.5, 0.5]
        }
    })?;
    table.add(Clue::DoorLamp, &[P(Lamp)], |given| {
        yes(if given.is(HeatStaysOn) { 80.0 } else { 2.0 })
    })?;
    // Both follow, the lamp stays on, the fan stays still: of fans that don't turn one in five has
    // a switch or a wire to blame, but none of them turns.
    let switched = [P(Lamp), P(EvaporatorFan)];
    table.add(Clue::DoorSwitch, &switched, |given| {
        match (given.is(HeatStaysOn), given.is(EvaporatorFanStopped)) {
            (true, true) => [4.0, 60.0, 36.0],
            (true, false) => [21.0, 73.0, 6.0],
            (false, true) => [30.0, 2.0, 68.0],
            (false, false) => [88.0, 2.0, 10.0],
        }
    })?;
    // Turns and reads, stiff or blocked, open. One still fan in five has its switch, its wires or a
    // board to blame; ice at the coil holds a sound blade in one of three.
    let frozen = [P(EvaporatorFan), State(c.ice)];
    table.add(Clue::EvaporatorFanMotor, &frozen, |given| {
        match (given.is(EvaporatorFanStopped), given.at(c.ice)) {
            (true, _) => [22.0, 38.0, 40.0],
            (_, 0) => [95.0, 3.0, 2.0],
            _ => [62.0, 36.0, 2.0],
        }
    })?;
    // The same with lint and dry bearings in place of ice.
    table.add(Clue::CondenserFanMotor, &[P(CondenserFan)], |given| {
        if given.is(CondenserFanStopped) {
            [22.0, 38.0, 40.0]
        } else {
            [94.0, 4.0, 2.0]
        }
    })?;
    table.add(Clue::Drain, &[P(Drain), State(c.ice)], |given| {
        yes(match () {
            () if given.is(IcedUp) => 86.0,
            () if given.at(c.ice) > 0 => 26.0,
            () => 5.0,
        })
    })?;
    table.add(Clue::CoilIce, &[State(c.ice)], |given| {
        yes(if given.at(c.ice) > 0 { 95.0 } else { 4.0 })
    })
}

fn add_air(table: &mut Table<'_>, c: &Conditions) -> Result<(), BuildError> {
    // Strong, none, weak.
    let moved_by = [State(c.evaporator), State(c.turns)];
    table.add(Clue::EvaporatorFan, &moved_by, |given| {
        match (given.at(c.turns), given.at(c.evaporator)) {
            // Nothing calls for it; some turn all the time.
            (turns::NOT, 0) => [10.0, 87.0, 3.0],
            // What calls the compressor calls the fan; some boards let it rest while they wait to
            // try again.
            (turns::NOT_THOUGH_CALLED, 0) => [84.0, 13.0, 3.0],
            (_, 0) => [93.0, 4.0, 3.0],
            (_, 1) => [20.0, 13.0, 67.0],
            _ => [3.0, 87.0, 10.0],
        }
    })?;
    table.add(Clue::CondenserFan, &[P(CondenserFan)], |given| {
        yes(if given.is(CondenserFanStopped) {
            92.0
        } else {
            3.0
        })
    })?;
    table.add(
        Clue::AirOutlet,
        &[P(Damper), State(c.evaporator)],
        |given| {
            yes(match () {
                () if given.is(DamperStuck) => 88.0,
                () if given.at(c.evaporator) > 0 => 80.0,
                () => 8.0,
            })
        },
    )?;
    // Usual, hot, cold. What heat says of too much being asked is weighed by `aside`.
    table.add(Clue::RoomTemperature, &[P(Room)], |given| {
        if given.is(RoomTooCold) {
            [4.0, 1.0, 95.0]
        } else {
            [82.0, 9.0, 9.0]
        }
    })
}

fn add_temperatures(table: &mut Table<'_>, c: &Conditions) -> Result<(), BuildError> {
    // On and off, all the time, in short runs, never. What never stops and gets too cold is weighed
    // by `aside`.
    table.add(
        Clue::RunPattern,
        &[State(c.turns), State(c.hold)],
        |given| match (given.at(c.turns), given.at(c.hold)) {
            // Some take a hum every few minutes for a run.
            (turns::NOT | turns::NOT_THOUGH_CALLED, _) => [2.0, 1.0, 12.0, 85.0],
            (turns::UNTIL_IT_CUTS_OUT, _) => [7.0, 4.0, 86.0, 3.0],
            // Seldom enough to be missed.
            (turns::TOO_SELDOM, _) => [66.0, 9.0, 10.0, 15.0],
            // A hot day, or an inverter, keeps a sound one running; so does half a day that began
            // with a warm freezer, which takes most of it to get cold.
            (_, hold::COLD) => [66.0, 31.0, 2.0, 1.0],
            (_, hold::UNBALANCED) => [45.0, 52.0, 2.0, 1.0],
            _ => [9.0, 87.0, 3.0, 1.0],
        },
    )?;
    // Both near target, freezer cold and the rest warm, half cold, both warm, freezer warm alone,
    // too cold. What pumps too little for both still holds fresh food in two of five cases: its
    // damper opens wide, and 4 °C is soon had where −18 °C is not (judgement).
    let partly = match table.assembly.build {
        Build::ManualDefrost => [3.0, 9.0, 64.0, 21.0, 3.0, 0.3],
        _ => [3.0, 9.0, 42.0, 19.0, 26.7, 0.3],
    };
    table.add(Clue::Temperatures, &[State(c.hold)], |given| {
        match given.at(c.hold) {
            hold::COLD => [84.0, 3.0, 5.0, 2.5, 2.0, 3.5],
            hold::UNBALANCED => [3.0, 67.0, 23.0, 4.0, 3.0, 0.5],
            hold::PARTLY => partly,
            _ => [1.0, 1.0, 3.0, 94.0, 1.0, 0.2],
        }
    })?;
    // Cools properly, cools partly, no change. What a cure says of a machine with nothing wrong
    // is weighed by `aside`.
    table.add(Clue::ThawTrial, &[State(c.ice), State(c.pump)], |given| {
        match (given.at(c.ice), given.at(c.pump)) {
            (1, pump::FULL) => [84.0, 12.0, 4.0],
            (1, _) => [8.0, 37.0, 55.0],
            // Moisture freezes in the capillary and thaws with the rest.
            (_, pump::ERRATIC) => [48.0, 30.0, 22.0],
            (_, pump::FULL) => [14.0, 26.0, 60.0],
            (_, pump::NONE) => [0.5, 2.5, 97.0],
            _ => [4.0, 24.0, 72.0],
        }
    })
}
