//! What hangs together in the readings, taken out.
//!
//! A stationary Gaussian process whose correlation fades as exp(−Δt/θ) is, on readings one after
//! another, an AR(1) process: what a reading adds to the one before is independent of all others.

/// Over which times the correlation fades, in seconds, all as likely (judgement: the steps of a
/// thermometer, a fan, a control that cycles, a cabinet's walls).
pub(super) const FADES: [f64; 4] = [60.0, 240.0, 900.0, 3600.0];

/// The filter of one fading time on given times.
#[derive(Debug, Clone)]
pub(super) struct Whitening {
    /// The share of the reading before that is taken away, and what is then multiplied by.
    steps: Vec<(f64, f64)>,
    /// Half the logarithm of the determinant of the correlations.
    pub(super) half_log_determinant: f64,
}

impl Whitening {
    /// `at` rises strictly.
    pub(super) fn new(at: &[f64], fade: f64) -> Self {
        let mut half_log_determinant = 0.0;
        let mut before = f64::NEG_INFINITY;
        let steps = at
            .iter()
            .map(|&now| {
                let share = libm::exp((before - now) / fade);
                // Not below a rounding error's worth: two readings at once would be one twice.
                let left = (1.0 - share * share).max(1e-9);
                half_log_determinant += 0.5 * libm::log(left);
                before = now;
                (share, 1.0 / libm::sqrt(left))
            })
            .collect();
        Self {
            steps,
            half_log_determinant,
        }
    }

    /// The series with unit, independent errors where the errors had the process's correlation.
    pub(super) fn of<'a>(&'a self, series: &'a [f64]) -> impl Iterator<Item = f64> + 'a {
        let mut before = 0.0;
        self.steps.iter().zip(series).map(move |(step, &now)| {
            let fresh = (now - step.0 * before) * step.1;
            before = now;
            fresh
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn three_readings_whiten_as_their_correlations_say() {
        // Correlations by hand: a between 1 and 2, b between 2 and 3, a·b between 1 and 3.
        let (times, fade) = ([0.0, 100.0, 400.0], 240.0);
        let whitening = Whitening::new(&times, fade);
        let (a, b): (f64, f64) = (libm::exp(-100.0 / 240.0), libm::exp(-300.0 / 240.0));
        let determinant = (1.0 - a * a) * (1.0 - b * b);
        assert!((whitening.half_log_determinant - 0.5 * libm::log(determinant)).abs() < 1e-12);
        // xᵀC⁻¹x of x = (1, −2, 0.5) by Cramer's rule.
        let x = [1.0, -2.0, 0.5];
        let c = a * b;
        let inverse = [
            [1.0 - b * b, b * c - a, a * b - c],
            [b * c - a, 1.0 - c * c, a * c - b],
            [a * b - c, a * c - b, 1.0 - a * a],
        ];
        let mut expected = 0.0;
        for row in 0..3 {
            for column in 0..3 {
                expected += x[row] * inverse[row][column] * x[column] / determinant;
            }
        }
        let found: f64 = whitening.of(&x).map(|one| one * one).sum();
        assert!(
            (found - expected).abs() < 1e-9,
            "{found} instead of {expected}"
        );
    }
}
