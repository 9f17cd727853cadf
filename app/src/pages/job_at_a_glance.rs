//! What a list of jobs says of each beyond its first line, and the job that was deleted last: both
//! read whole jobs, which the first part of the program can't.

use diagnosis::{Machine, Model, assess_checks};
use job::Id;
use leptos::prelude::*;
use wording::{page, title};

use crate::parts::live::live;
use crate::parts::plain::button;
use crate::session::Session;
use crate::store::Kept;

/// What is told of a job once it was read in full.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Glance {
    /// What its machine is called; none where it can't be read.
    pub title: Option<String>,
    /// Where its machine is interrupted, or why it can't be told.
    pub line: String,
}

/// Reads a job in full.
#[must_use]
pub fn glance(session: Session, id: &Id) -> Glance {
    let Some(kept) = session.store().load(id) else {
        return Glance {
            title: None,
            line: String::new(),
        };
    };
    let now = untrack(|| session.now());
    let line = match &kept {
        Kept::Document { document, .. } => {
            match assess_checks(&Model::default(), document.job(), now).first_break() {
                Some((link, state)) => page::interrupted(link, state),
                None => page::NO_BREAK.to_owned(),
            }
        }
        Kept::Newer(_) => page::READ_ONLY.to_owned(),
        Kept::Unreadable { .. } => page::CANNOT_READ.to_owned(),
    };
    Glance {
        title: kept.job().map(|job| title(&Machine::of(job))),
        line,
    }
}

/// The job that was deleted last, to be brought back.
#[component]
pub fn DeletedNotice() -> impl IntoView {
    let session = Session::here();
    let bring_back = move |_| {
        session.set_trouble(session.store().restore().err());
        if session.store().deleted().is_none() {
            session.say(page::BROUGHT_BACK);
        }
        session.jobs_changed();
    };
    view! {
        {live(move || {
        session.track_jobs();
        session.store().deleted().map(|kept| {
            let title = kept.job().map_or_else(
                || page::CANNOT_READ.to_owned(),
                |job| title(&Machine::of(job)),
            );
            view! {
                <p class="deleted">
                    <span>{page::deleted(&title)}</span>
                    {button("plain", page::BRING_BACK, bring_back)}
                </p>
            }
        })
    })}
    }
}
