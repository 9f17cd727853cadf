//! How long a compressor has rested, by the times that a job holds.
//!
//! Two things rest after a stop: the gas levels from when the rotor last turned, and the start
//! device cools from when current last flowed through it. A failed try sets only the second back.

use job::{Job, Moment, Rest, SetUp, StartTrial};

use super::{stops, tries};

/// How long it has rested.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Clock {
    /// Nobody has said when it stopped.
    NotStarted,
    /// It started and nobody has said that it stopped.
    Turning {
        /// When it started.
        since: Moment,
    },
    /// It rests.
    Resting {
        /// When it last turned.
        since: Moment,
        /// For how long it hasn't turned.
        turned: Rest,
        /// For how long no current has flowed, where that is shorter.
        dead: Option<Rest>,
    },
    /// What was written last lies ahead of now: the clock was set back.
    SetBack {
        /// The latest time that was written.
        latest: Moment,
    },
    /// It stopped more than a week ago.
    LongAgo,
}

/// Why the next try has to wait.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Pause {
    /// Three in a row didn't start: windings and start device are hot.
    ThreeInARow {
        /// From when on.
        until: Moment,
    },
    /// Six within the hour.
    SixAnHour {
        /// From when on.
        until: Moment,
    },
}

/// At most so many tries in a row without a start, and within an hour (common practice, no
/// source: locked-rotor current heats a winding by a degree or more a second).
const IN_A_ROW: usize = 3;
const AN_HOUR: usize = 6;
/// After that it rests so long (judgement).
const COOLS: i64 = 30 * 60_000;
const HOUR: i64 = 60 * 60_000;

/// What changes whether it turns.
#[derive(Clone, Copy)]
enum Event {
    Stopped,
    Started,
    Failed,
    /// No current flowed.
    Silent,
}

pub(super) fn read(job: &Job, now: Moment) -> (Clock, Option<Pause>) {
    let tries = all_tries(job);
    (clock(job, &tries, now), pause(&tries, now))
}

fn all_tries(job: &Job) -> Vec<StartTrial> {
    let each = SetUp::ALL.into_iter().flat_map(|set_up| tries(job, set_up));
    let mut all: Vec<StartTrial> = each.map(|(_, trial)| trial).collect();
    all.sort_by_key(|trial| trial.at.unix_milliseconds());
    all
}

fn clock(job: &Job, tries: &[StartTrial], now: Moment) -> Clock {
    let tried = tries.iter().map(|trial| {
        let event = match trial.outcome {
            outcome if outcome.turns() => Event::Started,
            outcome if outcome.energised() => Event::Failed,
            _ => Event::Silent,
        };
        (trial.at, event)
    });
    let stopped = stops(job).into_iter().map(|stop| (stop.at, Event::Stopped));
    let mut events: Vec<(Moment, Event)> = stopped.chain(tried).collect();
    events.sort_by_key(|(at, _)| at.unix_milliseconds());
    let Some((latest, _)) = events.last() else {
        return Clock::NotStarted;
    };
    if latest.unix_milliseconds() > now.unix_milliseconds() {
        return Clock::SetBack { latest: *latest };
    }
    let (mut turned, mut current, mut turning) = (None, None, None);
    for (at, event) in events {
        match event {
            Event::Stopped => (turned, current, turning) = (Some(at), None, None),
            Event::Started => turning = Some(at),
            Event::Failed => current = Some(at),
            Event::Silent => {}
        }
    }
    if let Some(since) = turning {
        return Clock::Turning { since };
    }
    // A failed try alone doesn't say since when it rests.
    let Some(since) = turned else {
        return Clock::NotStarted;
    };
    let Ok(turned) = Rest::between(since, now) else {
        return Clock::LongAgo;
    };
    let dead = current.and_then(|at| Rest::between(at, now).ok());
    Clock::Resting {
        since,
        turned,
        dead,
    }
}

fn pause(tries: &[StartTrial], now: Moment) -> Option<Pause> {
    let now = now.unix_milliseconds();
    let of_energised = tries.iter().filter(|trial| trial.outcome.energised());
    let energised: Vec<&StartTrial> = of_energised.collect();
    let later = |at: Moment, more: i64| {
        let until = at.unix_milliseconds() + more;
        (until > now).then(|| Moment::new(until, at.offset_minutes()).ok())?
    };
    let failed = energised
        .iter()
        .rev()
        .take_while(|trial| !trial.outcome.turns())
        .count();
    if failed >= IN_A_ROW
        && let Some(last) = energised.last()
        && let Some(until) = later(last.at, COOLS)
    {
        return Some(Pause::ThreeInARow { until });
    }
    let sixth = energised.iter().rev().nth(AN_HOUR - 1)?;
    later(sixth.at, HOUR).map(|until| Pause::SixAnHour { until })
}
