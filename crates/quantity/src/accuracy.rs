//! How far a meter's display may be from the truth.

use crate::{Quantity, Sources, Uncertain};

/// A meter's accuracy as its data sheet gives it: ±(percent of reading + counts).
///
/// A *count* is one step of the last digit shown, so its size follows from what was typed:
/// "4.7" has counts of 0.1, "4.70" of 0.01.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Accuracy {
    percent: f64,
    counts: f64,
}

impl Accuracy {
    /// ±(`percent` of reading + `counts`). Both from 0; percent up to 20, counts up to 100.
    ///
    /// Returns `None` outside those ranges: no meter that is still worth using is beyond them
    /// (common practice, no source).
    ///
    /// ```
    /// # use quantity::{Accuracy, Ohms};
    /// let meter = Accuracy::new(0.8, 3.0).unwrap();
    /// // 0.8 % of 4 Ω and three counts of 0.1 Ω.
    /// assert!((meter.limit(Ohms::new(4.0), Ohms::new(0.1)).get() - 0.332).abs() < 1e-12);
    /// ```
    #[must_use]
    pub const fn new(percent: f64, counts: f64) -> Option<Self> {
        let percent_fits = percent >= 0.0 && percent <= 20.0;
        let counts_fit = counts >= 0.0 && counts <= 100.0;
        if percent_fits && counts_fit {
            Some(Self { percent, counts })
        } else {
            None
        }
    }

    /// Percent of reading.
    #[must_use]
    pub const fn percent(self) -> f64 {
        self.percent
    }

    /// Steps of the last digit.
    #[must_use]
    pub const fn counts(self) -> f64 {
        self.counts
    }

    /// The largest error that the data sheet allows for `value` shown in steps of `count`.
    #[must_use]
    pub fn limit<Q: Quantity>(self, value: Q, count: Q) -> Q {
        Q::new(self.percent / 100.0 * value.get().abs() + self.shown_counts() * count.get())
    }

    /// The standard uncertainty of one reading: nothing is known but that its error lies within
    /// the limit, so it is taken as rectangular (JCGM 100:2008, 4.3.7: a/√3). Percent and counts
    /// are one limit; taken as independent of each other they would come out smaller than the
    /// sheet bears out.
    ///
    /// ```
    /// # use quantity::{Accuracy, Ohms};
    /// let meter = Accuracy::new(0.8, 3.0).unwrap();
    /// let standard = meter.standard(Ohms::new(4.0), Ohms::new(0.1));
    /// assert!((standard.get() - 0.332 / 3f64.sqrt()).abs() < 1e-12);
    /// ```
    #[must_use]
    pub fn standard<Q: Quantity>(self, value: Q, count: Q) -> Q {
        Q::new(self.limit(value, count).get() / libm::sqrt(3.0))
    }

    /// `value` as an uncertain value whose error is a source of its own, independent of every
    /// other reading.
    #[must_use]
    pub fn measured<Q: Quantity>(self, value: Q, count: Q, sources: &mut Sources) -> Uncertain<Q> {
        Uncertain::exact(value).with(sources.fresh(), self.standard(value, count))
    }

    /// A display can't be better than half of its last step, whatever the sheet says.
    fn shown_counts(self) -> f64 {
        self.counts.max(0.5)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Ohms;

    #[test]
    fn an_accuracy_beyond_any_usable_meter_cannot_be_built() {
        assert!(Accuracy::new(-0.1, 2.0).is_none());
        assert!(Accuracy::new(f64::NAN, 2.0).is_none());
        assert!(Accuracy::new(1.0, 101.0).is_none());
    }

    #[test]
    fn a_display_is_never_better_than_half_its_last_step() {
        let perfect = Accuracy::new(0.0, 0.0).unwrap();
        assert_eq!(
            perfect.limit(Ohms::new(5.0), Ohms::new(0.1)),
            Ohms::new(0.05)
        );
    }

    #[test]
    fn two_readings_of_one_meter_share_no_source() {
        let meter = Accuracy::new(1.0, 5.0).unwrap();
        let mut sources = Sources::default();
        let one = meter.measured(Ohms::new(4.0), Ohms::new(0.1), &mut sources);
        let other = meter.measured(Ohms::new(7.0), Ohms::new(0.1), &mut sources);
        assert!(one.covariance(&other).abs() < f64::EPSILON);
    }
}
