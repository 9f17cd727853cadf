//! The policies that are compared.

use belief::{QueryError, Situation, Step};

use super::problem::Problem;

/// From here on an action is taken without more checks: the rule of the whole-machine verdict.
const NEARLY_SURE: f64 = 0.9;
/// What a bit is worth, in units of money: as in the ranking of the next check.
const BIT: f64 = 5.0;

/// How the next step is chosen.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Rule {
    /// The best there is, by dynamic programming.
    Best,
    /// As the whole machine's next check is chosen: what brings most for its cost.
    Ours,
    /// The best if at most one check were made.
    OneCheckAhead,
    /// No checks: actions by their chance over their cost.
    ChanceOverCost,
    /// Every check in the order of the Path until one action is nearly sure, then actions by
    /// chance over cost.
    Checklist,
}

impl Rule {
    /// All of them, the best first.
    pub const ALL: [Self; 5] = [
        Self::Best,
        Self::Ours,
        Self::OneCheckAhead,
        Self::ChanceOverCost,
        Self::Checklist,
    ];

    /// What following it costs in expectation.
    ///
    /// # Errors
    /// When there are too many ways in which things can go.
    pub fn expected_cost(self, problem: &Problem) -> Result<f64, QueryError> {
        let troubleshooting = &problem.troubleshooting;
        let at_once = |situation: &Situation| troubleshooting.act_at_once(situation).0;
        match self {
            Self::Best => troubleshooting.optimal_cost(),
            Self::Ours => troubleshooting
                .expected_cost(|situation| troubleshooting.most_for_its_cost(situation, BIT)),
            Self::OneCheckAhead => troubleshooting
                .expected_cost(|situation| troubleshooting.one_check_ahead(situation)),
            Self::ChanceOverCost => troubleshooting.expected_cost(at_once),
            Self::Checklist => troubleshooting.expected_cost(|situation| {
                let next = problem.nearly_sure(situation).map(Step::Act);
                let next = next.or_else(|| problem.next_on_the_list(situation).map(Step::Look));
                next.unwrap_or_else(|| at_once(situation))
            }),
        }
    }
}

impl Problem {
    /// The action after which the machine works with the chance that is enough.
    fn nearly_sure(&self, situation: &Situation) -> Option<usize> {
        let whole: f64 = situation.weights().iter().sum();
        (0..self.actions()).find(|&action| {
            let works = |mending: &Option<Vec<usize>>| {
                let mending = mending.as_ref();
                mending.is_some_and(|all| {
                    all.iter()
                        .all(|&one| one == action || situation.is_done(one))
                })
            };
            let worlds = self.mended_by.iter().zip(situation.weights());
            let chance: f64 = worlds
                .filter(|(mending, _)| works(mending))
                .map(|(_, weight)| weight)
                .sum();
            !situation.is_done(action) && chance >= NEARLY_SURE * whole
        })
    }

    fn next_on_the_list(&self, situation: &Situation) -> Option<usize> {
        (0..self.checks()).find(|&check| situation.answer(check).is_none())
    }

    fn actions(&self) -> usize {
        self.troubleshooting.repair().actions().len()
    }

    fn checks(&self) -> usize {
        self.troubleshooting.checks().len()
    }
}
