//! What a job's tries to start the compressor say, set-up by set-up, and when the next may come.
//!
//! Answers: after which rest does each set-up start, is that ordinary for such a machine, what
//! does one set-up gain over another, how long has it rested by now, what keeps the next try
//! waiting? Must never know: how it is said, and which fault that speaks for (that is weighed
//! with everything else).

mod clock;

pub use clock::{Clock, Pause};

use job::{Content, Job, Moment, SetUp, StartTrial, Stop, Tried};
use measure::start_trials::{
    Gain, NextTrial, Outcome, RestBands, StartBelief, StartKind, Threshold, Trial, Waiting, Zones,
};
use quantity::{Celsius, Observed};

use crate::whole::{Change, Clue};
use crate::{StartDeviceKind, answered};

/// A room from which machines need longer (judgement: 30 to 38 °C).
const WARM: Celsius = Celsius::new(30.0);

/// Everything that the tries of a job say.
#[derive(Debug, Clone, PartialEq)]
pub struct StartTrials {
    /// One for each set-up that was tried, in the order in which they are tried.
    pub series: Vec<Series>,
    /// How long it has rested.
    pub clock: Clock,
    /// What keeps the next try waiting, where something does.
    pub pause: Option<Pause>,
    /// Whether the room is warm.
    pub is_warm: bool,
}

/// The tries with one set-up.
#[derive(Debug, Clone, PartialEq)]
pub struct Series {
    /// With which start gear.
    pub set_up: SetUp,
    /// The tries, in the order of their time, with the entries that hold them.
    pub tries: Vec<(job::Id, StartTrial)>,
    /// After which rest it starts as often as not.
    pub threshold: Threshold,
    /// Which rests are ordinary for it.
    pub bands: RestBands,
    /// How likely the threshold lies in each of them.
    pub zones: Zones,
    /// The rest that would teach most.
    pub next: Option<NextTrial>,
    /// What it gains over the parts as found, where both were tried.
    pub gain: Option<Gain>,
    belief: StartBelief,
    before: StartBelief,
}

impl StartTrials {
    /// The name of its screen beside those of the checks.
    pub const NAME: &'static str = "start-trials";

    /// Of a job, as of a moment.
    #[must_use]
    pub fn of(job: &Job, now: Moment) -> Self {
        let (clock, pause) = clock::read(job, now);
        Self {
            series: all_series(job),
            clock,
            pause,
            is_warm: is_warm(job),
        }
    }

    /// How long it has rested as of a moment, and what keeps the next try waiting: a small part
    /// of the work, for a clock that is looked at each second.
    #[must_use]
    pub fn timed(job: &Job, now: Moment) -> (Clock, Option<Pause>) {
        clock::read(job, now)
    }

    /// These, where anything was tried or timed.
    pub(crate) fn if_any(self) -> Option<Self> {
        let is_timed = self.clock != Clock::NotStarted;
        (is_timed || !self.series.is_empty()).then_some(self)
    }

    /// The series of a set-up.
    #[must_use]
    pub fn series(&self, set_up: SetUp) -> Option<&Series> {
        self.series.iter().find(|one| one.set_up == set_up)
    }

    /// The rest to try next with a set-up, tried before or not.
    #[must_use]
    pub fn next_rest(&self, job: &Job, set_up: SetUp) -> Option<NextTrial> {
        match self.series(set_up) {
            Some(series) => series.next,
            None => StartBelief::of(&[], &kind(job, set_up).prior(self.is_warm))
                .next_rest(&Waiting::default()),
        }
    }
}

/// The tries of each set-up.
pub(crate) fn all_series(job: &Job) -> Vec<Series> {
    let is_warm = is_warm(job);
    let mut series: Vec<Series> = Vec::new();
    for set_up in SetUp::ALL {
        let tries = tries(job, set_up);
        if !tries.is_empty() {
            let mut one = Series::of(set_up, tries, kind(job, set_up), is_warm);
            let found = series.first().filter(|one| one.set_up == SetUp::Original);
            one.gain = found.map(|found| found.belief.gain_of(&one.belief));
            series.push(one);
        }
    }
    series
}

impl Series {
    fn of(
        set_up: SetUp,
        tries: Vec<(job::Id, StartTrial)>,
        kind: StartKind,
        is_warm: bool,
    ) -> Self {
        let measured: Vec<Trial> = tries.iter().filter_map(|(_, one)| measured(one)).collect();
        let prior = kind.prior(is_warm);
        let belief = StartBelief::of(&measured, &prior);
        let bands = kind.bands(is_warm);
        Self {
            set_up,
            tries,
            threshold: belief.threshold(),
            bands,
            zones: belief.zones(bands),
            next: belief.next_rest(&Waiting::default()),
            gain: None,
            before: StartBelief::of(&[], &prior),
            belief,
        }
    }

    /// How much likelier these tries are where it starts within a rest than beforehand, where it
    /// needs longer, and where it never starts: what a network takes.
    pub(crate) fn likelihoods(&self, within: quantity::Seconds) -> [f64; 3] {
        let (after, before) = (shares(&self.belief, within), shares(&self.before, within));
        let mut likelihoods = [1.0; 3];
        for (place, one) in likelihoods.iter_mut().enumerate() {
            // Both are above zero: beforehand each has a share, and no try rules one out.
            *one = after[place] / before[place].max(f64::MIN_POSITIVE);
        }
        likelihoods
    }

    /// Whether nothing was ever heard.
    pub(crate) fn is_silent(&self) -> bool {
        let mut outcomes = self.tries.iter().map(|(_, one)| one.outcome);
        outcomes.all(|outcome| outcome == Tried::Silent)
    }
}

/// How likely it starts within a rest, only later, never.
fn shares(belief: &StartBelief, within: quantity::Seconds) -> [f64; 3] {
    let zones = belief.zones(RestBands {
        ordinary_from: within,
        ordinary_to: within,
        abnormal_from: within,
    });
    let never = 1.0 - belief.cold_start().probability;
    [zones.ordinary, zones.abnormal - never, never]
}

/// Changes after which earlier tries were made with another machine, as far as starting goes.
const RENEWS: [Change; 5] = [
    Change::StartDevice,
    Change::StartGear,
    Change::Capacitor,
    Change::Compressor,
    Change::SealedSystem,
];

/// The clue that a set-up's tries speak to.
pub(crate) const fn clue_of(set_up: SetUp) -> Clue {
    match set_up {
        SetUp::Original => Clue::Restart,
        SetUp::Substitute => Clue::GoodDevice,
        SetUp::Kit => Clue::StartKit,
    }
}

/// The tries with a set-up since the machine's own start gear or compressor became another one.
fn tries(job: &Job, set_up: SetUp) -> Vec<(job::Id, StartTrial)> {
    let standing = job.standing();
    let is_new = |entry: &&job::Entry| {
        let change = Change::told_by(entry);
        change.is_some_and(|change| RENEWS.contains(&change))
    };
    let first = standing
        .iter()
        .rposition(is_new)
        .map_or(0, |place| place + 1);
    let mut tries: Vec<(job::Id, StartTrial)> = standing[first..]
        .iter()
        .filter_map(|entry| match &entry.content {
            Content::Trial(trial) if trial.set_up == set_up => {
                Some((entry.id.clone(), trial.clone()))
            }
            _ => None,
        })
        .collect();
    tries.sort_by_key(|(_, trial)| trial.at.unix_milliseconds());
    tries
}

/// The stops that stand.
fn stops(job: &Job) -> Vec<Stop> {
    let standing = job.standing().into_iter();
    standing
        .filter_map(|entry| match &entry.content {
            Content::Stop(stop) => Some(*stop),
            _ => None,
        })
        .collect()
}

/// A try as it bounds the rest. Nothing heard, or the outlet gone, says nothing of that.
fn measured(trial: &StartTrial) -> Option<Trial> {
    let outcome = match trial.outcome {
        Tried::Started => Outcome::Started,
        Tried::HummedThenStarted => Outcome::HummedThenStarted,
        Tried::HummedAndTripped => Outcome::Failed,
        Tried::Silent | Tried::OutletTripped => Outcome::Silent,
    };
    // A rest in a job is one that can be: both have the same bounds.
    let measured = Trial::new(trial.rest.seconds(), outcome).ok()?;
    let dead = trial.dead.filter(|dead| *dead < trial.rest);
    let measured = match dead {
        Some(dead) => measured
            .energised_before(dead.seconds())
            .unwrap_or(measured),
        None => measured,
    };
    Some(if trial.is_cold {
        measured.from_cold()
    } else {
        measured
    })
}

/// How a set-up starts, as far as the job says.
fn kind(job: &Job, set_up: SetUp) -> StartKind {
    let has_relay = matches!(
        answered::<StartDeviceKind>(job),
        Some(StartDeviceKind::CurrentRelay)
    );
    let has_capacitor = matches!(
        answered::<crate::Stores>(job),
        Some(crate::Stores::Capacitor)
    );
    match set_up {
        SetUp::Kit => StartKind::KitWithPtc,
        _ if has_relay && has_capacitor => StartKind::CapacitorStart,
        _ if has_relay => StartKind::CurrentRelay,
        _ => StartKind::Ptc,
    }
}

fn is_warm(job: &Job) -> bool {
    let room = job.answer(Clue::RoomTemperature.task().name(), crate::ANSWER);
    let Some(job::Answer::Reading(reading)) = room else {
        return false;
    };
    match reading.measured {
        job::Measured::Celsius(typed) => match typed.observed {
            Observed::Value(room) => room >= WARM,
            Observed::OverRange { .. } => true,
        },
        _ => false,
    }
}
