//! The state of the windings check while it is on the screen, and what is done to it.
//!
//! What was entered stands in the job; this holds only what would be lost without harm.

use diagnosis::{Caution, Choice, Finding, GearChoice, LeadsChoice, PinShape, Step, answered};
use job::{Answer, Name, NotDone};
use leptos::prelude::*;
use measure::windings::Pair;
use wording::{Locale, windings_page as words};

use crate::device;
use crate::forms::pair_reading::{Checked, Target, checked, understood};
use crate::forms::windings_diagram::{PinPicture, Shown};
use crate::forms::windings_meter::MeterInUse;
use crate::forms::windings_stage::{Stage, stage, suggested};
use crate::forms::windings_wiring::Noted;
use crate::open_job::OpenJob;
use crate::pages::settings::KEYBOARD;
use crate::parts::reading_field::FIELD;
use crate::session::HEADING;

/// The identifier of what was found, for moving the focus to it.
pub(super) const MEANING: &str = "meaning";
/// The setting for what the leads read last, as typed.
const LEADS: &str = "leads";

/// The screen's own state. A handle: cheap to copy.
#[derive(Clone, Copy)]
pub(super) struct Bench {
    pub(super) open: OpenJob,
    pub(super) locale: Locale,
    /// What the person chose to measure, in the place of what is suggested.
    pub(super) chosen: RwSignal<Option<Target>>,
    /// What is being measured.
    pub(super) target: Memo<Option<Target>>,
    pub(super) typed: RwSignal<String>,
    pub(super) meter: RwSignal<MeterInUse>,
    pub(super) own_keypad: RwSignal<bool>,
    pub(super) all_the_same: RwSignal<bool>,
    pub(super) changing_shape: RwSignal<bool>,
    pub(super) picture: Memo<PinPicture>,
    pub(super) stage: Memo<Stage>,
    /// What was found about the windings.
    pub(super) findings: Memo<Vec<Finding>>,
    pub(super) cautions: Memo<Vec<Caution>>,
}

impl Bench {
    pub(super) fn new(open: OpenJob) -> Self {
        let session = open.session();
        let locale = session.locale();
        let assessment = open.assessment();
        let chosen = RwSignal::new(None);
        let all_the_same = RwSignal::new(false);
        let target = Memo::new(move |_| chosen.get().or_else(|| assessment.with(suggested)));
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
            assessment
                .with(|assessment| open.with_job(|job| stage(job, assessment, all_the_same.get())))
        });
        let findings = Memo::new(move |_| {
            let of_windings = |finding: &&Finding| matches!(finding, Finding::Windings(_));
            assessment.with(|known| known.findings.iter().filter(of_windings).cloned().collect())
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
            findings,
            cautions: Memo::new(move |_| assessment.with(|known| known.cautions.clone())),
        };
        bench.take_up_draft();
        bench.remember_settings();
        bench.show_questions_from_their_top();
        bench
    }

    fn show_questions_from_their_top(self) {
        Effect::new(move |before: Option<Stage>| {
            let now = self.stage.get();
            if before.is_some_and(|before| before != now) {
                device::show_from_top(HEADING);
            }
            now
        });
    }

    fn remember_settings(self) {
        let session = self.open.session();
        Effect::new(move |before: Option<()>| {
            let meter = self.meter.get().remembered();
            let keyboard = if self.own_keypad.get() {
                "own"
            } else {
                "phone"
            };
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

    pub(super) fn write(self, text: String) {
        if let Some(target) = self.target.get_untracked() {
            let (check, item) = target.names();
            self.open.keep_draft(check, item, &text);
        }
        self.typed.set(text);
    }

    pub(super) fn choose(self, target: Target) {
        self.chosen.set(Some(target));
        self.take_up_draft();
        device::focus_in_place(FIELD);
    }

    pub(super) fn enter(self, answer: Answer) {
        let Some(target) = self.target.get_untracked() else {
            return;
        };
        let (check, item) = target.names();
        if target == Target::Leads
            && let Answer::Reading(reading) = &answer
        {
            let typed = reading.typed.as_str();
            self.open.session().keep_setting(LEADS, typed);
        }
        if self.open.answer(check, item, answer) {
            self.chosen.set(None);
            self.take_up_draft();
            self.open.session().announce(self.said());
            if self.target.get_untracked().is_some() {
                device::focus_in_place(FIELD);
            } else {
                // The last reading: the pins fill, and that is at the top.
                device::show_from_top(MEANING);
            }
        }
    }

    pub(super) fn undo(self) {
        self.open.undo();
        self.chosen.set(None);
        self.take_up_draft();
    }

    /// Goes back to what is suggested. What was typed stays a draft.
    pub(super) fn leave(self) {
        self.chosen.set(None);
        self.take_up_draft();
    }

    /// The words for going back, where the person chose something that needs no reading.
    pub(super) fn leaving(self) -> Option<&'static str> {
        match self.chosen.get()? {
            Target::Pair(pair) => self.is_read(pair).then_some(words::LEAVE_AS_READ),
            Target::Leads | Target::Ask(_) => Some(words::BACK_TO_PINS),
        }
    }

    /// Whether the question on the screen can be answered with a reason for not measuring: a pair
    /// that was read keeps its reading.
    pub(super) fn can_give_up(self) -> bool {
        let pair = self.target.get().and_then(Target::pair);
        pair.is_some_and(|pair| !self.is_read(pair))
    }

    fn is_read(self, pair: Pair) -> bool {
        self.picture
            .with(|picture| picture.line(pair).reading.is_some())
    }

    pub(super) fn give_up(self, reason: NotDone) {
        if let Some(target) = self.target.get_untracked() {
            let (check, item) = target.names();
            if self.open.answer(check, item, Answer::NotDone(reason)) {
                self.chosen.set(None);
                self.take_up_draft();
            }
        }
    }

    pub(super) fn say_gear(self, choice: GearChoice) {
        self.say_choice("start-gear", choice);
    }

    /// Everything is off now: what was read before no longer counts, and stays to be read.
    pub(super) fn begin_again_bare(self) {
        let read_before: Vec<_> = self.open.with_job(|job| {
            let readings = Pair::ALL.into_iter().flat_map(|pair| {
                let (check, item) = Target::Pair(pair).names();
                job.answers(check, item)
            });
            readings.map(|(entry, _)| entry.id.clone()).collect()
        });
        for entry in &read_before {
            self.open.strike(entry);
        }
        self.say_gear(GearChoice::Off);
        self.chosen.set(None);
        self.take_up_draft();
        device::show_from_top(HEADING);
    }

    pub(super) fn say_choice<C: Choice>(self, item: &str, choice: C) {
        if let Ok(name) = Name::new(choice.name()) {
            self.open.answer("windings", item, Answer::Choice(name));
        }
    }

    pub(super) fn note_wiring(self, noted: Noted, name: &str) {
        let (check, item) = noted.names();
        if let Some(answer) = Noted::answer(name) {
            self.open.answer(check, item, answer);
        }
    }

    /// What was found and what stands beside the pins, for the status region.
    fn said(self) -> String {
        let findings = self.findings.get_untracked();
        let findings = findings
            .iter()
            .map(|found| wording::finding(found, &self.locale));
        let labels = self
            .picture
            .with_untracked(|picture| words::labels_said(picture.pins));
        findings.chain(labels).collect::<Vec<_>>().join(" ")
    }

    /// Whether the wiring is what would help next.
    pub(super) fn wants_wiring(self) -> bool {
        self.open
            .assessment()
            .with(|known| known.next.contains(&Step::NoteWiring))
    }

    pub(super) fn any_read(self) -> bool {
        self.picture
            .with(|picture| picture.lines.iter().any(|line| line.reading.is_some()))
    }

    /// What is being typed, as it is understood where it can be.
    pub(super) fn being_typed(self) -> String {
        let text = self.typed.get();
        let target = self.target.get().unwrap_or(Target::Leads);
        let understood = understood(&text, target, self.meter.get().meter(), self.locale.degrees);
        understood.map_or(text, |reading| Shown::of(reading, &self.locale).short)
    }

    /// What was read with the probes together.
    pub(super) fn leads_read(self) -> Option<String> {
        let (check, item) = Target::Leads.names();
        self.open.with_job(|job| match job.answer(check, item) {
            Some(Answer::Reading(reading)) => Some(Shown::of(reading.measured, &self.locale).full),
            _ => None,
        })
    }

    /// What the leads read in an earlier job, as typed, where nothing was read in this one.
    pub(super) fn leads_before(self) -> Option<String> {
        let before = self.open.session().setting(LEADS)?;
        self.leads_read().is_none().then_some(before)
    }

    /// Enters what the leads read in an earlier job.
    pub(super) fn take_leads(self) {
        let before = self.open.session().setting(LEADS).unwrap_or_default();
        let meter = self.meter.get_untracked().meter();
        if let Checked::Fine(answer) = checked(&before, Target::Leads, meter, self.locale.degrees) {
            let (check, item) = Target::Leads.names();
            self.open.answer(check, item, answer);
        }
    }

    /// What was said of the leads.
    pub(super) fn leads(self) -> Option<LeadsChoice> {
        self.open.with_job(answered)
    }
}
