//! What the controls of a machine have come to.
//!
//! Answers: is cooling called for, is it defrosting, are the fans on? Must never know: what
//! follows from that.

use super::state::{self, Row};
use crate::cabinet::{Cabinet, Sensor};
use quantity::Volts;

/// Memory of thermostat, timer, ending and fuse.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct Control {
    /// The thermostat's contacts are closed.
    pub(super) calls: bool,
    /// Seconds since the timer gave the heater its turn.
    pub(super) defrosting: Option<f64>,
    /// Seconds that the compressor has run since the last turn.
    pub(super) run: f64,
    ending_closed: bool,
    melted: bool,
    /// Seconds since anything switched.
    pub(super) since: f64,
}

impl Control {
    /// Cooling, and no defrost that keeps the compressor off.
    pub(super) const fn cools(&self) -> bool {
        self.calls && self.defrosting.is_none()
    }

    /// Watts of the defrost heater.
    pub(super) fn heater(&self, cabinet: &Cabinet, volts: Volts) -> f64 {
        match &cabinet.defrost {
            Some(defrost) if self.defrosting.is_some() && self.conducts(cabinet) => {
                defrost.heater_power(volts).get()
            }
            _ => 0.0,
        }
    }

    fn conducts(&self, cabinet: &Cabinet) -> bool {
        cabinet.defrost.as_ref().is_some_and(|defrost| {
            defrost.fuse.is_some()
                && !self.melted
                && defrost.ending.contacts.closed(self.ending_closed)
        })
    }

    /// Looks at every sensor.
    pub(super) fn look(&mut self, cabinet: &Cabinet, row: &Row) {
        let before = *self;
        let end = row[state::EVAPORATOR + 2];
        let felt = match cabinet.thermostat.sensor {
            Sensor::EvaporatorEnd => end,
            Sensor::SecondAir if cabinet.second.is_some() => row[state::SECOND + state::OF_AIR],
            Sensor::FirstAir | Sensor::SecondAir => row[state::FIRST + state::OF_AIR],
        };
        self.calls = cabinet.thermostat.calls(felt, self.calls);
        if let Some(defrost) = &cabinet.defrost {
            let ending = &defrost.ending;
            self.ending_closed = if self.ending_closed {
                end < ending.opens.get()
            } else {
                end < ending.closes.get()
            };
            let hottest = row[state::EVAPORATOR..state::CONDENSER]
                .iter()
                .fold(-300.0_f64, |a, &b| a.max(b));
            self.melted |= defrost.fuse.is_some_and(|fuse| hottest > fuse.get());
            match self.defrosting {
                None if self.run >= defrost.timer.after.get() => self.defrosting = Some(0.0),
                Some(gone) if gone >= defrost.timer.turn.get() => {
                    self.defrosting = None;
                    self.run = 0.0;
                }
                _ => {}
            }
        }
        if before.cools() != self.cools()
            || before.ending_closed != self.ending_closed
            || before.melted != self.melted
        {
            self.since = 0.0;
        }
    }

    /// Lets time go by.
    pub(super) fn pass(&mut self, cabinet: &Cabinet, step: f64) {
        self.since += step;
        let advances = cabinet
            .defrost
            .as_ref()
            .is_some_and(|defrost| defrost.timer.advances);
        if !advances {
            return;
        }
        match &mut self.defrosting {
            Some(gone) => *gone += step,
            // The timer's motor hangs on the thermostat.
            None if self.calls => self.run += step,
            None => {}
        }
    }
}
