//! What flows in a circuit.
//!
//! Answers: how much passes the pump and the capillary, boils and condenses, and which heat goes
//! along? Must never know: how the metal came by its temperature.

use super::{Circuit, LENGTHS};
use crate::integrate::flows;

const ZERO_CELSIUS: f64 = 273.15;
/// Specific gas constant of dry air, J/(kg·K) (ISO 2533).
const AIR: f64 = 287.05;
/// Share of the higher pressure below which the flow out of a capillary grows no more: flashing
/// liquid chokes. Common practice, no source.
const CHOKE: f64 = 0.3;
/// Below this difference in Pa the flow is laminar and goes with the difference, not its root.
const LAMINAR: f64 = 2e3;
/// How far gas in the shell takes on the shell's temperature before it is drawn in. From memory.
const SHELL_EXCHANGE: f64 = 0.6;
/// How many capillaries a sound drier is worth.
const DRIER: f64 = 20.0;
/// How far a full evaporator has to overflow, as a share of its liquid, to give up half of what
/// is drawn off as liquid.
const OVERFLOW: f64 = 0.3;

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

/// One side's gas: pressure of the vapour and of the air, density of both.
struct Side {
    vapour: f64,
    total: f64,
    vapour_density: f64,
    air_share: f64,
    saturation: f64,
}

impl Side {
    fn new(circuit: &Circuit, vapour: f64, air: f64, volume: f64, celsius: f64) -> Self {
        let kelvin = celsius.max(-150.0) + ZERO_CELSIUS;
        let vapour_density = vapour.max(0.0) / volume;
        let pressure = circuit.refrigerant.vapour_pressure(vapour_density * kelvin);
        Self {
            vapour: pressure,
            total: pressure + air.max(0.0) * AIR * kelvin / volume,
            vapour_density,
            air_share: air.max(0.0) / (air.max(0.0) + vapour.max(1e-9)),
            saturation: circuit.refrigerant.boils_at(libm::log(pressure)),
        }
    }
}

/// √ of a difference of pressures, linear near nought, with its sign.
fn root(difference: f64) -> f64 {
    difference / libm::sqrt(difference.abs() + LAMINAR)
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
        let dense = |celsius: f64| {
            let within = quantity::Celsius::new(celsius.clamp(-60.0, 85.0));
            self.refrigerant.liquid_density(within)
        };
        // The shell's gas counts by what it would fill at the evaporator's temperature.
        let shell = self.pump.shell_volume.get() * (evaporator.max(-150.0) + ZERO_CELSIUS)
            / (metal.shell + ZERO_CELSIUS);
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
        let celsius = quantity::Celsius::new(high.saturation.clamp(-60.0, 85.0));
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

    fn throttle(
        &self,
        it: &Amounts,
        low: &Side,
        high: &Side,
        flows: &mut CircuitFlows,
        seen: &mut CircuitFlow,
    ) {
        let clear = self.capillary.free.get() * (1.0 - it.ice.clamp(0.0, 1.0));
        let capillary = self.capillary.opening * clear;
        let drier = self.capillary.opening * DRIER * self.capillary.drier_free.get();
        // Two openings in a row.
        let opening = if capillary > 0.0 && drier > 0.0 {
            capillary * drier / libm::hypot(capillary, drier)
        } else {
            0.0
        };
        let celsius = quantity::Celsius::new(seen.capillary_inlet.clamp(-60.0, 85.0));
        let liquid_density = self.refrigerant.liquid_density(celsius);
        let full = self.condenser.volume.get() * self.condenser.film.get() * liquid_density;
        let seal = (it.liquid_high / full).clamp(0.0, 1.0);
        seen.drier_outlet = seen.capillary_inlet;
        if high.total >= low.total {
            let gas = high.vapour_density / (1.0 - high.air_share);
            let density = seal * liquid_density + (1.0 - seal) * gas;
            let drop = high.total - low.total.max(CHOKE * high.total);
            let mass = opening * libm::sqrt(2.0 * density) * root(drop);
            flows.liquid = mass * seal * liquid_density / density;
            let gas_mass = mass - flows.liquid;
            flows.air = gas_mass * high.air_share;
            flows.vapour = gas_mass - flows.air;
            if drier > 0.0 {
                let share = (opening / drier) * (opening / drier);
                let between = (high.vapour - share * drop).max(1.0);
                let flashes = self.refrigerant.boils_at(libm::log(between));
                seen.drier_outlet = seen.capillary_inlet.min(flashes);
            }
        } else {
            let gas = low.vapour_density / (1.0 - low.air_share);
            let mass = opening * libm::sqrt(2.0 * gas) * root(high.total - low.total);
            flows.air = mass * low.air_share;
            flows.vapour = mass - flows.air;
        }
        seen.liquid = flows.liquid;
        seen.vapour = flows.vapour;
    }

    fn pump(
        &self,
        it: &Amounts,
        metal: &Metal,
        speed: f64,
        [low, high]: [&Side; 2],
        flows: &mut CircuitFlows,
        seen: &mut CircuitFlow,
    ) {
        let cold = quantity::Celsius::new(low.saturation.clamp(-60.0, 85.0));
        let latent = self.refrigerant.latent_heat(cold);
        let heat = self.refrigerant.vapour_heat();
        let enthalpy = |celsius: f64| {
            self.refrigerant
                .liquid_enthalpy(quantity::Celsius::new(celsius.clamp(-60.0, 85.0)))
        };
        let excess = (enthalpy(seen.capillary_inlet) - enthalpy(low.saturation)).max(0.0);
        let brought = flows.liquid * excess;
        // Gas takes on the temperature of the dry lengths that it passes.
        let wetted = self.wetted(it);
        let mut gas = low.saturation;
        let mut rises = [0.0; LENGTHS];
        for place in 0..LENGTHS {
            rises[place] = 0.9 * (1.0 - wetted[place]) * (metal.evaporator[place] - gas);
            gas += rises[place];
        }
        let full = self.wetting_liquid(low.saturation);
        seen.carried = 0.5 * ((it.liquid_low - full) / (OVERFLOW * full)).clamp(0.0, 1.0);
        seen.evaporator_end = gas;

        let ratio = (high.total / low.total).max(1.0);
        let exponent = self.refrigerant.isentropic_exponent();
        let expanded = self.pump.clearance.get() * (libm::pow(ratio, 1.0 / exponent) - 1.0);
        let filled = speed * self.pump.displacement.get() * (1.0 - expanded).max(0.0);
        let kelvin = |celsius: f64| celsius.max(-150.0) + ZERO_CELSIUS;
        let mean = metal.evaporator.iter().sum::<f64>() / LENGTHS as f64;
        let density_at = |celsius: f64| low.vapour_density * kelvin(mean) / kelvin(celsius);

        let reach = self.capillary.suction_exchange.get() * (seen.capillary_inlet - gas).max(0.0);
        let rough = filled * self.pump.tightness.get() * density_at(gas);
        // The capillary gives no more than it has.
        let given = (rough * heat * reach).min(0.9 * brought);
        let each = if rough > 0.0 { given / rough } else { 0.0 };
        let to_boil = seen.carried * latent;
        seen.suction_line = gas + (each - to_boil).max(0.0) / heat;
        let drawn = seen.suction_line + SHELL_EXCHANGE * (metal.shell - seen.suction_line);
        let mass = filled * self.pump.tightness.get() * density_at(drawn);
        for place in 0..LENGTHS {
            flows.heat[place] += mass * heat * rises[place];
        }
        flows.flash = (brought - mass * each).max(0.0) / latent;
        flows.carried = seen.carried * mass;
        flows.shell_heat = mass * (heat * (drawn - seen.suction_line) + (to_boil - each).max(0.0));
        let share = (exponent - 1.0) / exponent;
        flows.gas_work = filled * low.total * (libm::pow(ratio, share) - 1.0)
            / (share * self.pump.indicated_efficiency.get());
        seen.gas_work = flows.gas_work;
        seen.pumped = mass;
        seen.discharge = kelvin(drawn) * libm::pow(ratio, share) - ZERO_CELSIUS;
        let back = self.pump.back_leak
            * libm::sqrt(2.0 * high.vapour_density / (1.0 - high.air_share))
            * root(high.total - low.total).max(0.0);
        flows.pumped_air = mass * low.air_share / (1.0 - low.air_share) - back * high.air_share;
        flows.pumped_vapour = mass - back * (1.0 - high.air_share);
    }

    fn boil(
        &self,
        it: &Amounts,
        metal: &Metal,
        low: &Side,
        flows: &mut CircuitFlows,
        seen: &mut CircuitFlow,
    ) {
        let cold = quantity::Celsius::new(low.saturation.clamp(-60.0, 85.0));
        let latent = self.refrigerant.latent_heat(cold);
        let each = self.evaporator.inner.get() / LENGTHS as f64;
        let wetted = self.wetted(it);
        for place in 0..LENGTHS {
            let over = metal.evaporator[place] - low.saturation;
            // Vapour condenses wherever metal is cold; liquid boils only where it is.
            let area = if over > 0.0 { wetted[place] } else { 1.0 };
            flows.boiling[place] = area * each * over / latent;
            flows.heat[place] += area * each * over;
        }
        seen.wetted = wetted.iter().sum::<f64>() / LENGTHS as f64;
        // Ice grows where the flow comes out below freezing, and melts as metal thaws.
        let frost = ((-2.0 - low.saturation) / 5.0).clamp(0.0, 1.0);
        let thaw = (metal.evaporator[0] / 5.0).clamp(0.0, 1.0);
        let passing = if flows.liquid > 1e-7 { 1.0 } else { 0.0 };
        flows.ice =
            self.moisture.get() * passing * frost * (1.0 - it.ice) / 1800.0 - thaw * it.ice / 600.0;
    }

    /// Liquid that wets the evaporator's whole length, kg.
    pub(super) fn wetting_liquid(&self, celsius: f64) -> f64 {
        let celsius = quantity::Celsius::new(celsius.clamp(-60.0, 85.0));
        self.evaporator.volume.get()
            * self.evaporator.wetting.get()
            * self.refrigerant.liquid_density(celsius)
    }

    /// How far each length is wetted: the first before the second.
    fn wetted(&self, it: &Amounts) -> [f64; LENGTHS] {
        // At one temperature, so that what is wetted depends on the liquid alone.
        let all = LENGTHS as f64 * it.liquid_low.max(0.0) / self.wetting_liquid(-25.0);
        [0.0, 1.0, 2.0].map(|before| (all - before).clamp(0.0, 1.0))
    }
}
