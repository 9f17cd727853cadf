//! The screens of one job, which share it.

use job::Id;
use leptos::prelude::*;

use super::check::CheckScreen;
use super::do_next::DoScreen;
use super::kept_as_it_is::{KeptAsItIs, NoSuchJob};
use super::known::KnownScreen;
use super::practice::{TruthScreen, mark};
use crate::cold::{Cold, cold};
use crate::device;
use crate::further::{Further, further};
use crate::open_job::OpenJob;
use crate::parts::live::live;
use crate::route::Place;
use crate::session::Session;
use crate::store::Kept;

/// The screens of one job.
#[component]
pub fn JobScreens(
    /// The identifier under which it is kept.
    id: Id,
) -> impl IntoView {
    let session = Session::here();
    match session.store().load(&id) {
        None => view! { <NoSuchJob/> }.into_any(),
        Some(Kept::Document {
            document, revision, ..
        }) => {
            session.open_job().set(Some(id.clone()));
            // Work that found no room may find some by the time the page is left.
            device::on_leaving(move || session.store().retry());
            let job = OpenJob::new(session, id, document, revision);
            provide_context(job);
            Effect::new(move |_| {
                session.track_jobs();
                job.catch_up();
            });
            view! { <PlaceScreen/> }.into_any()
        }
        Some(kept) => view! { <KeptAsItIs id kept/> }.into_any(),
    }
}

#[component]
fn PlaceScreen() -> impl IntoView {
    let route = Session::here().route();
    let place = Memo::new(move |_| route.with(|route| route.place().cloned()));
    view! {
        {mark(OpenJob::here())}
        {live(move || match place.get() {
            Some(Place::Do) => view! { <DoScreen/> }.into_any(),
            Some(Place::Check(check)) => view! { <CheckScreen check/> }.into_any(),
            Some(Place::Log) => cold(Cold::Log),
            Some(Place::Known) => view! { <KnownScreen/> }.into_any(),
            Some(Place::Record) => further(Further::Record),
            Some(Place::RecordPage) => cold(Cold::Record),
            Some(Place::Truth) => view! { <TruthScreen/> }.into_any(),
            None => ().into_any(),
        })}
    }
}
