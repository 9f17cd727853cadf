//! The windings check: ohms between the compressor's three pins, from the plug to the meaning.
//!
//! What to ask next and what a reading means come from the assessment. This page puts it on the
//! screen and enters what is typed.

use diagnosis::{Caution, Choice, GearChoice, LeadsChoice, PinShape, answered};
use job::{Answer, Measured, Name, NotDone};
use leptos::prelude::*;
use measure::windings::Pair;
use wording::{Locale, Words, windings_page as words};

use crate::device;
use crate::frame::Heading;
use crate::forms::pair_reading::{Target, understood};
use crate::forms::windings_diagram::{PinPicture, Shown};
use crate::forms::windings_meter::MeterInUse;
use crate::forms::windings_stage::{Stage, stage, step_to_tell, suggested};
use crate::forms::windings_wiring::Noted;
use crate::parts::caution::{Caution as CautionInFull, FoldedCaution};
use crate::parts::pin_diagram::PinDiagram;
use crate::parts::pin_table::PinTable;
use crate::parts::reading_field::{FIELD, ReadingField};
use crate::parts::windings_before::{BarePins, GearStillOn, PinShapes};
use crate::parts::windings_meaning::{NextStep, WindingsFindings};
use crate::parts::windings_meter::MeterChoice;
use crate::parts::windings_wiring::WiringAsFound;
use crate::session::OpenJob;

/// The identifier of what was found, for moving the focus to it.
const MEANING: &str = "meaning";
/// The setting for the keyboard: `own` or `phone`.
const KEYBOARD: &str = "keyboard";

/// The screen's own state. What was entered stands in the job.
#[derive(Clone, Copy)]
struct Bench {
    open: OpenJob,
    locale: Locale,
    /// What the person chose to measure, in the place of what is suggested.
    chosen: RwSignal<Option<Target>>,
    target: Memo<Option<Target>>,
    typed: RwSignal<String>,
    meter: RwSignal<MeterInUse>,
    own_keypad: RwSignal<bool>,
    all_the_same: RwSignal<bool>,
    changing_shape: RwSignal<bool>,
    picture: Memo<PinPicture>,
    stage: Memo<Stage>,
}

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
        }
        .into_any(),
        Stage::Shape => bench.shapes().into_any(),
        Stage::Measure => bench.measuring().into_any(),
    };
    view! {
        <div class="bench">
            <Heading text=words::HEADING above=words::PLUG_OUT/>
            {main}
            <WiringAsFound
                job=Signal::derive(move || bench.open.job())
                note=Callback::new(move |(noted, name)| bench.note_wiring(noted, name))
            />
        </div>
    }
}

impl Bench {
    fn new(open: OpenJob) -> Self {
        let session = open.session();
        let locale = session.locale();
        let assessment = open.assessment();
        let chosen = RwSignal::new(None);
        let all_the_same = RwSignal::new(false);
        let target = Memo::new(move |_| {
            chosen.get().or_else(|| assessment.with(suggested))
        });
        let picture = Memo::new(move |_| {
            assessment.with(|assessment| {
                let known = assessment.windings.as_ref();
                open.with_job(|job| {
                    let shape = answered(job).unwrap_or(PinShape::PointUp);
                    PinPicture::of(job, known, shape, &locale)
                })
            })
        });
        let stage = Memo::new(move |_| {
            assessment.with(|assessment| {
                open.with_job(|job| stage(job, assessment, all_the_same.get()))
            })
        });
        let setting = |name| session.setting(name).unwrap_or_default();
        let bench = Self {
            open,
            locale,
            chosen,
            target,
            typed: RwSignal::new(String::new()),
            meter: RwSignal::new(MeterInUse::recalled(&setting(MeterInUse::SETTING))),
            own_keypad: RwSignal::new(setting(KEYBOARD) != "phone"),
            all_the_same,
            changing_shape: RwSignal::new(false),
            picture,
            stage,
        };
        bench.take_up_draft();
        bench.remember_settings();
        bench
    }

    fn remember_settings(self) {
        let session = self.open.session();
        Effect::new(move |before: Option<()>| {
            let meter = self.meter.get().remembered();
            let keyboard = if self.own_keypad.get() { "own" } else { "phone" };
            // The first run only learns what to watch.
            if before.is_some() {
                session.keep_setting(MeterInUse::SETTING, &meter);
                session.keep_setting(KEYBOARD, keyboard);
            }
        });
    }

    /// Puts into the field what was typed for its question before.
    fn take_up_draft(self) {
        let draft = self.target.get_untracked().and_then(|target| {
            let (check, item) = target.names();
            self.open.draft(check, item)
        });
        self.typed.set(draft.unwrap_or_default());
    }

    fn write(self, text: String) {
        if let Some(target) = self.target.get_untracked() {
            let (check, item) = target.names();
            self.open.keep_draft(check, item, &text);
        }
        self.typed.set(text);
    }

    fn choose(self, target: Target) {
        self.chosen.set(Some(target));
        self.take_up_draft();
        device::focus(FIELD);
    }

    fn enter(self, answer: Answer) {
        let Some(target) = self.target.get_untracked() else {
            return;
        };
        let (check, item) = target.names();
        if self.open.answer(check, item, answer) {
            self.chosen.set(None);
            self.take_up_draft();
            self.open.session().announce(self.said());
            let on = self.target.get_untracked().is_some();
            device::focus(if on { FIELD } else { MEANING });
        }
    }

    /// What was found and what stands beside the pins, for the status region.
    fn said(self) -> String {
        let findings = self.open.assessment().with_untracked(|assessment| {
            let of_windings = |finding: &&diagnosis::Finding| {
                matches!(finding, diagnosis::Finding::Windings(_))
            };
            assessment
                .findings
                .iter()
                .filter(of_windings)
                .map(|finding| wording::finding(finding, &self.locale))
                .collect::<Vec<_>>()
        });
        let labels = self.picture.with_untracked(|picture| words::labels_said(picture.pins));
        findings.into_iter().chain(labels).collect::<Vec<_>>().join(" ")
    }

    fn say_gear(self, choice: GearChoice) {
        self.say_choice("start-gear", choice);
    }

    fn say_choice<C: Choice>(self, item: &str, choice: C) {
        if let Ok(name) = Name::new(choice.name()) {
            self.open.answer("windings", item, Answer::Choice(name));
        }
    }

    fn note_wiring(self, noted: Noted, name: &str) {
        let (check, item) = noted.names();
        if let Some(answer) = Noted::answer(name) {
            self.open.answer(check, item, answer);
        }
    }

    fn give_up(self, reason: NotDone) {
        if let Some(target) = self.target.get_untracked() {
            let (check, item) = target.names();
            if self.open.answer(check, item, Answer::NotDone(reason)) {
                self.chosen.set(None);
                self.take_up_draft();
            }
        }
    }

    fn any_read(self) -> bool {
        self.picture
            .with(|picture| picture.lines.iter().any(|line| line.reading.is_some()))
    }

    /// What is being typed, as it is understood where it can be.
    fn being_typed(self) -> String {
        let text = self.typed.get();
        let understood = understood(&text, self.meter.get().meter());
        understood.map_or(text, |typed| Shown::of(typed, &self.locale).short)
    }

    fn shapes(self) -> impl IntoView {
        let answer = move |shape| {
            self.say_choice("shape", shape);
            self.changing_shape.set(false);
        };
        let keep = self
            .changing_shape
            .get_untracked()
            .then(|| Callback::new(move |()| self.changing_shape.set(false)));
        let any_read = untrack(|| self.any_read());
        view! { <PinShapes any_read answer=Callback::new(answer) keep /> }
    }

    fn measuring(self) -> impl IntoView {
        move || {
            if self.changing_shape.get() {
                return self.shapes().into_any();
            }
            view! {
                <PinDiagram
                    picture=self.picture
                    active=Signal::derive(move || self.target.get().and_then(Target::pair))
                    typed=Signal::derive(move || self.being_typed())
                    choose=Callback::new(move |pair: Pair| self.choose(Target::Pair(pair)))
                />
                {self.findings()}
                {move || self.target.get().is_some().then(|| self.field())}
                {move || self.next_step()}
                {self.cautions()}
                <PinTable picture=self.picture />
                {self.meter_choice()}
                <button type="button" class="plain" on:click=move |_| self.changing_shape.set(true)>
                    {words::CHANGE_SHAPE}
                </button>
            }
            .into_any()
        }
    }

    fn findings(self) -> impl IntoView {
        let findings = Signal::derive(move || {
            self.open.assessment().with(|assessment| assessment.findings.clone())
        });
        view! {
            <section class="meaning" id=MEANING tabindex="-1" aria-label=words::MEANING>
                <WindingsFindings findings locale=self.locale />
            </section>
        }
    }

    fn field(self) -> impl IntoView {
        let target = Signal::derive(move || self.target.get().unwrap_or(Target::Leads));
        view! {
            <ReadingField
                target
                meter=Signal::derive(move || self.meter.get().meter())
                typed=self.typed
                write=Callback::new(move |text| self.write(text))
                own_keypad=self.own_keypad
                locale=self.locale
                entered=Callback::new(move |answer| self.enter(answer))
            />
            <div class="actions under-field">
                <button type="button" class="plain keyboard-switch" on:click=move |_| self.own_keypad.update(|own| *own = !*own)>
                    {move || if self.own_keypad.get() { words::PHONE_KEYBOARD } else { words::OWN_KEYPAD }}
                </button>
                {move || self.chosen.get().map(|_| view! {
                    <button type="button" class="plain" on:click=move |_| self.leave_as_read()>
                        {words::LEAVE_AS_READ}
                    </button>
                })}
            </div>
            {move || target.get().pair().map(|_| self.reasons())}
        }
    }

    fn leave_as_read(self) {
        self.chosen.set(None);
        self.take_up_draft();
    }

    fn reasons(self) -> impl IntoView {
        let reasons = NotDone::ALL.map(|reason| {
            view! {
                <button type="button" class="button quiet" on:click=move |_| self.give_up(reason)>
                    {reason.words()}
                </button>
            }
        });
        view! {
            <details class="fold">
                <summary><span>{words::CANNOT_DO}</span></summary>
                <p class="soft">{words::WHY_NOT}</p>
                <div class="actions">{reasons.collect_view()}</div>
            </details>
        }
    }

    fn next_step(self) -> Option<impl IntoView> {
        let step = self.open.assessment().with(step_to_tell)?;
        Some(view! { <NextStep step locale=self.locale /> })
    }

    /// Those about the pins, in full where they are about what was just found.
    fn cautions(self) -> impl IntoView {
        move || {
            let cautions = self.open.assessment().with(|assessment| assessment.cautions.clone());
            cautions
                .into_iter()
                .map(|caution| match caution {
                    Caution::InverterPins | Caution::DamagedWindings => {
                        view! { <CautionInFull caution /> }.into_any()
                    }
                    _ => view! { <FoldedCaution caution /> }.into_any(),
                })
                .collect_view()
        }
    }

    fn meter_choice(self) -> impl IntoView {
        let leads = Signal::derive(move || self.open.with_job(answered::<LeadsChoice>));
        let leads_read = Signal::derive(move || {
            self.open.with_job(|job| {
                let (check, item) = Target::Leads.names();
                match job.answer(check, item) {
                    Some(Answer::Reading(reading)) => {
                        let Measured::Ohms(typed) = reading.measured;
                        Some(Shown::of(typed, &self.locale).full)
                    }
                    _ => None,
                }
            })
        });
        view! {
            <MeterChoice
                meter=self.meter
                leads
                leads_read
                say_leads=Callback::new(move |choice: LeadsChoice| self.say_choice("leads", choice))
                read_leads=Callback::new(move |()| self.choose(Target::Leads))
                locale=self.locale
            />
        }
    }
}
