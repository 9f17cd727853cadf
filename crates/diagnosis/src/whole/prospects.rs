//! What each action costs in expectation, now and after each answer that a check may bring.

use super::beliefs::{Beliefs, Desk, Held, Picture};
use super::clue::Clue;
use super::fault::Fault;
use super::gauge::Gauge;
use super::remedy::{Action, Stakes};
use crate::choice::Choice;
use measure::windings::Mains;

/// Faults below this are left out of decisions; what they would change is too little.
const LEAST: f64 = 0.01;
/// At most so many faults are weighed against each other.
const MOST: usize = 12;

/// A fault that is worth acting on, and what would be seen if it were there.
struct Prospect {
    fault: Fault,
    /// That it is there.
    there: f64,
    /// That it is there and nothing else.
    alone: f64,
    picture: Picture,
}

/// Everything that decisions are made from. Exact but for one thing: that a fault is alone is
/// taken to be as likely after an answer as before it, among the cases in which it is there.
pub(super) struct Prospects {
    stakes: Stakes,
    now: Picture,
    faults: Vec<Prospect>,
    /// Nothing at fault.
    nothing: Option<(f64, Picture)>,
}

/// An action with what it is aimed at; nothing for those that concern the whole machine.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Aim {
    pub(super) action: Action,
    pub(super) fault: Option<Fault>,
}

/// What an answer makes of the probabilities.
struct Outlook {
    /// Probability of the answer.
    chance: f64,
    /// By prospect, together with the answer: there, and alone.
    faults: Vec<(f64, f64)>,
    nothing: f64,
}

/// What a clue is worth before its answer is known.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct ClueWorth {
    /// Expected drop in expected cost.
    pub(super) value: f64,
    /// Bits that it tells of the faults.
    pub(super) bits: f64,
    /// The answers after which something else would be done.
    pub(super) overturns: Vec<(usize, Aim)>,
}

impl Prospects {
    pub(super) fn of(beliefs: &Beliefs<'_>, now: Picture, stakes: Stakes, desk: &mut Desk) -> Self {
        let mut ranked: Vec<Fault> = Fault::ALL
            .iter()
            .copied()
            .filter(|fault| now.faults[fault.place()] >= LEAST)
            .collect();
        // Stable: equals stay in the order of the Path.
        ranked.sort_by(|one, other| now.faults[other.place()].total_cmp(&now.faults[one.place()]));
        ranked.truncate(MOST);
        let faults = ranked
            .into_iter()
            .filter_map(|fault| {
                let (there, picture) = beliefs.picture(Held::Fault(fault), desk)?;
                Some(Prospect {
                    fault,
                    there,
                    alone: beliefs.chance(Held::Only(fault), desk),
                    picture,
                })
            })
            .collect();
        Self {
            stakes,
            nothing: beliefs.picture(Held::Nothing, desk),
            now,
            faults,
        }
    }

    /// Every action with its expected cost, the cheapest first; equals in a fixed order.
    pub(super) fn actions(&self) -> Vec<(Aim, f64)> {
        let outlook = self.outlook_now();
        let mut all: Vec<(Aim, f64)> = self.aims().into_iter().zip(self.costs(&outlook)).collect();
        all.sort_by(|(_, one), (_, other)| one.total_cmp(other));
        all
    }

    /// That an action is the right one: its fault is there, or nothing is at fault.
    pub(super) fn right(&self, aim: Aim) -> f64 {
        match aim.fault {
            Some(fault) => self.now.faults[fault.place()],
            None if aim.action == Action::NothingToRepair => self.now.nothing,
            None => self
                .faults
                .iter()
                .filter(|one| one.fault.is_sealed())
                .map(|one| one.there)
                .sum::<f64>()
                .min(1.0),
        }
    }

    /// What it is worth to see a clue first.
    pub(super) fn worth(&self, clue: Clue, mains: Option<Mains>) -> Option<ClueWorth> {
        let outlooks = self.outlooks(clue, Gauge::of(clue, mains))?;
        let (best, cost) = least(&self.costs(&self.outlook_now()))?;
        let choices = |outlooks: &[Outlook]| -> Vec<Option<(usize, f64)>> {
            let each = outlooks.iter();
            each.map(|outlook| least(&self.costs(outlook))).collect()
        };
        let then: f64 = choices(&outlooks)
            .iter()
            .flatten()
            .map(|(_, cost)| cost)
            .sum();
        // Answers have names, bins have none.
        let named = self.outlooks(clue, None)?;
        let aims = self.aims();
        let overturns = choices(&named)
            .into_iter()
            .enumerate()
            .filter(|(answer, _)| named[*answer].chance > LEAST)
            .filter_map(|(answer, choice)| Some((answer, choice?.0)))
            .filter(|(_, choice)| *choice != best)
            .map(|(answer, choice)| (answer, aims[choice]));
        Some(ClueWorth {
            // Knowing more can't cost anything; rounding could say so.
            value: (cost - then).max(0.0),
            bits: self.bits(&outlooks),
            overturns: overturns.collect(),
        })
    }

    fn aims(&self) -> Vec<Aim> {
        let of = |one: &Prospect| Aim {
            action: self.stakes.action(one.fault),
            fault: Some(one.fault),
        };
        let whole = [Action::NothingToRepair, Action::Scrap].map(|action| Aim {
            action,
            fault: None,
        });
        self.faults.iter().map(of).chain(whole).collect()
    }

    /// The cost of each action times the probability of the outlook, in the order of the aims.
    fn costs(&self, outlook: &Outlook) -> Vec<f64> {
        let stakes = self.stakes;
        let faulty = outlook.chance - outlook.nothing;
        let mut costs: Vec<f64> = self
            .faults
            .iter()
            .zip(&outlook.faults)
            .map(|(one, &(there, alone))| {
                let others = (faulty - alone).max(0.0);
                outlook.chance * stakes.trying(one.fault)
                    + there * stakes.not_lasting(one.fault)
                    + others * stakes.going_on()
            })
            .collect();
        costs.push(faulty.max(0.0) * stakes.passed_as_sound());
        costs.push(outlook.chance * stakes.scrap());
        costs
    }

    fn outlook_now(&self) -> Outlook {
        Outlook {
            chance: 1.0,
            faults: self
                .faults
                .iter()
                .map(|one| (one.there, one.alone))
                .collect(),
            nothing: self.nothing.as_ref().map_or(0.0, |(chance, _)| *chance),
        }
    }

    /// One per answer, or per bin of a number.
    fn outlooks(&self, clue: Clue, gauge: Option<Gauge>) -> Option<Vec<Outlook>> {
        let foretold = gauge.map(|gauge| gauge.foretold());
        let spread = |picture: &Picture| -> Vec<f64> {
            let answers = &picture.answers[clue as usize];
            match &foretold {
                None => answers.clone(),
                Some(bins) => (0..bins[0].len())
                    .map(|bin| {
                        let pairs = answers.iter().zip(bins);
                        pairs.map(|(chance, bins)| chance * bins[bin]).sum()
                    })
                    .collect(),
            }
        };
        let now = spread(&self.now);
        if now.is_empty() {
            return None;
        }
        let by_fault: Vec<Vec<f64>> = self.faults.iter().map(|one| spread(&one.picture)).collect();
        let nothing = self
            .nothing
            .as_ref()
            .map(|(chance, picture)| (*chance, spread(picture)));
        let at = |row: &[f64], answer: usize| row.get(answer).copied().unwrap_or(0.0);
        let outlook = |answer: usize| Outlook {
            chance: now[answer],
            faults: self
                .faults
                .iter()
                .zip(&by_fault)
                .map(|(one, row)| (one.there * at(row, answer), one.alone * at(row, answer)))
                .collect(),
            nothing: nothing
                .as_ref()
                .map_or(0.0, |(chance, row)| chance * at(row, answer)),
        };
        Some((0..now.len()).map(outlook).collect())
    }

    /// Information about each fault by itself, weighted by how likely it is.
    fn bits(&self, outlooks: &[Outlook]) -> f64 {
        let mut sum = 0.0;
        for (place, one) in self.faults.iter().enumerate() {
            for outlook in outlooks {
                let joint = outlook.faults[place].0;
                let apart = one.there * outlook.chance;
                if joint > 0.0 && apart > 0.0 {
                    sum += joint * libm::log2(joint / apart);
                }
            }
        }
        sum.max(0.0)
    }
}

/// The place of the least cost, the first of equals.
fn least(costs: &[f64]) -> Option<(usize, f64)> {
    let mut best: Option<(usize, f64)> = None;
    for (place, &cost) in costs.iter().enumerate() {
        if best.is_none_or(|(_, least)| cost < least) {
            best = Some((place, cost));
        }
    }
    best
}
