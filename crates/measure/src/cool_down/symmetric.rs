//! Symmetric matrices of three rows, as the normal equations of three unknowns are.

/// Upper triangle, row by row: 00, 01, 02, 11, 12, 22.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct Symmetric(pub(super) [f64; 6]);

impl Symmetric {
    pub(super) const fn diagonal(values: [f64; 3]) -> Self {
        Self([values[0], 0.0, 0.0, values[1], 0.0, values[2]])
    }

    /// Adds `weight` times the products of a vector with itself.
    pub(super) fn add_square(&mut self, of: [f64; 3], weight: f64) {
        let [x, y, z] = of;
        let [wx, wy, wz] = of.map(|one| weight * one);
        let products = [wx * x, wx * y, wx * z, wy * y, wy * z, wz * z];
        for (sum, product) in self.0.iter_mut().zip(products) {
            *sum += product;
        }
    }

    pub(super) fn plus(self, other: Self) -> Self {
        Self(core::array::from_fn(|place| self.0[place] + other.0[place]))
    }

    pub(super) fn times(self, factor: f64) -> Self {
        Self(self.0.map(|one| one * factor))
    }

    pub(super) fn apply(&self, to: [f64; 3]) -> [f64; 3] {
        let [a, b, c, d, e, f] = self.0;
        let [x, y, z] = to;
        [
            a * x + b * y + c * z,
            b * x + d * y + e * z,
            c * x + e * y + f * z,
        ]
    }

    /// xᵀ·M·x.
    pub(super) fn form(&self, of: [f64; 3]) -> f64 {
        dot(of, self.apply(of))
    }

    /// The inverse and the logarithm of the determinant of a positive definite matrix, by its
    /// Cholesky factor: cofactors would lose their digits where two columns are nearly alike.
    pub(super) fn inverse(&self) -> (Self, f64) {
        let [a, b, c, d, e, f] = self.0;
        // Rounding may take what is hardly positive below zero.
        let root = |square: f64, of: f64| libm::sqrt(square.max(of * f64::EPSILON));
        let p = root(a, a);
        let (q, r) = (b / p, c / p);
        let s = root(d - q * q, d);
        let t = (e - q * r) / s;
        let u = root(f - r * r - t * t, f);
        let (ip, is, iu) = (1.0 / p, 1.0 / s, 1.0 / u);
        // The factor's inverse is lower triangular: columns from the top.
        let y = -q * ip * is;
        let z = -t * is * iu;
        let x = (q * t - r * s) * ip * is * iu;
        let inverse = Self([
            ip * ip + y * y + x * x,
            y * is + x * z,
            x * iu,
            is * is + z * z,
            z * iu,
            iu * iu,
        ]);
        (inverse, 2.0 * libm::log(p * s * u))
    }
}

pub(super) fn dot(one: [f64; 3], other: [f64; 3]) -> f64 {
    one[0] * other[0] + one[1] * other[1] + one[2] * other[2]
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn a_determinant_by_hand() {
        // 2·(3·4 − 1) − 1·(1·4 − 0) + 0 = 18.
        let (_, log) = Symmetric([2.0, 1.0, 0.0, 3.0, 1.0, 4.0]).inverse();
        assert!((libm::exp(log) - 18.0).abs() < 1e-12);
    }

    proptest! {
        #[test]
        fn a_matrix_times_its_inverse_changes_nothing(
            rows in proptest::array::uniform3(proptest::array::uniform3(-2.0..2.0f64)),
            x in proptest::array::uniform3(-5.0..5.0f64),
        ) {
            let mut matrix = Symmetric::diagonal([0.1, 0.2, 0.3]);
            for row in rows {
                matrix.add_square(row, 1.0);
            }
            let back = matrix.inverse().0.apply(matrix.apply(x));
            for (found, expected) in back.into_iter().zip(x) {
                prop_assert!((found - expected).abs() < 1e-9);
            }
        }
    }
}
