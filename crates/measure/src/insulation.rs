//! What a reading between a live conductor and bare metal proves.
//!
//! An ohmmeter tests at a few volts. Over range means more than its range at those volts, and
//! says nothing about what happens at mains voltage; a reading, however, is a leak.

use quantity::{Accuracy, Amps, Observed, Ohms, Typed, Volts};

/// What measured it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Tester {
    /// A multimeter on ohms: half a volt to three volts at its probes (common practice).
    Ohmmeter,
    /// An insulation tester at this voltage.
    InsulationTester(Volts),
}

/// A reading between joined live conductors, or one pin, and bare metal.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct InsulationReading {
    /// What was shown.
    pub typed: Typed<Ohms>,
    /// How good the meter is.
    pub accuracy: Accuracy,
    /// What measured it.
    pub tester: Tester,
}

/// What such a reading proves. The figures are lower bounds, or the reading itself.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Insulation {
    /// No leak that this meter can see: more than [`SOUND`].
    Clear {
        /// More than this.
        above: Ohms,
    },
    /// Over range, but the range ends too low to prove anything.
    RangeTooLow {
        /// Where it ends.
        above: Ohms,
    },
    /// Between [`LEAK`] and [`SOUND`], or too close to either for this meter: it leaks a little;
    /// damp, dirt or a beginning fault.
    Doubtful {
        /// What was read.
        reading: Ohms,
    },
    /// Below [`LEAK`]: it leaks.
    Leaks {
        /// What was read.
        reading: Ohms,
    },
}

/// A hermetic compressor's pins to its shell have more than this (common practice, widely used).
pub const SOUND: Ohms = Ohms::new(2e6);
/// Below this it is never powered again (judgement).
pub const LEAK: Ohms = Ohms::new(100e3);
/// In service, class I appliances have at least this (VDE 0701-0702:2008-06, 5.4).
pub const IN_SERVICE_CLASS_I: Ohms = Ohms::new(1e6);
/// The same for appliances with heaters (VDE 0701-0702:2008-06, 5.4).
pub const IN_SERVICE_HEATERS: Ohms = Ohms::new(0.3e6);

impl InsulationReading {
    /// What it proves. A reading is told from a limit only beyond its expanded uncertainty.
    ///
    /// ```
    /// use measure::{Insulation, InsulationReading, MeterKind, Tester};
    /// use quantity::{Ohms, parse_reading};
    /// let meter = MeterKind::Basic.automatic();
    /// let reading = InsulationReading {
    ///     typed: parse_reading("35k", meter.top).unwrap(),
    ///     accuracy: meter.accuracy,
    ///     tester: Tester::Ohmmeter,
    /// };
    /// assert_eq!(reading.proves(), Insulation::Leaks { reading: Ohms::new(35e3) });
    /// ```
    #[must_use]
    pub fn proves(&self) -> Insulation {
        match self.typed.observed {
            Observed::OverRange { above } if above >= SOUND => Insulation::Clear { above },
            Observed::OverRange { above } => Insulation::RangeTooLow { above },
            Observed::Value(reading) => {
                let spread = self.accuracy.standard(reading, self.typed.count) * 2.0;
                if reading - spread > SOUND {
                    Insulation::Clear {
                        above: reading - spread,
                    }
                } else if reading + spread < LEAK {
                    Insulation::Leaks { reading }
                } else {
                    Insulation::Doubtful { reading }
                }
            }
        }
    }
}

/// The current that mains at `volts` would drive through `resistance`, by Ohm's law. What flows
/// through capacitance comes on top and no ohmmeter shows it.
///
/// A resistance of zero gives the largest finite current rather than infinity.
#[must_use]
pub fn leakage(volts: Volts, resistance: Ohms) -> Amps {
    let ohms = resistance.get().max(f64::MIN_POSITIVE);
    Amps::new((volts.get().abs() / ohms).min(f64::MAX))
}

/// A device that disconnects when current goes astray.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ProtectiveDevice {
    /// Class A: must not trip below 4 mA, must at 6 mA (UL 943).
    GroundFault6Milliamps,
    /// General type, 30 mA: must not trip below 15 mA, must at 30 mA (IEC 61008-1).
    ResidualCurrent30Milliamps,
}

/// Whether a device will trip.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Trip {
    /// It must not.
    No,
    /// It may.
    May,
    /// It must.
    Must,
}

impl ProtectiveDevice {
    /// What it does at a current.
    #[must_use]
    pub fn at(self, current: Amps) -> Trip {
        let (may, must) = self.bounds();
        if current >= must {
            Trip::Must
        } else if current >= may {
            Trip::May
        } else {
            Trip::No
        }
    }

    /// The current from which it may trip, and the one at which it must.
    #[must_use]
    pub const fn bounds(self) -> (Amps, Amps) {
        match self {
            Self::GroundFault6Milliamps => (Amps::new(4e-3), Amps::new(6e-3)),
            Self::ResidualCurrent30Milliamps => (Amps::new(15e-3), Amps::new(30e-3)),
        }
    }
}

/// The longest time in seconds that a class A device may take, for 6 to 264 mA: (20/I)^1.43 with
/// I in milliamperes (UL 943). Real ones are much faster a little above 6 mA (from memory).
/// `None` outside that range.
#[must_use]
pub fn class_a_longest_time(current: Amps) -> Option<f64> {
    let milliamps = current.get() * 1e3;
    (6.0..=264.0)
        .contains(&milliamps)
        .then(|| libm::pow(20.0 / milliamps, 1.43))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::MeterKind;
    use quantity::parse_reading;

    fn proves(typed: &str, top: f64) -> Insulation {
        let meter = MeterKind::Good.set_to(Ohms::new(top));
        InsulationReading {
            typed: parse_reading(typed, meter.top).unwrap(),
            accuracy: meter.accuracy,
            tester: Tester::Ohmmeter,
        }
        .proves()
    }

    #[test]
    fn over_range_proves_no_more_than_the_range_it_was_in() {
        let above = Ohms::new(40e6);
        assert_eq!(proves("OL", 40e6), Insulation::Clear { above });
        let above = Ohms::new(200.0);
        assert_eq!(proves("OL", 200.0), Insulation::RangeTooLow { above });
    }

    #[test]
    fn a_reading_too_close_to_a_limit_is_neither() {
        assert!(matches!(proves("2.00M", 40e6), Insulation::Doubtful { .. }));
        assert!(matches!(proves("100k", 40e6), Insulation::Doubtful { .. }));
        assert!(matches!(proves("2.3M", 40e6), Insulation::Clear { .. }));
        assert!(matches!(proves("90k", 40e6), Insulation::Leaks { .. }));
    }
}
