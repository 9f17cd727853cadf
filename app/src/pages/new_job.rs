//! A new job: three questions, one a screen.

use diagnosis::{Choice, Complaint, Kind, MainsChoice, ToldBy};
use leptos::prelude::*;
use leptos::reactive::computed::ScopedFuture;
use leptos::task::spawn_local;
use wording::page;

use super::choice_list::{ChoiceList, Offer};
use super::drawings;
use crate::device;
use crate::forms::new_job::{MAINS_SETTING, NewJob, mains_after, mains_for};
use crate::frame::Heading;
use crate::later::{NotArrived, fetch_ahead, make_job};
use crate::parts::plain::paragraph;
use crate::route::{Place, Route, Step};
use crate::session::{HEADING, Session};

/// One question of a new job.
#[component]
pub fn NewJobScreen(
    /// The question that is asked for.
    step: Step,
) -> impl IntoView {
    let session = Session::here();
    let begun = session.store().begun();
    if begun.is_none() && step != Step::Kind {
        // "Back" out of a job that was made of these answers: there is nothing to answer here.
        device::replace_hash(&Route::Jobs.address());
        return ().into_any();
    }
    let new_job = begun
        .map(|text| NewJob::from_text(&text))
        .unwrap_or_default();
    fetch_ahead();
    let own_mains = session.setting(MAINS_SETTING);
    let own_mains = own_mains.as_deref().and_then(MainsChoice::from_name);
    let mains = own_mains.map_or_else(|| mains_for(&device::region()), mains_after);
    let question = Question::of(new_job.shown(step), &new_job, mains);
    let step = question.step;
    let is_making = StoredValue::new(false);
    let choose = move |name: &'static str| {
        let new_job = new_job.answered(step, name);
        session.store().keep_begun(Some(&new_job.to_text()));
        match new_job.question_after(step) {
            Some(next) => session.go(&Route::New(next)),
            // A second tap while the first is still at work makes no second job.
            None if is_making.get_value() => {}
            None => {
                is_making.set_value(true);
                make(session, new_job, is_making);
            }
        }
    };
    view! {
        <div class="screen asking">
            <Heading text=question.words above=page::question_of_three(question.number)/>
            {question.how.map(|how| paragraph("soft", how))}
            <div class="lower">
                <ChoiceList
                    offers=question.offers
                    chosen=Signal::derive(move || question.chosen)
                    choose
                    labelled_by=HEADING
                />
                {question.is_last.then(|| paragraph("leave-unplugged", page::LEAVE_UNPLUGGED))}
            </div>
        </div>
    }
    .into_any()
}

/// A question with its answers.
struct Question {
    step: Step,
    number: u8,
    words: &'static str,
    how: Option<&'static str>,
    offers: Vec<Offer>,
    chosen: Option<&'static str>,
    is_last: bool,
}

impl Question {
    fn of(step: Step, so_far: &NewJob, mains: Vec<MainsChoice>) -> Self {
        let (number, words, how, offers, chosen) = match step {
            Step::Kind => (
                1,
                page::WHAT_IS_IT,
                None,
                drawn_kinds(),
                so_far.kind.map(Choice::name),
            ),
            Step::Mains => (
                2,
                page::WHICH_MAINS,
                Some(page::MAINS_HOW),
                mains.into_iter().map(Offer::of).collect(),
                so_far.mains.map(Choice::name),
            ),
            Step::Complaint => (
                3,
                page::WHAT_DID_IT_DO,
                None,
                Offer::all::<Complaint>(),
                so_far.complaint.map(Choice::name),
            ),
            Step::ToldBy => (
                3,
                page::WHO_SAYS_SO,
                Some(page::WITNESS_HOW),
                Offer::all::<ToldBy>(),
                so_far.told_by.map(Choice::name),
            ),
        };
        Self {
            step,
            number,
            words,
            how,
            offers,
            chosen,
            is_last: number == 3,
        }
    }
}

fn drawn_kinds() -> Vec<Offer> {
    Kind::ALL
        .iter()
        .map(|kind| Offer {
            drawing: Some(drawings::machine(*kind)),
            ..Offer::of(*kind)
        })
        .collect()
}

/// Makes the job and goes to it.
fn make(session: Session, new_job: NewJob, is_making: StoredValue<bool>) {
    let making = ScopedFuture::new(make_job(new_job));
    spawn_local(async move {
        match making.await {
            Ok(id) => {
                session.store().keep_begun(None);
                // "Back" leads to the list from here, not to the questions of a job that is made.
                device::replace_hash(&Route::Job(id, Place::Do).address());
            }
            Err(NotArrived) => {
                is_making.try_set_value(false);
                session.say(page::NOT_ARRIVED_HOW);
            }
        }
    });
}
