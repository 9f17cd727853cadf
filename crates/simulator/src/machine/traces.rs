//! What stands apart from any curve: open contacts, settings, and marks that a fault leaves.
//!
//! Answers: what does it leave to be seen? Must never know: who looks.
//!
//! How often a leak leaves a mark is this crate's own judgement: half of them are hidden in foam
//! and walls, the others at a joint, a rusted foot of the circuit, or a hole that someone made.

/// One of them.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Trace {
    /// No current gets into the machine.
    CordOpen,
    /// A connector at the compressor is open, and black.
    ConnectorOpen,
    /// The dial or the panel is at off.
    SetOff,
    /// The board never calls.
    BoardDead,
    /// The timer stands in its turn for the heater.
    StandsInDefrost,
    /// The start device rattles when it is shaken.
    StartDeviceRattles,
    /// Oil at a joint.
    OilAtJoint,
    /// Oil and rust at the foot.
    OilAtFoot,
    /// A hole in the evaporator's wall.
    Hole,
    /// A leak that no one can see.
    HiddenLeak,
}

impl Trace {
    /// What a leak leaves, by a number from 0 to 1.
    pub(super) fn of_leak(draw: f64) -> Self {
        match draw {
            draw if draw < 0.5 => Self::HiddenLeak,
            draw if draw < 0.75 => Self::OilAtJoint,
            draw if draw < 0.9 => Self::OilAtFoot,
            _ => Self::Hole,
        }
    }
}
