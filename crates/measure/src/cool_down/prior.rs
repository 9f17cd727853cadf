//! What is thought of a cool-down before any reading. All figures are judgement.

use quantity::{Celsius, KelvinDelta, Seconds};

/// What is cooling down, empty or nearly so, from a room's temperature.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CabinetKind {
    /// A chest freezer.
    ChestFreezer,
    /// An upright freezer, or the freezer of a combined machine.
    UprightFreezer,
    /// A refrigerator, or the fresh-food part of a combined machine.
    Refrigerator,
}

/// Distributions beforehand. They are wide: a machine is watched because something may be wrong.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CoolDownPrior {
    /// Mean of the temperature that it ends at.
    pub end: Celsius,
    /// Standard deviation of that. Held between 0.1 and 100 K.
    pub end_deviation: KelvinDelta,
    /// Mean of the temperature that it starts from.
    pub start: Celsius,
    /// Standard deviation of that. Held between 0.1 and 100 K.
    pub start_deviation: KelvinDelta,
    /// Mean of how much falls quickly, before the rest: air and plates before the walls.
    pub quick: KelvinDelta,
    /// Standard deviation of that. Held between 0.01 and 100 K.
    pub quick_deviation: KelvinDelta,
    /// Median of the time constant of the slow part. Held between a minute and a week.
    pub time_constant: Seconds,
    /// Standard deviation of its natural logarithm. Held between 0.01 and 3.
    pub time_constant_spread: f64,
    /// Median of the delay. Held between a second and a day.
    pub delay: Seconds,
    /// Standard deviation of its natural logarithm. Held between 0.01 and 3.
    pub delay_spread: f64,
    /// Median of what lies between curve and readings (a standard deviation). Held between 0.001
    /// and 20 K.
    pub noise: KelvinDelta,
    /// Standard deviation of its natural logarithm. Held between 0.05 and 3.
    pub noise_spread: f64,
}

impl CabinetKind {
    /// All kinds.
    pub const ALL: [Self; 3] = [Self::ChestFreezer, Self::UprightFreezer, Self::Refrigerator];

    /// What is thought beforehand. A sound freezer passes 0 °C in 1 to 3 h and −18 °C in 4 to
    /// 12 h (from memory), which with an end at −24 °C asks for time constants of 1.5 to 6 h; ends
    /// reach from far below that to hardly cooler than the room.
    #[must_use]
    pub const fn prior(self) -> CoolDownPrior {
        let (end, end_deviation, hours, quick) = match self {
            Self::ChestFreezer => (-16.0, 13.0, 3.0, 8.0),
            Self::UprightFreezer => (-16.0, 13.0, 2.5, 8.0),
            Self::Refrigerator => (4.0, 7.0, 1.5, 4.0),
        };
        CoolDownPrior {
            end: Celsius::new(end),
            end_deviation: KelvinDelta::new(end_deviation),
            start: Celsius::new(20.0),
            start_deviation: KelvinDelta::new(9.0),
            quick: KelvinDelta::new(quick),
            quick_deviation: KelvinDelta::new(quick),
            time_constant: Seconds::new(hours * 3600.0),
            time_constant_spread: 0.5,
            delay: Seconds::new(300.0),
            delay_spread: 0.8,
            noise: KelvinDelta::new(0.4),
            noise_spread: 0.8,
        }
    }
}

/// A normal distribution, in bare numbers.
#[derive(Debug, Clone, Copy)]
pub(super) struct Normal {
    pub(super) mean: f64,
    pub(super) deviation: f64,
}

/// A prior made fit to reckon with: what is no number falls back to a chest freezer's.
#[derive(Debug, Clone, Copy)]
pub(super) struct Beforehand {
    pub(super) end: Normal,
    pub(super) start: Normal,
    pub(super) quick: Normal,
    pub(super) log_time_constant: Normal,
    pub(super) log_delay: Normal,
    pub(super) log_noise: Normal,
}

impl Beforehand {
    pub(super) fn of(prior: &CoolDownPrior) -> Self {
        let otherwise = CabinetKind::ChestFreezer.prior();
        let kelvins = |mean: Celsius, deviation: KelvinDelta, other: Celsius| Normal {
            mean: held(mean.get(), [-273.0, 1000.0], other.get()),
            deviation: held(deviation.get(), [0.1, 100.0], 13.0),
        };
        let logs = |median: f64, ends: [f64; 2], other: f64, spread: f64, least: f64| Normal {
            mean: libm::log(held(median, ends, other)),
            deviation: held(spread, [least, 3.0], 0.8),
        };
        Self {
            end: kelvins(prior.end, prior.end_deviation, otherwise.end),
            start: kelvins(prior.start, prior.start_deviation, otherwise.start),
            quick: Normal {
                mean: held(prior.quick.get(), [-100.0, 100.0], otherwise.quick.get()),
                deviation: held(prior.quick_deviation.get(), [0.01, 100.0], 8.0),
            },
            log_time_constant: logs(
                prior.time_constant.get(),
                [60.0, 604_800.0],
                otherwise.time_constant.get(),
                prior.time_constant_spread,
                0.01,
            ),
            log_delay: logs(
                prior.delay.get(),
                [1.0, 86_400.0],
                otherwise.delay.get(),
                prior.delay_spread,
                0.01,
            ),
            log_noise: logs(
                prior.noise.get(),
                [1e-3, 20.0],
                otherwise.noise.get(),
                prior.noise_spread,
                0.05,
            ),
        }
    }
}

impl Beforehand {
    /// Of start, end and quick part.
    pub(super) fn means(&self) -> [f64; 3] {
        [self.start, self.end, self.quick].map(|one| one.mean)
    }

    /// One over the variances of the three.
    pub(super) fn precisions(&self) -> [f64; 3] {
        [self.start, self.end, self.quick].map(|one| 1.0 / (one.deviation * one.deviation))
    }
}

fn held(value: f64, ends: [f64; 2], otherwise: f64) -> f64 {
    if value.is_nan() {
        otherwise
    } else {
        value.clamp(ends[0], ends[1])
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_prior_that_is_no_number_is_held_to_one_that_is() {
        let broken = CoolDownPrior {
            end: Celsius::new(f64::NAN),
            end_deviation: KelvinDelta::new(-1.0),
            time_constant: Seconds::new(0.0),
            noise_spread: f64::INFINITY,
            ..CabinetKind::Refrigerator.prior()
        };
        let found = Beforehand::of(&broken);
        assert!((found.end.mean + 16.0).abs() < 1e-12);
        assert!((found.end.deviation - 0.1).abs() < 1e-12);
        assert!((found.log_time_constant.mean - libm::log(60.0)).abs() < 1e-12);
        assert!((found.log_noise.deviation - 3.0).abs() < 1e-12);
    }
}
