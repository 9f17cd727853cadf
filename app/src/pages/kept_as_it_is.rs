//! A job that this program can't change: from a newer one, or not to be read at all. It can be
//! looked at as far as possible, saved exactly as it is, and deleted.

use diagnosis::{Machine, Model, assess_checks};
use job::Id;
use leptos::prelude::*;
use wording::{ErrorWords, newer, open_error, page, title};

use super::report_view::report_view;
use crate::parts::plain::{button, link, paragraph};

use crate::device;
use crate::forms::file_name::file_name;
use crate::frame::Heading;
use crate::route::Route;
use crate::session::Session;
use crate::store::Kept;

/// A job that is kept as it is.
#[component]
pub fn KeptAsItIs(
    /// The identifier under which it is kept.
    id: Id,
    /// What is kept there.
    kept: Kept,
) -> impl IntoView {
    let session = Session::here();
    let (words, how, text) = match &kept {
        Kept::Newer(job) => (newer(job.version), None, job.text().to_owned()),
        Kept::Unreadable { text, why } => {
            (open_error(why), Some(page::UNREADABLE_HOW), text.clone())
        }
        // Such a job is opened by its own screens.
        Kept::Document { document, .. } => {
            let nothing = ErrorWords {
                what: String::new(),
                mend: "",
            };
            (nothing, None, jobfile::save(document))
        }
    };
    let ErrorWords { what, mend } = words;
    let heading = kept.job().map_or_else(
        || page::CANNOT_READ.to_owned(),
        |job| title(&Machine::of(job)),
    );
    let name = file_name(kept.job().map_or(id.as_str(), |_| &heading));
    let save = move |_| {
        let said = if device::download(&name, &text) {
            page::SAVED
        } else {
            page::NOT_SAVED
        };
        session.say(said);
    };
    let delete = move |_| {
        session.store().delete(&id);
        session.go(&Route::Jobs);
        session.jobs_changed();
    };
    view! {
        <div class="screen">
            <Heading text=heading/>
            <section class="notice">
                {paragraph("", what)}
                {paragraph("", mend)}
                {how.map(|how| paragraph("", how))}
            </section>
            <div class="actions">
                {button("button", page::SAVE_FILE, save)}
                {button("button quiet", page::DELETE, delete)}
            </div>
            {readable(session, &kept)}
        </div>
    }
}

/// What can be read of it.
fn readable(session: Session, kept: &Kept) -> impl IntoView + use<> {
    let job = kept.job()?;
    let known = assess_checks(&Model::default(), job, untrack(|| session.now()));
    Some(report_view(None, &known, job, &session.locale()))
}

/// At the address of a job that isn't here.
#[component]
pub fn NoSuchJob() -> impl IntoView {
    view! {
        <div class="screen">
            <Heading text=page::NO_SUCH_JOB/>
            {paragraph("lead", page::NO_SUCH_JOB_HOW)}
            <div class="lower">
                {link("button wide", Route::Jobs.link(), page::JOBS)}
                {link("door", Route::Import.link(), page::OPEN_FILE)}
            </div>
        </div>
    }
}
