//! What is thought of a cool-down before any reading. All figures are judgement.

use quantity::{Celsius, KelvinDelta};

/// What is cooling down, empty or nearly so, from a room's temperature.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CabinetKind {
    /// A chest freezer.
    ChestFreezer,
    /// An upright freezer.
    UprightFreezer,
    /// The freezer of a machine that cools fresh food too, out of one evaporator.
    CombinedFreezer,
    /// The fresh food of such a machine.
    CombinedFreshFood,
    /// A refrigerator.
    Refrigerator,
}

/// Distributions beforehand. They are wide: a machine is watched because something may be wrong.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CoolDownPrior {
    /// Mean of the temperature that it starts from.
    pub start: Celsius,
    /// Standard deviation of that. Held between 0.1 and 100 K.
    pub start_deviation: KelvinDelta,
    /// Mean of the temperature that it would end at if no control stopped it.
    pub end: Celsius,
    /// Standard deviation of that. Held between 0.1 and 100 K.
    pub end_deviation: KelvinDelta,
    /// Mean of the temperature at which a control holds it.
    pub held: Celsius,
    /// Standard deviation of that. Held between 0.1 and 100 K.
    pub held_deviation: KelvinDelta,
    /// How much warmer than the coldest that was seen a control may hold it on the mean. Held between
    /// 0 and 50 K.
    pub swing: KelvinDelta,
    /// Standard deviation of what may yet come that no reading shows beforehand. Held between
    /// 0.01 and 100 K.
    pub to_come: KelvinDelta,
    /// Standard uncertainty that all readings of the thermometer have in common. Held between 0
    /// and 20 K.
    pub thermometer: KelvinDelta,
}

impl CabinetKind {
    /// All kinds.
    pub const ALL: [Self; 5] = [
        Self::ChestFreezer,
        Self::UprightFreezer,
        Self::CombinedFreezer,
        Self::CombinedFreshFood,
        Self::Refrigerator,
    ];

    /// What is thought beforehand.
    ///
    /// Freezers without a control end from hardly cooler than the room to where a compressor's
    /// suction runs empty, some −35 °C; refrigerators are smaller machines. Controls hold −18 to
    /// −22 °C or 2 to 6 °C in the air, on the mean, where people leave them; one that feels a plate, or the other
    /// compartment, holds this air less closely.
    /// A control lets the air swing by 3 to 6 K, and its first stop is the deepest; a freezer whose
    /// machine stops by its fresh food gets cold at first and warmer once that has enough.
    /// What is yet to come: food that freezes (a pause), frost that grows or that a defrost takes off,
    /// and in a machine with one evaporator the moment when the fresh food has enough and all cold goes
    /// to the freezer.
    #[must_use]
    pub const fn prior(self) -> CoolDownPrior {
        let (end, end_deviation, held, held_deviation, swing, to_come) = match self {
            Self::ChestFreezer | Self::UprightFreezer => (-20.0, 13.0, -20.0, 2.0, 3.5, 2.0),
            Self::CombinedFreezer => (-18.0, 13.0, -18.5, 3.0, 7.0, 6.0),
            Self::CombinedFreshFood => (4.0, 8.0, 4.0, 1.5, 3.5, 3.0),
            Self::Refrigerator => (2.0, 9.0, 3.0, 3.0, 3.5, 2.0),
        };
        CoolDownPrior {
            start: Celsius::new(20.0),
            start_deviation: KelvinDelta::new(9.0),
            end: Celsius::new(end),
            end_deviation: KelvinDelta::new(end_deviation),
            held: Celsius::new(held),
            held_deviation: KelvinDelta::new(held_deviation),
            swing: KelvinDelta::new(swing),
            to_come: KelvinDelta::new(to_come),
            thermometer: KelvinDelta::new(0.6),
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
    pub(super) start: Normal,
    pub(super) end: Normal,
    pub(super) held: Normal,
    pub(super) swing: f64,
    pub(super) to_come: f64,
    pub(super) thermometer: f64,
}

impl Beforehand {
    pub(super) fn of(prior: &CoolDownPrior) -> Self {
        let otherwise = CabinetKind::ChestFreezer.prior();
        let kelvins =
            |mean: Celsius, deviation: KelvinDelta, other: (Celsius, KelvinDelta)| Normal {
                mean: held(mean.get(), [-273.0, 1000.0], other.0.get()),
                deviation: held(deviation.get(), [0.1, 100.0], other.1.get()),
            };
        Self {
            start: kelvins(
                prior.start,
                prior.start_deviation,
                (otherwise.start, otherwise.start_deviation),
            ),
            end: kelvins(
                prior.end,
                prior.end_deviation,
                (otherwise.end, otherwise.end_deviation),
            ),
            held: kelvins(
                prior.held,
                prior.held_deviation,
                (otherwise.held, otherwise.held_deviation),
            ),
            swing: held(prior.swing.get(), [0.0, 50.0], otherwise.swing.get()),
            to_come: held(prior.to_come.get(), [0.01, 100.0], otherwise.to_come.get()),
            thermometer: held(
                prior.thermometer.get(),
                [0.0, 20.0],
                otherwise.thermometer.get(),
            ),
        }
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
            thermometer: KelvinDelta::new(f64::INFINITY),
            ..CabinetKind::Refrigerator.prior()
        };
        let found = Beforehand::of(&broken);
        assert!((found.end.mean + 20.0).abs() < 1e-12);
        assert!((found.end.deviation - 0.1).abs() < 1e-12);
        assert!((found.thermometer - 20.0).abs() < 1e-12);
    }
}
