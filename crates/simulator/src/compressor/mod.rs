//! A sealed compressor with its start gear and protector: the parts put together.
//!
//! Answers: does it start now, what do clamp, power meter and ear notice meanwhile, what does it
//! draw while it runs, and what does a meter find on its pins?
//!
//! Must never know: where the gas goes, or why it was told to run.
//!
//! Two clocks run after a stop. That of the pressures is the caller's, who gives them with each
//! call; that of pellet, protector and windings is kept here. A failed try heats the latter only.

mod advance;
mod energy;
mod heat;
mod network;
mod pins;
mod record;
mod run_up;
mod start;

pub use energy::Energy;
pub use heat::Heat;
pub(crate) use heat::{Inflow, Nodes};
pub(crate) use network::{Load, ShaftWork};
pub use pins::Pair;
pub use record::{Period, Sample, StartRecord};
pub(crate) use run_up::Shaft;

use quantity::{Celsius, CubicMetres, Hertz, NewtonMetres, Ohms, WattsPerKelvin};

use crate::ParameterError;
use crate::error::within;
use crate::motor::Motor;
use crate::protector::Protector;
use crate::rotor::{Pressures, Rotor, check_pressures};
use crate::start_gear::{GearState, StartGear};
use crate::supply::Supply;

/// Everything that a compressor is built of; a fault is another value of one of these.
#[derive(Debug, Clone, PartialEq)]
pub struct Parts {
    /// Windings and cage.
    pub motor: Motor,
    /// What leads to the start winding.
    pub gear: StartGear,
    /// What opens when it gets too hot.
    pub protector: Protector,
    /// What the motor turns.
    pub rotor: Rotor,
    /// Heat capacities and paths of heat.
    pub heat: Heat,
}

impl Parts {
    /// A compressor of about 100 W for 115 V and 60 Hz, with a PTC.
    ///
    /// ```
    /// assert!(simulator::compressor::Parts::example_115_volts().check().is_ok());
    /// ```
    #[must_use]
    pub fn example_115_volts() -> Self {
        Self {
            motor: Motor::example_115_volts(),
            gear: StartGear::ptc(Ohms::new(5.0)),
            protector: Protector::on_shell(8.5),
            rotor: Rotor::example(),
            heat: Heat::example(),
        }
    }

    /// The like for 230 V and 50 Hz.
    #[must_use]
    pub fn example_230_volts() -> Self {
        Self {
            motor: Motor::example_230_volts(),
            gear: StartGear::ptc(Ohms::new(15.0)),
            protector: Protector::on_shell(4.2),
            rotor: Rotor::example(),
            heat: Heat::example(),
        }
    }

    /// Refuses what no compressor has, by the parameter's name.
    ///
    /// # Errors
    /// [`ParameterError`] names the first parameter out of its bounds.
    pub fn check(&self) -> Result<(), ParameterError> {
        self.motor.check()?;
        self.gear.check()?;
        self.protector.check()?;
        self.rotor.check()?;
        self.heat.check()
    }
}

/// What is around the compressor for a while.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Surroundings {
    /// The room's temperature.
    pub room: Celsius,
    /// Pressures on both sides of the valves.
    pub pressures: Pressures,
    /// The mean torque that the gas takes while the pump runs; `None` for that of a cylinder with
    /// lossless valves. The first turns go by the pressures.
    pub gas_torque: Option<NewtonMetres>,
    /// Heat that the suction gas, coming in at the room's temperature, carries away from motor and
    /// pump for each kelvin.
    pub gas_cooling: WattsPerKelvin,
}

impl Surroundings {
    pub(crate) fn check(&self) -> Result<(), ParameterError> {
        within("surroundings.room", self.room.get(), -40.0, 70.0)?;
        check_pressures(&self.pressures)?;
        let torque = self.gas_torque.map_or(0.0, NewtonMetres::get);
        within("surroundings.gas_torque", torque, 0.0, 100.0)?;
        within(
            "surroundings.gas_cooling",
            self.gas_cooling.get(),
            0.0,
            100.0,
        )
    }

    fn mean_gas_torque(&self, rotor: &Rotor) -> f64 {
        self.gas_torque
            .unwrap_or_else(|| rotor.gas_torque(&self.pressures))
            .get()
    }
}

/// What the shaft does.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Motion {
    /// No current, no turning.
    Stopped,
    /// Current, but no turning; for so many seconds since the last try to turn.
    Stalled { since_try: f64 },
    /// Turning at so many radians a second.
    Turning { speed: f64 },
}

/// What changes with time.
#[derive(Debug, Clone, PartialEq)]
struct State {
    nodes: Nodes,
    disc: f64,
    disc_is_open: bool,
    gear: GearState,
    motion: Motion,
    guard_is_tripped: bool,
    /// Seconds by which the compressor is ahead of its caller, after a start that took longer than
    /// the time asked for.
    ahead: f64,
}

/// A compressor with its temperatures, contacts and motion.
#[derive(Debug, Clone, PartialEq)]
pub struct Compressor {
    parts: Parts,
    state: State,
}

impl Compressor {
    /// A compressor at rest at 25 °C throughout.
    ///
    /// # Errors
    /// [`ParameterError`] names the first parameter out of its bounds.
    pub fn new(parts: Parts) -> Result<Self, ParameterError> {
        parts.check()?;
        let state = State::rested(&parts, 25.0);
        Ok(Self { parts, state })
    }

    /// The same compressor after a long rest in a room.
    ///
    /// # Errors
    /// [`ParameterError`] for a room that is no room.
    pub fn rested(mut self, room: Celsius) -> Result<Self, ParameterError> {
        within("room", room.get(), -40.0, 70.0)?;
        self.state = State::rested(&self.parts, room.get());
        Ok(self)
    }

    /// The same compressor, as warm as it is, with other gear on its pins that was as warm as the
    /// room until now.
    ///
    /// # Errors
    /// [`ParameterError`] names the first parameter of the gear out of its bounds.
    pub fn fitted(mut self, gear: StartGear, room: Celsius) -> Result<Self, ParameterError> {
        gear.check()?;
        within("room", room.get(), -40.0, 70.0)?;
        self.state.gear = GearState::rested(&gear, room.get());
        self.parts.gear = gear;
        Ok(self)
    }

    /// What it is built of.
    #[must_use]
    pub fn parts(&self) -> &Parts {
        &self.parts
    }

    /// The shell's temperature.
    #[must_use]
    pub fn shell(&self) -> Celsius {
        Celsius::new(self.state.nodes.shell)
    }

    /// The main winding's temperature.
    #[must_use]
    pub fn main_winding(&self) -> Celsius {
        Celsius::new(self.state.nodes.main)
    }

    /// The temperature of the first PTC pellet, if the gear has one.
    #[must_use]
    pub fn pellet(&self) -> Option<Celsius> {
        self.state.gear.pellet(&self.parts.gear).map(Celsius::new)
    }

    /// Turns a second; nought when it stands.
    #[must_use]
    pub fn speed(&self) -> Hertz {
        Hertz::new(self.state.speed() / core::f64::consts::TAU)
    }

    /// What the piston sweeps in a second.
    #[must_use]
    pub fn flow(&self) -> CubicMetres {
        CubicMetres::new(self.parts.rotor.displacement.get() * self.speed().get())
    }

    /// Whether the protector is open.
    #[must_use]
    pub fn protector_is_open(&self) -> bool {
        self.state.disc_is_open
    }

    /// Whether a ground-fault device has cut the supply off.
    #[must_use]
    pub fn guard_is_tripped(&self) -> bool {
        self.state.guard_is_tripped
    }

    /// Resets the ground-fault device.
    pub fn reset_guard(&mut self) {
        self.state.guard_is_tripped = false;
    }

    /// The speed, in turns a second, at which motor and load are in balance with the main winding
    /// on and the start gear as it is now; `None` when there is none above half of the field's.
    ///
    /// # Errors
    /// [`ParameterError`] names the first parameter out of its bounds.
    pub fn balanced_speed(
        &self,
        supply: &Supply,
        surroundings: &Surroundings,
    ) -> Result<Option<Hertz>, ParameterError> {
        supply.check()?;
        surroundings.check()?;
        let network = network::Network::new(&self.parts, &self.state, supply);
        let load = network::Load::new(&self.parts.rotor, surroundings);
        let balance = network.balance(&load, None);
        Ok(balance.map(|(speed, _)| Hertz::new(speed / core::f64::consts::TAU)))
    }
}

impl State {
    fn rested(parts: &Parts, celsius: f64) -> Self {
        Self {
            nodes: Nodes::all(celsius),
            disc: celsius,
            disc_is_open: parts.protector.is_open(false, celsius),
            gear: GearState::rested(&parts.gear, celsius),
            motion: Motion::Stopped,
            guard_is_tripped: false,
            ahead: 0.0,
        }
    }

    fn speed(&self) -> f64 {
        match self.motion {
            Motion::Turning { speed } => speed,
            Motion::Stopped | Motion::Stalled { .. } => 0.0,
        }
    }

    /// What the pellets cool toward.
    fn around_gear(&self, room: f64) -> f64 {
        (room + self.nodes.shell) / 2.0
    }

    fn disc_after(&self, protector: &Protector, room: f64, amps: f64, seconds: f64) -> f64 {
        let around = protector.around(room, self.nodes.shell, self.nodes.main);
        protector.warmed(self.disc, around, amps, seconds)
    }

    /// Lets the disc follow a current.
    fn warm_disc(&mut self, protector: &Protector, room: f64, amps: f64, seconds: f64) {
        self.disc = self.disc_after(protector, room, amps, seconds);
        self.disc_is_open = protector.is_open(self.disc_is_open, self.disc);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use quantity::{Pascals, Volts};

    #[test]
    fn absurd_parameters_are_refused_by_name() {
        let mut parts = Parts::example_115_volts();
        parts.rotor.clearance = quantity::Ratio::new(-1.0);
        let error = Compressor::new(parts).unwrap_err();
        assert_eq!(error.parameter, "rotor.clearance");
    }

    #[test]
    fn what_the_balance_is_at_is_near_the_fields_speed_and_lower_under_load() {
        let compressor = Compressor::new(Parts::example_115_volts()).unwrap();
        let supply = Supply::outlet(Volts::new(115.0), Hertz::new(60.0));
        let mut around = Surroundings {
            room: Celsius::new(25.0),
            pressures: Pressures {
                suction: Pascals::new(1.1e5),
                discharge: Pascals::new(1.1e6),
            },
            gas_torque: Some(NewtonMetres::new(0.05)),
            gas_cooling: WattsPerKelvin::new(0.0),
        };
        let speed = |around: &Surroundings| {
            let mut hot = compressor.clone();
            // With the start winding out.
            hot.parts.motor.start.is_open = true;
            hot.balanced_speed(&supply, around).unwrap().map(Hertz::get)
        };
        let light = speed(&around).unwrap();
        around.gas_torque = Some(NewtonMetres::new(0.25));
        let heavy = speed(&around).unwrap();
        assert!(
            light < 60.0 && heavy < light && heavy > 54.0,
            "{light} {heavy}"
        );
        around.gas_torque = Some(NewtonMetres::new(2.0));
        assert_eq!(speed(&around), None);
    }
}
