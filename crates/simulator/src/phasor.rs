//! Complex numbers for currents, voltages and impedances at one frequency.
//!
//! Answers: how large is a sum of things that are out of step, and by which angle?
//!
//! Must never know: what is being added.

use core::ops::{Add, Div, Mul, Neg, Sub};

/// A complex number; of a current or a voltage, its effective value and its angle.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(crate) struct Phasor {
    pub(crate) re: f64,
    pub(crate) im: f64,
}

impl Phasor {
    pub(crate) const NOUGHT: Self = Self::new(0.0, 0.0);

    pub(crate) const fn new(re: f64, im: f64) -> Self {
        Self { re, im }
    }

    pub(crate) const fn real(re: f64) -> Self {
        Self::new(re, 0.0)
    }

    /// A quarter turn ahead: the product with j.
    pub(crate) fn ahead(self) -> Self {
        Self::new(-self.im, self.re)
    }

    pub(crate) fn square(self) -> f64 {
        self.re * self.re + self.im * self.im
    }

    pub(crate) fn size(self) -> f64 {
        libm::sqrt(self.square())
    }

    pub(crate) fn inverse(self) -> Self {
        let square = self.square();
        Self::new(self.re / square, -self.im / square)
    }

    /// The mean power of a current of this size and angle at a voltage.
    pub(crate) fn power_at(self, volts: Self) -> f64 {
        self.re * volts.re + self.im * volts.im
    }
}

impl Add for Phasor {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self::new(self.re + other.re, self.im + other.im)
    }
}

impl Sub for Phasor {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self::new(self.re - other.re, self.im - other.im)
    }
}

impl Neg for Phasor {
    type Output = Self;
    fn neg(self) -> Self {
        Self::new(-self.re, -self.im)
    }
}

impl Mul for Phasor {
    type Output = Self;
    fn mul(self, other: Self) -> Self {
        Self::new(
            self.re * other.re - self.im * other.im,
            self.re * other.im + self.im * other.re,
        )
    }
}

impl Mul<f64> for Phasor {
    type Output = Self;
    fn mul(self, factor: f64) -> Self {
        Self::new(self.re * factor, self.im * factor)
    }
}

impl Div for Phasor {
    type Output = Self;
    fn div(self, other: Self) -> Self {
        let square = other.square();
        Self::new(
            (self.re * other.re + self.im * other.im) / square,
            (self.im * other.re - self.re * other.im) / square,
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_quotient_times_its_divisor_is_the_dividend() {
        let (one, other) = (Phasor::new(3.0, -4.0), Phasor::new(0.5, 7.0));
        let back = one / other * other;
        assert!((back - one).size() < 1e-14);
        assert!((one.size() - 5.0).abs() < 1e-15);
    }

    #[test]
    fn a_current_a_quarter_turn_from_its_voltage_takes_no_power() {
        let volts = Phasor::new(100.0, 30.0);
        assert!(volts.ahead().power_at(volts).abs() < 1e-12);
        assert!((volts.power_at(volts) - volts.square()).abs() < 1e-9);
    }
}
