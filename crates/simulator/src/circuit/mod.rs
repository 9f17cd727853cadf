//! The refrigerant circuit: evaporator, pump, condenser and capillary with a fixed charge.
//!
//! Answers: which pressures, flows and heats follow from where the charge is and how warm the
//! metal is? Two lumps of refrigerant, one on each side, each of liquid and vapour that need not
//! be in equilibrium; the evaporator's metal is three lengths in a row, wetted from the inlet on.
//!
//! Left out: what the oil dissolves; the refrigerant's own sensible heat, which is passed on at
//! once to where it would end; and the pressure drop along the evaporator and the condenser.
//!
//! Must never know: the cabinet, the thermostat, or what turns the pump.

#[cfg(test)]
mod bench;
mod compress;
mod fault;
mod flow;
mod parts;
mod settle;
mod sizing;
mod throttle;

pub use fault::CircuitFault;
pub(crate) use flow::{Amounts, CircuitFlow, CircuitFlows, Metal};
pub use parts::{Capillary, Condenser, Evaporator, Pump};
pub use sizing::Sizing;

use crate::error::within;
use crate::{ParameterError, Refrigerant};
use quantity::{Kilograms, Ratio};

/// The lengths into which the evaporator's metal is divided.
pub const LENGTHS: usize = 3;

/// All parts of a circuit and what is in it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Circuit {
    /// What circulates.
    pub refrigerant: Refrigerant,
    /// How much of it, 0 … 1 kg. Nought is a circuit that has leaked empty.
    pub charge: Kilograms,
    /// Air that got in, 0 … 20 g.
    pub air: Kilograms,
    /// Water in it, 0 … 1: at 1, ice closes the capillary's end within about an hour of boiling
    /// below freezing. It is washed on as soon as the inlet thaws.
    pub moisture: Ratio,
    /// What pumps.
    pub pump: Pump,
    /// Where it gives off heat.
    pub condenser: Condenser,
    /// What throttles, with the drier in front.
    pub capillary: Capillary,
    /// Where it takes up heat.
    pub evaporator: Evaporator,
}

impl Circuit {
    /// # Errors
    /// [`ParameterError`] names the first parameter with which no circuit can be run.
    pub fn checked(&self) -> Result<(), ParameterError> {
        within("circuit.charge", self.charge.get(), 0.0, 1.0)?;
        within("circuit.air", self.air.get(), 0.0, 0.02)?;
        within("circuit.moisture", self.moisture.get(), 0.0, 1.0)?;
        self.pump.checked()?;
        self.condenser.checked()?;
        self.capillary.checked()?;
        self.evaporator.checked()
    }
}
