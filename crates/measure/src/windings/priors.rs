//! What is thought before anything is read. Weak, stated, and open to change.

use super::{Explanation, Inspection, Leads, StartGear};
use quantity::Observed;

/// A normal distribution.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Normal {
    /// Mean.
    pub mean: f64,
    /// Standard deviation.
    pub deviation: f64,
}

/// What motors for one mains are like.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MainsPriors {
    /// Natural logarithm of the run winding in ohms.
    pub run: Normal,
    /// Natural logarithm of start over run.
    pub ratio: Normal,
}

/// Every assumption behind the probabilities of this module.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WindingPriors {
    /// Motors for 115 to 120 V.
    pub v120: MainsPriors,
    /// Motors for 220 to 240 V.
    pub v230: MainsPriors,
    /// The share of whole motors that are unlike most: no motor fails on its ratio or size alone.
    pub unusual: f64,
    /// Deviation of the natural logarithm of their run winding, around the same mean.
    pub unusual_run_deviation: f64,
    /// Natural logarithm of their start over run.
    pub unusual_ratio: Normal,
    /// What zeroed leads still add at their contacts, in ohms.
    pub zeroed_leads: Normal,
    /// What leads add that were not zeroed, in ohms.
    pub leads: Normal,
    /// How often leads are not zeroed where nobody said.
    pub not_zeroed: f64,
    /// How often one thing noted about the wiring is right.
    pub noted_right: f64,
    /// How often everything noted is off together: the picture turned, wires swapped before.
    pub noted_astray: f64,
    /// Natural logarithm of a start device's cold resistance over the run winding.
    pub start_device: Normal,
    /// Natural logarithm of one winding of three, in ohms.
    pub equal_windings: Normal,
    /// Natural logarithm of a single coil, in ohms.
    pub single_coil: Normal,
    /// Natural logarithm of the share of a winding that shorted turns leave.
    pub shorted_share: Normal,
    /// Natural logarithm of the share of a winding that is left where it is burnt through.
    pub dead_share: Normal,
    /// Natural logarithm of the share of a winding beyond the place where both touch.
    pub untouched_share: Normal,
    /// Natural logarithm of what both windings share where they touch, over the run winding.
    pub shared_part: Normal,
    /// Natural logarithm of a leg of windings burnt to one lump, in ohms.
    pub lump_leg: Normal,
}

impl Default for WindingPriors {
    /// Sizes after a table of typical ohms by motor size (from memory): for 115 V runs of 1.5 to
    /// 14 Ω, for 230 V of 5 to 45 Ω. Start over run: median 1.8 with 3 % at or below 1 for 115 V,
    /// median 1.3 with 15 % for 230 V (judgement; machines at or below 1 are reported); one motor in
    /// ten may be of another size, or have a ratio of 0.7 to 8 (3 to 5 is the usual rule: common
    /// practice, no source). Leads
    /// 0.2 to 0.5 Ω (common practice, no source). Start devices: cold PTCs of 3 to 20 Ω for 115 V,
    /// 13 to 47 Ω for 230 V (common practice, no source). Equal windings: 1 to 50 Ω a pair
    /// (*Heating and Cooling Essentials*, 2022, §25.8). Shorted turns (judgement): half of a
    /// winding is left, or a twentieth of one burnt through; two windings may touch anywhere
    /// along both; legs of a lump have about 0.1 Ω.
    fn default() -> Self {
        Self {
            v120: MainsPriors {
                run: Normal::new(1.46, 0.55),
                ratio: Normal::new(0.5878, 0.3125),
            },
            v230: MainsPriors {
                run: Normal::new(2.68, 0.55),
                ratio: Normal::new(0.2624, 0.2532),
            },
            unusual: 0.1,
            unusual_run_deviation: 0.8,
            unusual_ratio: Normal::new(0.9, 0.6),
            zeroed_leads: Normal::new(0.03, 0.03),
            leads: Normal::new(0.35, 0.15),
            not_zeroed: 0.4,
            noted_right: 0.98,
            noted_astray: 0.01,
            start_device: Normal::new(0.5, 0.7),
            equal_windings: Normal::new(2.0, 0.9),
            single_coil: Normal::new(2.3, 1.0),
            shorted_share: Normal::new(-0.8, 0.5),
            dead_share: Normal::new(-3.0, 0.8),
            untouched_share: Normal::new(-0.8, 0.6),
            shared_part: Normal::new(-1.3, 0.8),
            lump_leg: Normal::new(-2.3, 0.8),
        }
    }
}

impl Normal {
    /// A normal distribution by mean and standard deviation.
    #[must_use]
    pub const fn new(mean: f64, deviation: f64) -> Self {
        Self { mean, deviation }
    }

    /// Natural logarithm of the density at `x`, above 0, of a quantity whose natural logarithm has
    /// this distribution.
    pub(super) fn ln_density_of_exponential(self, x: f64) -> f64 {
        let log = libm::log(x);
        let z = (log - self.mean) / self.deviation;
        let scale = self.deviation * libm::sqrt(2.0 * core::f64::consts::PI);
        -0.5 * square(z) - libm::log(scale) - log
    }
}

impl WindingPriors {
    /// The share of sound-or-not machines whose leads are still in the readings.
    pub(super) fn share_not_zeroed(&self, leads: Leads) -> f64 {
        match leads {
            Leads::Unknown => self.not_zeroed,
            Leads::Zeroed => 0.02,
            Leads::NotZeroed | Leads::Measured(..) => 0.98,
        }
    }

    /// What the leads add where they are still in the readings.
    pub(super) fn leads_in(&self, leads: Leads) -> Normal {
        match leads {
            Leads::Measured(typed, accuracy) => match typed.observed {
                Observed::Value(value) => Normal::new(
                    value.get(),
                    accuracy.standard(value, typed.count).get().max(0.02),
                ),
                Observed::OverRange { .. } => self.leads,
            },
            _ => self.leads,
        }
    }

    /// What the leads add, zeroed or not: one distribution with the mean and variance of both.
    pub(super) fn any_leads(&self, leads: Leads) -> Normal {
        let share = self.share_not_zeroed(leads);
        let (inside, out) = (self.leads_in(leads), self.zeroed_leads);
        let mean = share * inside.mean + (1.0 - share) * out.mean;
        let spread = share * square(inside.deviation) + (1.0 - share) * square(out.deviation);
        let between = share * (1.0 - share) * square(inside.mean - out.mean);
        Normal::new(mean, libm::sqrt(spread + between))
    }

    /// How common an explanation is before anything is read, up to a common factor (judgement).
    pub(super) fn weight(&self, explanation: Explanation, inspection: &Inspection) -> f64 {
        let sound = 0.80;
        let not_zeroed = self.share_not_zeroed(inspection.leads);
        let start_device_noted = inspection.wiring.start_device_on.is_some();
        match explanation {
            Explanation::Sound => sound * (1.0 - not_zeroed),
            Explanation::LeadsNotZeroed => sound * not_zeroed,
            Explanation::ProtectorOpen => 0.030,
            Explanation::CommonLeadOpen => 0.003,
            Explanation::StartOpen | Explanation::RunOpen => 0.006,
            Explanation::ShortedTurns => 0.008,
            Explanation::StartDeviceOn => match inspection.start_gear {
                StartGear::Unknown => 0.10,
                StartGear::Off => 0.002,
                StartGear::StillOn => 20.0,
            },
            Explanation::ProbeMissed => 0.030,
            // A start device on the pins is no part of either.
            Explanation::EqualWindings if start_device_noted => 0.002,
            Explanation::EqualWindings => 0.080,
            Explanation::SingleCoil if start_device_noted => 0.0001,
            Explanation::SingleCoil => 0.004,
        }
    }

    /// How well the wiring as found agrees with an assignment, as a factor.
    pub(super) fn wiring_factor(&self, agree: u32, differ: u32) -> f64 {
        let right = libm::pow(self.noted_right, f64::from(agree));
        let wrong = libm::pow((1.0 - self.noted_right) / 2.0, f64::from(differ));
        right * wrong
    }
}

pub(super) fn square(x: f64) -> f64 {
    x * x
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Standard normal distribution function, by the complementary error function.
    fn below(z: f64) -> f64 {
        0.5 * libm::erfc(-z / core::f64::consts::SQRT_2)
    }

    #[test]
    fn as_many_motors_have_start_at_or_below_run_as_is_stated() {
        let priors = WindingPriors::default();
        let share = |ratio: Normal| below(-ratio.mean / ratio.deviation);
        assert!((share(priors.v120.ratio) - 0.03).abs() < 0.002);
        assert!((share(priors.v230.ratio) - 0.15).abs() < 0.002);
    }

    #[test]
    fn leads_that_may_be_zeroed_have_the_mean_and_variance_of_the_mixture() {
        let priors = WindingPriors::default();
        // 40 % at 0.35 ± 0.15 and 60 % at 0.03 ± 0.03, second moments by hand.
        let mean = 0.4 * 0.35 + 0.6 * 0.03;
        let second = 0.4 * (0.35 * 0.35 + 0.15 * 0.15) + 0.6 * (0.03 * 0.03 + 0.03 * 0.03);
        let found = priors.any_leads(Leads::Unknown);
        assert!((found.mean - mean).abs() < 1e-12);
        assert!((found.deviation - libm::sqrt(second - mean * mean)).abs() < 1e-12);
    }

    #[test]
    fn a_start_device_noted_on_the_pins_speaks_against_an_inverter() {
        let priors = WindingPriors::default();
        let mut inspection = Inspection::default();
        let bare = priors.weight(Explanation::EqualWindings, &inspection);
        inspection.wiring.start_device_on = Some(super::super::Pair::OneTwo);
        assert!(priors.weight(Explanation::EqualWindings, &inspection) < bare / 10.0);
    }
}
