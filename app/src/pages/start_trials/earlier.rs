//! A try that was made before, entered afterwards: with its rest and its time as typed.

use job::Tried;
use leptos::prelude::*;
use wording::{Words, start_trials as words};

use super::{Bench, number_field};
use crate::device;
use crate::forms::start_trial::earlier;
use crate::parts::plain::{button, paragraph};

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
            {number_field("earlier-rested", words::RESTED_MINUTES, move |text| rested.set(text))}
            {number_field("earlier-ago", words::TRIED_AGO, move |text| ago.set(text))}
            {paragraph("", words::WHAT_HAPPENED)}
            <div class="actions">{outcomes.into_iter().collect_view()}</div>
        </details>
    }
    .into_any()
}
