//! A cool-down as far as it is known.

use quantity::{KelvinDelta, Ratio, Seconds};

use super::belief::{Part, parts};
use super::events::events;
use super::prior::{Beforehand, CoolDownPrior};
use super::thinned::{LEAST_POINTS, TemperatureAt, Thinned, median};

/// What may be true of a cabinet's course, after the readings so far.
#[derive(Debug, Clone)]
pub struct CoolDown {
    pub(super) parts: Vec<Part>,
    pub(super) log: Thinned,
    pub(super) marked: Vec<bool>,
    pub(super) beforehand: Beforehand,
}

/// Why a log can't be read as a cool-down.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum CoolDownError {
    /// Fewer than six usable readings: times from 0 to a year, temperatures of −90 to 90 °C.
    TooFew {
        /// How many there are.
        usable: usize,
    },
    /// Less than half an hour from the first to the last.
    TooShort {
        /// How long it is.
        span: Seconds,
    },
    /// A reading's time lies before that of the one in front of it.
    NotInOrder,
}

impl CoolDown {
    /// Weighs a log under a prior. Readings in rising order of time, any number of them; those
    /// that are no numbers or out of all range are passed over.
    ///
    /// # Errors
    /// [`CoolDownError`] where there is too little to go by.
    ///
    /// ```
    /// use measure::cool_down::{CabinetKind, CoolDown, Goal, TemperatureAt, Verdict};
    /// use quantity::{Celsius, Seconds};
    /// let readings: Vec<TemperatureAt> = (0..300)
    ///     .map(|minute| {
    ///         let hours = f64::from(minute) / 60.0;
    ///         TemperatureAt {
    ///             at: Seconds::new(hours * 3600.0),
    ///             // It goes to +8 °C and no further.
    ///             temperature: Celsius::new(8.0 + 14.0 * libm::exp(-hours / 0.8)),
    ///         }
    ///     })
    ///     .collect();
    /// let found = CoolDown::of(&readings, &CabinetKind::ChestFreezer.prior()).unwrap();
    /// let end = found.end();
    /// assert!(end.from.get() < 8.0 && 8.0 < end.to.get());
    /// let goal = Goal { target: Celsius::new(-18.0), within: Seconds::new(86_400.0) };
    /// assert!(matches!(found.verdict(&goal), Verdict::WillNot { .. }));
    /// ```
    pub fn of(readings: &[TemperatureAt], prior: &CoolDownPrior) -> Result<Self, CoolDownError> {
        let log = Thinned::of(readings)?;
        let beforehand = Beforehand::of(prior);
        let mut marked = events(&log);
        if marked.iter().filter(|one| !**one).count() < LEAST_POINTS {
            marked.fill(false);
        }
        Ok(Self::fitted(log, marked, beforehand))
    }

    pub(super) fn fitted(log: Thinned, marked: Vec<bool>, beforehand: Beforehand) -> Self {
        let kept = log.only(|place| !marked[place]);
        Self {
            parts: parts(&kept, &beforehand),
            log,
            marked,
            beforehand,
        }
    }

    /// How long the readings go.
    #[must_use]
    pub fn last(&self) -> Seconds {
        Seconds::new(self.log.last())
    }

    /// The share of the thinned points that was left out as defrosts, open doors or slips.
    #[must_use]
    pub fn left_out(&self) -> Ratio {
        let out = self.marked.iter().filter(|one| **one).count();
        Ratio::new(out as f64 / self.marked.len() as f64)
    }

    /// Median of the slower of its two time constants with its 5th and 95th percentile, its
    /// logarithm taken as normal. It comes in steps of two, as the grid has them.
    #[must_use]
    pub fn time_constant(&self) -> [Seconds; 3] {
        let log = |part: &Part| libm::log(part.pace.air.max(part.pace.walls));
        let mean = self.mean_of(log);
        let variance = self.mean_of(|part| (log(part) - mean) * (log(part) - mean));
        let deviation = libm::sqrt(variance);
        [-1.645, 0.0, 1.645].map(|away| Seconds::new(libm::exp(mean + away * deviation)))
    }

    /// What one reading errs by beside the others, as a standard deviation: its geometric mean over
    /// all that is believed.
    #[must_use]
    pub fn noise(&self) -> KelvinDelta {
        KelvinDelta::new(libm::exp(self.mean_of(|part| libm::log(part.noise))))
    }

    /// The coldest that it has been, one slip aside.
    pub(super) fn coldest(&self) -> f64 {
        let kept = self.log.only(|place| !self.marked[place]);
        let threes = kept.temperature.windows(3);
        threes
            .map(|three| median(&mut three.to_vec()))
            .fold(f64::INFINITY, f64::min)
    }

    pub(super) fn mean_of(&self, of: impl Fn(&Part) -> f64) -> f64 {
        self.parts.iter().map(|part| part.weight * of(part)).sum()
    }
}
