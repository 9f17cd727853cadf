//! What the entries about the windings mean: findings, cautions, and the Circuit link.

use measure::windings::{Explanation, Foreseen, Pair, Pin, Role};

use quantity::{Ohms, Uncertain};

use super::{PinShape, TOLD, WindingsKnown};
use crate::{Basis, Caution, Link, LinkState, WindingsFinding};

impl WindingsKnown {
    pub(crate) fn findings(&self) -> Vec<WindingsFinding> {
        let mut findings = Vec::new();
        match (self.read(), self.numbers()) {
            (0, _) => {}
            (1, 1) => findings.extend(self.joined()),
            (3, 0) => findings.push(WindingsFinding::NothingReads),
            (3, _) => findings.extend(self.all_read()),
            _ => findings.extend(
                self.windings
                    .forecast
                    .clone()
                    .map(WindingsFinding::Foretold),
            ),
        }
        if self.leads_first() {
            findings.push(WindingsFinding::NearZero);
        }
        findings.extend(self.wiring_disagrees());
        findings.extend(self.unusual_order());
        findings
    }

    pub(crate) fn cautions(&self) -> Vec<Caution> {
        let mut cautions = Vec::new();
        if self.is_equal() {
            cautions.push(Caution::InverterPins);
        }
        let fault = self.fault().map(|(explanation, _)| explanation);
        if matches!(
            fault,
            Some(Explanation::StartOpen | Explanation::RunOpen | Explanation::ShortedTurns)
        ) {
            cautions.push(Caution::DamagedWindings);
        }
        if self.read() < 3 && !self.all_given_up() {
            cautions.push(Caution::BeforeThePins);
        }
        cautions
    }

    pub(crate) fn link(&self) -> Option<(Link, LinkState)> {
        if self.read() < 3 {
            return None;
        }
        let state = match self.fault() {
            None if self.is_whole() => LinkState::SoundSoFar(Basis::Measured),
            Some((Explanation::EqualWindings, _)) => LinkState::SoundSoFar(Basis::Measured),
            Some((
                Explanation::StartOpen | Explanation::RunOpen | Explanation::ShortedTurns,
                p,
            )) if p >= 0.9 => LinkState::Broken(Basis::Measured),
            Some((
                Explanation::ProtectorOpen
                | Explanation::CommonLeadOpen
                | Explanation::StartOpen
                | Explanation::RunOpen
                | Explanation::ShortedTurns,
                _,
            )) => LinkState::Doubtful(Basis::Measured),
            _ => return None,
        };
        Some((Link::Circuit, state))
    }

    fn joined(&self) -> Option<WindingsFinding> {
        let number = self.inspection.numbers().first().copied()?;
        Some(WindingsFinding::Joined(number.pair))
    }

    fn all_read(&self) -> Vec<WindingsFinding> {
        let mut findings = Vec::new();
        if let Some((explanation, probability)) = self.fault() {
            if explanation == Explanation::EqualWindings && !self.is_equal() {
                findings.push(WindingsFinding::AlikeButNotBare);
            } else {
                findings.push(self.fault_finding(explanation, probability));
            }
            return findings;
        }
        if self.windings.sum_rule == Some(Foreseen::Sum) {
            findings.push(WindingsFinding::AddsUp);
        }
        if self.sum_fails() {
            let repeat = self.pair_to_repeat();
            findings.push(WindingsFinding::DoesNotAddUp { repeat });
        }
        if self.is_whole() {
            findings.extend(self.whole());
        }
        findings
    }

    fn whole(&self) -> Vec<WindingsFinding> {
        let probability = self.probability_whole();
        let (Some(known), Some(common)) = (&self.windings.resistances, self.pin_of(Role::Common))
        else {
            return Vec::new();
        };
        let mut findings = vec![if self.is_alike() {
            WindingsFinding::WholeButAlike {
                common,
                probability,
            }
        } else {
            WindingsFinding::Whole {
                run: known.run.clone(),
                start: known.start.clone(),
                probability,
            }
        }];
        let leads = known.leads.value().get();
        if self.windings.probability(Explanation::LeadsNotZeroed) >= TOLD && leads > 0.0 {
            findings.push(WindingsFinding::LeadsTakenOut(known.leads.clone()));
        }
        findings
    }

    /// Run and start, leads taken out, once three pairs say that both are whole. Which is which
    /// may be open.
    pub(crate) fn whole_windings(&self) -> Option<[Uncertain<Ohms>; 2]> {
        let known = self.windings.resistances.as_ref()?;
        let is_told = self.read() == 3 && self.fault().is_none() && self.is_whole();
        is_told.then(|| [known.run.clone(), known.start.clone()])
    }

    fn fault_finding(&self, explanation: Explanation, probability: f64) -> WindingsFinding {
        let rival = self
            .windings
            .explanations
            .iter()
            .find(|scored| {
                scored.explanation != explanation && !scored.explanation.is_whole_pair_of_windings()
            })
            .filter(|scored| scored.probability >= probability / 10.0)
            .map(|scored| scored.explanation);
        WindingsFinding::Fault {
            explanation,
            probability,
            rival,
            pin: self.pin_of_open_pairs(),
        }
    }

    /// With two pairs open, the pin that both share.
    fn pin_of_open_pairs(&self) -> Option<Pin> {
        let numbers = self.inspection.numbers();
        match numbers.as_slice() {
            [only] => Some(only.pair.opposite()),
            _ => None,
        }
    }

    fn wiring_disagrees(&self) -> Option<WindingsFinding> {
        let common = self.pin_of(Role::Common)?;
        let wiring = &self.inspection.wiring;
        let elsewhere = |noted: Option<Pin>| noted.is_some_and(|pin| pin != common);
        let disagrees = elsewhere(wiring.overload_on)
            || elsewhere(wiring.marked[0])
            || elsewhere(wiring.start_device_on.map(Pair::opposite));
        disagrees.then_some(WindingsFinding::WiringDisagrees { common })
    }

    /// Read clockwise, the usual order is start, common, run (common practice, no source). It is
    /// a hint that never moves a probability.
    fn unusual_order(&self) -> Option<WindingsFinding> {
        let triangle = self.shape.is_some_and(PinShape::is_triangle);
        let common = self.pin_of(Role::Common)?;
        let start = self.pin_of(Role::Start)?;
        (triangle && start == common.next()).then_some(WindingsFinding::UnusualOrder { start })
    }
}
