//! The cabinet: compartments with what is in them, metal of evaporator and condenser, frost,
//! fans, and what switches.
//!
//! Answers: where does heat go, and what do thermostat, timer, damper and door do about it?
//!
//! Must never know: refrigerant, pressures, or the motor.

mod compartment;
mod control;
mod fault;
mod flow;
mod walls;

pub use compartment::{Compartment, Contents, Door};
pub(crate) use compartment::{food_enthalpy, food_temperature};
pub use control::{Contacts, Damper, Defrost, Ending, Sensor, Thermostat, Timer};
pub use fault::CabinetFault;
pub(crate) use flow::{
    CabinetFlows, CabinetState, LATENT_FREEZING, LATENT_VAPOUR, Switched, Warmth,
};
pub use walls::{Blower, CondenserWall, EvaporatorWall, Rime, RoomFan, Shell};

use crate::ParameterError;
use crate::error::within;
use quantity::{Celsius, Ratio, Watts};

/// All of a machine but its refrigerant and its motor.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cabinet {
    /// The compartment with the evaporator.
    pub first: Compartment,
    /// A fresh-food compartment cooled by its air, where there is one.
    pub second: Option<Compartment>,
    /// Metal of the evaporator and the way of heat to it.
    pub evaporator: EvaporatorWall,
    /// Metal of the condenser and the way of heat from it.
    pub condenser: CondenserWall,
    /// The compressor's shell.
    pub shell: Shell,
    /// What calls for cooling.
    pub thermostat: Thermostat,
    /// What lets air into the second compartment.
    pub damper: Damper,
    /// What takes the frost off, where anything does.
    pub defrost: Option<Defrost>,
    /// Lamp that stays on and the like, in the compartment that has a lamp: 0 … 100 W.
    pub lamp: Watts,
    /// Air around, −10 … 50 °C.
    pub room: Celsius,
    /// Its relative humidity, 0 … 1.
    pub humidity: Ratio,
}

impl Cabinet {
    /// # Errors
    /// [`ParameterError`] names the first parameter with which no cabinet can be run.
    pub fn checked(&self) -> Result<(), ParameterError> {
        self.first.checked()?;
        if let Some(second) = &self.second {
            second.checked()?;
        }
        self.evaporator.checked()?;
        self.condenser.checked()?;
        self.shell.checked()?;
        self.thermostat.checked()?;
        self.damper.checked()?;
        if let Some(defrost) = &self.defrost {
            defrost.checked()?;
        }
        within("cabinet.lamp", self.lamp.get(), 0.0, 100.0)?;
        within("cabinet.room", self.room.get(), -10.0, 50.0)?;
        within("cabinet.humidity", self.humidity.get(), 0.0, 1.0)
    }
}
