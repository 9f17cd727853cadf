//! A single-phase induction motor with a main and a start winding.
//!
//! Answers: which currents does it draw at a speed, what torque does it give, and where does the
//! power go?
//!
//! Must never know: what switches the start winding, what the shaft turns, or for how long.
//!
//! The field of each winding is taken apart into one that turns with the rotor and one that turns
//! against it (*Electric Machinery*, Fitzgerald, Kingsley & Umans, chapter 9, from memory). Currents
//! are in the steady state at every speed: their own transients are over within a few periods, and
//! the ripple of the torque at twice the supply's frequency is left out. Saturation is left out too.

mod feed;
mod field;
mod winding;

pub use feed::{Current, Drawn, Feed, Impedance, Powers, Temperatures};
pub(crate) use field::{Equations, Solution};
use quantity::{Hertz, Ohms, Ratio};
pub use winding::Winding;
pub(crate) use winding::copper_at;

use crate::ParameterError;
use crate::error::within;

/// The motor's electrical parameters, seen from the main winding.
///
/// Reactances hold at [`Motor::frequency`] and follow the supply's.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Motor {
    /// The winding that is in as long as the motor runs.
    pub main: Winding,
    /// The winding a quarter of a pole pair away, that gives the torque at rest.
    pub start: Winding,
    /// The cage's resistance at 25 °C.
    pub rotor_resistance: Ohms,
    /// The cage's leakage reactance.
    pub rotor_reactance: Ohms,
    /// The reactance of the field in the gap.
    pub magnetising_reactance: Ohms,
    /// Turns of the start winding for each of the main winding.
    pub turns_ratio: Ratio,
    /// Poles: 2, 4, 6 or 8.
    pub poles: u8,
    /// The frequency that the reactances belong to.
    pub frequency: Hertz,
    /// The resistance across the pins that would take as much as the iron does. Whatever the speed,
    /// the iron's share follows the square of the voltage; nothing when the main winding is open.
    pub iron: Ohms,
}

impl Motor {
    /// A motor for 115 V and 60 Hz of the size that small freezers have: about 100 W. Its values
    /// are chosen to be of the usual size; they are nobody's data.
    #[must_use]
    pub const fn example_115_volts() -> Self {
        Self {
            main: Winding::sound(Ohms::new(5.0), Ohms::new(6.0)),
            start: Winding::sound(Ohms::new(10.0), Ohms::new(4.0)),
            rotor_resistance: Ohms::new(3.8),
            rotor_reactance: Ohms::new(4.5),
            magnetising_reactance: Ohms::new(240.0),
            turns_ratio: Ratio::new(1.0),
            poles: 2,
            frequency: Hertz::new(60.0),
            iron: Ohms::new(1200.0),
        }
    }

    /// The like for 230 V and 50 Hz.
    #[must_use]
    pub const fn example_230_volts() -> Self {
        Self {
            main: Winding::sound(Ohms::new(18.0), Ohms::new(24.0)),
            start: Winding::sound(Ohms::new(24.0), Ohms::new(16.0)),
            rotor_resistance: Ohms::new(16.0),
            rotor_reactance: Ohms::new(20.0),
            magnetising_reactance: Ohms::new(900.0),
            turns_ratio: Ratio::new(1.0),
            poles: 2,
            frequency: Hertz::new(50.0),
            iron: Ohms::new(4800.0),
        }
    }

    /// The speed of the field at a supply's frequency, in turns a second.
    #[must_use]
    pub fn synchronous_speed(&self, supply: Hertz) -> Hertz {
        Hertz::new(supply.get() * 2.0 / f64::from(self.poles))
    }

    /// Refuses what no such motor has, by the parameter's name.
    ///
    /// # Errors
    /// [`ParameterError`] names the first parameter out of its bounds.
    pub fn check(&self) -> Result<(), ParameterError> {
        self.main.check([
            "motor.main.resistance",
            "motor.main.reactance",
            "motor.main.shorted_share",
            "motor.main.leak_to_shell",
        ])?;
        self.start.check([
            "motor.start.resistance",
            "motor.start.reactance",
            "motor.start.shorted_share",
            "motor.start.leak_to_shell",
        ])?;
        let rotor = self.rotor_resistance.get();
        within("motor.rotor_resistance", rotor, 0.1, 1000.0)?;
        let leakage = self.rotor_reactance.get();
        within("motor.rotor_reactance", leakage, 0.0, 1000.0)?;
        let gap = self.magnetising_reactance.get();
        within("motor.magnetising_reactance", gap, 1.0, 1e7)?;
        within("motor.turns_ratio", self.turns_ratio.get(), 0.2, 5.0)?;
        within("motor.frequency", self.frequency.get(), 40.0, 70.0)?;
        within("motor.iron", self.iron.get(), 50.0, 1e12)?;
        let poles = f64::from(self.poles);
        // An odd number of poles is out of bounds wherever it lies.
        let even = if self.poles.is_multiple_of(2) {
            poles
        } else {
            f64::NAN
        };
        within("motor.poles", even, 2.0, 8.0).map_err(|error| ParameterError {
            given: poles,
            ..error
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_no_motor_has_is_refused_by_name() {
        assert!(Motor::example_115_volts().check().is_ok());
        let sound = Motor::example_230_volts();
        let refused = |motor: Motor| motor.check().unwrap_err().parameter;
        let mut odd = sound;
        odd.poles = 3;
        assert_eq!(refused(odd), "motor.poles");
        let mut short = sound;
        short.start.shorted_share = Ratio::new(1.0);
        assert_eq!(refused(short), "motor.start.shorted_share");
        let mut none = sound;
        none.main.resistance = Ohms::new(f64::NAN);
        assert_eq!(refused(none), "motor.main.resistance");
    }
}
