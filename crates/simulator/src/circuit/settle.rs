//! A circuit after a long rest.
//!
//! Answers: where has the charge gone once the pressures have levelled? Must never know: how long
//! that takes.

use super::{Amounts, Circuit};
use quantity::Celsius;

impl Circuit {
    /// Liquid lies in the evaporator, and all vapour has the pressure of saturation there; where
    /// the charge is less than that, all is vapour.
    pub(crate) fn settled(&self, evaporator: f64, condenser: f64, shell: f64) -> Amounts {
        let kelvin = |celsius: f64| celsius + 273.15;
        let dense = self.refrigerant.vapour_density(Celsius::new(evaporator)) * kelvin(evaporator);
        let charge = self.charge.get();
        let high = self.condenser.volume.get() / kelvin(condenser);
        let shell = self.pump.shell_volume.get() / kelvin(shell);
        let wide = (self.evaporator.volume.get()) / kelvin(evaporator);
        let all = dense * (high + shell + wide);
        // Liquid takes room from the vapour.
        let density = self.refrigerant.liquid_density(Celsius::new(evaporator));
        let liquid = ((charge - all) / (1.0 - dense / kelvin(evaporator) / density)).max(0.0);
        let vapour = (charge - liquid).max(0.0);
        let filled = (liquid / density / kelvin(evaporator)).min(0.95 * wide);
        let low = wide - filled + shell;
        let share = high / (high + low);
        Amounts {
            vapour_low: vapour * (1.0 - share),
            liquid_low: liquid,
            vapour_high: vapour * share,
            liquid_high: 0.0,
            air_low: self.air.get() * (1.0 - share),
            air_high: self.air.get() * share,
            ice: 0.0,
        }
    }
}
