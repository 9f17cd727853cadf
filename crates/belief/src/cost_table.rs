//! Choosing one action where its cost depends on which of several outcomes is the true one.

use crate::error::QueryError;

/// What each of several actions costs under each outcome. Outcomes may be fault sets, joint states
/// of variables, or anything else that excludes each other and has chances.
///
/// ```
/// use belief::CostTable;
///
/// // Outcomes: the relay, the motor, something else.
/// let mut costs = CostTable::over(3);
/// costs.action("replace the relay", &[20.0, 220.0, 220.0])?;
/// costs.action("scrap", &[150.0, 100.0, 120.0])?;
/// let chances = [0.3, 0.6, 0.1];
/// let best = costs.best(&chances)?.unwrap();
/// assert_eq!(costs.name(best.action), Some("scrap"));
///
/// // A check that tells the relay from the rest nine times in ten.
/// let answers = [[0.9, 0.1], [0.1, 0.9], [0.5, 0.5]];
/// let worth = costs.worth_of(&chances, &answers)?.unwrap();
/// assert!(worth.value > 0.0);
/// # Ok::<(), belief::QueryError>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct CostTable {
    outcomes: usize,
    actions: Vec<(String, Vec<f64>)>,
}

/// The action with the lowest expected cost.
#[derive(Debug, Clone, PartialEq)]
pub struct Choice {
    /// Its place among the actions.
    pub action: usize,
    /// Its expected cost.
    pub cost: f64,
}

/// What looking before deciding is worth.
#[derive(Debug, Clone, PartialEq)]
pub struct Worth {
    /// The best choice without looking.
    pub now: Choice,
    /// Per answer: how likely it is, and the best choice then; no choice where it can't come.
    pub then: Vec<(f64, Option<Choice>)>,
    /// Expected drop in expected cost, from zero upwards. What looking itself costs is not in it.
    pub value: f64,
}

impl CostTable {
    /// A table without actions yet.
    #[must_use]
    pub fn over(outcomes: usize) -> Self {
        Self {
            outcomes,
            actions: Vec::new(),
        }
    }

    /// Adds an action with its cost under each outcome. Gains are negative costs.
    ///
    /// # Errors
    /// When there isn't one finite cost per outcome.
    pub fn action(&mut self, name: &str, costs: &[f64]) -> Result<(), QueryError> {
        check_length(name, self.outcomes, costs.len())?;
        if costs.iter().any(|cost| !cost.is_finite()) {
            return Err(QueryError::Number {
                of: name.to_owned(),
            });
        }
        self.actions.push((name.to_owned(), costs.to_vec()));
        Ok(())
    }

    /// The name of an action.
    #[must_use]
    pub fn name(&self, action: usize) -> Option<&str> {
        self.actions.get(action).map(|(name, _)| name.as_str())
    }

    /// The expected cost of every action, in order.
    ///
    /// # Errors
    /// When there isn't one chance per outcome.
    pub fn expected_costs(&self, chances: &[f64]) -> Result<Vec<f64>, QueryError> {
        check_length("chances", self.outcomes, chances.len())?;
        Ok(self.weighed(chances))
    }

    /// The action with the lowest expected cost, the first one of equals; none when there are no
    /// actions.
    ///
    /// # Errors
    /// When there isn't one chance per outcome.
    pub fn best(&self, chances: &[f64]) -> Result<Option<Choice>, QueryError> {
        Ok(least(self.expected_costs(chances)?))
    }

    /// What it is worth to get an answer first, given how likely each answer is under each
    /// outcome: the expected cost of the best action now, less the expectation of what it will be
    /// after the answer (Howard, "Information value theory", 1966; from memory). None when there
    /// are no actions.
    ///
    /// # Errors
    /// When there isn't one chance and one row of answers per outcome, or rows differ in length.
    pub fn worth_of(
        &self,
        chances: &[f64],
        answers: &[impl AsRef<[f64]>],
    ) -> Result<Option<Worth>, QueryError> {
        check_length("chances", self.outcomes, chances.len())?;
        check_length("answers", self.outcomes, answers.len())?;
        let count = answers.first().map_or(0, |row| row.as_ref().len());
        for row in answers {
            check_length("answers", count, row.as_ref().len())?;
        }
        let with = |answer: usize| {
            let pairs = chances.iter().zip(answers);
            pairs
                .map(|(chance, row)| chance * row.as_ref()[answer])
                .collect()
        };
        Ok(self.worth(chances, &(0..count).map(with).collect::<Vec<_>>()))
    }

    /// The same from how likely each outcome is together with each answer.
    pub(crate) fn worth(&self, chances: &[f64], with_answer: &[Vec<f64>]) -> Option<Worth> {
        let now = least(self.weighed(chances))?;
        let mut cost_then = 0.0;
        let then = with_answer.iter().map(|joint| {
            let seen: f64 = joint.iter().sum();
            let choice = least(self.weighed(joint)).filter(|_| seen > 0.0);
            let choice = choice.map(|choice| {
                cost_then += choice.cost;
                Choice {
                    cost: choice.cost / seen,
                    ..choice
                }
            });
            (seen, choice)
        });
        let then = then.collect();
        Some(Worth {
            // Knowing more can't cost anything; rounding could say so.
            value: (now.cost - cost_then).max(0.0),
            now,
            then,
        })
    }

    fn weighed(&self, chances: &[f64]) -> Vec<f64> {
        let weigh = |costs: &[f64]| costs.iter().zip(chances).map(|(cost, p)| cost * p).sum();
        self.actions.iter().map(|(_, costs)| weigh(costs)).collect()
    }
}

fn least(costs: Vec<f64>) -> Option<Choice> {
    let mut best: Option<Choice> = None;
    for (action, cost) in costs.into_iter().enumerate() {
        if best.as_ref().is_none_or(|best| cost < best.cost) {
            best = Some(Choice { action, cost });
        }
    }
    best
}

fn check_length(of: &str, expected: usize, found: usize) -> Result<(), QueryError> {
    if expected == found {
        return Ok(());
    }
    Err(QueryError::Shape {
        of: of.to_owned(),
        expected,
        found,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn equals_are_decided_by_order_and_nothing_to_choose_is_no_choice() {
        let mut costs = CostTable::over(2);
        assert_eq!(costs.best(&[0.5, 0.5]), Ok(None));
        costs.action("one", &[1.0, 3.0]).unwrap();
        costs.action("other", &[3.0, 1.0]).unwrap();
        assert_eq!(
            costs.best(&[0.5, 0.5]).unwrap().map(|choice| choice.action),
            Some(0)
        );
    }

    #[test]
    fn numbers_for_another_count_of_outcomes_are_refused() {
        let mut costs = CostTable::over(2);
        assert!(costs.action("one", &[1.0]).is_err());
        assert!(costs.action("one", &[1.0, f64::NAN]).is_err());
        costs.action("one", &[1.0, 2.0]).unwrap();
        assert!(costs.best(&[1.0]).is_err());
        assert!(
            costs
                .worth_of(&[0.5, 0.5], &[vec![1.0], vec![0.5, 0.5]])
                .is_err()
        );
    }
}
