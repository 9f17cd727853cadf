//! All equations of a machine for as long as nothing switches.
//!
//! Answers: what changes how fast? Each flow is taken from one place and given to another here
//! and nowhere else, so that charge and energy are kept.
//!
//! Must never know: when something switches.

use super::state::{self, Row};
use crate::cabinet::{Cabinet, CabinetFlows, LATENT_FREEZING, LATENT_VAPOUR, Switched};
use crate::circuit::{Circuit, CircuitFlow, CircuitFlows, LENGTHS};
use crate::integrate::Balance;
use quantity::Celsius;

/// A machine between two switchings.
pub(super) struct System<'a> {
    pub(super) circuit: &'a Circuit,
    pub(super) cabinet: &'a Cabinet,
    /// Turns of the pump a second.
    pub(super) speed: f64,
    /// Heat of the drive into the shell, W.
    pub(super) drive_heat: f64,
    pub(super) fans: bool,
    pub(super) heater: f64,
    pub(super) scale: Row,
}

/// All flows of a machine.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct Flows {
    circuit: CircuitFlows,
    cabinet: CabinetFlows,
    drive_heat: f64,
}

/// Latent heat by which stored vapour is counted. What it differs by elsewhere goes to the
/// condenser with the gas.
pub(super) fn stored_latent(circuit: &Circuit) -> f64 {
    circuit.refrigerant.latent_heat(Celsius::new(-25.0))
}

impl System<'_> {
    pub(super) fn circuit_flow(&self, row: &Row) -> (CircuitFlows, CircuitFlow) {
        let metal = state::metal(row, self.cabinet.room.get());
        self.circuit.flow(&state::amounts(row), &metal, self.speed)
    }
}

impl Balance<{ state::ALL }> for System<'_> {
    type Flows = Flows;

    fn flows(&self, row: &Row) -> Flows {
        let (circuit, seen) = self.circuit_flow(row);
        let switched = Switched {
            fans: self.fans,
            heater: self.heater,
            flooded: seen.flooded,
        };
        Flows {
            circuit,
            cabinet: self.cabinet.flow(&state::cabinet(row), &switched),
            drive_heat: self.drive_heat,
        }
    }

    fn slope(&self, more: &Flows, less: &Flows, step: f64) -> Flows {
        Flows {
            circuit: more.circuit.slope(&less.circuit, step),
            cabinet: more.cabinet.slope(&less.cabinet, step),
            drive_heat: (more.drive_heat - less.drive_heat) / step,
        }
    }

    fn change(&self, flows: &Flows) -> Row {
        let mut row = [0.0; state::ALL];
        let vapour_made = self.move_refrigerant(&flows.circuit, &mut row);
        self.warm_metal(flows, vapour_made, &mut row);
        self.warm_compartments(&flows.cabinet, &mut row);
        self.book(flows, &mut row);
        row
    }

    fn scale(&self) -> &Row {
        &self.scale
    }
}

impl System<'_> {
    /// Moves the charge, and returns how much more of it is vapour, kg/s.
    fn move_refrigerant(&self, it: &CircuitFlows, row: &mut Row) -> f64 {
        let boiling = it.boiling.iter().sum::<f64>() + it.carried;
        let made_low = boiling + it.flash;
        row[state::VAPOUR_LOW] = made_low + it.vapour - it.pumped_vapour;
        row[state::LIQUID_LOW] = it.liquid - made_low;
        row[state::VAPOUR_HIGH] = it.pumped_vapour - it.vapour - it.condensing;
        row[state::LIQUID_HIGH] = it.condensing - it.liquid;
        row[state::AIR_LOW] = it.air - it.pumped_air;
        row[state::AIR_HIGH] = it.pumped_air - it.air;
        row[state::ICE] = it.ice;
        made_low - it.condensing
    }

    fn warm_metal(&self, flows: &Flows, vapour_made: f64, row: &mut Row) {
        let (inner, outer) = (&flows.circuit, &flows.cabinet);
        let each = self.cabinet.evaporator.metal.get() / LENGTHS as f64;
        for place in 0..LENGTHS {
            let frosted = (LATENT_VAPOUR + LATENT_FREEZING) * outer.rime[place]
                - LATENT_FREEZING * outer.melt[place];
            let heat = outer.from_first[place] + outer.from_second[place] + outer.heater[place]
                - inner.heat[place]
                + frosted;
            row[state::EVAPORATOR + place] = heat / each;
            row[state::FROST + place] = outer.rime[place] - outer.melt[place];
        }
        // What the refrigerant takes up and doesn't store as vapour it gives off here.
        let taken = inner.heat.iter().sum::<f64>() + inner.shell_heat + inner.gas_work;
        let given = taken - stored_latent(self.circuit) * vapour_made;
        row[state::CONDENSER] = (given - outer.condenser_room - outer.condenser_wall)
            / self.cabinet.condenser.metal.get();
        row[state::SHELL] = (flows.drive_heat - inner.shell_heat - outer.shell_room)
            / self.cabinet.shell.metal.get();
    }

    fn warm_compartments(&self, it: &CabinetFlows, row: &mut Row) {
        let first = &self.cabinet.first;
        let taken: f64 = it.from_first.iter().sum();
        let air = it.inner_first + it.door_first + it.mains_first + it.between
            - it.contents_first
            - taken;
        row[state::FIRST + state::OF_AIR] = air / first.air.get();
        let wall = it.outer_first + it.condenser_wall - it.inner_first;
        row[state::FIRST + state::OF_WALL] = wall / first.wall.get();
        row[state::FIRST + state::OF_CONTENTS] = it.contents_first;
        let Some(second) = &self.cabinet.second else {
            return;
        };
        let taken: f64 = it.from_second.iter().sum();
        let air = it.inner_second + it.door_second + it.mains_second
            - it.between
            - it.contents_second
            - taken;
        row[state::SECOND + state::OF_AIR] = air / second.air.get();
        row[state::SECOND + state::OF_WALL] =
            (it.outer_second - it.inner_second) / second.wall.get();
        row[state::SECOND + state::OF_CONTENTS] = it.contents_second;
    }

    fn book(&self, flows: &Flows, row: &mut Row) {
        let it = &flows.cabinet;
        row[state::MAINS] = flows.drive_heat
            + flows.circuit.gas_work
            + it.mains_first
            + it.mains_second
            + it.mains_room
            + it.heater.iter().sum::<f64>();
        row[state::ROOM] = it.outer_first + it.outer_second + it.door_first + it.door_second
            - it.condenser_room
            - it.shell_room
            - it.mains_room;
        row[state::MOISTURE] = LATENT_VAPOUR * it.rime.iter().sum::<f64>();
    }
}
