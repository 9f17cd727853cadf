//! One step of the shaft while it starts, by the crank's angle.
//!
//! The speed in the middle of the step carries the torques (implicit midpoint), found to a tenth of
//! a millionth of a radian a second; so what the motor gives is what the shaft's takers get.

use super::network::ShaftWork;
use crate::motor::Solution;
use crate::rotor::{Cylinder, Rotor};

/// How near the tried and the implied speed must come, in radians a second.
const CLOSE: f64 = 1e-7;

/// Speed and crank of a shaft that starts.
#[derive(Debug, Clone)]
pub(crate) struct Shaft {
    inertia: f64,
    dry: f64,
    /// What a push must be more than while it stands.
    holds: f64,
    oil: f64,
    pub(crate) speed: f64,
    /// Half of what the last step gained: the first try for the next middle.
    gain: f64,
    pub(crate) cylinder: Cylinder,
}

/// What is common to the tries for one step's middle speed.
struct Middle<F> {
    motor: F,
    seconds: f64,
    /// Dry friction with the sign of the motion.
    dry: f64,
}

impl Shaft {
    pub(crate) fn new(rotor: &Rotor, cylinder: Cylinder, speed: f64) -> Self {
        Self {
            inertia: rotor.inertia(),
            dry: rotor.dry_friction.get(),
            holds: rotor.holds(),
            oil: rotor.oil(),
            speed,
            gain: 0.0,
            cylinder,
        }
    }

    /// Energy of its motion.
    pub(crate) fn kinetic(&self) -> f64 {
        self.inertia * self.speed * self.speed / 2.0
    }

    /// Lets the motor act for a step, given what it does at a speed. Returns what it did, and the
    /// work on the shaft.
    pub(crate) fn advance<F: Fn(f64) -> Solution>(
        &mut self,
        motor: F,
        seconds: f64,
    ) -> (Solution, ShaftWork) {
        let Some(direction) = self.direction(&motor) else {
            return (motor(0.0), ShaftWork::default());
        };
        let mut middle = Middle {
            motor,
            seconds,
            dry: direction * self.dry,
        };
        let (speed, solution) = self.settle(&middle);
        let after = 2.0 * speed - self.speed;
        if direction * after >= 0.0 {
            return self.finish(&middle, speed, solution);
        }
        // It would turn back within the step: friction holds it as soon as it stands, unless the
        // other torques alone turn it back.
        let halfway = self.speed / 2.0;
        let solution = (middle.motor)(halfway);
        let gas = self.cylinder.torque_after(halfway * seconds / 2.0);
        let stopping = self.inertia * self.speed / seconds;
        middle.dry = solution.torque + gas - self.oil * halfway + stopping;
        if direction * middle.dry >= 0.0 {
            return self.finish(&middle, halfway, solution);
        }
        middle.dry = 0.0;
        let (speed, solution) = self.settle(&middle);
        self.finish(&middle, speed, solution)
    }

    /// Whether it stands and dry friction holds it.
    pub(crate) fn is_held(&self, motor: impl Fn(f64) -> Solution) -> bool {
        self.direction(motor).is_none()
    }

    /// Which way it turns; `None` while dry friction holds it.
    fn direction(&self, motor: impl Fn(f64) -> Solution) -> Option<f64> {
        if self.speed.abs() > 0.0 {
            return Some(self.speed.signum());
        }
        let push = motor(0.0).torque + self.cylinder.torque_after(0.0);
        (push.abs() > self.holds).then(|| push.signum())
    }

    /// The speed that follows for the middle of the step from torques at a tried one.
    fn implied<F>(&self, middle: &Middle<F>, tried: f64, solution: &Solution) -> f64 {
        let gas = self.cylinder.torque_after(tried * middle.seconds / 2.0);
        let net = solution.torque + gas - self.oil * tried - middle.dry;
        self.speed + net * middle.seconds / (2.0 * self.inertia)
    }

    /// Tries until the implied speed is the tried one: along secants, and by halves where a
    /// motor's torque is too steep for those.
    fn settle<F: Fn(f64) -> Solution>(&self, middle: &Middle<F>) -> (f64, Solution) {
        let mut tried = self.speed + self.gain;
        let mut solution = (middle.motor)(tried);
        let mut miss = self.implied(middle, tried, &solution) - tried;
        let mut next = tried + miss;
        for _ in 0..20 {
            if miss.abs() < CLOSE {
                return (tried, solution);
            }
            solution = (middle.motor)(next);
            let next_miss = self.implied(middle, next, &solution) - next;
            let slope = (next_miss - miss) / (next - tried);
            let ahead = if slope.abs() > 1e-3 {
                next - next_miss / slope
            } else {
                next + next_miss
            };
            (tried, miss, next) = (next, next_miss, ahead);
        }
        self.settle_by_halves(middle)
    }

    fn settle_by_halves<F: Fn(f64) -> Solution>(&self, middle: &Middle<F>) -> (f64, Solution) {
        let miss = |tried: f64| {
            let solution = (middle.motor)(tried);
            self.implied(middle, tried, &solution) - tried
        };
        // Far below, what is implied lies above what is tried, and far above, below it.
        let mut reach = 1.0;
        while reach < 1e9 && !(miss(self.speed - reach) > 0.0 && miss(self.speed + reach) < 0.0) {
            reach *= 2.0;
        }
        let (mut low, mut high) = (self.speed - reach, self.speed + reach);
        for _ in 0..100 {
            let tried = (low + high) / 2.0;
            if miss(tried) > 0.0 {
                low = tried;
            } else {
                high = tried;
            }
        }
        (low, (middle.motor)(low))
    }

    fn finish<F>(
        &mut self,
        middle: &Middle<F>,
        speed: f64,
        solution: Solution,
    ) -> (Solution, ShaftWork) {
        let seconds = middle.seconds;
        let gas = self.cylinder.torque_after(speed * seconds / 2.0);
        let before = self.kinetic();
        let net = solution.torque + gas - self.oil * speed - middle.dry;
        let after = self.speed + net * seconds / self.inertia;
        self.gain = speed - self.speed;
        // Where friction brought it to a stand, it stands.
        self.speed = if after.abs() < 1e-9 { 0.0 } else { after };
        self.cylinder.turn(speed * seconds);
        let work = ShaftWork {
            friction: (self.oil * speed + middle.dry) * speed * seconds,
            gas: -gas * speed * seconds,
            kinetic: self.kinetic() - before,
        };
        (solution, work)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::compressor::network::Network;
    use crate::compressor::{Parts, State};
    use crate::rotor::Pressures;
    use crate::supply::Supply;
    use quantity::{Hertz, Pascals, Volts};

    fn followed(parts: &Parts, pressures: (f64, f64), mut each: impl FnMut(f64, f64, f64)) {
        let state = State::rested(parts, 25.0);
        let outlet = Supply::outlet(Volts::new(115.0), Hertz::new(60.0));
        let network = Network::new(parts, &state, &outlet);
        let pressures = Pressures {
            suction: Pascals::new(pressures.0),
            discharge: Pascals::new(pressures.1),
        };
        let cylinder = Cylinder::at_rest(&parts.rotor, &pressures, 4.0);
        let mut shaft = Shaft::new(&parts.rotor, cylinder, 0.0);
        for _ in 0..2000 {
            let (solution, work) = shaft.advance(|speed| network.at(speed), 5e-4);
            let (energy, _) = network.book(&solution, work, &parts.heat, 5e-4);
            each(energy.taken.get(), energy.gone().get(), shaft.speed);
        }
    }

    #[test]
    fn every_single_step_keeps_its_energy() {
        let mut fastest = 0.0_f64;
        for pressures in [(4e5, 4e5), (2e5, 8e5), (1.1e5, 1.1e6)] {
            followed(
                &Parts::example_115_volts(),
                pressures,
                |taken, gone, speed| {
                    assert!(((gone - taken) / taken).abs() < 1e-9, "{gone} {taken}");
                    fastest = fastest.max(speed);
                },
            );
        }
        assert!(fastest > 300.0);
    }

    #[test]
    fn more_dry_friction_than_torque_holds_it_to_the_bit() {
        let mut parts = Parts::example_115_volts();
        parts.rotor.dry_friction = quantity::NewtonMetres::new(3.0);
        followed(&parts, (4e5, 4e5), |_, _, speed| {
            assert!(speed.abs() <= 0.0);
        });
    }
}
