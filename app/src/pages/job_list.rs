//! The jobs kept on this device, and the examples.

use diagnosis::{Machine, Model, assess};
use job::{Id, Job, Moment, Origin};
use jobfile::{Opened, open};
use leptos::prelude::*;
use wording::{Words, page, title};

use super::jobs::Doors;
use crate::route::{Place, Route};
use crate::session::Session;
use crate::store::{Kept, Revision};

/// The jobs, the one that was deleted last, and the doors to more.
#[component]
pub fn JobList() -> impl IntoView {
    let session = Session::here();
    let rows = Memo::new(move |_| {
        session.track_jobs();
        rows(session)
    });
    view! {
        <ul class="rows">
            {move || rows.get().into_iter().map(Row::view).collect::<Vec<_>>()}
        </ul>
        <DeletedNotice/>
        <Doors/>
    }
}

/// One job in the list.
#[derive(Debug, Clone, PartialEq)]
struct Row {
    id: Id,
    title: String,
    lines: Vec<String>,
    touched: Option<Moment>,
}

/// The jobs, the one touched last on top; what can't be read stands at the end.
fn rows(session: Session) -> Vec<Row> {
    let mut rows: Vec<Row> = session
        .store()
        .list()
        .into_iter()
        .map(|(id, kept)| Row::of(id, &kept, session))
        .collect();
    rows.sort_by_key(|row| std::cmp::Reverse(row.touched));
    rows
}

impl Row {
    fn of(id: Id, kept: &Kept, session: Session) -> Self {
        let mark = match kept {
            Kept::Document { .. } => None,
            Kept::Newer(_) => Some(page::READ_ONLY),
            Kept::Unreadable { .. } => Some(page::CANNOT_READ),
        };
        let Some(job) = kept.job() else {
            return Self {
                title: id.to_string(),
                lines: mark.map(str::to_owned).into_iter().collect(),
                touched: None,
                id,
            };
        };
        let touched = last_touched(job);
        let told = session.locale().moment(touched);
        let machine = Machine::of(job);
        let invented = (job.origin() == Origin::Invented).then_some(page::INVENTED);
        // The kind is in the title already where the machine has no name.
        let kind = machine.kind.filter(|_| machine.name.is_some());
        let about: Vec<&str> = [invented, kind.map(Words::words), mark]
            .into_iter()
            .flatten()
            .collect();
        let lines = [
            where_interrupted(job, session),
            about.join(", "),
            page::touched(&told),
        ];
        Self {
            id,
            title: title(&machine),
            lines: lines.into_iter().filter(|line| !line.is_empty()).collect(),
            touched: Some(touched),
        }
    }

    fn view(self) -> impl IntoView {
        let lines = self
            .lines
            .into_iter()
            .map(|line| view! { <span class="line">{line}</span> });
        view! {
            <li>
                <a class="row" href=Route::Job(self.id, Place::Do).link()>
                    <span class="title">{self.title}</span>
                    {lines.collect::<Vec<_>>()}
                </a>
            </li>
        }
    }
}

fn where_interrupted(job: &Job, session: Session) -> String {
    let now = untrack(|| session.now());
    match assess(&Model::default(), job, now).first_break() {
        Some((link, state)) => page::interrupted(link, state),
        None => page::NO_BREAK.to_owned(),
    }
}

fn last_touched(job: &Job) -> Moment {
    let last = job.entries().iter().map(|entry| entry.at).max();
    last.unwrap_or(job.created())
}

#[component]
fn DeletedNotice() -> impl IntoView {
    let session = Session::here();
    let bring_back = move |_| {
        session.set_trouble(session.store().restore().err());
        if session.store().deleted().is_none() {
            session.say(page::BROUGHT_BACK);
        }
        session.jobs_changed();
    };
    view! {
        {move || {
        session.track_jobs();
        session.store().deleted().map(|kept| {
            let title = kept.job().map_or_else(
                || page::CANNOT_READ.to_owned(),
                |job| title(&Machine::of(job)),
            );
            view! {
                <p class="deleted">
                    <span>{page::deleted(&title)}</span>
                    <button class="plain" on:click=bring_back>{page::BRING_BACK}</button>
                </p>
            }
        })
    }}
    }
}

/// The examples, as they lie in the repository.
const EXAMPLES: [&str; 3] = [
    include_str!("../../../demo-data/sound-compressor.json"),
    include_str!("../../../demo-data/leads-not-zeroed.json"),
    include_str!("../../../demo-data/inverter-compressor.json"),
];

/// The examples by the names of their machines.
#[component]
pub fn ExampleList() -> impl IntoView {
    let session = Session::here();
    let rows = EXAMPLES.into_iter().filter_map(|text| match open(text) {
        Ok(Opened::Document { document, .. }) => {
            let name = title(&Machine::of(document.job()));
            let look = move |_| {
                let id = document.job().id();
                if session.store().load(id).is_none() {
                    session.store().save(id, &document, Revision::default());
                    session.jobs_changed();
                }
                session.go(&Route::Job(id.clone(), Place::Do));
            };
            Some(view! { <li><button class="door" on:click=look>{name}</button></li> })
        }
        // A test opens them all.
        _ => None,
    });
    view! { <ul>{rows.collect::<Vec<_>>()}</ul> }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_example_opens_and_says_that_it_is_invented() {
        for text in EXAMPLES {
            let Ok(Opened::Document { document, notices }) = open(text) else {
                panic!("an example can't be opened");
            };
            assert_eq!(document.job().origin(), Origin::Invented);
            assert!(notices.is_empty());
        }
    }
}
