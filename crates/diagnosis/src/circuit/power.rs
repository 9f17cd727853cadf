//! The watts that belong to how cold it is inside, and to how cold its evaporator is.
//!
//! A compressor that draws in dense gas has more to do: the same machine takes somewhat more while its
//! cabinet is warm than once it is cold, and less where little comes to its evaporator. How much is
//! physics (`measure::refrigerant`); where a sound machine evaporates is judgement.

use job::{Moment, Place};
use measure::refrigerant::{CondensingSign, Refrigerant};
use quantity::{Celsius, Ratio, Sources, Uncertain};

use super::surfaces::Surfaces;
use super::{ROOM_OFF, condensing_sign, evaporating_sign};
use crate::Machine;
use crate::whole::Build;

/// Where the evaporator of a sound freezer ends up, in °C (common practice: −25 to −30).
const SETTLED: (f64, f64) = (-26.0, 3.0);

/// Where a sound machine evaporates that goes on running with the air inside at so many °C, and how
/// surely. Once that is cold, some 8 K below it (judgement). While it is warm, hardly warmer than in the
/// end: a capillary passes little more for much heat, so that the last turns run dry instead (ASHRAE
/// Handbook, Refrigeration, capillary tubes; from memory).
pub(crate) fn sound_evaporating(air: f64) -> (f64, f64) {
    let by_air = air - COLD_BELOW_AIR;
    if by_air < STARVED_FROM {
        (by_air, 4.0)
    } else {
        (STARVED_FROM, 5.0)
    }
}

/// How far a sound evaporator lies below the air that it cools, once that is cold (judgement).
const COLD_BELOW_AIR: f64 = 8.0;
/// No warmer does it evaporate in a warm cabinet (judgement).
const STARVED_FROM: f64 = -19.0;

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
        let (sound, spread) = sound_evaporating(inside.shown.get());
        let spread = libm::hypot(spread, inside.standard);
        let sound = surface(sound, spread, &mut sources);
        Some(Self {
            sound: share(&sound, &warm)?,
            settled: share(&settled, &warm)?,
            by_evaporator: surfaces.boils_about(at).and_then(|one| {
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
