//! Which refrigerant is in it, for safety.

use diagnosis::{Assessment, Caution, Refrigerant, answered};
use leptos::prelude::*;
use wording::{Words, gas_page, page};

use super::choice_list::{ChoiceList, Offer};
use super::machine::{chosen, enter_choice};
use crate::cold::Cold;
use crate::device;
use crate::frame::Heading;
use crate::open_job::OpenJob;
use crate::parts::caution::Caution as CautionInFull;
use crate::parts::live::live;
use crate::parts::plain::{button, link, paragraph};
use crate::route::{Place, Route};
use crate::session::HEADING;

/// Asks for the refrigerant by the plate, and says at once what follows from it.
#[component]
pub fn RefrigerantScreen() -> impl IntoView {
    let job = OpenJob::here();
    let refrigerant = Memo::new(move |_| job.with_job(answered::<Refrigerant>));
    let is_asking = RwSignal::new(refrigerant.get_untracked().is_none());
    let choose = move |name: &'static str| {
        if enter_choice::<Refrigerant>(job, name) {
            is_asking.set(false);
            device::focus(MEANING);
        }
    };
    let change = move |_| {
        is_asking.set(true);
        device::focus(HEADING);
    };
    let question = move || {
        view! {
            {paragraph("soft", page::REFRIGERANT_HOW)}
            <div class="lower">
                <ChoiceList
                    offers={Offer::all::<Refrigerant>()}
                    chosen=Signal::derive(move || chosen::<Refrigerant>(job))
                    choose
                    labelled_by=HEADING
                />
            </div>
        }
    };
    let facts = Place::Check(Cold::GAS_FACTS.to_owned());
    let facts = Route::Job(job.id(), facts).link();
    let meaning = move |refrigerant: Refrigerant| {
        let cautions = job.assessment().with(about_the_gas);
        let cautions = cautions
            .into_iter()
            .map(|caution| view! { <CautionInFull caution/> });
        view! {
            <section id=MEANING tabindex="-1" class="answered">
                <div class="actions apart">
                    {paragraph("title", refrigerant.words())}
                    {button("plain", page::CHANGE, change)}
                </div>
                {cautions.collect::<Vec<_>>()}
            </section>
            {link("door", facts.clone(), gas_page::TITLE)}
            <div class="lower">
                {link("button wide", Route::Job(job.id(), Place::Do).link(), page::BACK_TO_JOB)}
            </div>
        }
    };
    view! {
        <div class="screen asking">
            <Heading text=page::WHICH_REFRIGERANT/>
            {live(move || match refrigerant.get() {
                Some(refrigerant) if !is_asking.get() => meaning(refrigerant).into_any(),
                _ => question().into_any(),
            })}
        </div>
    }
}

/// The identifier of what follows from the answer.
const MEANING: &str = "gas-meaning";

fn about_the_gas(assessment: &Assessment) -> Vec<Caution> {
    let cautions = assessment.cautions.iter().copied();
    cautions
        .filter(|caution| {
            matches!(
                caution,
                Caution::FlammableRefrigerant | Caution::UnknownRefrigerant
            )
        })
        .collect()
}
