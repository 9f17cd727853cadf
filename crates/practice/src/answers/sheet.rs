//! A machine with its examiner: each task is answered once, and the same whoever asks.

use std::collections::BTreeMap;

use diagnosis::{Check, Task};
use job::Content;
use measure::MeterKind;
use quantity::Seconds;
use simulator::machine::{Heard, Machine, Session};
use simulator::{Chance, Kit, Senses};

use super::{felt, looks, measured, opening, powered};
use crate::walk::Examined;

/// A machine, what one has to examine it with, and what was found so far.
#[derive(Debug, Clone)]
pub struct Sheet {
    pub(super) machine: Machine,
    pub(super) meter: MeterKind,
    pub(super) kit: Kit,
    pub(super) senses: Senses,
    /// By task, and whether it was done for the second time.
    given: BTreeMap<(Task, bool), Vec<Content>>,
    sessions: Sessions,
    chance: Chance,
}

/// The machine plugged in after a rest, so many minutes later; each is made when first asked for.
#[derive(Debug, Clone, Default)]
struct Sessions {
    quarter: Option<Session>,
    half_hour: Option<Session>,
    two_hours: Option<Session>,
    night: Option<Session>,
    day: Option<Session>,
}

const QUARTER: Seconds = Seconds::new(900.0);
const TO_HALF_HOUR: Seconds = Seconds::new(1_200.0);
const TO_TWO_HOURS: Seconds = Seconds::new(5_100.0);
const TO_NIGHT: Seconds = Seconds::new(36_000.0);
const TO_DAY: Seconds = Seconds::new(43_200.0);

impl Sheet {
    /// A machine in front of somebody with a meter. The same chance gives the same answers.
    #[must_use]
    pub fn new(machine: Machine, meter: MeterKind, chance: &Chance) -> Self {
        let kit = match meter {
            MeterKind::Basic => Kit::basic(chance.fork(1)),
            MeterKind::Good => Kit::good(chance.fork(1)),
        };
        Self {
            machine,
            meter,
            kit,
            senses: Senses::ordinary(chance.fork(2)),
            given: BTreeMap::new(),
            sessions: Sessions::default(),
            chance: chance.fork(3),
        }
    }

    /// The machine, of which the examiner doesn't know what is wrong.
    #[must_use]
    pub const fn machine(&self) -> &Machine {
        &self.machine
    }

    /// What it is measured with.
    #[must_use]
    pub const fn meter(&self) -> MeterKind {
        self.meter
    }

    /// Whether it does what it should, over a night at least.
    pub fn works(&mut self) -> bool {
        opening::symptom(self).is_none()
    }

    /// What anybody would complain of; nothing where it works.
    pub(crate) fn symptom(&mut self) -> Option<diagnosis::Complaint> {
        opening::symptom(self)
    }

    /// Whether a seller tells what it does: of half of all machines (judgement), sound or not.
    pub(super) fn is_told_by_seller(&self) -> bool {
        self.chance.fork(1).happens(0.5)
    }

    /// The same machine with all ice gone.
    pub(super) fn thawed(&self) -> Self {
        Self {
            machine: self.machine.clone().thawed(),
            sessions: Sessions::default(),
            ..self.clone()
        }
    }

    /// Tools and senses of this task alone, so that the order of tasks changes nothing.
    pub(super) fn take_up_tools(&mut self, task: Task) {
        self.take_up_tools_for(task, false);
    }

    /// A second time one looks anew, with the same meter.
    pub(super) fn take_up_tools_for(&mut self, task: Task, again: bool) {
        let place = Task::all().position(|one| one == task).unwrap_or(0) as u64;
        let place = if again { 400 + place } else { place };
        self.senses = Senses::ordinary(self.chance.fork(100 + place));
        self.kit.take_up(self.chance.fork(300 + place));
    }

    /// Chance of a clue's own, for what lies beside the meters.
    pub(super) fn chance_of(&self, clue: diagnosis::Clue) -> Chance {
        let place = Task::all().position(|one| one == Task::Clue(clue));
        self.chance.fork(900 + place.unwrap_or(0) as u64)
    }

    fn find_out(&mut self, task: Task, again: bool) -> Vec<Content> {
        self.take_up_tools_for(task, again);
        let found = match task {
            Task::Check(Check::LookOver) => looks::look_over(self),
            Task::Check(check) => measured::check(self, check),
            Task::Clue(clue) => {
                let found = looks::clue(self, clue)
                    .or_else(|| measured::clue(self, clue))
                    .or_else(|| powered::clue(self, clue))
                    .or_else(|| felt::clue(self, clue));
                found.unwrap_or_default()
            }
            Task::History => looks::history(),
        };
        if found.is_empty() {
            super::entry::not_sure(task).into_iter().collect()
        } else {
            found
        }
    }

    fn given(&mut self, task: Task, again: bool) -> Vec<Content> {
        if let Some(given) = self.given.get(&(task, again)) {
            return given.clone();
        }
        let found = self.find_out(task, again);
        self.given.insert((task, again), found.clone());
        found
    }

    /// A quarter of an hour after it was plugged in; nothing where that can't be simulated.
    pub(super) fn quarter(&mut self) -> Option<&Session> {
        let kept = &mut self.sessions.quarter;
        if kept.is_none() {
            *kept = self.machine.plug_in(QUARTER).ok();
        }
        kept.as_ref()
    }

    /// Half an hour and a little after.
    pub(super) fn half_hour(&mut self) -> Option<&Session> {
        if self.sessions.half_hour.is_none() {
            let before = self.quarter()?.clone();
            self.sessions.half_hour = later(before, TO_HALF_HOUR);
        }
        self.sessions.half_hour.as_ref()
    }

    /// Two hours after.
    pub(super) fn two_hours(&mut self) -> Option<&Session> {
        if self.sessions.two_hours.is_none() {
            let before = self.half_hour()?.clone();
            self.sessions.two_hours = later(before, TO_TWO_HOURS);
        }
        self.sessions.two_hours.as_ref()
    }

    /// Twelve hours after.
    pub(super) fn night(&mut self) -> Option<&Session> {
        if self.sessions.night.is_none() {
            let before = self.two_hours()?.clone();
            self.sessions.night = later(before, TO_NIGHT);
        }
        self.sessions.night.as_ref()
    }

    /// A day after.
    pub(super) fn day(&mut self) -> Option<&Session> {
        if self.sessions.day.is_none() {
            let before = self.night()?.clone();
            self.sessions.day = later(before, TO_DAY);
        }
        self.sessions.day.as_ref()
    }
}

/// How it goes on. What never turned, or hums and clicks without end, does so all night: nobody
/// waits for it, and neither does this.
fn later(mut session: Session, time: Seconds) -> Option<Session> {
    if !is_left_alone(&session) {
        session.go_on(time).ok()?;
    }
    Some(session)
}

/// Whether nobody waits for what comes of it.
pub(super) fn is_left_alone(session: &Session) -> bool {
    !session.has_run() || session.times(Heard::Clicks) > MANY
}

/// More clicks of a protector than this in a while are no way to live.
const MANY: usize = 4;

impl Examined for Sheet {
    fn opening(&mut self) -> Vec<Content> {
        opening::told(self)
    }

    fn answer(&mut self, task: Task) -> Vec<Content> {
        self.given(task, false)
    }

    fn answer_again(&mut self, task: Task) -> Vec<Content> {
        self.given(task, true)
    }
}
