//! A circuit that fits a duty.
//!
//! Answers: how large must pump and capillary be, and how much is filled in, for so many watts?
//!
//! Must never know: which cabinet it is for.

use super::throttle::DRIER;
use super::{Capillary, Circuit, Condenser, Evaporator, Pump};
use crate::error::within;
use crate::{ParameterError, Refrigerant};
use quantity::{Celsius, CubicMetres, Hertz, Kilograms, Ratio, Watts, WattsPerKelvin};

/// What a circuit has to do.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sizing {
    /// What circulates.
    pub refrigerant: Refrigerant,
    /// Heat taken up at [`Sizing::BOILING`], 20 … 400 W.
    pub cooling: Watts,
    /// Turns of the pump a second, 10 … 120 Hz.
    pub speed: Hertz,
    /// Inner volume of the evaporator.
    pub evaporator: CubicMetres,
    /// Heat from its metal to boiling liquid.
    pub boiling: WattsPerKelvin,
    /// Inner volume of the condenser.
    pub condenser: CubicMetres,
    /// Heat from vapour to its metal.
    pub condensing: WattsPerKelvin,
}

/// Share of the seal at the condenser's end that the design has.
const SEAL: f64 = 0.9;

impl Sizing {
    /// Where it boils in the design, °C: within the −25 … −30 °C common for freezers (from
    /// memory).
    pub const BOILING: f64 = -26.0;
    /// Where it condenses there, °C: a room of 25 °C and 14 K above it.
    pub const CONDENSING: f64 = 39.0;

    const SHELL: f64 = 55.0;
}

impl Circuit {
    /// # Errors
    /// [`ParameterError`] names what no circuit can be made for.
    ///
    /// ```
    /// use quantity::{CubicMetres, Hertz, Watts, WattsPerKelvin};
    /// use simulator::Refrigerant;
    /// use simulator::circuit::{Circuit, Sizing};
    /// let sound = Circuit::sized(&Sizing {
    ///     refrigerant: Refrigerant::R600a,
    ///     cooling: Watts::new(100.0),
    ///     speed: Hertz::new(48.5),
    ///     evaporator: CubicMetres::new(3e-4),
    ///     boiling: WattsPerKelvin::new(60.0),
    ///     condenser: CubicMetres::new(1.5e-4),
    ///     condensing: WattsPerKelvin::new(80.0),
    /// })?;
    /// assert!(sound.charge.get() > 0.015 && sound.charge.get() < 0.075);
    /// # Ok::<(), simulator::ParameterError>(())
    /// ```
    pub fn sized(sizing: &Sizing) -> Result<Self, ParameterError> {
        within("sizing.cooling", sizing.cooling.get(), 20.0, 400.0)?;
        within("sizing.speed", sizing.speed.get(), 10.0, 120.0)?;
        let mut it = Self::outline(sizing);
        let kind = sizing.refrigerant;
        let (cold, warm) = (
            Celsius::new(Sizing::BOILING),
            Celsius::new(Sizing::CONDENSING),
        );
        let (low, high) = (
            kind.saturation_pressure(cold).get(),
            kind.saturation_pressure(warm).get(),
        );
        let inlet = Celsius::new(Sizing::CONDENSING - 0.15 * 14.0);
        let reach = it.capillary.suction_exchange.get() * (inlet - cold).get();
        let brought = kind.liquid_enthalpy(inlet) - kind.liquid_enthalpy(cold);
        let each = kind.latent_heat(cold) - brought + kind.vapour_heat() * reach;
        let mass = sizing.cooling.get() / each;

        let suction = cold.get() + reach;
        let drawn = suction + 0.6 * (Sizing::SHELL - suction);
        let density = kind.vapour_density(cold) * (cold.get() + 273.15) / (drawn + 273.15);
        let expanded = libm::pow(high / low, 1.0 / kind.isentropic_exponent()) - 1.0;
        let filled = (1.0 - it.pump.clearance.get() * expanded) * it.pump.tightness.get();
        it.pump.displacement = CubicMetres::new(mass / (density * filled * sizing.speed.get()));

        let (liquid, vapour) = (kind.liquid_density(inlet), kind.vapour_density(warm));
        let mixed = SEAL * liquid + (1.0 - SEAL) * vapour;
        // With a sound drier in front.
        let series = libm::hypot(1.0, DRIER) / DRIER;
        it.capillary.opening = series * mass / libm::sqrt(2.0 * mixed * 0.7 * high);

        let full = it.condenser.volume.get() * it.condenser.film.get() * kind.liquid_density(warm);
        let gas_low = it.evaporator.volume.get() + it.pump.shell_volume.get() * 0.75;
        it.charge = Kilograms::new(
            it.wetting_liquid(Sizing::BOILING)
                + SEAL * full
                + gas_low * kind.vapour_density(cold)
                + it.condenser.volume.get() * (1.0 - it.condenser.film.get()) * vapour,
        );
        it.checked()?;
        Ok(it)
    }

    fn outline(sizing: &Sizing) -> Self {
        Self {
            refrigerant: sizing.refrigerant,
            charge: Kilograms::new(0.0),
            air: Kilograms::new(0.0),
            moisture: Ratio::new(0.0),
            pump: Pump {
                displacement: CubicMetres::new(5e-6),
                clearance: Ratio::new(0.02),
                tightness: Ratio::new(0.9),
                back_leak: 0.0,
                indicated_efficiency: Ratio::new(0.72),
                shell_volume: CubicMetres::new(1.5e-3),
            },
            condenser: Condenser {
                volume: sizing.condenser,
                film: Ratio::new(0.15),
                inner: sizing.condensing,
            },
            capillary: Capillary {
                opening: 1e-8,
                free: Ratio::new(1.0),
                drier_free: Ratio::new(1.0),
                suction_exchange: Ratio::new(0.8),
            },
            evaporator: Evaporator {
                volume: sizing.evaporator,
                wetting: Ratio::new(0.12),
                inner: sizing.boiling,
            },
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Cooling by swept volume between −25 and 45 °C: 805, 450 and 1284 kJ/m³ for R134a, R600a and
    /// R290, from enthalpies by CoolProp 8.0.0. A pump that takes in less in the same ratio as its
    /// refrigerant carries more does the same; what clearance costs differs by some percent.
    #[test]
    fn pumps_are_as_large_as_their_refrigerants_capacity_asks() {
        let size = |refrigerant| {
            let sized = Circuit::sized(&Sizing {
                refrigerant,
                cooling: Watts::new(100.0),
                speed: Hertz::new(48.5),
                evaporator: CubicMetres::new(3e-4),
                boiling: WattsPerKelvin::new(60.0),
                condenser: CubicMetres::new(2e-4),
                condensing: WattsPerKelvin::new(80.0),
            });
            sized.unwrap().pump.displacement.get() * 1e6
        };
        let capacity = [
            size(Refrigerant::R134a) * 805.0,
            size(Refrigerant::R600a) * 450.0,
            size(Refrigerant::R290) * 1284.0,
        ];
        for one in capacity {
            assert!((one / capacity[0] - 1.0).abs() < 0.08, "{capacity:?}");
        }
    }

    #[test]
    fn a_duty_that_can_not_be_is_refused_by_name() {
        let refused = |cooling, speed, evaporator| {
            let sized = Circuit::sized(&Sizing {
                refrigerant: Refrigerant::R290,
                cooling: Watts::new(cooling),
                speed: Hertz::new(speed),
                evaporator: CubicMetres::new(evaporator),
                boiling: WattsPerKelvin::new(60.0),
                condenser: CubicMetres::new(2e-4),
                condensing: WattsPerKelvin::new(80.0),
            });
            sized.unwrap_err().parameter
        };
        assert_eq!(refused(0.0, 50.0, 3e-4), "sizing.cooling");
        assert_eq!(refused(100.0, f64::NAN, 3e-4), "sizing.speed");
        assert_eq!(refused(100.0, 50.0, 0.0), "evaporator.volume");
    }
}
