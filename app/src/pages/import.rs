//! Opening a file: what is in it, and only then whether to add it.

use jobfile::Limit;
use leptos::prelude::*;
use leptos::task::spawn_local;
use wording::page;

use super::import_preview::{refused, shown};
use crate::device;
use crate::forms::import::Preview;
use crate::frame::Heading;
use crate::parts::live::live;
use crate::parts::plain::paragraph;
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
            show(
                match device::open_file(event, Limit::BackupBytes.most()).await {
                    None => Outcome::NotRead,
                    Some(bytes) => Outcome::Preview(Preview::of_file(&bytes, &session.store())),
                },
            );
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
            {paragraph("lead", page::IMPORT_HOW)}
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
                {live(move || match outcome.get() {
                    Outcome::Nothing => ().into_any(),
                    Outcome::NotRead => refused(page::FILE_NOT_READ.to_owned(), "").into_any(),
                    Outcome::Preview(preview) => shown(session, preview).into_any(),
                })}
            </div>
        </div>
    }
}

/// The identifier of what came of a file.
const OUTCOME: &str = "outcome";
