//! Whether the compressor had run for long enough when something was read.
//!
//! Pressures and surfaces settle within a quarter of an hour (as `measure::refrigerant` has it); what
//! was read before that, or after a stop, says nothing of the circuit. A control stops a compressor
//! without anybody noting it: once a compartment has shown its target, only a start that was noted
//! after that tells that it runs.

use job::{ColdEventKind, Content, Job, Moment, Place};
use quantity::Seconds;

use crate::whole::{ANSWER, Change};
use crate::{Clue, Compartment, Item};

/// So long it must have run without a stop.
pub(crate) const SETTLED: Seconds = Seconds::new(900.0);
/// A running motor takes more than this, a board, a lamp and fans together less (judgement: standby to
/// 5 W, a lamp to 60 W).
const TURNS: f64 = 65.0;

/// When it was started and stopped, as far as that was noted.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Ran {
    /// Each turn of events in the order of time: when, and whether it ran from then on.
    turns: Vec<(Moment, bool)>,
    /// When a compartment showed its target or less, in the order of time.
    cold: Vec<Moment>,
    /// Somebody heard it start, or saw by a meter that it ran.
    is_sure: bool,
}

impl Ran {
    pub(crate) fn of(job: &Job) -> Self {
        let mut ran = Self {
            turns: Vec::new(),
            cold: Vec::new(),
            is_sure: was_told(job),
        };
        for entry in job.standing() {
            if Change::told_by(entry).is_some() {
                // Nobody works on a machine that runs.
                ran.turns.push((entry.at, false));
            }
            match &entry.content {
                Content::Event(event) => {
                    ran.is_sure |= event.kind == ColdEventKind::CompressorOn;
                    ran.turns.extend(turn(event.kind).map(|on| (event.at, on)));
                }
                Content::Stop(stop) => ran.turns.push((stop.at, false)),
                Content::Spot(spot) => {
                    if let Some(shown) = crate::cool_down::shown(spot) {
                        ran.see(spot.place, spot.at, shown.get());
                    }
                }
                Content::Log(log) => {
                    for (at, shown) in log.points() {
                        ran.see(log.place(), *at, shown.get());
                    }
                }
                _ => {}
            }
        }
        // Of what happened in the same moment the stop counts.
        ran.turns
            .sort_by_key(|(at, on)| (at.unix_milliseconds(), !*on));
        ran.cold.sort_by_key(|at| at.unix_milliseconds());
        ran
    }

    fn see(&mut self, place: Place, at: Moment, shown: f64) {
        let all = [Compartment::Freezer, Compartment::FreshFood];
        let of = all.iter().find(|one| one.place() == place);
        if of.is_some_and(|one| shown <= one.goal().target.get()) {
            self.cold.push(at);
        }
    }

    /// Whether somebody heard it start, or saw that it ran.
    pub(crate) const fn is_sure(&self) -> bool {
        self.is_sure
    }

    /// How long it had run by then, as far as anybody can know; `None` where it didn't, or not for
    /// [`SETTLED`].
    pub(crate) fn ran_for(&self, at: Moment) -> Option<Seconds> {
        let then = at.unix_milliseconds();
        let before = self.turns.iter().rev();
        let mut before = before.skip_while(|(turned, _)| turned.unix_milliseconds() > then);
        let Some((began, true)) = before.next() else {
            return None;
        };
        let count = |until: i64| {
            self.cold
                .partition_point(|cold| cold.unix_milliseconds() < until)
        };
        let was_cold = count(then) > count(began.unix_milliseconds());
        let ran = began.until(at);
        (ran >= SETTLED && !was_cold).then_some(ran)
    }
}

/// Whether it runs from then on. A machine that is switched on with a warm cabinet starts at once.
const fn turn(kind: ColdEventKind) -> Option<bool> {
    match kind {
        ColdEventKind::SwitchedOn | ColdEventKind::CompressorOn | ColdEventKind::DefrostEnded => {
            Some(true)
        }
        ColdEventKind::CompressorOff
        | ColdEventKind::Tripped
        | ColdEventKind::DefrostBegan
        | ColdEventKind::SwitchedOff => Some(false),
        ColdEventKind::DoorOpened
        | ColdEventKind::Loaded
        | ColdEventKind::SetPointChanged
        | ColdEventKind::DefrostWater
        | ColdEventKind::ProbeMoved => None,
    }
}

/// Heard or seen to run, in words or by a meter.
fn was_told(job: &Job) -> bool {
    let words = [Clue::PowerUp, Clue::PowerMeter];
    let by_word = words
        .iter()
        .any(|clue| job.choice(crate::Choice::name(*clue), ANSWER) == Some("runs"));
    let watts = [Item::EarlyWatts, Item::LateWatts];
    by_word
        || watts.iter().any(|item| {
            item.watts(job).is_some_and(|typed| match typed.observed {
                quantity::Observed::Value(value) => value.get() >= TURNS,
                quantity::Observed::OverRange { .. } => true,
            })
        })
}
