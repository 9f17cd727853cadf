//! A whole machine: circuit, cabinet, controls and what turns the pump.
//!
//! Answers: how does it go on from here, and what could be noticed of it? Must never know: which
//! fault it has, or whether there is one: parts are as they are.

mod advance;
mod control;
mod course;
mod drive;
mod found;
mod observation;
mod parts;
mod state;
mod system;
pub(crate) mod tolerance;

pub use course::{Course, Sample};
pub use drive::{Demand, Drive, SteadyDrive, Turning};
pub use observation::Observation;
pub use parts::{Kind, Mains, Parts};

use crate::cabinet::food_enthalpy;
use crate::error::within;
use crate::integrate::Steps;
use crate::{ParameterError, Refrigerant};
use control::Control;
use quantity::{Celsius, Joules, Kilograms, Seconds};
use state::Row;

/// The longest stretch of time in one call: 14 days.
const LONGEST: f64 = 14.0 * 86_400.0;
/// Between two looks at the controls at most, s.
const LOOKS: f64 = 20.0;
const SAMPLES: f64 = 60.0;

/// A machine, with what turns its pump.
#[derive(Debug, Clone)]
pub struct Appliance<D = SteadyDrive> {
    parts: Parts,
    drive: D,
    row: Row,
    control: Control,
    steps: Steps<{ state::ALL }>,
    turning: Turning,
    /// Torque of the gas at the last step's beginning, and the length of that step.
    torque: Option<(f64, f64)>,
    time: f64,
    next_sample: f64,
    brought: f64,
    /// What a tolerable error is multiplied by.
    finer: f64,
}

/// Where energy is and where it came from, since the machine was made.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Energy {
    /// In metal, food, vapour and ice, above liquid and metal at 0 °C.
    pub stored: Joules,
    /// Of the mains, by what the drive gives to gas and shell.
    pub mains: Joules,
    /// Of the room; negative when more was given off.
    pub room: Joules,
    /// With moisture that became frost.
    pub moisture: Joules,
    /// With what was put in, and with jumps to another state.
    pub brought: Joules,
}

impl Appliance {
    /// A sound machine of a kind, rested in a room of 25 °C.
    ///
    /// ```
    /// use quantity::Seconds;
    /// use simulator::Refrigerant;
    /// use simulator::appliance::{Appliance, Kind, Mains};
    /// let mut freezer =
    ///     Appliance::example(Kind::ChestFreezer, Mains::V230F50, Refrigerant::R600a)?;
    /// let course = freezer.advance(Seconds::new(3600.0))?;
    /// assert!(freezer.observe().air.get() < 15.0);
    /// assert!(course.samples.len() > 55);
    /// # Ok::<(), simulator::ParameterError>(())
    /// ```
    ///
    /// # Errors
    /// None for any of these arguments; bounds are checked all the same.
    pub fn example(
        kind: Kind,
        mains: Mains,
        refrigerant: Refrigerant,
    ) -> Result<Self, ParameterError> {
        Self::new(Parts::example(kind, mains, refrigerant)?)
    }

    /// A machine of these parts with a steady drive, rested.
    ///
    /// # Errors
    /// [`ParameterError`] names the first parameter with which no machine can be run.
    pub fn new(parts: Parts) -> Result<Self, ParameterError> {
        let drive = parts.steady_drive()?;
        Self::with_drive(parts, drive)
    }
}

impl<D: Drive> Appliance<D> {
    /// A machine of these parts and this drive, rested: all of it as warm as the room.
    ///
    /// # Errors
    /// [`ParameterError`] names the first parameter with which no machine can be run.
    pub fn with_drive(parts: Parts, drive: D) -> Result<Self, ParameterError> {
        parts.checked()?;
        let mut it = Self {
            parts,
            drive,
            row: [0.0; state::ALL],
            control: Control::default(),
            steps: Steps::new(),
            turning: Turning::default(),
            torque: None,
            time: 0.0,
            next_sample: 0.0,
            brought: 0.0,
            finer: 1.0,
        };
        let room = parts.cabinet.room.get();
        it.lay_out(room, room);
        it.brought = it.stored();
        Ok(it)
    }

    /// Its parts.
    pub const fn parts(&self) -> &Parts {
        &self.parts
    }

    /// What turns its pump.
    pub const fn drive(&self) -> &D {
        &self.drive
    }

    /// What turns its pump, to be changed.
    pub const fn drive_mut(&mut self) -> &mut D {
        &mut self.drive
    }

    /// Since it was made.
    pub const fn time(&self) -> Seconds {
        Seconds::new(self.time)
    }

    /// Whether the defrost heater is hot.
    #[must_use]
    pub fn is_heating(&self) -> bool {
        self.heater() > 0.0
    }

    /// As warm as the room all through, pressures level, no frost. The drive stays as it
    /// is.
    #[must_use]
    pub fn rested(mut self) -> Self {
        let room = self.parts.cabinet.room.get();
        self.jump(room, room);
        self
    }

    /// As cold as it should be, switched off for long enough that the pressures are level.
    /// The drive stays as it is.
    #[must_use]
    pub fn chilled(mut self) -> Self {
        let (first, second) = match self.parts.cabinet.second {
            Some(_) => (-18.0, 4.0),
            None if self.parts.cabinet.thermostat.closes.get() > 0.0 => (5.0, 5.0),
            None => (-20.0, -20.0),
        };
        self.jump(first, second);
        self
    }

    /// Goes on with other parts: a door shut, a room grown cold, a leak. The charge changes where
    /// it lies. The mass of food stays; [`Appliance::load`] adds to it.
    ///
    /// # Errors
    /// [`ParameterError`] names the first parameter out of bounds; all stays as it was then.
    pub fn alter(&mut self, parts: Parts) -> Result<(), ParameterError> {
        parts.checked()?;
        let before = self.stored();
        let (first, second) = (self.parts.cabinet.first, self.parts.cabinet.second);
        let other = |new: f64, old: f64| if old > 0.0 { new / old } else { 0.0 };
        let charge = other(parts.circuit.charge.get(), self.parts.circuit.charge.get());
        let air = other(parts.circuit.air.get(), self.parts.circuit.air.get());
        for value in &mut self.row[state::VAPOUR_LOW..=state::LIQUID_HIGH] {
            *value *= charge;
        }
        for value in &mut self.row[state::AIR_LOW..=state::AIR_HIGH] {
            *value *= air;
        }
        if self.parts.circuit.charge.get() <= 0.0 {
            self.row[state::VAPOUR_LOW] = parts.circuit.charge.get();
        }
        if self.parts.circuit.air.get() <= 0.0 {
            self.row[state::AIR_LOW] = parts.circuit.air.get();
        }
        self.parts = parts;
        self.parts.cabinet.first.contents.mass = first.contents.mass;
        match (&mut self.parts.cabinet.second, second) {
            (Some(new), Some(old)) => new.contents.mass = old.contents.mass,
            // Its food is as warm as the air that was always reckoned there.
            (Some(new), None) => {
                self.row[state::SECOND + state::OF_CONTENTS] =
                    new.contents.mass.get() * food_enthalpy(self.row[state::SECOND]);
            }
            (None, _) => {}
        }
        self.steps.forget();
        self.brought += self.stored() - before;
        Ok(())
    }

    /// Puts food of a temperature (−40 … 60 °C) beside the evaporator, up to 500 kg in all. It
    /// has the surface of what is there already, and more by its mass.
    ///
    /// # Errors
    /// [`ParameterError`] names what is out of bounds; nothing is put in then.
    pub fn load(&mut self, mass: Kilograms, temperature: Celsius) -> Result<(), ParameterError> {
        let contents = &mut self.parts.cabinet.first.contents;
        let most = 500.0 - contents.mass.get();
        within("load.mass", mass.get(), 0.0, most)?;
        within("load.temperature", temperature.get(), -40.0, 60.0)?;
        let heat = mass.get() * food_enthalpy(temperature.get());
        // Surface goes with the power of two thirds of the mass.
        let grown = libm::cbrt(1.0 + mass.get() / contents.mass.get());
        contents.exchange = contents.exchange * (grown * grown);
        contents.mass = contents.mass + mass;
        self.row[state::FIRST + state::OF_CONTENTS] += heat;
        self.brought += heat;
        self.steps.forget();
        Ok(())
    }

    /// Goes on for up to 14 days.
    ///
    /// # Errors
    /// [`ParameterError`] by the name `seconds` when it is negative, more, or no number.
    pub fn advance(&mut self, seconds: Seconds) -> Result<Course, ParameterError> {
        within("seconds", seconds.get(), 0.0, LONGEST)?;
        let mut course = Course::default();
        let end = self.time + seconds.get();
        while self.time < end {
            // Before the controls are looked at: what was drawn belongs to how they stood.
            if self.time >= self.next_sample {
                course.samples.push(self.sample());
                self.next_sample = self.time + SAMPLES;
            }
            let step = self.step_length().min(end - self.time);
            if self.time + step <= self.time {
                break;
            }
            self.step(step, &mut course);
        }
        course.samples.push(self.sample());
        Ok(course)
    }

    /// Where its energy is and where it came from. Stored is the sum of the others.
    #[must_use]
    pub fn energy(&self) -> Energy {
        Energy {
            stored: Joules::new(self.stored()),
            mains: Joules::new(self.row[state::MAINS]),
            room: Joules::new(self.row[state::ROOM]),
            moisture: Joules::new(self.row[state::MOISTURE]),
            brought: Joules::new(self.brought),
        }
    }

    /// Refrigerant in it, wherever it is.
    #[must_use]
    pub fn charge(&self) -> Kilograms {
        Kilograms::new(
            self.row[state::VAPOUR_LOW..=state::LIQUID_HIGH]
                .iter()
                .sum(),
        )
    }
}
