//! What a machine uses: what a meter counted, what that comes to, and what is still missing.

use diagnosis::{
    Asked, Choice, ColdCompartment, ENERGY, Energy, EnergyClass, EnergyFigure, EnergyNeed,
    Icemaker, Kind, answered,
};
use job::{Answer, Content, Moment, Text};
use leptos::html;
use leptos::prelude::*;
use wording::{Words, cold_page, energy as words, metered_page, page};

use super::choice_list::{ChoiceList, Offer};
use super::machine::{chosen, enter_choice};
use super::text_entry::TextEntry;
use crate::device;
use crate::forms::metered::OffMeter;
use crate::frame::Heading;
use crate::open_job::OpenJob;
use crate::parts::live::live;
use crate::parts::plain::{button, link, paragraph, refusal, section_heading};
use crate::route::{Place, Route};

/// What the page holds beside the job.
#[derive(Clone, Copy)]
struct Bench {
    open: OpenJob,
    /// Since when the meter counts, where somebody tapped that.
    began: RwSignal<Option<Moment>>,
    typed: RwSignal<OffMeter>,
    remark: RwSignal<Option<&'static str>>,
    /// What is known of it, once anything is.
    energy: Memo<Option<Energy>>,
}

/// Where it is kept since when the meter counts: the check and item of a draft.
const BEGAN: (&str, &str) = (ENERGY, "meter-began");

/// What a machine uses.
#[component]
pub fn EnergyScreen() -> impl IntoView {
    let open = OpenJob::here();
    let kept = open.draft(BEGAN.0, BEGAN.1);
    let offset = device::now().offset_minutes();
    let began = kept.and_then(|text| Moment::new(text.parse().ok()?, offset).ok());
    let bench = Bench {
        open,
        began: RwSignal::new(began),
        typed: RwSignal::new(OffMeter::default()),
        remark: RwSignal::new(None),
        energy: Memo::new(move |_| open.with_job(Energy::of)),
    };
    let locale = open.session().locale();
    let known = move || {
        let lines = bench
            .energy
            .with(|energy| Some(words::report(energy.as_ref()?, &locale)));
        let lines = lines.into_iter().flatten().map(|line| paragraph("", line));
        lines.collect::<Vec<_>>()
    };
    view! {
        <div class="screen cool-down">
            <Heading text=words::TITLE/>
            {paragraph("soft", words::WHY)}
            {live(known)}
            {meter(bench)}
            {machine(bench)}
            {link("button quiet wide", Route::Job(open.id(), Place::Do).link(), page::BACK_TO_JOB)}
        </div>
    }
}

/// Since when the meter counts, and what it shows.
fn meter(bench: Bench) -> AnyView {
    let begin = move |_| {
        let now = device::now();
        let text = now.unix_milliseconds().to_string();
        bench.open.keep_draft(BEGAN.0, BEGAN.1, &text);
        bench.began.set(Some(now));
    };
    let locale = bench.open.session().locale();
    let since = move || match bench.began.get() {
        Some(began) => view! {
            {paragraph("title", metered_page::since(began, &locale))}
            {button("plain", metered_page::OTHER_TIME, move |_| forget(bench))}
        }
        .into_any(),
        None => view! {
            {button("button wide", metered_page::BEGINS, begin)}
            {field("meter-hours", metered_page::HOURS, bench, |typed| &mut typed.hours)}
        }
        .into_any(),
    };
    let send = move |event: leptos::ev::SubmitEvent| {
        event.prevent_default();
        enter(bench);
    };
    view! {
        <section>
            {section_heading(metered_page::METER)}
            {paragraph("soft", words::HOW)}
            <form class="when" on:submit=send>
                {live(since)}
                {field("meter-energy", metered_page::COUNTED, bench, |typed| &mut typed.energy)}
                {field("meter-ran", metered_page::RAN, bench, |typed| &mut typed.ran)}
                {live(move || bench.remark.get().map(refusal))}
                <button class="button wide">{cold_page::ENTER}</button>
            </form>
        </section>
    }
    .into_any()
}

fn forget(bench: Bench) {
    bench.open.clear_draft(BEGAN.0, BEGAN.1);
    bench.began.set(None);
}

/// One of the fields that are filled in off the meter. Empty again once what it held was taken, so that
/// nothing is entered twice.
fn field(
    id: &'static str,
    name: &'static str,
    bench: Bench,
    of: fn(&mut OffMeter) -> &mut String,
) -> AnyView {
    let input = NodeRef::<html::Input>::new();
    Effect::new(move |_| {
        let text = of(&mut bench.typed.get()).clone();
        // What is being typed is never written back.
        if let Some(input) = input.get()
            && input.value() != text
        {
            input.set_value(&text);
        }
    });
    let write = move |event| {
        bench.remark.set(None);
        bench
            .typed
            .update(|typed| *of(typed) = event_target_value(&event));
    };
    view! {
        <div class="minutes-ago">
            <label for=id>{name}</label>
            <input
                id=id
                type="text"
                inputmode="text"
                autocomplete="off"
                maxlength="16"
                node_ref=input
                on:input=write
            />
        </div>
    }
    .into_any()
}

fn enter(bench: Bench) {
    let typed = bench.typed.get_untracked();
    match typed.read(bench.began.get_untracked(), device::now()) {
        Err(why) => bench.remark.set(Some(why.words())),
        Ok(metered) => {
            if bench.open.proved(Content::Metered(metered)) {
                forget(bench);
                bench.typed.set(OffMeter::default());
                bench.open.session().say(page::NOTED);
            }
        }
    }
}

/// What has to be known of the machine to say how its energy stands.
fn machine(bench: Bench) -> AnyView {
    let needs = move |need: EnergyNeed| {
        let energy = bench.energy.read();
        energy
            .as_ref()
            .is_some_and(|energy| energy.missing.contains(&need))
    };
    let open = bench.open;
    // A question stands as long as it is open or was answered: an answer doesn't take it away.
    let with_compartment = Memo::new(move |_| {
        needs(EnergyNeed::ColdCompartment) || open.with_job(answered::<ColdCompartment>).is_some()
    });
    let with_icemaker = Memo::new(move |_| {
        let class = open.with_job(answered::<EnergyClass>);
        let may = class
            .and_then(EnergyClass::class)
            .is_some_and(|class| class.may_have_icemaker());
        needs(EnergyNeed::Icemaker) || may && open.with_job(answered::<Icemaker>).is_some()
    });
    let figures = EnergyFigure::ALL.iter().map(|figure| {
        let figure = *figure;
        let is_asked = Memo::new(move |_| {
            needs(EnergyNeed::Figure(figure)) || open.with_job(|job| figure.text(job).is_some())
        });
        live(move || is_asked.get().then(|| figure_field(open, figure)))
    });
    view! {
        <section>
            {section_heading(metered_page::MACHINE)}
            {class(open)}
            {live(move || with_compartment.get().then(|| view! {
                <h3 id="cold-compartment">{metered_page::COMPARTMENT}</h3>
                {ask::<ColdCompartment>(open, "cold-compartment")}
            }))}
            {live(move || with_icemaker.get().then(|| view! {
                <h3 id="icemaker">{metered_page::ICEMAKER}</h3>
                {ask::<Icemaker>(open, "icemaker")}
            }))}
            {figures.collect::<Vec<_>>()}
        </section>
    }
    .into_any()
}

/// The classes that machines of its kind have, and the others behind a line.
fn class(open: OpenJob) -> AnyView {
    let said = move || {
        let class = open.with_job(answered::<EnergyClass>);
        let class = class.map_or(String::new(), |class| [": ", class.words()].concat());
        [metered_page::CLASS, &class].concat()
    };
    let kind = open.with_job(answered::<Kind>);
    let all = EnergyClass::ALL.iter().copied();
    let (usual, others): (Vec<_>, Vec<_>) =
        all.partition(|class| kind.is_none_or(|kind| class.fits(kind)));
    let is_other = open.with_job(answered::<EnergyClass>);
    let is_other = is_other.is_some_and(|class| others.contains(&class));
    let list = move |classes: Vec<EnergyClass>, labelled_by| {
        let offers = classes.into_iter().map(Offer::of).collect();
        choices::<EnergyClass>(open, offers, labelled_by)
    };
    let others = (!others.is_empty()).then(|| {
        view! {
            <details class="fold" open=is_other>
                <summary><span id="other-classes">{metered_page::OTHER_CLASSES}</span></summary>
                {list(others, "other-classes")}
            </details>
        }
    });
    view! {
        <details class="fold">
            <summary><span id="energy-class">{live(said)}</span></summary>
            {list(usual, "energy-class")}
            {others}
        </details>
    }
    .into_any()
}

fn ask<C: Asked + Words>(open: OpenJob, id: &'static str) -> AnyView {
    choices::<C>(open, Offer::all::<C>(), id)
}

fn choices<C: Asked + Words>(open: OpenJob, offers: Vec<Offer>, id: &'static str) -> AnyView {
    view! {
        <ChoiceList
            offers
            chosen=Signal::derive(move || chosen::<C>(open))
            choose=move |name: &'static str| { enter_choice::<C>(open, name); }
            labelled_by=id
        />
    }
    .into_any()
}

fn figure_field(open: OpenJob, figure: EnergyFigure) -> AnyView {
    let name = figure.name();
    let kept = open.with_job(|job| figure.text(job).map(str::to_owned));
    let refuse = move |text: Text| figure.check(text.as_str()).err().map(words::figure_error);
    let take = move |text: Text| {
        let taken = open.answer(ENERGY, name, Answer::Text(text));
        if taken {
            open.session().say(page::NOTED);
        }
        taken
    };
    view! {
        <TextEntry
            id=name
            draft=(ENERGY, name)
            label=figure.words()
            hint=figure.hint().unwrap_or_default()
            button=cold_page::ENTER
            initial=kept.unwrap_or_default()
            refuse
            take
        />
    }
    .into_any()
}
