//! Values with their standard uncertainty, propagated to first order by the GUM.
//!
//! Each value remembers how far each independent source of error moves it, with its sign.
//! Correlation needs no table: two values that share a source are correlated by it
//! (JCGM 100:2008, 5.2 and F.1.2.3: correlation through a common input).

use core::marker::PhantomData;
use core::ops::{Add, Mul, Neg, Sub};

use crate::{Quantity, Ratio};

/// An independent source of error, for example one pair of test leads.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Source(u32);

/// Hands out sources. One of these belongs to one computation, so that the same inputs
/// always meet the same sources.
#[derive(Debug, Default)]
pub struct Sources {
    used: u32,
}

impl Sources {
    /// A source that no other value has yet.
    pub fn fresh(&mut self) -> Source {
        self.used = self.used.saturating_add(1);
        Source(self.used)
    }
}

/// A value with its standard uncertainty, in the unit of `Q`.
///
/// ```
/// # use quantity::{Ohms, Sources, Uncertain};
/// let mut sources = Sources::default();
/// let leads = Uncertain::exact(Ohms::new(0.3)).with(sources.fresh(), Ohms::new(0.1));
/// let one = Uncertain::exact(Ohms::new(4.7)).with(sources.fresh(), Ohms::new(0.2));
/// let other = Uncertain::exact(Ohms::new(7.6)).with(sources.fresh(), Ohms::new(0.2));
/// // The leads are in both readings, so their error drops out of the difference.
/// let difference = &(&other - &leads) - &(&one - &leads);
/// assert!((difference.standard().get() - 0.2 * 2f64.sqrt()).abs() < 1e-12);
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Uncertain<Q> {
    value: f64,
    /// How far one standard uncertainty of each source moves the value, sorted by source.
    shifts: Vec<(Source, f64)>,
    unit: PhantomData<Q>,
}

impl<Q: Quantity> Uncertain<Q> {
    /// A value without error.
    #[must_use]
    pub fn exact(value: Q) -> Self {
        Self::from_parts(value.get(), Vec::new())
    }

    /// The same value, moved by `standard` when `source` is off by one standard uncertainty.
    #[must_use]
    pub fn with(self, source: Source, standard: Q) -> Self {
        let extra = Self::from_parts(0.0, vec![(source, standard.get())]);
        self.combine(1.0, &extra, 1.0)
    }

    /// The best estimate.
    #[must_use]
    pub fn value(&self) -> Q {
        Q::new(self.value)
    }

    /// The combined standard uncertainty u_c (JCGM 100:2008, 5.1.2 and 5.2.2).
    #[must_use]
    pub fn standard(&self) -> Q {
        Q::new(libm::sqrt(self.covariance(self)))
    }

    /// The expanded uncertainty U = 2·u_c, a level of confidence of about 95 %.
    #[must_use]
    pub fn expanded(&self) -> Q {
        Q::new(2.0 * self.standard().get())
    }

    /// The covariance with another value, in the product of both units.
    #[must_use]
    pub fn covariance<P: Quantity>(&self, other: &Uncertain<P>) -> f64 {
        let mut sum = 0.0;
        let mut theirs = other.shifts.iter().peekable();
        for (source, shift) in &self.shifts {
            while theirs
                .next_if(|(candidate, _)| candidate < source)
                .is_some()
            {}
            if let Some((_, their_shift)) = theirs.next_if(|(candidate, _)| candidate == source) {
                sum += shift * their_shift;
            }
        }
        sum
    }

    /// The quotient of two values, to first order.
    #[must_use]
    pub fn ratio(&self, other: &Self) -> Uncertain<Ratio> {
        let quotient = self.value / other.value;
        let moved = self.combine(1.0 / other.value, other, -quotient / other.value);
        Uncertain::from_parts(quotient, moved.shifts)
    }

    /// A value of another unit that follows from two of this one, to first order
    /// (JCGM 100:2008, equation 13): `value` is what follows, `slopes` how fast it moves with
    /// each.
    #[must_use]
    pub fn derived<P: Quantity>(
        value: P,
        slopes: [f64; 2],
        one: &Self,
        other: &Self,
    ) -> Uncertain<P> {
        let moved = one.combine(slopes[0], other, slopes[1]);
        Uncertain::from_parts(value.get(), moved.shifts)
    }

    /// A value that follows from two values of any units, to first order (JCGM 100:2008,
    /// equation 13): each comes with how fast the value moves with it.
    ///
    /// ```
    /// # use quantity::{Amps, Ohms, Sources, Uncertain, Volts};
    /// let mut sources = Sources::default();
    /// let volts = Uncertain::exact(Volts::new(12.0)).with(sources.fresh(), Volts::new(0.3));
    /// let amps = Uncertain::exact(Amps::new(2.0)).with(sources.fresh(), Amps::new(0.1));
    /// // R = U/I moves by 1/I with U and by −U/I² with I.
    /// let ohms = Uncertain::following(Ohms::new(6.0), (&volts, 0.5), (&amps, -3.0));
    /// assert!((ohms.standard().get() - (0.15f64 * 0.15 + 0.3 * 0.3).sqrt()).abs() < 1e-12);
    /// ```
    #[must_use]
    pub fn following<A: Quantity, B: Quantity>(
        value: Q,
        one: (&Uncertain<A>, f64),
        other: (&Uncertain<B>, f64),
    ) -> Self {
        let moved = one.0.combine(one.1, other.0, other.1);
        Self::from_parts(value.get(), moved.shifts)
    }

    fn from_parts(value: f64, shifts: Vec<(Source, f64)>) -> Self {
        Self {
            value,
            shifts,
            unit: PhantomData,
        }
    }

    /// `mine·self + theirs·other`: every linear operation is this one.
    fn combine<P: Quantity>(&self, mine: f64, other: &Uncertain<P>, theirs: f64) -> Self {
        let mut shifts = Vec::with_capacity(self.shifts.len() + other.shifts.len());
        let mut left = self.shifts.iter().peekable();
        let mut right = other.shifts.iter().peekable();
        loop {
            let next = match (left.peek(), right.peek()) {
                (None, None) => break,
                (Some((source, _)), None) | (None, Some((source, _))) => *source,
                (Some((one, _)), Some((two, _))) => *one.min(two),
            };
            let from_left = left.next_if(|(source, _)| *source == next);
            let from_right = right.next_if(|(source, _)| *source == next);
            let shift = from_left.map_or(0.0, |(_, shift)| mine * shift)
                + from_right.map_or(0.0, |(_, shift)| theirs * shift);
            shifts.push((next, shift));
        }
        Self::from_parts(mine * self.value + theirs * other.value, shifts)
    }
}

impl<Q: Quantity> Add for &Uncertain<Q> {
    type Output = Uncertain<Q>;
    fn add(self, other: Self) -> Uncertain<Q> {
        self.combine(1.0, other, 1.0)
    }
}

impl<Q: Quantity> Sub for &Uncertain<Q> {
    type Output = Uncertain<Q>;
    fn sub(self, other: Self) -> Uncertain<Q> {
        self.combine(1.0, other, -1.0)
    }
}

impl<Q: Quantity> Neg for &Uncertain<Q> {
    type Output = Uncertain<Q>;
    fn neg(self) -> Uncertain<Q> {
        self * -1.0
    }
}

impl<Q: Quantity> Mul<f64> for &Uncertain<Q> {
    type Output = Uncertain<Q>;
    fn mul(self, factor: f64) -> Uncertain<Q> {
        self.combine(factor, &Uncertain::<Q>::from_parts(0.0, Vec::new()), 0.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Ohms;
    use proptest::prelude::*;

    fn reading(value: f64, standard: f64, sources: &mut Sources) -> Uncertain<Ohms> {
        Uncertain::exact(Ohms::new(value)).with(sources.fresh(), Ohms::new(standard))
    }

    proptest! {
        #[test]
        fn a_value_less_itself_is_exactly_nothing(value in 0.1..100.0f64, u in 0.01..1.0f64) {
            let mut sources = Sources::default();
            let one = reading(value, u, &mut sources);
            let nothing = &one - &one;
            prop_assert_eq!(nothing.value(), Ohms::new(0.0));
            prop_assert_eq!(nothing.standard(), Ohms::new(0.0));
        }

        #[test]
        fn independent_errors_add_as_squares(a in 0.01..1.0f64, b in 0.01..1.0f64) {
            let mut sources = Sources::default();
            let sum = &reading(4.0, a, &mut sources) + &reading(7.0, b, &mut sources);
            prop_assert!((sum.standard().get() - (a * a + b * b).sqrt()).abs() < 1e-12);
        }

        #[test]
        fn the_order_of_adding_does_not_matter(a in 0.01..1.0f64, b in 0.01..1.0f64) {
            let mut sources = Sources::default();
            let one = reading(4.0, a, &mut sources);
            let two = reading(7.0, b, &mut sources);
            prop_assert_eq!(&one + &two, &two + &one);
        }

        #[test]
        fn a_common_scale_drops_out_of_a_ratio(value in 1.0..50.0f64, gain in 0.001..0.1f64) {
            let mut sources = Sources::default();
            let shared = sources.fresh();
            let one = Uncertain::exact(Ohms::new(value)).with(shared, Ohms::new(value * gain));
            let two = &one * 3.0;
            prop_assert!(two.ratio(&one).standard().get() < 1e-12);
        }
    }
}
