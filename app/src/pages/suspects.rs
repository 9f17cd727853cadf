//! The suspects: how likely each is, what moved it, and why.

use diagnosis::{Assessment, Suspect, Whole};
use leptos::prelude::*;
use wording::page::weighing as words;
use wording::{Locale, Words, odds, whole};

use crate::open_job::OpenJob;
use crate::parts::live::live;
use crate::parts::odds::strokes;
use crate::parts::plain::{link, paragraph, section_heading};
use crate::route::{Place, Route};
use crate::session::Session;

/// How many suspects a job's first screen names.
const NAMED: usize = 3;
/// What is less likely than that is named only where nothing is likelier.
const WORTH_NAMING: f64 = 0.05;

/// The likeliest few, with the way to all of them.
#[component]
pub fn FewSuspects() -> impl IntoView {
    let open = OpenJob::here();
    live(move || {
        let weighed = open.weighing().now();
        weighed.as_deref().and_then(whole_of).map(|whole| {
            let rows = few(whole).map(short);
            view! {
                <section class="suspects">
                    {section_heading(words::SUSPECTS)}
                    {paragraph("soft small", words::EACH_COULD_BE)}
                    <ul class="suspect-rows">{rows.collect::<Vec<_>>()}</ul>
                    {link("door", Route::Job(open.id(), Place::Known).link(), words::ALL_AND_WHY)}
                </section>
            }
        })
    })
}

/// What the last answer has moved.
#[component]
pub fn Changed() -> impl IntoView {
    let weighing = OpenJob::here().weighing();
    let moved = move || {
        let (now, before) = (weighing.now()?, weighing.before()?);
        Some(whole::moved(whole_of(&before)?, whole_of(&now)?))
    };
    Effect::new(move |_| {
        if let Some(first) = moved().and_then(|all| all.into_iter().next()) {
            let now = odds(first.probability).phrase;
            let how = words::now_and_before(now, first.was);
            Session::here().announce(format!("{}: {how}", first.what));
        }
    });
    live(move || {
        moved().map(|moved| {
            let is_still = moved.is_empty();
            let rows = moved.into_iter().map(|one| {
                let now = odds(one.probability).phrase;
                line(
                    one.what,
                    one.probability,
                    words::now_and_before(now, one.was),
                )
            });
            view! {
                <section class="suspects changed">
                    {section_heading(words::CHANGED)}
                    {is_still.then_some(words::CHANGED_LITTLE)}
                    <ul class="suspect-rows">{rows.collect::<Vec<_>>()}</ul>
                </section>
            }
        })
    })
}

/// The weighing of an assessment, where there is something to weigh.
#[must_use]
pub fn whole_of(known: &Assessment) -> Option<&Whole> {
    known.whole.as_ref()
}

fn few(whole: &Whole) -> impl Iterator<Item = &Suspect> {
    let likely = whole.suspects.iter().enumerate();
    let named = likely
        .take(NAMED)
        .filter(|(place, one)| *place == 0 || one.probability >= WORTH_NAMING)
        .map(|(_, one)| one);
    named.chain([&whole.nothing_wrong])
}

/// A suspect with its odds.
fn short(suspect: &Suspect) -> AnyView {
    let said = odds(suspect.probability);
    let said = format!("{}, {}", said.word, said.phrase);
    line(named(suspect), suspect.probability, said)
}

/// A suspect with its odds, its reasons behind it.
pub fn row(open: Option<OpenJob>, suspect: &Suspect, locale: &Locale) -> AnyView {
    let said = odds(suspect.probability);
    let said = format!("{}: {}, {}", named(suspect), said.word, said.phrase);
    view! {
        <li>
            <details class="suspect">
                <summary><span>{said}</span></summary>
                {reasons(open, suspect, locale)}
            </details>
        </li>
    }
    .into_any()
}

fn named(suspect: &Suspect) -> &'static str {
    suspect.fault.map_or(whole::NOTHING_WRONG, Words::words)
}

fn line(what: &'static str, probability: f64, said: String) -> AnyView {
    view! {
        <li class="suspect-line">
            <strong>{what}</strong>
            <span class="odds">{strokes(probability)} <span class="small">{said}</span></span>
        </li>
    }
    .into_any()
}

/// The readings that speak for a suspect and against it, each leading to where it was made.
pub fn reasons(open: Option<OpenJob>, suspect: &Suspect, locale: &Locale) -> AnyView {
    let reasons = whole::reasons(suspect);
    let none = reasons.is_empty().then_some(words::NO_REASON);
    let rows = reasons.into_iter().map(|reason| {
        let without = words::without(reason.without);
        let said = format!("{}: {}. {without}", reason.what, reason.how);
        let said = match open {
            None => paragraph("", said),
            Some(open) => {
                let to = Route::Job(open.id(), Place::Check(reason.task.name().to_owned()));
                link("door", to.link(), said)
            }
        };
        view! {
            <li>
                {said}
            </li>
        }
    });
    view! {
        <div class="reasons">
            {none}
            <ul class="lines">{rows.collect::<Vec<_>>()}</ul>
            <p class="small soft">{words::IN_NUMBERS} ": " {whole::numbers(suspect, locale)}</p>
        </div>
    }
    .into_any()
}
