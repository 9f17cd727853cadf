//! A try to start, as clamp, power meter and ear would notice it.

use core::f64::consts::TAU;

use quantity::{Amps, Hertz, Joules, Seconds, Watts};

use super::heat::Inflow;
use super::network::{Network, ShaftWork};
use super::run_up::Shaft;
use super::{Compressor, Motion, Parts, Sample, StartRecord, State, Surroundings};
use crate::error::within;
use crate::motor::Solution;
use crate::rotor::Cylinder;
use crate::supply::Supply;
use crate::{Chance, ParameterError};

/// Step of a shaft that may turn, and of one that is up.
const FINE: f64 = 5e-4;
const FINE_UP: f64 = 1e-3;
/// How long the windings' temperature is taken as it was, and how often a sample is kept.
const CHANGE: f64 = 1.9e-3;
const SAMPLED: f64 = 0.01;
/// Step while it is held, and while it is held and the start winding is still in.
const HELD: f64 = 0.05;
const HELD_IN: f64 = 5e-3;
/// A shaft that has not come up by then is taken as held: whatever rocking is left is left out.
const LONGEST_TRY: f64 = 3.0;
/// A shaft that has not moved for so long is held.
const STANDS: f64 = 0.25;
/// How long a shaft that came up is followed with the start winding out, and with it still in.
const FOLLOWED: f64 = 0.15;
const FOLLOWED_IN: f64 = 3.0;
/// The share of the field's speed at which it counts as up.
const UP: f64 = 0.75;

impl Compressor {
    /// Switches the current on and follows what happens until it runs steadily, something cuts
    /// off, or the time is over. The crank rests at a random angle.
    ///
    /// `longest` is from 0.01 s to 600 s. A compressor that already turns is stopped first.
    ///
    /// # Errors
    /// [`ParameterError`] names the first parameter out of its bounds.
    ///
    /// ```
    /// use quantity::{Celsius, Hertz, Pascals, Seconds, Volts, WattsPerKelvin};
    /// use simulator::compressor::{Compressor, Parts, Surroundings};
    /// use simulator::{Chance, rotor::Pressures, supply::Supply};
    /// let mut compressor = Compressor::new(Parts::example_115_volts())?;
    /// let outlet = Supply::outlet(Volts::new(115.0), Hertz::new(60.0));
    /// let level = Pressures {
    ///     suction: Pascals::new(4e5),
    ///     discharge: Pascals::new(4e5),
    /// };
    /// let around = Surroundings {
    ///     room: Celsius::new(25.0),
    ///     pressures: level,
    ///     gas_torque: None,
    ///     gas_cooling: WattsPerKelvin::new(0.3),
    /// };
    /// let longest = Seconds::new(20.0);
    /// let record = compressor.start(&outlet, &around, longest, &mut Chance::new(1))?;
    /// assert!(record.came_up);
    /// # Ok::<(), simulator::ParameterError>(())
    /// ```
    pub fn start(
        &mut self,
        supply: &Supply,
        surroundings: &Surroundings,
        longest: Seconds,
        chance: &mut Chance,
    ) -> Result<StartRecord, ParameterError> {
        supply.check()?;
        surroundings.check()?;
        within("longest", longest.get(), 0.01, 600.0)?;
        self.state.stop(&self.parts, supply);
        let mut start = Start::new(&self.parts, &mut self.state, supply, surroundings);
        start.try_to_turn(chance.between(0.0, TAU), longest.get());
        start.hold(longest.get());
        Ok(start.finish())
    }
}

/// A start that is going on.
pub(super) struct Start<'a> {
    parts: &'a Parts,
    state: &'a mut State,
    supply: &'a Supply,
    surroundings: &'a Surroundings,
    network: Network,
    record: StartRecord,
    seconds: f64,
    next_sample: f64,
    last: Option<Sample>,
    let_go: Option<f64>,
    gathered: Inflow,
    gathered_for: f64,
}

impl<'a> Start<'a> {
    pub(super) fn new(
        parts: &'a Parts,
        state: &'a mut State,
        supply: &'a Supply,
        surroundings: &'a Surroundings,
    ) -> Self {
        let network = Network::new(parts, state, supply);
        Self {
            parts,
            state,
            supply,
            surroundings,
            network,
            record: StartRecord::default(),
            seconds: 0.0,
            next_sample: SAMPLED,
            last: None,
            let_go: None,
            gathered: Inflow::default(),
            gathered_for: 0.0,
        }
    }

    /// Follows the shaft from a resting angle until it is up, held or cut off.
    pub(super) fn try_to_turn(&mut self, angle: f64, longest: f64) {
        let cylinder = Cylinder::at_rest(&self.parts.rotor, &self.surroundings.pressures, angle);
        let mut shaft = Shaft::new(&self.parts.rotor, cylinder, 0.0);
        let up = UP * self.network.synchronous();
        let (began, mut up_since, mut stood) = (self.seconds, None, 0.0);
        while self.is_live() {
            let step = self.turn(&mut shaft, up_since.is_some());
            if shaft.speed > up && up_since.is_none() {
                up_since = Some(self.seconds);
                let time = Seconds::new(self.seconds);
                self.record.time_to_speed.get_or_insert(time);
            }
            let stands = shaft.speed.abs() <= 0.0;
            stood = if stands { stood + step } else { 0.0 };
            let followed = up_since.is_some_and(|since| {
                let out = self.let_go.map(|out| self.seconds - out.max(since));
                out.is_some_and(|out| out > FOLLOWED) || self.seconds - since > FOLLOWED_IN
            });
            let given_up = up_since.is_none() && self.seconds - began > LONGEST_TRY;
            if followed || given_up || stood > STANDS || self.seconds >= longest {
                break;
            }
        }
        self.take_up_heat();
        self.state.motion = if shaft.speed > up && self.is_live() {
            Motion::Turning { speed: shaft.speed }
        } else {
            // What rocking is left comes to rest by friction.
            let left = Joules::new(shaft.kinetic());
            self.record.energy.friction = self.record.energy.friction + left;
            self.record.energy.kinetic = self.record.energy.kinetic - left;
            Motion::Stalled { since_try: 0.0 }
        };
    }

    /// One step of a shaft that may turn. Returns how long it was.
    fn turn(&mut self, shaft: &mut Shaft, is_up: bool) -> f64 {
        if self.gathered_for > CHANGE {
            self.renew();
        }
        let step = if is_up {
            FINE_UP
        } else if shaft.is_held(|speed| self.network.at(speed)) {
            HELD_IN
        } else {
            FINE
        };
        self.network.follow_gear(self.parts, self.state, step / 2.0);
        let before = shaft.speed;
        let (solution, work) = shaft.advance(|speed| self.network.at(speed), step);
        self.account(&solution, work, step);
        self.sample_on_time(&solution, (before + shaft.speed) / 2.0, step);
        self.seconds += step;
        step
    }

    /// Follows a shaft that is held, until something cuts off or the time is over.
    fn hold(&mut self, longest: f64) {
        while self.is_live() && self.seconds < longest {
            if !matches!(self.state.motion, Motion::Stalled { .. }) {
                return;
            }
            self.hold_for(self.held_step(HELD).min(longest - self.seconds).max(1e-6));
        }
    }

    /// The step to go on with: a short one as long as pellets warm fast.
    pub(super) fn held_step(&self, longest: f64) -> f64 {
        if self.state.gear.is_out(&self.parts.gear) {
            longest
        } else {
            longest.min(HELD_IN)
        }
    }

    /// One step of a shaft that is held.
    pub(super) fn hold_for(&mut self, seconds: f64) {
        self.renew();
        self.network
            .follow_gear(self.parts, self.state, seconds / 2.0);
        let solution = self.network.at(0.0);
        self.account(&solution, ShaftWork::default(), seconds);
        let sample = self.sampled(&solution, 0.0, seconds);
        self.record.trace.push(sample);
        self.seconds += seconds;
        self.take_up_heat();
    }

    /// Whether current flows.
    fn is_live(&self) -> bool {
        !self.state.disc_is_open && !self.state.guard_is_tripped
    }

    /// The circuit at the temperatures that have come about.
    fn renew(&mut self) {
        self.take_up_heat();
        self.network = Network::new(self.parts, self.state, self.supply);
    }

    fn take_up_heat(&mut self) {
        if self.gathered_for > 0.0 {
            let (room, gas) = (
                self.surroundings.room.get(),
                self.surroundings.gas_cooling.get(),
            );
            let heat = &self.parts.heat;
            self.state
                .nodes
                .advance(heat, &self.gathered, (room, gas), self.gathered_for);
            self.gathered = Inflow::default();
            self.gathered_for = 0.0;
        }
    }

    /// Books a step and lets gear and guards follow it.
    fn account(&mut self, solution: &Solution, work: ShaftWork, seconds: f64) {
        let (energy, inflow) = self.network.book(solution, work, &self.parts.heat, seconds);
        self.record.energy.add(&energy);
        self.gathered.add(&inflow);
        self.gathered_for += seconds;
        let room = self.surroundings.room.get();
        let end = self.seconds + seconds;
        let amps = solution.line.size();
        self.record.peak_line = Amps::new(self.record.peak_line.get().max(amps));
        self.state
            .warm_disc(&self.parts.protector, room, amps, seconds);
        self.state
            .follow_gear(self.parts, self.supply, solution, room, seconds);
        self.let_go = if self.state.gear.is_out(&self.parts.gear) {
            self.let_go.or(Some(end))
        } else {
            None
        };
        if self.state.disc_is_open {
            self.record.tripped.get_or_insert(Seconds::new(end));
        }
        let guard = self.supply.guard_trips_after(self.network.leakage);
        if guard.is_some_and(|delay| end > delay) {
            self.state.guard_is_tripped = true;
            self.record.guard_tripped.get_or_insert(Seconds::new(end));
        }
    }

    /// The middle of a step, which is where the circuit was solved.
    fn sampled(&self, solution: &Solution, speed: f64, step: f64) -> Sample {
        Sample {
            time: Seconds::new(self.seconds + step / 2.0),
            line: Amps::new(self.network.clamp_amps(solution)),
            main: Amps::new(solution.main.size()),
            start: Amps::new(solution.start.size()),
            watts: Watts::new(self.network.plug_watts(solution)),
            speed: Hertz::new(speed / TAU),
        }
    }

    /// Keeps the first step, and from then on a sample every so often: between steps by a line
    /// from one's middle to the next's.
    fn sample_on_time(&mut self, solution: &Solution, speed: f64, step: f64) {
        let now = self.sampled(solution, speed, step);
        match self.last.replace(now) {
            None => self.record.trace.push(now),
            Some(last) => {
                while self.next_sample <= now.time.get() {
                    let at = Seconds::new(self.next_sample);
                    self.record.trace.push(last.on_the_way_to(&now, at));
                    self.next_sample += SAMPLED;
                }
            }
        }
    }

    pub(super) fn finish(mut self) -> StartRecord {
        self.record.lasted = Seconds::new(self.seconds);
        self.record.let_go = self.let_go.map(Seconds::new);
        self.record.came_up = matches!(self.state.motion, Motion::Turning { .. });
        if !self.is_live() {
            self.state.stop(self.parts, self.supply);
        }
        self.record
    }
}

impl State {
    /// Without current nothing turns and contacts fall back.
    pub(super) fn stop(&mut self, parts: &Parts, supply: &Supply) {
        self.motion = Motion::Stopped;
        let hertz = supply.frequency.get();
        self.gear
            .advance(&parts.gear, hertz, 0.0, self.nodes.shell, 0.0);
    }

    /// Pellets and contacts follow what the circuit did for a while.
    pub(super) fn follow_gear(
        &mut self,
        parts: &Parts,
        supply: &Supply,
        solution: &Solution,
        room: f64,
        seconds: f64,
    ) {
        let around = self.around_gear(room);
        let (gear, hertz) = (&parts.gear, supply.frequency.get());
        let volts = solution.gear_volts.size();
        self.gear.advance(gear, hertz, volts, around, seconds);
        self.gear
            .switch(gear, solution.main.size(), solution.start_volts.size());
    }
}
