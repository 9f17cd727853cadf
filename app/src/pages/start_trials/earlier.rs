//! A try that was made before, entered afterwards: with its rest and its time as typed.

use job::Tried;
use leptos::prelude::*;
use wording::{Words, start_trials as words};

use super::Bench;
use crate::device;
use crate::forms::start_trial::earlier;
use crate::parts::plain::{button, paragraph, short_field};

/// The fields, and a button for each outcome.
pub(super) fn earlier_try(bench: Bench) -> AnyView {
    let rested = RwSignal::new(String::new());
    let ago = RwSignal::new(String::new());
    let enter = move |outcome: Tried| {
        let (rested, ago) = (rested.get_untracked(), ago.get_untracked());
        let set_up = bench.set_up.get_untracked();
        bench.enter(earlier(set_up, (&rested, &ago), outcome, device::now()));
    };
    let outcomes =
        Tried::ALL.map(|outcome| button("button quiet", outcome.words(), move |_| enter(outcome)));
    view! {
        <details class="fold">
            <summary><span>{words::EARLIER}</span></summary>
            {short_field("earlier-rested", words::RESTED_MINUTES, ("decimal", "12"), move |text| rested.set(text))}
            {short_field("earlier-ago", words::TRIED_AGO, ("decimal", "12"), move |text| ago.set(text))}
            {paragraph("", words::WHAT_HAPPENED)}
            <div class="actions">{outcomes.into_iter().collect_view()}</div>
        </details>
    }
    .into_any()
}
