//! What is known: the report in the same words as everywhere else, the Path in full, the odds,
//! and everything that was entered.

use diagnosis::{Assessment, Task};
use job::{Content, Entry, Id};
use leptos::prelude::*;
use wording::{Locale, page};

use super::do_next::path;
use super::report_view::report_view;
use crate::parts::plain::{paragraph, section_heading};

use crate::frame::Heading;
use crate::open_job::OpenJob;
use crate::parts::live::{live, tap};
use crate::parts::path_line::PathInFull;
use crate::route::{Place, Route};

/// What is known.
#[component]
pub fn KnownScreen() -> impl IntoView {
    let job = OpenJob::here();
    let links = Signal::derive(move || path(job));
    view! {
        <div class="screen known">
            <Heading text=page::KNOWN/>
            <ReportText/>
            <details>
                <summary class="door">{page::PATH_IN_FULL}</summary>
                <PathInFull links/>
            </details>
            <Entries/>
        </div>
    }
}

/// The report, in the same words as everywhere else.
#[component]
fn ReportText() -> impl IntoView {
    let job = OpenJob::here();
    let locale = job.session().locale();
    view! {
        {live(move || {
        let view = |known: &Assessment| job.with_job(|entered| report_view(Some(job), known, entered, &locale));
        match job.weighing().now() {
            Some(known) => view(&known),
            None => job.assessment().with(view),
        }
    })}
    }
}

/// Everything that was entered, the latest first; what was struck stays readable.
#[component]
fn Entries() -> impl IntoView {
    let job = OpenJob::here();
    let locale = job.session().locale();
    let rows = move || {
        job.with_job(|entered| {
            let struck = entered.struck();
            let entries = entered.entries().iter().rev();
            entries
                .filter_map(|entry| row(job, entry, struck.contains(&entry.id), &locale))
                .collect::<Vec<_>>()
        })
    };
    view! {
        <section class="entries">
            {section_heading(page::ENTRIES)}
            <ul>{live(rows)}</ul>
        </section>
    }
}

fn row(
    job: OpenJob,
    entry: &Entry,
    is_struck: bool,
    locale: &Locale,
) -> Option<impl IntoView + use<>> {
    let words = page::entry(entry, locale)?;
    let when = locale.moment(entry.at);
    let says = if is_struck {
        view! { <s>{words.says}</s> <span class="small">" (" {page::STRUCK} ")"</span> }.into_any()
    } else {
        view! { <strong>{words.says}</strong> }.into_any()
    };
    let correct = correct_link(job, entry, &words.about).filter(|_| !is_struck);
    let id = entry.id.clone();
    let (action, said) = if is_struck {
        (page::UNSTRIKE, page::COUNTS_AGAIN)
    } else {
        (page::STRIKE_OUT, page::STRUCK_OUT)
    };
    let strike = move |_| {
        if strikes(job, &id).iter().all(|target| job.strike(target)) {
            job.session().say(said);
        }
    };
    Some(view! {
        <li class="entry" class:struck=is_struck>
            <p>{words.about.clone()} ": " {says}</p>
            <div class="actions">
                {paragraph("small soft", when)}
                {correct}
                <button class="plain" aria-label=page::about(action, &words.about) on:click=tap(strike)>{action}</button>
            </div>
        </li>
    })
}

/// Leads to where the answer is given anew.
fn correct_link(job: OpenJob, entry: &Entry, about: &str) -> Option<impl IntoView + use<>> {
    let Content::Answer { question, .. } = &entry.content else {
        return None;
    };
    let name = Task::from_name(question.check.as_str())?.name().to_owned();
    let target = Route::Job(job.id(), Place::Check(name)).link();
    let label = page::about(page::CORRECT, about);
    Some(view! { <a class="plain" href=target aria-label=label>{page::CORRECT}</a> })
}

/// What has to be struck so that an entry no longer counts, or counts again: itself, or every
/// strike of it that stands.
fn strikes(job: OpenJob, target: &Id) -> Vec<Id> {
    let strikes: Vec<Id> = untrack(|| {
        job.with_job(|job| {
            let standing = job.standing().into_iter();
            standing
                .filter(
                    |entry| matches!(&entry.content, Content::Strike(struck) if struck == target),
                )
                .map(|entry| entry.id.clone())
                .collect()
        })
    });
    if strikes.is_empty() {
        vec![target.clone()]
    } else {
        strikes
    }
}
