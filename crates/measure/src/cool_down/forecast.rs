//! What a cool-down comes to: temperatures, times, and whether it gets there.

use quantity::{Celsius, Seconds};

use super::belief::Part;
use super::course::CoolDown;
use super::evidence::{columns, share_left};
use super::symmetric::dot;

/// The 5th and the 95th percentile hold nine in ten between them.
const TAILS: [f64; 2] = [0.05, 0.95];
/// From here on a verdict is given (judgement: being wrong costs a machine or a repair).
const SURE: f64 = 0.97;
/// Halvings: a day to a hundredth of a second, a thousand kelvins to a millionth.
const HALVINGS: usize = 40;

/// What a cabinet is to reach, and until when.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Goal {
    /// No warmer than this.
    pub target: Celsius,
    /// Since the compressor was set going.
    pub within: Seconds,
}

/// A temperature with nine in ten.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TemperatureBand {
    /// The 5th percentile.
    pub from: Celsius,
    /// As likely colder as warmer.
    pub median: Celsius,
    /// The 95th percentile.
    pub to: Celsius,
}

/// When a target is reached.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Reach {
    /// After this time since the compressor was set going.
    After(Seconds),
    /// Not within the goal's time.
    Beyond,
}

/// When a target is reached, with nine in ten.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ReachBand {
    /// The 5th percentile.
    pub from: Reach,
    /// As likely sooner as later.
    pub median: Reach,
    /// The 95th percentile.
    pub to: Reach,
}

/// Whether it gets there. Each holds the probability of what it says.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Verdict {
    /// It will.
    WillReach {
        /// That it will.
        probability: f64,
    },
    /// It won't.
    WillNot {
        /// That it won't.
        probability: f64,
    },
    /// Neither is sure enough yet.
    TooEarly {
        /// That it will.
        probability: f64,
    },
}

impl CoolDown {
    /// The temperature that it ends at.
    #[must_use]
    pub fn end(&self) -> TemperatureBand {
        self.band(|_| 0.0)
    }

    /// The curve's temperature at a time, past or to come; readings lie around it by
    /// [`CoolDown::noise`].
    #[must_use]
    pub fn temperature_at(&self, at: Seconds) -> TemperatureBand {
        self.band(|part| part.left(at.get()))
    }

    /// The probability that the curve is at or below the target at the end of the goal's time.
    #[must_use]
    pub fn chance(&self, goal: &Goal) -> f64 {
        self.chance_at(goal.target.get(), goal.within.get())
    }

    /// When the target is reached.
    #[must_use]
    pub fn reach(&self, goal: &Goal) -> ReachBand {
        let place = |share| self.reached(goal, share);
        ReachBand {
            from: place(TAILS[0]),
            median: place(0.5),
            to: place(TAILS[1]),
        }
    }

    /// Whether it gets there in time.
    #[must_use]
    pub fn verdict(&self, goal: &Goal) -> Verdict {
        let probability = self.chance(goal);
        if probability >= SURE {
            Verdict::WillReach { probability }
        } else if 1.0 - probability >= SURE {
            let probability = 1.0 - probability;
            Verdict::WillNot { probability }
        } else {
            Verdict::TooEarly { probability }
        }
    }

    fn chance_at(&self, target: f64, at: f64) -> f64 {
        self.mean_of(|part| part.below(target, part.left(at)))
    }

    fn reached(&self, goal: &Goal, share: f64) -> Reach {
        let (mut least, mut most) = (0.0, goal.within.get());
        // Not a number counts as no time at all.
        if !(self.chance(goal) >= share && most > 0.0) {
            return Reach::Beyond;
        }
        for _ in 0..HALVINGS {
            let middle = 0.5 * (least + most);
            if self.chance_at(goal.target.get(), middle) >= share {
                most = middle;
            } else {
                least = middle;
            }
        }
        Reach::After(Seconds::new(most))
    }

    fn band(&self, left: impl Fn(&Part) -> f64) -> TemperatureBand {
        let normals: Vec<(f64, f64, f64)> = self
            .parts
            .iter()
            .map(|part| {
                let (mean, deviation) = part.normal(left(part));
                (part.weight, mean, deviation)
            })
            .collect();
        let place = |share| Celsius::new(percentile(&normals, share));
        TemperatureBand {
            from: place(TAILS[0]),
            median: place(0.5),
            to: place(TAILS[1]),
        }
    }
}

impl Part {
    /// The share of the slow part that is left at a time.
    pub(super) fn left(&self, at: f64) -> f64 {
        share_left(at, self.time_constant, self.delay)
    }

    /// Mean and standard deviation of the curve where that share is left.
    pub(super) fn normal(&self, left: f64) -> (f64, f64) {
        let columns = columns(left);
        let variance = self.ends.covariance.form(columns);
        (
            dot(columns, self.ends.mean),
            libm::sqrt(variance.max(f64::MIN_POSITIVE)),
        )
    }

    fn below(&self, target: f64, left: f64) -> f64 {
        let (mean, deviation) = self.normal(left);
        normal_below((target - mean) / deviation)
    }
}

/// The share of the standard normal distribution below this.
fn normal_below(away: f64) -> f64 {
    0.5 * libm::erfc(-away * core::f64::consts::FRAC_1_SQRT_2)
}

/// Of weighed normal distributions (weight, mean, deviation) whose weights sum to one.
fn percentile(normals: &[(f64, f64, f64)], share: f64) -> f64 {
    let ends = |sign: f64| {
        let far = normals
            .iter()
            .map(move |(_, mean, deviation)| mean + sign * 8.0 * deviation);
        far.fold(
            -sign * f64::INFINITY,
            if sign > 0.0 { f64::max } else { f64::min },
        )
    };
    let (mut least, mut most) = (ends(-1.0), ends(1.0));
    for _ in 0..HALVINGS {
        let middle = 0.5 * (least + most);
        let below: f64 = normals
            .iter()
            .map(|(weight, mean, deviation)| weight * normal_below((middle - mean) / deviation))
            .sum();
        if below >= share {
            most = middle;
        } else {
            least = middle;
        }
    }
    0.5 * (least + most)
}
