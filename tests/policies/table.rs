//! Every policy on a hundred problems.

use belief::QueryError;
use diagnosis::{Assumptions, Build, Choice};

use super::problem::{Problem, draw};
use super::rule::Rule;
use crate::motors::Random;

/// How many problems, and what they are drawn by.
const PROBLEMS: usize = 100;
const SEED: u64 = 6;
/// So many machines are drawn at most: most of them make a problem.
const MOST_DRAWN: usize = 1_000;

/// What one policy costs, against the best one on the same problem.
#[derive(Debug, Clone, PartialEq)]
pub struct Row {
    /// The policy.
    pub rule: Rule,
    /// Expected cost on average, in units of money.
    pub mean: f64,
    /// Expected cost over that of the best policy, by problem, the smallest first.
    pub ratios: Vec<f64>,
}

impl Row {
    /// The ratio that so many of a hundred problems don't exceed.
    #[must_use]
    pub fn of_hundred(&self, percent: usize) -> f64 {
        let place = (self.ratios.len() * percent / 100).max(1) - 1;
        self.ratios.get(place).copied().unwrap_or(f64::NAN)
    }
}

/// The same problems every time, builds in turn.
#[must_use]
pub fn problems(assumptions: &Assumptions) -> Vec<Problem> {
    let mut random = Random::seeded(SEED);
    let builds = Build::ALL.iter().copied().cycle().take(MOST_DRAWN);
    let drawn = builds.filter_map(|build| draw(assumptions, build, &mut random));
    drawn.take(PROBLEMS).collect()
}

/// A row for each policy, the best first.
///
/// # Errors
/// When a problem is too large for the best policy to be found.
pub fn table(problems: &[Problem]) -> Result<Vec<Row>, QueryError> {
    let mut rows: Vec<Row> = Vec::new();
    let best: Result<Vec<f64>, QueryError> = problems
        .iter()
        .map(|problem| Rule::Best.expected_cost(problem))
        .collect();
    let best = best?;
    for rule in Rule::ALL {
        let mut ratios = Vec::new();
        let mut sum = 0.0;
        for (problem, best) in problems.iter().zip(&best) {
            let cost = match rule {
                Rule::Best => *best,
                _ => rule.expected_cost(problem)?,
            };
            sum += cost;
            ratios.push(cost / best);
        }
        ratios.sort_by(f64::total_cmp);
        rows.push(Row {
            rule,
            mean: sum / problems.len() as f64,
            ratios,
        });
    }
    Ok(rows)
}
