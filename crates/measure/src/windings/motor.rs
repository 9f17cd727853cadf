//! Run and start winding together: one joint density, ready to be evaluated often.

use core::f64::consts::PI;

use super::priors::{MainsPriors, Normal, square};

/// The joint density of two windings in ohms whose logarithms are jointly normal.
#[derive(Debug, Clone, Copy)]
pub(super) struct Motor {
    mean: [f64; 2],
    /// The inverse covariance: run with run, run with start, start with start.
    inverse: [f64; 3],
    scale: f64,
}

impl Motor {
    /// Whole windings. The start winding is the run winding times the ratio, so both share the
    /// run winding's spread.
    pub(super) fn whole(priors: &MainsPriors) -> Self {
        Self::shorted(priors, Normal::new(0.0, 0.0), Normal::new(0.0, 0.0))
    }

    /// Windings of which shorted turns leave shares, given as natural logarithms.
    pub(super) fn shorted(priors: &MainsPriors, run_share: Normal, start_share: Normal) -> Self {
        let shared = square(priors.run.deviation);
        let run = shared + square(run_share.deviation);
        let start = shared + square(priors.ratio.deviation) + square(start_share.deviation);
        let determinant = run * start - square(shared);
        Self {
            mean: [
                priors.run.mean + run_share.mean,
                priors.run.mean + priors.ratio.mean + start_share.mean,
            ],
            inverse: [
                start / determinant,
                -shared / determinant,
                run / determinant,
            ],
            scale: 1.0 / (2.0 * PI * libm::sqrt(determinant)),
        }
    }

    /// The density at these ohms; zero where one of them isn't positive.
    pub(super) fn density(&self, run: f64, start: f64) -> f64 {
        if run <= 0.0 || start <= 0.0 {
            return 0.0;
        }
        let x = libm::log(run) - self.mean[0];
        let y = libm::log(start) - self.mean[1];
        let [xx, xy, yy] = self.inverse;
        let square = xx * x * x + 2.0 * xy * x * y + yy * y * y;
        self.scale * libm::exp(-0.5 * square) / (run * start)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const PRIORS: MainsPriors = MainsPriors {
        run: Normal::new(1.46, 0.55),
        ratio: Normal::new(0.59, 0.31),
    };

    #[test]
    fn the_joint_density_is_that_of_run_times_that_of_the_ratio() {
        let motor = Motor::whole(&PRIORS);
        for (run, start) in [(4.4, 7.3), (1.5, 3.0), (9.0, 8.0)] {
            let log_run = f64::ln_1p(run - 1.0);
            let log_ratio = f64::ln_1p(start / run - 1.0);
            let product = PRIORS.run.density(log_run) * PRIORS.ratio.density(log_ratio);
            let expected = product / (run * start);
            assert!((motor.density(run, start) / expected - 1.0).abs() < 1e-9);
        }
    }

    #[test]
    fn shorted_turns_move_and_widen_only_the_winding_that_has_them() {
        let share = Normal::new(-0.7, 0.6);
        let nothing = Normal::new(0.0, 0.0);
        let whole = Motor::whole(&PRIORS);
        let run = Motor::shorted(&PRIORS, share, nothing);
        assert!(run.density(2.0, 8.0) > 10.0 * whole.density(2.0, 8.0));
        assert!((run.mean[1] - whole.mean[1]).abs() < 1e-12);
    }
}
