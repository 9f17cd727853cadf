//! What may still hold a charge, and the proof that it doesn't.

use job::Job;
use measure::SAFE_BELOW;
use quantity::{Farads, Observed, Volts};

use crate::choice::{answered, choices};
use crate::{Caution, Finding, Item};

choices! {
    /// What can hold a charge.
    pub enum Stores answers "stored-charge" / "stores" {
        /// Neither a capacitor nor a board with one.
        Nothing = "nothing",
        /// A start or run capacitor.
        Capacitor = "capacitor",
        /// An inverter's board.
        InverterBoard = "inverter-board",
    }
}

/// What is known of stored charge.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StoredCharge {
    /// What can hold one.
    pub stores: Option<Stores>,
    /// What is printed on the capacitor.
    pub marking: Option<Farads>,
    /// What was measured across it.
    pub left: Option<Volts>,
}

impl StoredCharge {
    /// What is asked, in order.
    pub(crate) fn items(job: &Job) -> Vec<Item> {
        match answered::<Stores>(job) {
            Some(Stores::Capacitor) => {
                vec![Item::Stores, Item::CapacitorMarking, Item::ChargeLeft]
            }
            Some(Stores::InverterBoard) => vec![Item::Stores, Item::ChargeLeft],
            Some(Stores::Nothing) | None => vec![Item::Stores],
        }
    }

    pub(crate) fn of(job: &Job) -> Self {
        let value = |observed| match observed {
            Observed::Value(value) => Some(value),
            Observed::OverRange { .. } => None,
        };
        Self {
            stores: answered(job),
            marking: Item::CapacitorMarking
                .farads(job)
                .and_then(|typed| match typed.observed {
                    Observed::Value(value) => Some(value),
                    Observed::OverRange { .. } => None,
                }),
            left: Item::ChargeLeft
                .volts(job)
                .and_then(|typed| value(typed.observed)),
        }
    }

    /// Whether what can hold a charge was proved not to.
    #[must_use]
    pub fn is_proved_safe(&self) -> bool {
        match self.stores {
            Some(Stores::Nothing) => true,
            Some(Stores::Capacitor | Stores::InverterBoard) => self
                .left
                .is_some_and(|left| left.get().abs() < SAFE_BELOW.get()),
            None => false,
        }
    }

    pub(crate) fn findings(&self) -> Option<Finding> {
        let left = self.left?;
        Some(Finding::ChargeLeft {
            left,
            safe: self.is_proved_safe(),
            marking: self.marking,
        })
    }

    pub(crate) fn cautions(&self) -> Option<Caution> {
        if self.is_proved_safe() {
            return None;
        }
        match self.stores? {
            Stores::Capacitor => Some(Caution::ChargedCapacitor),
            Stores::InverterBoard => Some(Caution::ChargedBoard),
            Stores::Nothing => None,
        }
    }
}
