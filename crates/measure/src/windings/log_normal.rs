//! Several resistances whose logarithms are jointly normal, and the small matrices that this takes.

use super::priors::Normal;

pub(super) type Matrix<const K: usize> = [[f64; K]; K];

/// What is thought of `K` resistances beforehand: their natural logarithms (of ohms) are jointly
/// normal.
#[derive(Debug, Clone, Copy)]
pub(super) struct LogNormal<const K: usize> {
    /// Means of the logarithms.
    pub(super) mean: [f64; K],
    /// The inverse of their covariance.
    pub(super) precision: Matrix<K>,
    /// Natural logarithm of the square root of the precision's determinant.
    pub(super) log_root_determinant: f64,
}

impl<const K: usize> LogNormal<K> {
    /// Adds up independent causes. Each moves the logarithms along its direction: one that makes
    /// both windings larger has the direction `[1, 1]`.
    ///
    /// The directions have to span all `K` dimensions, which those of this module do.
    pub(super) fn of<const N: usize>(causes: [([f64; K], Normal); N]) -> Self {
        let mut mean = [0.0; K];
        let mut covariance = [[0.0; K]; K];
        for (direction, cause) in causes {
            for i in 0..K {
                mean[i] += direction[i] * cause.mean;
                for j in 0..K {
                    covariance[i][j] +=
                        direction[i] * direction[j] * cause.deviation * cause.deviation;
                }
            }
        }
        let factor = Cholesky::of(&covariance);
        Self {
            mean,
            precision: factor.inverse(),
            log_root_determinant: -factor.log_root_determinant(),
        }
    }
}

/// The lower triangular factor L of a symmetric positive definite matrix L·Lᵀ.
#[derive(Debug, Clone, Copy)]
pub(super) struct Cholesky<const K: usize>(Matrix<K>);

impl<const K: usize> Cholesky<K> {
    /// Factors a matrix. A pivot that rounding or a spread of nothing brings to zero is taken as
    /// very small, so that there is always a factor.
    pub(super) fn of(matrix: &Matrix<K>) -> Self {
        const SMALLEST_PIVOT: f64 = 1e-12;
        let mut factor = [[0.0; K]; K];
        for i in 0..K {
            for j in 0..=i {
                let done: f64 = (0..j).map(|k| factor[i][k] * factor[j][k]).sum();
                let rest = matrix[i][j] - done;
                factor[i][j] = if i == j {
                    libm::sqrt(rest.max(SMALLEST_PIVOT))
                } else {
                    rest / factor[j][j]
                };
            }
        }
        Self(factor)
    }

    /// Natural logarithm of the square root of the matrix's determinant.
    pub(super) fn log_root_determinant(&self) -> f64 {
        (0..K).map(|i| libm::log(self.0[i][i])).sum()
    }

    /// Solves (L·Lᵀ)·x = right.
    pub(super) fn solve(&self, right: [f64; K]) -> [f64; K] {
        let mut x = right;
        for i in 0..K {
            let done: f64 = (0..i).map(|k| self.0[i][k] * x[k]).sum();
            x[i] = (x[i] - done) / self.0[i][i];
        }
        self.solve_transposed(x)
    }

    /// Solves Lᵀ·x = right: where the matrix is a precision, this turns independent standard
    /// normals into ones with that precision.
    pub(super) fn solve_transposed(&self, right: [f64; K]) -> [f64; K] {
        let mut x = right;
        for i in (0..K).rev() {
            let done: f64 = (i + 1..K).map(|k| self.0[k][i] * x[k]).sum();
            x[i] = (x[i] - done) / self.0[i][i];
        }
        x
    }

    /// The inverse of the matrix.
    pub(super) fn inverse(&self) -> Matrix<K> {
        core::array::from_fn(|place| {
            let mut unit = [0.0; K];
            unit[place] = 1.0;
            self.solve(unit)
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn close<const K: usize>(found: &Matrix<K>, expected: &Matrix<K>) {
        for (found, expected) in found.iter().flatten().zip(expected.iter().flatten()) {
            assert!((found - expected).abs() < 1e-9, "{found} {expected}");
        }
    }

    #[test]
    fn a_matrix_times_its_inverse_is_one() {
        let matrix = [[4.0, 1.0, 0.5], [1.0, 3.0, -0.7], [0.5, -0.7, 2.0]];
        let inverse = Cholesky::of(&matrix).inverse();
        let product = matrix.map(|row| {
            let column = |j: usize| (0..3).map(|k| row[k] * inverse[k][j]).sum();
            [column(0), column(1), column(2)]
        });
        close(
            &product,
            &[[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]],
        );
    }

    #[test]
    fn two_causes_give_the_covariance_worked_out_by_hand() {
        // run = 2 ± 0.5; start = run + 0.3 ± 0.2, all in logarithms.
        let known = LogNormal::of([
            ([1.0, 1.0], Normal::new(2.0, 0.5)),
            ([0.0, 1.0], Normal::new(0.3, 0.2)),
        ]);
        assert!((known.mean[0] - 2.0).abs() < 1e-12 && (known.mean[1] - 2.3).abs() < 1e-12);
        // The precision of a chain: [[1/s² + 1/t², −1/t²], [−1/t², 1/t²]].
        close(&known.precision, &[[4.0 + 25.0, -25.0], [-25.0, 25.0]]);
        let expected = libm::log(1.0 / (0.5 * 0.2));
        assert!((known.log_root_determinant - expected).abs() < 1e-12);
    }
}
