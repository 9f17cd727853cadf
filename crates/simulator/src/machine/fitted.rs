//! What is put on a compressor's pins to see whether it starts.
//!
//! Answers: which start gear is that on this machine? Must never know: why it is tried.

use quantity::{Ohms, Volts};

use super::build::Machine;
use crate::appliance::Mains;
use crate::start_gear::{StartGear, Switch};

/// What is on the pins. A run capacitor stays with all of them.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Fitted {
    /// What was found there.
    Own,
    /// A plain start device that is known to be good.
    GoodDevice,
    /// A start kit of relay and capacitor besides that.
    Kit,
}

impl Machine {
    /// That gear, for this machine's mains.
    pub(super) fn gear(&self, fitted: Fitted) -> StartGear {
        let own = &self.compressor.parts().gear;
        let (ohms, microfarads, pick_up) = match self.blueprint.mains {
            Mains::V115F60 => (5.0, 100.0, 130.0),
            Mains::V230F50 => (15.0, 40.0, 260.0),
        };
        let good = StartGear::ptc(Ohms::new(ohms));
        let mut gear = match fitted {
            Fitted::Own => return own.clone(),
            Fitted::GoodDevice => good,
            Fitted::Kit => good.with_relay_kit(microfarads, Volts::new(pick_up)),
        };
        let kept = own.branches.iter();
        gear.branches
            .extend(kept.filter(|branch| matches!(branch.switch, Switch::Always)));
        gear
    }
}
