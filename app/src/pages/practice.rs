//! What a practice job's screens show beyond those of any job: that it is one, the button that
//! examines the machine, and the way to the truth. What simulates is fetched by it.

use std::sync::Arc;

use diagnosis::{Fault, Model, Task, Whole, assess};
use job::{Answer, Content, Job, Moment, Origin, Question};
use leptos::prelude::*;
use measure::MeterKind;
use wording::page::practice as words;
use wording::{Locale, Words, page, whole};

use super::suspects::whole_of;
use crate::forms::pair_reading::Target;
use crate::forms::windings_meter::{MeterInUse, Profile};
use crate::open_job::OpenJob;
use crate::parts::plain::link;
use crate::practising::{Instrument, Lessons, Practising, Probe, Truth, practising};
use crate::route::{Place, Route};
use crate::session::Session;

/// The lessons, and the machines at random.
#[component]
pub fn PracticeScreen() -> impl IntoView {
    let session = Session::here();
    let start = move |contents: Vec<Content>| {
        let id = session.start(Origin::Practice, contents);
        session.go(&Route::Job(id.clone(), Place::Do));
        id
    };
    practising(Practising::Lessons(Lessons {
        meter: meter(session),
        start: Arc::new(start),
    }))
}

/// What is wrong with the machine, and both ways through it.
#[component]
pub fn TruthScreen() -> impl IntoView {
    let open = OpenJob::here();
    let advice = move || {
        let known = open.weighing().now();
        let known = known.as_deref();
        let said = known.and_then(|known| Some(whole::to_do(known, whole_of(known)?)));
        said.unwrap_or_default()
    };
    practising(Practising::Truth(Truth {
        job: untrack(|| open.job()),
        meter: meter(open.session()),
        weigh,
        advice: Arc::new(advice),
        task: |task: Task| whole::name(task),
        fault: |fault: Fault| fault.words(),
    }))
}

fn weigh(job: &Job, now: Moment) -> Option<Whole> {
    assess(&Model::default(), job, now).whole
}

/// That a job is one of practice, with the way to the truth, above each of its screens.
pub fn mark(open: OpenJob) -> Option<AnyView> {
    (open.origin() == Origin::Practice).then(|| {
        let truth = Route::Job(open.id(), Place::Truth);
        view! {
            <div class="practice-mark">
                <p>{words::MARK}</p>
                {link("plain", truth.link(), words::DONE)}
            </div>
        }
        .into_any()
    })
}

/// The button that examines the machine of a practice job, for what is asked in a task.
pub fn instrument(
    open: OpenJob,
    task: Task,
    target: impl Fn() -> Option<Target> + Send + Sync + 'static,
    fill: impl Fn(String) + Send + Sync + 'static,
    enter: impl Fn(Answer) + Send + Sync + 'static,
) -> Option<AnyView> {
    let probe = move || {
        let target = target()?;
        Some(Probe {
            task,
            names: target.names(),
            unit: target.number(),
            is_printed: target.is_printed(),
        })
    };
    (open.origin() == Origin::Practice).then(|| {
        practising(Practising::Instrument(Instrument {
            job: Arc::new(move || untrack(|| open.job())),
            meter: meter(open.session()),
            probe: Arc::new(probe),
            fill: Arc::new(fill),
            enter: Arc::new(enter),
            say,
        }))
    })
}

fn say(probe: Probe, answer: &Answer) -> String {
    let (check, item) = probe.names;
    let question = Question::new(check, item);
    let said = question.map(|question| page::says(&question, answer, &Locale::default()));
    said.unwrap_or_default()
}

/// The meter at hand. One by its own data sheet is taken for a good one.
fn meter(session: Session) -> MeterKind {
    let kept = session.setting(MeterInUse::SETTING).unwrap_or_default();
    match MeterInUse::recalled(&kept).profile {
        Profile::Kind(kind) => kind,
        Profile::Own(_) => MeterKind::Good,
    }
}
