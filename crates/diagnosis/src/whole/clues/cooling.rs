//! What is felt, heard and seen of the refrigerant's round, on a compressor that runs.

use belief::BuildError;

use super::super::assembly::Parent::{Part, State};
use super::super::clue::Clue;
use super::super::conditions::{Conditions, pump};
use super::super::fault::{Fault::ValvesWorn, Part::Valves};
use super::{Table, yes};

pub(super) fn add(table: &mut Table<'_>, c: &Conditions) -> Result<(), BuildError> {
    add_warm_side(table, c)?;
    add_cold_side(table, c)?;
    add_stopping(table, c)
}

fn add_warm_side(table: &mut Table<'_>, c: &Conditions) -> Result<(), BuildError> {
    // Evenly warm, hot all over, first part warm, barely warm, room temperature.
    let parents = [State(c.pump), State(c.heat_out), State(c.evaporator)];
    table.add(Clue::CondenserWarmth, &parents, |given| {
        match (
            given.at(c.pump),
            given.at(c.heat_out),
            given.at(c.evaporator),
        ) {
            (pump::FULL, 1, _) => [10.0, 86.0, 2.0, 1.0, 1.0],
            (pump::FULL, _, 0) => [82.0, 8.0, 5.0, 4.0, 1.0],
            (pump::FULL, ..) => [37.0, 2.0, 13.0, 43.0, 5.0],
            (pump::ERRATIC, ..) => [25.0, 48.0, 22.0, 3.0, 2.0],
            (pump::STARVED, ..) => [5.0, 0.0, 53.0, 38.0, 4.0],
            (pump::BLOCKED, ..) => [4.0, 4.0, 62.0, 24.0, 6.0],
            (pump::WEAK, ..) => [6.0, 1.0, 12.0, 57.0, 24.0],
            _ => [1.0, 0.0, 5.0, 30.0, 64.0],
        }
    })?;
    // Warmer than the room, as the room, colder.
    table.add(
        Clue::Drier,
        &[State(c.pump), State(c.evaporator)],
        |given| {
            match (given.at(c.pump), given.at(c.evaporator)) {
                (pump::FULL, 0) => [88.0, 11.5, 0.5],
                (pump::FULL, _) => [72.0, 27.0, 1.0],
                (pump::ERRATIC, _) => [62.0, 28.0, 10.0],
                (pump::STARVED, _) => [48.0, 50.0, 2.0],
                // Nearly proof when it is cold, nothing when it is warm.
                (pump::BLOCKED, _) => [11.0, 33.0, 56.0],
                (pump::WEAK, _) => [24.0, 74.0, 2.0],
                _ => [6.0, 93.0, 1.0],
            }
        },
    )
}

fn add_cold_side(table: &mut Table<'_>, c: &Conditions) -> Result<(), BuildError> {
    // Cool, as the room, frosted back to the compressor.
    table.add(
        Clue::SuctionLine,
        &[State(c.pump), State(c.evaporator)],
        |given| {
            match (given.at(c.pump), given.at(c.evaporator)) {
                // The tube that is soldered to it brings it near the room's warmth: compressors
                // are rated with gas that returns as warm as the room (from memory).
                (pump::FULL, 0) => [52.0, 44.0, 4.0],
                // Liquid that found no heat comes back.
                (pump::FULL, _) => [32.0, 23.0, 45.0],
                (pump::ERRATIC, _) => [40.0, 35.0, 25.0],
                (pump::STARVED, _) => [15.0, 83.0, 2.0],
                (pump::BLOCKED, _) => [8.0, 91.0, 1.0],
                (pump::WEAK, _) => [30.0, 68.0, 2.0],
                _ => [2.0, 97.0, 1.0],
            }
        },
    )?;
    // Even, first part only, none, block of ice, wet film, patchy.
    table.add(
        Clue::FrostPattern,
        &[State(c.pump), State(c.ice)],
        |given| match (given.at(c.pump), given.at(c.ice)) {
            (pump::NONE, 1) => [0.0, 3.0, 60.0, 33.0, 3.0, 1.0],
            (_, 1) => [2.0, 3.0, 1.0, 90.0, 2.0, 2.0],
            (pump::FULL, _) => [87.0, 3.0, 2.0, 2.0, 4.0, 2.0],
            (pump::ERRATIC, _) => [40.0, 12.0, 8.0, 2.0, 12.0, 26.0],
            (pump::STARVED, _) => [3.0, 87.0, 4.0, 1.0, 3.0, 2.0],
            (pump::BLOCKED, _) => [2.0, 58.0, 34.0, 1.0, 3.0, 2.0],
            (pump::WEAK, _) => [2.0, 6.0, 28.0, 0.0, 62.0, 2.0],
            _ => [0.0, 3.0, 92.0, 0.0, 4.0, 1.0],
        },
    )
}

fn add_stopping(table: &mut Table<'_>, c: &Conditions) -> Result<(), BuildError> {
    // Fades in minutes, weak and short, long and faint, none.
    table.add(Clue::Hiss, &[State(c.pump)], |given| {
        match given.at(c.pump) {
            pump::FULL => [82.0, 10.0, 5.0, 3.0],
            pump::ERRATIC => [65.0, 20.0, 10.0, 5.0],
            pump::STARVED => [25.0, 53.0, 8.0, 14.0],
            pump::BLOCKED => [8.0, 13.0, 48.0, 31.0],
            pump::WEAK => [13.0, 55.0, 3.0, 29.0],
            _ => [1.0, 12.0, 2.0, 85.0],
        }
    })?;
    // Usual, knocks on stopping, rattles, buzzes, fan scrapes, knocks while running. A knock as it
    // stops is usual, a rattle is a tube or a panel; fans are weighed by `aside`.
    table.add(Clue::Noise, &[Part(Valves)], |given| {
        if given.is(ValvesWorn) {
            [55.0, 8.0, 9.0, 7.0, 4.0, 17.0]
        } else {
            [66.0, 9.0, 10.0, 8.0, 5.0, 2.0]
        }
    })?;
    // Pressures that never rose have nothing to level. With a current relay it would be 60, 66,
    // 42, 15, 5 and 10; four in five have a PTC, which is hot for a minute or more and makes all of
    // them half as likely.
    table.add(Clue::InstantRestart, &[State(c.pump)], |given| {
        yes(match given.at(c.pump) {
            pump::WEAK => 36.0,
            pump::NONE => 40.0,
            pump::STARVED => 25.0,
            pump::ERRATIC => 9.0,
            pump::BLOCKED => 3.0,
            _ => 6.0,
        })
    })
}
