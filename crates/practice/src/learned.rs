//! A classifier that starts from what somebody believes already and learns from examples what to
//! add for each thing seen: multinomial logistic regression with an offset, fitted by stochastic
//! gradient steps (per-feature rates as in Duchi, Hazan and Singer 2011; from memory) with a normal
//! prior on every weight. The same examples give the same bits.
//!
//! Must never know: what the classes and the things seen are.

use std::collections::BTreeMap;

/// Standard deviation of the prior of each weight: a thing seen may turn the odds of a class by a
/// factor of e or so either way (judgement, set before anything was measured with it).
const PRIOR: f64 = 1.0;
/// How often all examples are gone through.
const ROUNDS: usize = 12;
/// First step along a feature.
const RATE: f64 = 0.3;

/// One case to learn from or to be asked about.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Case {
    /// What is seen of it, by number.
    pub(crate) seen: Vec<usize>,
    /// Natural logarithm of what is believed of each class already.
    pub(crate) believed: Vec<f64>,
    /// The class that it is of.
    pub(crate) class: usize,
}

/// What was learned.
pub(crate) struct Learned {
    classes: usize,
    /// By thing seen, one number a class; what is seen of every case comes first.
    weights: Vec<f64>,
    /// How much of what is believed already is kept.
    trust: f64,
}

impl Learned {
    /// Learns from cases.
    pub(crate) fn from(cases: &[&Case], classes: usize, features: usize) -> Self {
        let mut learned = Self {
            classes,
            weights: vec![0.0; (features + 1) * classes],
            trust: 1.0,
        };
        let mut often: BTreeMap<usize, f64> = BTreeMap::new();
        for place in cases.iter().flat_map(|case| places(case)) {
            *often.entry(place).or_default() += 1.0;
        }
        let mut squares = vec![0.0; features + 1];
        let mut trust_squares = 0.0;
        for _ in 0..ROUNDS {
            for case in cases {
                let mut slope = learned.odds(case);
                slope[case.class] -= 1.0;
                let size: f64 = slope.iter().map(|one| one * one).sum();
                for place in places(case) {
                    squares[place] += size;
                    let rate = RATE / squares[place].sqrt().max(1e-3);
                    // Each case bears its part of the prior of what it shows.
                    let often = often.get(&place).copied().unwrap_or(1.0);
                    let pull = 1.0 / (PRIOR * PRIOR * often);
                    for (weight, slope) in learned.row_mut(place).iter_mut().zip(&slope) {
                        *weight -= rate * (slope + pull * *weight);
                    }
                }
                let along = slope.iter().zip(&case.believed);
                let along: f64 = along.map(|(slope, ln)| slope * ln).sum();
                trust_squares += along * along;
                learned.trust -= RATE * along / trust_squares.sqrt().max(1.0);
                learned.trust = learned.trust.clamp(0.0, 2.0);
            }
        }
        learned
    }

    /// How likely each class is.
    pub(crate) fn odds(&self, case: &Case) -> Vec<f64> {
        let mut sums: Vec<f64> = case.believed.iter().map(|ln| self.trust * ln).collect();
        for place in places(case) {
            let row = &self.weights[place * self.classes..(place + 1) * self.classes];
            for (sum, weight) in sums.iter_mut().zip(row) {
                *sum += weight;
            }
        }
        let top = sums.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        sums.iter_mut().for_each(|sum| *sum = libm::exp(*sum - top));
        let whole: f64 = sums.iter().sum();
        sums.iter_mut().for_each(|sum| *sum /= whole);
        sums
    }

    fn row_mut(&mut self, place: usize) -> &mut [f64] {
        &mut self.weights[place * self.classes..(place + 1) * self.classes]
    }
}

/// What every case shows, and what this one does.
fn places(case: &Case) -> impl Iterator<Item = usize> + '_ {
    std::iter::once(0).chain(case.seen.iter().map(|seen| seen + 1))
}

/// The odds of each case that is asked about, by what was learned from those of other groups: a
/// case's group and all that belongs to it stay out. In the order of the cases; nothing where a
/// case isn't asked about.
pub(crate) fn out_of_fold(
    cases: &[Case],
    fold: impl Fn(usize) -> usize,
    folds: usize,
    is_asked: impl Fn(usize) -> bool,
) -> Vec<Option<Vec<f64>>> {
    let classes = cases.first().map_or(0, |case| case.believed.len());
    let features = cases.iter().flat_map(|case| &case.seen).max();
    let features = features.map_or(0, |most| most + 1);
    let mut found = vec![None; cases.len()];
    for one in 0..folds {
        let others: Vec<&Case> = cases
            .iter()
            .enumerate()
            .filter(|(place, _)| fold(*place) != one)
            .map(|(_, case)| case)
            .collect();
        let learned = Learned::from(&others, classes, features);
        for (place, case) in cases.iter().enumerate() {
            if fold(place) == one && is_asked(place) {
                found[place] = Some(learned.odds(case));
            }
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;
    use simulator::Chance;

    const MACHINES: usize = 3_000;

    fn accuracy(cases: &[Case]) -> f64 {
        let found = out_of_fold(cases, |place| place % 5, 5, |_| true);
        let right = found.iter().zip(cases).filter(|(odds, case)| {
            let odds = odds.as_ref().unwrap();
            let likeliest = (0..odds.len()).max_by(|a, b| odds[*a].total_cmp(&odds[*b]));
            likeliest == Some(case.class)
        });
        right.count() as f64 / cases.len() as f64
    }

    /// Three classes, six signs that show with a chance of their own in each.
    fn toy(chance: &mut Chance) -> (Vec<Case>, f64) {
        let shares = [0.5, 0.3, 0.2];
        let shows = [
            [0.9, 0.2, 0.3],
            [0.1, 0.7, 0.2],
            [0.3, 0.3, 0.8],
            [0.5, 0.6, 0.4],
            [0.2, 0.5, 0.9],
            [0.6, 0.1, 0.5],
        ];
        let joint = |signs: usize, class: usize| -> f64 {
            let each = shows.iter().enumerate().map(|(place, row)| {
                if signs >> place & 1 == 1 {
                    row[class]
                } else {
                    1.0 - row[class]
                }
            });
            shares[class] * each.product::<f64>()
        };
        // Who knows all this is right so often.
        let best = (0..64).map(|signs| {
            let each = (0..3).map(|class| joint(signs, class));
            each.fold(0.0, f64::max)
        });
        let cases = (0..MACHINES).map(|_| {
            let mark = chance.share();
            let class = usize::from(mark > 0.5) + usize::from(mark > 0.8);
            let seen = (0..6).map(|place| {
                let is_seen = chance.happens(shows[place][class]);
                2 * place + usize::from(is_seen)
            });
            Case {
                seen: seen.collect(),
                believed: vec![0.0; 3],
                class,
            }
        });
        (cases.collect(), best.sum())
    }

    #[test]
    fn it_comes_as_near_to_the_best_there_is_as_so_many_cases_allow() {
        let (cases, best) = toy(&mut Chance::new(5));
        let found = accuracy(&cases);
        let spread = (best * (1.0 - best) / MACHINES as f64).sqrt();
        assert!(
            (found - best).abs() < 3.0 * spread,
            "{found} where {best} is the best, give or take {spread}"
        );
    }

    /// A sign of its own on every case would give its class away, had the case itself been learned
    /// from.
    #[test]
    fn no_case_is_told_its_own_class() {
        let mut chance = Chance::new(6);
        let cases: Vec<Case> = (0..MACHINES)
            .map(|place| Case {
                seen: vec![place],
                believed: vec![0.0; 4],
                class: (4.0 * chance.share()) as usize,
            })
            .collect();
        let spread = (0.25 * 0.75 / MACHINES as f64).sqrt();
        assert!((accuracy(&cases) - 0.25).abs() < 4.0 * spread);
    }

    /// Where the signs say nothing, what was believed already stays as good as it was.
    #[test]
    fn what_is_known_already_is_not_lost_among_signs_without_meaning() {
        let mut chance = Chance::new(7);
        let cases: Vec<Case> = (0..MACHINES)
            .map(|_| {
                let class = (5.0 * chance.share()) as usize;
                let said = if chance.happens(0.8) {
                    class
                } else {
                    (5.0 * chance.share()) as usize
                };
                let mut believed = vec![libm::log(0.05); 5];
                believed[said] = libm::log(0.8);
                let seen = (0..8).map(|place| 3 * place + (3.0 * chance.share()) as usize);
                Case {
                    seen: seen.collect(),
                    believed,
                    class,
                }
            })
            .collect();
        // 0.8 and a fifth of the rest.
        let spread = (0.84 * 0.16 / MACHINES as f64).sqrt();
        let found = accuracy(&cases);
        assert!((found - 0.84).abs() < 3.0 * spread, "{found}");
    }
}
