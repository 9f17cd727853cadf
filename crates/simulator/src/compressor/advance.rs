//! Hours of running, resting and trying, in long steps.

use core::f64::consts::TAU;

use quantity::{Amps, Joules, Seconds, Watts};

use super::heat::Inflow;
use super::network::{Load, Network, ShaftWork, winding_leak};
use super::start::Start;
use super::{Compressor, Energy, Motion, Period, StartRecord, Surroundings};
use crate::error::within;
use crate::supply::Supply;
use crate::{Chance, ParameterError};

/// Longest steps: at rest and with an open protector, turning, held.
const RESTING: f64 = 30.0;
const TRIPPED: f64 = 1.0;
const TURNING: f64 = 10.0;
const HELD: f64 = 0.25;
/// The most that the protector's disc may warm in a step.
const DISC_KELVINS: f64 = 5.0;
/// A held shaft with torque to spare is given another try so often: pressures may have levelled.
const TRY_AGAIN: f64 = 5.0;

impl Compressor {
    /// Lets time pass while the control calls for running or doesn't. It starts, stalls, trips and
    /// tries again by itself.
    ///
    /// `time` is from 0 s to a day. A start is followed to its end even where the time is over
    /// before; the next call is shorter by as much.
    ///
    /// # Errors
    /// [`ParameterError`] names the first parameter out of its bounds.
    pub fn advance(
        &mut self,
        time: Seconds,
        is_called: bool,
        supply: &Supply,
        surroundings: &Surroundings,
        chance: &mut Chance,
    ) -> Result<Period, ParameterError> {
        supply.check()?;
        surroundings.check()?;
        within("time", time.get(), 0.0, 86_400.0)?;
        let mut passing = Passing {
            compressor: self,
            supply,
            surroundings,
            period: Period::default(),
        };
        let mut left = time.get() - passing.compressor.state.ahead;
        while left > 0.0 {
            left -= passing.step(left, is_called, chance);
        }
        passing.compressor.state.ahead = -left;
        Ok(passing.finish())
    }
}

struct Passing<'a> {
    compressor: &'a mut Compressor,
    supply: &'a Supply,
    surroundings: &'a Surroundings,
    period: Period,
}

impl Passing<'_> {
    /// Does one step, and returns how long it was.
    fn step(&mut self, left: f64, is_called: bool, chance: &mut Chance) -> f64 {
        // Below a volt nothing would happen that anyone could notice.
        let is_fed = is_called && self.supply.volts.get() >= 1.0;
        let is_on = is_fed && !self.compressor.state.disc_is_open;
        if self.guard_cuts_off(is_on) || !is_fed {
            return self.rest(left.min(RESTING));
        }
        if !is_on {
            return self.rest(left.min(TRIPPED));
        }
        match self.compressor.state.motion {
            Motion::Stopped => self.start(chance),
            Motion::Turning { speed } => self.turn(speed, left.min(TURNING)),
            Motion::Stalled { since_try } => self.hold(since_try, left.min(HELD), chance),
        }
    }

    /// Whether a ground-fault device has cut off, or does now. Its delay is left out.
    fn guard_cuts_off(&mut self, is_on: bool) -> bool {
        let Compressor { parts, state } = &mut *self.compressor;
        let windings = if is_on { winding_leak(parts) } else { 0.0 };
        let leakage = self.supply.leakage(windings);
        state.guard_is_tripped |= self.supply.guard_trips_after(leakage).is_some();
        state.guard_is_tripped
    }

    /// Cools for a while. A leak outside of the compressor flows all the same; without a running
    /// pump no suction gas does.
    fn rest(&mut self, seconds: f64) -> f64 {
        let Compressor { parts, state } = &mut *self.compressor;
        let room = self.surroundings.room.get();
        state.stop(parts, self.supply);
        let none = Inflow::default();
        state
            .nodes
            .advance(&parts.heat, &none, (room, 0.0), seconds);
        state.warm_disc(&parts.protector, room, 0.0, seconds);
        let around = state.around_gear(room);
        let hertz = self.supply.frequency.get();
        state.gear.advance(&parts.gear, hertz, 0.0, around, seconds);
        let amps = if state.guard_is_tripped {
            0.0
        } else {
            self.supply.leakage(0.0)
        };
        let leak = Joules::new(self.supply.volts.get() * amps * seconds);
        let energy = Energy {
            taken: leak,
            leak,
            ..Energy::default()
        };
        self.period.energy.add(&energy);
        self.period.line = Amps::new(amps);
        self.period.lasted = self.period.lasted + Seconds::new(seconds);
        seconds
    }

    fn start(&mut self, chance: &mut Chance) -> f64 {
        let Compressor { parts, state } = &mut *self.compressor;
        let mut start = Start::new(parts, state, self.supply, self.surroundings);
        start.try_to_turn(chance.between(0.0, TAU), 60.0);
        let record = start.finish();
        self.take(record)
    }

    fn take(&mut self, record: StartRecord) -> f64 {
        let lasted = record.lasted;
        self.period.tries += 1;
        self.period.trips += u32::from(record.tripped.is_some());
        self.period.energy.add(&record.energy);
        self.period.lasted = self.period.lasted + lasted;
        self.period.energised = self.period.energised + lasted;
        if let Some(up) = record.time_to_speed.filter(|_| record.came_up) {
            self.period.turned = self.period.turned + lasted - up;
        }
        if let Some(last) = record.trace.last() {
            self.period.line = last.line;
        }
        self.period.last_try = Some(record);
        // A step that takes no time would never end.
        lasted.get().max(1e-3)
    }

    fn turn(&mut self, from: f64, seconds: f64) -> f64 {
        let Compressor { parts, state } = &mut *self.compressor;
        let network = Network::new(parts, state, self.supply);
        let load = Load::new(&parts.rotor, self.surroundings);
        let Some((speed, solution)) = network.balance(&load, Some(from)) else {
            state.motion = Motion::Stalled { since_try: 0.0 };
            return 0.0;
        };
        let (room, gas) = (
            self.surroundings.room.get(),
            self.surroundings.gas_cooling.get(),
        );
        let amps = solution.line.size();
        let disc = state.disc_after(&parts.protector, room, amps, seconds);
        // Short enough that a trip is placed well.
        let seconds = seconds * (DISC_KELVINS / (disc - state.disc).abs()).clamp(0.01, 1.0);
        let inertia = parts.rotor.inertia();
        let kinetic = inertia * (speed * speed - from * from) / 2.0;
        let friction = load.friction(speed) * speed * seconds;
        let work = ShaftWork {
            friction,
            // What goes into motion is taken from the gas's share.
            gas: solution.shaft * seconds - friction - kinetic,
            kinetic,
        };
        let (energy, inflow) = network.book(&solution, work, &parts.heat, seconds);
        state
            .nodes
            .advance(&parts.heat, &inflow, (room, gas), seconds);
        state.warm_disc(&parts.protector, room, amps, seconds);
        state.follow_gear(parts, self.supply, &solution, room, seconds);
        state.motion = Motion::Turning { speed };
        self.period.trips += u32::from(state.disc_is_open);
        self.period.energy.add(&energy);
        let line = network.clamp_amps(&solution);
        self.pass(seconds, line);
        self.period.turned = self.period.turned + Seconds::new(seconds);
        seconds
    }

    fn hold(&mut self, since_try: f64, seconds: f64, chance: &mut Chance) -> f64 {
        let Compressor { parts, state } = &mut *self.compressor;
        if since_try > TRY_AGAIN {
            let torque = Network::new(parts, state, self.supply).at(0.0).torque;
            if torque > parts.rotor.holds() {
                return self.start(chance);
            }
        }
        let mut start = Start::new(parts, state, self.supply, self.surroundings);
        let seconds = start.held_step(seconds);
        start.hold_for(seconds);
        let since_try = since_try + seconds;
        let record = start.finish();
        if matches!(state.motion, Motion::Stalled { .. }) {
            state.motion = Motion::Stalled { since_try };
        }
        self.period.trips += u32::from(record.tripped.is_some());
        self.period.energy.add(&record.energy);
        let line = record.trace.last().map_or(0.0, |last| last.line.get());
        self.pass(seconds, line);
        seconds
    }

    fn pass(&mut self, seconds: f64, line: f64) {
        let seconds = Seconds::new(seconds);
        self.period.line = Amps::new(line);
        self.period.lasted = self.period.lasted + seconds;
        self.period.energised = self.period.energised + seconds;
    }

    fn finish(mut self) -> Period {
        let lasted = self.period.lasted.get();
        if lasted > 0.0 {
            let counted = self.period.energy.at_plug().get();
            self.period.watts = Watts::new(counted / lasted);
        }
        self.period
    }
}
