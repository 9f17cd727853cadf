//! Supply, protector, start gear and motor as one circuit, and the load on the shaft.

use quantity::{Celsius, Joules, Ohms};

use super::heat::{Heat, Inflow};
use super::{Energy, Parts, State, Surroundings};
use crate::motor::{Equations, Feed, Solution, Temperatures};
use crate::rotor::Rotor;
use crate::supply::Supply;

/// The circuit with the protector closed, at the temperatures that it was made at.
pub(super) struct Network {
    equations: Equations,
    volts: f64,
    cord: f64,
    ahead_of_plug: f64,
    protector: f64,
    hertz: f64,
    /// Amperes to earth.
    pub(super) leakage: f64,
}

/// What stands against the motor, on the mean of a turn.
pub(crate) struct Load {
    gas: f64,
    dry: f64,
    oil: f64,
}

impl Load {
    pub(crate) fn new(rotor: &Rotor, surroundings: &Surroundings) -> Self {
        Self {
            gas: surroundings.mean_gas_torque(rotor),
            dry: rotor.dry_friction.get(),
            oil: rotor.oil(),
        }
    }

    pub(crate) fn torque(&self, speed: f64) -> f64 {
        self.gas + self.friction(speed)
    }

    pub(crate) fn friction(&self, speed: f64) -> f64 {
        self.dry + self.oil * speed
    }
}

/// What goes to the shaft's three takers over a step, in joules.
#[derive(Debug, Clone, Copy, Default)]
pub(crate) struct ShaftWork {
    pub(crate) friction: f64,
    pub(crate) gas: f64,
    pub(crate) kinetic: f64,
}

impl Network {
    pub(super) fn new(parts: &Parts, state: &State, supply: &Supply) -> Self {
        let protector = parts.protector.resistance.get();
        let temperatures = Temperatures {
            main: Celsius::new(state.nodes.main),
            start: Celsius::new(state.nodes.start),
            rotor: Celsius::new(state.nodes.core),
        };
        let feed = Feed {
            volts: supply.volts,
            frequency: supply.frequency,
            line: Ohms::new(supply.line() + protector),
            main_series: Ohms::new(parts.gear.coil()),
            start_series: None,
        };
        let mut network = Self {
            equations: Equations::new(&parts.motor, &feed, &temperatures),
            volts: supply.volts.get(),
            cord: supply.cord.get(),
            ahead_of_plug: supply.ahead_of_plug(),
            protector,
            hertz: supply.frequency.get(),
            leakage: supply.leakage(winding_leak(parts)),
        };
        network.follow_gear(parts, state, 0.0);
        network
    }

    /// Takes contacts as they are now, and pellets as they will be so many seconds ahead.
    pub(super) fn follow_gear(&mut self, parts: &Parts, state: &State, ahead: f64) {
        let gear = state.gear.impedance(&parts.gear, self.hertz, ahead);
        self.equations.set_gear(gear);
    }

    /// Radians a second of the field.
    pub(super) fn synchronous(&self) -> f64 {
        self.equations.synchronous()
    }

    pub(super) fn at(&self, speed: f64) -> Solution {
        self.equations.at(speed)
    }

    /// The fastest speed above half of the field's at which a load is in balance, and what the
    /// motor then does. A guess near it saves the search.
    pub(super) fn balance(&self, load: &Load, guess: Option<f64>) -> Option<(f64, Solution)> {
        let over = |speed: f64| self.at(speed).torque - load.torque(speed);
        let field = self.synchronous();
        if let Some(found) = guess.and_then(|guess| secant(over, guess, field)) {
            return Some((found, self.at(found)));
        }
        // From the field's speed down to the first speed at which there is torque to spare.
        let (mut high, step) = (field, field / 100.0);
        while high > field / 2.0 {
            let low = high - step;
            if over(low) > 0.0 {
                let found = bisected(over, low, high);
                return Some((found, self.at(found)));
            }
            high = low;
        }
        None
    }

    /// A step's energies, and the heat that stays in the compressor.
    pub(super) fn book(
        &self,
        solution: &Solution,
        shaft: ShaftWork,
        heat: &Heat,
        seconds: f64,
    ) -> (Energy, Inflow) {
        let joules = |watts: f64| Joules::new(watts * seconds);
        let behind = solution.line.square();
        let leak = self.volts * self.leakage;
        let energy = Energy {
            taken: joules(solution.taken + leak),
            house: joules(behind * self.ahead_of_plug),
            cord: joules(behind * self.cord),
            protector: joules(behind * self.protector),
            gear: joules(solution.coil_heat + solution.gear_heat),
            main_winding: joules(solution.main_heat),
            start_winding: joules(solution.start_heat),
            iron: joules(solution.iron_heat),
            rotor: joules(solution.rotor_heat),
            friction: Joules::new(shaft.friction),
            gas: Joules::new(shaft.gas),
            kinetic: Joules::new(shaft.kinetic),
            leak: joules(leak),
        };
        let inflow = Inflow {
            main: solution.main_heat * seconds,
            start: solution.start_heat * seconds,
            core: (solution.iron_heat + solution.rotor_heat) * seconds,
            shell: shaft.friction + shaft.gas * heat.gas_share.get(),
        };
        (energy, inflow)
    }

    /// What a power meter at the plug shows.
    pub(super) fn plug_watts(&self, solution: &Solution) -> f64 {
        solution.taken - solution.line.square() * self.ahead_of_plug + self.volts * self.leakage
    }

    /// What a clamp around one wire shows, what leaks included.
    pub(super) fn clamp_amps(&self, solution: &Solution) -> f64 {
        let leak = crate::phasor::Phasor::real(self.leakage);
        (solution.line + leak).size()
    }
}

/// Conductance from the windings to the shell.
pub(super) fn winding_leak(parts: &Parts) -> f64 {
    [
        parts.motor.main.leak_to_shell,
        parts.motor.start.leak_to_shell,
    ]
    .into_iter()
    .flatten()
    .map(|ohms| 1.0 / ohms.get())
    .sum()
}

/// The root near a guess, where torque to spare falls with speed; `None` when the search leaves
/// the stable branch or doesn't settle.
fn secant(over: impl Fn(f64) -> f64, guess: f64, field: f64) -> Option<f64> {
    let (mut old, mut new) = (guess * 0.999, guess);
    let (mut over_old, mut over_new) = (over(old), over(new));
    for _ in 0..12 {
        let slope = (over_new - over_old) / (new - old);
        if slope >= 0.0 {
            return None;
        }
        let next = new - over_new / slope;
        if !(next > 0.6 * field && next < 1.05 * field) {
            return None;
        }
        if (next - new).abs() < 1e-9 * field {
            return Some(next);
        }
        (old, over_old) = (new, over_new);
        (new, over_new) = (next, over(next));
    }
    None
}

/// The root between a speed with torque to spare and one without.
fn bisected(over: impl Fn(f64) -> f64, mut low: f64, mut high: f64) -> f64 {
    for _ in 0..50 {
        let middle = (low + high) / 2.0;
        if over(middle) > 0.0 {
            low = middle;
        } else {
            high = middle;
        }
    }
    (low + high) / 2.0
}
