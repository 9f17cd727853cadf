//! Looking and acting in turn: what a policy costs in expectation, and what the best one would.

use super::sequence::{Repair, check_costs};
use crate::error::QueryError;
use std::collections::BTreeMap;

/// The best policy is sought among all situations; beyond this many it takes too long.
const MOST_SITUATIONS: usize = 300_000;

/// Something that can be looked at.
#[derive(Debug, Clone, PartialEq)]
pub struct Check {
    /// What it is called.
    pub name: String,
    /// What looking costs; from zero upwards.
    pub cost: f64,
    /// Chances of each answer: one row per fault set, then one for what was not enumerated.
    /// Answers of different checks are taken as independent given the fault set.
    pub answers: Vec<Vec<f64>>,
}

/// A repair with checks.
#[derive(Debug, Clone, PartialEq)]
pub struct Troubleshooting {
    pub(super) repair: Repair,
    pub(super) checks: Vec<Check>,
}

/// What is done next.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Step {
    /// Takes an action.
    Act(usize),
    /// Makes a check.
    Look(usize),
    /// Gives up.
    GiveUp,
}

/// What was done and seen so far, while the machine still does not work.
#[derive(Debug, Clone, PartialEq)]
pub struct Situation {
    /// Actions taken, one bit each.
    pub(super) done: u64,
    /// The answer of each check that was made.
    pub(super) answers: Vec<Option<usize>>,
    /// How likely each fault set and what is missing is, together with getting here.
    pub(super) weights: Vec<f64>,
}

impl Situation {
    /// Whether an action was taken.
    #[must_use]
    pub fn is_done(&self, action: usize) -> bool {
        action < 64 && self.done & (1 << action) != 0
    }

    /// The answer of a check that was made.
    #[must_use]
    pub fn answer(&self, check: usize) -> Option<usize> {
        self.answers.get(check).copied().flatten()
    }

    /// How likely each fault set and, last, what was not enumerated is in this situation, up to
    /// a common factor.
    #[must_use]
    pub fn weights(&self) -> &[f64] {
        &self.weights
    }

    pub(super) fn chance(&self) -> f64 {
        self.weights.iter().sum()
    }
}

impl Troubleshooting {
    /// Puts the problem together.
    ///
    /// # Errors
    /// When a check's cost is negative or not finite, or it has not one distribution, all of the
    /// same length, per fault set and one for what is missing.
    pub fn new(repair: Repair, checks: Vec<Check>) -> Result<Self, QueryError> {
        check_costs(checks.iter().map(|check| (check.name.as_str(), check.cost)))?;
        let worlds = repair.weights().len();
        for check in &checks {
            let wrong_shape = |expected, found| QueryError::Shape {
                of: check.name.clone(),
                expected,
                found,
            };
            if check.answers.len() != worlds {
                return Err(wrong_shape(worlds, check.answers.len()));
            }
            let answers = check.answers.first().map_or(0, Vec::len);
            for row in &check.answers {
                if row.len() != answers {
                    return Err(wrong_shape(answers, row.len()));
                }
                let sum: f64 = row.iter().sum();
                // Not negative and adding up to one: then none is above one by more than rounding.
                let negative = row.iter().any(|&chance| chance < 0.0);
                let sums_to_one = (sum - 1.0).abs() <= 1e-9;
                if negative || !sums_to_one {
                    return Err(QueryError::Number {
                        of: check.name.clone(),
                    });
                }
            }
        }
        Ok(Self { repair, checks })
    }

    /// The actions and the price of giving up.
    #[must_use]
    pub fn repair(&self) -> &Repair {
        &self.repair
    }

    /// The checks.
    #[must_use]
    pub fn checks(&self) -> &[Check] {
        &self.checks
    }

    /// What a policy costs in expectation, in every way that things can go. A step that was taken
    /// already, or that there isn't, counts as giving up.
    ///
    /// # Errors
    /// When there are too many ways.
    pub fn expected_cost(&self, policy: impl Fn(&Situation) -> Step) -> Result<f64, QueryError> {
        let mut left = MOST_SITUATIONS;
        self.follow(&self.start(), &policy, &mut left)
    }

    /// What the best policy of all costs, by dynamic programming over situations. For small
    /// problems: every check multiplies their number by its answers plus one, every action by
    /// two.
    ///
    /// # Errors
    /// When there are too many situations.
    pub fn optimal_cost(&self) -> Result<f64, QueryError> {
        self.best(&self.start(), &mut BTreeMap::new())
    }

    fn start(&self) -> Situation {
        let situation = Situation {
            done: 0,
            answers: vec![None; self.checks.len()],
            weights: self.repair.weights(),
        };
        self.still_broken(situation)
    }

    fn still_broken(&self, mut situation: Situation) -> Situation {
        for (world, weight) in situation.weights.iter_mut().enumerate() {
            if self.repair.works(world, situation.done) {
                *weight = 0.0;
            }
        }
        situation
    }

    pub(super) fn after_acting(&self, situation: &Situation, action: usize) -> Situation {
        let mut after = situation.clone();
        after.done |= 1 << action;
        self.still_broken(after)
    }

    pub(super) fn after_looking(&self, situation: &Situation, check: usize) -> Vec<Situation> {
        let rows = &self.checks[check].answers;
        let answers = rows.first().map_or(0, Vec::len);
        let seen = |answer: usize| {
            let mut after = situation.clone();
            after.answers[check] = Some(answer);
            for (weight, row) in after.weights.iter_mut().zip(rows) {
                *weight *= row[answer];
            }
            after
        };
        (0..answers).map(seen).collect()
    }

    fn follow(
        &self,
        situation: &Situation,
        policy: &impl Fn(&Situation) -> Step,
        left: &mut usize,
    ) -> Result<f64, QueryError> {
        *left = left.checked_sub(1).ok_or_else(|| self.too_many())?;
        let chance = situation.chance();
        if chance <= 0.0 {
            return Ok(0.0);
        }
        match policy(situation) {
            Step::Act(action)
                if action < self.repair.actions().len() && !situation.is_done(action) =>
            {
                let after = self.after_acting(situation, action);
                let cost = self.repair.actions()[action].cost * chance;
                Ok(cost + self.follow(&after, policy, left)?)
            }
            Step::Look(check) if situation.answers.get(check) == Some(&None) => {
                let mut cost = self.checks[check].cost * chance;
                for after in self.after_looking(situation, check) {
                    cost += self.follow(&after, policy, left)?;
                }
                Ok(cost)
            }
            _ => Ok(self.repair.give_up() * chance),
        }
    }

    fn best(
        &self,
        situation: &Situation,
        known: &mut BTreeMap<(u64, Vec<Option<usize>>), f64>,
    ) -> Result<f64, QueryError> {
        let key = (situation.done, situation.answers.clone());
        if let Some(&cost) = known.get(&key) {
            return Ok(cost);
        }
        if known.len() >= MOST_SITUATIONS {
            return Err(self.too_many());
        }
        let chance = situation.chance();
        let mut least = self.repair.give_up() * chance;
        if chance > 0.0 {
            for (place, action) in self.repair.actions().iter().enumerate() {
                if !situation.is_done(place) {
                    let after = self.after_acting(situation, place);
                    least = least.min(action.cost * chance + self.best(&after, known)?);
                }
            }
            for (place, check) in self.checks.iter().enumerate() {
                if situation.answers[place].is_none() {
                    let mut cost = check.cost * chance;
                    for after in self.after_looking(situation, place) {
                        cost += self.best(&after, known)?;
                    }
                    least = least.min(cost);
                }
            }
        }
        known.insert(key, least);
        Ok(least)
    }

    fn too_many(&self) -> QueryError {
        let checks = self.checks.iter().map(|check| check.name.clone());
        QueryError::TooLarge {
            variables: checks.collect(),
            entries: MOST_SITUATIONS + 1,
            limit: MOST_SITUATIONS,
        }
    }
}
