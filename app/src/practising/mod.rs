//! The third part of the program: simulated machines to practise on.
//!
//! It is fetched when a practice job or the page for practising is first opened, and not before:
//! who has a freezer to look at never pays for it. It is always asked by the second part, which
//! hands in what it needs to know of the job, and takes back what was found. So nothing that
//! judges a job lies here, and nothing that simulates lies there.

mod bench;
mod face;
mod instrument;
mod lessons;
mod truth;

use std::sync::Arc;

use diagnosis::{Fault, Task, Whole};
use job::{Answer, Content, Id, Job, Moment};
use leptos::prelude::*;
use measure::MeterKind;

use crate::later::{NotArrived, arriving};

/// What the third part shows.
#[derive(Clone)]
pub enum Practising {
    /// The lessons, and the machines at random.
    Lessons(Lessons),
    /// What examines the machine at one question.
    Instrument(Instrument),
    /// What is wrong with the machine, and both ways through it.
    Truth(Truth),
}

// What is handed in are plain closures: a signal or a callback of each type would bring its own
// copy of the framework's machinery into the second part, which everybody loads.

/// What the lessons need.
#[derive(Clone)]
pub struct Lessons {
    /// The meter at hand.
    pub meter: MeterKind,
    /// Makes a job that begins with these entries, and goes there.
    pub start: Arc<dyn Fn(Vec<Content>) -> Id + Send + Sync>,
}

/// What is to be found out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Probe {
    /// In which task.
    pub task: Task,
    /// The check and the item of the question.
    pub names: (&'static str, &'static str),
    /// The unit, where it is a number.
    pub unit: Option<job::Unit>,
    /// Whether it is only read off a part.
    pub is_printed: bool,
}

/// What an instrument needs.
#[derive(Clone)]
pub struct Instrument {
    /// The job. Not tracked.
    pub job: Arc<dyn Fn() -> Job + Send + Sync>,
    /// The meter at hand.
    pub meter: MeterKind,
    /// What is asked now. Tracked.
    pub probe: Arc<dyn Fn() -> Option<Probe> + Send + Sync>,
    /// Puts what a meter shows into the field.
    pub fill: Arc<dyn Fn(String) + Send + Sync>,
    /// Enters what was seen, heard or felt.
    pub enter: Arc<dyn Fn(Answer) + Send + Sync>,
    /// An answer in words.
    pub say: fn(Probe, &Answer) -> String,
}

/// What the truth needs.
#[derive(Clone)]
pub struct Truth {
    /// The job.
    pub job: Job,
    /// The meter at hand.
    pub meter: MeterKind,
    /// Weighs a job.
    pub weigh: fn(&Job, Moment) -> Option<Whole>,
    /// What the app makes of the readings. Tracked.
    pub advice: Arc<dyn Fn() -> Vec<String> + Send + Sync>,
    /// What a task is called.
    pub task: fn(Task) -> &'static str,
    /// What a fault is called.
    pub fault: fn(Fault) -> &'static str,
}

/// Shows something of the third part as soon as that is there.
pub fn practising(what: Practising) -> AnyView {
    arriving(Box::pin(parts::screen(what)))
}

/// Where the part is cut off. The attribute writes a call across, which needs `unsafe`.
#[cfg(feature = "split")]
#[allow(unsafe_code)]
mod parts {
    use leptos::wasm_split::wasm_split;

    use super::{AnyView, NotArrived, Practising};

    #[wasm_split(practice, wasm_split_path = ::leptos::wasm_split, fallible)]
    pub(super) fn screen(what: Practising) -> Result<AnyView, NotArrived> {
        Ok(super::screen_now(what))
    }
}

#[cfg(not(feature = "split"))]
mod parts {
    use super::{AnyView, NotArrived, Practising};

    pub(super) async fn screen(what: Practising) -> Result<AnyView, NotArrived> {
        Ok(super::screen_now(what))
    }
}

fn screen_now(what: Practising) -> AnyView {
    crate::device::prepare_practice();
    match what {
        Practising::Lessons(needs) => lessons::screen(needs),
        Practising::Instrument(needs) => instrument::panel(needs),
        Practising::Truth(needs) => truth::screen(needs),
    }
}
