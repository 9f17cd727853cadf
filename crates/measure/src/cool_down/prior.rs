//! What is thought of a cool-down before any reading. All figures are judgement.

use quantity::{Celsius, KelvinDelta, Ratio, Seconds};

use super::ends::Ends;

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

/// Where it would end if no control stopped it: one of two normal distributions, since what is watched is
/// either about as strong as it was made or weakened by something.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct EndPrior {
    /// Mean of those as strong as they were made.
    pub sound: Celsius,
    /// Standard deviation of that. Held between 0.1 and 25 K.
    pub sound_deviation: KelvinDelta,
    /// Mean of weakened ones.
    pub weak: Celsius,
    /// Standard deviation of that. Held between 0.1 and 25 K.
    pub weak_deviation: KelvinDelta,
    /// How many are weakened. Held between 0.001 and 0.999.
    pub weak_share: Ratio,
}

/// Distributions beforehand. They are wide: a machine is watched because something may be wrong.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CoolDownPrior {
    /// Mean of the temperature that it starts from.
    pub start: Celsius,
    /// Standard deviation of that. Held between 0.1 and 100 K.
    pub start_deviation: KelvinDelta,
    /// Where it would end if no control stopped it.
    pub end: EndPrior,
    /// Mean of the temperature at which a control holds it.
    pub held: Celsius,
    /// Standard deviation of that. Held between 0.1 and 100 K.
    pub held_deviation: KelvinDelta,
    /// The share of which the control never gets to stop it. Held between 0 and 1.
    pub unheld: Ratio,
    /// How much warmer than the coldest that was seen a control may hold it on the mean. Held between
    /// 0 and 50 K.
    pub swing: KelvinDelta,
    /// Mean of what may yet come that no reading shows beforehand. Held between −50 and 50 K.
    pub to_come_mean: KelvinDelta,
    /// Standard deviation of that. Held between 0.01 and 100 K.
    pub to_come: KelvinDelta,
    /// Within about what time of looking that comes. Held between a minute and a day.
    pub comes: Seconds,
    /// How far what the air goes towards wanders, against a freezer. Held between 0.05 and 5.
    pub wander: Ratio,
    /// What the cabinet loses to the room a kelvin, over what the coil in this air takes up a kelvin. Held
    /// between 0.001 and 10; nothing where the coil cools other air.
    pub loss: Option<Ratio>,
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
    /// *Ends without a control.* A sound compressor goes on until its suction runs nearly empty, some −30 °C
    /// in a freezer; a refrigerator's is smaller. A weakened one ends anywhere from there to the room; fresh
    /// food needs little and gets its share first, so that half of the weakened still cool it. Four in ten of
    /// those that are watched are weakened.
    ///
    /// *Controls* hold −18 to −22 °C or 2 to 6 °C in the air, on the mean, where nineteen in twenty leave
    /// them; one that feels a plate, or the other compartment, holds this air less closely. One that feels
    /// the end of a plate never stops a machine whose refrigerant doesn't get there, which goes on below
    /// freezing. A control lets the air swing by 3 to 6 K, and its first stop is the deepest; a freezer whose
    /// machine stops by its fresh food gets cold at first and warmer once that has enough.
    ///
    /// *What is yet to come.* Food keeps a freezer's air warm until it is frozen, which takes half a day: a
    /// kilogram gives off some 0.3 W a kelvin, and six of them to air 15 K colder some 25 W, against 3 to 5 W a
    /// kelvin by which a cabinet and its compressor answer: 5 to 8 K, where there is food. Some hold none,
    /// so that it is −2 K on the mean. Frost grows, a defrost takes it off; and in a machine with one
    /// evaporator the moment comes when the fresh food has enough and all cold goes to the freezer, within the
    /// next hour or so. Nothing freezes in fresh food, which wanders half as far.
    #[must_use]
    pub const fn prior(self) -> CoolDownPrior {
        let (held, held_deviation, unheld, swing) = match self {
            Self::ChestFreezer | Self::UprightFreezer => (-20.0, 1.0, 0.03, 3.5),
            Self::CombinedFreezer => (-18.5, 2.5, 0.05, 7.0),
            Self::CombinedFreshFood => (4.0, 1.0, 0.02, 3.5),
            Self::Refrigerator => (3.0, 2.0, 0.25, 3.5),
        };
        let to_come_mean = match self {
            Self::ChestFreezer | Self::UprightFreezer => -2.0,
            _ => 0.0,
        };
        let (to_come, comes, wander) = match self {
            Self::ChestFreezer | Self::UprightFreezer => (3.5, 7_200.0, 1.0),
            Self::CombinedFreezer => (5.0, 3_600.0, 1.0),
            Self::CombinedFreshFood => (1.0, 7_200.0, 0.5),
            Self::Refrigerator => (1.0, 7_200.0, 0.7),
        };
        CoolDownPrior {
            start: Celsius::new(20.0),
            start_deviation: KelvinDelta::new(9.0),
            end: self.end(),
            held: Celsius::new(held),
            held_deviation: KelvinDelta::new(held_deviation),
            unheld: Ratio::new(unheld),
            swing: KelvinDelta::new(swing),
            to_come_mean: KelvinDelta::new(to_come_mean),
            to_come: KelvinDelta::new(to_come),
            comes: Seconds::new(comes),
            wander: Ratio::new(wander),
            loss: self.loss(),
            thermometer: KelvinDelta::new(0.6),
        }
    }

    /// A household's cabinet loses about a watt a kelvin, a freezer's compartment beside fresh food two thirds
    /// of that. A freezer's plates and walls of 1 to 1.5 m² take up some 10 W/(m² K) from still air, a
    /// refrigerator's single plate a quarter of that, and a coil that a fan blows 60 m³/h through some 15 W/K
    /// (orders of magnitude, from memory).
    const fn loss(self) -> Option<Ratio> {
        match self {
            Self::ChestFreezer | Self::UprightFreezer => Some(Ratio::new(0.07)),
            Self::CombinedFreezer => Some(Ratio::new(0.05)),
            Self::CombinedFreshFood => None,
            Self::Refrigerator => Some(Ratio::new(0.3)),
        }
    }

    const fn end(self) -> EndPrior {
        let (sound, sound_deviation, weak, weak_deviation) = match self {
            Self::ChestFreezer | Self::UprightFreezer => (-28.0, 5.0, -3.0, 13.0),
            Self::CombinedFreezer => (-26.0, 6.0, -4.0, 13.0),
            Self::CombinedFreshFood => (-2.0, 4.0, 3.0, 9.0),
            Self::Refrigerator => (-8.0, 6.0, 4.0, 10.0),
        };
        EndPrior {
            sound: Celsius::new(sound),
            sound_deviation: KelvinDelta::new(sound_deviation),
            weak: Celsius::new(weak),
            weak_deviation: KelvinDelta::new(weak_deviation),
            weak_share: Ratio::new(0.4),
        }
    }
}

impl EndPrior {
    /// How likely it ends colder than this without a control.
    #[must_use]
    pub fn chance_below(&self, end: Celsius) -> f64 {
        let below = |(share, normal): (f64, Normal)| share * normal.below(end.get());
        Ends::of(self, &CabinetKind::ChestFreezer.end())
            .0
            .into_iter()
            .map(below)
            .sum()
    }
}

/// A normal distribution, in bare numbers.
#[derive(Debug, Clone, Copy)]
pub(super) struct Normal {
    pub(super) mean: f64,
    pub(super) deviation: f64,
}

impl Normal {
    /// The share that lies below.
    pub(super) fn below(&self, value: f64) -> f64 {
        let away = (value - self.mean) / self.deviation;
        0.5 * libm::erfc(-away * core::f64::consts::FRAC_1_SQRT_2)
    }
}

/// A prior made fit to reckon with: what is no number falls back to a chest freezer's.
#[derive(Debug, Clone, Copy)]
pub(super) struct Beforehand {
    pub(super) start: Normal,
    pub(super) ends: Ends,
    pub(super) held: Normal,
    pub(super) unheld: f64,
    pub(super) swing: f64,
    pub(super) to_come: Normal,
    pub(super) comes: f64,
    pub(super) wander: f64,
    pub(super) loss: Option<f64>,
    pub(super) thermometer: f64,
}

impl Beforehand {
    pub(super) fn of(prior: &CoolDownPrior) -> Self {
        let otherwise = CabinetKind::ChestFreezer.prior();
        let normal =
            |mean: Celsius, deviation: KelvinDelta, other: (Celsius, KelvinDelta)| Normal {
                mean: held(mean.get(), [-273.0, 1000.0], other.0.get()),
                deviation: held(deviation.get(), [0.1, 100.0], other.1.get()),
            };
        let plain = |of: fn(&CoolDownPrior) -> f64, ends| held(of(prior), ends, of(&otherwise));
        Self {
            start: normal(
                prior.start,
                prior.start_deviation,
                (otherwise.start, otherwise.start_deviation),
            ),
            ends: Ends::of(&prior.end, &otherwise.end),
            held: normal(
                prior.held,
                prior.held_deviation,
                (otherwise.held, otherwise.held_deviation),
            ),
            unheld: plain(|one| one.unheld.get(), [0.0, 1.0]),
            swing: plain(|one| one.swing.get(), [0.0, 50.0]),
            to_come: Normal {
                mean: plain(|one| one.to_come_mean.get(), [-50.0, 50.0]),
                deviation: plain(|one| one.to_come.get(), [0.01, 100.0]),
            },
            comes: plain(|one| one.comes.get(), [60.0, 86_400.0]),
            wander: plain(|one| one.wander.get(), [0.05, 5.0]),
            loss: prior.loss.map(|loss| held(loss.get(), [0.001, 10.0], 0.07)),
            thermometer: plain(|one| one.thermometer.get(), [0.0, 20.0]),
        }
    }
}

pub(super) fn held(value: f64, ends: [f64; 2], otherwise: f64) -> f64 {
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
            held: Celsius::new(f64::NAN),
            held_deviation: KelvinDelta::new(-1.0),
            thermometer: KelvinDelta::new(f64::INFINITY),
            ..CabinetKind::Refrigerator.prior()
        };
        let found = Beforehand::of(&broken);
        assert!((found.held.mean + 20.0).abs() < 1e-12);
        assert!((found.held.deviation - 0.1).abs() < 1e-12);
        assert!((found.thermometer - 20.0).abs() < 1e-12);
    }
}
