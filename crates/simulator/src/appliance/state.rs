//! All that changes in a machine, as one row of numbers for the integrator.
//!
//! Answers: which number is what, and how small a difference matters? Must never know: why it
//! changes.

use super::tolerance::{GRAIN, KELVIN};
use crate::cabinet::{Cabinet, CabinetState, Warmth};
use crate::circuit::{Amounts, Circuit, LENGTHS, Metal};

pub(super) const VAPOUR_LOW: usize = 0;
pub(super) const LIQUID_LOW: usize = 1;
pub(super) const VAPOUR_HIGH: usize = 2;
pub(super) const LIQUID_HIGH: usize = 3;
pub(super) const AIR_LOW: usize = 4;
pub(super) const AIR_HIGH: usize = 5;
pub(super) const ICE: usize = 6;
pub(super) const EVAPORATOR: usize = 7;
pub(super) const CONDENSER: usize = 10;
pub(super) const SHELL: usize = 11;
pub(super) const FIRST: usize = 12;
pub(super) const SECOND: usize = 15;
pub(super) const FROST: usize = 18;
/// Energy that came in since the beginning, J: of the mains, of the room, with moisture.
pub(super) const MAINS: usize = 21;
pub(super) const ROOM: usize = 22;
pub(super) const MOISTURE: usize = 23;
/// How many there are.
pub(super) const ALL: usize = 24;

/// Places within a compartment's three numbers.
pub(super) const OF_AIR: usize = 0;
pub(super) const OF_WALL: usize = 1;
pub(super) const OF_CONTENTS: usize = 2;

pub(super) type Row = [f64; ALL];

fn three(row: &Row, from: usize) -> [f64; LENGTHS] {
    [row[from], row[from + 1], row[from + 2]]
}

pub(super) fn amounts(row: &Row) -> Amounts {
    Amounts {
        vapour_low: row[VAPOUR_LOW],
        liquid_low: row[LIQUID_LOW],
        vapour_high: row[VAPOUR_HIGH],
        liquid_high: row[LIQUID_HIGH],
        air_low: row[AIR_LOW],
        air_high: row[AIR_HIGH],
        ice: row[ICE],
    }
}

pub(super) fn set_amounts(row: &mut Row, amounts: &Amounts) {
    row[VAPOUR_LOW] = amounts.vapour_low;
    row[LIQUID_LOW] = amounts.liquid_low;
    row[VAPOUR_HIGH] = amounts.vapour_high;
    row[LIQUID_HIGH] = amounts.liquid_high;
    row[AIR_LOW] = amounts.air_low;
    row[AIR_HIGH] = amounts.air_high;
    row[ICE] = amounts.ice;
}

pub(super) fn metal(row: &Row, room: f64) -> Metal {
    Metal {
        evaporator: three(row, EVAPORATOR),
        condenser: row[CONDENSER],
        shell: row[SHELL],
        room,
    }
}

pub(super) fn cabinet(row: &Row) -> CabinetState {
    let warmth = |from: usize| Warmth {
        air: row[from + OF_AIR],
        wall: row[from + OF_WALL],
        contents: row[from + OF_CONTENTS],
    };
    CabinetState {
        evaporator: three(row, EVAPORATOR),
        frost: three(row, FROST),
        condenser: row[CONDENSER],
        shell: row[SHELL],
        first: warmth(FIRST),
        second: warmth(SECOND),
    }
}

/// A tolerable error of each number in a step. What changes slowly is left to explicit steps by a
/// nought.
pub(super) fn scale(circuit: &Circuit, of: &Cabinet, finer: f64) -> Row {
    let mut scale = [0.0; ALL];
    let grain = GRAIN * circuit.charge.get().max(5e-3);
    scale[VAPOUR_LOW..=LIQUID_HIGH].fill(grain);
    if circuit.air.get() > 0.0 {
        scale[AIR_LOW..=AIR_HIGH].fill(grain * 0.1);
    }
    scale[EVAPORATOR..=SHELL].fill(KELVIN);
    let mut compartment = |from: usize, mass: f64| {
        scale[from + OF_AIR] = KELVIN;
        scale[from + OF_WALL] = KELVIN;
        scale[from + OF_CONTENTS] = KELVIN * mass * 3000.0;
    };
    compartment(FIRST, of.first.contents.mass.get());
    if let Some(second) = &of.second {
        compartment(SECOND, second.contents.mass.get());
    }
    scale.map(|error| error * finer)
}
