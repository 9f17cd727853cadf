//! A capacitor in series with the start winding.

use core::f64::consts::TAU;

use quantity::{Farads, Ratio};

use crate::ParameterError;
use crate::error::within;
use crate::phasor::Phasor;

/// A start or run capacitor.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Capacitor {
    /// Its capacitance as it is now: less than printed when it is worn, nought when it is open.
    pub capacitance: Farads,
    /// Its resistance over its reactance. About 0.002 for film in a run capacitor, about 0.1 for an
    /// electrolytic start capacitor (both from memory).
    pub loss: Ratio,
    /// Whether it is shorted through.
    pub short: bool,
}

impl Capacitor {
    /// What is left between the ends of a shorted capacitor, in ohms: leads and a weld.
    const SHORT: f64 = 0.1;

    /// A film capacitor of so many microfarads.
    #[must_use]
    pub const fn film(microfarads: f64) -> Self {
        Self {
            capacitance: Farads::new(microfarads * 1e-6),
            loss: Ratio::new(0.002),
            short: false,
        }
    }

    /// An electrolytic start capacitor of so many microfarads.
    #[must_use]
    pub const fn electrolytic(microfarads: f64) -> Self {
        Self {
            capacitance: Farads::new(microfarads * 1e-6),
            loss: Ratio::new(0.1),
            short: false,
        }
    }

    pub(super) fn check(&self) -> Result<(), ParameterError> {
        let capacitance = self.capacitance.get();
        within("gear.capacitor.capacitance", capacitance, 0.0, 2e-3)?;
        within("gear.capacitor.loss", self.loss.get(), 0.0, 1.0)
    }

    /// Its impedance; `None` when it is open.
    pub(super) fn impedance(&self, hertz: f64) -> Option<Phasor> {
        let capacitance = self.capacitance.get();
        if self.short {
            return Some(Phasor::real(Self::SHORT));
        }
        // Less than a picofarad is what two wires have: open.
        (capacitance >= 1e-12).then(|| {
            let reactance = 1.0 / (TAU * hertz * capacitance);
            Phasor::new(reactance * self.loss.get(), -reactance)
        })
    }

    /// What a meter finds with direct current; `None` for open.
    pub(super) fn ohms(&self) -> Option<f64> {
        self.short.then_some(Self::SHORT)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A current of 3.32 A at 213.2 V and 60 Hz is that of 41.3 µF: 2652.6·I/V.
    #[test]
    fn volts_over_amperes_is_the_reactance() {
        let impedance = Capacitor::film(41.3).impedance(60.0).unwrap();
        assert!((213.2 / impedance.size() - 3.32).abs() < 0.002);
    }

    #[test]
    fn an_open_capacitor_lets_nothing_through_and_a_shorted_one_everything() {
        let mut capacitor = Capacitor::film(0.0);
        assert!(capacitor.impedance(50.0).is_none() && capacitor.ohms().is_none());
        capacitor.short = true;
        assert!(capacitor.impedance(50.0).unwrap().size() < 0.2);
        assert!(capacitor.ohms().is_some());
    }
}
