//! What was done to the machine: readings before it speak of the machine as it was then.

use diagnosis::{CHANGE, Change, Choice};
use leptos::prelude::*;
use wording::page::weighing as words;
use wording::whole::changes;

use super::choice_list::{ChoiceList, Offer};
use crate::frame::Heading;
use crate::open_job::OpenJob;
use crate::parts::plain::paragraph;
use crate::route::{Place, Route};
use crate::session::HEADING;

/// Asks what was done.
#[component]
pub fn ChangeScreen() -> impl IntoView {
    let open = OpenJob::here();
    let offers = changes().map(|(change, words)| Offer::named(change.name(), words));
    let choose = move |name: &'static str| {
        let answer = Change::from_name(name).and_then(Change::answer);
        if answer.is_some_and(|answer| open.answer(CHANGE, name, answer)) {
            let job = Route::Job(open.id(), Place::Do);
            open.session().go_saying(&job, words::DONE_NOTED);
        }
    };
    view! {
        <div class="screen">
            <Heading text=words::WHAT_WAS_DONE/>
            {paragraph("", words::WHAT_DONE_MEANS)}
            <ChoiceList offers=offers.collect() chosen=Signal::derive(|| None) choose labelled_by=HEADING/>
        </div>
    }
}
