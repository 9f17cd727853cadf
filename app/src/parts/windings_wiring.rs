//! The wiring as it was found: six questions, none of which must be answered.

use job::Job;
use leptos::prelude::*;
use wording::windings_page as words;

use super::radio::Radio;
use crate::forms::windings_wiring::{Noted, Offered, noted};
use crate::parts::live::live;
use crate::parts::plain::paragraph;

/// The wiring in a line that opens.
#[component]
pub fn WiringAsFound(
    /// The job as it is.
    #[prop(into)]
    job: Signal<Job>,
    /// An answer by its name.
    note: Callback<(Noted, &'static str)>,
    /// Whether it would help now: then it opens by itself.
    #[prop(into)]
    wanted: Signal<bool>,
) -> impl IntoView {
    // It opens by itself, but only the person closes it.
    let opened = RwSignal::new(false);
    Effect::new(move |_| {
        if wanted.get() {
            opened.set(true);
        }
    });
    let count = move || words::noted(job.with(noted));
    view! {
        <details class="fold" open=opened>
            <summary>
                <span>{words::WIRING}</span>
                <span class="fold-action">{live(count)}</span>
            </summary>
            {paragraph("soft", words::WIRING_HOW)}
            {Noted::ALL.map(|noted| question(noted, job, note)).collect_view()}
        </details>
    }
}

fn question(
    noted: Noted,
    job: Signal<Job>,
    note: Callback<(Noted, &'static str)>,
) -> impl IntoView {
    let chosen = Memo::new(move |_| job.with(|job| noted.chosen(job)));
    let offers = noted.offered().into_iter().map(|Offered { name, words }| {
        view! {
            <Radio
                group=noted.names().1
                text=words
                chosen=Signal::derive(move || chosen.get() == name)
                choose=Callback::new(move |()| note.run((noted, name)))
            />
        }
    });
    view! {
        <fieldset class="radios in-row">
            <legend>{asked(noted)}</legend>
            {offers.collect_view()}
        </fieldset>
    }
}

fn asked(noted: Noted) -> &'static str {
    match noted {
        Noted::Overload => words::OVERLOAD_PIN,
        Noted::StartDevice => words::START_DEVICE_PINS,
        Noted::Line => words::LINE_PIN,
        Noted::Marked(role) => words::marked(role),
    }
}
