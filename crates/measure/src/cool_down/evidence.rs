//! How well a time constant and a delay fit a log, and where it then starts and ends and how
//! much of it goes quickly.

use super::noise::{FADES, Whitening};
use super::prior::Beforehand;
use super::symmetric::{Symmetric, dot};
use super::thinned::Thinned;

/// σ goes over places to each side of its most likely value, in these steps of its own standard
/// deviation: the trapezoid over a density that is nearly normal in ln σ.
const NOISE_STEP: f64 = 0.9;

/// Start, end and quick part under one time constant, delay and fading time: a normal
/// distribution of three.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Ends {
    /// Means, in °C and K.
    pub(super) mean: [f64; 3],
    pub(super) covariance: Symmetric,
    /// Mean of ln σ.
    pub(super) log_noise: f64,
    /// ln of how likely the log is, but for a constant.
    pub(super) log_evidence: f64,
}

/// A log under all fading times, ready to be held against curves.
#[derive(Debug)]
pub(super) struct Held<'a> {
    log: &'a Thinned,
    beforehand: &'a Beforehand,
    faded: Vec<Faded>,
    /// The share of the slow part that is left at each reading, and of the quick part.
    left: Vec<f64>,
    quick: Vec<f64>,
}

/// What doesn't change with the curve.
#[derive(Debug)]
struct Faded {
    whitening: Whitening,
    readings: Vec<f64>,
    ones: Vec<f64>,
    /// Σ of readings².
    squares: f64,
}

/// Sums of squares and products of readings and the three columns.
#[derive(Debug, Clone, Copy)]
struct Sums {
    squares: f64,
    with_readings: [f64; 3],
    columns: Symmetric,
}

impl<'a> Held<'a> {
    pub(super) fn new(log: &'a Thinned, beforehand: &'a Beforehand) -> Self {
        let one = vec![1.0; log.at.len()];
        let faded = FADES.map(|fade| {
            let whitening = Whitening::new(&log.at, fade);
            let readings: Vec<f64> = whitening.of(&log.temperature).collect();
            let ones: Vec<f64> = whitening.of(&one).collect();
            Faded {
                squares: readings.iter().map(|one| one * one).sum(),
                whitening,
                readings,
                ones,
            }
        });
        Self {
            log,
            beforehand,
            faded: faded.into(),
            left: one.clone(),
            quick: one,
        }
    }

    /// Under each fading time in turn; σ over so many places to each side of its likeliest.
    pub(super) fn against(
        &mut self,
        time_constant: f64,
        delay: f64,
        places: i32,
    ) -> [Ends; FADES.len()] {
        let shares = self.left.iter_mut().zip(&mut self.quick);
        for ((left, fast), &at) in shares.zip(&self.log.at) {
            *left = share_left(at, time_constant, delay);
            *fast = quick(*left);
        }
        core::array::from_fn(|fade| self.under(&self.faded[fade], places))
    }

    fn under(&self, faded: &Faded, places: i32) -> Ends {
        let means = self.beforehand.means();
        let sums = faded.sums(&self.left, &self.quick).less(means);
        let count = self.log.at.len() as f64;
        let noise = self.beforehand.log_noise;
        let worth = 1.0 / (noise.deviation * noise.deviation);
        // Where ln σ is most likely: twice round, since start and end lean on it a little.
        let mut middle = noise.mean;
        for _ in 0..2 {
            let found = self.given(&sums, libm::exp(2.0 * middle));
            let per_reading = (sums.off(found.mean) / count).max(1e-12);
            let seen = 0.5 * libm::log(per_reading);
            middle = (2.0 * count * seen + worth * noise.mean) / (2.0 * count + worth);
        }
        let deviation = 1.0 / libm::sqrt(2.0 * count + worth);
        let mut parts = Vec::new();
        for place in -places..=places {
            let log_noise = middle + f64::from(place) * NOISE_STEP * deviation;
            let away = (log_noise - noise.mean) / noise.deviation;
            let mut found = self.given(&sums, libm::exp(2.0 * log_noise));
            found.log_evidence -= count * log_noise
                + faded.whitening.half_log_determinant
                + 0.5 * away * away
                + libm::log(noise.deviation / (NOISE_STEP * deviation));
            found.log_noise = log_noise;
            parts.push(found);
        }
        pooled(&parts, means)
    }

    /// Start, end and quick part as differences from their means beforehand, for one variance of
    /// the noise.
    fn given(&self, sums: &Sums, variance: f64) -> Ends {
        let known = self.beforehand.precisions();
        let precision = sums.columns.times(1.0 / variance);
        let (covariance, log_determinant) = precision.plus(Symmetric::diagonal(known)).inverse();
        let pull = sums.with_readings.map(|sum| sum / variance);
        let mean = covariance.apply(pull);
        let log_known = libm::log(known[0] * known[1] * known[2]);
        Ends {
            mean,
            covariance,
            log_noise: 0.0,
            log_evidence: 0.5 * (dot(mean, pull) - sums.squares / variance)
                - 0.5 * (log_determinant - log_known),
        }
    }
}

/// The share of the slow part that is left at a time.
pub(super) fn share_left(at: f64, time_constant: f64, delay: f64) -> f64 {
    if at <= delay {
        1.0
    } else {
        libm::exp((delay - at) / time_constant)
    }
}

/// How start, end and quick part go into the curve where that share is left. The quick part's
/// share is its sixth power, since it goes six times as fast.
pub(super) fn columns(left: f64) -> [f64; 3] {
    [left, 1.0 - left, quick(left) - left]
}

fn quick(left: f64) -> f64 {
    let square = left * left;
    square * square * square
}

impl Faded {
    fn sums(&self, left: &[f64], quick: &[f64]) -> Sums {
        let mut sums = Sums {
            squares: self.squares,
            with_readings: [0.0; 3],
            columns: Symmetric::default(),
        };
        let slow = self.whitening.of(left).zip(self.whitening.of(quick));
        let fixed = self.readings.iter().zip(&self.ones);
        for ((slow, quick), (reading, one)) in slow.zip(fixed) {
            let columns = [slow, one - slow, quick - slow];
            for (sum, column) in sums.with_readings.iter_mut().zip(columns) {
                *sum += reading * column;
            }
            sums.columns.add_square(columns, 1.0);
        }
        sums
    }
}

impl Sums {
    /// The same of readings less what is thought of the three beforehand.
    fn less(self, mean: [f64; 3]) -> Self {
        let known = self.columns.apply(mean);
        Self {
            squares: self.off(mean),
            with_readings: core::array::from_fn(|place| self.with_readings[place] - known[place]),
            columns: self.columns,
        }
    }

    /// The squares that are left where the three are these.
    fn off(&self, ends: [f64; 3]) -> f64 {
        self.squares - 2.0 * dot(ends, self.with_readings) + self.columns.form(ends)
    }
}

/// Several normal distributions as one of the same mean and covariance.
fn pooled(parts: &[Ends], beforehand: [f64; 3]) -> Ends {
    let top = parts.iter().map(|one| one.log_evidence);
    let top = top.fold(f64::NEG_INFINITY, f64::max);
    let weight = |one: &Ends| libm::exp(one.log_evidence - top);
    let whole: f64 = parts.iter().map(weight).sum();
    let mean_of = |of: &dyn Fn(&Ends) -> f64| {
        parts.iter().map(|one| weight(one) * of(one)).sum::<f64>() / whole
    };
    let mean: [f64; 3] = core::array::from_fn(|place| mean_of(&|one| one.mean[place]));
    let mut covariance = Symmetric::default();
    for one in parts {
        let share = weight(one) / whole;
        covariance = covariance.plus(one.covariance.times(share));
        let apart = core::array::from_fn(|place| one.mean[place] - mean[place]);
        covariance.add_square(apart, share);
    }
    Ends {
        mean: core::array::from_fn(|place| mean[place] + beforehand[place]),
        covariance,
        log_noise: mean_of(&|one| one.log_noise),
        log_evidence: top + libm::log(whole),
    }
}
