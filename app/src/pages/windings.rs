//! The windings check: ohms between the compressor's three pins, from the plug to the meaning.
//!
//! What to ask next and what a reading means come from the assessment. This page puts it on the
//! screen and enters what is typed.

mod bench;

use diagnosis::{Caution, Check, GearChoice, LeadsChoice, Level, Step, Task};
use leptos::prelude::*;
use measure::windings::Pair;
use wording::windings_page as words;

use super::practice::instrument;
use crate::forms::pair_reading::Target;
use crate::forms::windings_stage::{Stage, step_to_tell};
use crate::frame::Heading;
use crate::open_job::OpenJob;
use crate::parts::cannot_do::CannotDo;
use crate::parts::caution::{Caution as CautionInFull, FoldedCaution};
use crate::parts::pin_diagram::PinDiagram;
use crate::parts::pin_table::PinTable;
use crate::parts::plain::{button, link, paragraph};
use crate::parts::reading_field::ReadingField;
use crate::parts::windings_before::{BarePins, GearStillOn, PinShapes};
use crate::parts::windings_meaning::{NextStep, WindingsFindings};
use crate::parts::windings_meter::MeterChoice;
use crate::parts::windings_wiring::WiringAsFound;
use crate::route::{Place, Route};

use crate::parts::live::{live, tap};
use bench::{Bench, MEANING};

/// The windings check of the job on the screen.
#[component]
pub fn WindingsScreen() -> impl IntoView {
    let bench = Bench::new(OpenJob::here());
    let main = move || match bench.stage.get() {
        Stage::Before => view! {
            <CautionInFull caution=Caution::BeforeThePins />
            <BarePins answer=Callback::new(move |choice| bench.say_gear(choice)) />
        }
        .into_any(),
        Stage::StillOn => view! {
            <GearStillOn
                off=Callback::new(move |()| bench.say_gear(GearChoice::Off))
                all_the_same=Callback::new(move |()| bench.all_the_same.set(true))
            />
            {undo_button(bench)}
        }
        .into_any(),
        Stage::Shape => view! {
            {shapes(bench)}
            {undo_button(bench)}
        }
        .into_any(),
        Stage::Measure => measuring(bench).into_any(),
    };
    view! {
        <div class="bench" class:measuring=move || bench.stage.get() == Stage::Measure>
            <div class="bench-top">
                <Heading text=words::HEADING />
                {paragraph("soft", words::PLUG_OUT)}
            </div>
            {live(main)}
            <WiringAsFound
                wanted=Signal::derive(move || bench.wants_wiring())
                job=Signal::derive(move || bench.open.job())
                note=Callback::new(move |(noted, name)| bench.note_wiring(noted, name))
            />
        </div>
    }
}

fn measuring(bench: Bench) -> impl IntoView {
    // The field stays the same one from pair to pair: no keystroke falls between two.
    let is_measuring = Memo::new(move |_| bench.target.get().is_some());
    live(move || {
        if bench.changing_shape.get() {
            return shapes(bench).into_any();
        }
        view! {
            <PinDiagram
                picture=bench.picture
                active=Signal::derive(move || bench.target.get().and_then(Target::pair))
                typed=Signal::derive(move || bench.being_typed())
                choose=Callback::new(move |pair: Pair| bench.choose(Target::Pair(pair)))
            />
            {findings(bench)}
            {instrument(
                bench.open,
                Task::Check(Check::Windings),
                move || bench.target.get(),
                move |text| bench.write(text),
                move |answer| bench.enter(answer),
            )}
            {live(move || is_measuring.get().then(|| field(bench)))}
            {new_cautions(bench)}
            {live(move || next_step(bench))}
            {ways_on(bench)}
            {other_cautions(bench)}
            <PinTable picture=bench.picture />
            {live(move || (!is_measuring.get()).then(|| meter_choice(bench)))}
            {button("plain", words::CHANGE_SHAPE, move |_| bench.changing_shape.set(true))}
        }
        .into_any()
    })
}

fn findings(bench: Bench) -> impl IntoView {
    view! {
        <section class="meaning" id=MEANING tabindex="-1" aria-label=words::MEANING>
            <WindingsFindings findings=bench.findings locale=bench.locale />
        </section>
    }
}

fn field(bench: Bench) -> impl IntoView {
    let target = Signal::derive(move || bench.target.get().unwrap_or(Target::Leads));
    view! {
        <ReadingField
            target
            meter=Signal::derive(move || bench.meter.get().meter())
            typed=bench.typed
            write=Callback::new(move |text| bench.write(text))
            own_keypad=bench.own_keypad
            locale=bench.locale
            entered=Callback::new(move |answer| bench.enter(answer))
        >
            {undo_button(bench)}
        </ReadingField>
        <div class="actions under-field">
            <button type="button" class="plain keyboard-switch" on:click=tap(move |_| bench.own_keypad.update(|own| *own = !*own))>
                {live(move || if bench.own_keypad.get() { words::PHONE_KEYBOARD } else { words::OWN_KEYPAD })}
            </button>
            {live(move || bench.leaving().map(|words| button("plain", words, move |_| bench.leave())))}
        </div>
        {meter_choice(bench)}
        {live(move || bench.can_give_up().then(|| view! {
            <CannotDo give_up=Callback::new(move |reason| bench.give_up(reason))/>
        }))}
    }
}

fn next_step(bench: Bench) -> Option<impl IntoView> {
    let step = bench.open.assessment().with(step_to_tell)?;
    let is_asked =
        bench.target.get().is_some() && matches!(step, Step::Repeat(_) | Step::TouchProbes);
    let answers = match step {
        Step::BareThePins => Some(view! {
            {button("button quiet", words::THEY_ARE_OFF, move |_| bench.say_gear(GearChoice::Off))}
            {button("button quiet", words::STILL_ON, move |_| bench.say_gear(GearChoice::StillOn))}
        }
        .into_any()),
        Step::TakeStartGearOff => Some(button("button quiet", words::OFF_NOW, move |_| bench.begin_again_bare())),
        _ => None,
    };
    Some(view! {
        <NextStep step is_asked locale=bench.locale />
        {answers.map(|answers| view! { <div class="actions answers">{answers}</div> })}
    })
}

/// What is dangerous now stands in full before the next step.
fn new_cautions(bench: Bench) -> impl IntoView {
    live(move || {
        let cautions = bench.cautions.get().into_iter();
        cautions
            .filter(|caution| stands_in_full(*caution))
            .map(|caution| view! { <CautionInFull caution /> })
            .collect_view()
    })
}

fn other_cautions(bench: Bench) -> impl IntoView {
    live(move || {
        let cautions = bench.cautions.get().into_iter();
        cautions
            .filter(|caution| !stands_in_full(*caution))
            .map(|caution| view! { <FoldedCaution caution /> })
            .collect_view()
    })
}

/// Where to go from here, while nothing is being measured.
fn ways_on(bench: Bench) -> impl IntoView {
    live(move || {
        bench.target.get().is_none().then(|| {
            let job = Route::Job(bench.open.id(), Place::Do);
            view! {
                <div class="actions">
                    {link("button", job.link(), words::BACK_TO_JOB)}
                    {undo_button(bench)}
                </div>
            }
        })
    })
}

fn undo_button(bench: Bench) -> impl IntoView {
    live(move || {
        bench
            .open
            .can_undo()
            .then(|| button("plain", words::UNDO, move |_| bench.undo()))
    })
}

fn shapes(bench: Bench) -> impl IntoView {
    let answer = move |shape| {
        bench.say_choice("shape", shape);
        bench.changing_shape.set(false);
    };
    let keep = bench
        .changing_shape
        .get_untracked()
        .then(|| Callback::new(move |()| bench.changing_shape.set(false)));
    let any_read = untrack(|| bench.any_read());
    view! { <PinShapes any_read answer=Callback::new(answer) keep /> }
}

fn meter_choice(bench: Bench) -> impl IntoView {
    view! {
        <MeterChoice
            meter=bench.meter
            leads=Signal::derive(move || bench.leads())
            leads_read=Signal::derive(move || bench.leads_read())
            say_leads=Callback::new(move |choice: LeadsChoice| bench.say_choice("leads", choice))
            read_leads=Callback::new(move |()| bench.choose(Target::Leads))
            leads_before=Signal::derive(move || bench.leads_before())
            take_leads=Callback::new(move |()| bench.take_leads())
            locale=bench.locale
        />
    }
}

/// Whether a caution stops all work or follows from the readings, rather than from the machine.
fn stands_in_full(caution: Caution) -> bool {
    caution.level() == Level::Stop
        || matches!(caution, Caution::InverterPins | Caution::DamagedWindings)
}
