//! What is in a file that was chosen, and what it would change, before anything is added.

use diagnosis::{Machine, Model, assess_checks};
use job::{Content, Id, Job};
use jobfile::Notice;
use leptos::prelude::*;
use wording::page::keeping;
use wording::{ErrorWords, Locale, Words, newer, notice, open_error, page};

use crate::device;
use crate::forms::import::{Already, Changes, Incoming, Preview, keep_newer};
use crate::forms::import_backup::{IncomingBackup, Tally};
use crate::parts::plain::{button, link, paragraph, section_heading};
use crate::route::{Place, Route};
use crate::session::Session;

/// Shows a preview, with the button that takes it in.
pub(super) fn shown(session: Session, preview: Preview) -> impl IntoView {
    let title = preview.title();
    match preview {
        Preview::Refused(error) => {
            let ErrorWords { what, mend } = open_error(&error);
            refused(what, mend).into_any()
        }
        Preview::Newer(job) => {
            let ErrorWords { what, mend } = newer(job.version);
            let keep = {
                let job = job.clone();
                move |_| {
                    let id = keep_newer(&job, &session.store(), device::new_id);
                    done(session, id);
                }
            };
            view! {
                {section_heading(page::IN_IT)}
                {title.map(|title| paragraph("title", title))}
                <p>{what} " " {mend}</p>
                {button("button wide", page::ADD_READ_ONLY, keep)}
            }
            .into_any()
        }
        Preview::Backup(backup) => backed_up(session, backup).into_any(),
        Preview::Job(incoming) => brought(session, incoming, title).into_any(),
    }
}

fn brought(session: Session, incoming: Incoming, title: Option<String>) -> impl IntoView {
    let locale = session.locale();
    let job = incoming.document.job();
    let kind = Machine::of(job).kind.map(Words::words);
    let count = page::entries(job.entries().len());
    let changes = incoming
        .changes
        .as_ref()
        .map(|changes| changed(session, changes));
    let notices = notices(&incoming.notices, &locale);
    let (said, offered) = match incoming.already {
        Already::Nothing => (None, Some(page::ADD_JOB.to_owned())),
        Already::Closed | Already::Full => (
            Some(page::BESIDE.to_owned()),
            Some(page::ADD_JOB.to_owned()),
        ),
        Already::Job { new_entries: 0, .. } => (Some(page::NOTHING_NEW.to_owned()), None),
        Already::Job { new_entries, .. } => (
            Some(page::new_entries(new_entries)),
            Some(page::add_entries(new_entries)),
        ),
    };
    let clashing = match incoming.already {
        Already::Job { clashing, .. } if clashing > 0 => Some(page::clashing_entries(clashing)),
        _ => None,
    };
    let origin = job.origin();
    let here = job.id().clone();
    let add = move |_| {
        let id = incoming.add(&session.store(), device::new_id);
        done(session, id);
    };
    view! {
        {section_heading(page::IN_IT)}
        {page::not_of_a_machine(origin).map(|mark| paragraph("eyebrow", mark))}
        {title.map(|title| paragraph("title", title))}
        <p>{kind.map(|kind| [kind, ", "].concat())} {count}</p>
        {said.map(|said| paragraph("", said))}
        {clashing.map(|said| paragraph("", said))}
        {changes}
        {notices}
        {match offered {
            Some(words) => button("button wide", words, add),
            None => link("button wide", Route::Job(here, Place::Do).link(), page::OPEN_JOB),
        }}
    }
}

/// The entries that a file adds, and what is found then and wasn't before.
fn changed(session: Session, changes: &Changes) -> impl IntoView + use<> {
    let locale = session.locale();
    let told: Vec<String> = changes
        .entries
        .iter()
        .filter_map(|entry| page::entry(entry, &locale))
        .map(|entry| [entry.about.as_str(), ": ", &entry.says].concat())
        .collect();
    let is_strike = |entry: &&job::Entry| matches!(entry.content, Content::Strike(_));
    let strikes = changes.entries.iter().filter(is_strike).count();
    let (before, after) = (
        findings(session, &changes.before),
        findings(session, &changes.after),
    );
    let differing = |heading: &'static str, here: &[String], there: &[String]| {
        let lines: Vec<String> = here
            .iter()
            .filter(|line| !there.contains(line))
            .map(|line| [heading, ": ", line].concat())
            .collect();
        lines
    };
    let lines = told
        .into_iter()
        .chain((strikes > 0).then(|| keeping::strikes(strikes)))
        .chain(differing(keeping::FOUND_THEN, &after, &before))
        .chain(differing(keeping::NO_LONGER_FOUND, &before, &after));
    let lines: Vec<_> = lines.map(|line| view! { <li>{line}</li> }).collect();
    (!lines.is_empty()).then(|| {
        view! {
            <h3>{keeping::CHANGES}</h3>
            <ul class="lines">{lines}</ul>
        }
    })
}

fn findings(session: Session, job: &Job) -> Vec<String> {
    let now = untrack(|| session.now());
    let known = assess_checks(&Model::default(), job, now);
    let findings = known.findings.iter();
    findings
        .map(|found| wording::finding(found, &session.locale()))
        .collect()
}

fn notices(notices: &[Notice], locale: &Locale) -> impl IntoView + use<> {
    let lines = notices.iter().map(|found| notice(found, locale));
    let lines: Vec<_> = lines.map(|line| view! { <li>{line}</li> }).collect();
    (!lines.is_empty()).then(|| {
        view! {
            <h3>{page::NOTICES}</h3>
            <ul class="lines">{lines}</ul>
        }
    })
}

/// What a back-up holds, and the button that takes it in.
fn backed_up(session: Session, backup: IncomingBackup) -> impl IntoView {
    let made = session.locale().moment(backup.made);
    let Tally {
        new,
        growing,
        same,
        unread,
    } = backup.tally();
    let lines = keeping::backup_brings(new, growing, same, unread).into_iter();
    let brings_any = new + growing + unread > 0;
    let heading = keeping::backup_of(backup.jobs.len(), &made);
    let add = move |_| {
        backup.add(&session.store(), device::new_id);
        session.set_trouble(session.store().trouble());
        session.jobs_changed();
        session.go_saying(&Route::Jobs, keeping::TAKEN_IN);
    };
    view! {
        {section_heading(page::IN_IT)}
        {paragraph("title", heading)}
        <ul class="lines">{lines.map(|line| view! { <li>{line}</li> }).collect::<Vec<_>>()}</ul>
        {if brings_any {
            button("button wide", keeping::TAKE_ALL_IN, add)
        } else {
            link("button wide", Route::Jobs.link(), page::YOUR_JOBS)
        }}
    }
}

fn done(session: Session, id: Id) {
    session.set_trouble(session.store().trouble());
    session.jobs_changed();
    session.go(&Route::Job(id, Place::Do));
}

/// Says why a file can't be opened, and the way out.
pub(super) fn refused(what: String, mend: &'static str) -> impl IntoView {
    view! {
        <div class="notice">
            {section_heading(page::NOT_OPENED)}
            {paragraph("", what)}
            {paragraph("", mend)}
        </div>
    }
}
