//! What capacitances do, over all motors that fit.

use quantity::{Amps, Farads, Ohms, Quantity, Ratio, Volts};

use super::circuit::{Impedance, Standstill, capacitance_of, capacitor};
use super::fit::Fit;
use super::spread::Spread;

/// What one capacitance does.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct KitPoint {
    /// The capacitance.
    pub capacitance: Farads,
    /// Starting torque over that with the plain start device.
    pub torque: Spread<Ratio>,
    /// The line's current with the rotor at rest.
    pub line: Spread<Amps>,
    /// The volts across the capacitor, effective.
    pub capacitor_volts: Spread<Volts>,
}

/// Which capacitances help: from the one for a right angle between the currents to the one for
/// the greatest torque. Below, torque is given away; above, torque falls again while the current
/// still rises.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct UsefulRange {
    /// For a right angle.
    pub from: Spread<Farads>,
    /// For the greatest torque.
    pub to: Spread<Farads>,
}

/// How a capacitance stands in a useful range.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Useful {
    /// Below the range of nine in ten motors that fit.
    TooSmall,
    /// Above the range of nine in ten.
    TooLarge,
    /// Inside it for most motors that fit, at both ends.
    Within,
    /// It depends on which of the motors it is.
    CannotTell,
}

impl UsefulRange {
    /// How a capacitance stands.
    #[must_use]
    pub fn judge(&self, capacitance: Farads) -> Useful {
        if capacitance < self.from.tenth {
            Useful::TooSmall
        } else if capacitance > self.to.ninetieth {
            Useful::TooLarge
        } else if capacitance >= self.from.median && capacitance <= self.to.median {
            Useful::Within
        } else {
            Useful::CannotTell
        }
    }
}

impl Fit {
    /// What a capacitance does in the start winding's way, with `series` ohms beside it (a kit's
    /// own PTC, or nothing), against the plain device. The supply is taken as the one read,
    /// whatever the current. `None` where the capacitance isn't above zero or the ohms are
    /// negative.
    ///
    /// ```
    /// use measure::start_kit::{Fit, KitPrior, LockedRotor};
    /// use quantity::{Amps, Farads, Hertz, Ohms, Sources, Uncertain, Volts};
    /// let mut sources = Sources::default();
    /// let mut ohms = |value| Uncertain::exact(Ohms::new(value)).with(sources.fresh(), Ohms::new(0.1));
    /// let (main, start) = (ohms(4.0), ohms(7.0));
    /// let amps = Uncertain::exact(Amps::new(11.0)).with(sources.fresh(), Amps::new(0.4));
    /// let read = LockedRotor {
    ///     main,
    ///     start,
    ///     device: Ohms::new(5.0),
    ///     supply: Volts::new(112.0),
    ///     frequency: Hertz::new(60.0),
    ///     main_alone: Some(amps),
    ///     with_start: None,
    /// };
    /// let fit = Fit::of(&read, &KitPrior::default()).unwrap();
    /// let none = Ohms::new(0.0);
    /// let point = fit.at(Farads::new(150e-6), none).unwrap();
    /// assert!(point.torque.tenth.get() > 1.5);
    /// let range = fit.useful_range(none).unwrap();
    /// assert!(range.from.median < range.to.median);
    /// ```
    #[must_use]
    pub fn at(&self, capacitance: Farads, series: Ohms) -> Option<KitPoint> {
        let reactance = capacitor(capacitance, self.frequency)?;
        if !(series.get() >= 0.0 && series.get().is_finite()) {
            return None;
        }
        let with =
            |motor: &Standstill| motor.with_start_series(reactance + Impedance::resistor(series));
        let plain = |motor: &Standstill| motor.with_start_series(Impedance::resistor(self.device));
        let supply = self.supply;
        Some(KitPoint {
            capacitance,
            // The prior's angle keeps the plain device's torque above zero.
            torque: self.spread(|motor| with(motor).torque(supply) / plain(motor).torque(supply)),
            line: self.spread(|motor| with(motor).line_current(supply).get()),
            capacitor_volts: self
                .spread(|motor| with(motor).start_current(supply).get() * reactance.size().get()),
        })
    }

    /// Which capacitances help, with `series` ohms beside the capacitor. `None` where those are
    /// negative or no number.
    #[must_use]
    pub fn useful_range(&self, series: Ohms) -> Option<UsefulRange> {
        if !(series.get() >= 0.0 && series.get().is_finite()) {
            return None;
        }
        let farads = |reactance: Ohms| {
            // Both reactances are sums of positive ones.
            capacitance_of(reactance, self.frequency).map_or(f64::NAN, Farads::get)
        };
        let with = |motor: &Standstill| motor.with_start_series(Impedance::resistor(series));
        Some(UsefulRange {
            from: self.spread(|motor| farads(with(motor).quadrature())),
            to: self.spread(|motor| farads(with(motor).greatest_torque())),
        })
    }

    fn spread<Q: Quantity>(&self, of: impl Fn(&Standstill) -> f64) -> Spread<Q> {
        let motors = self.motors.iter();
        Spread::of(motors.map(|(motor, weight)| (of(motor), *weight)).collect())
    }
}
