//! What happened, by one tap each.

use job::ColdEventKind;
use leptos::prelude::*;
use wording::{Words, cold_page as words};

use super::Bench;
use crate::device;
use crate::parts::live::live;
use crate::parts::plain::{button, section_heading};
use crate::parts::when_form::when_form;

/// The events that are common in front, the others behind a line; an earlier time by typing it.
pub(super) fn happened(bench: Bench) -> AnyView {
    let at = RwSignal::new(None::<job::Moment>);
    let row = move |kinds: Vec<ColdEventKind>| {
        let buttons = kinds.into_iter().map(|kind| {
            button("button quiet", kind.words(), move |_| {
                let when = at.get_untracked().unwrap_or_else(device::now);
                if bench.happened(kind, when) {
                    at.set(None);
                    bench.open.session().say(wording::page::NOTED);
                }
            })
        });
        buttons.collect::<Vec<_>>()
    };
    let is_other = |kind: &ColdEventKind| {
        !words::FREQUENT.contains(kind) && *kind != ColdEventKind::SwitchedOn
    };
    let others: Vec<_> = ColdEventKind::ALL.into_iter().filter(is_other).collect();
    // Again only where it may be powered.
    let again = move || {
        let may = bench.closed().is_none();
        may.then(|| view! { <div class="actions">{row(vec![ColdEventKind::SwitchedOn])}</div> })
    };
    view! {
        <section>
            {section_heading(words::HAPPENED)}
            <div class="actions">{row(words::FREQUENT.to_vec())}</div>
            <details class="fold">
                <summary><span>{words::OTHER_EVENTS}</span></summary>
                <div class="actions">{row(others)}</div>
                {live(again)}
                {when_form("happened-at", words::HAPPENED_AT, move |when| {
                    at.set(Some(when));
                    bench.open.session().say(words::THEN_TAP);
                })}
            </details>
        </section>
    }
    .into_any()
}
