//! What hands, eyes and ears could notice at one moment, in physical terms.
//!
//! Answers: what is warm, cold, frosted, loud? Must never know: whether anybody notices, or what
//! it means.

use super::state;
use super::{Appliance, Drive};
use quantity::{Celsius, Kilograms, Pascals, Ratio};

/// The outside of a machine at one moment.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Observation {
    /// Air beside the evaporator.
    pub air: Celsius,
    /// Air in the second compartment, where there is one.
    pub second_air: Option<Celsius>,
    /// Food beside the evaporator.
    pub food: Celsius,
    /// Metal of the evaporator: inlet, middle, end.
    pub evaporator: [Celsius; 3],
    /// Frost on each of these lengths.
    pub frost: [Kilograms; 3],
    /// Share of the evaporator's length that liquid wets.
    pub wetted: Ratio,
    /// Condenser where gas comes in.
    pub condenser_inlet: Celsius,
    /// Its middle.
    pub condenser: Celsius,
    /// Its last pass, in front of the drier.
    pub condenser_outlet: Celsius,
    /// Behind the drier.
    pub drier_outlet: Celsius,
    /// The pipe from the pump.
    pub discharge_line: Celsius,
    /// The suction line where it leaves the cabinet.
    pub evaporator_end: Celsius,
    /// The suction line at the shell.
    pub suction_line: Celsius,
    /// Share of what is drawn off that is liquid.
    pub carried_liquid: Ratio,
    /// The shell.
    pub shell: Celsius,
    /// The room.
    pub room: Celsius,
    /// Liquid that hisses through the capillary, kg/s.
    pub liquid_flow: f64,
    /// Vapour that gurgles through it, kg/s.
    pub vapour_flow: f64,
    /// Air behind the evaporator's fan, m³/s.
    pub fan_flow: f64,
    /// Share of its speed at which the condenser's fan turns.
    pub room_fan: Ratio,
    /// Share of the drain that is free; 1 where there is none.
    pub drain: Ratio,
    /// The pump turns.
    pub running: bool,
    /// It has mains and doesn't turn.
    pub refused: bool,
    /// The defrost heater is hot.
    pub heating: bool,
    /// Pressure on the low side: seen by nobody outside a workshop.
    pub suction: Pascals,
    /// Pressure on the high side.
    pub discharge: Pascals,
}

/// Heat capacity of liquid refrigerants, J/(kg·K), to a third: from memory.
const LIQUID_HEAT: f64 = 2000.0;
/// What a stretch of bare pipe exchanges with the air, W/K. From memory.
const PIPE: f64 = 0.05;

/// A pipe through which so many W/K flow, at so many °C, takes on the air's temperature as the
/// flow dwindles.
fn pipe(inside: f64, flow: f64, air: f64) -> Celsius {
    Celsius::new(air + (inside - air) * flow / (flow + PIPE))
}

/// The share of the condenser that a hand calls its first part.
const FIRST_PASSES: f64 = 0.15;

impl<D: Drive> Appliance<D> {
    /// What could be noticed now.
    #[must_use]
    pub fn observe(&self) -> Observation {
        let seen = self.seen();
        let cabinet = &self.parts.cabinet;
        let at = |place: usize| Celsius::new(self.row[place]);
        let three = |from: usize| [from, from + 1, from + 2];
        let fans = self.control.cools();
        let vapour_heat = self.parts.circuit.refrigerant.vapour_heat();
        let gas = seen.pumped * vapour_heat;
        let flow = seen.liquid * LIQUID_HEAT + seen.vapour.abs() * vapour_heat;
        let room = cabinet.room.get();
        let condenser = self.row[state::CONDENSER];
        // Gas comes in hot, and liquid that stands in the last passes has the time to cool.
        // The first passes, a seventh of it, can't give off more heat than the gas brings.
        let hotter = pipe(seen.discharge, gas, condenser).get() - condenser;
        let brought = gas * hotter / (FIRST_PASSES * cabinet.condenser.still.get());
        let inlet = condenser + (0.3 * hotter).min(brought);
        let outlet = condenser + (room - condenser) * (0.1 + 0.85 * seen.flooded);
        // Gas alone comes through as warm as the condenser's end.
        let drier = if seen.liquid > 0.0 {
            seen.drier_outlet
        } else {
            outlet
        };
        Observation {
            air: at(state::FIRST),
            second_air: cabinet.second.map(|_| at(state::SECOND)),
            food: self.food(),
            evaporator: three(state::EVAPORATOR).map(at),
            frost: three(state::FROST).map(|place| Kilograms::new(self.row[place].max(0.0))),
            wetted: Ratio::new(seen.wetted),
            condenser_inlet: Celsius::new(inlet),
            condenser: at(state::CONDENSER),
            condenser_outlet: Celsius::new(outlet),
            drier_outlet: pipe(drier, flow, outlet),
            discharge_line: pipe(seen.discharge, gas, room),
            evaporator_end: pipe(seen.evaporator_end, gas, self.row[state::FIRST]),
            suction_line: pipe(seen.suction_line, gas, room),
            carried_liquid: Ratio::new(seen.carried),
            shell: at(state::SHELL),
            room: cabinet.room,
            liquid_flow: seen.liquid,
            vapour_flow: seen.vapour,
            fan_flow: if fans {
                cabinet.blown(&state::cabinet(&self.row))
            } else {
                0.0
            },
            room_fan: match &cabinet.condenser.fan {
                Some(fan) if fans => fan.turning,
                _ => Ratio::new(0.0),
            },
            drain: cabinet.defrost.map_or(Ratio::new(1.0), |it| it.drain),
            running: self.turning.speed.get() > 0.0,
            refused: self.turning.refused,
            heating: self.is_heating(),
            suction: Pascals::new(seen.low),
            discharge: Pascals::new(seen.high),
        }
    }
}
