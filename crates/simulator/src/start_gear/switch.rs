//! What switches a branch of the start gear.

use quantity::{Amps, Ohms, Seconds, Volts};

use super::Ptc;
use crate::ParameterError;
use crate::error::within;

/// A pair of contacts, and whether it still does what it is told.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Contact {
    /// Closes and opens.
    Sound,
    /// Burnt or bent: never makes contact.
    NeverCloses,
    /// Never opens again.
    Welded,
}

impl Contact {
    pub(super) fn is_closed(self, told: bool) -> bool {
        match self {
            Self::Sound => told,
            Self::NeverCloses => false,
            Self::Welded => true,
        }
    }
}

/// A relay whose coil carries the main winding's current; open at rest.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CurrentRelay {
    /// Resistance of the coil.
    pub coil: Ohms,
    /// Closes above this current in the main winding.
    pub pick_up: Amps,
    /// Opens below it.
    pub drop_out: Amps,
    /// Its contact.
    pub contact: Contact,
}

/// A relay whose coil lies across the start winding; closed at rest. What its coil draws is left
/// out: it has thousands of ohms.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PotentialRelay {
    /// Opens above these volts across the start winding.
    pub pick_up: Volts,
    /// Closes below them.
    pub drop_out: Volts,
    /// Its contact.
    pub contact: Contact,
}

/// A triac with a timer, ready again a while after the current is gone.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Electronic {
    /// How long it lets the start winding in.
    pub closed_for: Seconds,
    /// How long it must be without current before it does so again.
    pub ready_after: Seconds,
    /// Resistance while it lets current through, its volt or so drop taken in.
    pub resistance: Ohms,
    /// Its triac.
    pub contact: Contact,
}

/// What a branch is switched by.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Switch {
    /// Nothing: a run capacitor.
    Always,
    /// A PTC.
    Ptc(Ptc),
    /// A current relay.
    CurrentRelay(CurrentRelay),
    /// A potential relay.
    PotentialRelay(PotentialRelay),
    /// An electronic starter.
    Electronic(Electronic),
}

impl Switch {
    pub(super) fn check(&self) -> Result<(), ParameterError> {
        match self {
            Self::Always => Ok(()),
            Self::Ptc(ptc) => ptc.check(),
            Self::CurrentRelay(relay) => {
                within("gear.current_relay.coil", relay.coil.get(), 0.001, 50.0)?;
                let most = relay.pick_up.get();
                within("gear.current_relay.pick_up", most, 0.1, 200.0)?;
                let drop = relay.drop_out.get();
                within("gear.current_relay.drop_out", drop, 0.01, most)
            }
            Self::PotentialRelay(relay) => {
                let most = relay.pick_up.get();
                within("gear.potential_relay.pick_up", most, 10.0, 1000.0)?;
                let drop = relay.drop_out.get();
                within("gear.potential_relay.drop_out", drop, 1.0, most)
            }
            Self::Electronic(starter) => {
                let closed = starter.closed_for.get();
                within("gear.electronic.closed_for", closed, 0.05, 10.0)?;
                let ready = starter.ready_after.get();
                within("gear.electronic.ready_after", ready, 0.0, 3600.0)?;
                within(
                    "gear.electronic.resistance",
                    starter.resistance.get(),
                    0.01,
                    100.0,
                )
            }
        }
    }

    /// Resistance that it puts in series with the main winding.
    pub(super) fn coil(&self) -> f64 {
        match self {
            Self::CurrentRelay(relay) => relay.coil.get(),
            _ => 0.0,
        }
    }

    /// Resistance between its own ends; `None` when it is open. `told` is whether contacts are
    /// told to be closed; `pellet` what a PTC has.
    pub(super) fn ohms(&self, told: bool, pellet: Option<f64>) -> Option<f64> {
        /// Contacts and leads.
        const CLOSED: f64 = 0.05;
        let closed = |contact: Contact, ohms: f64| contact.is_closed(told).then_some(ohms);
        match self {
            Self::Always => Some(CLOSED),
            Self::Ptc(_) => pellet,
            Self::CurrentRelay(relay) => closed(relay.contact, CLOSED),
            Self::PotentialRelay(relay) => closed(relay.contact, CLOSED),
            Self::Electronic(starter) => closed(starter.contact, starter.resistance.get()),
        }
    }

    /// Whether contacts are closed with no current anywhere, as a meter finds them.
    pub(super) fn closed_at_rest(&self) -> bool {
        matches!(self, Self::Always | Self::PotentialRelay(_))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_contact_does_what_its_fault_lets_it() {
        assert!(Contact::Sound.is_closed(true) && !Contact::Sound.is_closed(false));
        assert!(!Contact::NeverCloses.is_closed(true));
        assert!(Contact::Welded.is_closed(false));
    }

    #[test]
    fn a_relay_that_drops_out_above_its_pick_up_is_refused() {
        let relay = Switch::CurrentRelay(CurrentRelay {
            coil: Ohms::new(0.3),
            pick_up: Amps::new(5.0),
            drop_out: Amps::new(6.0),
            contact: Contact::Sound,
        });
        assert_eq!(
            relay.check().unwrap_err().parameter,
            "gear.current_relay.drop_out"
        );
    }
}
