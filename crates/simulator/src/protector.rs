//! A disc of two metals that opens when it is hot.
//!
//! Answers: when does the protector trip, and when does it let current through again?
//!
//! Must never know: why the current is high.

use quantity::{Celsius, JoulesPerKelvin, Ohms, Ratio, WattsPerKelvin};

use crate::ParameterError;
use crate::error::within;

/// Where the disc sits, which is what it cools toward.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Place {
    /// Clipped to the shell: half toward the shell, half toward the room.
    Shell,
    /// Inside, among the windings, where it stays warm as long as they do.
    Windings,
}

/// What is wrong with it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ProtectorFault {
    /// Nothing.
    Sound,
    /// Burnt out, or its contact doesn't touch: never lets current through.
    Open,
    /// Welded: never opens.
    Welded,
}

/// A protector in series with the common pin. A weak one opens at a lower temperature.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Protector {
    /// Where it sits.
    pub place: Place,
    /// What is wrong with it.
    pub fault: ProtectorFault,
    /// Opens when the disc is hotter.
    pub opens: Celsius,
    /// Closes when it is cooler.
    pub closes: Celsius,
    /// The resistance of disc and heater, whose heat warms the disc.
    pub resistance: Ohms,
    /// Heat capacity of the disc with its heater.
    pub heat_capacity: JoulesPerKelvin,
    /// How it loses heat when its cover is on.
    pub cooling_sound: WattsPerKelvin,
    /// How many times that it loses: 1 when sound, less when dirt holds its heat, more when its
    /// cover is missing.
    pub cooling: Ratio,
}

impl Protector {
    /// One on the shell for a locked current of so many amperes. It opens at 107 °C and closes at
    /// 71 °C (common practice, no source); resistance and heat capacity are chosen so that the
    /// locked current trips it in a quarter of a minute or so, from a cold shell.
    #[must_use]
    pub const fn on_shell(locked_amps: f64) -> Self {
        Self {
            place: Place::Shell,
            fault: ProtectorFault::Sound,
            opens: Celsius::new(107.0),
            closes: Celsius::new(71.0),
            resistance: Ohms::new(9.6 / (locked_amps * locked_amps)),
            heat_capacity: JoulesPerKelvin::new(1.5),
            cooling_sound: WattsPerKelvin::new(0.025),
            cooling: Ratio::new(1.0),
        }
    }

    /// Refuses what no protector has, by the parameter's name.
    ///
    /// # Errors
    /// [`ParameterError`] names the first parameter out of its bounds.
    pub fn check(&self) -> Result<(), ParameterError> {
        within("protector.opens", self.opens.get(), 0.0, 300.0)?;
        let closes = self.closes.get();
        within("protector.closes", closes, -50.0, self.opens.get() - 1.0)?;
        within("protector.resistance", self.resistance.get(), 0.0, 10.0)?;
        let capacity = self.heat_capacity.get();
        within("protector.heat_capacity", capacity, 0.05, 100.0)?;
        let loses = self.cooling_sound.get();
        within("protector.cooling_sound", loses, 1e-4, 10.0)?;
        within("protector.cooling", self.cooling.get(), 0.05, 20.0)
    }

    /// What it cools toward, of the temperatures around it in °C.
    pub(crate) fn around(&self, room: f64, shell: f64, winding: f64) -> f64 {
        match self.place {
            Place::Shell => (room + shell) / 2.0,
            Place::Windings => winding,
        }
    }

    /// The disc's temperature after a time under a constant current: exact for such a disc.
    pub(crate) fn warmed(&self, from: f64, around: f64, amps: f64, seconds: f64) -> f64 {
        let cooling = self.cooling_sound.get() * self.cooling.get();
        let end = around + amps * amps * self.resistance.get() / cooling;
        let left = libm::exp(-seconds * cooling / self.heat_capacity.get());
        end + (from - end) * left
    }

    /// Whether it is open, once it was or wasn't, at a temperature in °C.
    pub(crate) fn is_open(&self, was_open: bool, celsius: f64) -> bool {
        match self.fault {
            ProtectorFault::Open => true,
            ProtectorFault::Welded => false,
            ProtectorFault::Sound if was_open => celsius > self.closes.get(),
            ProtectorFault::Sound => celsius > self.opens.get(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn two_halves_of_a_step_are_the_whole() {
        let disc = Protector::on_shell(8.5);
        let whole = disc.warmed(25.0, 30.0, 8.0, 10.0);
        let half = disc.warmed(25.0, 30.0, 8.0, 5.0);
        assert!((disc.warmed(half, 30.0, 8.0, 5.0) - whole).abs() < 1e-10);
    }

    /// 4 to 30 s under a locked rotor, 0.5 to 5 min to reset (from memory).
    #[test]
    fn a_locked_current_trips_it_and_a_rest_resets_it() {
        let disc = Protector::on_shell(8.5);
        let (mut celsius, mut tripped, mut reset) = (25.0, 0.0, 0.0);
        while !disc.is_open(false, celsius) {
            celsius = disc.warmed(celsius, 25.0, 8.5, 0.1);
            tripped += 0.1;
        }
        while disc.is_open(true, celsius) {
            celsius = disc.warmed(celsius, 35.0, 0.0, 0.1);
            reset += 0.1;
        }
        assert!(tripped > 4.0 && tripped < 30.0, "{tripped}");
        assert!(reset > 30.0 && reset < 300.0, "{reset}");
        // The running current never does.
        assert!(disc.warmed(25.0, 60.0, 1.3, 1e6) < 107.0);
    }

    #[test]
    fn broken_it_is_open_or_closed_whatever_its_heat() {
        let mut disc = Protector::on_shell(8.5);
        disc.fault = ProtectorFault::Open;
        assert!(disc.is_open(false, 20.0));
        disc.fault = ProtectorFault::Welded;
        assert!(!disc.is_open(true, 200.0));
    }
}
