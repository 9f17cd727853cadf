//! What each action costs in expectation, now and after each answer that a check may bring.

mod bets;
mod plans;

pub(super) use bets::Aim;

use super::beliefs::{Beliefs, Desk, Held};
use super::clue::Clue;
use super::fault::Fault;
use super::gauge::Gauge;
use super::picture::Picture;
use super::remedy::Stakes;
use crate::choice::Choice;
use measure::ranked;
use measure::windings::Mains;

/// Faults below this are left out of decisions; what they would change is too little.
const LEAST: f64 = 0.01;
/// At most so many faults are weighed against each other.
const MOST: usize = 10;
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
pub(super) struct Prospects<'a> {
    stakes: Stakes<'a>,
    now: Picture,
    faults: Vec<Prospect>,
    /// Nothing at fault.
    nothing: Option<(f64, Picture)>,
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

impl<'a> Prospects<'a> {
    pub(super) fn of(
        beliefs: &Beliefs<'_>,
        now: Picture,
        stakes: Stakes<'a>,
        desk: &mut Desk,
    ) -> Self {
        let likely = Fault::ALL
            .iter()
            .copied()
            .filter(|fault| now.faults[fault.place()] >= LEAST);
        // Equals stay in the order of the Path.
        let faults = ranked(likely.collect(), |fault| now.faults[fault.place()])
            .into_iter()
            .take(MOST)
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

    /// What is at stake on the machine.
    pub(super) fn stakes(&self) -> Stakes<'a> {
        self.stakes
    }

    /// What it is worth to see a clue first.
    pub(super) fn worth(&self, clue: Clue, mains: Option<Mains>) -> Option<ClueWorth> {
        let outlooks = self.outlooks(clue, Gauge::of(clue, mains))?;
        let now = self.outlook_now();
        let best = self.plan(&now, None);
        let bet = self.bet(&now);
        let then: f64 = outlooks.iter().map(|one| self.plan(one, None).cost).sum();
        // Answers have names, bins have none.
        let overturns = self
            .outlooks(clue, None)?
            .into_iter()
            .enumerate()
            .filter(|(_, outlook)| outlook.chance > LEAST)
            .map(|(answer, outlook)| (answer, self.turned_to(&outlook, bet)))
            .filter(|(_, choice)| *choice != bet)
            .map(|(answer, choice)| (answer, self.aim(choice)));
        Some(ClueWorth {
            // Knowing more can't cost anything; rounding could say so.
            value: (best.cost - then).max(0.0),
            overturns: overturns.collect(),
            bits: self.bits(&outlooks),
        })
    }

    /// Several faults at once, or ones too unlikely to be told one by one.
    fn several(&self, outlook: &Outlook) -> f64 {
        let singly: f64 = outlook.faults.iter().map(|(_, alone)| alone).sum();
        (outlook.chance - outlook.nothing - singly).max(0.0)
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
                _ if answers.is_empty() => Vec::new(),
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
        // To a fault of builds that can't show the clue every answer says the same.
        let given = |picture: &Picture| {
            let row = spread(picture);
            if row.is_empty() { now.clone() } else { row }
        };
        let by_fault: Vec<Vec<f64>> = self.faults.iter().map(|one| given(&one.picture)).collect();
        let nothing = self
            .nothing
            .as_ref()
            .map(|(chance, picture)| (*chance, given(picture)));
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::whole::build::Build;
    use crate::whole::costs;
    use crate::whole::entered::{Entered, Weight};
    use crate::whole::networks::{Assumptions, desk};

    /// What every answer foretells, added up, is what is believed before it.
    #[test]
    fn the_answers_of_every_clue_add_up_to_one_and_to_each_fault() {
        let assumptions = Assumptions::default();
        let networks = assumptions.networks().unwrap();
        let mut desk = desk(&networks);
        let hums = Weight::Clue(
            Clue::OpeningSeen,
            [0.0, 0.0, 1.0, 0.0, 0.0].map(libm::log).to_vec(),
        );
        let entered = [Entered {
            task: Clue::OpeningSeen.task(),
            weights: vec![hums],
            period: 0,
        }];
        let odds = Build::odds(None);
        let (_, now) = Beliefs::glance(&networks, odds, &entered, &mut desk).unwrap();
        let beliefs = Beliefs::of(&networks, odds, &entered, &mut desk).unwrap();
        let stakes = Stakes::of(None, Build::ManualDefrost, &costs::STATED);
        let prospects = Prospects::of(&beliefs, now, stakes, &mut desk);
        for &clue in Clue::ALL {
            let Some(outlooks) = prospects.outlooks(clue, None) else {
                continue;
            };
            let whole: f64 = outlooks.iter().map(|one| one.chance).sum();
            assert!((whole - 1.0).abs() < 1e-9, "{clue:?} {whole}");
            for (place, prospect) in prospects.faults.iter().enumerate() {
                let there: f64 = outlooks.iter().map(|one| one.faults[place].0).sum();
                assert!((there - prospect.there).abs() < 1e-9, "{clue:?} {there}");
            }
        }
    }
}
