//! Whether a start kit would help: the answer first, the curve, the same in words.

mod picture;
mod plot;

use diagnosis::{KitCurve, KitDeclared, KitNeed, Machine, NoKit, StartKit, StartTrials};
use leptos::prelude::*;
use wording::{Locale, Words, page, start_kit as words};

use self::picture::{key, picture};
use super::choice_list::{ChoiceList, Offer};
use super::machine::{chosen, enter_choice};
use crate::frame::Heading;
use crate::open_job::OpenJob;
use crate::parts::live::live;
use crate::parts::plain::{link, paragraph, section_heading};
use crate::route::{Place, Route};

/// Whether a start kit would help.
#[component]
pub fn StartKitScreen() -> impl IntoView {
    let open = OpenJob::here();
    let locale = open.session().locale();
    let answer = move || match open.weighing().now() {
        None => paragraph("soft", words::WEIGHING),
        Some(known) => {
            // Followed through the weighing, which comes after the job.
            let kit = untrack(|| open.with_job(|job| StartKit::of(job, &known)));
            answered(open, &kit, &locale)
        }
    };
    view! {
        <div class="screen start-kit">
            <Heading text=words::TITLE/>
            {live(answer)}
            {declared(open)}
            {to(open, StartTrials::NAME, "door", wording::start_trials::TITLE)}
            {link("button quiet wide", Route::Job(open.id(), Place::Do).link(), page::BACK_TO_JOB)}
        </div>
    }
}

/// The identifier of the question.
const DECLARED: &str = "declared-for";

/// What the kit's packing says, where the gas burns; and what holds for one that suits.
fn declared(open: OpenJob) -> impl IntoView {
    let is_asked = move || open.with_job(|job| KitDeclared::is_asked(&Machine::of(job)));
    let suits = move || open.with_job(|job| KitDeclared::suits(job, &Machine::of(job)));
    // The answer must not build the question anew: the focus stands on what was tapped.
    let is_asked = Memo::new(move |_| is_asked());
    let question = move || {
        view! {
            <section>
                <h2 id=DECLARED>{words::DECLARED_FOR}</h2>
                {paragraph("soft", words::DECLARED_HOW)}
                <ChoiceList
                    offers={Offer::all::<KitDeclared>()}
                    chosen=Signal::derive(move || chosen::<KitDeclared>(open))
                    choose=move |name: &'static str| { enter_choice::<KitDeclared>(open, name); }
                    labelled_by=DECLARED
                />
                {live(move || suits().then(|| paragraph("remark", words::DECLARED)))}
            </section>
        }
        .into_any()
    };
    live(move || is_asked.get().then(question))
}

/// A link to a check or screen of the job, by its name.
fn to(open: OpenJob, place: &str, class: &'static str, text: &'static str) -> AnyView {
    let route = Route::Job(open.id(), Place::Check(place.to_owned()));
    link(class, route.link(), text)
}

fn answered(open: OpenJob, kit: &StartKit, locale: &Locale) -> AnyView {
    let more = match kit {
        StartKit::NotThisMachine(reasons) => against(reasons),
        StartKit::Missing(needs) => section(words::MISSING, vec![doors(open, needs)]),
        StartKit::Curve(curve) => curve_view(open, curve, locale),
    };
    view! {
        {paragraph("kit-answer", words::verdict(kit))}
        {more}
        {paragraph("soft", words::CODES)}
    }
    .into_any()
}

fn section(heading: &'static str, pieces: Vec<AnyView>) -> AnyView {
    view! { <section>{section_heading(heading)} {pieces}</section> }.into_any()
}

fn against(reasons: &[NoKit]) -> AnyView {
    let lines = reasons.iter().map(|why| paragraph("", why.words()));
    section(words::WHY_NOT, lines.collect())
}

/// What is missing, each with the way to it.
fn doors(open: OpenJob, needs: &[KitNeed]) -> AnyView {
    let rows = needs.iter().map(|need| {
        let hint = need.hint().unwrap_or_default();
        view! {
            <li>
                {to(open, need.place(), "door", need.words())}
                {paragraph("soft", hint)}
            </li>
        }
    });
    view! { <ul class="rows kit-needs">{rows.collect::<Vec<_>>()}</ul> }.into_any()
}

fn curve_view(open: OpenJob, curve: &KitCurve, locale: &Locale) -> AnyView {
    let mut drawn = vec![
        paragraph("small soft", words::UPWARDS),
        picture(curve, locale),
        paragraph("small soft kit-foot", words::ACROSS),
        key(),
        paragraph("", words::range(curve, locale)),
    ];
    let ends = words::ends(curve, locale).into_iter();
    drawn.extend(ends.map(|end| paragraph("", end)));
    drawn.push(paragraph("", words::WHY_TWO));
    let capacitor = [
        Some(paragraph("", words::class(curve, locale))),
        Some(paragraph("", words::CUTS_OUT)),
        words::discharge(curve, locale).map(|said| paragraph("", said)),
    ];
    let tried = words::tries(curve).map(|said| section(words::TRIED, vec![paragraph("", said)]));
    let narrower = (!curve.narrower.is_empty())
        .then(|| section(words::NARROWER, vec![doors(open, &curve.narrower)]));
    let rests_on = words::rests_on(curve, locale).into_iter();
    let rests_on = rests_on.map(|said| paragraph("", said));
    let limits = [paragraph("soft", words::LIMITS)];
    view! {
        {paragraph("", words::because(curve, locale))}
        {section(words::CURVE, drawn)}
        {tried}
        {section(words::CAPACITOR, capacitor.into_iter().flatten().collect())}
        {paragraph("", words::CONVENIENCE)}
        {section(words::RESTS_ON, rests_on.chain(limits).collect())}
        {narrower}
    }
    .into_any()
}
