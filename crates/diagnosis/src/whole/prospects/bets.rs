//! What to bet on in an outlook: the best plan's likeliest try, the likeliest repair, or the scrap
//! yard.

use super::plans::{Plan, Try};
use super::{Outlook, Prospects};
use crate::whole::fault::Fault;
use crate::whole::remedy::Action;

/// From here on one fault that isn't worth mending, or all such together, send the machine to the
/// scrap yard, though a cheap try before it would pay: where they are this many times likelier
/// than the likeliest repair.
const CONDEMNED_BY_ONE: f64 = 0.5;
const CONDEMNED_BY_ALL: f64 = 0.75;
const FAR_LIKELIER: f64 = 2.0;
/// An answer turns the bet only if it makes another one this many times likelier.
const CLEARLY: f64 = 1.5;
/// What is there less often than this is not told as the next best; the scrap yard is.
const HARDLY: f64 = 0.1;

/// An action with what it is aimed at; nothing for those that concern the whole machine.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in crate::whole) struct Aim {
    pub(in crate::whole) action: Action,
    pub(in crate::whole) fault: Option<Fault>,
}

impl Prospects<'_> {
    /// What to do with its expected cost, and the same for the best that leaves it out.
    pub(in crate::whole) fn best_two(&self) -> [(Aim, f64); 2] {
        let outlook = self.outlook_now();
        let best = self.plan(&outlook, None);
        let head = self.head(&best, &outlook);
        let second = match head {
            Some(place) => self.plan(&outlook, Some(place)),
            // Scrapping against the likeliest single try.
            None => self.likeliest(&outlook),
        };
        let second_head = match head {
            Some(_) => self.head(&second, &outlook).filter(|&place| {
                let tries = self.tries(&outlook);
                tries
                    .iter()
                    .any(|one| one.place == place && one.there >= HARDLY)
            }),
            None => second.tries.first().copied(),
        };
        [
            (self.aim(head), best.cost),
            (self.aim(second_head), second.cost),
        ]
    }

    /// The try of a plan whose fault is likeliest there; none where the plan is to scrap it, or
    /// comes to that nearly always.
    fn head(&self, plan: &Plan, outlook: &Outlook) -> Option<usize> {
        let tries = self.tries(outlook);
        let planned = tries.iter().filter(|one| plan.tries.contains(&one.place));
        let mut head: Option<(usize, f64)> = None;
        for &Try { place, there, .. } in planned {
            if head.is_none_or(|(_, most)| there > most) {
                head = Some((place, there));
            }
        }
        let (place, there) = head?;
        (!self.is_scrap(outlook, there)).then_some(place)
    }

    fn is_scrap(&self, outlook: &Outlook, repair: f64) -> bool {
        let faults = outlook.faults.iter().enumerate();
        let one = faults
            .filter(|(place, _)| self.is_condemning(*place))
            .map(|(_, (there, _))| *there)
            .fold(0.0, f64::max);
        let all = self.condemned(outlook);
        let is_likely =
            one >= CONDEMNED_BY_ONE * outlook.chance || all >= CONDEMNED_BY_ALL * outlook.chance;
        is_likely && all >= FAR_LIKELIER * repair
    }

    /// The repair that is likeliest right, whether it pays before more is known or not: the best
    /// bet while one goes on. None where it comes to scrap nearly always.
    pub(in crate::whole) fn best_bet(&self) -> Option<Aim> {
        let bet = self.bet(&self.outlook_now());
        bet.is_some().then(|| self.aim(bet))
    }

    /// The bet in an outlook: the present one, unless another is clearly likelier.
    pub(super) fn turned_to(&self, outlook: &Outlook, present: Option<usize>) -> Option<usize> {
        let turned = self.bet(outlook);
        let there = |bet: Option<usize>| {
            let tries = self.tries(outlook);
            let found = tries.iter().find(|one| Some(one.place) == bet);
            found.map_or(0.0, |one| one.there)
        };
        match turned {
            Some(_) if there(turned) < CLEARLY * there(present) => present,
            turned => turned,
        }
    }

    pub(super) fn bet(&self, outlook: &Outlook) -> Option<usize> {
        let one = self.likeliest_repair(outlook)?;
        (!self.is_scrap(outlook, one.there)).then_some(one.place)
    }

    fn likeliest_repair(&self, outlook: &Outlook) -> Option<Try> {
        let is_sealed = |place: usize| {
            self.faults
                .get(place)
                .is_some_and(|one| one.fault.is_sealed())
        };
        let mut best: Option<Try> = None;
        for one in self.tries(outlook) {
            let is_likelier = best.as_ref().is_none_or(|best| one.there > best.there);
            if is_likelier && !is_sealed(one.place) {
                best = Some(one);
            }
        }
        best
    }

    /// The single try that is likeliest right, whether it pays or not.
    fn likeliest(&self, outlook: &Outlook) -> Plan {
        let place = self.likeliest_repair(outlook).map(|one| one.place);
        self.single(outlook, |one| Some(one.place) == place)
    }

    pub(super) fn aim(&self, head: Option<usize>) -> Aim {
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
    pub(in crate::whole) fn right(&self, aim: Aim) -> f64 {
        match aim.fault {
            Some(fault) => fault
                .part()
                .faults()
                .filter(|other| self.is_mended_by(*other, fault))
                .map(|other| self.now.faults[other.place()])
                .sum(),
            None if aim.action == Action::NothingToRepair => self.now.nothing,
            None => self.condemned(&self.outlook_now()),
        }
    }

    /// That what is at fault isn't worth mending: alone, or among several faults as often as among
    /// all.
    fn condemned(&self, outlook: &Outlook) -> f64 {
        let (mut alone, mut there, mut all) = (0.0, 0.0, 0.0);
        for (place, one) in outlook.faults.iter().enumerate() {
            all += one.0;
            if self.is_condemning(place) {
                alone += one.1;
                there += one.0;
            }
        }
        let share = if all > 0.0 { there / all } else { 0.0 };
        alone + self.several(outlook) * share
    }

    fn is_condemning(&self, place: usize) -> bool {
        let one = self.faults.get(place);
        one.is_some_and(|one| self.stakes.is_condemned_by(one.fault))
    }
}
