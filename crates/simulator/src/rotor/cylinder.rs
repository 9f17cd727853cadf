//! The gas over one piston, turn by turn.
//!
//! Pressure follows the volume by a polytrope and is held between the pressures behind the valves,
//! which are lossless. The piston moves as (1 − cos θ)/2: the rod is long. Angle nought is the top.

use core::f64::consts::{PI, TAU};

use super::{Pressures, Rotor};

/// Angle and pressure; the rest of the cylinder doesn't change.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Cylinder {
    displacement: f64,
    clearance: f64,
    exponent: f64,
    low: f64,
    high: f64,
    angle: f64,
    /// Volume there, over displacement.
    volume: f64,
    pressure: f64,
}

impl Cylinder {
    /// At rest: what was over the piston has leaked down to the suction pressure.
    pub(crate) fn at_rest(rotor: &Rotor, pressures: &Pressures, angle: f64) -> Self {
        let low = pressures.suction.get();
        let clearance = rotor.clearance.get();
        Self {
            displacement: rotor.displacement.get(),
            clearance,
            exponent: rotor.exponent.get(),
            low,
            high: pressures.discharge.get().max(low),
            angle,
            volume: volume(clearance, libm::cos(angle)),
            pressure: low,
        }
    }

    fn held(&self, pressure: f64) -> f64 {
        pressure.clamp(self.low, self.high)
    }

    fn follow(&self, pressure: f64, from: f64, to: f64) -> f64 {
        // An open valve holds it as long as the piston goes on.
        if (to >= from && pressure <= self.low) || (to <= from && pressure >= self.high) {
            return pressure;
        }
        self.held(pressure * libm::pow(from / to, self.exponent))
    }

    /// Volume and pressure once the crank has come to another angle, less than a turn away.
    fn after(&self, angle: f64, cosine: f64) -> (f64, f64) {
        let to = volume(self.clearance, cosine);
        if self.low >= self.high {
            return (to, self.low);
        }
        // Past an end of the stroke the gas goes to that end first, and back.
        let (before, after) = (libm::floor(self.angle / PI), libm::floor(angle / PI));
        if (before - after).abs() < 0.5 {
            return (to, self.follow(self.pressure, self.volume, to));
        }
        let is_top = before.max(after) % 2.0 == 0.0;
        let end = volume(self.clearance, if is_top { 1.0 } else { -1.0 });
        let there = self.follow(self.pressure, self.volume, end);
        (to, self.follow(there, end, to))
    }

    /// The gas's torque on the shaft at an angle a little ahead or back.
    pub(crate) fn torque_after(&self, turned: f64) -> f64 {
        if self.low >= self.high {
            return 0.0;
        }
        let angle = self.angle + turned;
        let (sine, cosine) = libm::sincos(angle);
        let (_, pressure) = self.after(angle, cosine);
        (pressure - self.low) * self.displacement / 2.0 * sine
    }

    /// Turns the crank.
    pub(crate) fn turn(&mut self, turned: f64) {
        let angle = self.angle + turned;
        (self.volume, self.pressure) = self.after(angle, libm::cos(angle));
        self.angle = angle - libm::floor(angle / TAU) * TAU;
    }
}

/// Volume over displacement where the crank's angle has this cosine.
fn volume(clearance: f64, cosine: f64) -> f64 {
    clearance + (1.0 - cosine) / 2.0
}

#[cfg(test)]
mod tests {
    use super::*;
    use quantity::Pascals;

    /// Turned in small steps, the work of a whole turn is the indicator diagram's area, whose
    /// formula is another than what the steps use.
    #[test]
    fn the_work_of_a_turn_is_the_diagrams_area() {
        let rotor = Rotor::example();
        let pressures = Pressures {
            suction: Pascals::new(1.1e5),
            discharge: Pascals::new(1.16e6),
        };
        let mut cylinder = Cylinder::at_rest(&rotor, &pressures, 1.0);
        let step = 1e-3;
        let mut work = 0.0;
        for turn in 0..3 {
            for _ in 0..6283 {
                if turn == 2 {
                    work -= cylinder.torque_after(step / 2.0) * step;
                }
                cylinder.turn(step);
            }
        }
        let mean = work / (6283.0 * step);
        let expected = rotor.gas_torque(&pressures).get();
        assert!((mean / expected - 1.0).abs() < 1e-3, "{mean} {expected}");
    }

    #[test]
    fn level_pressures_push_nowhere() {
        let level = Pressures {
            suction: Pascals::new(4e5),
            discharge: Pascals::new(4e5),
        };
        let mut cylinder = Cylinder::at_rest(&Rotor::example(), &level, 0.3);
        for _ in 0..100 {
            cylinder.turn(0.1);
            assert!(cylinder.torque_after(0.05).abs() < 1e-12);
        }
    }
}
