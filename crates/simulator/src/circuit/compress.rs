//! The pump, with the suction line in front of it.
//!
//! Answers: how much is drawn, how warm has it become on its way, and what work does it take?
//! Must never know: what turns the pump.

use super::flow::{Amounts, CircuitFlow, CircuitFlows, Metal, Side, kelvin, within_fit};
use super::throttle::root;
use super::{Circuit, LENGTHS};

/// How far gas in the shell takes on the shell's temperature before it is drawn in. From memory.
const SHELL_EXCHANGE: f64 = 0.6;
/// What the accumulator behind the evaporator holds, as a share of the liquid that wets its whole
/// length. From memory.
const ACCUMULATOR: f64 = 0.2;
/// How far an evaporator with a full accumulator has to overflow, as a share of its liquid, to give up half of what
/// is drawn off as liquid.
const OVERFLOW: f64 = 0.3;

/// What gas that leaks back into the cylinder gives back to the piston of the work that pressed
/// it. That a pump with leaking valves draws few watts is common practice, no source; the share is
/// judgement.
const PUSHED: f64 = 0.8;

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
        let back = self.back_flow(low, high);
        let suction = self.suction(it, metal, low, [tight, back, brought, latent], seen);

        let pressed = tight * low.density_at(suction.drawn);
        // What leaks back fills the cylinder before the suction line does; when nothing turns, it
        // goes all the way.
        let mass = (pressed - back).max(0.0);
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
        let heating = libm::pow(ratio, share);
        let returned = if pressed > 0.0 {
            (back / pressed).min(1.0)
        } else {
            0.0
        };
        flows.gas_work = tight * low.total * (heating - 1.0) * (1.0 - PUSHED * returned)
            / (share * self.pump.indicated_efficiency.get());
        seen.gas_work = flows.gas_work;
        seen.pumped = mass;
        seen.discharge = kelvin(suction.drawn) * heating - kelvin(0.0);
        let returning = (back - pressed).max(0.0);
        flows.pumped_air = mass * low.air_share - returning * high.air_share;
        flows.pumped_vapour = mass - returning - flows.pumped_air;
    }

    /// Pressed gas that runs back, kg/s.
    fn back_flow(&self, low: &Side, high: &Side) -> f64 {
        self.pump.back_leak * libm::sqrt(2.0 * high.density) * root(high.total - low.total).max(0.0)
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
        [tight, back, brought, latent]: [f64; 4],
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
        let over = it.liquid_low / full - 1.0 - ACCUMULATOR;
        seen.carried = 0.5 * (over / OVERFLOW).clamp(0.0, 1.0);
        let heat = self.refrigerant.vapour_heat();
        let reach = self.capillary.suction_exchange.get() * (seen.capillary_inlet - gas).max(0.0);
        let rough = (tight * low.density_at(gas) - back).max(0.0);
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
