//! Where it may end, beforehand, and what else is known of that than temperatures of the air.
//!
//! The air's readings are weighed under one wide end; afterwards each part is split by what is thought of
//! ends beforehand. A normal end over a wider normal one is a normal factor, and so is what a coil or watts
//! say of the end: each is one more step of the same filter, exact, and costs next to nothing.

use super::belief::Part;
use super::prior::{EndPrior, Normal, held};

/// The end under which the air's readings are weighed first, wider than any that is thought beforehand.
pub(super) const WIDE: Normal = Normal {
    mean: 0.0,
    deviation: 30.0,
};

/// Ends beforehand, with their shares.
#[derive(Debug, Clone, Copy)]
pub(super) struct Ends(pub(super) [(f64, Normal); 2]);

impl Ends {
    pub(super) fn of(prior: &EndPrior, otherwise: &EndPrior) -> Self {
        let plain = |of: fn(&EndPrior) -> f64, ends| held(of(prior), ends, of(otherwise));
        let weak = plain(|one| one.weak_share.get(), [0.001, 0.999]);
        let sound = Normal {
            mean: plain(|one| one.sound.get(), [-273.0, 1000.0]),
            deviation: plain(|one| one.sound_deviation.get(), [0.1, 25.0]),
        };
        let weakened = Normal {
            mean: plain(|one| one.weak.get(), [-273.0, 1000.0]),
            deviation: plain(|one| one.weak_deviation.get(), [0.1, 25.0]),
        };
        Self([(1.0 - weak, sound), (weak, weakened)])
    }

    /// A part that was weighed under the wide end, as one for each end that is thought of; weights are
    /// multiplied.
    pub(super) fn split(&self, part: &Part) -> [Part; 2] {
        let shares = [0, 1].map(|place| self.0[place].0 * part.odds[place]);
        let ends = [self.0[0].1, self.0[1].1];
        [0, 1].map(|place| {
            let (share, end) = (shares[place], ends[place]);
            let factor = Factor::of(end);
            let (state, likely) = part.state.with_end(factor.at, factor.variance);
            Part {
                weight: part.weight * share * libm::exp(factor.log + likely),
                is_sound: place == 0,
                state,
                ..*part
            }
        })
    }
}

/// One normal density over the wide one: e^log times that of a reading of the end.
struct Factor {
    at: f64,
    variance: f64,
    log: f64,
}

impl Factor {
    fn of(end: Normal) -> Self {
        let (own, wide) = (
            end.deviation * end.deviation,
            WIDE.deviation * WIDE.deviation,
        );
        let variance = 1.0 / (1.0 / own - 1.0 / wide);
        let at = variance * (end.mean / own - WIDE.mean / wide);
        let square = at * at / variance - end.mean * end.mean / own + WIDE.mean * WIDE.mean / wide;
        // √(wide/own), and √variance that the filter's own density leaves out.
        let log = 0.5 * (libm::log(wide / own) + libm::log(variance) + square);
        Self { at, variance, log }
    }
}
