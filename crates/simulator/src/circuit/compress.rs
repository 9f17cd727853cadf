//! The pump, with the suction line in front of it.
//!
//! Answers: how much is drawn, how warm has it become on its way, and what work does it take?
//! Must never know: what turns the pump.

use super::flow::{Amounts, CircuitFlow, CircuitFlows, Metal, Side, kelvin, within_fit};
use super::throttle::root;
use super::{Circuit, LENGTHS};

/// How far gas in the shell takes on the shell's temperature before it is drawn in. From memory.
const SHELL_EXCHANGE: f64 = 0.6;
/// How far a full evaporator has to overflow, as a share of its liquid, to give up half of what
/// is drawn off as liquid.
const OVERFLOW: f64 = 0.3;

/// The way of the gas from the evaporator's inlet to the cylinder.
struct Suction {
    /// What each length of the evaporator warms it by, K.
    rises: [f64; LENGTHS],
    /// Heat from the capillary, J for each kilogram drawn.
    given: f64,
    /// Liquid carried along, as the heat that boils it, J for each kilogram drawn.
    to_boil: f64,
    /// In the cylinder, °C.
    drawn: f64,
}

impl Circuit {
    pub(super) fn pump(
        &self,
        it: &Amounts,
        metal: &Metal,
        speed: f64,
        [low, high]: [&Side; 2],
        flows: &mut CircuitFlows,
        seen: &mut CircuitFlow,
    ) {
        let ratio = (high.total / low.total).max(1.0);
        let exponent = self.refrigerant.isentropic_exponent();
        let expanded = self.pump.clearance.get() * (libm::pow(ratio, 1.0 / exponent) - 1.0);
        let filled = speed * self.pump.displacement.get() * (1.0 - expanded).max(0.0);
        let tight = filled * self.pump.tightness.get();
        let latent = self.refrigerant.latent_heat(within_fit(low.saturation));
        let brought = flows.liquid * self.brought(low.saturation, seen.capillary_inlet);
        let suction = self.suction(it, metal, low, [tight, brought, latent], seen);

        let mass = tight * low.density_at(suction.drawn);
        let heat = self.refrigerant.vapour_heat();
        for (flow, rise) in flows.heat.iter_mut().zip(suction.rises) {
            *flow += mass * heat * rise;
        }
        flows.flash = (brought - mass * suction.given).max(0.0) / latent;
        flows.carried = seen.carried * mass;
        flows.shell_heat = mass
            * (heat * (suction.drawn - seen.suction_line)
                + (suction.to_boil - suction.given).max(0.0));
        let share = (exponent - 1.0) / exponent;
        let pressed = libm::pow(ratio, share);
        flows.gas_work =
            filled * low.total * (pressed - 1.0) / (share * self.pump.indicated_efficiency.get());
        seen.gas_work = flows.gas_work;
        seen.pumped = mass;
        seen.discharge = kelvin(suction.drawn) * pressed - kelvin(0.0);
        let back = self.pump.back_leak
            * libm::sqrt(2.0 * high.density)
            * root(high.total - low.total).max(0.0);
        flows.pumped_air = mass * low.air_share - back * high.air_share;
        flows.pumped_vapour = mass - back - flows.pumped_air;
    }

    /// What a kilogram of liquid brings through the capillary, J above liquid that boils there.
    fn brought(&self, cold: f64, inlet: f64) -> f64 {
        let enthalpy = |celsius: f64| self.refrigerant.liquid_enthalpy(within_fit(celsius));
        (enthalpy(inlet) - enthalpy(cold)).max(0.0)
    }

    fn suction(
        &self,
        it: &Amounts,
        metal: &Metal,
        low: &Side,
        [tight, brought, latent]: [f64; 3],
        seen: &mut CircuitFlow,
    ) -> Suction {
        // Gas takes on the temperature of the dry lengths that it passes.
        let mut gas = low.saturation;
        let mut rises = [0.0; LENGTHS];
        for (rise, (wetted, metal)) in rises
            .iter_mut()
            .zip(self.wetted(it).into_iter().zip(metal.evaporator))
        {
            *rise = 0.9 * (1.0 - wetted) * (metal - gas);
            gas += *rise;
        }
        seen.evaporator_end = gas;
        let full = self.wetting_liquid(low.saturation);
        seen.carried = 0.5 * ((it.liquid_low - full) / (OVERFLOW * full)).clamp(0.0, 1.0);
        let heat = self.refrigerant.vapour_heat();
        let reach = self.capillary.suction_exchange.get() * (seen.capillary_inlet - gas).max(0.0);
        let rough = tight * low.density_at(gas);
        // The capillary gives no more than it has.
        let given = if rough > 0.0 {
            (rough * heat * reach).min(0.9 * brought) / rough
        } else {
            0.0
        };
        let to_boil = seen.carried * latent;
        seen.suction_line = gas + (given - to_boil).max(0.0) / heat;
        Suction {
            rises,
            given,
            to_boil,
            drawn: seen.suction_line + SHELL_EXCHANGE * (metal.shell - seen.suction_line),
        }
    }
}
