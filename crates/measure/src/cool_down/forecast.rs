//! What a cool-down comes to: temperatures, times, and whether it gets there.

use quantity::{Celsius, Seconds};

use super::course::CoolDown;
use super::prior::Normal;

/// The 5th and the 95th percentile hold nine in ten between them.
const TAILS: [f64; 2] = [0.05, 0.95];
/// From here on a verdict is given (judgement: being wrong costs a machine or a repair, and so does waiting).
const SURE: f64 = 0.95;
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
    /// The temperature that it ends at, on the mean over a control's cycle.
    #[must_use]
    pub fn end(&self) -> TemperatureBand {
        self.temperature_at(Seconds::new(f64::INFINITY))
    }

    /// The temperature at a time, on the mean over a control's cycle; up to the last reading what
    /// was read, with the thermometer's error.
    #[must_use]
    pub fn temperature_at(&self, at: Seconds) -> TemperatureBand {
        let outlook = self.outlook(at.get());
        let place = |share| Celsius::new(outlook.percentile(share));
        TemperatureBand {
            from: place(TAILS[0]),
            median: place(0.5),
            to: place(TAILS[1]),
        }
    }

    /// The probability that it is at or below the target at the end of the goal's time.
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
        self.outlook(at).below(target)
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

    /// What may be at a time.
    fn outlook(&self, at: f64) -> Outlook {
        let last = self.log.last();
        let thermometer = self.beforehand.thermometer;
        if at <= last {
            let noise = self.noise().get();
            let deviation = libm::sqrt(thermometer * thermometer + noise * noise);
            return Outlook {
                normals: vec![(
                    1.0,
                    Normal {
                        mean: self.log.read_at(at),
                        deviation,
                    },
                )],
                control: None,
            };
        }
        let ahead = at - last;
        let more = self.more_to_come(ahead);
        let besides = self.beforehand.to_come.deviation * self.to_come(ahead);
        let besides = besides * besides + thermometer * thermometer;
        let normals = self.parts.iter().map(|part| {
            let then = part.state.after(&part.pace.over(ahead));
            let variance = then.covariance.0[0] + besides;
            let deviation = libm::sqrt(variance.max(1e-12));
            (
                part.weight,
                Normal {
                    mean: then.mean[0] + more,
                    deviation,
                },
            )
        });
        Outlook {
            normals: normals.collect(),
            control: Some(self.control()),
        }
    }

    /// The share of what no reading shows beforehand. It comes within hours, and less of it
    /// is left the longer it was watched: food freezes for half a day and more (judgement).
    fn to_come(&self, ahead: f64) -> f64 {
        const PASSES: f64 = 24.0 * 3600.0;
        let comes = 1.0 - libm::exp(-ahead / self.beforehand.comes);
        libm::exp(-self.log.last() / PASSES) * comes
    }

    /// Kelvins by which that is likely to warm it.
    pub(super) fn more_to_come(&self, ahead: f64) -> f64 {
        self.beforehand.to_come.mean * self.to_come(ahead)
    }

    fn control(&self) -> Control {
        Control {
            held: self.beforehand.held,
            never: self.beforehand.unheld,
            // What was seen so cold was perhaps the bottom of a control's swing.
            no_more_than: self.coldest() + self.beforehand.swing,
        }
    }
}

/// Where a control stops it: a normal distribution cut off above what was seen colder.
#[derive(Debug, Clone, Copy)]
struct Control {
    held: Normal,
    /// The share that it never gets to stop.
    never: f64,
    no_more_than: f64,
}

impl Control {
    /// That it stops it no warmer than this.
    fn below(&self, temperature: f64) -> f64 {
        if temperature >= self.no_more_than {
            return 1.0;
        }
        // Far below all that was thought of, what is left is as good as at the cut.
        let most = self.held.below(self.no_more_than).max(1e-12);
        let stops = (self.held.below(temperature) / most).min(1.0);
        self.never + (1.0 - self.never) * stops
    }
}

/// Weighed normal distributions whose weights sum to one, and a control
/// that lets none go colder than it.
struct Outlook {
    normals: Vec<(f64, Normal)>,
    control: Option<Control>,
}

impl Outlook {
    /// That it is no warmer than this: neither by itself nor by its control.
    fn below(&self, temperature: f64) -> f64 {
        let below: f64 = self
            .normals
            .iter()
            .map(|(weight, normal)| weight * normal.below(temperature))
            .sum();
        below * self.control.map_or(1.0, |it| it.below(temperature))
    }

    fn percentile(&self, share: f64) -> f64 {
        let ends = |sign: f64, pick: fn(f64, f64) -> f64| {
            let far = self.normals.iter();
            far.map(|(_, normal)| normal.mean + sign * 8.0 * normal.deviation)
                .fold(-sign * f64::INFINITY, pick)
        };
        let (mut least, mut most) = (ends(-1.0, f64::min), ends(1.0, f64::max));
        if let Some(control) = &self.control {
            most = most.max(control.no_more_than);
        }
        for _ in 0..HALVINGS {
            let middle = 0.5 * (least + most);
            if self.below(middle) >= share {
                most = middle;
            } else {
                least = middle;
            }
        }
        0.5 * (least + most)
    }
}
