//! What machine it is: each question with the answer that counts now, and words off the plate.

use diagnosis::{Asked, Build, Choice, Complaint, Kind, Machine, MainsChoice, ToldBy, answered};
use job::{Answer, Name, Text};
use leptos::prelude::*;
use wording::page::weighing;
use wording::{Words, page};

use super::choice_list::{ChoiceList, Offer};
use super::text_entry::TextEntry;
use crate::forms::new_job::needs_witness;
use crate::frame::Heading;
use crate::open_job::OpenJob;
use crate::parts::live::live;
use crate::parts::plain::{link, paragraph};
use crate::route::{Place, Route};

/// Asks what machine it is.
#[component]
pub fn MachineScreen() -> impl IntoView {
    let job = OpenJob::here();
    let has_witness = Memo::new(move |_| needs_witness(job.with_job(answered::<Complaint>)));
    view! {
        <div class="screen">
            <Heading text=page::MACHINE/>
            {ask::<Kind>(job, "ask-kind", page::WHAT_IS_IT)}
            {ask::<MainsChoice>(job, "ask-mains", page::WHICH_MAINS)}
            {ask::<Complaint>(job, "ask-complaint", page::WHAT_DID_IT_DO)}
            {live(move || has_witness.get().then(|| ask::<ToldBy>(job, "ask-told-by", page::WHO_SAYS_SO)))}
            {ask::<Build>(job, "ask-build", weighing::WHICH_BUILD)}
            {paragraph("soft", weighing::BUILD_HINT)}
            {plate(job)}
            {link("button wide", Route::Job(job.id(), Place::Do).link(), page::BACK_TO_JOB)}
        </div>
    }
}

/// The name of the choice that counts now. Tracked.
#[must_use]
pub fn chosen<C: Asked>(job: OpenJob) -> Option<&'static str> {
    job.with_job(answered::<C>).map(Choice::name)
}

/// Enters a choice by its name; the one that counts already is not entered again. False where
/// it was not taken.
pub fn enter_choice<C: Asked>(job: OpenJob, name: &'static str) -> bool {
    if untrack(|| chosen::<C>(job)) == Some(name) {
        return true;
    }
    Name::new(name).is_ok_and(|name| job.answer(C::CHECK, C::ITEM, Answer::Choice(name)))
}

fn ask<C: Asked + Words>(job: OpenJob, id: &'static str, words: &'static str) -> impl IntoView {
    let choose = move |name: &'static str| {
        if enter_choice::<C>(job, name) {
            job.session().announce(page::NOTED);
        }
    };
    view! {
        <section class="asked">
            <h2 id=id>{words}</h2>
            <ChoiceList
                offers={Offer::all::<C>()}
                chosen=Signal::derive(move || chosen::<C>(job))
                choose
                labelled_by=id
            />
        </section>
    }
}

fn plate(job: OpenJob) -> impl IntoView {
    let (check, item) = Machine::PLATE;
    let kept = job
        .assessment()
        .with_untracked(|known| known.machine.plate.clone());
    let take = move |text: Text| {
        let taken = job.answer(check, item, Answer::Text(text));
        if taken {
            job.session().say(page::NOTED);
        }
        taken
    };
    view! {
        <section class="asked">
            <TextEntry
                id="plate"
                draft=Machine::PLATE
                label=page::PLATE
                hint=page::PLATE_HINT
                button=page::KEEP_PLATE
                initial=kept.unwrap_or_default()
                is_long=true
                take
            />
        </section>
    }
}
