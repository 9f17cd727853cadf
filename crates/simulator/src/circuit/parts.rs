//! The parts of a circuit.
//!
//! Answers: how large is each, and how sound? Must never know: what flows through them.

use crate::ParameterError;
use crate::error::within;
use quantity::{CubicMetres, Ratio, WattsPerKelvin};

/// What draws vapour from the low side and presses it into the high side.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pump {
    /// Swept volume of one turn, 0.1 … 50 cm³.
    pub displacement: CubicMetres,
    /// Dead volume as a share of the swept one, 0.005 … 0.2.
    pub clearance: Ratio,
    /// What of the vapour drawn in is pressed when nothing leaks back, 0 … 1. The rest slips out
    /// the way it came, by a suction valve that closes late or worn rings, and takes no work.
    pub tightness: Ratio,
    /// Opening through which pressed gas runs back, turning or not, in m²: 0 … 10⁻⁵.
    pub back_leak: f64,
    /// What of the work on the gas would do without friction in ports and valves, 0.3 … 1.
    pub indicated_efficiency: Ratio,
    /// Free room in the shell on the suction side, 0.1 … 10 litres.
    pub shell_volume: CubicMetres,
}

impl Pump {
    pub(super) fn checked(&self) -> Result<(), ParameterError> {
        within("pump.displacement", self.displacement.get(), 1e-7, 5e-5)?;
        within("pump.clearance", self.clearance.get(), 0.005, 0.2)?;
        within("pump.tightness", self.tightness.get(), 0.0, 1.0)?;
        within("pump.back_leak", self.back_leak, 0.0, 1e-5)?;
        within(
            "pump.indicated_efficiency",
            self.indicated_efficiency.get(),
            0.3,
            1.0,
        )?;
        within("pump.shell_volume", self.shell_volume.get(), 1e-4, 1e-2)
    }
}

/// Where pressed vapour becomes liquid.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Condenser {
    /// Inner volume, 20 cm³ … 2 litres.
    pub volume: CubicMetres,
    /// Share of it that liquid fills when just enough reaches the outlet to seal it, 0.02 … 0.5.
    pub film: Ratio,
    /// Heat from vapour to metal, 5 … 1000 W/K.
    pub inner: WattsPerKelvin,
}

impl Condenser {
    pub(super) fn checked(&self) -> Result<(), ParameterError> {
        within("condenser.volume", self.volume.get(), 2e-5, 2e-3)?;
        within("condenser.film", self.film.get(), 0.02, 0.5)?;
        within("condenser.inner", self.inner.get(), 5.0, 1000.0)
    }
}

/// What throttles.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Capillary {
    /// The opening that would pass as much without friction, in m²: 10⁻⁹ … 10⁻⁶.
    pub opening: f64,
    /// What of it is left, 0 … 1.
    pub free: Ratio,
    /// What is left of the drier, 0 … 1. A sound one passes far more than the capillary.
    pub drier_free: Ratio,
    /// What the suction line, soldered to it, takes of the difference in temperature, 0 … 0.95.
    pub suction_exchange: Ratio,
}

impl Capillary {
    pub(super) fn checked(&self) -> Result<(), ParameterError> {
        within("capillary.opening", self.opening, 1e-9, 1e-6)?;
        within("capillary.free", self.free.get(), 0.0, 1.0)?;
        within("capillary.drier_free", self.drier_free.get(), 0.0, 1.0)?;
        within(
            "capillary.suction_exchange",
            self.suction_exchange.get(),
            0.0,
            0.95,
        )
    }
}

/// Where liquid boils.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Evaporator {
    /// Inner volume, 20 cm³ … 3 litres.
    pub volume: CubicMetres,
    /// Share of it that liquid fills when its whole length is just wetted, 0.02 … 0.6.
    pub wetting: Ratio,
    /// Heat from metal to boiling liquid over its whole length, 5 … 1000 W/K.
    pub inner: WattsPerKelvin,
}

impl Evaporator {
    pub(super) fn checked(&self) -> Result<(), ParameterError> {
        within("evaporator.volume", self.volume.get(), 2e-5, 3e-3)?;
        within("evaporator.wetting", self.wetting.get(), 0.02, 0.6)?;
        within("evaporator.inner", self.inner.get(), 5.0, 1000.0)
    }
}
