//! Eyes, ears and hands: they judge a physical amount with an error of their own, and now and
//! then they are plainly wrong.
//!
//! How far off a hand or an ear is has no source: judgement. Hands tell differences of a few
//! kelvins; what is hot is told as hot without a number.
//!
//! How often one is plainly wrong is known of other work (all from memory): a routine task of
//! little skill fails in 2 of 100 cases, 0.7 with the best people (task type E of HEART, Williams
//! 1986); who inspects by eye misses two or three marks in ten (See, Visual inspection, Sandia 2012).

use quantity::{KelvinDelta, Ratio};

use crate::Chance;

/// How well a person sees, hears and feels.
#[derive(Debug, Clone, PartialEq)]
pub struct Senses {
    /// Deviation of a difference of temperatures felt by hand, in kelvins.
    hand: f64,
    /// Deviation of a share seen by eye.
    eye: f64,
    /// Deviation of how loud something is heard, in decibels.
    ear: f64,
    /// How often an answer has nothing to do with what is there.
    slip: f64,
    /// How often a mark that is there is overlooked, and how often one is seen that isn't.
    overlooks: f64,
    imagines: f64,
    chance: Chance,
}

impl Senses {
    /// Those of somebody who has done it a few times.
    #[must_use]
    pub const fn ordinary(chance: Chance) -> Self {
        Self {
            hand: 1.5,
            eye: 0.08,
            ear: 3.0,
            slip: 0.02,
            overlooks: 0.2,
            // Dirt, flux and old soot pass for a mark now and then (judgement).
            imagines: 0.01,
            chance,
        }
    }

    /// Those that miss nothing, for tests.
    #[must_use]
    pub const fn perfect() -> Self {
        Self {
            hand: 0.0,
            eye: 0.0,
            ear: 0.0,
            slip: 0.0,
            overlooks: 0.0,
            imagines: 0.0,
            chance: Chance::new(0),
        }
    }

    /// A difference of temperatures as a hand tells it.
    pub fn felt(&mut self, difference: KelvinDelta) -> KelvinDelta {
        KelvinDelta::new(difference.get() + self.hand * self.chance.normal())
    }

    /// A share between 0 and 1 as an eye tells it.
    pub fn seen(&mut self, share: Ratio) -> Ratio {
        Ratio::new((share.get() + self.eye * self.chance.normal()).clamp(0.0, 1.0))
    }

    /// How loud something is heard, over what is usual: a ratio of amounts.
    pub fn heard(&mut self, loudness: Ratio) -> Ratio {
        let decibels = self.ear * self.chance.normal();
        Ratio::new(loudness.get() * libm::pow(10.0, decibels / 10.0))
    }

    /// One of several answers: the true one, or now and then any other.
    pub fn told(&mut self, truth: usize, answers: usize) -> usize {
        if answers < 2 || !self.chance.happens(self.slip) {
            return truth;
        }
        let other = (self.chance.share() * (answers - 1) as f64) as usize;
        // The others in order, the true one left out.
        if other >= truth { other + 1 } else { other }
    }

    /// Whether something is there, by a look.
    pub fn noticed(&mut self, is_there: bool) -> bool {
        let wrong = if is_there {
            self.overlooks
        } else {
            self.imagines
        };
        self.chance.happens(wrong) != is_there
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn slips_are_as_frequent_as_stated_and_never_name_the_truth() {
        let mut senses = Senses::ordinary(Chance::new(5));
        let told: Vec<usize> = (0..40_000).map(|_| senses.told(2, 5)).collect();
        let slips = told.iter().filter(|answer| **answer != 2).count() as f64;
        assert!(told.iter().all(|answer| *answer < 5));
        // Four standard deviations of 40,000 tries at 0.02.
        assert!((slips - 800.0).abs() < 4.0 * 28.0, "{slips}");
    }

    #[test]
    fn perfect_senses_tell_what_is_there() {
        let mut senses = Senses::perfect();
        assert_eq!(senses.felt(KelvinDelta::new(4.0)), KelvinDelta::new(4.0));
        assert_eq!(senses.seen(Ratio::new(0.4)), Ratio::new(0.4));
        assert_eq!(senses.told(1, 3), 1);
        assert!(senses.noticed(true) && !senses.noticed(false));
    }
}
