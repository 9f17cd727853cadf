//! The sealed circuit as it can be told from outside, by probes on its surfaces.
//!
//! Answers: where does the refrigerant evaporate and condense, how hard has the compressor to squeeze,
//! would a leak on the low side draw air in, and does it take the watts that belong to that? Must
//! never know: which fault that speaks for (that is weighed with everything else), how it is said.
//!
//! Only what was read while the compressor had run for a quarter of an hour counts ([`ran`]).

mod power;
mod ran;
mod surfaces;

pub(crate) use power::{Expected, sound_evaporating};
pub(crate) use surfaces::{Surface, Surfaces};

use job::{Job, Moment, Place};
use measure::refrigerant::{
    CondensingSign, Cycle, CycleError, EvaporatingSign, STANDARD_ATMOSPHERE,
};
use quantity::{Celsius, Ratio, Sources, Uncertain, Watts};

use crate::checks::running::{LabelOf, Running};
use crate::whole::Build;
use crate::{Kind, Machine, answered};
use power::gas;

/// How far a label's watts are from what such a compressor takes at its rating, as a share of them
/// (judgement: makers print one or the other figure for all volts).
pub(crate) const LABEL_OFF: f64 = 0.15;

/// A room's thermometer hangs in one corner of it (judgement).
pub(crate) const ROOM_OFF: f64 = 1.5;

/// What is known of the circuit by its surfaces.
#[derive(Debug, Clone, PartialEq)]
pub struct Circuit {
    /// Where the refrigerant evaporates, where a probe on the evaporator was colder than the air.
    pub evaporating: Option<Saturation>,
    /// Where it condenses: by a probe on the condenser, else by the room's temperature.
    pub condensing: Option<Saturation>,
    /// The room's temperature.
    pub room: Option<Celsius>,
    /// Both pressures and what follows, in air at sea level, where both temperatures are known and
    /// the refrigerant is.
    pub cycle: Option<Result<Cycle, CycleError>>,
    /// The watts that were read about then, against those that belong to it.
    pub draw: Option<Draw>,
}

/// A temperature of saturation by a surface.
#[derive(Debug, Clone, PartialEq)]
pub struct Saturation {
    /// The temperature, with what the surface leaves open in its uncertainty.
    pub temperature: Uncertain<Celsius>,
    /// Where the probe lay: on the circuit or in the room.
    pub by: Place,
    /// When it was read.
    pub at: Moment,
}

/// What it takes off the mains.
#[derive(Debug, Clone, PartialEq)]
pub struct Draw {
    /// What was read.
    pub watts: Uncertain<Watts>,
    /// What a compressor of that label takes that pumps what its evaporator gives off.
    pub expected: Uncertain<Watts>,
}

impl Draw {
    /// What it takes as a share of what it should, with how surely both are known.
    #[must_use]
    pub fn share(&self) -> Uncertain<Ratio> {
        self.watts.ratio(&self.expected)
    }
}

impl Circuit {
    /// Of a job; `None` where nothing was read on the circuit that counts. Readings from before the
    /// last change are another machine's.
    ///
    /// ```
    /// use diagnosis::Circuit;
    /// use job::{Id, Job, Moment, Origin};
    /// let now = Moment::new(0, 0).unwrap();
    /// let job = Job::new(Id::new("j").unwrap(), now, Origin::Person);
    /// assert_eq!(Circuit::of(&job), None);
    /// ```
    #[must_use]
    pub fn of(job: &Job) -> Option<Self> {
        let surfaces = Surfaces::of(job)?;
        let machine = Machine::of(job);
        let mut sources = Sources::default();
        let evaporating = surfaces.boils().map(|one| {
            let sign = evaporating_sign(machine.kind, answered(job));
            let read = one.measured(&mut sources);
            Saturation {
                temperature: sign.evaporating(&read, sources.fresh()),
                by: one.place,
                at: one.at,
            }
        });
        let condensing = condensing(&surfaces, evaporating.as_ref(), &machine, &mut sources);
        let both = evaporating.as_ref().zip(condensing.as_ref());
        let cycle = both.zip(machine.refrigerant).map(|((cold, warm), plate)| {
            let (cold, warm) = (&cold.temperature, &warm.temperature);
            Cycle::of(gas(plate), cold, warm, STANDARD_ATMOSPHERE)
        });
        let anything = evaporating.is_some() || condensing.is_some();
        anything.then(|| Self {
            draw: draw(job, &surfaces, &machine),
            evaporating,
            condensing,
            room: surfaces.room,
            cycle,
        })
    }
}

/// By the probe that was read beside the evaporator, else the last; else by the room.
fn condensing(
    surfaces: &Surfaces,
    evaporating: Option<&Saturation>,
    machine: &Machine,
    sources: &mut Sources,
) -> Option<Saturation> {
    let own = match evaporating {
        Some(cold) => surfaces.about(Place::Condenser, cold.at),
        None => surfaces.last(Place::Condenser),
    };
    if let Some(one) = own {
        let read = one.measured(sources);
        return Some(Saturation {
            temperature: condensing_sign(machine.kind).condensing(&read, sources.fresh()),
            by: one.place,
            at: one.at,
        });
    }
    let room = Uncertain::exact(surfaces.room?).with(sources.fresh(), Celsius::new(ROOM_OFF));
    Some(Saturation {
        temperature: CondensingSign::Room.condensing(&room, sources.fresh()),
        by: Place::Room,
        at: evaporating?.at,
    })
}

/// Only against the compressor's own label: a machine's may hold a heater's watts, and for such
/// machines in general watts differ too much.
fn draw(job: &Job, surfaces: &Surfaces, machine: &Machine) -> Option<Draw> {
    let running = Running::of(job, machine.mains);
    let label = running.label_watts?;
    if running.label_of != Some(LabelOf::Compressor) || running.is_by_board {
        return None;
    }
    let watts = running.watts()?.clone();
    let expected = Expected::of(surfaces, machine, answered(job), running.watts_read(job)?)?;
    let share = expected.by_evaporator?;
    let mut sources = Sources::default();
    let whole = label.get() * share.value().get();
    let standard = libm::hypot(LABEL_OFF * whole, label.get() * share.standard().get());
    Some(Draw {
        watts,
        expected: Uncertain::exact(Watts::new(whole)).with(sources.fresh(), Watts::new(standard)),
    })
}

/// What a probe on the evaporator lies on: the inner wall of a chest, the tubes of a coil; where
/// nobody has said how it is built, the less sure of both.
const fn evaporating_sign(kind: Option<Kind>, build: Option<Build>) -> EvaporatingSign {
    match (kind, build) {
        (Some(Kind::ChestFreezer), _) => EvaporatingSign::ColdWall,
        (_, Some(Build::FrostFree | Build::Inverter)) => EvaporatingSign::Tube,
        _ => EvaporatingSign::ColdWall,
    }
}

/// What a probe on the condenser lies on.
const fn condensing_sign(kind: Option<Kind>) -> CondensingSign {
    match kind {
        Some(Kind::ChestFreezer) => CondensingSign::WarmWall,
        _ => CondensingSign::Tube,
    }
}
