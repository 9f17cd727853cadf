//! The arithmetic that a propagation runs in. The passes are the same for all three.

use crate::evidence::largest;

pub(crate) trait Algebra {
    /// Changes nothing when added.
    const ZERO: f64;
    /// From a probability.
    fn from_plain(chance: f64) -> f64;
    /// From the natural logarithm of a weight.
    fn from_ln(ln: f64) -> f64;
    fn add(one: f64, other: f64) -> f64;
    fn multiply(one: f64, other: f64) -> f64;
    /// What takes `old` to `new`; zero where both are.
    fn ratio(new: f64, old: f64) -> f64;
    /// Scales so that numbers stay in range; returns the logarithm of what was divided by, minus
    /// infinity when all are zero.
    fn normalise(values: &mut [f64]) -> f64;
}

/// Plain probabilities: fast, and in range unless the evidence is very unlikely.
pub(crate) enum SumProduct {}

impl Algebra for SumProduct {
    const ZERO: f64 = 0.0;

    #[inline]
    fn from_plain(chance: f64) -> f64 {
        chance
    }

    #[inline]
    fn from_ln(ln: f64) -> f64 {
        libm::exp(ln)
    }

    #[inline]
    fn add(one: f64, other: f64) -> f64 {
        one + other
    }

    #[inline]
    fn multiply(one: f64, other: f64) -> f64 {
        one * other
    }

    #[inline]
    fn ratio(new: f64, old: f64) -> f64 {
        if old > 0.0 { new / old } else { 0.0 }
    }

    fn normalise(values: &mut [f64]) -> f64 {
        let sum: f64 = values.iter().sum();
        if sum > 0.0 {
            for value in values {
                *value /= sum;
            }
        }
        libm::log(sum)
    }
}

/// The same in logarithms: slow, and never out of range.
pub(crate) enum LnSumProduct {}

impl Algebra for LnSumProduct {
    const ZERO: f64 = f64::NEG_INFINITY;

    #[inline]
    fn from_plain(chance: f64) -> f64 {
        libm::log(chance)
    }

    #[inline]
    fn from_ln(ln: f64) -> f64 {
        ln
    }

    fn add(one: f64, other: f64) -> f64 {
        let (small, large) = if one < other {
            (one, other)
        } else {
            (other, one)
        };
        if small > f64::NEG_INFINITY {
            large + libm::log1p(libm::exp(small - large))
        } else {
            large
        }
    }

    #[inline]
    fn multiply(one: f64, other: f64) -> f64 {
        one + other
    }

    #[inline]
    fn ratio(new: f64, old: f64) -> f64 {
        if old > f64::NEG_INFINITY {
            new - old
        } else {
            f64::NEG_INFINITY
        }
    }

    fn normalise(values: &mut [f64]) -> f64 {
        let sum = values
            .iter()
            .fold(Self::ZERO, |sum, &value| Self::add(sum, value));
        if sum > f64::NEG_INFINITY {
            for value in values {
                *value -= sum;
            }
        }
        sum
    }
}

/// The largest product in place of the sum, in logarithms.
pub(crate) enum LnMaxProduct {}

impl Algebra for LnMaxProduct {
    const ZERO: f64 = f64::NEG_INFINITY;

    #[inline]
    fn from_plain(chance: f64) -> f64 {
        libm::log(chance)
    }

    #[inline]
    fn from_ln(ln: f64) -> f64 {
        ln
    }

    #[inline]
    fn add(one: f64, other: f64) -> f64 {
        if other > one { other } else { one }
    }

    #[inline]
    fn multiply(one: f64, other: f64) -> f64 {
        one + other
    }

    #[inline]
    fn ratio(new: f64, old: f64) -> f64 {
        LnSumProduct::ratio(new, old)
    }

    fn normalise(values: &mut [f64]) -> f64 {
        let top = largest(values);
        if top > f64::NEG_INFINITY {
            for value in values {
                *value -= top;
            }
        }
        top
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sums_of_logarithms_are_logarithms_of_sums() {
        let sum = LnSumProduct::add(libm::log(0.3), libm::log(0.2));
        assert!((sum - libm::log(0.5)).abs() < 1e-15);
        let nothing = LnSumProduct::add(f64::NEG_INFINITY, f64::NEG_INFINITY);
        assert!(nothing.is_infinite() && nothing < 0.0);
    }

    #[test]
    fn nothing_over_nothing_is_nothing() {
        assert_eq!(SumProduct::ratio(0.0, 0.0).to_bits(), 0.0_f64.to_bits());
        let ratio = LnSumProduct::ratio(f64::NEG_INFINITY, f64::NEG_INFINITY);
        assert!(ratio.is_infinite() && ratio < 0.0);
    }
}
