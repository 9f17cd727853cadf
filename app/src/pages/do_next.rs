//! What to do next: the Path with the break in it, one check, and the way to all others.

use diagnosis::{Assessment, Check, Choice, Level, Step};
use job::Origin;
use leptos::prelude::*;
use wording::{Locale, Words, caution, finding, page, step, title};

use crate::frame::Heading;
use crate::open_job::OpenJob;
use crate::parts::caution::{Caution, shape};
use crate::parts::path_line::PathLine;
use crate::route::{Place, Route};

/// The first screen of a job.
#[component]
pub fn DoScreen() -> impl IntoView {
    let job = OpenJob::here();
    let assessment = job.assessment();
    let heading = Signal::derive(move || assessment.with(|known| title(&known.machine)));
    let links = Signal::derive(move || assessment.with(|known| known.path.clone()));
    let is_invented = untrack(|| job.with_job(|job| job.origin() == Origin::Invented));
    view! {
        <div class="screen do">
            {is_invented.then(|| view! { <p class="eyebrow">{page::INVENTED}</p> })}
            <Heading text=heading/>
            <PathLine links/>
            <Cautions/>
            <NextStep/>
            <Found/>
            <Others/>
            <UndoRedo/>
        </div>
    }
}

/// Stops in full; everything else in one line that opens.
#[component]
fn Cautions() -> impl IntoView {
    let assessment = OpenJob::here().assessment();
    let cautions = Memo::new(move |_| assessment.with(|known| known.cautions.clone()));
    view! {
        {move || {
        let (stops, cares): (Vec<_>, Vec<_>) = cautions
            .get()
            .into_iter()
            .partition(|caution| caution.level() == Level::Stop);
        let stops = stops
            .into_iter()
            .map(|caution| view! { <Caution caution/> });
        view! {
            <div class="cautions">
                {stops.collect::<Vec<_>>()}
                {(!cares.is_empty()).then(|| folded(cares))}
            </div>
        }
    }}
    }
}

/// What to mind, in a few words each, which open to the whole.
fn folded(cares: Vec<diagnosis::Caution>) -> impl IntoView {
    let headings: Vec<&str> = cares.iter().map(|which| caution(*which).heading).collect();
    let whole = cares.iter().map(|which| {
        let words = caution(*which);
        view! { <p><strong>{page::sentence(words.heading)}</strong> " " {words.text}</p> }
    });
    view! {
        <details class="caution care folded all">
            <summary>
                {shape(Level::Care)}
                <span class="caution-heading">
                    <strong>{Level::Care.words()} ": "</strong>
                    {headings.join("; ")}
                </span>
            </summary>
            {whole.collect::<Vec<_>>()}
        </details>
    }
}

/// What was found so far, if anything.
#[component]
fn Found() -> impl IntoView {
    let job = OpenJob::here();
    let locale = job.session().locale();
    let found = Memo::new(move |_| job.assessment().with(|known| findings(known, &locale)));
    view! {
        {move || {
        let found = found.get();
        (!found.is_empty()).then(|| {
            let lines = found.into_iter().map(|line| view! { <li>{line}</li> });
            view! {
                <section class="found">
                    <h2>{page::FOUND}</h2>
                    <ul class="lines">{lines.collect::<Vec<_>>()}</ul>
                </section>
            }
        })
    }}
    }
}

fn findings(known: &Assessment, locale: &Locale) -> Vec<String> {
    let findings = known.findings.iter();
    findings.map(|found| finding(found, locale)).collect()
}

#[component]
fn NextStep() -> impl IntoView {
    let job = OpenJob::here();
    let locale = job.session().locale();
    let next = Memo::new(move |_| job.assessment().with(|known| known.next.first().copied()));
    view! {
        {move || match next.get() {
        None => view! { <p class="soft">{page::NOTHING_NEXT}</p> }.into_any(),
        Some(next) => card(job, next, &locale).into_any(),
    }}
    }
}

fn card(job: OpenJob, next: Step, locale: &Locale) -> impl IntoView {
    let words = step(next, locale);
    let target = Route::Job(job.id(), Place::Check(next.check().name().to_owned()));
    view! {
        <section class="next" aria-labelledby="next-step">
            <p class="eyebrow">{page::NEXT}</p>
            <h2 id="next-step">{words.heading}</h2>
            <p>{words.why}</p>
            <p class="soft">{words.takes}</p>
            <a class="button wide" href=target.link()>{page::DO_THIS}</a>
        </section>
    }
}

/// All checks, done or not.
#[component]
fn Others() -> impl IntoView {
    let job = OpenJob::here();
    let row = move |check: Check| {
        let has_answers = move || {
            job.with_job(|job| {
                let answered = job.answered();
                answered
                    .iter()
                    .any(|question| question.check.as_str() == check.name())
            })
        };
        let state = move || {
            if has_answers() {
                page::HAS_ANSWERS
            } else {
                page::NO_ANSWERS
            }
        };
        let target = Route::Job(job.id(), Place::Check(check.name().to_owned()));
        view! {
            <li>
                <a class="row" href=target.link()>
                    <span class="title">{check.words()}</span>
                    <span class="line">{check.hint()} " · " {move || state()}</span>
                </a>
            </li>
        }
    };
    view! {
        <details class="others">
            <summary class="door">{page::SOMETHING_ELSE}</summary>
            <ul class="rows">{Check::ALL.iter().map(|check| row(*check)).collect::<Vec<_>>()}</ul>
        </details>
    }
}

#[component]
fn UndoRedo() -> impl IntoView {
    let job = OpenJob::here();
    view! {
        <div class="actions undo">
            <button class="plain" disabled=move || !job.can_undo() on:click=move |_| job.undo()>{page::UNDO}</button>
            <button class="plain" disabled=move || !job.can_redo() on:click=move |_| job.redo()>{page::REDO}</button>
        </div>
    }
}
