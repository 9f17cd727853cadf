//! A machine plugged in after a rest, and what goes on from then on.
//!
//! Answers: what is heard, what does it draw, what is warm and cold, minute by minute? Must never
//! know: what is wrong with it, or what anybody makes of what goes on.

use quantity::{Celsius, Seconds, Volts, Watts};

use super::build::Machine;
use super::drive::Turner;
use super::fitted::Fitted;
use super::plugged::{Event, Heard};
use super::traces::Trace;
use crate::ParameterError;
use crate::appliance::{Appliance, Course, Observation, Sample};
use crate::cabinet::Contacts;
use crate::compressor::Compressor;
use crate::error::within;
use crate::supply::{GroundFaultDevice, Supply};

/// Samples, one a minute and one at the end of each stretch of a minute.
const FOUR_HOURS: usize = 480;
/// Between two looks at what leaks only while it is on, s.
const LOOKS: f64 = 60.0;

/// What a moment is like.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Snapshot {
    /// The outside of it.
    pub seen: Observation,
    /// What it draws.
    pub watts: Watts,
}

/// A machine that is plugged in.
#[derive(Debug, Clone)]
pub struct Session {
    appliance: Appliance<Turner>,
    course: Course,
    has_power: bool,
    is_tripped: bool,
    /// So many events belong to what was before.
    earlier: usize,
}

impl Machine {
    /// Plugs it in, rested and warm, and lets it go on for up to 14 days.
    ///
    /// # Errors
    /// [`ParameterError`] by the name `seconds`.
    pub fn plug_in(&self, time: Seconds) -> Result<Session, ParameterError> {
        self.session(self.compressor.clone(), self.supply, time, 1)
    }

    /// The same on another outlet that is known to be good, without any extension.
    ///
    /// # Errors
    /// As [`Machine::plug_in`].
    pub fn plug_in_elsewhere(&self, time: Seconds) -> Result<Session, ParameterError> {
        self.session(self.compressor.clone(), self.good_outlet(), time, 2)
    }

    /// The same with a plain start device that is known to be good in place of its own.
    ///
    /// # Errors
    /// As [`Machine::plug_in`].
    pub fn with_good_device(&self, time: Seconds) -> Result<Session, ParameterError> {
        self.session(self.geared(Fitted::GoodDevice)?, self.supply, time, 3)
    }

    /// The same with a start kit of relay and capacitor besides that.
    ///
    /// # Errors
    /// As [`Machine::plug_in`].
    pub fn with_start_kit(&self, time: Seconds) -> Result<Session, ParameterError> {
        self.session(self.geared(Fitted::Kit)?, self.supply, time, 4)
    }

    fn geared(&self, fitted: Fitted) -> Result<Compressor, ParameterError> {
        let mut parts = self.compressor.parts().clone();
        parts.gear = self.gear(fitted);
        Compressor::new(parts)?.rested(self.room())
    }

    fn good_outlet(&self) -> Supply {
        let mut supply = self.supply;
        supply.extension = quantity::Ohms::new(0.0);
        supply.ground_fault_device = Some(match self.blueprint.mains {
            crate::appliance::Mains::V115F60 => GroundFaultDevice::CLASS_A,
            crate::appliance::Mains::V230F50 => GroundFaultDevice::RESIDUAL_30,
        });
        supply
    }

    fn session(
        &self,
        compressor: Compressor,
        supply: Supply,
        time: Seconds,
        crank: u64,
    ) -> Result<Session, ParameterError> {
        let mut session = Session {
            appliance: self.plugged(compressor, supply, crank)?,
            course: Course::default(),
            has_power: !self.has(Trace::CordOpen),
            is_tripped: false,
            earlier: 0,
        };
        session.go_on(time)?;
        Ok(session)
    }
}

impl Session {
    /// Goes on for up to 14 days.
    ///
    /// # Errors
    /// [`ParameterError`] by the name `seconds`.
    pub fn go_on(&mut self, time: Seconds) -> Result<(), ParameterError> {
        within("seconds", time.get(), 0.0, 14.0 * 86_400.0)?;
        let mut left = time.get();
        while left > 0.0 {
            let step = left.min(LOOKS);
            let heating = self.appliance.is_heating();
            self.appliance.drive_mut().switch_leaks(heating);
            let passed = self.appliance.advance(Seconds::new(step))?;
            self.course.samples.extend(passed.samples);
            self.course.running = self.course.running + passed.running;
            self.course.starts += passed.starts;
            self.course.drawn = self.course.drawn + passed.drawn;
            if self.appliance.drive().outlet_is_dead() && !self.is_tripped {
                self.cut_off()?;
                self.is_tripped = true;
            }
            left -= step;
        }
        Ok(())
    }

    /// Nothing calls any more.
    fn cut_off(&mut self) -> Result<(), ParameterError> {
        let mut parts = *self.appliance.parts();
        parts.cabinet.thermostat.contacts = Contacts::StuckOpen;
        parts.cabinet.lamp = Watts::new(0.0);
        self.appliance.alter(parts)
    }

    /// The same machine, unplugged just now, so many seconds later.
    ///
    /// # Errors
    /// As [`Session::go_on`].
    pub fn unplugged(&self, later: Seconds) -> Result<Self, ParameterError> {
        let mut stopped = self.clone();
        stopped.cut_off()?;
        stopped.go_on(later)?;
        Ok(stopped)
    }

    /// The same machine unplugged for a while, and plugged in again for another.
    ///
    /// # Errors
    /// As [`Session::go_on`].
    pub fn again(&self, rest: Seconds, time: Seconds) -> Result<Self, ParameterError> {
        let as_it_was = *self.appliance.parts();
        let mut again = self.unplugged(rest)?;
        again.appliance.alter(as_it_was)?;
        again.course = Course::default();
        again.earlier = again.appliance.drive().events().len();
        again.go_on(time)?;
        Ok(again)
    }

    /// Whether current gets into the machine: a lamp would be lit.
    #[must_use]
    pub const fn has_power(&self) -> bool {
        self.has_power && !self.is_tripped
    }

    /// Whether the outlet's device has gone.
    #[must_use]
    pub const fn is_tripped(&self) -> bool {
        self.is_tripped
    }

    /// Whether the pump turns now.
    #[must_use]
    pub fn is_turning(&self) -> bool {
        self.appliance.observe().running
    }

    /// Whether the pump has turned at all.
    #[must_use]
    pub fn has_run(&self) -> bool {
        self.course.running.get() > 0.0
    }

    /// How much of the time the pump turned. A defrost now and then takes a few per cent.
    #[must_use]
    pub fn running_share(&self) -> f64 {
        let time = self
            .course
            .samples
            .last()
            .map_or(0.0, |last| last.time.get());
        let first = self
            .course
            .samples
            .first()
            .map_or(0.0, |first| first.time.get());
        self.course.running.get() / (time - first).max(1.0)
    }

    /// The same machine with other gear on the pins, on an inverter nothing.
    ///
    /// # Errors
    /// [`ParameterError`] names the first parameter of the gear out of its bounds.
    pub fn fitted(&self, machine: &Machine, fitted: Fitted) -> Result<Self, ParameterError> {
        let mut other = self.clone();
        if let Turner::Mains(plugged) = other.appliance.drive_mut() {
            plugged.fit(machine.gear(fitted), machine.room())?;
        }
        Ok(other)
    }

    /// How long the last try took to come up to speed; nothing where it didn't.
    #[must_use]
    pub fn run_up(&self) -> Option<Seconds> {
        match self.appliance.drive() {
            Turner::Mains(plugged) => plugged.last_try()?.time_to_speed,
            Turner::Inverter(_) => None,
        }
    }

    /// What was heard, in order.
    #[must_use]
    pub fn events(&self) -> &[Event] {
        let events = self.appliance.drive().events();
        events.get(self.earlier..).unwrap_or(&[])
    }

    /// How often that was heard.
    #[must_use]
    pub fn times(&self, heard: Heard) -> usize {
        let events = self.events().iter();
        events.filter(|event| event.heard == heard).count()
    }

    /// Minute by minute, since it was plugged in.
    #[must_use]
    pub const fn course(&self) -> &Course {
        &self.course
    }

    /// The lowest volts at the plug while it tries to start or runs.
    #[must_use]
    pub fn lowest_volts(&self, machine: &Machine) -> Volts {
        let supply = &machine.supply;
        let ahead = supply.house.get() + supply.extension.get();
        let peak = match self.appliance.drive() {
            Turner::Mains(plugged) => plugged.last_try().map_or(0.0, |last| last.peak_line.get()),
            Turner::Inverter(_) => 0.0,
        };
        Volts::new(supply.volts.get() - ahead * peak)
    }

    /// Temperatures of the air in the middle of the last four hours' ones, as a glass of water
    /// has them but for a defrost: beside the evaporator, and in the second compartment.
    #[must_use]
    pub fn settled(&self) -> (Celsius, Option<Celsius>) {
        let samples = &self.course.samples;
        let last = &samples[samples.len().saturating_sub(FOUR_HOURS)..];
        let middle = |of: &dyn Fn(&Sample) -> Option<Celsius>| {
            let mut all: Vec<f64> = last.iter().filter_map(of).map(Celsius::get).collect();
            all.sort_by(f64::total_cmp);
            all.get(all.len() / 2).copied().map(Celsius::new)
        };
        let now = self.appliance.observe();
        (
            middle(&|sample| Some(sample.air)).unwrap_or(now.air),
            middle(&|sample| sample.second_air).or(now.second_air),
        )
    }

    /// What this moment is like.
    #[must_use]
    pub fn now(&self) -> Snapshot {
        let last: Option<&Sample> = self.course.samples.last();
        Snapshot {
            seen: self.appliance.observe(),
            watts: last.map_or(Watts::new(0.0), |sample| sample.watts),
        }
    }
}
