//! Opening a file: what is in it, and only then whether to add it.

use job::Id;
use leptos::prelude::*;
use leptos::task::spawn_local;
use wording::{ErrorWords, Words, newer, notice, open_error, page};

use diagnosis::Machine;

use crate::device;
use crate::forms::import::{Already, Incoming, Preview, keep_newer};
use crate::frame::Heading;
use crate::route::{Place, Route};
use crate::session::Session;

/// What came of a file or a text.
#[allow(clippy::large_enum_variant)] // One at a time, on the screen.
#[derive(Clone, PartialEq)]
enum Outcome {
    Nothing,
    NotRead,
    Preview(Preview),
}

/// Opens a file.
#[component]
pub fn ImportScreen() -> impl IntoView {
    let session = Session::here();
    let outcome = RwSignal::new(Outcome::Nothing);
    let show = move |found: Outcome| {
        // The screen may have been left while the file was read.
        if outcome.try_set(found).is_none() {
            device::focus(OUTCOME);
        }
    };
    let choose = move |event: leptos::ev::Event| {
        spawn_local(async move {
            show(match device::open_file(event).await {
                None => Outcome::NotRead,
                Some(file) => Outcome::Preview(Preview::of_file(&file.bytes, &session.store())),
            });
        });
    };
    let pasted = RwSignal::new(String::new());
    let look = move |event: leptos::ev::SubmitEvent| {
        event.prevent_default();
        let preview = pasted.with_untracked(|text| Preview::of_text(text, &session.store()));
        show(Outcome::Preview(preview));
    };
    view! {
        <div class="screen import">
            <Heading text=page::IMPORT/>
            <p class="lead">{page::IMPORT_HOW}</p>
            <label class="button wide file">
                {page::CHOOSE_FILE}
                <input type="file" accept=".json,.txt,application/json,text/plain" on:change=choose/>
            </label>
            <form class="text-entry" on:submit=look novalidate>
                <label for="pasted">{page::PASTE}</label>
                <textarea
                    id="pasted"
                    rows="3"
                    autocomplete="off"
                    spellcheck="false"
                    prop:value=pasted
                    on:input=move |event| pasted.set(event_target_value(&event))
                ></textarea>
                <button class="button quiet">{page::LOOK_INTO}</button>
            </form>
            <div id=OUTCOME tabindex="-1" class="outcome">
                {move || match outcome.get() {
                    Outcome::Nothing => ().into_any(),
                    Outcome::NotRead => refused(page::FILE_NOT_READ.to_owned(), "").into_any(),
                    Outcome::Preview(preview) => shown(session, preview).into_any(),
                }}
            </div>
        </div>
    }
}

/// The identifier of what came of a file.
const OUTCOME: &str = "outcome";

fn shown(session: Session, preview: Preview) -> impl IntoView {
    let title = preview.title();
    match preview {
        Preview::Refused(error) => {
            let ErrorWords { what, mend } = open_error(&error);
            refused(what, mend).into_any()
        }
        Preview::Newer(job) => {
            let ErrorWords { what, mend } = newer(job.version);
            let keep = {
                let job = job.clone();
                move |_| {
                    let id = keep_newer(&job, &session.store(), device::new_id);
                    done(session, id);
                }
            };
            view! {
                <h2>{page::IN_IT}</h2>
                <p class="title">{title}</p>
                <p>{what} " " {mend}</p>
                <button class="button wide" on:click=keep>{page::ADD_READ_ONLY}</button>
            }
            .into_any()
        }
        Preview::Job(incoming) => brought(session, incoming, title).into_any(),
    }
}

fn brought(session: Session, incoming: Incoming, title: Option<String>) -> impl IntoView {
    let locale = session.locale();
    let job = incoming.document.job();
    let kind = Machine::of(job).kind.map(Words::words);
    let count = page::entries(job.entries().len());
    let notices = incoming.notices.iter().map(|found| notice(found, &locale));
    let notices: Vec<_> = notices.map(|line| view! { <li>{line}</li> }).collect();
    let (said, button) = match incoming.already {
        Already::Nothing => (None, Some(page::ADD_JOB.to_owned())),
        Already::Closed | Already::Full => (
            Some(page::BESIDE.to_owned()),
            Some(page::ADD_JOB.to_owned()),
        ),
        Already::Job { new_entries: 0, .. } => (Some(page::NOTHING_NEW.to_owned()), None),
        Already::Job { new_entries, .. } => (
            Some(page::new_entries(new_entries)),
            Some(page::add_entries(new_entries)),
        ),
    };
    let clashing = match incoming.already {
        Already::Job { clashing, .. } if clashing > 0 => Some(page::clashing_entries(clashing)),
        _ => None,
    };
    let here = job.id().clone();
    let add = move |_| {
        let id = incoming.add(&session.store(), device::new_id);
        done(session, id);
    };
    view! {
        <h2>{page::IN_IT}</h2>
        <p class="title">{title}</p>
        <p>{kind.map(|kind| [kind, ", "].concat())} {count}</p>
        {said.map(|said| view! { <p>{said}</p> })}
        {clashing.map(|said| view! { <p>{said}</p> })}
        {(!notices.is_empty()).then(|| view! {
            <h3>{page::NOTICES}</h3>
            <ul class="lines">{notices}</ul>
        })}
        {match button {
            Some(words) => view! { <button class="button wide" on:click=add>{words}</button> }.into_any(),
            None => view! {
                <a class="button wide" href=Route::Job(here, Place::Do).link()>{page::OPEN_JOB}</a>
            }
            .into_any(),
        }}
    }
}

fn done(session: Session, id: Id) {
    session.set_trouble(session.store().trouble());
    session.jobs_changed();
    session.go(&Route::Job(id, Place::Do));
}

fn refused(what: String, mend: &'static str) -> impl IntoView {
    view! {
        <div class="notice">
            <h2>{page::NOT_OPENED}</h2>
            <p>{what}</p>
            <p>{mend}</p>
        </div>
    }
}
