//! What can be wrong with a circuit, as a change of its parts.
//!
//! Answers: which parameter differs in a broken one, and by how much? Must never know: what
//! follows from it.

use super::Circuit;
use quantity::{Kilograms, Ratio};

/// What is wrong. Its severity runs from 0, sound, to 1, as bad as it gets.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CircuitFault {
    /// Refrigerant has leaked out: all of it at 1.
    Leak,
    /// Too much was filled in: twice as much at 1.
    Overcharge,
    /// Air in it: 2 g at 1.
    Air,
    /// The capillary is narrowed: blocked at 1.
    NarrowCapillary,
    /// The drier is clogged: blocked at 1.
    CloggedDrier,
    /// Water in it that freezes at the capillary's end.
    Moisture,
    /// Valves leak back.
    LeakingValves,
    /// The cylinder is worn: nothing is delivered at 1.
    WornPump,
    /// The suction line has come off the capillary: they exchange nothing at 1.
    LooseExchanger,
}

impl CircuitFault {
    /// Each of them.
    pub const ALL: [Self; 9] = [
        Self::Leak,
        Self::Overcharge,
        Self::Air,
        Self::NarrowCapillary,
        Self::CloggedDrier,
        Self::Moisture,
        Self::LeakingValves,
        Self::WornPump,
        Self::LooseExchanger,
    ];

    /// The circuit with this fault. A severity outside of 0 … 1 counts as the nearest of these.
    ///
    /// ```
    /// use quantity::{Ratio, Seconds};
    /// use simulator::Refrigerant;
    /// use simulator::appliance::{Appliance, Kind, Mains, Parts};
    /// use simulator::circuit::CircuitFault;
    /// let mut parts = Parts::example(Kind::ChestFreezer, Mains::V230F50, Refrigerant::R600a)?;
    /// parts.circuit = CircuitFault::Leak.in_circuit(parts.circuit, Ratio::new(0.6));
    /// let mut leaky = Appliance::new(parts)?;
    /// leaky.advance(Seconds::new(10_000.0))?;
    /// // Frost near the inlet only.
    /// assert!(leaky.observe().wetted < Ratio::new(0.4));
    /// # Ok::<(), simulator::ParameterError>(())
    /// ```
    #[must_use]
    pub fn in_circuit(self, sound: Circuit, severity: Ratio) -> Circuit {
        let severity = severity.get().clamp(0.0, 1.0);
        let left = |of: Ratio| Ratio::new(of.get() * (1.0 - severity));
        let mut it = sound;
        match self {
            Self::Leak => it.charge = it.charge * (1.0 - severity),
            Self::Overcharge => it.charge = it.charge * (1.0 + severity),
            Self::Air => it.air = it.air + Kilograms::new(2e-3 * severity),
            Self::NarrowCapillary => it.capillary.free = left(it.capillary.free),
            Self::CloggedDrier => it.capillary.drier_free = left(it.capillary.drier_free),
            Self::Moisture => it.moisture = Ratio::new(it.moisture.get().max(severity)),
            // At 1 as much runs back as ten sound capillaries would pass.
            Self::LeakingValves => it.pump.back_leak += 10.0 * severity * it.capillary.opening,
            Self::WornPump => it.pump.tightness = left(it.pump.tightness),
            Self::LooseExchanger => {
                it.capillary.suction_exchange = left(it.capillary.suction_exchange);
            }
        }
        it
    }
}
