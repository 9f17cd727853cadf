//! A compressor with three like windings, a magnet in its rotor, and a board that drives it.
//!
//! Answers: does it come up to the speed asked for, what does it draw at the plug, and what does a
//! meter find on its pins?
//!
//! Must never know: why a speed is asked for.
//!
//! Currents are sinusoids in step with the magnet's voltage, by their effective values; the board
//! sees to that. The board's own switching is left out: it has a standing loss and a share.

mod advance;
mod drive;
mod start;

use core::f64::consts::TAU;

use quantity::{Amps, Celsius, Hertz, Ohms, Ratio, Seconds, Volts, Watts};

use crate::ParameterError;
use crate::compressor::{Heat, Nodes, Pair};
use crate::error::within;
use crate::motor::Winding;
use crate::rotor::Rotor;
use crate::supply::Supply;

/// What is wrong with the board.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum BoardFault {
    /// Nothing.
    Sound,
    /// It is dead: a fuse, its rectifier or its own supply.
    Dead,
    /// The control's signal doesn't reach it: it stands by and never drives.
    NoSignal,
    /// A switch of one winding never conducts.
    OpenSwitch,
}

/// The board that makes three voltages of one.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Board {
    /// What is wrong with it.
    pub fault: BoardFault,
    /// Direct volts behind the rectifier for each effective volt of the line: 1.41, or 2.83 with a
    /// doubler.
    pub bus_ratio: Ratio,
    /// Below this line voltage it doesn't drive.
    pub least_volts: Volts,
    /// The most current that it puts into a winding.
    pub most_current: Amps,
    /// What it takes while it stands by or drives.
    pub standing: Watts,
    /// What it loses of the power that it passes on.
    pub loss: Ratio,
    /// Real over apparent power at its rectifier.
    pub power_factor: Ratio,
    /// How long it waits after a start that failed.
    pub pause: Seconds,
}

/// Everything that such a compressor is built of.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct InverterParts {
    /// One of the three like windings, from its pin to where they meet.
    pub winding: Winding,
    /// Which of the three is open, if one is: 0, 1 or 2. [`Winding::is_open`] opens all.
    pub open_phase: Option<u8>,
    /// Effective volts of the magnet in a winding at one turn a second.
    pub volts_per_turn: Volts,
    /// Pairs of poles.
    pub pole_pairs: u8,
    /// What the iron takes at 50 turns a second; it follows the square of the speed.
    pub iron: Watts,
    /// The board.
    pub board: Board,
    /// What turns.
    pub rotor: Rotor,
    /// Heat capacities and paths; the windings together are the main winding.
    pub heat: Heat,
}

impl InverterParts {
    /// For 115 V and 60 Hz, with a doubler. Values of the usual size (judgement), nobody's data.
    #[must_use]
    pub const fn example_115_volts() -> Self {
        let mut parts = Self::example_230_volts();
        parts.board.bus_ratio = Ratio::new(2.83);
        parts.board.least_volts = Volts::new(80.0);
        parts
    }

    /// For 230 V and 50 Hz.
    #[must_use]
    pub const fn example_230_volts() -> Self {
        Self {
            winding: Winding::sound(Ohms::new(6.0), Ohms::new(9.0)),
            open_phase: None,
            volts_per_turn: Volts::new(1.26),
            pole_pairs: 2,
            iron: Watts::new(4.0),
            board: Board {
                fault: BoardFault::Sound,
                bus_ratio: Ratio::new(1.414),
                least_volts: Volts::new(160.0),
                most_current: Amps::new(3.0),
                standing: Watts::new(2.0),
                loss: Ratio::new(0.04),
                power_factor: Ratio::new(0.6),
                pause: Seconds::new(10.0),
            },
            rotor: Rotor::example(),
            heat: Heat::example(),
        }
    }

    /// Refuses what no such compressor has, by the parameter's name.
    ///
    /// # Errors
    /// [`ParameterError`] names the first parameter out of its bounds.
    pub fn check(&self) -> Result<(), ParameterError> {
        self.winding.check([
            "inverter.winding.resistance",
            "inverter.winding.reactance",
            "inverter.winding.shorted_share",
            "inverter.winding.leak_to_shell",
        ])?;
        let phase = f64::from(self.open_phase.unwrap_or(0));
        within("inverter.open_phase", phase, 0.0, 2.0)?;
        let magnet = self.volts_per_turn.get();
        within("inverter.volts_per_turn", magnet, 0.05, 50.0)?;
        within("inverter.pole_pairs", f64::from(self.pole_pairs), 1.0, 8.0)?;
        within("inverter.iron", self.iron.get(), 0.0, 1000.0)?;
        let board = &self.board;
        within("inverter.board.bus_ratio", board.bus_ratio.get(), 1.0, 3.0)?;
        let least = board.least_volts.get();
        within("inverter.board.least_volts", least, 10.0, 300.0)?;
        let most = board.most_current.get();
        within("inverter.board.most_current", most, 0.05, 50.0)?;
        within("inverter.board.standing", board.standing.get(), 0.0, 100.0)?;
        within("inverter.board.loss", board.loss.get(), 0.0, 1.0)?;
        let factor = board.power_factor.get();
        within("inverter.board.power_factor", factor, 0.2, 1.0)?;
        within("inverter.board.pause", board.pause.get(), 0.1, 3600.0)?;
        self.rotor.check()?;
        self.heat.check()
    }
}

/// Such a compressor with its temperatures and motion.
#[derive(Debug, Clone, PartialEq)]
pub struct InverterCompressor {
    parts: InverterParts,
    nodes: Nodes,
    /// Radians a second.
    speed: f64,
    /// Seconds until the board tries again.
    waits: f64,
    /// Seconds by which it is ahead of its caller.
    ahead: f64,
    guard_is_tripped: bool,
}

impl InverterCompressor {
    /// At rest at 25 °C throughout.
    ///
    /// # Errors
    /// [`ParameterError`] names the first parameter out of its bounds.
    pub fn new(parts: InverterParts) -> Result<Self, ParameterError> {
        parts.check()?;
        Ok(Self {
            parts,
            nodes: Nodes::all(25.0),
            speed: 0.0,
            waits: 0.0,
            ahead: 0.0,
            guard_is_tripped: false,
        })
    }

    /// The same compressor after a long rest in a room.
    ///
    /// # Errors
    /// [`ParameterError`] for a room that is no room.
    pub fn rested(mut self, room: Celsius) -> Result<Self, ParameterError> {
        within("room", room.get(), -40.0, 70.0)?;
        self.nodes = Nodes::all(room.get());
        (self.speed, self.waits, self.ahead) = (0.0, 0.0, 0.0);
        self.guard_is_tripped = false;
        Ok(self)
    }

    /// Board and windings as they are now, cut off where a ground-fault device has seen to that.
    /// Its delay is left out.
    fn drive(&mut self, supply: &Supply) -> drive::Drive {
        let live = drive::Drive::new(&self.parts, self.nodes.main, supply);
        self.guard_is_tripped |= supply.guard_trips_after(live.leakage).is_some();
        if !self.guard_is_tripped {
            return live;
        }
        let mut cut = *supply;
        cut.volts = Volts::new(0.0);
        let mut parts = self.parts;
        parts.board.fault = BoardFault::Dead;
        drive::Drive::new(&parts, self.nodes.main, &cut)
    }

    /// Turns a second; nought when it stands.
    #[must_use]
    pub fn speed(&self) -> Hertz {
        Hertz::new(self.speed / TAU)
    }

    /// The shell's temperature.
    #[must_use]
    pub fn shell(&self) -> Celsius {
        Celsius::new(self.nodes.shell)
    }

    /// Whether a ground-fault device has cut the supply off.
    #[must_use]
    pub fn guard_is_tripped(&self) -> bool {
        self.guard_is_tripped
    }

    /// Resets the ground-fault device.
    pub fn reset_guard(&mut self) {
        self.guard_is_tripped = false;
    }

    /// The ohms from the pins to the bare shell; `None` for sound insulation.
    #[must_use]
    pub const fn ohms_to_shell(&self) -> Option<Ohms> {
        self.parts.winding.leak_to_shell
    }

    /// The ohms between two of the three pins with the plug off; `None` for open. The pins are
    /// named as on other compressors, though here none differs from the others.
    ///
    /// ```
    /// use simulator::compressor::Pair;
    /// use simulator::inverter::{InverterCompressor, InverterParts};
    /// let compressor = InverterCompressor::new(InverterParts::example_230_volts())?;
    /// let one = compressor.winding_ohms(Pair::CommonRun);
    /// assert_eq!(one, compressor.winding_ohms(Pair::StartRun));
    /// # Ok::<(), simulator::ParameterError>(())
    /// ```
    #[must_use]
    pub fn winding_ohms(&self, pair: Pair) -> Option<Ohms> {
        let (one, other) = match pair {
            Pair::CommonRun => (0, 1),
            Pair::CommonStart => (0, 2),
            Pair::StartRun => (1, 2),
        };
        let here = Celsius::new(self.nodes.main);
        let whole = Ohms::new(self.parts.winding.resistance.get());
        let sound = Winding {
            shorted_share: Ratio::new(0.0),
            resistance: whole,
            ..self.parts.winding
        };
        // Shorted turns are in the first winding.
        let ohms = |phase: u8| {
            let winding = if phase == 0 {
                self.parts.winding
            } else {
                sound
            };
            let is_open = self.parts.open_phase == Some(phase);
            winding.metered(here).filter(|_| !is_open)
        };
        Some(ohms(one)? + ohms(other)?)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_open_phase_opens_two_pairs() {
        let mut parts = InverterParts::example_230_volts();
        parts.open_phase = Some(1);
        let compressor = InverterCompressor::new(parts).unwrap();
        assert_eq!(compressor.winding_ohms(Pair::CommonRun), None);
        assert_eq!(compressor.winding_ohms(Pair::StartRun), None);
        let left = compressor.winding_ohms(Pair::CommonStart);
        assert_eq!(left, Some(Ohms::new(12.0)));
    }

    #[test]
    fn what_no_board_has_is_refused_by_name() {
        let mut parts = InverterParts::example_115_volts();
        assert!(parts.check().is_ok());
        parts.board.power_factor = Ratio::new(0.0);
        let error = InverterCompressor::new(parts).unwrap_err();
        assert_eq!(error.parameter, "inverter.board.power_factor");
    }
}
