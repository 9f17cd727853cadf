//! What the motor turns: a flywheel's mass, friction, and one cylinder.
//!
//! Answers: what torque stands against the motor at this angle and speed, and on the mean of a
//! turn?
//!
//! Must never know: where the torque comes from, or what the gas is.

mod cylinder;

use core::f64::consts::TAU;
pub(crate) use cylinder::Cylinder;

use quantity::{CubicMetres, Kilograms, Metres, NewtonMetres, Pascals, Ratio};

use crate::ParameterError;
use crate::error::within;

/// The pressures on both sides of the cylinder's valves.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pressures {
    /// In the shell and the suction line.
    pub suction: Pascals,
    /// Behind the discharge valve.
    pub discharge: Pascals,
}

/// Rotor, crank and piston.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rotor {
    /// Mass of what turns.
    pub mass: Kilograms,
    /// The radius at which that mass would have the same inertia.
    pub radius_of_gyration: Metres,
    /// Friction that is there at any speed. A seized pump has more than any motor gives.
    pub dry_friction: NewtonMetres,
    /// What holds it on top of that while it stands. Bearings without their film of oil stick with
    /// ten times the friction that they have on one (Stribeck's curve: coefficients of 0.1 and 0.01,
    /// from memory); once it turns, the film is there.
    pub sticking: NewtonMetres,
    /// Friction of the oil at 50 turns a second; it follows the speed.
    pub oil_friction: NewtonMetres,
    /// What the piston sweeps in a turn. Nought for a machine without one.
    pub displacement: CubicMetres,
    /// Clearance above the piston, as a share of the displacement.
    pub clearance: Ratio,
    /// Exponent of pressure and volume while both valves are shut.
    pub exponent: Ratio,
}

impl Rotor {
    /// A rotor for the example motors, 6 cm³ a turn.
    #[must_use]
    pub const fn example() -> Self {
        Self {
            mass: Kilograms::new(1.0),
            radius_of_gyration: Metres::new(0.022),
            dry_friction: NewtonMetres::new(0.015),
            sticking: NewtonMetres::new(0.0),
            oil_friction: NewtonMetres::new(0.012),
            displacement: CubicMetres::new(6e-6),
            clearance: Ratio::new(0.03),
            exponent: Ratio::new(1.1),
        }
    }

    /// Refuses what no compressor has, by the parameter's name.
    ///
    /// # Errors
    /// [`ParameterError`] names the first parameter out of its bounds.
    pub fn check(&self) -> Result<(), ParameterError> {
        within("rotor.mass", self.mass.get(), 0.2, 20.0)?;
        let radius = self.radius_of_gyration.get();
        within("rotor.radius_of_gyration", radius, 0.01, 0.2)?;
        within("rotor.dry_friction", self.dry_friction.get(), 0.0, 100.0)?;
        within("rotor.sticking", self.sticking.get(), 0.0, 100.0)?;
        within("rotor.oil_friction", self.oil_friction.get(), 0.0, 10.0)?;
        within("rotor.displacement", self.displacement.get(), 0.0, 1e-4)?;
        within("rotor.clearance", self.clearance.get(), 0.005, 1.0)?;
        within("rotor.exponent", self.exponent.get(), 1.01, 1.67)
    }

    pub(crate) fn inertia(&self) -> f64 {
        let radius = self.radius_of_gyration.get();
        self.mass.get() * radius * radius
    }

    /// What a push must be more than for it to start to turn.
    pub(crate) fn holds(&self) -> f64 {
        self.dry_friction.get() + self.sticking.get()
    }

    /// The oil's torque for each radian a second.
    pub(crate) fn oil(&self) -> f64 {
        self.oil_friction.get() / (TAU * 50.0)
    }

    /// The mean torque that compressing takes over a turn: the area of the indicator diagram with
    /// lossless valves over one turn's angle.
    #[must_use]
    pub fn gas_torque(&self, pressures: &Pressures) -> NewtonMetres {
        let (low, high) = (pressures.suction.get(), pressures.discharge.get());
        if high <= low || low <= 0.0 {
            return NewtonMetres::new(0.0);
        }
        let (n, clearance) = (self.exponent.get(), self.clearance.get());
        let ratio = high / low;
        let drawn_in = 1.0 + clearance - clearance * libm::pow(ratio, 1.0 / n);
        let raised = libm::pow(ratio, (n - 1.0) / n) - 1.0;
        let work = n / (n - 1.0) * low * self.displacement.get() * drawn_in.max(0.0) * raised;
        NewtonMetres::new(work / TAU)
    }
}

/// Refuses pressures that no such machine has, by name. Nought is a vacuum and allowed.
pub(crate) fn check_pressures(pressures: &Pressures) -> Result<(), ParameterError> {
    let suction = pressures.suction.get();
    within("surroundings.pressures.suction", suction, 0.0, 5e6)?;
    let discharge = pressures.discharge.get();
    within("surroundings.pressures.discharge", discharge, 0.0, 1e7)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_no_compressor_has_is_refused_by_name() {
        let mut rotor = Rotor::example();
        assert!(rotor.check().is_ok());
        rotor.mass = Kilograms::new(0.0);
        assert_eq!(rotor.check().unwrap_err().parameter, "rotor.mass");
    }

    #[test]
    fn level_pressures_take_no_torque_and_wide_ones_no_gas() {
        let rotor = Rotor::example();
        let torque = |low: f64, high: f64| {
            let pressures = Pressures {
                suction: Pascals::new(low),
                discharge: Pascals::new(high),
            };
            rotor.gas_torque(&pressures).get()
        };
        assert!(torque(4e5, 4e5) < 1e-15);
        assert!(torque(1e5, 1.1e6) > 0.1);
        // Past the ratio (1 + 1/clearance)^n the clearance gas fills the stroke.
        assert!(torque(1e4, 1e4 * 60.0) < 1e-12);
    }
}
