//! What flows in a circuit.
//!
//! Answers: how much passes the pump and the capillary, boils and condenses, and which heat goes
//! along? Must never know: how the metal came by its temperature.

use super::{Circuit, LENGTHS};
use crate::integrate::flows;
use quantity::Celsius;

const ZERO_CELSIUS: f64 = 273.15;
/// Specific gas constant of dry air, J/(kg·K) (ISO 2533).
const AIR: f64 = 287.05;

flows! {
    /// Kilograms and joules a second.
    CircuitFlows {
        /// Vapour from the low to the high side by the pump, less what leaks back.
        pumped_vapour,
        /// Air along with it.
        pumped_air,
        /// Liquid through the capillary.
        liquid,
        /// Vapour through the capillary; backwards when negative.
        vapour,
        /// Air along with it.
        air,
        /// Liquid that flashes as it comes out of the capillary.
        flash,
        /// Vapour that condenses on the high side.
        condensing,
        /// Liquid that boils away behind the evaporator: in the suction line and the shell.
        carried,
        /// Heat from the shell into gas and carried liquid.
        shell_heat,
        /// Work on the gas.
        gas_work,
        /// Growth of the ice in the capillary's end, share a second.
        ice
        ;
        /// Liquid that boils in each length of the evaporator; condenses there when negative.
        boiling,
        /// Heat from each length into the refrigerant.
        heat
    }
}

/// Kilograms on each side, and the share of the capillary's end that ice closes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Amounts {
    pub(crate) vapour_low: f64,
    pub(crate) liquid_low: f64,
    pub(crate) vapour_high: f64,
    pub(crate) liquid_high: f64,
    pub(crate) air_low: f64,
    pub(crate) air_high: f64,
    pub(crate) ice: f64,
}

/// Temperatures of metal in °C, by whoever keeps them.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Metal {
    pub(crate) evaporator: [f64; LENGTHS],
    pub(crate) condenser: f64,
    pub(crate) shell: f64,
    pub(crate) room: f64,
}

/// What can be read off a circuit at one moment. Pressures in Pa absolute, °C, kg, kg/s, W.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(crate) struct CircuitFlow {
    /// Pressure on the low side.
    pub(crate) low: f64,
    /// Pressure on the high side.
    pub(crate) high: f64,
    /// Where the refrigerant boils.
    pub(crate) boiling: f64,
    /// Where it condenses, by the share of pressure that isn't air's.
    pub(crate) condensing: f64,
    /// Share of the evaporator's length that liquid wets.
    pub(crate) wetted: f64,
    /// Share of the condenser that stands full of liquid.
    pub(crate) flooded: f64,
    /// What enters the capillary.
    pub(crate) capillary_inlet: f64,
    /// Behind the drier: colder than in front when the drier throttles.
    pub(crate) drier_outlet: f64,
    /// Liquid through the capillary, kg/s.
    pub(crate) liquid: f64,
    /// Vapour through the capillary, kg/s.
    pub(crate) vapour: f64,
    /// Through the pump, kg/s.
    pub(crate) pumped: f64,
    /// Suction line at the shell.
    pub(crate) suction_line: f64,
    /// Suction line where it leaves the cabinet, before the capillary has warmed it.
    pub(crate) evaporator_end: f64,
    /// Share of what is drawn off that is liquid.
    pub(crate) carried: f64,
    /// Gas leaving the pump.
    pub(crate) discharge: f64,
    /// Work on the gas, W.
    pub(crate) gas_work: f64,
}

/// One side's gas.
pub(super) struct Side {
    /// Pressure of the vapour alone, Pa.
    pub(super) vapour: f64,
    /// With the air's.
    pub(super) total: f64,
    /// Density of vapour and air together, kg/m³.
    pub(super) density: f64,
    celsius: f64,
    /// Of the mass.
    pub(super) air_share: f64,
    /// Where vapour of this pressure condenses, °C.
    pub(super) saturation: f64,
}

/// Kelvins, not below any that a machine sees.
pub(super) fn kelvin(celsius: f64) -> f64 {
    celsius.max(-150.0) + ZERO_CELSIUS
}

/// As far as properties of liquid go.
pub(super) fn within_fit(celsius: f64) -> Celsius {
    Celsius::new(celsius.clamp(-60.0, 85.0))
}

impl Side {
    fn new(circuit: &Circuit, vapour: f64, air: f64, volume: f64, celsius: f64) -> Self {
        let kelvin = kelvin(celsius);
        let (vapour, air) = (vapour.max(0.0), air.max(0.0));
        let pressure = circuit
            .refrigerant
            .vapour_pressure(vapour / volume * kelvin);
        let gas = vapour + air;
        Self {
            vapour: pressure,
            total: pressure + air * AIR * kelvin / volume,
            density: gas / volume,
            celsius,
            air_share: if gas > 0.0 { air / gas } else { 0.0 },
            saturation: circuit.refrigerant.boils_at(libm::log(pressure)),
        }
    }

    /// Its density at the same pressure and another temperature.
    pub(super) fn density_at(&self, celsius: f64) -> f64 {
        self.density * kelvin(self.celsius) / kelvin(celsius)
    }
}

impl Circuit {
    /// The flows in a state, with the pump at so many turns a second.
    pub(crate) fn flow(
        &self,
        it: &Amounts,
        metal: &Metal,
        speed: f64,
    ) -> (CircuitFlows, CircuitFlow) {
        let mut flows = CircuitFlows::default();
        let mut seen = CircuitFlow::default();
        let (low, high) = self.sides(it, metal);
        seen.low = low.total;
        seen.high = high.total;
        seen.boiling = low.saturation;
        seen.condensing = high.saturation;
        self.condense(it, metal, &high, &mut flows, &mut seen);
        self.throttle(it, &low, &high, &mut flows, &mut seen);
        self.pump(it, metal, speed, [&low, &high], &mut flows, &mut seen);
        self.boil(it, metal, &low, &mut flows, &mut seen);
        (flows, seen)
    }

    fn sides(&self, it: &Amounts, metal: &Metal) -> (Side, Side) {
        let evaporator = metal.evaporator.iter().sum::<f64>() / LENGTHS as f64;
        let dense = |celsius: f64| self.refrigerant.liquid_density(within_fit(celsius));
        // The shell's gas counts by what it would fill at the evaporator's temperature.
        let shell = self.pump.shell_volume.get() * kelvin(evaporator) / kelvin(metal.shell);
        let free = |volume: f64, liquid: f64, celsius: f64| {
            (volume - liquid.max(0.0) / dense(celsius)).max(0.05 * volume)
        };
        let low = free(self.evaporator.volume.get(), it.liquid_low, evaporator) + shell;
        let high = free(self.condenser.volume.get(), it.liquid_high, metal.condenser);
        (
            Side::new(self, it.vapour_low, it.air_low, low, evaporator),
            Side::new(self, it.vapour_high, it.air_high, high, metal.condenser),
        )
    }

    fn condense(
        &self,
        it: &Amounts,
        metal: &Metal,
        high: &Side,
        flows: &mut CircuitFlows,
        seen: &mut CircuitFlow,
    ) {
        let celsius = within_fit(high.saturation);
        let full = self.condenser.volume.get() * self.refrigerant.liquid_density(celsius);
        let film = self.condenser.film.get() * full;
        seen.flooded = ((it.liquid_high - film) / (full - film)).clamp(0.0, 0.97);
        let area = if high.saturation > metal.condenser {
            1.0 - seen.flooded
        } else {
            (it.liquid_high / film).clamp(0.0, 1.0)
        };
        flows.condensing = area * self.condenser.inner.get() * (high.saturation - metal.condenser)
            / self.refrigerant.latent_heat(celsius);
        // A little subcooling on the way through the drier, more out of a flooded end.
        let cooled = 0.15 + 0.8 * seen.flooded;
        seen.capillary_inlet = high.saturation - cooled * (high.saturation - metal.room).max(0.0);
    }

    fn boil(
        &self,
        it: &Amounts,
        metal: &Metal,
        low: &Side,
        flows: &mut CircuitFlows,
        seen: &mut CircuitFlow,
    ) {
        let cold = within_fit(low.saturation);
        let latent = self.refrigerant.latent_heat(cold);
        let each = self.evaporator.inner.get() / LENGTHS as f64;
        let wetted = self.wetted(it);
        for (place, wet) in wetted.into_iter().enumerate() {
            let over = metal.evaporator[place] - low.saturation;
            // Vapour condenses wherever metal is cold; liquid boils only where it is.
            let area = if over > 0.0 { wet } else { 1.0 };
            flows.boiling[place] = area * each * over / latent;
            flows.heat[place] += area * each * over;
        }
        seen.wetted = wetted.iter().sum::<f64>() / LENGTHS as f64;
        // Ice grows where the flow comes out below freezing, as long as something flows.
        let frost = ((-2.0 - low.saturation) / 5.0).clamp(0.0, 1.0);
        let passing = (flows.liquid / 1e-6).clamp(0.0, 1.0);
        let room_left = (10.0 * (1.0 - it.ice)).clamp(0.0, 1.0);
        flows.ice = self.moisture.get() * passing * frost * room_left / 3600.0;
    }

    /// Liquid that wets the evaporator's whole length, kg.
    pub(super) fn wetting_liquid(&self, celsius: f64) -> f64 {
        let celsius = within_fit(celsius);
        self.evaporator.volume.get()
            * self.evaporator.wetting.get()
            * self.refrigerant.liquid_density(celsius)
    }

    /// How far each length is wetted: the first before the second.
    pub(super) fn wetted(&self, it: &Amounts) -> [f64; LENGTHS] {
        // At one temperature, so that what is wetted depends on the liquid alone.
        let all = LENGTHS as f64 * it.liquid_low.max(0.0) / self.wetting_liquid(-25.0);
        [0.0, 1.0, 2.0].map(|before| (all - before).clamp(0.0, 1.0))
    }
}
