//! What hands, eyes and ears could notice at one moment, in physical terms.
//!
//! Answers: what is warm, cold, frosted, loud? Must never know: whether anybody notices, or what
//! it means.

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
