//! The second part of the program: everything that opens, judges or changes a job.
//!
//! The first screen and the questions of a new job have to be there within moments of a first
//! visit. They reach nothing that reads a document or draws a conclusion; all of that lies behind
//! the functions here, and the build puts it into a file of its own, which is fetched when it is
//! first needed. Where the program isn't split (tests, and any build without the feature
//! `split`), the same functions are called at once.

use std::pin::Pin;

use job::Id;
use leptos::prelude::*;
use leptos::task::spawn_local;
use wording::page;

use crate::forms::new_job::NewJob;
use crate::further::{Further, further};
use crate::pages::examples::ExampleList;
use crate::pages::job_at_a_glance::{DeletedNotice, Glance, glance};
use crate::pages::job_screens::JobScreens;
use crate::pages::practice::PracticeScreen;
use crate::parts::live::live;
use crate::parts::plain::{paragraph, section_heading};
use crate::session::Session;

/// What the second part shows.
#[derive(Debug, Clone)]
pub enum Later {
    /// The job that was deleted last.
    Deleted,
    /// The examples, by their files.
    Examples(&'static [&'static str]),
    /// The screens of one job.
    Job(Id),
    /// Opening a file.
    Import,
    /// What the person sets once for all jobs.
    Settings,
    /// What is assumed before anything is known.
    Assumptions,
    /// Machines to practise on.
    Practice,
}

/// The second part has not arrived.
#[derive(Debug)]
pub struct NotArrived;

/// Shows something of the second part as soon as that is there.
pub fn later(what: Later) -> AnyView {
    arriving(Box::pin(parts::screen(what)))
}

/// A screen on its way. All of them have one type: else the program would hold what it takes to
/// wait once for each.
pub type Arriving = Pin<Box<dyn Future<Output = Result<AnyView, NotArrived>> + Send>>;

/// Shows a screen of another part as soon as that is there.
pub fn arriving(screen: Arriving) -> AnyView {
    let is_waiting = RwSignal::new(true);
    let screen = Suspend::new(async move {
        let screen = screen.await;
        is_waiting.set(false);
        screen.unwrap_or_else(|NotArrived| view! { <Missing/> }.into_any())
    });
    view! {
        {live(move || is_waiting.get().then(|| paragraph("soft waiting", page::ON_ITS_WAY)))}
        {screen}
    }
    .into_any()
}

/// The same without a word while it is on its way, and none where it doesn't come.
pub fn later_quietly(what: Later) -> impl IntoView {
    Suspend::new(async move { parts::screen(what).await.ok() })
}

/// Fetches the second part before it is needed. Where that fails, the need itself will say so.
pub fn fetch_ahead() {
    spawn_local(async {
        let _ = parts::fetch().await;
    });
}

/// Makes a job of its first answers.
///
/// # Errors
/// [`NotArrived`] where the second part can't be fetched.
pub async fn make_job(new_job: NewJob) -> Result<Id, NotArrived> {
    parts::make_job(new_job).await
}

/// Reads a kept job in full, for the list.
///
/// # Errors
/// [`NotArrived`] where the second part can't be fetched.
pub async fn at_a_glance(session: Session, id: Id) -> Result<Glance, NotArrived> {
    parts::at_a_glance(session, id).await
}

/// Says that the rest of the program didn't come, and how to go on.
#[component]
fn Missing() -> impl IntoView {
    view! {
        <section class="notice" role="alert">
            {section_heading(page::NOT_ARRIVED)}
            {paragraph("", page::NOT_ARRIVED_HOW)}
        </section>
    }
}

/// Where the two parts are cut. The attribute writes a call across them, which needs `unsafe`.
#[cfg(feature = "split")]
#[allow(unsafe_code)]
mod parts {
    use leptos::wasm_split::{SplitLoaderError, wasm_split};

    use super::{AnyView, Glance, Id, Later, NewJob, NotArrived, Session};

    impl From<SplitLoaderError> for NotArrived {
        fn from(_: SplitLoaderError) -> Self {
            Self
        }
    }

    #[wasm_split(later, wasm_split_path = ::leptos::wasm_split, fallible, preload(fetch))]
    pub(super) fn screen(what: Later) -> Result<AnyView, NotArrived> {
        Ok(super::screen_now(what))
    }

    #[wasm_split(later, wasm_split_path = ::leptos::wasm_split, fallible)]
    pub(super) fn make_job(new_job: NewJob) -> Result<Id, NotArrived> {
        Ok(super::make_job_now(&new_job))
    }

    #[wasm_split(later, wasm_split_path = ::leptos::wasm_split, fallible)]
    pub(super) fn at_a_glance(session: Session, id: Id) -> Result<Glance, NotArrived> {
        Ok(super::glance(session, &id))
    }
}

#[cfg(not(feature = "split"))]
mod parts {
    use super::{AnyView, Glance, Id, Later, NewJob, NotArrived, Session};

    pub(super) async fn fetch() -> Result<(), NotArrived> {
        Ok(())
    }

    pub(super) async fn screen(what: Later) -> Result<AnyView, NotArrived> {
        Ok(super::screen_now(what))
    }

    pub(super) async fn make_job(new_job: NewJob) -> Result<Id, NotArrived> {
        Ok(super::make_job_now(&new_job))
    }

    pub(super) async fn at_a_glance(session: Session, id: Id) -> Result<Glance, NotArrived> {
        Ok(super::glance(session, &id))
    }
}

fn screen_now(what: Later) -> AnyView {
    match what {
        Later::Deleted => view! { <DeletedNotice/> }.into_any(),
        Later::Examples(texts) => view! { <ExampleList texts/> }.into_any(),
        Later::Job(id) => view! { <JobScreens id/> }.into_any(),
        Later::Import => further(Further::Import),
        Later::Settings => further(Further::Settings),
        Later::Assumptions => further(Further::Assumptions),
        Later::Practice => view! { <PracticeScreen/> }.into_any(),
    }
}

fn make_job_now(new_job: &NewJob) -> Id {
    // The caller has checked that it is still on the screen, so the session is there.
    Session::here().start_job(new_job.answers())
}
