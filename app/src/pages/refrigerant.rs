//! Which refrigerant is in it, for safety.

use diagnosis::Refrigerant;
use leptos::prelude::*;
use wording::page;

use super::choice_list::{ChoiceList, Offer};
use super::machine::{chosen, enter_choice};
use crate::frame::Heading;
use crate::parts::caution::Caution;
use crate::route::{Place, Route};
use crate::session::{HEADING, OpenJob};

/// Asks for the refrigerant by the plate, and says at once what follows from it.
#[component]
pub fn RefrigerantScreen() -> impl IntoView {
    let job = OpenJob::here();
    let choose = move |name: &'static str| {
        if enter_choice::<Refrigerant>(job, name) {
            let cautions = job.assessment().with_untracked(about_the_gas);
            let said = cautions
                .first()
                .map(|which| wording::caution(*which).line());
            job.session()
                .announce(said.unwrap_or(page::NOTED.to_owned()));
        }
    };
    let meaning = move || {
        chosen::<Refrigerant>(job)?;
        let cautions = job.assessment().with(about_the_gas);
        let cautions = cautions
            .into_iter()
            .map(|caution| view! { <Caution caution/> });
        Some(view! {
            {cautions.collect::<Vec<_>>()}
            <a class="button wide" href=Route::Job(job.id(), Place::Do).link()>{page::BACK_TO_JOB}</a>
        })
    };
    view! {
        <div class="screen asking">
            <Heading text=page::WHICH_REFRIGERANT/>
            <p class="soft">{page::REFRIGERANT_HOW}</p>
            <div class="lower">
                <ChoiceList
                    offers={Offer::all::<Refrigerant>()}
                    chosen=Signal::derive(move || chosen::<Refrigerant>(job))
                    choose
                    labelled_by=HEADING
                />
                {meaning}
            </div>
        </div>
    }
}

fn about_the_gas(assessment: &diagnosis::Assessment) -> Vec<diagnosis::Caution> {
    use diagnosis::Caution::{FlammableRefrigerant, UnknownRefrigerant};
    let cautions = assessment.cautions.iter().copied();
    cautions
        .filter(|caution| matches!(caution, FlammableRefrigerant | UnknownRefrigerant))
        .collect()
}
