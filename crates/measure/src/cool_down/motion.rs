//! How air follows what it goes towards, and that follows its end: over any stretch of time.
//!
//! dT = (E − T)/τ dt, dE = (F − E)/θ dt + √(2w²/θ) dW: a linear system under white noise, of which
//! transition and covariance over a stretch are known in closed form (R. E. Kalman, R. S. Bucy,
//! J. Basic Eng. 83 (1961) 95, from memory; integrals of exponentials).

use super::symmetric::Symmetric;

/// Two time constants in seconds, and how far E wanders about F, in kelvins.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Pace {
    pub(super) air: f64,
    pub(super) walls: f64,
    pub(super) wander: f64,
}

/// Over one stretch: what of air (T), goal (E) and end (F) goes into air and goal, and what is added.
#[derive(Debug, Clone, Copy)]
pub(super) struct Stretch {
    /// Of T, E and F into T; of E and F into E.
    pub(super) air: [f64; 3],
    pub(super) goal: [f64; 2],
    /// Variances and covariance of what wandering adds: TT, TE, EE.
    pub(super) added: [f64; 3],
}

/// Mean and covariance of T, E and F.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct State {
    pub(super) mean: [f64; 3],
    pub(super) covariance: Symmetric,
}

impl Pace {
    /// Over so many seconds, with what is left of e^(−t/τ) and e^(−t/θ) after them. The two time
    /// constants have to differ.
    pub(super) fn stretch(&self, air_left: f64, walls_left: f64) -> Stretch {
        let (air, walls) = (self.air, self.walls);
        let (b, a) = (air_left, walls_left);
        let k = walls / (walls - air);
        let c = k * (a - b);
        // 2w²/θ times integrals of products of the responses.
        let q = 2.0 * self.wander * self.wander / walls;
        let slow = (1.0 - a * a) * walls / 2.0;
        let both = (1.0 - a * b) / (1.0 / walls + 1.0 / air);
        let fast = (1.0 - b * b) * air / 2.0;
        Stretch {
            air: [b, c, 1.0 - b - c],
            goal: [a, 1.0 - a],
            added: [
                (q * k * k * (slow - 2.0 * both + fast)).max(0.0),
                q * k * (slow - both),
                q * slow,
            ],
        }
    }

    /// Over so many seconds; infinity is as long as it takes.
    pub(super) fn over(&self, seconds: f64) -> Stretch {
        let seconds = seconds.max(0.0);
        self.stretch(
            libm::exp(-seconds / self.air),
            libm::exp(-seconds / self.walls),
        )
    }
}

impl State {
    /// After a stretch.
    pub(super) fn after(&self, stretch: &Stretch) -> Self {
        let [b, c, f] = stretch.air;
        let [a, g] = stretch.goal;
        let [air, goal, end] = self.mean;
        let [tt, te, tf, ee, ef, ff] = self.covariance.0;
        // Rows of transition times covariance.
        let air_row = [
            b * tt + c * te + f * tf,
            b * te + c * ee + f * ef,
            b * tf + c * ef + f * ff,
        ];
        let goal_row = [a * ee + g * ef, a * ef + g * ff];
        Self {
            mean: [b * air + c * goal + f * end, a * goal + g * end, end],
            covariance: Symmetric([
                b * air_row[0] + c * air_row[1] + f * air_row[2] + stretch.added[0],
                a * air_row[1] + g * air_row[2] + stretch.added[1],
                air_row[2],
                a * goal_row[0] + g * goal_row[1] + stretch.added[2],
                goal_row[1],
                ff,
            ]),
        }
    }

    /// After the air was read, with a variance of the reading; and ln of how likely that reading
    /// was, but for a constant.
    pub(super) fn with(&self, reading: f64, variance: f64) -> (Self, f64) {
        let [tt, te, tf, ..] = self.covariance.0;
        self.told(reading - self.mean[0], [tt, te, tf], tt + variance)
    }

    /// The same after it was told where it ends.
    pub(super) fn with_end(&self, end: f64, variance: f64) -> (Self, f64) {
        let [_, _, tf, _, ef, ff] = self.covariance.0;
        self.told(end - self.mean[2], [tf, ef, ff], ff + variance)
    }

    /// After something was seen that lies so far off its mean, has such covariances with air, goal and end,
    /// and such a variance.
    fn told(&self, off: f64, with: [f64; 3], variance: f64) -> (Self, f64) {
        let gain = with.map(|one| one / variance);
        let [tt, te, tf, ee, ef, ff] = self.covariance.0;
        let state = Self {
            mean: [0, 1, 2].map(|place| self.mean[place] + gain[place] * off),
            covariance: Symmetric([
                tt - gain[0] * with[0],
                te - gain[0] * with[1],
                tf - gain[0] * with[2],
                ee - gain[1] * with[1],
                ef - gain[1] * with[2],
                ff - gain[2] * with[2],
            ]),
        };
        (state, -0.5 * (off * off / variance + libm::log(variance)))
    }
}
