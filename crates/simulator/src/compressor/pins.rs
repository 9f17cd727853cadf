//! What an ohmmeter finds on the pins, unplugged and at rest.

use quantity::{Celsius, Ohms};

use super::Compressor;

/// Two of the three pins.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Pair {
    /// Common and run.
    CommonRun,
    /// Common and start.
    CommonStart,
    /// Start and run.
    StartRun,
}

impl Compressor {
    /// The ohms between two pins, with the start gear still plugged on or without it; `None` for
    /// open. The protector counts only where it sits inside, among the windings.
    ///
    /// ```
    /// use simulator::compressor::{Compressor, Pair, Parts};
    /// let compressor = Compressor::new(Parts::example_115_volts())?;
    /// let ohms = |pair| compressor.winding_ohms(pair, false).map(|ohms| ohms.get());
    /// assert!((ohms(Pair::StartRun).unwrap_or(0.0) - 15.0).abs() < 0.2);
    /// # Ok::<(), simulator::ParameterError>(())
    /// ```
    #[must_use]
    pub fn winding_ohms(&self, pair: Pair, gear_is_on: bool) -> Option<Ohms> {
        let motor = &self.parts.motor;
        let main = motor.main.metered(Celsius::new(self.state.nodes.main));
        let start = motor.start.metered(Celsius::new(self.state.nodes.start));
        let gear = self
            .state
            .gear
            .ohms(&self.parts.gear)
            .filter(|_| gear_is_on);
        let inside = matches!(
            self.parts.protector.place,
            crate::protector::Place::Windings
        );
        let common = if !inside {
            Some(Ohms::new(0.0))
        } else if self.state.disc_is_open {
            None
        } else {
            Some(self.parts.protector.resistance)
        };
        let (direct, around) = match pair {
            Pair::CommonRun => (main, series(start, gear)),
            Pair::CommonStart => (start, series(main, gear)),
            Pair::StartRun => (gear, series(main, start)),
        };
        let windings = parallel(direct, around);
        match pair {
            Pair::StartRun => windings,
            Pair::CommonRun | Pair::CommonStart => series(windings, common),
        }
    }

    /// The ohms from the pins to the bare shell; `None` for sound insulation.
    #[must_use]
    pub fn ohms_to_shell(&self) -> Option<Ohms> {
        let motor = &self.parts.motor;
        parallel(motor.main.leak_to_shell, motor.start.leak_to_shell)
    }
}

fn series(one: Option<Ohms>, other: Option<Ohms>) -> Option<Ohms> {
    Some(one? + other?)
}

fn parallel(one: Option<Ohms>, other: Option<Ohms>) -> Option<Ohms> {
    match (one, other) {
        (Some(one), Some(other)) => Some(Ohms::new(one.get() * other.get() / (one + other).get())),
        (one, other) => one.or(other),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::compressor::Parts;
    use crate::protector::{Place, ProtectorFault};
    use crate::start_gear::StartGear;

    const PAIRS: [Pair; 3] = [Pair::CommonRun, Pair::CommonStart, Pair::StartRun];

    fn ohms(parts: &Parts, gear_is_on: bool) -> [Option<f64>; 3] {
        let compressor = Compressor::new(parts.clone()).unwrap();
        PAIRS.map(|pair| compressor.winding_ohms(pair, gear_is_on).map(Ohms::get))
    }

    /// R 4, S 7 Ω: with 5 Ω of PTC 3.00, 3.94, 3.44; with 13 Ω 3.33, 4.96, 5.96; without 4, 7, 11:
    /// parallel circuits. The PTC of the gear reads its cold ohms at 25 °C.
    #[test]
    fn a_pellet_left_on_changes_all_three_pairs() {
        let mut parts = Parts::example_115_volts();
        parts.motor.main.resistance = Ohms::new(4.0);
        parts.motor.start.resistance = Ohms::new(7.0);
        for (pellet, expected) in [(5.0, [3.0, 3.94, 3.44]), (13.0, [3.33, 4.96, 5.96])] {
            parts.gear = StartGear::ptc(Ohms::new(pellet));
            for (found, expected) in ohms(&parts, true).into_iter().zip(expected) {
                assert!((found.unwrap() - expected).abs() < 0.01);
            }
        }
        assert_eq!(ohms(&parts, false), [Some(4.0), Some(7.0), Some(11.0)]);
    }

    #[test]
    fn open_windings_and_an_open_protector_inside_leave_their_patterns() {
        let mut parts = Parts::example_115_volts();
        parts.motor.start.is_open = true;
        assert_eq!(ohms(&parts, false), [Some(5.0), None, None]);
        parts.motor.start.is_open = false;
        parts.protector.fault = ProtectorFault::Open;
        assert!(ohms(&parts, false).iter().all(Option::is_some));
        parts.protector.place = Place::Windings;
        assert_eq!(ohms(&parts, false), [None, None, Some(15.0)]);
    }
}
