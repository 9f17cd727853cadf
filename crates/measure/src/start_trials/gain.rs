//! How much sooner one set-up starts than another.

use quantity::Ratio;

use super::belief::StartBelief;
use super::grid::{CELLS, STEP};
use super::threshold::{Knowledge, TAILS};

/// The threshold of one set-up over that of another: 2 means that the other one needs half the
/// rest.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Gain {
    /// Below this with a probability of 5 %.
    pub from: Ratio,
    /// As likely below as above.
    pub median: Ratio,
    /// Above this with a probability of 5 %.
    pub to: Ratio,
    /// The probability that the other set-up needs less rest; as likely as not where neither
    /// ever fails or neither ever starts.
    pub chance_sooner: f64,
    /// Which ends of the ratio the trials bound.
    pub knowledge: Knowledge,
}

/// Differences are counted in half cells: "at once" and "beyond" stand at the ends of the scale,
/// half a cell from the middle of the next.
const HALF: f64 = STEP / 2.0;
/// The ends of the scale lie this many half cells apart: the most that two places differ by.
const MOST: usize = 2 * CELLS;

impl StartBelief {
    /// What `other` gains over this set-up. The two are taken as independent of each other,
    /// which makes the interval wider than it need be where both have the same friction. "At
    /// once" counts as 15 s and "not within four hours" as four, so that what lies beyond is
    /// understated.
    ///
    /// ```
    /// use measure::start_trials::{Outcome, StartBelief, StartKind, Trial};
    /// use quantity::Seconds;
    /// let trial = |rest, outcome| Trial::new(Seconds::new(rest), outcome).unwrap();
    /// let plain = [trial(600.0, Outcome::Failed), trial(1800.0, Outcome::Started)];
    /// let kit = [trial(60.0, Outcome::Failed), trial(180.0, Outcome::Started)];
    /// let plain = StartBelief::of(&plain, &StartKind::Ptc.prior(false));
    /// let kit = StartBelief::of(&kit, &StartKind::KitWithPtc.prior(false));
    /// let gain = plain.gain_of(&kit);
    /// assert!(gain.median.get() > 3.0 && gain.chance_sooner > 0.95);
    /// ```
    #[must_use]
    pub fn gain_of(&self, other: &Self) -> Gain {
        let mut differences = vec![0.0; 2 * MOST + 1];
        for (place, mass) in self.places() {
            for (their_place, their_mass) in other.places() {
                differences[MOST + place - their_place] += mass * their_mass;
            }
        }
        let sooner: f64 = differences[MOST + 1..].iter().sum();
        let spread = spread(&differences);
        Gain {
            from: quantile(&spread, TAILS[0]),
            median: quantile(&spread, 0.5),
            to: quantile(&spread, TAILS[1]),
            chance_sooner: sooner + 0.5 * differences[MOST],
            knowledge: self.knowledge.over(other.knowledge),
        }
    }

    /// Where the threshold lies, in half cells from the least, and how likely.
    fn places(&self) -> impl Iterator<Item = (usize, f64)> {
        let ends = [(0, self.at_once), (MOST, self.not_hot + self.not_even_cold)];
        let cells = (0..CELLS).map(|cell| (2 * cell + 1, self.cell(cell)));
        ends.into_iter().chain(cells)
    }
}

impl Knowledge {
    /// What is known of a ratio from what is known of both of its terms.
    fn over(self, under: Self) -> Self {
        let known = |term: Self, bound: Self| term == Self::Both || term == bound;
        let at_most = known(self, Self::AtMost) && known(under, Self::AtLeast);
        let at_least = known(self, Self::AtLeast) && known(under, Self::AtMost);
        match (at_most, at_least) {
            (true, true) => Self::Both,
            (true, false) => Self::AtMost,
            (false, true) => Self::AtLeast,
            (false, false) => Self::Nothing,
        }
    }
}

/// The same with each difference spread over its neighbours: what lies in a cell lies anywhere
/// in it. At both ends what would go beyond stays.
fn spread(differences: &[f64]) -> Vec<f64> {
    let last = differences.len() - 1;
    (0..=last)
        .map(|place| {
            let beside = differences[place.saturating_sub(1)] + differences[(place + 1).min(last)];
            0.5 * differences[place] + 0.25 * beside
        })
        .collect()
}

/// Where the probability below reaches `share`, each difference spread evenly over half a cell.
fn quantile(differences: &[f64], share: f64) -> Ratio {
    let mut below = 0.0;
    let mut log = 0.0;
    for (place, mass) in differences.iter().enumerate() {
        if *mass > 0.0 && below + mass >= share {
            let within = (share - below) / mass - 0.5;
            log = HALF * (place as f64 - MOST as f64 + within);
            break;
        }
        below += mass;
    }
    Ratio::new(libm::exp(log))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_that_never_starts_against_one_that_always_does_is_the_whole_scale() {
        use crate::start_trials::StartPrior;
        let certain = |at_once, not_hot| StartPrior {
            at_once: Ratio::new(at_once),
            not_hot: Ratio::new(not_hot),
            not_even_cold: Ratio::new(0.0),
            ..StartPrior::default()
        };
        let never = StartBelief::of(&[], &certain(0.0, 1.0));
        let always = StartBelief::of(&[], &certain(1.0, 0.0));
        let gain = never.gain_of(&always);
        for ratio in [gain.median, gain.to] {
            assert!((ratio.get() / 960.0 - 1.0).abs() < STEP, "{gain:?}");
        }
        assert!(gain.chance_sooner > 0.99);
    }

    #[test]
    fn a_ratio_is_bounded_where_its_terms_are() {
        use Knowledge::{AtLeast, AtMost, Both, Nothing};
        assert_eq!(Both.over(Both), Both);
        assert_eq!(AtLeast.over(AtMost), AtLeast);
        assert_eq!(AtMost.over(AtLeast), AtMost);
        assert_eq!(AtMost.over(AtMost), Nothing);
        assert_eq!(Both.over(AtMost), AtLeast);
        assert_eq!(Both.over(Nothing), Nothing);
    }
}
