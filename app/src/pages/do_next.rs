//! What to do next: the Path with the break in it, one check, and the way to all others.

use diagnosis::{Assessment, Basis, Level, Link, LinkState, Task, Whole};
use job::{Job, Origin};
use leptos::prelude::*;
use wording::page::weighing;
use wording::{Locale, Words, caution, cold_page, finding, page, title, whole};

use super::next_card::NextStep;
use super::suspects::{FewSuspects, whole_of};
use crate::parts::plain::{link, paragraph, section_heading};

use crate::cold::Cold;
use crate::frame::Heading;
use crate::open_job::OpenJob;
use crate::parts::caution::{Caution, shape};
use crate::parts::live::{live, tap};
use crate::parts::path_line::{Links, PathLine};
use crate::route::{Place, Route};

/// The first screen of a job.
#[component]
pub fn DoScreen() -> impl IntoView {
    let job = OpenJob::here();
    let assessment = job.assessment();
    let heading = Signal::derive(move || assessment.with(|known| title(&known.machine)));
    let links = Signal::derive(move || path(job));
    let is_invented = job.origin() == Origin::Invented;
    view! {
        <div class="screen do">
            {is_invented.then(|| paragraph("eyebrow", page::INVENTED))}
            <Heading text=heading/>
            <PathLine links/>
            <Cautions/>
            <NextStep/>
            <FewSuspects/>
            {proving(job)}
            <Found/>
            <Others/>
            <UndoRedo/>
        </div>
    }
}

/// The Path as the checks left it, with the link where it most likely breaks by everything weighed.
#[must_use]
pub fn path(open: OpenJob) -> Links {
    let mut links = open.assessment().with(|known| known.path.clone());
    let known = open.weighing().now();
    let weighed = known.as_deref().and_then(whole_of);
    // Whatever breaks it, the cabinet doesn't hold its cold: that is news only where nothing is in doubt.
    let is_told = links.iter().any(|(_, state)| state.interrupts());
    let likeliest = weighed
        .and_then(Whole::likeliest_break)
        .filter(|link| !(is_told && *link == Link::Hold));
    for (link, state) in &mut links {
        if likeliest == Some(*link) && !state.interrupts() {
            *state = LinkState::Doubtful(Basis::Weighed);
        }
    }
    links
}

/// Stops in full; everything else in one line that opens.
#[component]
fn Cautions() -> impl IntoView {
    let assessment = OpenJob::here().assessment();
    let cautions = Memo::new(move |_| assessment.with(|known| known.cautions.clone()));
    view! {
        {live(move || {
        let (stops, cares): (Vec<_>, Vec<_>) = cautions
            .get()
            .into_iter()
            .partition(|caution| caution.level() == Level::Stop);
        let stops = stops
            .into_iter()
            .map(|caution| view! { <Caution caution/> });
        view! {
            <div class="cautions">
                {stops.collect::<Vec<_>>()}
                {(!cares.is_empty()).then(|| folded(cares))}
            </div>
        }
    })}
    }
}

/// What to mind, in a few words each, which open to the whole.
fn folded(cares: Vec<diagnosis::Caution>) -> impl IntoView {
    let headings: Vec<&str> = cares.iter().map(|which| caution(*which).heading).collect();
    let whole = cares.iter().map(|which| {
        let words = caution(*which);
        view! { <p><strong>{page::sentence(words.heading)}</strong> " " {words.text}</p> }
    });
    view! {
        <details class="caution care folded all">
            <summary>
                {shape(Level::Care)}
                <span class="caution-heading">
                    <strong>{Level::Care.words()} ": "</strong>
                    {headings.join("; ")}
                </span>
            </summary>
            {whole.collect::<Vec<_>>()}
        </details>
    }
}

/// Leads to what proves that it gets cold, and what it uses.
fn proving(open: OpenJob) -> impl IntoView {
    let door = |name: &str, text: &'static str| {
        let to = Route::Job(open.id(), Place::Check(name.to_owned()));
        link("door", to.link(), text)
    };
    view! {
        {door(Cold::COOL_DOWN, cold_page::TITLE)}
        {door(Cold::ENERGY, wording::energy::TITLE)}
    }
}

/// What was found so far, if anything.
#[component]
fn Found() -> impl IntoView {
    let job = OpenJob::here();
    let locale = job.session().locale();
    let found = move || job.assessment().with(|known| findings(known, &locale));
    view! {
        {live(move || {
        let found = found();
        (!found.is_empty()).then(|| {
            let lines = found.into_iter().map(|line| view! { <li>{line}</li> });
            view! {
                <section class="found">
                    {section_heading(page::FOUND)}
                    <ul class="lines">{lines.collect::<Vec<_>>()}</ul>
                </section>
            }
        })
    })}
    }
}

fn findings(known: &Assessment, locale: &Locale) -> Vec<String> {
    let findings = known.findings.iter();
    findings.map(|found| finding(found, locale)).collect()
}

/// All tasks: those that can be done now in the order of their worth, then those that were done;
/// behind a line of their own those that have to wait, each with why.
#[component]
fn Others() -> impl IntoView {
    let open = OpenJob::here();
    let rows = |open, tasks: Vec<(Task, String)>| {
        let rows = tasks
            .into_iter()
            .map(move |(task, line)| row(open, task, line));
        rows.collect::<Vec<_>>()
    };
    let lists = move || {
        let known = open.weighing().now();
        let whole = known.as_deref().and_then(whole_of);
        let waiting = whole.map_or_else(Vec::new, waiting);
        let now = open.with_job(|job| possible(whole, job));
        let count = waiting.len();
        view! {
            <ul class="rows">{rows(open, now)}</ul>
            {(count > 0).then(|| view! {
                <details>
                    <summary class="door">{weighing::have_to_wait(count)}</summary>
                    <ul class="rows">{rows(open, waiting)}</ul>
                </details>
            })}
        }
    };
    view! {
        <details class="others">
            <summary class="door">{page::SOMETHING_ELSE}</summary>
            {live(lists)}
        </details>
    }
}

fn possible(whole: Option<&Whole>, job: &Job) -> Vec<(Task, String)> {
    let next = whole.map_or(&[][..], |whole| &whole.next);
    let next = next
        .iter()
        .map(|one| (one.task, whole::next_check(one).takes));
    let mut possible: Vec<_> = next.collect();
    let is_told = |task: Task| match whole {
        // Without a weighing: the unplugged checks.
        None => !matches!(task, Task::Check(_)),
        Some(whole) => {
            whole.next.iter().any(|one| one.task == task)
                || whole.withheld.iter().any(|one| one.task == task)
        }
    };
    let others = Task::all().filter(|task| !is_told(*task));
    possible.extend(others.map(|task| (task, state(task, job).to_owned())));
    possible
}

fn waiting(whole: &Whole) -> Vec<(Task, String)> {
    let all = whole.withheld.iter();
    all.map(|one| (one.task, whole::not_now(&one.why)))
        .collect()
}

fn state(task: Task, job: &Job) -> &'static str {
    let answered = job.answered();
    let mut names = answered.iter().map(|question| question.check.as_str());
    if names.any(|name| name == task.name()) {
        page::HAS_ANSWERS
    } else {
        page::NO_ANSWERS
    }
}

fn row(open: OpenJob, task: Task, line: String) -> impl IntoView {
    let target = Route::Job(open.id(), Place::Check(task.name().to_owned()));
    view! {
        <li>
            <a class="row" href=target.link()>
                <span class="title">{whole::name(task)}</span>
                <span class="line">{line}</span>
            </a>
        </li>
    }
}

#[component]
fn UndoRedo() -> impl IntoView {
    let job = OpenJob::here();
    view! {
        <div class="actions undo">
            <button class="plain" disabled=move || !job.can_undo() on:click=tap(move |_| job.undo())>{page::UNDO}</button>
            <button class="plain" disabled=move || !job.can_redo() on:click=tap(move |_| job.redo())>{page::REDO}</button>
        </div>
    }
}
