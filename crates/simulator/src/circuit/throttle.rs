//! The capillary, with the drier in front of it.
//!
//! Answers: how much liquid and vapour passes, and how cold does it come out of the drier? Must
//! never know: what becomes of it.

use super::Circuit;
use super::flow::{Amounts, CircuitFlow, CircuitFlows, Side, within_fit};

/// Share of the higher pressure below which the flow out of a capillary grows no more: flashing
/// liquid chokes. Common practice, no source.
const CHOKE: f64 = 0.3;
/// Below this difference in Pa the flow is laminar and goes with the difference, not its root.
const LAMINAR: f64 = 2e3;
/// How many capillaries a sound drier is worth. From memory.
pub(super) const DRIER: f64 = 6.0;

/// √ of a difference of pressures, linear near nought, with its sign.
pub(super) fn root(difference: f64) -> f64 {
    difference / libm::sqrt(difference.abs() + LAMINAR)
}

impl Circuit {
    pub(super) fn throttle(
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
        let celsius = within_fit(seen.capillary_inlet);
        let liquid_density = self.refrigerant.liquid_density(celsius);
        let full = self.condenser.volume.get() * self.condenser.film.get() * liquid_density;
        let seal = (it.liquid_high / full).clamp(0.0, 1.0);
        seen.drier_outlet = seen.capillary_inlet;
        if high.total >= low.total {
            let gas = high.density;
            let density = seal * liquid_density + (1.0 - seal) * gas;
            let drop = high.total - low.total.max(CHOKE * high.total);
            let mass = opening * libm::sqrt(2.0 * density) * root(drop);
            flows.liquid = mass * (seal * liquid_density / density.max(1e-12)).min(1.0);
            let gas_mass = mass - flows.liquid;
            flows.air = gas_mass * high.air_share;
            flows.vapour = gas_mass - flows.air;
            if drier > 0.0 {
                let share = (opening / drier) * (opening / drier);
                let between = (high.vapour - share * drop).max(1.0);
                let flashes = self.refrigerant.boils_at(libm::log(between));
                // Only liquid that boils away makes it colder: gas alone stays as it came.
                let liquid = flows.liquid / mass.max(1e-12);
                let kelvins =
                    liquid * self.refrigerant.latent_heat(celsius) / self.refrigerant.vapour_heat();
                let fall = (seen.capillary_inlet - flashes).clamp(0.0, kelvins);
                seen.drier_outlet = seen.capillary_inlet - fall;
            }
        } else {
            let mass = opening * libm::sqrt(2.0 * low.density) * root(high.total - low.total);
            flows.air = mass * low.air_share;
            flows.vapour = mass - flows.air;
        }
        seen.liquid = flows.liquid;
        seen.vapour = flows.vapour;
    }
}
