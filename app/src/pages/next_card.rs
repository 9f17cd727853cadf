//! What to do next: a step for safety, the check that is worth most, or the verdict.

use diagnosis::{Assessment, CHANGE, Decided, NextCheck, Step, Task, Whole};
use leptos::prelude::*;
use wording::page::weighing as words;
use wording::{Locale, page, step, whole};

use super::suspects::whole_of;
use crate::open_job::OpenJob;
use crate::parts::live::live;
use crate::parts::plain::{link, paragraph};
use crate::route::{Place, Route};

/// What to do next.
#[component]
pub fn NextStep() -> impl IntoView {
    let open = OpenJob::here();
    let locale = open.session().locale();
    let first = move || {
        let first = |known: &Assessment| known.next.first().copied();
        open.assessment().with(first)
    };
    live(move || {
        // What safety asks for doesn't wait for the weighing.
        if let Some(first) = first().filter(|first| first.is_for_safety()) {
            return step_card(open, first, &locale);
        }
        match open.weighing().now() {
            None => paragraph("soft waiting", words::WEIGHING),
            Some(known) => weighed(open, &known, first(), &locale),
        }
    })
}

fn weighed(open: OpenJob, known: &Assessment, first: Option<Step>, locale: &Locale) -> AnyView {
    let Some(whole) = whole_of(known) else {
        return match first {
            Some(first) => step_card(open, first, locale),
            None => paragraph("soft", page::NOTHING_NEXT),
        };
    };
    let next = whole.next.first();
    match whole.verdict.decided {
        Decided::GoOn => view! {
            {next.map(|next| check_card(open, known, next, locale))}
            {verdict(open, words::BEST_SO_FAR, so_far(known, whole))}
        }
        .into_any(),
        Decided::NearlySure => view! {
            {verdict(open, words::ENOUGH, whole::to_do(known, whole))}
            {next.map(|next| another(open, next))}
        }
        .into_any(),
        Decided::NothingWorthwhile => view! {
            {verdict(open, words::AS_FAR_AS_IT_GOES, whole::to_do(known, whole))}
            {next.map(|next| another(open, next))}
        }
        .into_any(),
    }
}

/// What it would be by now, under a heading that says so.
fn so_far(known: &Assessment, weighed: &Whole) -> Vec<String> {
    let behind = whole::to_do(known, weighed).into_iter().skip(1);
    std::iter::once(whole::bet_so_far(weighed))
        .chain(behind)
        .collect()
}

/// The verdict, or what it would be by now: a line in large, the others below.
fn verdict(open: OpenJob, heading: &'static str, lines: Vec<String>) -> AnyView {
    let mut lines = lines.into_iter();
    let first = lines.next();
    let rest: Vec<_> = lines.map(|line| view! { <li>{line}</li> }).collect();
    view! {
        <section class="verdict">
            {paragraph("eyebrow", heading)}
            {first.map(|first| paragraph("verdict-words", first))}
            <ul class="lines">{rest}</ul>
            {link("door", check_link(open, CHANGE), words::SOMETHING_DONE)}
        </section>
    }
    .into_any()
}

/// The check that is worth most; within a check that has begun, its next step.
fn check_card(open: OpenJob, known: &Assessment, next: &NextCheck, locale: &Locale) -> AnyView {
    let begun = known
        .next
        .iter()
        .find(|step| Task::Check(step.check()) == next.task);
    if let Some(begun) = begun.filter(|step| !matches!(step, Step::Do(_))) {
        return step_card(open, *begun, locale);
    }
    let words = whole::next_check(next);
    let why = words.why.join(". ");
    card(
        open,
        next.task.name(),
        words.heading.to_owned(),
        words.tells.to_owned(),
        why,
        words.takes,
    )
}

fn step_card(open: OpenJob, next: Step, locale: &Locale) -> AnyView {
    let words = step(next, locale);
    let check = Task::Check(next.check()).name();
    card(
        open,
        check,
        words.heading,
        words.why.to_owned(),
        String::new(),
        words.takes,
    )
}

fn card(
    open: OpenJob,
    check: &'static str,
    heading: String,
    tells: String,
    why: String,
    takes: String,
) -> AnyView {
    view! {
        <section class="next" aria-labelledby="next-step">
            {paragraph("eyebrow", page::NEXT)}
            <h2 id="next-step">{heading}</h2>
            {paragraph("", tells)}
            {paragraph("soft takes", takes)}
            {link("button wide", check_link(open, check), page::DO_THIS)}
            {(!why.is_empty()).then(|| view! { <p class="small why">{why} "."</p> })}
        </section>
    }
    .into_any()
}

fn another(open: OpenJob, next: &NextCheck) -> AnyView {
    view! {
        <a class="row" href=check_link(open, next.task.name())>
            <span class="title">{words::ANOTHER_CHECK}</span>
            <span class="line">{whole::heading(next.task)}</span>
        </a>
    }
    .into_any()
}

fn check_link(open: OpenJob, check: &str) -> String {
    Route::Job(open.id(), Place::Check(check.to_owned())).link()
}
