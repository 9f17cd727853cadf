//! What the board draws and the magnet's rotor gives at one moment.

use core::f64::consts::TAU;

use quantity::Joules;

use super::{BoardFault, InverterParts};
use crate::compressor::{Energy, Inflow, ShaftWork};
use crate::motor::Solution;
use crate::phasor::Phasor;
use crate::supply::Supply;

/// Board, windings and magnet at one temperature, on one supply.
#[derive(Debug, Clone, Copy)]
pub(super) struct Drive {
    volts: f64,
    line: f64,
    house: f64,
    cord: f64,
    /// Newton metres for each ampere: three windings' worth, or two in series.
    torque_constant: f64,
    /// Ohms that carry the current, all windings together.
    copper: f64,
    iron: f64,
    standing: f64,
    loss: f64,
    power_factor: f64,
    /// The most effective volts that the board gives a winding.
    most_volts: f64,
    most_current: f64,
    magnet: f64,
    reactance: f64,
    pole_pairs: f64,
    /// Whether only two windings carry current.
    two_phases: bool,
    is_able: bool,
    pub(super) leakage: f64,
}

impl Drive {
    pub(super) fn new(parts: &InverterParts, celsius: f64, supply: &Supply) -> Self {
        let board = &parts.board;
        let winding = &parts.winding;
        let volts = supply.volts.get();
        let magnet = parts.volts_per_turn.get() / TAU;
        let open_switch = board.fault == BoardFault::OpenSwitch;
        let two_phases = parts.open_phase.is_some() || open_switch;
        let ohms = crate::motor::copper_at(celsius) * winding.resistance.get();
        let left = 1.0 - winding.shorted_share.get();
        let leak = winding.leak_to_shell.map_or(0.0, |ohms| 1.0 / ohms.get());
        let both_dead = parts.open_phase.is_some() && open_switch;
        let is_driving = !matches!(board.fault, BoardFault::Dead | BoardFault::NoSignal);
        Self {
            volts,
            line: supply.line(),
            house: supply.ahead_of_plug(),
            cord: supply.cord.get(),
            // Shorted turns give nothing in one of three.
            torque_constant: if two_phases {
                libm::sqrt(3.0) * magnet * (1.0 + left) / 2.0
            } else {
                (2.0 + left) * magnet
            },
            copper: if two_phases { 2.0 } else { 2.0 + left } * ohms,
            iron: parts.iron.get() / (TAU * 50.0 * TAU * 50.0) + shorted_loss(parts, ohms, magnet),
            standing: if board.fault == BoardFault::Dead {
                0.0
            } else {
                board.standing.get()
            },
            loss: board.loss.get(),
            power_factor: board.power_factor.get(),
            // Half the bus between pin and star, a sixth more by moving the star.
            most_volts: volts * board.bus_ratio.get() / libm::sqrt(6.0),
            most_current: board.most_current.get(),
            magnet,
            reactance: winding.reactance.get() / (TAU * 50.0),
            pole_pairs: f64::from(parts.pole_pairs),
            two_phases,
            is_able: is_driving
                && !winding.is_open
                && !both_dead
                && volts >= board.least_volts.get(),
            leakage: supply.leakage(if is_driving { leak } else { 0.0 }),
        }
    }

    pub(super) fn is_able(&self) -> bool {
        self.is_able
    }

    pub(super) fn most_torque(&self) -> f64 {
        self.torque_constant * self.most_current
    }

    /// With two windings the torque comes and goes with the rotor's angle, twice its mean at most.
    pub(super) fn torque_share(&self, angle: f64) -> f64 {
        if self.two_phases {
            let cosine = libm::cos(self.pole_pairs * angle);
            2.0 * cosine * cosine
        } else {
            1.0
        }
    }

    /// Whether the board's volts are enough for a torque at a speed in radians a second.
    pub(super) fn reaches(&self, speed: f64, torque: f64) -> bool {
        let current = torque / self.torque_constant;
        let own = self.magnet * speed + current * self.copper / 3.0;
        let across = current * self.reactance * speed;
        own * own + across * across <= self.most_volts * self.most_volts
    }

    /// Everything at a torque and a speed. `None` when the line can't carry it.
    pub(super) fn at(&self, torque: f64, speed: f64) -> Option<Solution> {
        let current = torque / self.torque_constant;
        let copper = current * current * self.copper;
        let iron = self.iron * speed * speed;
        let passed = torque * speed + copper + iron;
        // What the rotor gives back goes up in the board.
        let board = self.standing + self.loss * passed.max(0.0) + (-passed).max(0.0);
        let plug = (passed + board).max(0.0);
        let apparent = plug / self.power_factor;
        // (V − I·R)·I is what the board takes: the smaller of the two currents.
        let root = self.volts * self.volts - 4.0 * self.line * apparent;
        if root < 0.0 {
            return None;
        }
        let line = if apparent > 0.0 {
            2.0 * apparent / (self.volts + libm::sqrt(root))
        } else {
            0.0
        };
        let line_heat = line * line * self.line;
        Some(Solution {
            line: Phasor::real(line),
            main: Phasor::real(current),
            torque,
            taken: passed + board + line_heat,
            line_heat,
            gear_heat: board,
            main_heat: copper,
            iron_heat: iron,
            shaft: torque * speed,
            ..Solution::default()
        })
    }

    /// The board standing by.
    pub(super) fn standing_by(&self) -> Solution {
        self.at(0.0, 0.0).unwrap_or_default()
    }

    pub(super) fn plug_watts(&self, solution: &Solution) -> f64 {
        solution.taken - solution.line.square() * self.house + self.volts * self.leakage
    }

    /// A step's energies, and the heat that stays in the compressor.
    pub(super) fn book(
        &self,
        solution: &Solution,
        shaft: ShaftWork,
        gas_share: f64,
        seconds: f64,
    ) -> (Energy, Inflow) {
        let joules = |watts: f64| Joules::new(watts * seconds);
        let square = solution.line.square();
        let leak = joules(self.volts * self.leakage);
        let energy = Energy {
            taken: joules(solution.taken) + leak,
            house: joules(square * self.house),
            cord: joules(square * self.cord),
            gear: joules(solution.gear_heat),
            main_winding: joules(solution.main_heat),
            iron: joules(solution.iron_heat),
            friction: Joules::new(shaft.friction),
            gas: Joules::new(shaft.gas),
            kinetic: Joules::new(shaft.kinetic),
            leak,
            ..Energy::default()
        };
        let inflow = Inflow {
            main: solution.main_heat * seconds,
            start: 0.0,
            core: solution.iron_heat * seconds,
            shell: shaft.friction + shaft.gas * gas_share,
        };
        (energy, inflow)
    }
}

/// Watts for each square of a radian a second in turns shorted among themselves, which the magnet
/// drives through their own resistance.
fn shorted_loss(parts: &InverterParts, ohms: f64, magnet: f64) -> f64 {
    let share = parts.winding.shorted_share.get();
    // Volts and ohms both go with the share.
    magnet * magnet * share / ohms
}

#[cfg(test)]
mod tests {
    use super::*;
    use quantity::{Hertz, Ohms, Volts};

    #[test]
    fn what_is_taken_turns_up_as_heat_or_on_the_shaft() {
        let parts = InverterParts::example_230_volts();
        let mut supply = Supply::outlet(Volts::new(230.0), Hertz::new(50.0));
        supply.extension = Ohms::new(3.0);
        let drive = Drive::new(&parts, 60.0, &supply);
        for (torque, speed) in [(0.0, 0.0), (0.2, 300.0), (1.5, 40.0), (0.3, -20.0)] {
            let solution = drive.at(torque, speed).unwrap();
            let gone = solution.line_heat + solution.gear_heat + solution.main_heat;
            let gone = gone + solution.iron_heat + solution.shaft;
            let miss = (gone - solution.taken) / solution.taken;
            assert!(miss.abs() < 1e-12, "{miss}");
        }
    }

    #[test]
    fn a_line_too_thin_for_the_power_carries_none() {
        let mut supply = Supply::outlet(Volts::new(230.0), Hertz::new(50.0));
        supply.extension = Ohms::new(100.0);
        let drive = Drive::new(&InverterParts::example_230_volts(), 25.0, &supply);
        assert!(drive.at(0.5, 400.0).is_none());
        assert!(drive.reaches(300.0, 0.2) && !drive.reaches(1000.0, 0.2));
    }
}
