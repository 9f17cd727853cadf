//! The integral over resistances that nobody knows, by adaptive Gauss–Hermite quadrature: the
//! rule is laid around the most probable resistances, as wide as readings and prior leave them.
//! (Liu and Pierce, "A note on Gauss–Hermite quadrature", *Biometrika* 81, 1994; from memory.)
//!
//! It runs over the size of what was read, and over the ratios of the resistances to the first
//! one. One reading alone then settles one coordinate and leaves the others as they were, where
//! in plain resistances it would leave a thin, bent ridge.

use super::evidence::{Between, Circuit, Seen};
use super::log_normal::{Cholesky, LogNormal, Matrix};

/// Five-point Gauss–Hermite rule for a standard normal weight: (node, weight). Abramowitz & Stegun,
/// *Handbook of Mathematical Functions*, table 25.10, nodes times √2 and weights over √π.
const RULE: [(f64, f64); 5] = [
    (-2.856_970_013_872_805_6, 0.011_257_411_327_720_688),
    (-1.355_626_179_974_266, 0.222_075_922_005_612_64),
    (0.0, 0.533_333_333_333_333_3),
    (1.355_626_179_974_266, 0.222_075_922_005_612_64),
    (2.856_970_013_872_805_6, 0.011_257_411_327_720_688),
];

/// Prior times likelihood over `K` resistances, with the peak that they have.
pub(super) struct Integral<'a, const K: usize> {
    seen: &'a Seen,
    circuit: Circuit<K>,
    prior: &'a LogNormal<K>,
    peak: Point<K>,
    /// How sharply prior times likelihood falls off around the peak, against the logarithms.
    precision: Matrix<K>,
}

/// One choice of resistances.
#[derive(Clone, Copy)]
struct Point<const K: usize> {
    /// Their natural logarithms.
    logs: [f64; K],
    ohms: [f64; K],
    between: [Between<K>; 3],
    /// Logarithm of prior times likelihood, without constant factors.
    height: f64,
}

/// The size of what was read, then the ratios of all but the first resistance to the first.
#[derive(Clone, Copy)]
struct Coordinates<const K: usize> {
    logs: [f64; K],
    plain: [f64; K],
}

impl<'a, const K: usize> Integral<'a, K> {
    /// Finds the peak by Gauss and Newton's method with step halving.
    pub(super) fn around_peak(
        seen: &'a Seen,
        circuit: Circuit<K>,
        prior: &'a LogNormal<K>,
    ) -> Self {
        let at = |logs: [f64; K]| Point::at(logs, seen, circuit, prior);
        // Every circuit grows in proportion with its resistances: start from the prior's, scaled
        // to the numbers.
        let growth = libm::log(seen.growth(&at(prior.mean).between));
        let mut peak = at(prior.mean.map(|log| log + growth));
        let mut precision = peak.precision(seen, prior);
        for _ in 0..20 {
            let slope = peak.slope(seen, prior);
            let step = Cholesky::of(&precision).solve(slope);
            // Half of this is the height still to be won.
            if dot(&slope, &step) < 1e-7 {
                break;
            }
            let Some(higher) = peak.higher(&step, at) else {
                break;
            };
            peak = higher;
            precision = peak.precision(seen, prior);
        }
        Self {
            seen,
            circuit,
            prior,
            peak,
            precision,
        }
    }

    /// Logarithm of what the peak's height and curvature alone would give (Laplace).
    pub(super) fn log_rough(&self) -> f64 {
        let precision = Cholesky::of(&self.precision);
        self.prior.log_root_determinant + self.peak.height - precision.log_root_determinant()
    }

    /// The integral, as a factor on the rough one.
    pub(super) fn correction(&self) -> f64 {
        let directions = self.directions();
        // What each step along each direction multiplies size and ratios by: exponentials for a
        // few steps, not for every place.
        let mut factors = [[[1.0; K]; RULE.len()]; K];
        for (factors, direction) in factors.iter_mut().zip(directions) {
            for (factor, (node, _)) in factors.iter_mut().zip(RULE) {
                *factor = direction.map(|part| libm::exp(part * node));
            }
        }
        let peak = Coordinates::of(&self.peak, self.seen);
        let mut places = [0usize; K];
        let mut sum = 0.0;
        loop {
            let mut moved = peak;
            let (mut weight, mut square) = (1.0, 0.0);
            for (direction, &step) in places.iter().enumerate() {
                let (node, part) = RULE[step];
                weight *= part;
                square += node * node;
                for k in 0..K {
                    moved.logs[k] += directions[direction][k] * node;
                    moved.plain[k] *= factors[direction][step][k];
                }
            }
            let (logs, between) = self.resistances(moved);
            let above = height(&logs, &between, self.seen, self.prior) - self.peak.height;
            sum += weight * libm::exp(above + 0.5 * square) * self.seen.over_range(&between);
            if !advance(&mut places) {
                return sum;
            }
        }
    }

    /// Logarithms of the resistances with this size and these ratios, and what lies between the
    /// parts.
    fn resistances(&self, coordinates: Coordinates<K>) -> ([f64; K], [Between<K>; 3]) {
        let Coordinates { mut logs, plain } = coordinates;
        let mut shape = plain;
        shape[0] = 1.0;
        let mut between = (self.circuit)(&shape);
        // Circuits grow in proportion with their resistances.
        let size = self.seen.size(&between);
        for (ohms, _) in &mut between {
            *ohms *= plain[0] / size;
        }
        let growth = logs[0] - libm::log(size);
        logs[0] = 0.0;
        (logs.map(|log| log + growth), between)
    }

    /// Where one standard deviation leads in the logarithms of size and ratios, along directions
    /// that are independent of each other.
    fn directions(&self) -> [[f64; K]; K] {
        let size = self.seen.size(&self.peak.between);
        // How the logarithms of the resistances follow those of size and ratios: all with the
        // size; one with its own ratio; all against the growth that a ratio would bring.
        let follows: Matrix<K> = core::array::from_fn(|k| {
            core::array::from_fn(|j| {
                if j == 0 {
                    return 1.0;
                }
                let grows = self.seen.size_of(self.peak.slopes(j)) / size;
                if j == k { 1.0 - grows } else { -grows }
            })
        });
        let precision = core::array::from_fn(|i| {
            core::array::from_fn(|j| {
                let column = core::array::from_fn(|k| follows[k][j]);
                let row: [f64; K] = core::array::from_fn(|k| follows[k][i]);
                dot(&row, &times(&self.precision, &column))
            })
        });
        let factor = Cholesky::of(&precision);
        core::array::from_fn(|place| {
            let mut unit = [0.0; K];
            unit[place] = 1.0;
            factor.solve_transposed(unit)
        })
    }
}

impl<const K: usize> Coordinates<K> {
    fn of(point: &Point<K>, seen: &Seen) -> Self {
        let mut plain = point.ohms.map(|ohms| ohms / point.ohms[0]);
        plain[0] = seen.size(&point.between);
        Self {
            logs: plain.map(libm::log),
            plain,
        }
    }
}

impl<const K: usize> Point<K> {
    fn at(logs: [f64; K], seen: &Seen, circuit: Circuit<K>, prior: &LogNormal<K>) -> Self {
        let ohms = logs.map(libm::exp);
        let between = circuit(&ohms);
        Self {
            logs,
            ohms,
            between,
            height: height(&logs, &between, seen, prior),
        }
    }

    /// The point a step away, or as much of the step as is needed to gain height.
    fn higher(&self, step: &[f64; K], at: impl Fn([f64; K]) -> Self) -> Option<Self> {
        let longest = step.iter().fold(0.0f64, |most, part| most.max(part.abs()));
        // Far from the peak a step can be wild: no more than a factor of e².
        let mut share = (2.0 / longest).min(1.0);
        for _ in 0..12 {
            let next = at(core::array::from_fn(|k| self.logs[k] + share * step[k]));
            if next.height > self.height {
                return Some(next);
            }
            share *= 0.5;
        }
        None
    }

    /// The slope of the height against the logarithms.
    fn slope(&self, seen: &Seen, prior: &LogNormal<K>) -> [f64; K] {
        let pull = times(&prior.precision, &difference(&self.logs, &prior.mean));
        let residuals = seen.residuals(&self.between);
        core::array::from_fn(|k| seen.weigh(self.slopes(k), residuals) - pull[k])
    }

    /// The curvature of the height, as far as first derivatives of the circuit give it.
    fn precision(&self, seen: &Seen, prior: &LogNormal<K>) -> Matrix<K> {
        let mut precision = prior.precision;
        for (i, row) in precision.iter_mut().enumerate() {
            for (j, entry) in row.iter_mut().enumerate() {
                *entry += seen.weigh(self.slopes(i), self.slopes(j));
            }
        }
        precision
    }

    /// The slopes of all three pairs against one logarithm.
    fn slopes(&self, k: usize) -> [f64; 3] {
        self.between.map(|(_, slopes)| slopes[k] * self.ohms[k])
    }
}

/// Logarithm of prior times likelihood, without constant factors.
fn height<const K: usize>(
    logs: &[f64; K],
    between: &[Between<K>; 3],
    seen: &Seen,
    prior: &LogNormal<K>,
) -> f64 {
    let away = difference(logs, &prior.mean);
    let unlikely = dot(&away, &times(&prior.precision, &away));
    let residuals = seen.residuals(between);
    -0.5 * (unlikely + seen.weigh(residuals, residuals))
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

fn difference<const K: usize>(one: &[f64; K], other: &[f64; K]) -> [f64; K] {
    core::array::from_fn(|k| one[k] - other[k])
}

fn dot<const K: usize>(one: &[f64; K], other: &[f64; K]) -> f64 {
    one.iter().zip(other).map(|(a, b)| a * b).sum()
}

fn times<const K: usize>(matrix: &Matrix<K>, vector: &[f64; K]) -> [f64; K] {
    core::array::from_fn(|i| dot(&matrix[i], vector))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_quadrature_rule_has_the_moments_of_the_standard_normal() {
        let moment = |power: i32| -> f64 { RULE.iter().map(|(x, w)| w * x.powi(power)).sum() };
        // 1, 1, 3, 15, 105: (n−1)!! for even n.
        for (power, expected) in [(0, 1.0), (2, 1.0), (4, 3.0), (6, 15.0), (8, 105.0)] {
            let error = moment(power) - expected;
            assert!(error.abs() < 1e-9 * expected, "{power}");
        }
    }
}
