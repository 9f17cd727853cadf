//! Rules by which the next step is chosen without working out all that may follow.

use super::troubleshooting::{Situation, Step, Troubleshooting};

impl Troubleshooting {
    /// The step that is best if at most one check is made before acting by chance over cost: the
    /// myopic policy of Heckerman, Breese and Rommelse.
    #[must_use]
    pub fn one_check_ahead(&self, situation: &Situation) -> Step {
        let (mut step, mut least) = self.act_at_once(situation);
        for (place, check) in self.checks.iter().enumerate() {
            if situation.answers[place].is_none() {
                let after = self.after_looking(situation, place);
                let later = after.iter().map(|one| self.act_at_once(one).1);
                let cost = check.cost * situation.chance() + later.sum::<f64>();
                if cost < least {
                    (step, least) = (Step::Look(place), cost);
                }
            }
        }
        step
    }

    /// The first step of acting by chance over cost without looking again, and what all of them
    /// cost, times the chance of the situation.
    #[must_use]
    pub fn act_at_once(&self, situation: &Situation) -> (Step, f64) {
        let mut now = situation.clone();
        let mut first = Step::GiveUp;
        let mut least = self.repair.give_up() * now.chance();
        let (mut spent, mut begun) = (0.0, None);
        while let Some(action) = self.repair.most_promising(&now.weights, now.done) {
            begun = begun.or(Some(Step::Act(action)));
            spent += self.repair.actions()[action].cost * now.chance();
            now = self.after_acting(&now, action);
            let cost = spent + self.repair.give_up() * now.chance();
            if cost < least {
                least = cost;
                first = begun.unwrap_or(Step::GiveUp);
            }
        }
        (first, least)
    }

    /// The check that brings most for its cost, as long as it is worth it; acting at once
    /// otherwise. A check brings what it saves if one acts at once afterwards, and, so that
    /// checks which are of use only together are made at all, a price for each bit that it tells
    /// about the fault sets.
    #[must_use]
    pub fn most_for_its_cost(&self, situation: &Situation, bit: f64) -> Step {
        let (step, at_once) = self.act_at_once(situation);
        let chance = situation.chance();
        let mut best: Option<(usize, f64)> = None;
        for (place, check) in self.checks.iter().enumerate() {
            if situation.answers[place].is_some() {
                continue;
            }
            let after = self.after_looking(situation, place);
            let later: f64 = after.iter().map(|one| self.act_at_once(one).1).sum();
            let worth = at_once - later + bit * told(situation, &after);
            let per_cost = worth / check.cost;
            if worth > check.cost * chance && best.is_none_or(|(_, most)| per_cost > most) {
                best = Some((place, per_cost));
            }
        }
        best.map_or(step, |(place, _)| Step::Look(place))
    }
}

/// Bits that an answer tells about the fault sets on average, times the chance of the situation.
fn told(before: &Situation, after: &[Situation]) -> f64 {
    // The sum of w log w tells entropies of what doesn't add up to one, too.
    let spread = |situation: &Situation| -> f64 {
        let whole = situation.chance();
        let weights = situation.weights.iter().filter(|weight| **weight > 0.0);
        weights
            .map(|weight| weight * libm::log2(whole / weight))
            .sum()
    };
    spread(before) - after.iter().map(spread).sum::<f64>()
}
