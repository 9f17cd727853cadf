//! One step after the other.
//!
//! Answers: how long until the controls are looked at again, and what has changed by then? Must
//! never know: what anybody notices of it.

use super::state::{self, Row};
use super::system::{System, stored_latent};
use super::{Appliance, Course, Demand, Drive, LOOKS, Sample, Turning};
use crate::cabinet::{LATENT_FREEZING, food_enthalpy, food_temperature};
use crate::circuit::CircuitFlow;
use quantity::{Celsius, Joules, Kilograms, NewtonMetres, Pascals, Seconds, Watts};

/// Where ice in the capillary's end comes loose, by the metal behind it, °C.
const THAWED: f64 = 1.0;

impl<D: Drive> Appliance<D> {
    /// Sets temperatures, and lets the charge settle; the books stay.
    pub(super) fn lay_out(&mut self, first: f64, second: f64) {
        let cabinet = &self.parts.cabinet;
        let room = cabinet.room.get();
        let row = &mut self.row;
        row[state::EVAPORATOR..state::CONDENSER].fill(first);
        row[state::CONDENSER] = room;
        row[state::SHELL] = room;
        row[state::FROST..state::MAINS].fill(0.0);
        for (from, air, mass) in [
            (state::FIRST, first, cabinet.first.contents.mass.get()),
            (
                state::SECOND,
                second,
                cabinet.second.map_or(1.0, |it| it.contents.mass.get()),
            ),
        ] {
            row[from + state::OF_AIR] = air;
            row[from + state::OF_WALL] = (air + room) / 2.0;
            row[from + state::OF_CONTENTS] = mass * food_enthalpy(air);
        }
        let settled = self.parts.circuit.settled(first, room, room);
        state::set_amounts(row, &settled);
        self.control = super::Control::default();
        self.turning = Turning::default();
        self.steps.forget();
    }

    pub(super) fn jump(&mut self, first: f64, second: f64) {
        let before = self.stored();
        self.lay_out(first, second);
        self.brought += self.stored() - before;
    }

    /// Energy in metal, food, vapour and ice, J.
    pub(super) fn stored(&self) -> f64 {
        let (row, cabinet) = (&self.row, &self.parts.cabinet);
        let each = cabinet.evaporator.metal.get() / 3.0;
        let mut sum = row[state::CONDENSER] * cabinet.condenser.metal.get()
            + row[state::SHELL] * cabinet.shell.metal.get()
            + stored_latent(&self.parts.circuit)
                * (row[state::VAPOUR_LOW] + row[state::VAPOUR_HIGH]);
        for place in 0..3 {
            sum +=
                each * row[state::EVAPORATOR + place] - LATENT_FREEZING * row[state::FROST + place];
        }
        let compartments = [
            (state::FIRST, Some(&cabinet.first)),
            (state::SECOND, cabinet.second.as_ref()),
        ];
        for (from, of) in compartments {
            if let Some(of) = of {
                sum += of.air.get() * row[from + state::OF_AIR]
                    + of.wall.get() * row[from + state::OF_WALL]
                    + row[from + state::OF_CONTENTS];
            }
        }
        sum
    }

    /// Looks at the controls. How long until the next look: short after a switching, so that a
    /// start is seen; longer as things settle.
    pub(super) fn step_length(&mut self) -> f64 {
        self.control.look(&self.parts.cabinet, &self.row);
        let longest = if self.turning.refused {
            // It may start at any time.
            0.5 * LOOKS
        } else if self.turning.speed.get() > 0.0 || self.heater() > 0.0 {
            LOOKS
        } else {
            2.0 * LOOKS
        };
        (0.25 * self.control.since).clamp(0.5, longest)
    }

    /// Goes on for one step with nothing switching in it.
    pub(super) fn step(&mut self, step: f64, course: &mut Course) {
        let before = self.turning;
        let demand = self.demand(step);
        self.turning = self.drive.step(&demand);
        let turns = self.turning.speed.get() > 0.0;
        if turns != (before.speed.get() > 0.0) {
            self.control.since = 0.0;
            self.steps.forget();
            if turns {
                course.starts += 1;
            }
        } else if self.control.since <= 0.0 {
            self.steps.forget();
        }
        if self.row[state::ICE] > 0.0 && self.row[state::EVAPORATOR] > THAWED {
            self.row[state::ICE] = 0.0;
            self.steps.forget();
        }
        course.drawn = course.drawn + Joules::new(self.watts().get() * step);
        if turns {
            course.running = course.running + Seconds::new(step);
        }
        let system = System {
            circuit: &self.parts.circuit,
            cabinet: &self.parts.cabinet,
            speed: self.turning.speed.get(),
            drive_heat: self.turning.heat.get(),
            fans: self.control.cools(),
            heater: self.heater(),
            scale: state::scale(&self.parts.circuit, &self.parts.cabinet, self.finer),
        };
        let mut row = self.row;
        self.steps.advance(&system, &mut row, step);
        self.row = row;
        self.control.pass(&self.parts.cabinet, step);
        self.time += step;
    }

    fn demand(&mut self, step: f64) -> Demand {
        let (metal, amounts) = self.circuit_state();
        // At rest, the torque that the first turns would meet.
        let speed = match self.turning.speed.get() {
            turns if turns > 0.0 => turns,
            _ => self.parts.mains.turns().get(),
        };
        let (_, seen) = self.parts.circuit.flow(&amounts, &metal, speed);
        let torque = seen.gas_work / (core::f64::consts::TAU * speed);
        let middle = match self.torque {
            // The torque in the middle of the step, as it has changed in the one before.
            Some((before, length)) if self.control.since > 0.0 => {
                let on = (0.5 * step / length).min(1.0);
                (torque + (torque - before) * on).max(0.0)
            }
            _ => torque,
        };
        self.torque = Some((torque, step));
        Demand {
            suction: Pascals::new(seen.low),
            discharge: Pascals::new(seen.high),
            gas_torque: NewtonMetres::new(middle),
            room: self.parts.cabinet.room,
            shell: Celsius::new(self.row[state::SHELL]),
            calls: self.control.cools(),
            step: Seconds::new(step),
        }
    }

    fn circuit_state(&self) -> (crate::circuit::Metal, crate::circuit::Amounts) {
        let row: &Row = &self.row;
        (
            state::metal(row, self.parts.cabinet.room.get()),
            state::amounts(row),
        )
    }

    pub(super) fn seen(&self) -> CircuitFlow {
        let (metal, amounts) = self.circuit_state();
        let speed = self.turning.speed.get();
        self.parts.circuit.flow(&amounts, &metal, speed).1
    }

    pub(super) fn heater(&self) -> f64 {
        self.control
            .heater(&self.parts.cabinet, self.parts.mains.volts())
    }

    pub(super) fn food(&self) -> Celsius {
        let mass = self.parts.cabinet.first.contents.mass.get();
        Celsius::new(food_temperature(
            self.row[state::FIRST + state::OF_CONTENTS] / mass,
        ))
    }

    /// What the machine draws now.
    pub(super) fn watts(&self) -> Watts {
        let cabinet = &self.parts.cabinet;
        let mut watts = self.turning.watts.get() + self.heater() + cabinet.lamp.get();
        if self.control.cools() {
            watts += cabinet
                .evaporator
                .blower
                .map_or(0.0, |fan| fan.power.get() * fan.turning.get());
            watts += cabinet
                .condenser
                .fan
                .map_or(0.0, |fan| fan.power.get() * fan.turning.get());
        }
        Watts::new(watts)
    }

    pub(super) fn sample(&self) -> Sample {
        let seen = self.seen();
        let row = &self.row;
        Sample {
            time: Seconds::new(self.time),
            air: Celsius::new(row[state::FIRST]),
            food: self.food(),
            second_air: self
                .parts
                .cabinet
                .second
                .map(|_| Celsius::new(row[state::SECOND])),
            evaporator: Celsius::new(
                row[state::EVAPORATOR..state::CONDENSER].iter().sum::<f64>() / 3.0,
            ),
            boiling: Celsius::new(seen.boiling),
            condenser: Celsius::new(row[state::CONDENSER]),
            shell: Celsius::new(row[state::SHELL]),
            suction: Pascals::new(seen.low),
            discharge: Pascals::new(seen.high),
            watts: self.watts(),
            running: self.turning.speed.get() > 0.0,
            defrosting: self.control.defrosting.is_some(),
            frost: Kilograms::new(row[state::FROST..state::MAINS].iter().sum::<f64>().max(0.0)),
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::Refrigerant;
    use crate::appliance::{Appliance, Kind, Mains};
    use quantity::Seconds;

    /// What a day comes to must not hang on how exactly it is followed.
    #[test]
    fn a_day_followed_a_hundred_times_as_exactly_is_the_same_day() {
        for kind in Kind::ALL {
            let of = |finer: f64| {
                let mut it = Appliance::example(kind, Mains::V230F50, Refrigerant::R134a).unwrap();
                it.finer = finer;
                let course = it.advance(Seconds::new(86_400.0)).unwrap();
                (
                    course.running.get() / 86_400.0,
                    course.drawn.get(),
                    it.food().get(),
                )
            };
            let (usual, exact) = (of(1.0), of(0.01));
            println!("{kind:?} {usual:?} {exact:?}");
            assert!((usual.0 - exact.0).abs() < 0.01, "{usual:?} {exact:?}");
            assert!(
                (usual.1 / exact.1 - 1.0).abs() < 0.02,
                "{usual:?} {exact:?}"
            );
            assert!((usual.2 - exact.2).abs() < 0.2, "{usual:?} {exact:?}");
        }
    }
}
