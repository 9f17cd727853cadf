//! Hours of driving, standing by and trying again, in long steps.

use core::f64::consts::TAU;

use quantity::{Amps, Hertz, Seconds, Watts};

use super::InverterCompressor;
use super::drive::Drive;
use crate::compressor::{Inflow, Load, Period, ShaftWork, Surroundings};
use crate::error::within;
use crate::motor::Solution;
use crate::supply::Supply;
use crate::{Chance, ParameterError};

/// Longest step.
const LONGEST: f64 = 10.0;

impl InverterCompressor {
    /// Lets time pass while a speed is asked for, or none. The board starts, gives up, waits and
    /// tries again by itself; where volts or current are short it drives as fast as they allow.
    ///
    /// `time` is from 0 s to a day, `demand` from 5 to 150 turns a second. A start is followed to
    /// its end even where the time is over before; the next call is shorter by as much.
    ///
    /// # Errors
    /// [`ParameterError`] names the first parameter out of its bounds.
    pub fn advance(
        &mut self,
        time: Seconds,
        demand: Option<Hertz>,
        supply: &Supply,
        surroundings: &Surroundings,
        chance: &mut Chance,
    ) -> Result<Period, ParameterError> {
        supply.check()?;
        surroundings.check()?;
        within("time", time.get(), 0.0, 86_400.0)?;
        within("demand", demand.map_or(5.0, Hertz::get), 5.0, 150.0)?;
        let mut period = Period::default();
        let mut left = time.get() - self.ahead;
        while left > 0.0 {
            let drive = self.drive(supply);
            let step = left.min(LONGEST);
            let asked = demand.filter(|_| drive.is_able()).map(Hertz::get);
            left -= match asked {
                Some(asked) if self.speed > 0.0 => {
                    self.turn(asked, &drive, surroundings, step, &mut period)
                }
                Some(asked) if self.waits <= 0.0 => {
                    let record = self.run_up(asked, supply, surroundings, chance);
                    period.energy.add(&record.energy);
                    period.tries += 1;
                    let lasted = record.lasted;
                    period.energised = period.energised + lasted;
                    period.lasted = period.lasted + lasted;
                    period.last_try = Some(record);
                    lasted.get().max(1e-3)
                }
                _ => self.stand_by(&drive, surroundings, step, &mut period),
            };
        }
        self.ahead = -left;
        let lasted = period.lasted.get();
        if lasted > 0.0 {
            period.watts = Watts::new(period.energy.at_plug().get() / lasted);
        }
        Ok(period)
    }

    /// Drives for a step at the speed asked for or as fast as it goes.
    fn turn(
        &mut self,
        asked: f64,
        drive: &Drive,
        surroundings: &Surroundings,
        seconds: f64,
        period: &mut Period,
    ) -> f64 {
        let load = Load::new(&self.parts.rotor, surroundings);
        let Some((speed, solution)) = reached(TAU * asked, drive, &load) else {
            self.speed = 0.0;
            self.waits = self.parts.board.pause.get();
            return 0.0;
        };
        let inertia = self.parts.rotor.inertia();
        let kinetic = inertia * (speed * speed - self.speed * self.speed) / 2.0;
        let friction = load.friction(speed) * speed * seconds;
        let work = ShaftWork {
            friction,
            // What goes into motion is taken from the gas's share.
            gas: solution.shaft * seconds - friction - kinetic,
            kinetic,
        };
        self.speed = speed;
        let gas_share = self.parts.heat.gas_share.get();
        let (energy, inflow) = drive.book(&solution, work, gas_share, seconds);
        self.take_up(&inflow, surroundings, seconds);
        period.energy.add(&energy);
        let passed = Seconds::new(seconds);
        period.lasted = period.lasted + passed;
        period.turned = period.turned + passed;
        period.energised = period.energised + passed;
        period.line = Amps::new(solution.line.size() + drive.leakage);
        seconds
    }

    fn stand_by(
        &mut self,
        drive: &Drive,
        surroundings: &Surroundings,
        longest: f64,
        period: &mut Period,
    ) -> f64 {
        self.speed = 0.0;
        let seconds = if self.waits > 0.0 {
            longest.min(self.waits)
        } else {
            longest
        };
        self.waits = (self.waits - seconds).max(0.0);
        let solution = drive.standing_by();
        let (energy, _) = drive.book(&solution, ShaftWork::default(), 0.0, seconds);
        self.take_up(&Inflow::default(), surroundings, seconds);
        period.energy.add(&energy);
        period.lasted = period.lasted + Seconds::new(seconds);
        period.line = Amps::new(solution.line.size() + drive.leakage);
        seconds
    }
}

/// The speed asked for, or the highest below it that volts, current and line allow; `None` when
/// even a tenth of it is too much.
fn reached(asked: f64, drive: &Drive, load: &Load) -> Option<(f64, Solution)> {
    let at = |speed: f64| {
        let torque = load.torque(speed);
        let is_in_reach = torque <= drive.most_torque() && drive.reaches(speed, torque);
        drive.at(torque, speed).filter(|_| is_in_reach)
    };
    if let Some(solution) = at(asked) {
        return Some((asked, solution));
    }
    let (mut low, mut high) = (asked / 10.0, asked);
    let mut best = at(low)?;
    for _ in 0..30 {
        let middle = (low + high) / 2.0;
        match at(middle) {
            Some(solution) => (low, best) = (middle, solution),
            None => high = middle,
        }
    }
    Some((low, best))
}
