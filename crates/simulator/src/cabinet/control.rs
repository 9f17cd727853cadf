//! What switches: thermostat, damper, and the defrost's timer, heater, ending and fuse.
//!
//! Answers: at which temperature or time does each switch, and is it sound? Must never know: how
//! temperatures come about.

use crate::ParameterError;
use crate::error::within;
use quantity::{Celsius, KelvinDelta, Ohms, Ratio, Seconds};

/// Contacts that a temperature opens and closes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Contacts {
    /// They do what they should.
    #[default]
    Sound,
    /// They never open.
    StuckClosed,
    /// They never close.
    StuckOpen,
}

impl Contacts {
    pub(crate) const fn closed(self, should_be: bool) -> bool {
        match self {
            Self::Sound => should_be,
            Self::StuckClosed => true,
            Self::StuckOpen => false,
        }
    }
}

/// Where a thermostat feels.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Sensor {
    /// On the last length of the evaporator.
    EvaporatorEnd,
    /// In the air of the compartment with the evaporator.
    FirstAir,
    /// In the air of the other one; without one, as [`Sensor::FirstAir`].
    SecondAir,
}

/// What calls for cooling.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Thermostat {
    /// Where it feels.
    pub sensor: Sensor,
    /// Above this it calls, −40 … 30 °C.
    pub closes: Celsius,
    /// Below this it stops, −45 … 25 °C and at least 0.5 K under the other.
    pub opens: Celsius,
    /// How much warmer it takes the sensor for than it is, −30 … 30 K.
    pub drift: KelvinDelta,
    /// Its contacts.
    pub contacts: Contacts,
}

impl Thermostat {
    pub(super) fn checked(&self) -> Result<(), ParameterError> {
        within("thermostat.closes", self.closes.get(), -40.0, 30.0)?;
        let most = self.closes.get() - 0.5;
        within("thermostat.opens", self.opens.get(), -45.0, most)?;
        within("thermostat.drift", self.drift.get(), -30.0, 30.0)
    }

    /// Whether it calls, by what it called before.
    pub(crate) fn calls(&self, felt: f64, called: bool) -> bool {
        let felt = felt + self.drift.get();
        let above = if called { self.opens } else { self.closes };
        self.contacts.closed(felt > above.get())
    }
}

/// What lets cold air into the second compartment.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Damper {
    /// Where it is half open, −5 … 15 °C in the second compartment.
    pub set: Celsius,
    /// Share of the air that it lets through when wide open, 0 … 0.6.
    pub most: Ratio,
    /// Where it stays however warm it is, as a share of wide open: a fixed opening, or stuck.
    pub fixed: Option<Ratio>,
}

impl Damper {
    /// From shut to wide open, K. From memory.
    const BAND: f64 = 3.0;

    pub(super) fn checked(&self) -> Result<(), ParameterError> {
        within("damper.set", self.set.get(), -5.0, 15.0)?;
        within("damper.most", self.most.get(), 0.0, 0.6)?;
        match self.fixed {
            Some(fixed) => within("damper.fixed", fixed.get(), 0.0, 1.0),
            None => Ok(()),
        }
    }

    /// Share of the air that goes into the second compartment.
    pub(super) fn share(&self, second_air: f64) -> f64 {
        let open = match self.fixed {
            Some(fixed) => fixed.get(),
            None => (0.5 + (second_air - self.set.get()) / Self::BAND).clamp(0.0, 1.0),
        };
        open * self.most.get()
    }
}

/// What takes the frost off.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Defrost {
    /// What starts it.
    pub timer: Timer,
    /// The heater, 5 Ω … 5 kΩ; none when it is burnt out.
    pub heater: Option<Ohms>,
    /// What ends it.
    pub ending: Ending,
    /// Where the fuse melts, 40 … 150 °C; none when it has melted.
    pub fuse: Option<Celsius>,
    /// What is left of the drain, 0 … 1.
    pub drain: Ratio,
}

/// Counts the compressor's running, and gives the heater its turn.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Timer {
    /// Running between two defrosts, 10 min … 14 days.
    pub after: Seconds,
    /// How long a turn lasts, the heater's ending or not, 1 min … 2 h.
    pub turn: Seconds,
    /// Whether it advances.
    pub advances: bool,
}

/// A bimetal thermostat on the evaporator, in series with the heater.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ending {
    /// Below this it closes, −30 … 5 °C.
    pub closes: Celsius,
    /// Above this it opens, 1 … 60 °C.
    pub opens: Celsius,
    /// Its contacts.
    pub contacts: Contacts,
}

impl Defrost {
    pub(super) fn checked(&self) -> Result<(), ParameterError> {
        within("timer.after", self.timer.after.get(), 600.0, 1_209_600.0)?;
        within("timer.turn", self.timer.turn.get(), 60.0, 7200.0)?;
        if let Some(heater) = self.heater {
            within("defrost.heater", heater.get(), 5.0, 5000.0)?;
        }
        within("ending.closes", self.ending.closes.get(), -30.0, 5.0)?;
        let least = (self.ending.closes.get() + 0.5).max(1.0);
        within("ending.opens", self.ending.opens.get(), least, 60.0)?;
        if let Some(fuse) = self.fuse {
            within("defrost.fuse", fuse.get(), 40.0, 150.0)?;
        }
        within("defrost.drain", self.drain.get(), 0.0, 1.0)
    }

    /// Watts of the heater on so many volts: V²/R.
    #[must_use]
    pub fn heater_power(&self, volts: quantity::Volts) -> quantity::Watts {
        let conductance = self.heater.map_or(0.0, |ohms| 1.0 / ohms.get());
        quantity::Watts::new(volts.get() * volts.get() * conductance)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn control() -> Thermostat {
        Thermostat {
            sensor: Sensor::FirstAir,
            closes: Celsius::new(-17.0),
            opens: Celsius::new(-21.0),
            drift: KelvinDelta::new(0.0),
            contacts: Contacts::Sound,
        }
    }

    #[test]
    fn between_its_two_temperatures_a_thermostat_stays_as_it_was() {
        let it = control();
        assert!(it.calls(-16.0, false) && !it.calls(-22.0, true));
        assert!(it.calls(-19.0, true) && !it.calls(-19.0, false));
    }

    #[test]
    fn contacts_that_stick_ask_no_temperature() {
        let mut it = control();
        it.contacts = Contacts::StuckOpen;
        assert!(!it.calls(30.0, true));
        it.contacts = Contacts::StuckClosed;
        assert!(it.calls(-40.0, false));
    }

    #[test]
    fn switching_points_the_wrong_way_round_are_refused_by_name() {
        let mut it = control();
        it.opens = Celsius::new(-10.0);
        assert_eq!(it.checked().unwrap_err().parameter, "thermostat.opens");
    }

    /// The common table of heaters: 115 V and 200, 350, 450, 600 W at 66, 38, 29, 22 Ω; 230 V and
    /// 200, 350, 500 W at 265, 151, 106 Ω. Derived from R = V²/P and rounded to whole ohms.
    #[test]
    fn heaters_take_what_their_ohms_say() {
        for (volts, watts, ohms) in [
            (115.0, 200.0, 66.0),
            (115.0, 350.0, 38.0),
            (115.0, 450.0, 29.0),
            (115.0, 600.0, 22.0),
            (230.0, 200.0, 265.0),
            (230.0, 350.0, 151.0),
            (230.0, 500.0, 106.0),
        ] {
            let it = Defrost {
                timer: Timer {
                    after: Seconds::new(3e4),
                    turn: Seconds::new(1500.0),
                    advances: true,
                },
                heater: Some(Ohms::new(ohms)),
                ending: Ending {
                    closes: Celsius::new(-5.0),
                    opens: Celsius::new(12.0),
                    contacts: Contacts::Sound,
                },
                fuse: None,
                drain: Ratio::new(1.0),
            };
            let power = it.heater_power(quantity::Volts::new(volts)).get();
            // Half an ohm of rounding.
            let rounding = 0.5 / ohms;
            assert!(
                (power / watts - 1.0).abs() <= rounding * 1.05,
                "{power} {watts}"
            );
        }
    }
}
