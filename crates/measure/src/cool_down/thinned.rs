//! A log of temperatures, thinned to what a fit needs.

use quantity::{Celsius, Seconds};

use super::course::CoolDownError;

/// One reading of a cabinet's temperature.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TemperatureAt {
    /// Since the compressor was set going.
    pub at: Seconds,
    /// What the thermometer showed.
    pub temperature: Celsius,
}

/// A fit gets no more points than this. Readings closer together than a two-hundredth of the log
/// hang together so much that they tell hardly more.
pub const MOST_POINTS: usize = 200;
/// Fewer readings are no log.
pub(super) const LEAST_POINTS: usize = 6;
/// A shorter log says nothing of where it ends.
pub(super) const LEAST_SPAN: f64 = 1800.0;
/// A year: what was logged for longer is no cool-down.
const LONGEST: f64 = 365.0 * 86_400.0;

/// Points in rising order of time, at least [`LEAST_POINTS`].
#[derive(Debug, Clone)]
pub(super) struct Thinned {
    /// In seconds since the compressor was set going.
    pub(super) at: Vec<f64>,
    /// In °C.
    pub(super) temperature: Vec<f64>,
}

impl Thinned {
    /// One point for each of [`MOST_POINTS`] equal stretches of time that holds a reading: the
    /// median temperature at the mean time. Takes time in proportion to the readings.
    pub(super) fn of(readings: &[TemperatureAt]) -> Result<Self, CoolDownError> {
        let usable: Vec<(f64, f64)> = readings
            .iter()
            .map(|one| (one.at.get(), one.temperature.get()))
            .filter(|(at, temperature)| {
                (0.0..=LONGEST).contains(at) && (-90.0..=90.0).contains(temperature)
            })
            .collect();
        if usable.windows(2).any(|pair| pair[0].0 > pair[1].0) {
            return Err(CoolDownError::NotInOrder);
        }
        let (Some(first), Some(last)) = (usable.first(), usable.last()) else {
            return Err(CoolDownError::TooFew { usable: 0 });
        };
        let span = last.0 - first.0;
        if usable.len() < LEAST_POINTS {
            let usable = usable.len();
            return Err(CoolDownError::TooFew { usable });
        }
        if span < LEAST_SPAN {
            let span = Seconds::new(span);
            return Err(CoolDownError::TooShort { span });
        }
        let stretch = |at: f64| {
            let place = (at - first.0) / span * MOST_POINTS as f64;
            (place as usize).min(MOST_POINTS - 1)
        };
        let mut thinned = Self {
            at: Vec::with_capacity(MOST_POINTS),
            temperature: Vec::with_capacity(MOST_POINTS),
        };
        for group in usable.chunk_by(|one, other| stretch(one.0) == stretch(other.0)) {
            thinned.push(group);
        }
        if thinned.at.len() < LEAST_POINTS {
            let usable = thinned.at.len();
            return Err(CoolDownError::TooFew { usable });
        }
        Ok(thinned)
    }

    fn push(&mut self, group: &[(f64, f64)]) {
        let mean = group.iter().map(|one| one.0).sum::<f64>() / group.len() as f64;
        let mut temperatures: Vec<f64> = group.iter().map(|one| one.1).collect();
        self.at.push(mean);
        self.temperature.push(median(&mut temperatures));
    }

    pub(super) fn last(&self) -> f64 {
        self.at.last().copied().unwrap_or_default()
    }

    /// What was read at a time, on the straight line between two readings.
    pub(super) fn read_at(&self, at: f64) -> f64 {
        let after = self.at.partition_point(|one| *one < at);
        let point = |place: usize| {
            let place = place.min(self.at.len().saturating_sub(1));
            Some((*self.at.get(place)?, *self.temperature.get(place)?))
        };
        match (point(after.saturating_sub(1)), point(after)) {
            (Some((a, x)), Some((b, y))) if b > a && at > a => {
                x + (y - x) * ((at - a) / (b - a)).min(1.0)
            }
            (Some((_, x)), _) => x,
            (None, _) => 0.0,
        }
    }

    /// The points whose place `kept` says yes to.
    pub(super) fn only(&self, kept: impl Fn(usize) -> bool) -> Self {
        let places = || (0..self.at.len()).filter(|place| kept(*place));
        Self {
            at: places().map(|place| self.at[place]).collect(),
            temperature: places().map(|place| self.temperature[place]).collect(),
        }
    }
}

/// The median in linear time; the values end up in another order. Zero of none.
pub(super) fn median(values: &mut [f64]) -> f64 {
    let middle = values.len() / 2;
    if values.is_empty() {
        return 0.0;
    }
    let odd = values.len() % 2 == 1;
    let (below, upper, _) = values.select_nth_unstable_by(middle, f64::total_cmp);
    if odd {
        *upper
    } else {
        let lower = below.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        0.5 * (lower + *upper)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn log(readings: impl Iterator<Item = (f64, f64)>) -> Vec<TemperatureAt> {
        let one = |(at, temperature)| TemperatureAt {
            at: Seconds::new(at),
            temperature: Celsius::new(temperature),
        };
        readings.map(one).collect()
    }

    #[test]
    fn a_long_log_becomes_medians_that_one_slip_does_not_move() {
        let slips = |second: u32| if second % 100 == 7 { 85.0 } else { -20.0 };
        let long = log((0..100_000).map(|second| (f64::from(second), slips(second))));
        let thinned = Thinned::of(&long).unwrap();
        assert_eq!(thinned.at.len(), MOST_POINTS);
        assert!(
            thinned
                .temperature
                .iter()
                .all(|one| (one + 20.0).abs() < 1e-12)
        );
        assert!(thinned.at.windows(2).all(|pair| pair[0] < pair[1]));
    }

    #[test]
    fn a_short_log_keeps_its_readings() {
        let short = log((0..=30).map(|minute| (f64::from(minute) * 60.0, f64::from(minute))));
        let thinned = Thinned::of(&short).unwrap();
        assert_eq!(thinned.at.len(), 31);
        assert!((thinned.temperature[30] - 30.0).abs() < 1e-12);
    }

    #[test]
    fn what_is_no_log_is_named() {
        let refused = |readings: Vec<TemperatureAt>| Thinned::of(&readings).err();
        assert_eq!(
            refused(Vec::new()),
            Some(CoolDownError::TooFew { usable: 0 })
        );
        let few = log((0..5).map(|hour| (f64::from(hour) * 3600.0, 5.0)));
        assert_eq!(refused(few), Some(CoolDownError::TooFew { usable: 5 }));
        let brief = log((0..100).map(|second| (f64::from(second), 5.0)));
        let span = Seconds::new(99.0);
        assert_eq!(refused(brief), Some(CoolDownError::TooShort { span }));
        let back = log((0..100).map(|minute| (f64::from(99 - minute) * 60.0, 5.0)));
        assert_eq!(refused(back), Some(CoolDownError::NotInOrder));
        let wild = log((0..100).map(|minute| (f64::from(minute) * 60.0, f64::NAN)));
        assert_eq!(refused(wild), Some(CoolDownError::TooFew { usable: 0 }));
    }

    #[test]
    fn a_median_is_the_middle_one_or_between_both() {
        assert!((median(&mut [3.0, 1.0, 2.0]) - 2.0).abs() < 1e-12);
        assert!((median(&mut [4.0, 1.0, 3.0, 2.0]) - 2.5).abs() < 1e-12);
        assert!(median(&mut []).abs() < 1e-12);
    }
}
