//! What each action costs in expectation, now and after each answer that a check may bring.

use super::beliefs::{Beliefs, Desk, Held};
use super::clue::Clue;
use super::fault::Fault;
use super::gauge::Gauge;
use super::picture::Picture;
use super::remedy::{Action, Stakes};
use crate::choice::Choice;
use measure::ranked;
use measure::windings::Mains;

/// Faults below this are left out of decisions; what they would change is too little.
const LEAST: f64 = 0.01;
/// At most so many faults are weighed against each other.
const MOST: usize = 10;
/// A try that ends the matter less often than this is no verdict, though it may be worth trying
/// before the scrap yard.
const HARDLY: f64 = 0.1;

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

/// One thing that can be tried, in one outlook; all but the price times its probability.
struct Try {
    /// Among the prospects; waiting comes after them.
    place: usize,
    /// That it ends the matter.
    chance: f64,
    price: f64,
    /// What ending it so saves against the scrap yard, less what is lost where it doesn't last.
    gain: f64,
}

/// Tries in order, then the scrap yard.
struct Plan {
    cost: f64,
    tries: Vec<usize>,
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

    /// What to do with its expected cost, and the same for the best that leaves it out.
    pub(super) fn best_two(&self) -> [(Aim, f64); 2] {
        let outlook = self.outlook_now();
        let best = self.plan(&outlook, None);
        let head = self.head(&best, &outlook);
        let second = match head {
            Some(place) => self.plan(&outlook, Some(place)),
            // Scrapping against the best single try.
            None => self.single(&outlook, None),
        };
        let second_head = match head {
            Some(_) => self.head(&second, &outlook),
            None => second.tries.first().copied(),
        };
        [
            (self.aim(head), best.cost),
            (self.aim(second_head), second.cost),
        ]
    }

    /// The try of a plan that most likely ends it; none where hardly any does.
    fn head(&self, plan: &Plan, outlook: &Outlook) -> Option<usize> {
        let tries = self.tries(outlook);
        let planned = tries.iter().filter(|one| plan.tries.contains(&one.place));
        let mut head: Option<(usize, f64)> = None;
        for &Try { place, chance, .. } in planned {
            if head.is_none_or(|(_, most)| chance > most) {
                head = Some((place, chance));
            }
        }
        let (place, chance) = head?;
        (chance >= HARDLY * outlook.chance).then_some(place)
    }

    /// The cheapest plan of one try, whether it pays or not.
    fn single(&self, outlook: &Outlook, without: Option<usize>) -> Plan {
        let stakes = self.stakes;
        let partly = self.several(outlook) * (stakes.scrap() - stakes.several());
        let mut best: Option<Plan> = None;
        for one in self.tries(outlook) {
            let cost = outlook.chance * (stakes.scrap() + one.price) - partly - one.gain;
            let better = best.as_ref().is_none_or(|best| cost < best.cost);
            if better && Some(one.place) != without {
                best = Some(Plan {
                    cost,
                    tries: vec![one.place],
                });
            }
        }
        // There is waiting, unless that is what is left out.
        best.unwrap_or(Plan {
            cost: outlook.chance * stakes.scrap(),
            tries: Vec::new(),
        })
    }

    fn aim(&self, head: Option<usize>) -> Aim {
        let Some(place) = head else {
            return Aim {
                action: Action::Scrap,
                fault: None,
            };
        };
        match self.faults.get(place) {
            Some(one) => Aim {
                action: self.stakes.action(one.fault),
                fault: Some(one.fault),
            },
            None => Aim {
                action: Action::NothingToRepair,
                fault: None,
            },
        }
    }

    /// That an action is the right one: its fault is there, or nothing is at fault.
    pub(super) fn right(&self, aim: Aim) -> f64 {
        match aim.fault {
            Some(fault) => fault
                .part()
                .faults()
                .filter(|other| self.is_mended_by(*other, fault))
                .map(|other| self.now.faults[other.place()])
                .sum(),
            None if aim.action == Action::NothingToRepair => self.now.nothing,
            None => self.sealed(),
        }
    }

    /// That the compressor or the sealed system is at fault: alone, or among several faults as
    /// often as among all.
    fn sealed(&self) -> f64 {
        let (mut alone, mut there, mut all) = (0.0, 0.0, 0.0);
        for one in &self.faults {
            all += one.there;
            if one.fault.is_sealed() {
                alone += one.alone;
                there += one.there;
            }
        }
        let several = self.several(&self.outlook_now());
        alone + several * if all > 0.0 { there / all } else { 0.0 }
    }

    /// What it is worth to see a clue first.
    pub(super) fn worth(&self, clue: Clue, mains: Option<Mains>) -> Option<ClueWorth> {
        let outlooks = self.outlooks(clue, Gauge::of(clue, mains))?;
        let now = self.outlook_now();
        let best = self.plan(&now, None);
        let head = self.head(&best, &now);
        let then: f64 = outlooks.iter().map(|one| self.plan(one, None).cost).sum();
        // Answers have names, bins have none.
        let overturns = self
            .outlooks(clue, None)?
            .into_iter()
            .enumerate()
            .filter(|(_, outlook)| outlook.chance > LEAST)
            .map(|(answer, outlook)| (answer, self.head(&self.plan(&outlook, None), &outlook)))
            .filter(|(_, choice)| *choice != head)
            .map(|(answer, choice)| (answer, self.aim(choice)));
        Some(ClueWorth {
            // Knowing more can't cost anything; rounding could say so.
            value: (best.cost - then).max(0.0),
            overturns: overturns.collect(),
            bits: self.bits(&outlooks),
        })
    }

    /// The tries in the order in which they are worth most, and what following them costs, times
    /// the probability of the outlook. Tries go on for as long as one more is worth its price,
    /// then the machine is scrapped. (Single faults in the order of chance over price: Heckerman
    /// and others 1995, from memory. Several at once are mended in part, and mostly scrapped.)
    fn plan(&self, outlook: &Outlook, without: Option<usize>) -> Plan {
        let stakes = self.stakes;
        let mut tries = self.tries(outlook);
        tries.retain(|one| Some(one.place) != without && one.gain > 0.0);
        let tries = ranked(tries, |one| one.gain / one.price);
        let at_once = Plan {
            cost: outlook.chance * stakes.scrap(),
            tries: Vec::new(),
        };
        // Once anything is tried, what has several faults is partly mended.
        let mut plan = Plan {
            cost: at_once.cost - self.several(outlook) * (stakes.scrap() - stakes.several()),
            tries: Vec::new(),
        };
        let mut left = outlook.chance;
        for one in &tries {
            let pays = one.gain > left * one.price;
            if pays || plan.tries.is_empty() {
                plan.cost += left * one.price - one.gain;
                plan.tries.push(one.place);
                left = (left - one.chance).max(0.0);
            }
        }
        let single = self.single(outlook, without);
        [single, plan]
            .into_iter()
            .filter(|plan| !plan.tries.is_empty())
            .fold(
                at_once,
                |best, plan| if plan.cost < best.cost { plan } else { best },
            )
    }

    /// What each aim but scrapping would bring: the faults in order, then waiting.
    fn tries(&self, outlook: &Outlook) -> Vec<Try> {
        let stakes = self.stakes;
        let mut tries: Vec<Try> = Vec::new();
        for (place, (one, &(_, alone))) in self.faults.iter().zip(&outlook.faults).enumerate() {
            let price = stakes.trying(one.fault);
            let gain = alone * (stakes.scrap() - stakes.not_lasting(one.fault));
            // One new part mends every fault that the old one can have.
            let same = tries
                .iter_mut()
                .find(|other| self.is_mended_by(one.fault, self.faults[other.place].fault));
            match same {
                Some(same) => {
                    same.chance += alone;
                    same.price = same.price.max(price);
                    same.gain += gain;
                }
                None => tries.push(Try {
                    place,
                    chance: alone,
                    price,
                    gain,
                }),
            }
        }
        tries.push(Try {
            place: self.faults.len(),
            chance: outlook.nothing,
            price: Stakes::WAITING_A_DAY,
            gain: outlook.nothing * stakes.scrap(),
        });
        tries
    }

    /// Whether what mends one fault mends another too.
    fn is_mended_by(&self, fault: Fault, other: Fault) -> bool {
        fault.part() == other.part() && self.stakes.action(fault) == self.stakes.action(other)
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
