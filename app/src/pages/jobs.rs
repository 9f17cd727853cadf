//! The first screen: the doors to a first job, or the list of those that are here.

use leptos::prelude::*;
use wording::page;

use super::drawings;
use super::job_list::JobList;
use crate::frame::Heading;
use crate::later::{Later, later};
use crate::parts::live::live;
use crate::parts::plain::{link, paragraph};
use crate::route::{Route, Step};
use crate::session::Session;

/// The examples, as they lie in the repository. The first part of the program has room for them, and
/// the second has none.
pub const EXAMPLES: [&str; 7] = [
    include_str!("../../../demo-data/sound-compressor.json"),
    include_str!("../../../demo-data/leads-not-zeroed.json"),
    include_str!("../../../demo-data/inverter-compressor.json"),
    include_str!("../../../demo-data/open-ptc.json"),
    include_str!("../../../demo-data/leak-to-shell.json"),
    include_str!("../../../demo-data/repaired-freezer.json"),
    include_str!("../../../demo-data/half-finished.json"),
];

/// The first screen.
#[component]
pub fn JobsScreen(
    /// Whether the address that was asked for has no screen.
    is_lost: bool,
) -> impl IntoView {
    let session = Session::here();
    if is_lost {
        session.say(page::NO_SUCH_PAGE);
    }
    let has_any = Memo::new(move |_| {
        session.track_jobs();
        session.store().has_any()
    });
    view! {
        {live(move || if has_any.get() {
            view! {
                <div class="screen">
                    <Heading text=page::YOUR_JOBS/>
                    <JobList/>
                </div>
            }
            .into_any()
        } else {
            view! { <FirstStart/> }.into_any()
        })}
    }
}

/// Where no job is here yet.
#[component]
fn FirstStart() -> impl IntoView {
    view! {
        <div class="screen start">
            <Heading text=page::QUESTION/>
            {paragraph("lead", page::PROMISE)}
            <div class="drawing-board squared">
                <svg class="drawing" viewBox="0 0 320 180" aria-hidden="true" inner_html=drawings::UNPLUGGED></svg>
            </div>
            <Doors/>
        </div>
    }
}

/// The ways to a job.
#[component]
pub fn Doors() -> impl IntoView {
    let is_open = RwSignal::new(false);
    view! {
        <div class="lower">
            {link("button wide", Route::New(Step::Kind).link(), page::START_JOB)}
            {link("door", Route::Practice.link(), page::practice::PRACTISE)}
            <details class="examples" on:toggle=move |_| is_open.set(true)>
                <summary class="door">{page::EXAMPLES}</summary>
                {paragraph("soft", page::EXAMPLES_HOW)}
                {live(move || is_open.get().then(|| later(Later::Examples(&EXAMPLES))))}
            </details>
            {link("door", Route::Import.link(), page::OPEN_FILE)}
            <OfflineLine/>
        </div>
    }
}

/// Says when everything is on the device. Its room is there before, so that nothing moves.
#[component]
fn OfflineLine() -> impl IntoView {
    let session = Session::here();
    let ready = Memo::new(move |_| session.page_status().is_offline_ready);
    view! {
        <p class="offline" class:ready=ready>
            <svg class="drawing" viewBox="0 0 20 20" aria-hidden="true"><path d="m4 11 4 4 8-10"></path></svg>
            <span>{live(move || ready.get().then_some(page::OFFLINE_READY))}</span>
        </p>
    }
}
