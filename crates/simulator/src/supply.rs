//! House, cords and what guards them.
//!
//! Answers: which volts are behind which resistance, what leaks to earth, and when does a
//! ground-fault device cut everything off?
//!
//! Must never know: what is plugged in.

use quantity::{Amps, Hertz, Ohms, Seconds, Volts};

use crate::ParameterError;
use crate::error::within;

/// A device that compares what goes out with what comes back.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GroundFaultDevice {
    /// The leakage at which this one trips.
    pub trips_at: Amps,
    /// How long it takes.
    pub delay: Seconds,
}

impl GroundFaultDevice {
    /// Class A: must not trip below 4 mA, must from 6 mA on (UL 943; NEC article 100, note). Here
    /// 5 mA, in 40 ms (time from memory; the standard's formula gives the longest allowed).
    pub const CLASS_A: Self = Self {
        trips_at: Amps::new(0.005),
        delay: Seconds::new(0.04),
    };

    /// 30 mA, general type: must not trip below 15 mA, must from 30 mA on (IEC 61008-1). Here
    /// 22 mA, in 40 ms (time from memory).
    pub const RESIDUAL_30: Self = Self {
        trips_at: Amps::new(0.022),
        delay: Seconds::new(0.04),
    };
}

/// Paths to earth outside of the compressor.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Leaks {
    /// There as long as the plug is in.
    pub standing: Option<Ohms>,
    /// There only while something switched is on, a heater say.
    pub switched: Option<Ohms>,
}

/// The supply at the compressor's end of the cord.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Supply {
    /// Effective volts with no load.
    pub volts: Volts,
    /// Its frequency.
    pub frequency: Hertz,
    /// Resistance of the house's wiring, both wires.
    pub house: Ohms,
    /// Resistance of an extension cord, both wires; nought without one.
    pub extension: Ohms,
    /// Resistance of the machine's own cord and contacts, both wires.
    pub cord: Ohms,
    /// What guards the outlet.
    pub ground_fault_device: Option<GroundFaultDevice>,
    /// What leaks.
    pub leaks: Leaks,
    /// Whether what is switched is on now.
    pub switched_on: bool,
}

impl Supply {
    /// An outlet of so many volts and hertz in a house of common wiring: 0.2 Ω, and a cord of
    /// 0.1 Ω (judgement: 15 m of 2.5 mm² and 2 m of 0.75 mm² have 0.2 and 0.1 Ω by IEC 60228).
    #[must_use]
    pub const fn outlet(volts: Volts, frequency: Hertz) -> Self {
        Self {
            volts,
            frequency,
            house: Ohms::new(0.2),
            extension: Ohms::new(0.0),
            cord: Ohms::new(0.1),
            ground_fault_device: None,
            leaks: Leaks {
                standing: None,
                switched: None,
            },
            switched_on: false,
        }
    }

    /// Refuses what no outlet has, by the parameter's name.
    ///
    /// # Errors
    /// [`ParameterError`] names the first parameter out of its bounds.
    pub fn check(&self) -> Result<(), ParameterError> {
        within("supply.volts", self.volts.get(), 0.0, 300.0)?;
        within("supply.frequency", self.frequency.get(), 40.0, 70.0)?;
        within("supply.house", self.house.get(), 0.0, 100.0)?;
        within("supply.extension", self.extension.get(), 0.0, 100.0)?;
        within("supply.cord", self.cord.get(), 0.0, 100.0)?;
        let leak = |leak: Option<Ohms>| leak.map_or(1.0, Ohms::get);
        let standing = leak(self.leaks.standing);
        within("supply.leaks.standing", standing, 1.0, 1e12)?;
        let switched = leak(self.leaks.switched);
        within("supply.leaks.switched", switched, 1.0, 1e12)?;
        if let Some(device) = &self.ground_fault_device {
            let name = "supply.ground_fault_device.trips_at";
            within(name, device.trips_at.get(), 1e-4, 10.0)?;
            let name = "supply.ground_fault_device.delay";
            within(name, device.delay.get(), 0.0, 10.0)?;
        }
        Ok(())
    }

    /// Resistance ahead of where a power meter is plugged in.
    pub(crate) fn ahead_of_plug(&self) -> f64 {
        self.house.get() + self.extension.get()
    }

    /// All resistance up to the compressor.
    pub(crate) fn line(&self) -> f64 {
        self.ahead_of_plug() + self.cord.get()
    }

    /// What leaks to earth, `compressor` being the conductance to earth of the energised windings.
    /// A leak is taken to be at the hot wire's end: nearer the other end, less leaks.
    pub(crate) fn leakage(&self, compressor: f64) -> f64 {
        let siemens = |leak: Option<Ohms>| leak.map_or(0.0, |ohms| 1.0 / ohms.get());
        let switched = if self.switched_on {
            siemens(self.leaks.switched)
        } else {
            0.0
        };
        self.volts.get() * (siemens(self.leaks.standing) + switched + compressor)
    }

    /// When its guard cuts off under such a leakage.
    pub(crate) fn guard_trips_after(&self, leakage: f64) -> Option<f64> {
        self.ground_fault_device
            .filter(|device| leakage >= device.trips_at.get())
            .map(|device| device.delay.get())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 4 to 6 mA at 120 V is 30 to 20 kΩ.
    #[test]
    fn ohms_below_the_bounds_trip_and_above_them_do_not() {
        let mut supply = Supply::outlet(Volts::new(120.0), Hertz::new(60.0));
        supply.ground_fault_device = Some(GroundFaultDevice::CLASS_A);
        let trips = |supply: &Supply, compressor: f64| {
            supply
                .guard_trips_after(supply.leakage(compressor))
                .is_some()
        };
        assert!(!trips(&supply, 1.0 / 30_000.0) && trips(&supply, 1.0 / 20_000.0));
        supply.leaks.switched = Some(Ohms::new(15_000.0));
        assert!(!trips(&supply, 0.0));
        supply.switched_on = true;
        assert!(trips(&supply, 0.0));
    }

    #[test]
    fn what_no_outlet_has_is_refused_by_name() {
        let mut supply = Supply::outlet(Volts::new(400.0), Hertz::new(60.0));
        assert_eq!(supply.check().unwrap_err().parameter, "supply.volts");
        supply = Supply::outlet(Volts::new(120.0), Hertz::new(f64::NAN));
        assert_eq!(supply.check().unwrap_err().parameter, "supply.frequency");
    }
}
