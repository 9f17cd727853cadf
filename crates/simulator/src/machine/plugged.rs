//! A compressor on its cord, as what turns an appliance's pump.
//!
//! Answers: what do the windings make of each step, and which events were heard meanwhile?
//!
//! Must never know: what is wrong with anything.

use quantity::{Celsius, Hertz, Seconds, Watts, WattsPerKelvin};

use crate::appliance::{Demand, Drive, Turning};
use crate::compressor::{Compressor, StartRecord, Surroundings};
use crate::rotor::Pressures;
use crate::start_gear::StartGear;
use crate::supply::Supply;
use crate::{Chance, ParameterError};

/// What suction gas takes from motor and pump, in W/K: a gram or so of vapour a second (from
/// memory).
const GAS_COOLING: f64 = 0.3;

/// What a compressor meets in a step of an appliance.
pub(super) fn around(demand: &Demand) -> Surroundings {
    Surroundings {
        room: demand.room,
        pressures: Pressures {
            suction: demand.suction,
            discharge: demand.discharge,
        },
        gas_torque: Some(demand.gas_torque),
        gas_cooling: WattsPerKelvin::new(GAS_COOLING),
    }
}

/// Something that is heard, and when, in seconds since it was plugged in.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Event {
    /// When.
    pub at: Seconds,
    /// What.
    pub heard: Heard,
}

/// What is heard of a compressor.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Heard {
    /// It starts, and runs up within so many seconds.
    Starts,
    /// It hums without turning.
    Hums,
    /// The protector clicks.
    Clicks,
    /// The outlet's protective device goes.
    OutletTrips,
}

/// A compressor with the outlet that it hangs on.
#[derive(Debug, Clone)]
pub struct PluggedCompressor {
    compressor: Compressor,
    supply: Supply,
    chance: Chance,
    time: f64,
    events: Vec<Event>,
    last_try: Option<StartRecord>,
}

impl PluggedCompressor {
    /// Plugs a compressor in. Crank angles come of the chance.
    #[must_use]
    pub fn new(compressor: Compressor, supply: Supply, chance: Chance) -> Self {
        Self {
            compressor,
            supply,
            chance,
            time: 0.0,
            events: Vec::new(),
            last_try: None,
        }
    }

    /// The compressor.
    #[must_use]
    pub const fn compressor(&self) -> &Compressor {
        &self.compressor
    }

    /// What was heard so far, in order.
    #[must_use]
    pub fn events(&self) -> &[Event] {
        &self.events
    }

    /// How the last try to start went.
    #[must_use]
    pub const fn last_try(&self) -> Option<&StartRecord> {
        self.last_try.as_ref()
    }

    /// Other gear on its pins.
    ///
    /// # Errors
    /// As [`Compressor::fitted`].
    pub fn fit(&mut self, gear: StartGear, room: Celsius) -> Result<(), ParameterError> {
        self.compressor = self.compressor.clone().fitted(gear, room)?;
        Ok(())
    }

    /// Switches what leaks only while something is on, a heater say.
    pub const fn switch_leaks(&mut self, is_on: bool) {
        self.supply.switched_on = is_on;
    }

    /// Whether the outlet's device has gone.
    #[must_use]
    pub fn outlet_is_dead(&self) -> bool {
        self.compressor.guard_is_tripped()
    }

    fn hear(&mut self, heard: Heard) {
        let at = Seconds::new(self.time);
        self.events.push(Event { at, heard });
    }

    fn note(&mut self, record: StartRecord) {
        self.hear(if record.came_up {
            Heard::Starts
        } else {
            Heard::Hums
        });
        self.last_try = Some(record);
    }
}

impl Drive for PluggedCompressor {
    fn step(&mut self, demand: &Demand) -> Turning {
        let around = around(demand);
        let was_dead = self.outlet_is_dead();
        let passed = self.compressor.advance(
            demand.step,
            demand.calls,
            &self.supply,
            &around,
            &mut self.chance,
        );
        // Bounds of a machine's own state were checked when it was built; what an extreme moment
        // leaves over is a step without turning.
        let Ok(period) = passed else {
            return Turning::default();
        };
        if let Some(record) = period.last_try {
            self.note(record);
        }
        if period.trips > 0 {
            self.hear(Heard::Clicks);
        }
        if !was_dead && self.outlet_is_dead() {
            self.hear(Heard::OutletTrips);
        }
        self.time += demand.step.get();
        let lasted = period.lasted.get().max(1e-9);
        let speed = self.compressor.speed().get();
        let gas = period.energy.gas.get() / lasted;
        Turning {
            speed: Hertz::new(speed),
            watts: period.watts,
            heat: Watts::new((period.watts.get() - gas).max(0.0)),
            refused: demand.calls && speed <= 0.0,
        }
    }
}
