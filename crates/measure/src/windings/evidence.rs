//! How well what was shown fits a circuit whose resistances are only vaguely known beforehand.
//!
//! Each number is what the circuit has between two pins, plus leads common to all three, plus an
//! error of its own, normal with the standard uncertainty of the GUM. What is over range says
//! only that the circuit has more than the end of that range, or that something slipped.

use super::integral::Integral;
use super::log_normal::LogNormal;
use super::priors::{Normal, square};

/// What the meter showed between two pins.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Shown {
    /// Not read.
    Nothing,
    /// Ohms, and the standard uncertainty that the meter gives them.
    Number {
        /// Ohms shown.
        value: f64,
        /// Their standard uncertainty.
        standard: f64,
    },
    /// Over range: more than this many ohms.
    Above(f64),
}

/// What a circuit has between two pins: its ohms, and their slopes against each resistance.
pub(super) type Between<const K: usize> = (f64, [f64; K]);

/// Ohms between common and run, common and start, start and run, from `K` resistances. Every circuit
/// grows in proportion with its resistances.
pub(super) type Circuit<const K: usize> = fn(&[f64; K]) -> [Between<K>; 3];

/// What was shown between common and run, common and start, start and run, with the leads.
#[derive(Debug, Clone, Copy)]
pub(super) struct Seen {
    shown: [Shown; 3],
    leads: Normal,
    /// Chance that a pair which conducts shows over range all the same.
    false_over_range: f64,
    /// One over the variance of each number; 0 where there is none.
    weights: [f64; 3],
    /// Their sum.
    weight: f64,
    /// What the leads leave of it for the mean of all.
    weight_of_mean: f64,
    /// Natural logarithm of the errors' density where all errors are 0.
    log_scale: f64,
}

impl Seen {
    pub(super) fn new(shown: [Shown; 3], leads: Normal, false_over_range: f64) -> Self {
        let weights = shown.map(|shown| match shown {
            Shown::Number { standard, .. } => 1.0 / square(standard),
            Shown::Nothing | Shown::Above(_) => 0.0,
        });
        let weight: f64 = weights.iter().sum();
        let grown = 1.0 + square(leads.deviation) * weight;
        let log_weights: f64 = weights
            .iter()
            .filter(|weight| **weight > 0.0)
            .map(|weight| libm::log(*weight / (2.0 * core::f64::consts::PI)))
            .sum();
        Self {
            shown,
            leads,
            false_over_range,
            weights,
            weight,
            weight_of_mean: weight / grown,
            log_scale: 0.5 * (log_weights - libm::log(grown)),
        }
    }

    /// Natural logarithm of the density of what was shown, given the circuit and what is thought
    /// of its resistances beforehand. Finite for finite readings.
    ///
    /// Well below `floor` the value no longer matters and may be less exact.
    pub(super) fn log_evidence<const K: usize>(
        &self,
        circuit: Circuit<K>,
        prior: &LogNormal<K>,
        floor: f64,
    ) -> f64 {
        let integral = Integral::around_peak(self, circuit, prior);
        let rough = self.log_scale + integral.log_rough();
        if rough < floor - 10.0 {
            return rough;
        }
        // Out of reach of a double only where the peak itself is absurd.
        rough + libm::log(integral.correction().clamp(f64::MIN_POSITIVE, f64::MAX))
    }

    /// What the numbers have over the circuit and the leads' mean; 0 where there is none.
    pub(super) fn residuals<const K: usize>(&self, between: &[Between<K>; 3]) -> [f64; 3] {
        core::array::from_fn(|place| match self.shown[place] {
            Shown::Number { value, .. } => value - self.leads.mean - between[place].0,
            Shown::Nothing | Shown::Above(_) => 0.0,
        })
    }

    /// The inverse covariance of the errors, multiplied from both sides by vectors: what is apart
    /// from the mean counts in full, the mean less, because the leads can move it. (Sherman and
    /// Morrison, in a form in which nothing cancels.)
    pub(super) fn weigh(&self, one: [f64; 3], other: [f64; 3]) -> f64 {
        let mean = |of: [f64; 3]| -> f64 {
            let sum: f64 = of
                .iter()
                .zip(self.weights)
                .map(|(x, weight)| x * weight)
                .sum();
            sum / self.weight
        };
        if self.weight <= 0.0 {
            return 0.0;
        }
        let (mean_one, mean_other) = (mean(one), mean(other));
        let apart: f64 = (0..3)
            .map(|i| self.weights[i] * (one[i] - mean_one) * (other[i] - mean_other))
            .sum();
        apart + mean_one * mean_other * self.weight_of_mean
    }

    /// By which factor a circuit's resistances have to grow to come near the numbers.
    pub(super) fn growth<const K: usize>(&self, between: &[Between<K>; 3]) -> f64 {
        let mut shown = 0.0;
        for (seen, (ohms, _)) in self.shown.iter().zip(between) {
            if let Shown::Number { value, .. } = seen {
                shown += (value - self.leads.mean).max(0.1 * ohms);
            }
        }
        if shown > 0.0 {
            shown / self.size(between)
        } else {
            1.0
        }
    }

    /// The size of a circuit where it was read: the ohms of all pairs with a number.
    pub(super) fn size<const K: usize>(&self, between: &[Between<K>; 3]) -> f64 {
        self.size_of(between.map(|(ohms, _)| ohms))
    }

    /// The sum over the pairs with a number; over all, where there is none.
    pub(super) fn size_of(&self, of: [f64; 3]) -> f64 {
        let all = self.weight <= 0.0;
        let read = of.iter().zip(self.weights);
        read.filter(|(_, weight)| all || *weight > 0.0)
            .map(|(of, _)| of)
            .sum()
    }

    /// The chance of what was over range, given the circuit.
    pub(super) fn over_range<const K: usize>(&self, between: &[Between<K>; 3]) -> f64 {
        let mut chance = 1.0;
        for (shown, (ohms, _)) in self.shown.iter().zip(between) {
            if let Shown::Above(bound) = shown {
                // The end of a range is about as uncertain as a reading of it.
                let past = (ohms + self.leads.mean - bound) / (0.02 * bound.abs() + 0.1);
                let truly = 0.5 * libm::erfc(-past / core::f64::consts::SQRT_2);
                chance *= self.false_over_range + (1.0 - self.false_over_range) * truly;
            }
        }
        chance
    }
}

#[cfg(test)]
mod tests {
    use super::super::circuits::{equal, two_windings};
    use super::*;

    const SLIP: f64 = 1e-4;

    fn number(value: f64, standard: f64) -> Shown {
        Shown::Number { value, standard }
    }

    #[test]
    fn a_nearly_certain_prior_gives_the_closed_form_of_normal_errors() {
        // y = 5 + leads + error: normal with the variances added.
        let prior = LogNormal::of([([1.0], Normal::new(libm::log(5.0), 1e-5))]);
        let seen = Seen::new(
            [number(5.9, 0.3), Shown::Nothing, Shown::Nothing],
            Normal::new(0.4, 0.2),
            SLIP,
        );
        let variance = 0.3 * 0.3 + 0.2 * 0.2;
        let expected =
            -0.5 * (0.5 * 0.5 / variance) - 0.5 * libm::log(2.0 * core::f64::consts::PI * variance);
        let found = seen.log_evidence(equal, &prior, f64::NEG_INFINITY);
        assert!((found - expected).abs() < 1e-7, "{found} {expected}");
    }

    #[test]
    fn a_nearly_perfect_meter_gives_the_prior_density_of_the_number() {
        let prior = Normal::new(1.5, 0.6);
        let seen = Seen::new(
            [number(7.0, 1e-4), Shown::Nothing, Shown::Nothing],
            Normal::new(0.0, 1e-6),
            SLIP,
        );
        let expected = prior.ln_density_of_exponential(7.0);
        let found = seen.log_evidence(equal, &LogNormal::of([([1.0], prior)]), f64::NEG_INFINITY);
        assert!((found - expected).abs() < 1e-6, "{found} {expected}");
    }

    #[test]
    fn without_any_reading_nothing_is_learned() {
        let prior = LogNormal::of([
            ([1.0, 1.0], Normal::new(1.5, 0.5)),
            ([0.0, 1.0], Normal::new(0.5, 0.3)),
        ]);
        let seen = Seen::new([Shown::Nothing; 3], Normal::new(0.3, 0.1), SLIP);
        let found = seen.log_evidence(two_windings, &prior, f64::NEG_INFINITY);
        assert!(found.abs() < 1e-9, "{found}");
    }

    #[test]
    fn over_range_in_a_small_range_is_what_a_large_winding_shows() {
        let seen = |bound| {
            let shown = [number(14.0, 0.2), Shown::Nothing, Shown::Above(bound)];
            let prior = LogNormal::of([
                ([1.0, 1.0], Normal::new(2.7, 0.5)),
                ([0.0, 1.0], Normal::new(0.3, 0.25)),
            ]);
            Seen::new(shown, Normal::new(0.3, 0.1), SLIP).log_evidence(
                two_windings,
                &prior,
                f64::NEG_INFINITY,
            )
        };
        // 14 Ω and about 19 Ω in series lie well above 20 Ω, and well below 200 Ω.
        assert!(seen(20.0) - seen(200.0) > 8.0);
    }
}
