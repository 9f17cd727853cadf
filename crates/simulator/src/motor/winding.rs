//! One winding, and what can have happened to it.

use quantity::{Ohms, Ratio};

use crate::ParameterError;
use crate::error::within;
use crate::phasor::Phasor;

/// What copper's temperature on the Celsius scale is counted from for its resistance: 234.5 K
/// (IEC 60335-1 and UL, clause from memory).
const COPPER: f64 = 234.5;

/// What aluminium's is counted from: 225 K.
const ALUMINIUM: f64 = 225.0;

/// The temperature that given resistances hold at, in °C.
pub(super) const COLD: f64 = 25.0;

/// A winding.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Winding {
    /// Resistance of the whole winding at 25 °C.
    pub resistance: Ohms,
    /// Leakage reactance of the whole winding at the motor's frequency.
    pub reactance: Ohms,
    /// Whether it is broken, or its pin has no contact.
    pub is_open: bool,
    /// The share of its turns that are shorted among themselves, 0 to 0.9.
    pub shorted_share: Ratio,
    /// What lies between it and the shell, if it is not insulation.
    pub leak_to_shell: Option<Ohms>,
}

impl Winding {
    /// A winding without a fault.
    #[must_use]
    pub const fn sound(resistance: Ohms, reactance: Ohms) -> Self {
        Self {
            resistance,
            reactance,
            is_open: false,
            shorted_share: Ratio::new(0.0),
            leak_to_shell: None,
        }
    }

    pub(crate) fn check(&self, names: [&'static str; 4]) -> Result<(), ParameterError> {
        within(names[0], self.resistance.get(), 0.05, 2000.0)?;
        within(names[1], self.reactance.get(), 0.0, 5000.0)?;
        within(names[2], self.shorted_share.get(), 0.0, 0.9)?;
        let leak = self.leak_to_shell.map_or(1.0, Ohms::get);
        within(names[3], leak, 1.0, 1e12)
    }

    /// The resistance that a meter finds between the winding's ends at a temperature in °C.
    /// Shorted turns are out of the way. `None` when it is open.
    #[must_use]
    pub fn metered(&self, celsius: quantity::Celsius) -> Option<Ohms> {
        let left = 1.0 - self.shorted_share.get();
        (!self.is_open).then(|| Ohms::new(self.resistance.get() * left * copper_at(celsius.get())))
    }

    /// Resistance and leakage of the turns that are left, and their share of all turns.
    pub(super) fn impedance(&self, celsius: f64, frequency_ratio: f64) -> (Phasor, f64) {
        let left = 1.0 - self.shorted_share.get();
        let resistance = self.resistance.get() * copper_at(celsius) * left;
        let reactance = self.reactance.get() * frequency_ratio * left * left;
        (Phasor::new(resistance, reactance), left)
    }

    /// The admittance of the shorted turns as a loop of its own around the winding's field, seen
    /// from a winding of `turns` times all turns of this one.
    pub(super) fn shorted_loop(&self, celsius: f64, frequency_ratio: f64, turns: f64) -> Phasor {
        let share = self.shorted_share.get();
        if share <= 0.0 {
            return Phasor::NOUGHT;
        }
        let resistance = self.resistance.get() * copper_at(celsius) * share;
        let reactance = self.reactance.get() * frequency_ratio * share * share;
        Phasor::new(resistance, reactance).inverse() * (share * share * turns * turns)
    }
}

/// How many times its resistance at 25 °C copper has at another temperature.
pub(crate) fn copper_at(celsius: f64) -> f64 {
    (COPPER + celsius) / (COPPER + COLD)
}

/// The like for a cage of aluminium.
pub(super) fn aluminium(celsius: f64) -> f64 {
    (ALUMINIUM + celsius) / (ALUMINIUM + COLD)
}

#[cfg(test)]
mod tests {
    use super::*;
    use quantity::Celsius;

    /// 1/(234.5 + 20) for each kelvin, as copper's coefficient at 20 °C is usually given: 0.00393.
    #[test]
    fn copper_gains_what_its_coefficient_says() {
        let rise = copper_at(21.0) / copper_at(20.0) - 1.0;
        assert!((rise - 0.00393).abs() < 5e-6, "{rise}");
    }

    #[test]
    fn an_open_winding_has_no_ohms_and_a_shorted_one_has_fewer() {
        let mut winding = Winding::sound(Ohms::new(10.0), Ohms::new(4.0));
        let cold = Celsius::new(25.0);
        assert_eq!(winding.metered(cold), Some(Ohms::new(10.0)));
        winding.shorted_share = Ratio::new(0.25);
        assert_eq!(winding.metered(cold), Some(Ohms::new(7.5)));
        winding.is_open = true;
        assert_eq!(winding.metered(cold), None);
    }
}
