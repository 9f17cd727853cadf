//! How well numbers fit a linear circuit whose resistances are only vaguely known beforehand.
//!
//! Each reading is a sum of unknown resistances, plus leads common to all readings, plus an
//! error of its own. Errors are taken as normal with the standard uncertainty of the GUM; the
//! unknowns are integrated out against their prior by Gauss–Hermite quadrature around the
//! generalised least-squares estimate. With as many numbers as unknowns this is the prior
//! predictive density; with more, misfit counts against the circuit too.

use super::priors::{Normal, square};
use super::readings::Number;

/// Seven-point Gauss–Hermite rule for a standard normal weight: (node, weight).
/// Abramowitz & Stegun, *Handbook of Mathematical Functions*, table 25.10, nodes times √2 and
/// weights over √π.
const RULE: [(f64, f64); 7] = [
    (-3.750_439_717_725_742, 0.000_548_268_855_972_217_7),
    (-2.366_759_410_734_541, 0.030_757_123_967_586_5),
    (-1.154_405_394_739_968, 0.240_123_178_605_012_72),
    (0.0, 0.457_142_857_142_857_14),
    (1.154_405_394_739_968, 0.240_123_178_605_012_72),
    (2.366_759_410_734_541, 0.030_757_123_967_586_5),
    (3.750_439_717_725_742, 0.000_548_268_855_972_217_7),
];

/// A number with the unknowns that it is the sum of: `[1, 0]` is the first of two alone.
#[derive(Debug, Clone, Copy)]
pub(super) struct Row<const K: usize> {
    pub(super) parts: [f64; K],
    pub(super) value: f64,
    pub(super) standard: f64,
}

impl<const K: usize> Row<K> {
    pub(super) fn new(number: &Number, parts: [f64; K]) -> Self {
        Self {
            parts,
            value: number.value,
            standard: number.standard,
        }
    }
}

/// The generalised least-squares fit of `K` unknowns, the leads being one error common to all.
#[derive(Debug, Clone, Copy)]
pub(super) struct Fit<const K: usize> {
    pub(super) estimate: [f64; K],
    /// Lower triangle of the Cholesky factor of the estimate's covariance.
    spread: [[f64; K]; K],
    /// The density of what the fit leaves over, as a factor in front of the prior's integral.
    residual: f64,
}

impl<const K: usize> Fit<K> {
    /// Fits the rows, or `None` where they don't determine all `K` unknowns.
    pub(super) fn of(rows: &[Row<K>], leads: Normal) -> Option<Self> {
        let spare = i32::try_from(rows.len()).ok()? - i32::try_from(K).ok()?;
        if spare < 0 {
            return None;
        }
        let weight = Weight::of(rows, leads.deviation);
        let mut normal = [[0.0; K]; K];
        let mut right = [0.0; K];
        for (i, row) in rows.iter().enumerate() {
            for (j, other) in rows.iter().enumerate() {
                let w = weight.between(rows, i, j);
                for (a, part) in row.parts.iter().enumerate() {
                    right[a] += part * w * (other.value - leads.mean);
                    for (b, other_part) in other.parts.iter().enumerate() {
                        normal[a][b] += part * w * other_part;
                    }
                }
            }
        }
        let factor = cholesky(&normal)?;
        let estimate = solve(&factor, right);
        let mut misfit = 0.0;
        for (i, row) in rows.iter().enumerate() {
            for (j, other) in rows.iter().enumerate() {
                misfit += weight.between(rows, i, j)
                    * left_over(row, &estimate, leads.mean)
                    * left_over(other, &estimate, leads.mean);
            }
        }
        let determinant: f64 = (0..K).map(|a| square(factor[a][a])).product();
        let scale = libm::pow(2.0 * core::f64::consts::PI, f64::from(spare));
        // A sum of squares; only its rounding can be below zero.
        let residual = libm::exp(-0.5 * misfit.max(0.0))
            / libm::sqrt(scale * weight.covariance_determinant * determinant);
        Some(Self {
            estimate,
            spread: cholesky(&inverse(&factor))?,
            residual,
        })
    }

    /// The estimate moved by `steps` standard deviations along its principal factors.
    fn moved(&self, steps: [f64; K]) -> [f64; K] {
        let mut point = self.estimate;
        for (a, coordinate) in point.iter_mut().enumerate() {
            for (b, step) in steps.iter().enumerate().take(a + 1) {
                *coordinate += self.spread[a][b] * step;
            }
        }
        point
    }

    /// The density of the readings when the unknowns have the density `prior`.
    pub(super) fn evidence(&self, prior: impl Fn([f64; K]) -> f64) -> f64 {
        let mut sum = 0.0;
        let mut places = [0usize; K];
        loop {
            let steps = places.map(|place| RULE[place].0);
            let weight: f64 = places.iter().map(|&place| RULE[place].1).product();
            sum += weight * prior(self.moved(steps));
            if !advance(&mut places) {
                return self.residual * sum;
            }
        }
    }
}

/// Counts through all places of the rule in `K` dimensions; false after the last.
fn advance<const K: usize>(places: &mut [usize; K]) -> bool {
    for place in places.iter_mut() {
        *place += 1;
        if *place < RULE.len() {
            return true;
        }
        *place = 0;
    }
    false
}

fn left_over<const K: usize>(row: &Row<K>, estimate: &[f64; K], leads: f64) -> f64 {
    let expected: f64 = row
        .parts
        .iter()
        .zip(estimate)
        .map(|(part, x)| part * x)
        .sum();
    row.value - leads - expected
}

/// The inverse of diag(standard²) + deviation²·11ᵀ, by Sherman and Morrison.
struct Weight {
    shared: f64,
    covariance_determinant: f64,
}

impl Weight {
    fn of<const K: usize>(rows: &[Row<K>], deviation: f64) -> Self {
        let own: f64 = rows.iter().map(|row| 1.0 / square(row.standard)).sum();
        let grown = 1.0 + square(deviation) * own;
        let product: f64 = rows.iter().map(|row| square(row.standard)).product();
        Self {
            shared: square(deviation) / grown,
            covariance_determinant: product * grown,
        }
    }

    fn between<const K: usize>(&self, rows: &[Row<K>], i: usize, j: usize) -> f64 {
        let (one, other) = (square(rows[i].standard), square(rows[j].standard));
        let own = if i == j { 1.0 / one } else { 0.0 };
        own - self.shared / (one * other)
    }
}

/// Lower triangular L with L·Lᵀ equal to a symmetric positive definite matrix.
fn cholesky<const K: usize>(matrix: &[[f64; K]; K]) -> Option<[[f64; K]; K]> {
    let mut factor = [[0.0; K]; K];
    for i in 0..K {
        for j in 0..=i {
            let done: f64 = (0..j).map(|k| factor[i][k] * factor[j][k]).sum();
            let rest = matrix[i][j] - done;
            if i == j {
                // Two equal columns: the rows can't tell these unknowns apart.
                if rest <= 1e-12 * matrix[i][i] {
                    return None;
                }
                factor[i][i] = libm::sqrt(rest);
            } else {
                factor[i][j] = rest / factor[j][j];
            }
        }
    }
    Some(factor)
}

/// Solves L·Lᵀ·x = right.
fn solve<const K: usize>(factor: &[[f64; K]; K], right: [f64; K]) -> [f64; K] {
    let mut x = right;
    for i in 0..K {
        let done: f64 = (0..i).map(|k| factor[i][k] * x[k]).sum();
        x[i] = (x[i] - done) / factor[i][i];
    }
    for i in (0..K).rev() {
        let done: f64 = (i + 1..K).map(|k| factor[k][i] * x[k]).sum();
        x[i] = (x[i] - done) / factor[i][i];
    }
    x
}

fn inverse<const K: usize>(factor: &[[f64; K]; K]) -> [[f64; K]; K] {
    let mut columns = [[0.0; K]; K];
    for (place, column) in columns.iter_mut().enumerate() {
        let mut unit = [0.0; K];
        unit[place] = 1.0;
        *column = solve(factor, unit);
    }
    columns
}

#[cfg(test)]
mod tests {
    use super::*;

    fn row<const K: usize>(parts: [f64; K], value: f64, standard: f64) -> Row<K> {
        Row {
            parts,
            value,
            standard,
        }
    }

    #[test]
    fn the_quadrature_rule_has_the_moments_of_the_standard_normal() {
        let moment = |power: i32| -> f64 { RULE.iter().map(|(x, w)| w * x.powi(power)).sum() };
        // 1, 1, 3, 15, 105: (n−1)!! for even n.
        for (power, expected) in [(0, 1.0), (2, 1.0), (4, 3.0), (6, 15.0), (8, 105.0)] {
            assert!(
                (moment(power) - expected).abs() < 1e-9 * expected,
                "{power}"
            );
        }
    }

    #[test]
    fn a_normal_prior_gives_the_closed_form_of_two_normals() {
        // y = x + leads + error, all normal: y is normal with the variances added.
        let rows = [row([1.0], 5.0, 0.3)];
        let leads = Normal::new(0.4, 0.2);
        let prior = Normal::new(6.0, 1.5);
        let expected = Normal::new(6.4, (0.09f64 + 0.04 + 2.25).sqrt()).density(5.0);
        let found = Fit::of(&rows, leads)
            .unwrap()
            .evidence(|[x]| prior.density(x));
        assert!((found / expected - 1.0).abs() < 1e-6, "{found} {expected}");
    }

    #[test]
    fn a_fit_without_enough_rows_is_refused() {
        let rows = [row([1.0, 1.0], 5.0, 0.3)];
        assert!(Fit::of(&rows, Normal::new(0.0, 0.1)).is_none());
        let same = [row([1.0, 1.0], 5.0, 0.3), row([1.0, 1.0], 5.1, 0.3)];
        assert!(Fit::of(&same, Normal::new(0.0, 0.1)).is_none());
    }
}
