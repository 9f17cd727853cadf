//! Which share of the time a compressor runs, by the best of what a job has.

use job::{ColdEventKind, Content, Job, Moment, Place};
use measure::energy::{
    RunShare, Shows, Switch, run_share as by_switches, run_share_of_hours, switches,
};
use quantity::Seconds;

/// What tells it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum RunBy {
    /// Starts and stops that somebody heard or saw.
    Events,
    /// Hours of load that a meter counted.
    Meter,
    /// A logged temperature that goes up and down with it.
    Log(Place),
}

/// Places whose temperature tells when it runs, the clearest first, with what it does then and
/// the least range in kelvins that is more than a thermometer's steps (judgement).
const TELLING: [(Place, Shows, f64); 5] = [
    (Place::Shell, Shows::Rising, 3.0),
    (Place::Condenser, Shows::Rising, 3.0),
    (Place::Evaporator, Shows::Falling, 2.0),
    (Place::Freezer, Shows::Falling, 1.0),
    (Place::FreshFood, Shows::Falling, 1.0),
];
/// A log's last day: before, it may have been cooling down.
const LAST: Seconds = Seconds::new(86_400.0);

/// Since a moment in Unix milliseconds.
pub(super) fn run_share(job: &Job, since: i64) -> Option<(RunBy, RunShare)> {
    let by_events = by_events(job, since).map(|share| (RunBy::Events, share));
    let by_meter = || by_meter(job, since).map(|share| (RunBy::Meter, share));
    let by_log = || {
        TELLING
            .iter()
            .find_map(|telling| by_log(job, since, *telling))
    };
    by_events.or_else(by_meter).or_else(by_log)
}

fn by_events(job: &Job, since: i64) -> Option<RunShare> {
    let entries = job.standing();
    let mut told: Vec<(Moment, bool)> = entries
        .iter()
        .filter_map(|entry| match &entry.content {
            Content::Event(event) => match event.kind {
                ColdEventKind::CompressorOn => Some((event.at, true)),
                ColdEventKind::CompressorOff => Some((event.at, false)),
                _ => None,
            },
            _ => None,
        })
        .filter(|(at, _)| at.unix_milliseconds() >= since)
        .collect();
    told.sort_by_key(|(at, _)| at.unix_milliseconds());
    let first = told.first()?.0;
    let switch = |(at, runs): &(Moment, bool)| Switch {
        at: first.until(*at),
        runs: *runs,
    };
    by_switches(&told.iter().map(switch).collect::<Vec<Switch>>()).ok()
}

fn by_meter(job: &Job, since: i64) -> Option<RunShare> {
    let entries = job.standing();
    let counted = entries.iter().filter_map(|entry| match &entry.content {
        Content::Metered(metered) if metered.from().unix_milliseconds() >= since => {
            let all = metered.from().until(metered.to());
            // Hours of load are often shown in tenths, rounded up.
            let ran = Seconds::new(metered.ran()?.get().min(all.get()));
            Some((all, run_share_of_hours(ran, all).ok()?))
        }
        _ => None,
    });
    let longest = counted.max_by(|one, other| one.0.get().total_cmp(&other.0.get()));
    longest.map(|(_, share)| share)
}

fn by_log(
    job: &Job,
    since: i64,
    (place, shows, least): (Place, Shows, f64),
) -> Option<(RunBy, RunShare)> {
    let entries = job.standing();
    let log = entries
        .iter()
        .rev()
        .find_map(|entry| match &entry.content {
            Content::Log(log) if log.place() == place => Some(log),
            _ => None,
        })?;
    let last = log.points().last()?.0;
    let counts = |at: Moment| at.unix_milliseconds() >= since && at.until(last) <= LAST;
    let points = log.points().iter().filter(|(at, _)| counts(*at));
    let course: Vec<(Seconds, f64)> = points
        .map(|(at, value)| (log.points()[0].0.until(*at), value.get()))
        .collect();
    let found = switches(&course, shows, least).ok()?;
    Some((RunBy::Log(place), by_switches(&found).ok()?))
}
