//! What the course of a cool-down shows, apart from where it ends.

use super::course::CoolDown;
use super::forecast::Goal;
use super::thinned::{LEAST_POINTS, LEAST_SPAN, Thinned, median};

/// Something to be seen in a course.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Sign {
    /// It has all but arrived, and that is surely warmer than the target.
    PlateauTooWarm,
    /// It is less cold by now than its first two thirds foretold.
    Slowing,
    /// It has been colder than it is, and not just for one reading: a defrost, an open door, or it
    /// is failing. Which of them shows once it is over, or isn't.
    WarmingAgain,
}

/// Less than this share of the way is left at a plateau (judgement).
const ARRIVED: f64 = 0.06;
/// As sure as this that the plateau lies above the target (judgement).
const SURE: f64 = 0.95;
/// So unlikely to be that warm or warmer by what was foretold (judgement): the upper end of its band.
const BEYOND: f64 = 0.05;
/// A course has to be this long before its two thirds foretell anything (judgement).
const FORETELLS: f64 = 1.5 * LEAST_SPAN;
/// What it is warmer by than it has been, in kelvins and in standard deviations of the noise
/// (judgement).
const WARMER: f64 = 2.0;
const WARMER_THAN_NOISE: f64 = 4.0;
/// Middles over this many points, so that one of them is no sign.
const POINTS: usize = 5;

impl CoolDown {
    /// What can be seen so far. Weighs the first two thirds once more, which takes as long as
    /// [`CoolDown::of`].
    #[must_use]
    pub fn signs(&self, goal: &Goal) -> Vec<Sign> {
        let seen = [
            (Sign::PlateauTooWarm, self.is_plateau_too_warm(goal)),
            (Sign::Slowing, self.is_slowing()),
            (Sign::WarmingAgain, self.is_warming_again()),
        ];
        let seen = seen.into_iter().filter(|(_, is_seen)| *is_seen);
        seen.map(|(sign, _)| sign).collect()
    }

    fn is_plateau_too_warm(&self, goal: &Goal) -> bool {
        let never = Goal {
            within: quantity::Seconds::new(f64::INFINITY),
            ..*goal
        };
        let readings = &self.log.temperature;
        let (Some(first), Some((_, now))) = (readings.first(), middle_of(&self.latest())) else {
            return false;
        };
        // Food that will have frozen some day is no part of what it has come to by now.
        let end = self.end().median.get() - self.more_to_come(f64::INFINITY);
        now - end < ARRIVED * (first - end) && 1.0 - self.chance(&never) >= SURE
    }

    /// The last tenth of the log, events aside.
    fn latest(&self) -> Thinned {
        let first = self.log.at.first().copied().unwrap_or_default();
        let tail = self.log.last() - 0.1 * (self.log.last() - first);
        self.log
            .only(|place| self.log.at[place] >= tail && !self.marked[place])
    }

    /// Held against the middle of the last tenth.
    fn is_slowing(&self) -> bool {
        let (first, last) = (self.log.at.first().copied(), self.log.last());
        let first = first.unwrap_or_default();
        let cut = first + (last - first) * 2.0 / 3.0;
        let until = |place: &usize| self.log.at[*place] <= cut && !self.marked[*place];
        let early = self.log.only(|place| until(&place));
        if early.at.len() < LEAST_POINTS || cut - first < FORETELLS * 2.0 / 3.0 {
            return false;
        }
        let count = early.at.len();
        let foretold = Self::fitted(early, vec![false; count], self.beforehand);
        let Some((at, seen)) = middle_of(&self.latest()) else {
            return false;
        };
        1.0 - foretold.chance(&Goal {
            target: quantity::Celsius::new(seen),
            within: quantity::Seconds::new(at),
        }) < BEYOND
    }

    /// All points count here, those of a defrost too: it may be going on.
    fn is_warming_again(&self) -> bool {
        let middles: Vec<f64> = self
            .log
            .temperature
            .windows(POINTS)
            .map(|points| median(&mut points.to_vec()))
            .collect();
        let coldest = middles.iter().copied().fold(f64::INFINITY, f64::min);
        let bound = WARMER.max(WARMER_THAN_NOISE * self.noise().get());
        middles.last().is_some_and(|now| now - coldest > bound)
    }
}

fn middle_of(log: &Thinned) -> Option<(f64, f64)> {
    let count = log.at.len();
    (count > 0).then(|| {
        let at = log.at.iter().sum::<f64>() / count as f64;
        (at, median(&mut log.temperature.clone()))
    })
}
