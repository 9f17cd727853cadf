//! From each pin of the compressor to its shell.

use job::Job;
use measure::windings::Pin;
use measure::{Insulation, Tester};

use super::ground::{Grade, LeakPath, Leakage, TesterChoice, cautions_about, insulation};
use super::machine::MainsChoice;
use crate::choice::answered;
use crate::{Basis, Caution, Finding, Item, Link, LinkState};

/// What was measured from the pins to the shell.
#[derive(Debug, Clone, PartialEq)]
pub struct Shell {
    /// What was measured with.
    pub tester: Tester,
    /// The pins that were measured.
    pub pins: Vec<(Pin, Insulation)>,
}

impl Shell {
    /// What is asked, in order.
    pub(crate) const ITEMS: [Item; 3] = [
        Item::PinOneToShell,
        Item::PinTwoToShell,
        Item::PinThreeToShell,
    ];

    pub(crate) fn of(job: &Job) -> Self {
        let tester = answered::<TesterChoice>(job).map_or(Tester::Ohmmeter, Into::into);
        let pins = Pin::ALL.into_iter().zip(Self::ITEMS);
        Self {
            tester,
            pins: pins
                .filter_map(|(pin, item)| Some((pin, insulation(job, item, tester)?)))
                .collect(),
        }
    }

    /// What the pin-level check allows. One pin that leaks is enough to stop; whole windings
    /// join all three, but only all three readings make it clear.
    #[must_use]
    pub fn grade(&self) -> Grade {
        let is = |wanted: fn(&Insulation) -> bool| {
            self.pins
                .iter()
                .filter(|(_, proved)| wanted(proved))
                .count()
        };
        let bad = |proved: &Insulation| {
            matches!(
                proved,
                Insulation::Leaks { .. } | Insulation::Doubtful { .. }
            )
        };
        if is(bad) > 0 {
            Grade::NotClear
        } else if is(|proved| matches!(proved, Insulation::Clear { .. })) == 3 {
            Grade::Clear
        } else {
            Grade::Open
        }
    }

    pub(crate) fn leaks(&self) -> bool {
        self.pins
            .iter()
            .any(|(_, proved)| matches!(proved, Insulation::Leaks { .. }))
    }

    pub(crate) fn findings(&self, mains: Option<MainsChoice>) -> Vec<Finding> {
        let tester = self.tester;
        let finding = |path, proved| Finding::Insulation {
            path,
            proved,
            tester,
            leakage: Leakage::of(proved, mains),
        };
        match self.pins.as_slice() {
            // Windings join the pins, so most often all three say the same: once is enough.
            [(_, one), (_, two), (_, three)] if one == two && two == three => {
                vec![finding(LeakPath::PinsToShell, *one)]
            }
            pins => pins
                .iter()
                .map(|&(pin, proved)| finding(LeakPath::PinToShell(pin), proved))
                .collect(),
        }
    }

    pub(crate) fn cautions(&self) -> Vec<Caution> {
        cautions_about(self.pins.iter().map(|(_, proved)| *proved))
    }

    pub(crate) fn link(&self) -> Option<(Link, LinkState)> {
        let state = match self.grade() {
            Grade::NotClear if self.leaks() => LinkState::Broken(Basis::Measured),
            Grade::NotClear => LinkState::Doubtful(Basis::Measured),
            Grade::Clear | Grade::Open => return None,
        };
        Some((Link::Circuit, state))
    }
}
