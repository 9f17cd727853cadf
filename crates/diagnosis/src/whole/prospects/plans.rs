//! What can be tried in an outlook, in which order, and what following that costs.

use measure::ranked;

use super::{Outlook, Prospects};
use crate::whole::fault::Fault;

/// One thing that can be tried, in one outlook; all but the price times its probability.
pub(super) struct Try {
    /// Among the prospects; waiting comes after them.
    pub(super) place: usize,
    /// That what it mends is there.
    pub(super) there: f64,
    /// That it ends the matter.
    pub(super) chance: f64,
    pub(super) price: f64,
    /// What ending it so saves against the scrap yard, less what is lost where it doesn't last.
    pub(super) gain: f64,
}

/// Tries in order, then the scrap yard.
pub(super) struct Plan {
    pub(super) cost: f64,
    pub(super) tries: Vec<usize>,
}

impl Prospects<'_> {
    /// The tries in the order in which they are worth most, and what following them costs, times
    /// the probability of the outlook. Tries go on for as long as one more is worth its price,
    /// then the machine is scrapped. (Single faults in the order of chance over price: Heckerman
    /// and others 1995, from memory. Several at once are mended in part, and mostly scrapped.)
    pub(super) fn plan(&self, outlook: &Outlook, without: Option<usize>) -> Plan {
        let stakes = self.stakes;
        let mut tries = self.tries(outlook);
        tries.retain(|one| Some(one.place) != without && one.gain > 0.0);
        let tries = ranked(tries, |one| one.gain / one.price);
        let at_once = Plan {
            cost: outlook.chance * stakes.scrap(),
            tries: Vec::new(),
        };
        let mut plan = Plan {
            cost: at_once.cost,
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
        let single = self.single(outlook, |one| Some(one.place) != without);
        [single, plan]
            .into_iter()
            .filter(|plan| !plan.tries.is_empty())
            .fold(
                at_once,
                |best, plan| if plan.cost < best.cost { plan } else { best },
            )
    }

    /// What each aim but scrapping would bring: the faults in order, then waiting.
    pub(super) fn tries(&self, outlook: &Outlook) -> Vec<Try> {
        let stakes = self.stakes;
        let mut tries: Vec<Try> = Vec::new();
        for (place, (one, &(there, alone))) in self.faults.iter().zip(&outlook.faults).enumerate() {
            let price = stakes.trying(one.fault);
            // Beside another fault it is half the way.
            let half = 0.5 * (there - alone).max(0.0) * (stakes.scrap() - stakes.several());
            let gain = alone * (stakes.scrap() - stakes.not_lasting(one.fault)) + half;
            // One new part mends every fault that the old one can have.
            let same = tries
                .iter_mut()
                .find(|other| self.is_mended_by(one.fault, self.faults[other.place].fault));
            match same {
                Some(same) => {
                    same.there += there;
                    same.chance += alone;
                    same.price = same.price.max(price);
                    same.gain += gain;
                }
                None => tries.push(Try {
                    place,
                    there,
                    chance: alone,
                    price,
                    gain,
                }),
            }
        }
        tries.push(Try {
            place: self.faults.len(),
            there: outlook.nothing,
            chance: outlook.nothing,
            price: stakes.waiting_a_day(),
            gain: outlook.nothing * stakes.scrap(),
        });
        tries
    }

    /// Whether what mends one fault mends another too.
    pub(super) fn is_mended_by(&self, fault: Fault, other: Fault) -> bool {
        fault.part() == other.part() && self.stakes.action(fault) == self.stakes.action(other)
    }

    /// The cheapest plan of one try, whether it pays or not.
    pub(super) fn single(&self, outlook: &Outlook, is_allowed: impl Fn(&Try) -> bool) -> Plan {
        let stakes = self.stakes;
        let mut best: Option<Plan> = None;
        for one in self.tries(outlook) {
            let cost = outlook.chance * (stakes.scrap() + one.price) - one.gain;
            let better = best.as_ref().is_none_or(|best| cost < best.cost);
            if better && is_allowed(&one) {
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
}
