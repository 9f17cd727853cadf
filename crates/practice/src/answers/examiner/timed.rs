//! Tries to start after rests by the clock, each on the machine as it is by then.

use diagnosis::{StartTrials, Task};
use job::{Content, Rest, SetUp, StartTrial, Stop, Tried};
use quantity::Seconds;
use simulator::machine::{Fitted, Gear, Heard, Session};

use super::super::Sheet;
use super::super::powered::is_heard_to_run;
use super::Notes;

/// A try at the start.
const A_TRY: Seconds = Seconds::new(20.0);
/// It runs so long before its rest is timed, or has tried to.
const RUNS: Seconds = Seconds::new(900.0);
/// A machine that is met dead has stood at least so long (judgement).
const STOOD: Seconds = Seconds::new(12.0 * 3_600.0);
/// So long windings and start device are left to cool between two tries that hummed (as the app's
/// own instructions have it: half an hour).
const COOLS: Seconds = Seconds::new(1_800.0);
/// Nobody makes more: three that fail in a row are the limit. One that never turned has had its
/// longest rest already: a second try says that the first was no slip.
const TRIES: usize = 3;
const RESTED_TRIES: usize = 2;
/// Longer than this it has hummed first, by ear.
const AT_ONCE: Seconds = Seconds::new(1.5);

/// A machine between two tries.
struct Bench {
    session: Session,
    set_up: SetUp,
    /// Since when it doesn't turn, and since when no current flowed.
    turned: Seconds,
    dead: Seconds,
    has_turned: bool,
}

/// Tries with a set-up until one starts or the limit is reached. Nothing where it neither runs nor
/// hums, or trips: then nobody tries.
pub(super) fn tries(sheet: &mut Sheet, set_up: SetUp, notes: &mut Notes) -> Option<()> {
    let task = task_of(set_up);
    sheet.take_up_tools(task);
    if sheet.machine.blueprint().gear == Gear::Inverter {
        return None;
    }
    let mut bench = bench(sheet, set_up, notes)?;
    for _ in 0..bench.most_tries() {
        let trials = StartTrials::of(&notes.job, notes.now);
        if trials.pause.is_some() {
            break;
        }
        let next = trials.next_rest(&notes.job, set_up)?;
        let wait = bench.wait_for(next.rest);
        notes.wait(wait)?;
        let outcome = bench.tries(wait)?;
        let told = sheet.senses.told(place_of(outcome), Tried::ALL.len() - 1);
        let outcome = *Tried::ALL.get(told)?;
        notes.write(Content::Trial(bench.trial(outcome, notes)?));
        notes.wait(A_TRY)?;
        if outcome.turns() || outcome == Tried::OutletTripped {
            break;
        }
    }
    Some(())
}

const fn task_of(set_up: SetUp) -> Task {
    use diagnosis::Clue;
    Task::Clue(match set_up {
        SetUp::Original => Clue::Restart,
        SetUp::Substitute => Clue::GoodDevice,
        SetUp::Kit => Clue::StartKit,
    })
}

fn place_of(outcome: Tried) -> usize {
    let place = Tried::ALL.iter().position(|one| *one == outcome);
    place.unwrap_or_default()
}

/// The machine as it stands after a quarter of an hour in which it ran or tried, unplugged, with
/// the start gear on it. That quarter is waited for where it ran: who times a rest runs it warm.
fn bench(sheet: &mut Sheet, set_up: SetUp, notes: &mut Notes) -> Option<Bench> {
    let session = sheet.quarter()?.clone();
    let tries = session.has_run() || session.times(Heard::Hums) > 0;
    if !tries || session.is_tripped() {
        return None;
    }
    let session = session.fitted(&sheet.machine, fitted(set_up)).ok()?;
    let has_turned = session.has_run();
    let mut bench = Bench {
        session,
        set_up,
        turned: STOOD,
        dead: Seconds::new(0.0),
        has_turned,
    };
    if has_turned {
        notes.wait(RUNS)?;
        bench.turned = still_for(&bench.session);
    }
    let at = notes.now.after(bench.turned * -1.0)?;
    let ran = has_turned.then_some(RUNS - bench.turned);
    notes.write(Content::Stop(Stop { at, ran }));
    Some(bench)
}

const fn fitted(set_up: SetUp) -> Fitted {
    match set_up {
        SetUp::Original => Fitted::Own,
        SetUp::Substitute => Fitted::GoodDevice,
        SetUp::Kit => Fitted::Kit,
    }
}

/// How long it hasn't turned by the end of its course.
fn still_for(session: &Session) -> Seconds {
    let samples = &session.course().samples;
    let last = samples.last().map_or(0.0, |sample| sample.time.get());
    let ran = samples.iter().rev().find(|sample| sample.running);
    Seconds::new(ran.map_or(0.0, |ran| last - ran.time.get()))
}

impl Bench {
    const fn most_tries(&self) -> usize {
        if self.has_turned { TRIES } else { RESTED_TRIES }
    }

    /// How long to wait until it has rested so long. What hummed last cools first.
    fn wait_for(&self, rest: Seconds) -> Seconds {
        let rests = rest - self.turned;
        let cools = COOLS - self.dead;
        let has_hummed = self.dead < self.turned;
        let wait = if has_hummed && cools > rests {
            cools
        } else {
            rests
        };
        if wait > Seconds::new(0.0) {
            wait
        } else {
            Seconds::new(0.0)
        }
    }

    /// Waits, and tries. What is heard; the machine stays as it is then.
    fn tries(&mut self, wait: Seconds) -> Option<Tried> {
        self.session = self.session.again(wait, A_TRY).ok()?;
        self.turned = self.turned + wait;
        self.dead = self.dead + wait;
        Some(heard(&self.session))
    }

    fn trial(&mut self, outcome: Tried, notes: &Notes) -> Option<StartTrial> {
        let (turned, dead) = (self.turned, self.dead);
        let trial = StartTrial {
            set_up: self.set_up,
            at: notes.now,
            rest: Rest::new(turned).ok()?,
            dead: if dead < turned {
                Rest::new(dead).ok()
            } else {
                None
            },
            is_cold: false,
            outcome,
            highest: None,
            settled: None,
            lowest: None,
            note: None,
        };
        self.turned = self.turned + A_TRY;
        self.dead = Seconds::new(0.0);
        Some(trial)
    }
}

fn heard(session: &Session) -> Tried {
    match () {
        () if session.is_tripped() => Tried::OutletTripped,
        () if is_heard_to_run(session) && session.run_up().is_some_and(|up| up > AT_ONCE) => {
            Tried::HummedThenStarted
        }
        () if is_heard_to_run(session) => Tried::Started,
        () if session.has_run() || session.times(Heard::Hums) > 0 => Tried::HummedAndTripped,
        () => Tried::Silent,
    }
}
