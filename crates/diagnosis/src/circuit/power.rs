//! The watts that belong to how cold it is inside, and to how cold its evaporator is.
//!
//! A compressor that draws in dense gas has more to do: the same machine takes half as much again
//! while its cabinet is warm as it does once it is cold, and less where little comes to its evaporator.
//! How much is physics (`measure::refrigerant`); how far the evaporator of a sound machine lies below
//! the air that it cools is judgement.

use job::{Moment, Place};
use measure::refrigerant::{CondensingSign, Refrigerant};
use quantity::{Celsius, Ratio, Sources, Uncertain};

use super::surfaces::Surfaces;
use super::{ROOM_OFF, condensing_sign, evaporating_sign};
use crate::Machine;
use crate::whole::Build;

/// Where the evaporator of a sound freezer ends up, in °C (common practice: −25 to −30).
const SETTLED: (f64, f64) = (-26.0, 3.0);

/// How far below the air in its compartment a sound evaporator is, and how surely (judgement): 8 K once
/// it is cold, and more while it is warm, where each stroke moves more gas.
pub(crate) fn below_air(air: f64) -> (f64, f64) {
    let warm = (air + 18.0).clamp(0.0, 40.0);
    (8.0 + 0.35 * warm, 4.0 + 0.1 * warm)
}

/// What a machine should take, each as a share of what its compressor takes at its rating.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Expected {
    /// A sound one, with its cabinet as cold as this one's.
    pub(crate) sound: Uncertain<Ratio>,
    /// A sound one that is cold.
    pub(crate) settled: Uncertain<Ratio>,
    /// One whose compressor pumps what its evaporator gives off, whatever comes to that.
    pub(crate) by_evaporator: Option<Uncertain<Ratio>>,
}

impl Expected {
    /// As of a moment: by the air inside and by the evaporator about then.
    pub(crate) fn of(
        surfaces: &Surfaces,
        machine: &Machine,
        build: Option<Build>,
        at: Moment,
    ) -> Option<Self> {
        let gas = super::gas(machine.refrigerant?);
        let mut sources = Sources::default();
        let room = Uncertain::exact(surfaces.room?).with(sources.fresh(), Celsius::new(ROOM_OFF));
        let warm = CondensingSign::Room.condensing(&room, sources.fresh());
        let losses = sources.fresh();
        let share = |cold: &Uncertain<Celsius>, warm: &Uncertain<Celsius>| {
            gas.power_share(cold, warm, losses).ok()
        };
        let (settled, spread) = SETTLED;
        let settled = surface(settled, spread, &mut sources);
        let inside = surfaces.air_at(at)?;
        let (below, spread) = below_air(inside.shown.get());
        let spread = libm::hypot(spread, inside.standard);
        let sound = surface(inside.shown.get() - below, spread, &mut sources);
        Some(Self {
            sound: share(&sound, &warm)?,
            settled: share(&settled, &warm)?,
            by_evaporator: surfaces.about(Place::Evaporator, at).and_then(|one| {
                let read = one.measured(&mut sources);
                let cold =
                    evaporating_sign(machine.kind, build).evaporating(&read, sources.fresh());
                let own = surfaces.about(Place::Condenser, at).map(|one| {
                    let read = one.measured(&mut sources);
                    condensing_sign(machine.kind).condensing(&read, sources.fresh())
                });
                share(&cold, own.as_ref().unwrap_or(&warm))
            }),
        })
    }
}

fn surface(celsius: f64, standard: f64, sources: &mut Sources) -> Uncertain<Celsius> {
    Uncertain::exact(Celsius::new(celsius)).with(sources.fresh(), Celsius::new(standard))
}

/// The refrigerant of a plate, for who knows its curves.
pub(crate) const fn gas(plate: crate::Refrigerant) -> Refrigerant {
    match plate {
        crate::Refrigerant::R600a => Refrigerant::R600a,
        crate::Refrigerant::R290 => Refrigerant::R290,
        crate::Refrigerant::R134a => Refrigerant::R134a,
        crate::Refrigerant::R12 => Refrigerant::R12,
        crate::Refrigerant::R22 => Refrigerant::R22,
        crate::Refrigerant::OtherOrUnreadable => Refrigerant::Other,
    }
}
