//! The record: what is proved, what was looked at, notes, and the ways to keep the job and to pass it on.

use diagnosis::{Check, Choice, Machine};
use job::{Answer, Content, Text};
use leptos::prelude::*;
use wording::page::keeping;
use wording::{Words, page, record as words, report, title};

use super::proof::ProofSection;
use super::send::Send;
use super::text_entry::TextEntry;
use crate::frame::Heading;
use crate::open_job::OpenJob;
use crate::parts::live::{live, tap};
use crate::parts::plain::{button, paragraph, section_heading};
use crate::route::{Place, Route};

/// The record of a job.
#[component]
pub fn RecordScreen() -> impl IntoView {
    view! {
        <div class="screen record">
            <Heading text=page::RECORD/>
            <ProofSection/>
            <ToPage/>
            <Send/>
            <Tested/>
            <Notes/>
            <Rename/>
            <PutAway/>
            <Copy/>
            <Delete/>
        </div>
    }
}

/// The way to the page that goes with the machine.
#[component]
fn ToPage() -> impl IntoView {
    let job = OpenJob::here();
    let route = Route::Job(job.id(), Place::RecordPage);
    view! {
        <section>
            {section_heading(words::PAGE)}
            {paragraph("", words::PAGE_HOW)}
            <a class="button" href=route.link()>{words::TO_PAGE}</a>
        </section>
    }
}

/// Each check with when it was last answered, and what all of it can't show.
#[component]
fn Tested() -> impl IntoView {
    let job = OpenJob::here();
    let locale = job.session().locale();
    let last = move |check: Check| {
        job.with_job(|job| {
            let standing = job.standing().into_iter();
            let answers = standing.filter(|entry| {
                matches!(&entry.content, Content::Answer { question, .. }
                    if question.check.as_str() == check.name())
            });
            answers.map(|entry| entry.at).max()
        })
    };
    let row = move |check: Check| {
        let when =
            move || last(check).map_or(page::NOT_TESTED.to_owned(), |when| locale.moment(when));
        view! { <li>{check.words()} ": " <span class="soft">{live(when)}</span></li> }
    };
    let limits = move || {
        let report = job
            .assessment()
            .with(|known| job.with_job(|job| report(known, job, &locale)));
        report.sections.into_iter().next_back().map(|section| {
            view! {
                <h3>{section.heading}</h3>
                {section.lines.into_iter().map(|line| paragraph("", line)).collect::<Vec<_>>()}
            }
        })
    };
    view! {
        <section>
            {section_heading(page::TESTED)}
            <ul class="lines">{Check::ALL.iter().map(|check| row(*check)).collect::<Vec<_>>()}</ul>
            {live(limits)}
        </section>
    }
}

#[component]
fn Notes() -> impl IntoView {
    let job = OpenJob::here();
    let locale = job.session().locale();
    let notes = move || {
        job.with_job(|job| {
            let standing = job.standing().into_iter();
            standing
                .filter_map(|entry| match &entry.content {
                    Content::Note(text) => {
                        Some((locale.moment(entry.at), text.as_str().to_owned()))
                    }
                    _ => None,
                })
                .map(|(when, text)| {
                    view! {
                        <li class="note">
                            {paragraph("small soft", when)}
                            {paragraph("own-words", text)}
                        </li>
                    }
                })
                .collect::<Vec<_>>()
        })
    };
    let take = move |text: Text| {
        let taken = job.note(text);
        if taken {
            job.clear_draft(NOTE.0, NOTE.1);
            job.session().say(page::NOTE_ADDED);
        }
        taken
    };
    view! {
        <section>
            {section_heading(page::NOTES)}
            <ul>{live(notes)}</ul>
            <TextEntry
                id="note"
                draft=NOTE
                label=page::NEW_NOTE
                hint=page::NEW_NOTE_HINT
                button=page::ADD_NOTE
                is_long=true
                empties=true
                take
            />
        </section>
    }
}

/// Where the draft of a note is kept.
const NOTE: (&str, &str) = ("record", "note");

#[component]
fn Rename() -> impl IntoView {
    let job = OpenJob::here();
    let (check, item) = Machine::NAME;
    let name = job
        .assessment()
        .with_untracked(|known| title(&known.machine));
    let take = move |text: Text| {
        let taken = job.answer(check, item, Answer::Text(text));
        if taken {
            job.session().say(page::RENAMED);
        }
        taken
    };
    view! {
        <section>
            <TextEntry
                id="name"
                draft=Machine::NAME
                label=page::MACHINE_NAME
                hint=page::MACHINE_NAME_HINT
                button=page::RENAME
                initial=name
                take
            />
        </section>
    }
}

#[component]
fn Delete() -> impl IntoView {
    let job = OpenJob::here();
    let delete = move |_| {
        let session = job.session();
        session.store().delete(&job.id());
        session.go(&Route::Jobs);
        session.jobs_changed();
    };
    view! {
        <section>
            {paragraph("", page::DELETE_HOW)}
            {button("button quiet", page::DELETE, delete)}
        </section>
    }
}

#[component]
fn PutAway() -> impl IntoView {
    let job = OpenJob::here();
    let session = job.session();
    let is_away = RwSignal::new(session.store().is_away(&job.id()));
    let change = move |_| {
        let away = !is_away.get_untracked();
        session.store().put_away(&job.id(), away);
        is_away.set(away);
        session.jobs_changed();
        session.say(if away {
            keeping::IS_AWAY
        } else {
            keeping::IS_BACK
        });
    };
    let button = move || {
        if is_away.get() {
            keeping::TAKE_BACK
        } else {
            keeping::PUT_AWAY
        }
    };
    view! {
        <section>
            {section_heading(page::THIS_JOB)}
            {paragraph("", keeping::PUT_AWAY_HOW)}
            <button class="button quiet" on:click=tap(change)>{live(button)}</button>
        </section>
    }
}

#[component]
fn Copy() -> impl IntoView {
    let job = OpenJob::here();
    let copy = move |_| {
        let session = job.session();
        let id = job.copied();
        session.go(&Route::Job(id, Place::Record));
        session.jobs_changed();
    };
    view! {
        <section>
            {paragraph("", keeping::DUPLICATE_HOW)}
            {button("button quiet", keeping::DUPLICATE, copy)}
        </section>
    }
}
