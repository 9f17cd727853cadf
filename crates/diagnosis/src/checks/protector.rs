//! The overload protector, off the compressor.

use job::Job;
use measure::Protector;

use crate::choice::{answered, choices};
use crate::{Basis, Caution, Finding, Item, Link, LinkState};

choices! {
    /// Whether the protector is a part of its own.
    pub enum ProtectorKind answers "protector" / "protector-kind" {
        /// A small disc or box on or at the compressor.
        External = "external",
        /// None to be seen: it is inside the compressor, or an electronic board does it.
        Inside = "inside",
    }
}

choices! {
    /// Whether it has rested.
    pub enum Warmth answers "protector" / "protector-warmth" {
        /// Half an hour or more without power.
        Rested = "rested",
        /// It was powered within half an hour, or is still warm.
        Warm = "warm",
    }
}

/// What is known of the protector.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ProtectorKnown {
    /// Whether it is a part of its own.
    pub kind: Option<ProtectorKind>,
    /// Whether it has rested.
    pub warmth: Option<Warmth>,
    /// What its reading says.
    pub state: Option<Protector>,
}

impl ProtectorKnown {
    /// What is asked, in order.
    pub(crate) fn items(job: &Job) -> Vec<Item> {
        match answered::<ProtectorKind>(job) {
            Some(ProtectorKind::Inside) => vec![Item::ProtectorKind],
            _ => vec![
                Item::ProtectorKind,
                Item::ProtectorWarmth,
                Item::ProtectorReading,
            ],
        }
    }

    pub(crate) fn of(job: &Job, leads_zeroed: bool) -> Self {
        let kind = answered(job);
        let state = Item::ProtectorReading
            .ohms(job)
            .filter(|_| kind != Some(ProtectorKind::Inside))
            .map(|(typed, reading)| measure::protector(typed, reading.accuracy, leads_zeroed));
        Self {
            kind,
            warmth: answered(job),
            state,
        }
    }

    /// Open for good only when it has rested.
    fn open_for_good(&self) -> bool {
        self.state == Some(Protector::Open) && self.warmth == Some(Warmth::Rested)
    }

    pub(crate) fn findings(&self) -> Option<Finding> {
        self.state.map(|state| Finding::Protector {
            state,
            rested: self.warmth == Some(Warmth::Rested),
        })
    }

    pub(crate) fn cautions(&self) -> Option<Caution> {
        self.state
            .filter(|state| *state != Protector::Closed)
            .map(|_| Caution::NeverBridgeTheProtector)
    }

    pub(crate) fn link(&self) -> Option<(Link, LinkState)> {
        let state = match self.state? {
            Protector::Closed => return None,
            Protector::Open if self.open_for_good() => LinkState::Broken(Basis::Measured),
            Protector::Open | Protector::Resistive { .. } => LinkState::Doubtful(Basis::Measured),
        };
        Some((Link::Circuit, state))
    }
}
