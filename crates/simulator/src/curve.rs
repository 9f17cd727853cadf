//! A smooth curve through measured points: a polynomial inside its range, its tangent outside.
//!
//! Answers: what is y at x, and is it still sane where nobody measured? Must never know: of what.

/// How many coefficients a curve has.
const TERMS: usize = 7;

/// A polynomial of degree 6 in a variable that runs from −1 to 1 over the range of the fit.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Curve {
    middle: f64,
    half: f64,
    coefficients: [f64; TERMS],
}

impl Curve {
    pub(crate) const fn new(middle: f64, half: f64, coefficients: [f64; TERMS]) -> Self {
        Self {
            middle,
            half,
            coefficients,
        }
    }

    /// The value at `x`. A deep vacuum or a burning condenser lies outside of any fit: there the
    /// tangent goes on, which for logarithms is the law of Clausius and Clapeyron.
    pub(crate) fn at(&self, x: f64) -> f64 {
        let scaled = (x - self.middle) / self.half;
        let inside = scaled.clamp(-1.0, 1.0);
        let (mut value, mut slope) = (0.0, 0.0);
        for coefficient in self.coefficients.iter().rev() {
            slope = slope * inside + value;
            value = value * inside + coefficient;
        }
        value + slope * (scaled - inside)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn outside_its_range_a_curve_goes_on_along_its_tangent() {
        // y = 1 + 2 s + 3 s², whose slope at s = 1 is 8.
        let curve = Curve::new(10.0, 2.0, [1.0, 2.0, 3.0, 0.0, 0.0, 0.0, 0.0]);
        assert!((curve.at(11.0) - 2.75).abs() < 1e-12);
        assert!((curve.at(12.0) - 6.0).abs() < 1e-12);
        assert!((curve.at(16.0) - (6.0 + 8.0 * 2.0)).abs() < 1e-12);
    }
}
