//! What is thought of a set-up's threshold before any trial. All figures are judgement.

use quantity::{Ratio, Seconds};

/// How a set-up starts, as far as the rest that it needs depends on it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum StartKind {
    /// A PTC, and a capillary through which the pressures level.
    Ptc,
    /// A current relay without a capacitor.
    CurrentRelay,
    /// A start capacitor switched by a relay.
    CapacitorStart,
    /// A capacitor kit that has a PTC of its own in it.
    KitWithPtc,
}

/// Which rests are ordinary and which are not, after a stop from at least 15 minutes of running.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RestBands {
    /// From here up to [`Self::ordinary_to`] lies what sound machines need.
    pub ordinary_from: Seconds,
    /// Up to here it is ordinary.
    pub ordinary_to: Seconds,
    /// Above this it is abnormal; between both it is grey.
    pub abnormal_from: Seconds,
}

impl StartKind {
    /// All kinds.
    pub const ALL: [Self; 4] = [
        Self::Ptc,
        Self::CurrentRelay,
        Self::CapacitorStart,
        Self::KitWithPtc,
    ];

    /// The bands at 15 to 28 °C, or in a room of 30 to 38 °C or after cooling down a warm
    /// cabinet (judgement). For kinds other than the PTC a warm room is judged by the PTC's row:
    /// half as long again. A capacitor start's band begins at nothing, which is taken as half a
    /// minute: a log scale has no zero.
    ///
    /// ```
    /// use measure::start_trials::StartKind;
    /// use quantity::Seconds;
    /// let bands = StartKind::Ptc.bands(false);
    /// assert_eq!(bands.ordinary_to, Seconds::new(6.0 * 60.0));
    /// ```
    #[must_use]
    pub fn bands(self, warm: bool) -> RestBands {
        let (from, to, abnormal, factor) = match (self, warm) {
            (Self::Ptc, false) => (2.0, 6.0, 12.0, 1.0),
            (Self::Ptc, true) => (3.0, 9.0, 15.0, 1.0),
            (Self::CurrentRelay, _) => (1.5, 5.0, 10.0, 1.5),
            (Self::CapacitorStart, _) => (0.5, 3.0, 5.0, 1.5),
            (Self::KitWithPtc, _) => (1.5, 5.0, 8.0, 1.5),
        };
        let factor = if warm { factor } else { 1.0 };
        let minutes = |minutes: f64| Seconds::new(minutes * factor * 60.0);
        RestBands {
            ordinary_from: minutes(from),
            ordinary_to: minutes(to),
            abnormal_from: minutes(abnormal),
        }
    }

    /// The prior of a machine that is tried because something is wrong with it: median in the
    /// middle of the ordinary band on a log scale, spread wide.
    #[must_use]
    pub fn prior(self, warm: bool) -> StartPrior {
        let bands = self.bands(warm);
        let ends = bands.ordinary_from.get() * bands.ordinary_to.get();
        StartPrior {
            median: Seconds::new(libm::sqrt(ends)),
            ..StartPrior::default()
        }
    }
}

/// What is thought beforehand. Whoever knows more (a whole machine's odds) hands in another.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StartPrior {
    /// The median of the threshold where it lies between 15 s and 4 h. Clamped into that.
    pub median: Seconds,
    /// The standard deviation of its natural logarithm. Clamped to 0.05 … 5.
    pub deviation: f64,
    /// The share that starts at once after any rest: no pressure builds up. Shares below zero or
    /// not a number count as zero; together the three are held below 0.99.
    pub at_once: Ratio,
    /// The share that starts cold but not within 4 h.
    pub not_hot: Ratio,
    /// The share that doesn't start even cold.
    pub not_even_cold: Ratio,
}

impl Default for StartPrior {
    /// A PTC at ordinary room temperature. A deviation of 0.8 leaves one in nine beyond 10 min
    /// (judgement).
    fn default() -> Self {
        Self {
            median: Seconds::new(207.846),
            deviation: 0.8,
            at_once: Ratio::new(0.03),
            not_hot: Ratio::new(0.03),
            not_even_cold: Ratio::new(0.08),
        }
    }
}

impl StartPrior {
    /// The three shares beside the density, made fit to reckon with.
    pub(super) fn shares(&self) -> [f64; 3] {
        const MOST: f64 = 0.99;
        let shares = [self.at_once, self.not_hot, self.not_even_cold].map(|share| {
            if share.get() > 0.0 {
                share.get().min(1.0)
            } else {
                0.0
            }
        });
        let sum: f64 = shares.iter().sum();
        if sum > MOST {
            shares.map(|share| share * MOST / sum)
        } else {
            shares
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn bands_rise_and_a_warm_room_takes_longer() {
        for kind in StartKind::ALL {
            let (cool, warm) = (kind.bands(false), kind.bands(true));
            assert!(cool.ordinary_from < cool.ordinary_to);
            assert!(cool.ordinary_to < cool.abnormal_from);
            assert!(warm.ordinary_to > cool.ordinary_to);
            assert!(warm.abnormal_from > cool.abnormal_from);
        }
    }

    #[test]
    fn the_default_is_a_ptc_in_an_ordinary_room() {
        let (default, ptc) = (StartPrior::default(), StartKind::Ptc.prior(false));
        assert!((default.median.get() - ptc.median.get()).abs() < 1e-3);
    }

    #[test]
    fn shares_that_leave_nothing_for_the_density_are_held_back() {
        let all = Ratio::new(1.0);
        let prior = StartPrior {
            at_once: all,
            not_hot: all,
            not_even_cold: Ratio::new(f64::NAN),
            ..StartPrior::default()
        };
        let [at_once, not_hot, not_even_cold] = prior.shares();
        assert!((at_once + not_hot - 0.99).abs() < 1e-12);
        assert!(not_even_cold.abs() < f64::EPSILON);
    }
}
