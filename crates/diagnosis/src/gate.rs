//! What may be powered, and what stands in front of it.
//!
//! Two grades of the ground check open two gates. At the plug, with nothing taken apart: looking
//! and listening on a protected outlet. At the pins: everything else that is powered. Whatever
//! stops, closes both.

use crate::checks::ground::{Grade, Ground};
use crate::checks::shell::Shell;
use crate::choice::choices;
use crate::{Caution, Level};

choices! {
    /// Why a gate is closed.
    pub enum Closed {
        /// A caution says stop.
        Stop = "stop",
        /// The ground check at the plug isn't done.
        PlugNotChecked = "plug-not-checked",
        /// The ground check at the plug isn't clear.
        PlugNotClear = "plug-not-clear",
        /// The ground check at the pins isn't done.
        PinsNotChecked = "pins-not-checked",
        /// The ground check at the pins isn't clear.
        PinsNotClear = "pins-not-clear",
    }
}

/// Whether something may be powered.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Gate {
    /// It may, on a protected outlet whose test button works.
    Open,
    /// It may not.
    Closed(Vec<Closed>),
}

/// What may be powered.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Gates {
    /// Plug it in, look and listen.
    pub look_and_listen: Gate,
    /// Trials with changed start gear, a clamp or a meter in the circuit.
    pub trials: Gate,
}

impl Gates {
    pub(crate) fn of(cautions: &[Caution], ground: &Ground, shell: &Shell) -> Self {
        let stops = cautions
            .iter()
            .any(|caution| caution.level() == Level::Stop)
            .then_some(Closed::Stop);
        let plug = match ground.grade() {
            Grade::Clear => None,
            Grade::Open => Some(Closed::PlugNotChecked),
            Grade::NotClear => Some(Closed::PlugNotClear),
        };
        let pins = match shell.grade() {
            Grade::Clear => None,
            Grade::Open => Some(Closed::PinsNotChecked),
            Grade::NotClear => Some(Closed::PinsNotClear),
        };
        // A leak found at the pins closes looking and listening too; not having looked doesn't.
        let leak = pins.filter(|reason| *reason == Closed::PinsNotClear);
        Self {
            look_and_listen: gate([stops, plug, leak]),
            trials: gate([stops, plug, pins]),
        }
    }
}

fn gate(reasons: [Option<Closed>; 3]) -> Gate {
    let reasons: Vec<Closed> = reasons.into_iter().flatten().collect();
    if reasons.is_empty() {
        Gate::Open
    } else {
        Gate::Closed(reasons)
    }
}
