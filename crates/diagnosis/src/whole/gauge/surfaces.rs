//! How likely a temperature on the sealed circuit's surfaces is under each answer of the clue that asks
//! the same by hand, against the room or the air inside.

use super::{DEGREES, Gauge};
use crate::circuit::sound_evaporating;

impl Gauge {
    /// A probe half way along the condenser: the answers of `Clue::CondenserWarmth`. It condenses
    /// 10 to 20 K above the room (from memory), and the tube is little cooler than that, a wall before
    /// it some kelvins; where no heat gets away, or air takes up room in it, 20 K and more, until the
    /// protector opens. A hand calls warm what is warmer than itself, some 11 K above a room (order of
    /// magnitude from memory): less than that is barely warm. Where little condenses it has done so
    /// in the first tubes; where nothing does, all is as the room. Spreads are judgement.
    pub(in crate::whole) fn condenser(room: f64, is_wall: bool) -> Self {
        let wall = if is_wall { 3.0 } else { 0.0 };
        Self::around(
            room,
            &[
                (14.0 - wall, 4.0),
                (28.0 - wall, 9.0),
                (6.0 - wall / 2.0, 4.5),
                (7.0 - wall / 2.0, 3.0),
                (0.3, 1.2),
            ],
        )
    }

    /// A probe at the drier's outlet: the answers of `Clue::Drier`. Liquid leaves a condenser
    /// between the room and where it condensed; what boils in a clogged strainer is far colder
    /// (judgement).
    pub(in crate::whole) fn drier(room: f64) -> Self {
        Self::around(room, &[(10.0, 7.0), (0.5, 1.5), (-8.0, 5.0)])
    }

    /// A probe on the suction line beside the compressor: the answers of `Clue::SuctionLine`. The
    /// shell warms what comes back as the room. Frost grows below freezing, in whatever room
    /// (judgement, as the rest).
    pub(in crate::whole) fn suction_line(room: f64) -> Self {
        let frosted = (room - 8.0).min(-4.0) - room;
        Self::around(room, &[(-6.0, 3.5), (2.0, 3.5), (frosted, 5.0)])
    }

    /// A probe on the evaporator, against the air that it cools: the answers of
    /// `Clue::FrostPattern`, as far as one place that is fed tells them. A sound one is as far below
    /// that air as [`sound_evaporating`] has it, a wall before it half as far. Where little comes to
    /// it, that boils colder; ice keeps the heat away, so that it is colder behind; valves that leak
    /// take away a third of the heat, or so, and it is a third as far below; where nothing boils, it
    /// is as the air (judgement). A place that gets nothing of an evaporator that gets some is the
    /// caller's to mix in.
    pub(in crate::whole) fn evaporator(air: f64, is_wall: bool) -> Self {
        let (evaporating, spread) = sound_evaporating(air);
        let below = air - evaporating;
        let part = if is_wall { 0.5 } else { 1.0 };
        let normals = [
            (-below, spread),
            (-below - 6.0, spread + 3.0),
            (-0.5, 1.5),
            (-below - 8.0, spread + 4.0),
            (-0.35 * below, 1.0 + 0.2 * below),
            (-below, spread + 2.0),
        ];
        let normals = normals.map(|(mean, spread)| (part * mean, f64::max(part * spread, 1.5)));
        Self::around(air, &normals)
    }

    fn around(around: f64, normals: &[(f64, f64)]) -> Self {
        let normals = normals.iter();
        Self {
            range: DEGREES,
            normals: normals
                .map(|(mean, spread)| (around + mean, *spread))
                .collect(),
        }
    }
}
