//! The board's try to bring the rotor up to a speed.
//!
//! It raises the speed that it asks for evenly, with as much current as the lag calls for, and gives
//! up when the rotor has fallen too far behind.

use core::f64::consts::TAU;

use quantity::{Amps, Hertz, Joules, Seconds, Watts};

use super::InverterCompressor;
use super::drive::Drive;
use crate::compressor::{Inflow, Nodes, Sample, Shaft, StartRecord, Surroundings};
use crate::error::within;
use crate::motor::Solution;
use crate::rotor::Cylinder;
use crate::supply::Supply;
use crate::{Chance, ParameterError};

/// Step, and steps for each sample.
const FINE: f64 = 5e-4;
const STEPS_A_SAMPLE: u32 = 20;
/// How long the asked speed takes to rise to the one wanted, and how long is waited after.
const RISE: f64 = 3.0;
const SETTLING: f64 = 0.5;
/// Torque for each radian a second that the rotor lags, in N·m·s (judgement).
const STIFFNESS: f64 = 0.05;
/// The lag at which the board gives up, in radians a second (judgement).
const LOST: f64 = 60.0;

impl InverterCompressor {
    /// Asks for a speed and follows the rotor until it is there or the board has given up. The
    /// crank rests at a random angle.
    ///
    /// `demand` is from 5 to 150 turns a second.
    ///
    /// # Errors
    /// [`ParameterError`] names the first parameter out of its bounds.
    pub fn start(
        &mut self,
        demand: Hertz,
        supply: &Supply,
        surroundings: &Surroundings,
        chance: &mut Chance,
    ) -> Result<StartRecord, ParameterError> {
        supply.check()?;
        surroundings.check()?;
        within("demand", demand.get(), 5.0, 150.0)?;
        Ok(self.run_up(demand.get(), supply, surroundings, chance))
    }

    pub(super) fn run_up(
        &mut self,
        demand: f64,
        supply: &Supply,
        surroundings: &Surroundings,
        chance: &mut Chance,
    ) -> StartRecord {
        let drive = self.drive(supply);
        let rotor = self.parts.rotor;
        let angle = chance.between(0.0, TAU);
        let cylinder = Cylinder::at_rest(&rotor, &surroundings.pressures, angle);
        let mut shaft = Shaft::new(&rotor, cylinder, 0.0);
        let mut record = StartRecord::default();
        let (mut seconds, mut steps, mut turned, mut lost) = (0.0, 0_u32, angle, !drive.is_able());
        while !lost && seconds < RISE + SETTLING {
            let asked = TAU * demand * (seconds / RISE).min(1.0);
            let share = drive.torque_share(turned);
            let before = shaft.speed;
            let motor = |speed: f64| driven(&drive, asked, share, speed);
            let (solution, work) = shaft.advance(motor, FINE);
            let (energy, inflow) =
                drive.book(&solution, work, self.parts.heat.gas_share.get(), FINE);
            let middle = (before + shaft.speed) / 2.0;
            self.take_up(&inflow, surroundings, FINE);
            record.energy.add(&energy);
            if steps.is_multiple_of(STEPS_A_SAMPLE) {
                record
                    .trace
                    .push(sample(&drive, &solution, seconds + FINE / 2.0, middle));
            }
            let line = solution.line.size();
            record.peak_line = Amps::new(record.peak_line.get().max(line));
            turned += middle * FINE;
            seconds += FINE;
            steps += 1;
            if shaft.speed > 0.9 * TAU * demand && record.time_to_speed.is_none() {
                record.time_to_speed = Some(Seconds::new(seconds));
            }
            // A line that breaks down under the load ends it too.
            let is_fed = drive.at(drive.most_torque(), middle.max(0.0)).is_some();
            lost = asked - shaft.speed > LOST || !is_fed;
        }
        record.guard_tripped = self.guard_is_tripped.then_some(Seconds::new(seconds));
        record.lasted = Seconds::new(seconds);
        record.came_up = !lost && record.time_to_speed.is_some();
        if record.came_up {
            self.speed = shaft.speed;
        } else {
            // What motion is left ends by friction.
            let left = Joules::new(shaft.kinetic());
            record.energy.friction = record.energy.friction + left;
            record.energy.kinetic = record.energy.kinetic - left;
            self.speed = 0.0;
            self.waits = self.parts.board.pause.get();
        }
        record
    }

    pub(super) fn take_up(&mut self, inflow: &Inflow, surroundings: &Surroundings, seconds: f64) {
        let paths = (
            surroundings.room.get(),
            if self.speed > 0.0 {
                surroundings.gas_cooling.get()
            } else {
                0.0
            },
        );
        Nodes::advance(&mut self.nodes, &self.parts.heat, inflow, paths, seconds);
    }
}

/// What the board makes of a lag.
fn driven(drive: &Drive, asked: f64, share: f64, speed: f64) -> Solution {
    let torque = (STIFFNESS * (asked - speed)).clamp(0.0, drive.most_torque()) * share;
    drive.at(torque, speed).unwrap_or_default()
}

fn sample(drive: &Drive, solution: &Solution, seconds: f64, speed: f64) -> Sample {
    Sample {
        time: Seconds::new(seconds),
        line: Amps::new(solution.line.size() + drive.leakage),
        main: Amps::new(solution.main.size()),
        start: Amps::new(0.0),
        watts: Watts::new(drive.plug_watts(solution)),
        speed: Hertz::new(speed / TAU),
    }
}
