//! What happened while it cooled, and what of that is a sign.

use job::{ColdEvent, ColdEventKind, Content, Job, Moment};
use quantity::Seconds;

use super::course::Course;

/// Something that happened and says something of the machine.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum ColdSign {
    /// Its protector, or the outlet's, opened once.
    Tripped,
    /// It opened again and again.
    TripsAgainAndAgain {
        /// How often.
        times: usize,
    },
    /// The compressor goes off after minutes and isn't there yet: as an overload does.
    ShortRuns {
        /// How many of its runs were short.
        runs: usize,
    },
    /// A defrost has begun and goes on longer than any should.
    DefrostDoesNotEnd {
        /// When it began.
        since: Moment,
    },
    /// The control was set anew meanwhile: what went before foretells nothing of what comes.
    ControlMoved {
        /// The last time.
        at: Moment,
    },
    /// Something was put in meanwhile: it takes longer than an empty cabinet.
    Loaded,
}

/// Defrosts are over after 15 to 45 minutes (common practice, no source); longer than this none
/// goes on (judgement).
pub(crate) const LONGEST_DEFROST: Seconds = Seconds::new(3_600.0);
/// A run that a thermostat ends is longer while it is far from cold (judgement).
const SHORT_RUN: Seconds = Seconds::new(600.0);
/// So many make a pattern (judgement).
const SHORT_RUNS: usize = 3;

/// The events since it was switched on, in the order of time.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Happened(pub(crate) Vec<ColdEvent>);

impl Happened {
    pub(super) fn since(job: &Job, began: Moment, now: Moment) -> Self {
        let within = began.unix_milliseconds()..=now.unix_milliseconds();
        let standing = job.standing();
        let events = standing.iter().filter_map(|entry| match &entry.content {
            Content::Event(event) => Some(*event),
            _ => None,
        });
        let mut events: Vec<ColdEvent> = events
            .filter(|event| within.contains(&event.at.unix_milliseconds()))
            .collect();
        events.sort_by_key(|event| (event.at.unix_milliseconds(), event.kind));
        let off = |event: &ColdEvent| event.kind == ColdEventKind::SwitchedOff;
        // What came after it was switched off isn't part of it.
        if let Some(end) = events.iter().position(off) {
            let end_at = events[end].at.unix_milliseconds();
            events.retain(|event| event.at.unix_milliseconds() <= end_at);
        }
        Self(events)
    }

    pub(crate) fn of(&self, kind: ColdEventKind) -> impl Iterator<Item = Moment> + '_ {
        let of_kind = self.0.iter().filter(move |event| event.kind == kind);
        of_kind.map(|event| event.at)
    }

    pub(crate) fn first(&self, kind: ColdEventKind) -> Option<Moment> {
        self.of(kind).next()
    }

    pub(crate) fn last(&self, kind: ColdEventKind) -> Option<Moment> {
        self.of(kind).last()
    }

    /// The last defrost: when it began, and when it ended, if it did.
    pub(crate) fn last_defrost(&self) -> Option<(Moment, Option<Moment>)> {
        let began = self.last(ColdEventKind::DefrostBegan)?;
        let ended = self
            .of(ColdEventKind::DefrostEnded)
            .find(|at| at.unix_milliseconds() >= began.unix_milliseconds());
        Some((began, ended))
    }

    pub(super) fn signs(&self, courses: &[Course], until: Moment) -> Vec<ColdSign> {
        let trips = self.of(ColdEventKind::Tripped).count();
        let tripped = match trips {
            0 => None,
            1 => Some(ColdSign::Tripped),
            times => Some(ColdSign::TripsAgainAndAgain { times }),
        };
        // A machine that is cold runs as briefly as it likes.
        let is_cold = !courses.is_empty() && courses.iter().all(|one| one.reached.is_some());
        let runs = self.short_runs();
        let short = (runs >= SHORT_RUNS && !is_cold).then_some(ColdSign::ShortRuns { runs });
        let defrost = self.last_defrost().and_then(|(since, ended)| {
            let is_over = ended.is_some() || since.until(until) <= LONGEST_DEFROST;
            (!is_over).then_some(ColdSign::DefrostDoesNotEnd { since })
        });
        let moved = self.last(ColdEventKind::SetPointChanged);
        let moved = moved.map(|at| ColdSign::ControlMoved { at });
        let loaded = self.first(ColdEventKind::Loaded).map(|_| ColdSign::Loaded);
        [tripped, short, defrost, moved, loaded]
            .into_iter()
            .flatten()
            .collect()
    }

    fn short_runs(&self) -> usize {
        let (mut on, mut runs) = (None, 0);
        for event in &self.0 {
            match event.kind {
                ColdEventKind::CompressorOn => on = Some(event.at),
                ColdEventKind::CompressorOff | ColdEventKind::Tripped => {
                    let is_short = |on: Moment| on.until(event.at) < SHORT_RUN;
                    runs += usize::from(on.take().is_some_and(is_short));
                }
                _ => {}
            }
        }
        runs
    }
}
