//! How a compressor warms and cools: four bodies and the paths between them.
//!
//! Windings touch the core, the core the shell, the shell the room; suction gas cools the core.

use quantity::{JoulesPerKelvin, Ratio, WattsPerKelvin};

use crate::ParameterError;
use crate::error::within;

/// Heat capacities and paths of heat.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Heat {
    /// Heat capacity of the main winding.
    pub main_winding: JoulesPerKelvin,
    /// Heat capacity of the start winding.
    pub start_winding: JoulesPerKelvin,
    /// Heat capacity of iron and rotor.
    pub core: JoulesPerKelvin,
    /// Heat capacity of shell, pump and oil.
    pub shell: JoulesPerKelvin,
    /// From the main winding to the core.
    pub main_to_core: WattsPerKelvin,
    /// From the start winding to the core.
    pub start_to_core: WattsPerKelvin,
    /// From the core to the shell, through gas and oil.
    pub core_to_shell: WattsPerKelvin,
    /// From the shell to the room.
    pub shell_to_room: WattsPerKelvin,
    /// The share of the gas's work that stays in the shell, by way of the hot discharge tube.
    pub gas_share: Ratio,
}

impl Heat {
    /// Of a shell of about 8 kg with some 0.5 kg of copper. Paths are judgement: they put the shell
    /// some 30 K and the windings some 50 K above the room, as usual for such machines.
    #[must_use]
    pub const fn example() -> Self {
        Self {
            main_winding: JoulesPerKelvin::new(135.0),
            start_winding: JoulesPerKelvin::new(50.0),
            core: JoulesPerKelvin::new(1500.0),
            shell: JoulesPerKelvin::new(2500.0),
            main_to_core: WattsPerKelvin::new(4.0),
            start_to_core: WattsPerKelvin::new(2.0),
            core_to_shell: WattsPerKelvin::new(3.0),
            shell_to_room: WattsPerKelvin::new(1.6),
            gas_share: Ratio::new(0.3),
        }
    }

    pub(crate) fn check(&self) -> Result<(), ParameterError> {
        let capacity = |name, given: JoulesPerKelvin| within(name, given.get(), 1.0, 1e6);
        capacity("heat.main_winding", self.main_winding)?;
        capacity("heat.start_winding", self.start_winding)?;
        capacity("heat.core", self.core)?;
        capacity("heat.shell", self.shell)?;
        let path = |name, given: WattsPerKelvin| within(name, given.get(), 0.01, 1000.0);
        path("heat.main_to_core", self.main_to_core)?;
        path("heat.start_to_core", self.start_to_core)?;
        path("heat.core_to_shell", self.core_to_shell)?;
        path("heat.shell_to_room", self.shell_to_room)?;
        within("heat.gas_share", self.gas_share.get(), 0.0, 1.0)
    }

    /// Heat above a level of 0 °C throughout.
    #[cfg(test)]
    fn stored(&self, nodes: &Nodes) -> f64 {
        self.main_winding.get() * nodes.main
            + self.start_winding.get() * nodes.start
            + self.core.get() * nodes.core
            + self.shell.get() * nodes.shell
    }
}

/// Temperatures in °C.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Nodes {
    pub(crate) main: f64,
    pub(crate) start: f64,
    pub(crate) core: f64,
    pub(crate) shell: f64,
}

/// Heat that bodies take in, in joules.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(crate) struct Inflow {
    pub(crate) main: f64,
    pub(crate) start: f64,
    pub(crate) core: f64,
    pub(crate) shell: f64,
}

impl Inflow {
    pub(crate) fn add(&mut self, other: &Self) {
        self.main += other.main;
        self.start += other.start;
        self.core += other.core;
        self.shell += other.shell;
    }
}

impl Nodes {
    pub(crate) fn all(celsius: f64) -> Self {
        Self {
            main: celsius,
            start: celsius,
            core: celsius,
            shell: celsius,
        }
    }

    /// One step with the end's temperatures carrying the heat (backward Euler). Every path leads
    /// to the core, so that one unknown is left. Returns what went to the room and into the gas.
    pub(crate) fn advance(
        &mut self,
        heat: &Heat,
        inflow: &Inflow,
        (room, gas): (f64, f64),
        seconds: f64,
    ) -> f64 {
        let rate = |capacity: JoulesPerKelvin| capacity.get() / seconds;
        let (main, start) = (heat.main_to_core.get(), heat.start_to_core.get());
        let (shell, out) = (heat.core_to_shell.get(), heat.shell_to_room.get());
        let side = |rate: f64, from: f64, joules: f64, path: f64, out: f64| {
            let under = rate + path + out;
            let above = rate * from + joules / seconds + out * room;
            (under, above)
        };
        let m = side(rate(heat.main_winding), self.main, inflow.main, main, 0.0);
        let s = side(
            rate(heat.start_winding),
            self.start,
            inflow.start,
            start,
            0.0,
        );
        let h = side(rate(heat.shell), self.shell, inflow.shell, shell, out);
        let own = rate(heat.core);
        let mut under = own + gas;
        let mut above = own * self.core + inflow.core / seconds + gas * room;
        for (path, (side_under, side_above)) in [(main, m), (start, s), (shell, h)] {
            under += path - path * path / side_under;
            above += path * side_above / side_under;
        }
        self.core = above / under;
        self.main = (m.1 + main * self.core) / m.0;
        self.start = (s.1 + start * self.core) / s.0;
        self.shell = (h.1 + shell * self.core) / h.0;
        seconds * (out * (self.shell - room) + gas * (self.core - room))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_comes_in_stays_or_goes_to_the_room() {
        let heat = Heat::example();
        let mut nodes = Nodes::all(30.0);
        nodes.main = 90.0;
        let inflow = Inflow {
            main: 400.0,
            start: 30.0,
            core: 100.0,
            shell: 50.0,
        };
        for seconds in [1e-3, 0.1, 10.0, 1000.0] {
            let before = heat.stored(&nodes);
            let lost = nodes.advance(&heat, &inflow, (22.0, 0.4), seconds);
            let miss = heat.stored(&nodes) + lost - before - 580.0;
            assert!(miss.abs() < 1e-7, "{miss}");
        }
    }

    #[test]
    fn without_heat_everything_comes_to_the_rooms_temperature() {
        let mut nodes = Nodes::all(80.0);
        let none = Inflow::default();
        for _ in 0..100 {
            nodes.advance(&Heat::example(), &none, (20.0, 0.0), 1000.0);
        }
        assert!((nodes.main - 20.0).abs() < 1e-3 && (nodes.shell - 20.0).abs() < 1e-3);
    }
}
