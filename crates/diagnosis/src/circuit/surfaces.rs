//! What probes on the sealed circuit showed while it ran, with the air that belongs to it.

use job::{Content, Job, Measured, Moment, Place, Spot};
use quantity::{Celsius, Observed, Seconds, Sources, Uncertain};

use super::ran::Ran;
use crate::Compartment;
use crate::cool_down::{changed, room, shown};
use crate::whole::ANSWER;
use crate::{Choice, Clue};

/// Places on the circuit of which something follows. The shell is warm by its motor too.
pub(crate) const ON_THE_CIRCUIT: [Place; 4] = [
    Place::Evaporator,
    Place::Condenser,
    Place::SuctionLine,
    Place::DrierOutlet,
];
/// How far a probe that lies on a tube is off beside what its thermometer errs by: it feels the air
/// too (judgement).
const CONTACT: f64 = 1.0;
/// A logger's own error where its file says nothing of it (judgement).
const LOGGER: f64 = 0.5;
/// Air that was read so much earlier or later still belongs to it (judgement).
const BESIDE: Seconds = Seconds::new(1_800.0);
/// So far from the air around it, a surface tells that something was pumped (judgement).
const TELLS: f64 = 5.0;
/// And so far below it, that something boils there (judgement).
const BOILS: f64 = 3.0;
/// What no condenser and no line has: degrees of another scale (judgement).
const TOO_HOT: f64 = 95.0;

/// One reading.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Surface {
    pub(crate) place: Place,
    pub(crate) at: Moment,
    pub(crate) shown: Celsius,
    /// Standard uncertainty, in kelvins.
    pub(crate) standard: f64,
    /// How long the compressor had run; nothing where that isn't known or doesn't matter.
    pub(crate) ran: Seconds,
}

impl Surface {
    /// The reading with its own error.
    pub(crate) fn measured(&self, sources: &mut Sources) -> Uncertain<Celsius> {
        Uncertain::exact(self.shown).with(sources.fresh(), Celsius::new(self.standard))
    }
}

/// What was read, and the room.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Surfaces {
    /// On the circuit while it ran, in the order of time.
    points: Vec<Surface>,
    /// In the compartments, whenever.
    air: Vec<Surface>,
    pub(crate) room: Option<Celsius>,
}

impl Surfaces {
    /// `None` where nothing was read on the circuit that counts.
    pub(crate) fn of(job: &Job) -> Option<Self> {
        // Most jobs have none, and are looked at often.
        let places = job.entries().iter().map(|entry| match &entry.content {
            Content::Spot(spot) => Some(spot.place),
            Content::Log(log) => Some(log.place()),
            _ => None,
        });
        let mut places = places.flatten();
        places
            .any(|place| ON_THE_CIRCUIT.contains(&place))
            .then(|| Self::any(job))
            .filter(|found| !found.points.is_empty())
    }

    /// The same with none on the circuit, for what the air inside says by itself.
    pub(crate) fn any(job: &Job) -> Self {
        let since = changed(job).map(Moment::unix_milliseconds);
        let all = read(job).into_iter();
        let mut all: Vec<Surface> = all
            .filter(|one| since.is_none_or(|since| one.at.unix_milliseconds() >= since))
            .collect();
        all.sort_by_key(|one| one.at.unix_milliseconds());
        let is_on_it = |one: &Surface| ON_THE_CIRCUIT.contains(&one.place);
        let (points, air): (Vec<Surface>, Vec<Surface>) = all.into_iter().partition(is_on_it);
        let inside = |one: &Surface| matches!(one.place, Place::Freezer | Place::FreshFood);
        let mut found = Self {
            points,
            air: air.into_iter().filter(inside).collect(),
            room: room(job).or_else(|| told_room(job)),
        };
        let is_other_scale = found.points.iter().any(|one| one.shown.get() > TOO_HOT);
        if is_other_scale {
            found.points.clear();
        }
        if !found.points.is_empty() {
            let ran = Ran::of(job);
            found.points.retain_mut(|one| {
                let had_run = ran.ran_for(one.at);
                one.ran = had_run.unwrap_or(one.ran);
                had_run.is_some()
            });
            if !ran.is_sure() && !found.was_pumped() {
                found.points.clear();
            }
        }
        found
    }

    /// Readings at a place, in the order of time.
    pub(crate) fn at_place(&self, place: Place) -> impl DoubleEndedIterator<Item = &Surface> {
        self.points.iter().filter(move |one| one.place == place)
    }

    /// The last reading at a place.
    pub(crate) fn last(&self, place: Place) -> Option<&Surface> {
        self.at_place(place).next_back()
    }

    /// The last reading on the evaporator at a place that is colder than the air around it: where it
    /// is as that, nothing boils.
    pub(crate) fn boils(&self) -> Option<&Surface> {
        let mut all = self.at_place(Place::Evaporator);
        all.rfind(|one| self.is_colder_than_air(one))
    }

    /// The same about a moment.
    pub(crate) fn boils_about(&self, at: Moment) -> Option<&Surface> {
        let found = self.about(Place::Evaporator, at);
        found.filter(|one| self.is_colder_than_air(one))
    }

    fn is_colder_than_air(&self, one: &Surface) -> bool {
        let air = self.air_at(one.at);
        air.is_none_or(|air| air.shown.get() - one.shown.get() >= BOILS)
    }

    /// The reading at a place of the circuit that belongs to a moment.
    pub(crate) fn about(&self, place: Place, at: Moment) -> Option<&Surface> {
        nearest(&self.points, place, at)
    }

    /// The middle one of the readings at a place.
    pub(crate) fn middle(&self, place: Place) -> Option<Surface> {
        let mut all: Vec<&Surface> = self.at_place(place).collect();
        all.sort_by(|one, other| one.shown.get().total_cmp(&other.shown.get()));
        all.get(all.len() / 2).map(|one| **one)
    }

    /// The air that the evaporator cools first, about that time: the freezer's, else the fresh food's.
    pub(crate) fn air_at(&self, at: Moment) -> Option<&Surface> {
        [Compartment::Freezer, Compartment::FreshFood]
            .iter()
            .find_map(|one| nearest(&self.air, one.place(), at))
    }

    /// A surface far from the air around it: somebody need not have heard it run.
    fn was_pumped(&self) -> bool {
        self.points.iter().any(|one| {
            let around = match one.place {
                Place::Evaporator => self.air_at(one.at).map(|air| air.shown),
                _ => self.room,
            };
            let away = around.map(|around| one.shown.get() - around.get());
            away.is_some_and(|away| match one.place {
                Place::Evaporator | Place::SuctionLine => away <= -TELLS,
                _ => away.abs() >= TELLS,
            })
        })
    }
}

/// The reading at a place that is nearest in time, if near enough.
fn nearest(all: &[Surface], place: Place, at: Moment) -> Option<&Surface> {
    let away = |one: &&Surface| at.until(one.at).get().abs();
    all.iter()
        .filter(|one| one.place == place)
        .min_by(|one, other| away(one).total_cmp(&away(other)))
        .filter(|one| away(one) <= BESIDE.get())
}

/// All temperatures of a job but those that no thermometer shows.
fn read(job: &Job) -> Vec<Surface> {
    let mut all = Vec::new();
    for entry in job.standing() {
        match &entry.content {
            Content::Spot(spot) => all.extend(shown(spot).map(|shown| Surface {
                place: spot.place,
                at: spot.at,
                shown,
                standard: libm::hypot(of_meter(spot, shown), CONTACT),
                ran: Seconds::new(0.0),
            })),
            Content::Log(log) => all.extend(log.points().iter().map(|&(at, shown)| Surface {
                place: log.place(),
                at,
                shown,
                standard: libm::hypot(LOGGER, CONTACT),
                ran: Seconds::new(0.0),
            })),
            _ => {}
        }
    }
    all
}

fn of_meter(spot: &Spot, shown: Celsius) -> f64 {
    match spot.reading.measured {
        Measured::Celsius(typed) => spot.reading.accuracy.standard(shown, typed.count).get(),
        _ => 0.0,
    }
}

/// The room as it was told where the check of the room asks it.
fn told_room(job: &Job) -> Option<Celsius> {
    use job::{Answer, Reading};
    match job.answer(Clue::RoomTemperature.name(), ANSWER)? {
        Answer::Reading(Reading {
            measured: Measured::Celsius(typed),
            ..
        }) => match typed.observed {
            Observed::Value(value) => Some(value),
            Observed::OverRange { .. } => None,
        },
        _ => None,
    }
}
