//! The motor's equations at one speed.
//!
//! With Zf and Zb the impedances of the field that turns with the rotor and of the one against it,
//! A = (Zf + Zb)/2 and B = (Zf − Zb)/2, the main and start ampere-turns F and G induce
//! E = A·F − j·B·G and H = A·G + j·B·F. Shorted turns are loops around the same fields.

use core::f64::consts::TAU;

use quantity::{Hertz, NewtonMetres, Volts, Watts};

use super::Motor;
use super::feed::{Drawn, Feed, Powers, Temperatures};
use super::winding::aluminium;
use crate::phasor::Phasor;

impl Motor {
    /// Currents, torque and powers at a speed in turns a second.
    ///
    /// ```
    /// use quantity::{Celsius, Hertz, Ohms, Volts};
    /// use simulator::motor::{Feed, Motor, Temperatures};
    /// let feed = Feed {
    ///     volts: Volts::new(115.0),
    ///     frequency: Hertz::new(60.0),
    ///     line: Ohms::new(0.0),
    ///     main_series: Ohms::new(0.0),
    ///     start_series: None,
    /// };
    /// let cold = Temperatures::all(Celsius::new(25.0));
    /// let locked = Motor::example_115_volts().drawn(&feed, &cold, Hertz::new(0.0));
    /// assert!(locked.main.amps.get() > 8.0);
    /// // One winding alone doesn't know which way to turn.
    /// assert!(locked.torque.get().abs() < 1e-12);
    /// ```
    #[must_use]
    pub fn drawn(&self, feed: &Feed, temperatures: &Temperatures, speed: Hertz) -> Drawn {
        let solution = Equations::new(self, feed, temperatures).at(TAU * speed.get());
        Drawn {
            line: solution.line.into(),
            main: solution.main.into(),
            start: solution.start.into(),
            start_volts: Volts::new(solution.start_volts.size()),
            torque: NewtonMetres::new(solution.torque),
            powers: Powers {
                taken: Watts::new(solution.taken),
                line: Watts::new(solution.line_heat),
                series: Watts::new(solution.coil_heat + solution.gear_heat),
                main: Watts::new(solution.main_heat),
                start: Watts::new(solution.start_heat),
                iron: Watts::new(solution.iron_heat),
                rotor: Watts::new(solution.rotor_heat),
                shaft: Watts::new(solution.shaft),
            },
        }
    }
}

/// Everything about the motor and its feed that doesn't depend on the speed.
#[derive(Debug, Clone)]
pub(crate) struct Equations {
    volts: f64,
    line: f64,
    /// Conductance.
    iron: f64,
    coil: f64,
    main: Phasor,
    main_is_open: bool,
    main_turns: f64,
    main_loop: Phasor,
    start: Phasor,
    start_is_open: bool,
    start_turns: f64,
    start_loop: Phasor,
    has_loops: bool,
    gear: Option<Phasor>,
    rotor: Phasor,
    gap: f64,
    /// Radians a second of the field.
    synchronous: f64,
}

/// Currents in amperes, powers in watts, torque in newton metres.
#[derive(Debug, Clone, Copy, Default)]
pub(crate) struct Solution {
    pub(crate) line: Phasor,
    pub(crate) main: Phasor,
    pub(crate) start: Phasor,
    pub(crate) start_volts: Phasor,
    /// Across what is in series with the start winding; nought when that leads nowhere.
    pub(crate) gear_volts: Phasor,
    pub(crate) torque: f64,
    pub(crate) taken: f64,
    pub(crate) line_heat: f64,
    pub(crate) coil_heat: f64,
    pub(crate) gear_heat: f64,
    pub(crate) main_heat: f64,
    pub(crate) start_heat: f64,
    pub(crate) iron_heat: f64,
    pub(crate) rotor_heat: f64,
    pub(crate) shaft: f64,
}

impl Equations {
    pub(crate) fn new(motor: &Motor, feed: &Feed, temperatures: &Temperatures) -> Self {
        let ratio = feed.frequency.get() / motor.frequency.get();
        let turns = motor.turns_ratio.get();
        let (main_at, start_at) = (temperatures.main.get(), temperatures.start.get());
        let (main, main_turns) = motor.main.impedance(main_at, ratio);
        let (start, start_share) = motor.start.impedance(start_at, ratio);
        let gear = feed
            .start_series
            .map(|gear| Phasor::new(gear.resistance.get(), gear.reactance.get()));
        Self {
            volts: feed.volts.get(),
            line: feed.line.get(),
            iron: if motor.main.is_open {
                0.0
            } else {
                1.0 / motor.iron.get()
            },
            coil: feed.main_series.get(),
            main,
            main_is_open: motor.main.is_open,
            main_turns,
            main_loop: motor.main.shorted_loop(main_at, ratio, 1.0),
            start,
            start_is_open: motor.start.is_open,
            start_turns: start_share * turns,
            start_loop: motor.start.shorted_loop(start_at, ratio, turns),
            has_loops: motor.main.shorted_share.get() > 0.0
                || motor.start.shorted_share.get() > 0.0,
            gear,
            rotor: Phasor::new(
                motor.rotor_resistance.get() * aluminium(temperatures.rotor.get()),
                motor.rotor_reactance.get() * ratio,
            ),
            gap: motor.magnetising_reactance.get() * ratio,
            synchronous: TAU * feed.frequency.get() * 2.0 / f64::from(motor.poles),
        }
    }

    /// Puts something else in series with the start winding.
    pub(crate) fn set_gear(&mut self, gear: Option<Phasor>) {
        self.gear = gear;
    }

    pub(crate) fn synchronous(&self) -> f64 {
        self.synchronous
    }

    /// The cage and the gap as the field at a slip sees them: j·Xm ∥ (R2/s + j·X2), multiplied out
    /// so that no slip divides by nought.
    fn field(&self, slip: f64) -> Phasor {
        let Phasor { re, im } = self.rotor;
        let above = Phasor::new(re, slip * im).ahead() * self.gap;
        above / Phasor::new(re, slip * (im + self.gap))
    }

    /// Solves for a speed in radians a second.
    pub(crate) fn at(&self, speed: f64) -> Solution {
        let slip = 1.0 - speed / self.synchronous;
        let (with, against) = (self.field(slip), self.field(2.0 - slip));
        let (a, b) = ((with + against) * 0.5, (with - against) * 0.5);
        let (p, q) = (self.main_loop, self.start_loop);
        // What a winding's ampere-turns induce in itself and in the other, shorted loops included.
        let (own_main, own_start, mutual) = if self.has_loops {
            let one = Phasor::real(1.0);
            let share = ((one + a * p) * (one + a * q) - b * b * p * q).inverse();
            let product = with * against;
            (
                (a + q * product) * share,
                (a + p * product) * share,
                (b * share).ahead(),
            )
        } else {
            (a, a, b.ahead())
        };
        let (main, start) = self.currents(own_main, own_start, mutual);

        let (f, g) = (main * self.main_turns, start * self.start_turns);
        let e = own_main * f - mutual * g;
        let h = own_start * g + mutual * f;
        let (f, g) = (f - p * e, g - q * h);
        let forward = (f - g.ahead()).square() * with.re / 2.0;
        let backward = (f + g.ahead()).square() * against.re / 2.0;
        let torque = (forward - backward) / self.synchronous;

        // The iron sits across the pins, behind the line's resistance.
        let divided = 1.0 / (1.0 + self.line * self.iron);
        let pins = Phasor::real(self.volts * divided) - (main + start) * (self.line * divided);
        let iron = pins * self.iron;
        let line = main + start + iron;
        let start_volts = start * self.start + h * self.start_turns;
        let gear = self.gear.unwrap_or(Phasor::NOUGHT);
        Solution {
            line,
            main,
            start,
            start_volts,
            gear_volts: if self.start_is_open {
                Phasor::NOUGHT
            } else {
                pins - start_volts
            },
            torque,
            taken: line.power_at(Phasor::real(self.volts)),
            line_heat: line.square() * self.line,
            coil_heat: main.square() * self.coil,
            gear_heat: start.square() * gear.re,
            main_heat: main.square() * self.main.re + e.square() * p.re,
            start_heat: start.square() * self.start.re + h.square() * q.re,
            iron_heat: pins.square() * self.iron,
            rotor_heat: slip * forward + (2.0 - slip) * backward,
            shaft: torque * speed,
        }
    }

    /// Two windings in parallel behind the line; the iron is taken into the line.
    fn currents(&self, own_main: Phasor, own_start: Phasor, mutual: Phasor) -> (Phasor, Phasor) {
        let divided = 1.0 / (1.0 + self.line * self.iron);
        let volts = Phasor::real(self.volts * divided);
        let line = Phasor::real(self.line * divided);
        let (m, s) = (self.main_turns, self.start_turns);
        let main = self.main + Phasor::real(self.coil) + own_main * (m * m) + line;
        let start = self
            .gear
            .filter(|_| !self.start_is_open)
            .map(|gear| self.start + gear + own_start * (s * s) + line);
        match (self.main_is_open, start) {
            (true, None) => (Phasor::NOUGHT, Phasor::NOUGHT),
            (true, Some(start)) => (Phasor::NOUGHT, volts / start),
            (false, None) => (volts / main, Phasor::NOUGHT),
            (false, Some(start)) => {
                let over = line - mutual * (m * s);
                let under = line + mutual * (m * s);
                let scale = volts / (main * start - over * under);
                (scale * (start - over), scale * (main - under))
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::super::Impedance;
    use super::*;
    use quantity::{Celsius, Ohms};

    fn feed(gear: Option<f64>) -> Feed {
        Feed {
            volts: Volts::new(115.0),
            frequency: Hertz::new(60.0),
            line: Ohms::new(0.3),
            main_series: Ohms::new(0.1),
            start_series: gear.map(|ohms| Impedance {
                resistance: Ohms::new(ohms),
                reactance: Ohms::new(-20.0),
            }),
        }
    }

    /// Heat and shaft are worked out from currents, resistances and slip; what is taken, from the
    /// line's current and the voltage alone.
    #[test]
    fn what_is_taken_turns_up_as_heat_or_on_the_shaft() {
        let warm = Temperatures::all(Celsius::new(80.0));
        for (main, start) in [(0.0, 0.0), (0.1, 0.0), (0.05, 0.3)] {
            let mut motor = Motor::example_115_volts();
            motor.turns_ratio = quantity::Ratio::new(1.3);
            motor.main.shorted_share = quantity::Ratio::new(main);
            motor.start.shorted_share = quantity::Ratio::new(start);
            for gear in [None, Some(5.0), Some(500.0)] {
                for speed in [-30.0, 0.0, 10.0, 40.0, 58.0, 60.0, 62.0] {
                    let powers = motor.drawn(&feed(gear), &warm, Hertz::new(speed)).powers;
                    let gone = powers.line + powers.series + powers.main + powers.start;
                    let gone = gone + powers.iron + powers.rotor + powers.shaft;
                    let miss = (gone - powers.taken).get() / powers.taken.get().abs();
                    assert!(miss.abs() < 1e-11, "{miss} at {speed}");
                }
            }
        }
    }

    #[test]
    fn no_volts_no_current_and_no_winding_no_current() {
        let cold = Temperatures::all(Celsius::new(25.0));
        let mut dead = feed(Some(5.0));
        dead.volts = Volts::new(0.0);
        let nothing = Motor::example_115_volts().drawn(&dead, &cold, Hertz::new(0.0));
        assert!(nothing.line.amps.get() < 1e-30 && nothing.torque.get().abs() < 1e-30);
        let mut open = Motor::example_115_volts();
        open.main.is_open = true;
        open.start.is_open = true;
        let drawn = open.drawn(&feed(Some(5.0)), &cold, Hertz::new(0.0));
        assert!(drawn.line.amps.get() < 1e-30 && drawn.start.amps.get() < 1e-30);
        assert!(drawn.torque.get().abs() < 1e-30);
    }

    #[test]
    fn shorted_turns_draw_more_and_give_less() {
        let cold = Temperatures::all(Celsius::new(25.0));
        let sound = Motor::example_115_volts();
        let mut short = sound;
        short.main.shorted_share = quantity::Ratio::new(0.1);
        let at = Hertz::new(57.0);
        let (sound, short) = (
            sound.drawn(&feed(None), &cold, at),
            short.drawn(&feed(None), &cold, at),
        );
        assert!(short.line.amps > sound.line.amps);
        assert!(short.torque < sound.torque);
    }
}
