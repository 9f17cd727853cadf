//! What turns the pump.
//!
//! Answers: at these pressures, does it turn, how fast, and where do its watts go? Must never
//! know: the refrigerant or the cabinet.

use crate::ParameterError;
use crate::error::within;
use quantity::{Celsius, Hertz, NewtonMetres, Pascals, Ratio, Seconds, Watts};

/// What a drive meets for one step.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Demand {
    /// Pressure on the suction side.
    pub suction: Pascals,
    /// Pressure on the discharge side.
    pub discharge: Pascals,
    /// Mean torque of the gas over a turn at these pressures.
    pub gas_torque: NewtonMetres,
    /// Air around.
    pub room: Celsius,
    /// The shell.
    pub shell: Celsius,
    /// Whether the control gives it mains.
    pub calls: bool,
    /// How long the step is.
    pub step: Seconds,
}

/// What a drive did, on the mean of a step.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Turning {
    /// Turns a second.
    pub speed: Hertz,
    /// What it drew of the mains.
    pub watts: Watts,
    /// What of it became heat in the shell, the work on the gas left out.
    pub heat: Watts,
    /// It was called and didn't turn.
    pub refused: bool,
}

/// Something that turns the pump.
///
/// ```
/// use quantity::Seconds;
/// use simulator::Refrigerant;
/// use simulator::appliance::{Appliance, Demand, Drive, Kind, Mains, Parts, Turning};
/// /// Hums and never turns.
/// struct Seized;
/// impl Drive for Seized {
///     fn step(&mut self, demand: &Demand) -> Turning {
///         Turning { refused: demand.calls, ..Turning::default() }
///     }
/// }
/// let parts = Parts::example(Kind::UprightFreezer, Mains::V115F60, Refrigerant::R290)?;
/// let mut freezer = Appliance::with_drive(parts, Seized)?;
/// freezer.advance(Seconds::new(600.0))?;
/// assert!(freezer.observe().refused);
/// # Ok::<(), simulator::ParameterError>(())
/// ```
pub trait Drive {
    /// Goes on for one step, after which the next begins. Steps are half a second after anything
    /// has switched, grow to 20 s, or 10 s while it refuses, and to 40 s at rest; the last before
    /// the end of a call may be shorter. Steps without a call count as well.
    fn step(&mut self, demand: &Demand) -> Turning;
}

/// A motor without windings: always the same speed and efficiency.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SteadyDrive {
    speed: Hertz,
    efficiency: Ratio,
    friction: Watts,
    starts_against: Pascals,
    turns: bool,
}

impl SteadyDrive {
    /// A drive of so many turns a second (10 … 120), an efficiency of 0.1 … 1 and a friction of
    /// 0 … 200 W, that starts against a difference of pressures of up to 0 … 5 MPa.
    ///
    /// # Errors
    /// [`ParameterError`] names what is out of bounds.
    pub fn new(
        speed: Hertz,
        efficiency: Ratio,
        friction: Watts,
        starts_against: Pascals,
    ) -> Result<Self, ParameterError> {
        within("drive.speed", speed.get(), 10.0, 120.0)?;
        within("drive.efficiency", efficiency.get(), 0.1, 1.0)?;
        within("drive.friction", friction.get(), 0.0, 200.0)?;
        within("drive.starts_against", starts_against.get(), 0.0, 5e6)?;
        Ok(Self {
            speed,
            efficiency,
            friction,
            starts_against,
            turns: false,
        })
    }

    /// Turns a second.
    #[must_use]
    pub const fn speed(&self) -> Hertz {
        self.speed
    }
}

impl Drive for SteadyDrive {
    fn step(&mut self, demand: &Demand) -> Turning {
        let against = (demand.discharge - demand.suction).get();
        self.turns = demand.calls && (self.turns || against <= self.starts_against.get());
        if !self.turns {
            return Turning {
                refused: demand.calls,
                ..Turning::default()
            };
        }
        let work = core::f64::consts::TAU * self.speed.get() * demand.gas_torque.get();
        let watts = (work + self.friction.get()) / self.efficiency.get();
        Turning {
            speed: self.speed,
            watts: Watts::new(watts),
            heat: Watts::new(watts - work),
            refused: false,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn it_starts_only_against_little_and_then_keeps_turning() {
        let mut drive = SteadyDrive::new(
            Hertz::new(50.0),
            Ratio::new(0.8),
            Watts::new(10.0),
            Pascals::new(1e5),
        )
        .unwrap();
        let mut demand = Demand {
            suction: Pascals::new(1e5),
            discharge: Pascals::new(5e5),
            gas_torque: NewtonMetres::new(0.1),
            room: Celsius::new(25.0),
            shell: Celsius::new(40.0),
            calls: true,
            step: Seconds::new(1.0),
        };
        assert!(drive.step(&demand).refused);
        demand.discharge = Pascals::new(1.5e5);
        let turning = drive.step(&demand);
        assert!(!turning.refused && turning.heat < turning.watts);
        demand.discharge = Pascals::new(5e5);
        assert!(!drive.step(&demand).refused);
        demand.calls = false;
        assert_eq!(drive.step(&demand), Turning::default());
    }
}
