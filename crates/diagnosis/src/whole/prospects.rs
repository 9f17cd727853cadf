//! What each action costs in expectation, now and after each answer that a check may bring.

mod bets;
mod plans;

pub(super) use bets::Aim;

use super::aside::aside;
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
        let plain = &self.now.answers[clue as usize];
        if plain.is_empty() {
            return None;
        }
        let foretold = gauge.map(|gauge| gauge.foretold());
        let binned = |answers: Vec<f64>| -> Vec<f64> {
            let Some(bins) = &foretold else {
                return answers;
            };
            let bin = |bin: usize| {
                let pairs = answers.iter().zip(bins);
                pairs.map(|(chance, bins)| chance * bins[bin]).sum()
            };
            (0..bins[0].len()).map(bin).collect()
        };
        let mut now = plain.clone();
        // To a fault of builds that can't show the clue every answer says the same.
        let mut given = |picture: &Picture, fault: Option<Fault>, there: f64| {
            let row = &picture.answers[clue as usize];
            let row = if row.is_empty() { plain } else { row };
            let told = with_aside(clue, row, fault);
            for ((now, told), plain) in now.iter_mut().zip(&told).zip(row) {
                *now = (*now + there * (told - plain)).max(0.0);
            }
            binned(told)
        };
        let mut by_fault: Vec<Vec<f64>> = Vec::with_capacity(self.faults.len());
        for one in &self.faults {
            by_fault.push(given(&one.picture, Some(one.fault), one.there));
        }
        let nothing = self.nothing.as_ref();
        let nothing = nothing.map(|(chance, picture)| (*chance, given(picture, None, *chance)));
        let now = binned(now);
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

/// How likely each answer is where a fault is there, with what answers say of it aside from the
/// network: a check is worth that too. Answers stay one whole.
fn with_aside(clue: Clue, row: &[f64], fault: Option<Fault>) -> Vec<f64> {
    let weighed = row.iter().enumerate().map(|(answer, chance)| {
        let factors = aside(clue, answer).iter();
        let own = factors.filter(|(of, _)| *of == fault);
        chance * own.map(|(_, factor)| factor).product::<f64>()
    });
    let mut weighed: Vec<f64> = weighed.collect();
    let whole: f64 = weighed.iter().sum();
    if whole > 0.0 {
        weighed.iter_mut().for_each(|one| *one /= whole);
    }
    weighed
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::whole::build::Build;
    use crate::whole::costs;
    use crate::whole::entered::{Entered, Weight};
    use crate::whole::networks::{Assumptions, desk};

    /// A thermometer on the wall says nothing in the network of a machine of which too much is
    /// asked; what a hot room says aside is foretold all the same.
    #[test]
    fn what_is_said_aside_is_foretold() {
        let cold = [0.82, 0.09, 0.09];
        let asked = with_aside(Clue::RoomTemperature, &cold, Some(Fault::TooMuchAsked));
        assert!(asked[1] > 4.0 * cold[1] && asked[0] < cold[0], "{asked:?}");
        assert!((asked.iter().sum::<f64>() - 1.0).abs() < 1e-12);
        let other = with_aside(Clue::RoomTemperature, &cold, Some(Fault::SealLeaks));
        assert!(other.iter().zip(cold).all(|(a, b)| (a - b).abs() < 1e-12));
    }

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
            is_hint: false,
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
