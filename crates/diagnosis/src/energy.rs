//! What a machine uses, and whether that is more than machines of its make were allowed to.
//!
//! Answers: which share of the time it runs, energy a day and a year, how that stands against the
//! greatest allowed, what it costs, and what is still to be asked. Must never know: how it is said,
//! which fault a machine that uses too much has.
//!
//! Counts what was metered since the last change to the machine. What was metered while it was
//! still cooling down says nothing of a year.

mod running;

pub use running::RunBy;

use job::{ColdEventKind, Content, Job, Measured, Metered, Moment, Place};
use measure::energy::{
    Comparison, Consumption, EnergyLimit, Era, NoConsumption, NoLimit, RunShare, against_limit,
    consumption, cost, field_from_label,
};
use quantity::{Celsius, Observed, Seconds, Sources, WattHours};

use crate::checks::energy::{Asked, EnergyFigure, EnergyNeed};
use crate::whole::Change;

/// What is known of a machine's energy.
#[derive(Debug, Clone, PartialEq)]
pub struct Energy {
    /// Which share of the time the compressor runs, and what tells it.
    pub run: Option<(RunBy, RunShare)>,
    /// The metering that counts: the longest that wasn't begun while it cooled down, if there is one.
    pub metering: Option<Metering>,
    /// How warm the room was, by what was read or logged there.
    pub room: Option<Celsius>,
    /// How a year stands against the greatest allowed.
    pub stands: Stands,
    /// What a year costs and by how much that may be off (k = 2), in the price's own currency.
    pub cost: Option<(f64, f64)>,
    /// What is still to be asked or metered.
    pub missing: Vec<EnergyNeed>,
}

/// What a meter counted.
#[derive(Debug, Clone, PartialEq)]
pub struct Metering {
    /// When it began.
    pub from: Moment,
    /// When it ended.
    pub to: Moment,
    /// What comes of it for a day and a year.
    pub consumption: Result<Consumption, NoConsumption>,
    /// Whether the machine was switched on within it or less than a day before.
    pub cooled_down: bool,
}

/// How a year stands.
#[derive(Debug, Clone, PartialEq)]
pub enum Stands {
    /// Something is missing.
    Open,
    /// It was cooling down while it was metered.
    CoolingDown,
    /// Sold under other rules.
    OtherRules,
    /// Made before there were limits.
    BeforeLimits,
    /// No limit, and why.
    NoLimit(NoLimit),
    /// Each limit that it may have been made under, and what machines of that label used in homes.
    Against(Vec<Against>),
}

/// A limit and how the year stands against it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Against {
    /// The limit.
    pub limit: EnergyLimit,
    /// How the year stands.
    pub comparison: Comparison,
    /// What machines with such a label used in homes, for context.
    pub field: Option<WattHours>,
}

impl Against {
    /// The first year of the limit.
    #[must_use]
    pub const fn since(&self) -> u16 {
        self.limit.era.from(self.limit.class).0
    }
}

/// After being switched on a cabinet is given this long (from memory: allow 24 hours).
const COOLS_WITHIN: Seconds = Seconds::new(86_400.0);

impl Energy {
    /// Of a job; `None` where nothing was metered, asked or told of its running.
    #[must_use]
    pub fn of(job: &Job) -> Option<Self> {
        let since = last_change(job);
        let run = running::run_share(job, since);
        let metering = metering(job, since);
        if run.is_none() && metering.is_none() && !Asked::anything(job) {
            return None;
        }
        let asked = Asked::of(job);
        let room = metering.as_ref().and_then(|one| room(job, one));
        let year = metering
            .as_ref()
            .and_then(Metering::settled)
            .map(|found| &found.year);
        let cost = year.and_then(|year| cost(year, asked.price?));
        let stands = stands(&asked, metering.as_ref(), room);
        let missing = missing(&asked, metering.as_ref(), room, &stands);
        Some(Self {
            run,
            metering,
            room,
            stands,
            cost,
            missing,
        })
    }
}

impl Metering {
    fn of(metered: &Metered, switched_on: &[i64]) -> Option<Self> {
        let (from, to) = (metered.from(), metered.to());
        let reading = metered.energy();
        let Measured::WattHours(typed) = reading.measured else {
            return None;
        };
        let Observed::Value(value) = typed.observed else {
            return None;
        };
        let mut sources = Sources::default();
        let counted = reading.accuracy.measured(value, typed.count, &mut sources);
        let earliest = from.unix_milliseconds() - (COOLS_WITHIN.get() * 1000.0) as i64;
        let cooled = |at: &i64| (earliest..to.unix_milliseconds()).contains(at);
        Some(Self {
            from,
            to,
            consumption: consumption(&counted, from.until(to), &mut sources),
            cooled_down: switched_on.iter().any(cooled),
        })
    }

    /// How long it lasted.
    #[must_use]
    pub fn length(&self) -> Seconds {
        self.from.until(self.to)
    }

    /// What it says of days like any other.
    #[must_use]
    pub fn settled(&self) -> Option<&Consumption> {
        self.consumption.as_ref().ok().filter(|_| !self.cooled_down)
    }
}

/// When the machine was last made another one, in Unix milliseconds; the beginning of time where it
/// never was.
fn last_change(job: &Job) -> i64 {
    let changes = job
        .standing()
        .into_iter()
        .filter(|entry| Change::told_by(entry).is_some());
    changes
        .map(|entry| entry.at.unix_milliseconds())
        .max()
        .unwrap_or(i64::MIN)
}

/// Of all meterings the longest settled one, else the longest.
fn metering(job: &Job, since: i64) -> Option<Metering> {
    let entries = job.standing();
    let events = entries.iter().filter_map(|entry| match &entry.content {
        Content::Event(event) if event.kind == ColdEventKind::SwitchedOn => {
            Some(event.at.unix_milliseconds())
        }
        _ => None,
    });
    let switched_on: Vec<i64> = events.collect();
    let meterings = entries.iter().filter_map(|entry| match &entry.content {
        Content::Metered(metered) if metered.from().unix_milliseconds() >= since => {
            Metering::of(metered, &switched_on)
        }
        _ => None,
    });
    meterings.max_by(|one, other| {
        let rank = |metering: &Metering| (metering.settled().is_some(), metering.length().get());
        let (one, other) = (rank(one), rank(other));
        one.0.cmp(&other.0).then(one.1.total_cmp(&other.1))
    })
}

/// The mean of what was read or logged of the room while it was metered.
fn room(job: &Job, metering: &Metering) -> Option<Celsius> {
    let within = |at: Moment| at >= metering.from && at <= metering.to;
    let mut found: Vec<f64> = Vec::new();
    for entry in job.standing() {
        match &entry.content {
            Content::Spot(spot) if spot.place == Place::Room && within(spot.at) => {
                if let Measured::Celsius(typed) = spot.reading.measured
                    && let Observed::Value(value) = typed.observed
                {
                    found.push(value.get());
                }
            }
            Content::Log(log) if log.place() == Place::Room => {
                let points = log.points().iter().filter(|(at, _)| within(*at));
                let values: Vec<f64> = points.map(|(_, value)| value.get()).collect();
                // One log is one word, however many points it has.
                found.extend(mean(&values));
            }
            _ => {}
        }
    }
    mean(&found).map(Celsius::new)
}

fn mean(values: &[f64]) -> Option<f64> {
    (!values.is_empty()).then(|| values.iter().sum::<f64>() / values.len() as f64)
}

fn stands(asked: &Asked, metering: Option<&Metering>, room: Option<Celsius>) -> Stands {
    if asked.class.is_some_and(|class| class.class().is_none()) {
        return Stands::OtherRules;
    }
    if metering.is_some_and(|one| one.cooled_down) {
        return Stands::CoolingDown;
    }
    let (Some(product), Some(made), Some(found)) = (
        asked.product,
        asked.year,
        metering.and_then(Metering::settled),
    ) else {
        return Stands::Open;
    };
    let eras = Era::of_year(product.class, made);
    if eras.is_empty() {
        return Stands::BeforeLimits;
    }
    let limits: Vec<Result<EnergyLimit, NoLimit>> =
        eras.into_iter().map(|era| product.limit(era)).collect();
    let against: Vec<Against> = limits
        .iter()
        .flatten()
        .map(|limit| Against {
            limit: *limit,
            comparison: against_limit(&found.year, limit, room),
            field: field_from_label(WattHours::new(f64::from(limit.kilowatt_hours) * 1000.0)),
        })
        .collect();
    match limits.into_iter().find_map(Result::err) {
        Some(why) if against.is_empty() => Stands::NoLimit(why),
        _ => Stands::Against(against),
    }
}

fn missing(
    asked: &Asked,
    metering: Option<&Metering>,
    room: Option<Celsius>,
    stands: &Stands,
) -> Vec<EnergyNeed> {
    let is_metered = metering.is_some_and(|one| one.settled().is_some());
    let needs_room = is_metered && room.is_none() && *stands != Stands::OtherRules;
    let needs_price = asked.price.is_none();
    (!is_metered)
        .then_some(EnergyNeed::Metering)
        .into_iter()
        .chain(asked.missing.iter().copied())
        .chain(needs_room.then_some(EnergyNeed::Room))
        .chain(needs_price.then_some(EnergyNeed::Figure(EnergyFigure::Price)))
        .collect()
}
