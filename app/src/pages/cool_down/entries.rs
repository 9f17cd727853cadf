//! All that was entered since it is on, as a table, each with the way to take it back.

use job::{Content, Entry, Job, Moment};
use leptos::prelude::*;
use wording::{Locale, cold_page as words, page};

use super::Bench;
use crate::parts::plain::{button, section_heading};

/// So many rows stand open; more lie behind a line.
const SHOWN: usize = 12;

/// Temperatures, courses and events, the latest first.
pub(super) fn entries(bench: Bench, locale: &Locale) -> AnyView {
    let began = bench.began.get();
    let rows = bench.open.with_job(|job| {
        let standing = job.standing().into_iter();
        let mut rows: Vec<(Moment, &Entry)> = standing
            .filter_map(|entry| Some((moment_of(&entry.content)?, entry)))
            // Before it is switched on nothing counts, and all of it waits.
            .filter(|(at, _)| began.is_none_or(|began| *at >= began))
            .collect();
        rows.sort_by_key(|(at, _)| std::cmp::Reverse(at.unix_milliseconds()));
        let rows = rows.into_iter().map(|(_, entry)| row(bench, entry, locale));
        rows.collect::<Vec<AnyView>>()
    });
    if rows.is_empty() {
        return ().into_any();
    }
    let mut shown = rows;
    let rest = shown.split_off(shown.len().min(SHOWN));
    view! {
        <section>
            {section_heading(words::ENTRIES)}
            <ul class="tries">{shown}</ul>
            {(!rest.is_empty()).then(|| view! {
                <details class="fold">
                    <summary><span>{words::more(rest.len())}</span></summary>
                    <ul class="tries">{rest}</ul>
                </details>
            })}
        </section>
    }
    .into_any()
}

/// When the first course out of a file begins.
pub(super) fn log_begins(job: &Job) -> Option<Moment> {
    let standing = job.standing().into_iter();
    let logs = standing.filter_map(|entry| match &entry.content {
        Content::Log(log) => log.points().first().map(|(at, _)| *at),
        _ => None,
    });
    logs.min_by_key(|at| at.unix_milliseconds())
}

/// When what an entry tells of was, if that is of a cool-down.
fn moment_of(content: &Content) -> Option<Moment> {
    match content {
        Content::Spot(spot) => Some(spot.at),
        Content::Event(event) => Some(event.at),
        Content::Log(log) => log.points().last().map(|(at, _)| *at),
        _ => None,
    }
}

fn row(bench: Bench, entry: &Entry, locale: &Locale) -> AnyView {
    let said = page::entry(entry, locale).map(|said| [said.about, said.says].join(": "));
    let id = entry.id.clone();
    view! {
        <li>
            <span>{said}</span>
            {button("plain", words::TAKE_BACK, move |_| {
                bench.open.strike(&id);
            })}
        </li>
    }
    .into_any()
}
