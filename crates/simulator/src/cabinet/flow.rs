//! What flows in a cabinet: heat, moisture and frost.
//!
//! Answers: how many watts pass between each two places? Must never know: what the refrigerant
//! makes of them.

use super::compartment::food_temperature;
use super::{Cabinet, Compartment};
use crate::circuit::LENGTHS;
use crate::integrate::flows;

/// Heat capacity of air by volume, J/(m³·K): 1.25 kg/m³ (ISO 2533 at 10 °C) and 1005 J/(kg·K).
const AIR_HEAT: f64 = 1256.0;
/// J/kg to make water at 0 °C of vapour (IAPWS, 2501 kJ/kg).
pub(crate) const LATENT_VAPOUR: f64 = 2.501e6;
/// J/kg to melt ice (333.5 kJ/kg).
pub(crate) const LATENT_FREEZING: f64 = 3.335e5;
/// Heat into melting frost over the whole evaporator, W/K. From memory.
const MELTING: f64 = 60.0;
/// Share of the defrost heat that misses the evaporator and warms the air. From memory.
const STRAY: f64 = 0.15;

flows! {
    /// Watts, and kilograms of water a second.
    CabinetFlows {
        /// From the condenser to the room.
        condenser_room,
        /// From the condenser into the first compartment's wall.
        condenser_wall,
        /// From the shell to the room.
        shell_room,
        /// From the room into the first wall.
        outer_first,
        /// From the first wall into its air.
        inner_first,
        /// From the first air into its contents.
        contents_first,
        /// From the room into the first air by its door.
        door_first,
        /// Of the mains into the first air.
        mains_first,
        /// From the room into the second wall.
        outer_second,
        /// From the second wall into its air.
        inner_second,
        /// From the second air into its contents.
        contents_second,
        /// From the room into the second air by its door.
        door_second,
        /// Of the mains into the second air.
        mains_second,
        /// From the second air into the first, through the wall between.
        between,
        /// Of the mains to the condenser's fan: into the room at once.
        mains_room
        ;
        /// From the first air into each length of the evaporator.
        from_first,
        /// From the second air into each length.
        from_second,
        /// Of the mains into each length: the defrost heater.
        heater,
        /// Frost that grows on each length.
        rime,
        /// Frost that melts off it.
        melt
    }
}

/// Temperatures in °C, frost in kg, contents in J.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct CabinetState {
    pub(crate) evaporator: [f64; LENGTHS],
    pub(crate) frost: [f64; LENGTHS],
    pub(crate) condenser: f64,
    pub(crate) shell: f64,
    pub(crate) first: Warmth,
    pub(crate) second: Warmth,
}

/// One compartment's state.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Warmth {
    pub(crate) air: f64,
    pub(crate) wall: f64,
    pub(crate) contents: f64,
}

/// What is switched on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Switched {
    /// The fans.
    pub(crate) fans: bool,
    /// The defrost heater, W.
    pub(crate) heater: f64,
    /// Share of the condenser that stands full of liquid and gives off little.
    pub(crate) flooded: f64,
}

/// Water in saturated air in kg/m³: A. Magnus's formula with the coefficients of O. A. Alduchov
/// and R. E. Eskridge (1996), from memory, and the gas law.
fn water_in_air(celsius: f64) -> f64 {
    let within = celsius.clamp(-60.0, 60.0);
    let pressure = 610.94 * libm::exp(17.625 * within / (243.04 + within));
    pressure / (461.5 * (within + 273.15))
}

impl Cabinet {
    pub(crate) fn flow(&self, it: &CabinetState, on: &Switched) -> CabinetFlows {
        let mut flows = CabinetFlows::default();
        let room = self.room.get();
        // The full part gives off what sensible heat it has: next to nothing.
        let filled = 1.0 - 0.85 * on.flooded;
        flows.condenser_room = filled * self.condenser.given_off(on.fans) * (it.condenser - room);
        flows.condenser_wall = self.condenser.into_wall.get() * (it.condenser - it.first.wall);
        flows.shell_room = self.shell.to_room.get() * (it.shell - room);
        [
            flows.outer_first,
            flows.inner_first,
            flows.contents_first,
            flows.door_first,
        ] = compartment(&self.first, &it.first, room);
        if let Some(second) = &self.second {
            [
                flows.outer_second,
                flows.inner_second,
                flows.contents_second,
                flows.door_second,
            ] = compartment(second, &it.second, room);
            // The partition is worth a third of the first compartment's insulation.
            flows.between = self.first.insulation.get() / 3.0 * (it.second.air - it.first.air);
        }
        let lamp = self.lamp.get();
        match self.second {
            Some(_) => flows.mains_second += lamp,
            None => flows.mains_first += lamp,
        }
        if let (Some(fan), true) = (&self.condenser.fan, on.fans) {
            flows.mains_room = fan.power.get() * fan.turning.get();
        }
        flows.mains_first += STRAY * on.heater;
        flows.heater = [(1.0 - STRAY) * on.heater / LENGTHS as f64; LENGTHS];
        self.evaporator_air(it, on, &mut flows);
        self.frost(it, &mut flows);
        flows
    }

    fn evaporator_air(&self, it: &CabinetState, on: &Switched, flows: &mut CabinetFlows) {
        let share = 1.0 / LENGTHS as f64;
        for place in 0..LENGTHS {
            let bare = self.evaporator.still.get();
            let still = self.evaporator.rime.through(bare, it.frost[place] / share) * share;
            flows.from_first[place] = still * (it.first.air - it.evaporator[place]);
        }
        if !on.fans {
            return;
        }
        let Some(blower) = &self.evaporator.blower else {
            return;
        };
        flows.mains_first += blower.power.get() * blower.turning.get();
        let air = self.blown(it) * AIR_HEAT;
        let damper = match self.second {
            Some(_) => self.damper.share(it.second.air),
            None => 0.0,
        };
        for place in 0..LENGTHS {
            // Side by side: each length meets a third of the mixed air.
            let mixed = (1.0 - damper) * it.first.air + damper * it.second.air;
            let cooled = blower.exchange.get() * (mixed - it.evaporator[place]);
            let out = mixed - cooled;
            flows.from_first[place] += air * share * (1.0 - damper) * (it.first.air - out);
            flows.from_second[place] = air * share * damper * (it.second.air - out);
        }
    }

    /// Air through the evaporator with its fan on, m³/s.
    pub(crate) fn blown(&self, it: &CabinetState) -> f64 {
        let frost: f64 = it.frost.iter().sum();
        self.evaporator.blower.as_ref().map_or(0.0, |blower| {
            blower.flow * blower.turning.get() * self.evaporator.rime.passes(frost)
        })
    }

    fn frost(&self, it: &CabinetState, flows: &mut CabinetFlows) {
        let room = self.room.get();
        let outside = self.humidity.get() * water_in_air(room);
        let coldest = it.evaporator.iter().fold(0.0_f64, |a, &b| a.min(b));
        let excess = (outside - water_in_air(coldest)).max(0.0);
        let mut changed = self.first.exchange(room - it.first.air);
        if let Some(second) = &self.second {
            changed += second.exchange(room - it.second.air);
        }
        // Frost falls where metal is colder than both the air and ice.
        let pull = |place: usize| {
            let metal = it.evaporator[place];
            (it.first.air - metal).max(0.0) * (-metal).clamp(0.0, 1.0)
        };
        let pulls = [0, 1, 2].map(pull);
        let all: f64 = pulls.iter().sum();
        for (place, pull) in pulls.into_iter().enumerate() {
            flows.rime[place] = changed * excess * pull / (all + 0.1);
            let there = it.frost[place].max(0.0);
            let reached = there / (there + 2e-3);
            flows.melt[place] =
                MELTING / 3.0 * it.evaporator[place].max(0.0) * reached / LATENT_FREEZING;
        }
    }
}

/// Watts into the wall, out of it into the air, into the contents, and in by the door.
fn compartment(of: &Compartment, it: &Warmth, room: f64) -> [f64; 4] {
    // The wall's lump sits in the middle of its insulation.
    let half = 2.0 * of.insulation.get();
    let food = food_temperature(it.contents / of.contents.mass.get());
    let exchanged = of.exchange(room - it.air) * AIR_HEAT;
    [
        half * (room - it.wall),
        half * (it.wall - it.air),
        of.contents.exchange.get() * (it.air - food),
        exchanged * (room - it.air),
    ]
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 4.85 g/m³ at 0 °C and 17.3 g/m³ at 20 °C: common tables of saturated air, from memory.
    #[test]
    fn saturated_air_holds_what_tables_say() {
        assert!((water_in_air(0.0) - 4.85e-3).abs() < 2e-5);
        assert!((water_in_air(20.0) - 17.3e-3).abs() < 1e-4);
    }
}
