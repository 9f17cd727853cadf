//! A task that asks its questions one at a time: the question, what its answers mean and have
//! changed, and what was answered.

mod told;

use std::collections::BTreeSet;

use diagnosis::{Ask, Clue, Finding, StartTrials, Task, Whole};
use job::{Answer, Name, Origin};
use leptos::prelude::*;
use wording::{Locale, Words, page, whole, windings_page as words};

use super::check_drawings::drawing_of;
use super::choice_list::{ChoiceList, Offer};
use super::how_to::HowTo;
use super::practice::instrument;
use super::settings::KEYBOARD;
use super::suspects::whole_of;
use crate::device;
use crate::forms::pair_reading::Target;
use crate::forms::questions::{Asked, asked, chosen, first_open};
use crate::forms::windings_meter::MeterInUse;
use told::{answers, changed, meaning};

use crate::frame::Heading;
use crate::open_job::OpenJob;
use crate::parts::cannot_do::CannotDo;
use crate::parts::live::{live, tap};
use crate::parts::plain::{button, link, paragraph};
use crate::parts::reading_field::{FIELD, ReadingField};
use crate::route::{Place, Route};
use crate::session::HEADING;

/// The screen's own state. A handle: cheap to copy.
#[derive(Clone, Copy)]
struct Asking {
    open: OpenJob,
    task: Task,
    locale: Locale,
    /// What is to be answered again, one after another, in the place of what is next.
    again: RwSignal<Vec<Ask>>,
    /// What is asked.
    item: Memo<Option<Ask>>,
    typed: RwSignal<String>,
    /// Whether something was answered since the screen is shown.
    has_answered: RwSignal<bool>,
}

impl Asking {
    fn new(open: OpenJob, task: Task) -> Self {
        let again = RwSignal::new(Vec::new());
        let item = Memo::new(move |_| {
            let first = again.with(|asks: &Vec<Ask>| asks.first().copied());
            first.or_else(|| open.with_job(|job| first_open(task, job)))
        });
        let asking = Self {
            open,
            task,
            locale: open.session().locale(),
            again,
            item,
            typed: RwSignal::new(String::new()),
            has_answered: RwSignal::new(false),
        };
        Effect::new(move |_| asking.ask_again_what_is_worth_it());
        Effect::new(move |_| {
            let draft = asking.item.get().and_then(|item| asking.draft_of(item));
            asking.typed.set(draft.unwrap_or_default());
        });
        asking
    }

    /// What was answered is asked again where a change made it old, or where it is in doubt.
    fn ask_again_what_is_worth_it(self) {
        let known = self.open.weighing().now();
        let whole = known.as_deref().and_then(whole_of);
        let is_next = |whole: &Whole| whole.next.iter().any(|one| one.task == self.task);
        if whole.is_some_and(is_next)
            && !self.has_answered.get_untracked()
            && self.item.get_untracked().is_none()
        {
            let asks = untrack(|| self.open.with_job(|job| self.task.asks(job)));
            self.again.set(asks);
        }
    }

    fn draft_of(self, item: Ask) -> Option<String> {
        let (check, item) = item.names();
        self.open.draft(check, item)
    }

    fn write(self, text: String) {
        if let Some(item) = self.item.get_untracked() {
            let (check, item) = item.names();
            self.open.keep_draft(check, item, &text);
        }
        self.typed.set(text);
    }

    fn enter(self, item: Ask, answer: Answer) {
        let (check, name) = item.names();
        if self.open.answer(check, name, answer) {
            self.again.update(|asks| asks.retain(|ask| *ask != item));
            self.has_answered.set(true);
            self.open.session().announce(self.said());
            self.show_next();
        }
    }

    /// What this check says now, for the status region.
    fn said(self) -> String {
        let findings = self.open.assessment().with_untracked(|known| {
            let of_check = |finding: &&Finding| Task::Check(finding.check()) == self.task;
            let findings = known.findings.iter().filter(of_check);
            findings
                .map(|finding| wording::finding(finding, &self.locale))
                .collect::<Vec<_>>()
        });
        // The latest stands last.
        findings
            .last()
            .map_or(page::NOTED, String::as_str)
            .to_owned()
    }

    fn choose(self, item: Ask, name: &str) {
        if let Ok(name) = Name::new(name) {
            self.enter(item, Answer::Choice(name));
        }
    }

    fn ask_again(self, item: Ask) {
        self.again.set(vec![item]);
        self.show_next();
    }

    /// Then the keypad takes its room.
    fn asks_for_number(self) -> bool {
        self.item.get().map(asked) == Some(Asked::Number)
    }

    /// The focus goes where the next answer is given: to the field, or to the question.
    fn show_next(self) {
        match self.item.get_untracked().map(asked) {
            Some(Asked::Number) => device::focus_in_place(FIELD),
            Some(_) => device::focus(QUESTION),
            None if matches!(self.task, Task::Check(_)) => device::focus(MEANING),
            // A clue by itself finds nothing: what it moved follows below the heading.
            None => device::focus(HEADING),
        }
    }
}

/// The identifier of the question.
const QUESTION: &str = "item-question";
/// The identifier of what was found.
const MEANING: &str = "item-meaning";

/// Asks the questions of a task.
#[component]
pub fn TaskScreen(
    /// The task.
    task: Task,
) -> impl IntoView {
    let asking = Asking::new(OpenJob::here(), task);
    let hint = match task {
        Task::Check(check) => check.hint(),
        _ => None,
    };
    view! {
        <div class="screen asking" class:compact=move || asking.asks_for_number()>
            <Heading text=whole::name(task)/>
            {way_to_the_clock(asking)}
            {live(move || hint.filter(|_| !asking.asks_for_number()).map(|hint| paragraph("soft", hint)))}
            // What is asked stands in front of what was answered; at the end, what it all means.
            {live(move || match asking.item.get() {
                Some(item) => view! {
                    {drawing(item)}
                    {(!matches!(task, Task::Check(_))).then(|| view! { <HowTo task/> })}
                    {instrument_of(asking)}
                    {question(asking, item)}
                    {changed(asking)}
                    {live(move || meaning(asking))}
                    {live(move || answers(asking))}
                }
                .into_any(),
                None => view! {
                    {changed(asking)}
                    {live(move || meaning(asking))}
                    {live(move || answers(asking))}
                    {ways_on(asking)}
                }
                .into_any(),
            })}
        </div>
    }
}

/// What it looks like, where the answers leave room for it.
fn drawing(item: Ask) -> Option<impl IntoView> {
    let has_room = !matches!(asked(item), Asked::Ticks(_));
    let Ask::Item(of_check) = item else {
        return None;
    };
    let inside = drawing_of(of_check.check()).filter(|_| has_room)?;
    Some(view! {
        <div class="check-drawing squared">
            <svg class="drawing" viewBox="0 0 320 120" aria-hidden="true" inner_html=inside></svg>
        </div>
    })
}

/// A restart is better timed than remembered. A simulated one answers at once.
fn way_to_the_clock(asking: Asking) -> Option<AnyView> {
    let is_timed = matches!(
        asking.task,
        Task::Clue(Clue::Restart | Clue::GoodDevice | Clue::StartKit)
    );
    (is_timed && asking.open.origin() != Origin::Practice).then(|| {
        let to = Route::Job(asking.open.id(), Place::Check(StartTrials::NAME.to_owned()));
        link("button wide", to.link(), wording::start_trials::TIME_IT)
    })
}

/// What examines a machine to practise on.
fn instrument_of(asking: Asking) -> impl IntoView {
    let target = move || asking.item.get().map(Target::Ask);
    let fill = move |text| asking.write(text);
    let enter = move |answer| {
        if let Some(item) = asking.item.get_untracked() {
            asking.enter(item, answer);
        }
    };
    instrument(asking.open, asking.task, target, fill, enter)
}

fn question(asking: Asking, item: Ask) -> impl IntoView {
    let said = whole::ask(item);
    let answer = match asked(item) {
        Asked::Number => number(asking, item).into_any(),
        Asked::Ticks(offers) => ticks(asking, item, offers).into_any(),
        Asked::OneOf(offers) => one_of(asking, item, offers).into_any(),
    };
    let is_number = matches!(asked(item), Asked::Number);
    view! {
        <section class="asked lower">
            // A number's question is the label of its field.
            {(!is_number).then(|| view! { <h2 id=QUESTION tabindex="-1">{said.ask}</h2> })}
            {said.how.map(|how| paragraph("soft", how))}
            {answer}
            {(!has_reading(asking, item)).then(|| view! {
                <CannotDo give_up=Callback::new(move |reason| asking.enter(item, Answer::NotDone(reason)))/>
            })}
        </section>
    }
}

fn number(asking: Asking, item: Ask) -> impl IntoView {
    let session = asking.open.session();
    let meter = MeterInUse::recalled(&session.setting(MeterInUse::SETTING).unwrap_or_default());
    let own_keypad = session.setting(KEYBOARD).as_deref() != Some("phone");
    // Degrees can lie below zero, and the keypad here has no sign.
    let own_keypad = own_keypad && item.unit() != Some(job::Unit::Celsius);
    view! {
        <ReadingField
            target=Signal::derive(move || Target::Ask(item))
            meter=Signal::derive(move || meter.meter())
            typed=asking.typed
            write=Callback::new(move |text| asking.write(text))
            own_keypad=Signal::derive(move || own_keypad)
            locale=asking.locale
            entered=Callback::new(move |answer| asking.enter(item, answer))
        >
            {undo(asking.open)}
        </ReadingField>
    }
}

fn undo(open: OpenJob) -> impl IntoView {
    live(move || {
        open.can_undo()
            .then(|| button("plain", words::UNDO, move |_| open.undo()))
    })
}

fn one_of(asking: Asking, item: Ask, offers: Vec<Offer>) -> impl IntoView {
    let known = offers.clone();
    view! {
        <ChoiceList
            offers
            chosen=Signal::derive(move || asking.open.with_job(|job| chosen(item, &known, job)))
            choose=move |name: &'static str| asking.choose(item, name)
            labelled_by=QUESTION
        />
    }
}

fn ticks(asking: Asking, item: Ask, offers: Vec<Offer>) -> impl IntoView {
    let ticked = RwSignal::new(Vec::<&'static str>::new());
    let toggle = move |sign: &'static str| {
        ticked.update(|signs| match signs.iter().position(|seen| *seen == sign) {
            Some(place) => {
                signs.remove(place);
            }
            None => signs.push(sign),
        });
    };
    let enter = move |_| {
        let mut names = BTreeSet::new();
        for sign in ticked.get_untracked() {
            names.extend(Name::new(sign));
        }
        asking.enter(item, Answer::Choices(names));
    };
    let rows = offers.into_iter().map(|offer| {
        view! {
            <li>
                <label class="choice tick">
                    <input
                        type="checkbox"
                        prop:checked=move || ticked.read().contains(&offer.name)
                        on:change=move |_| toggle(offer.name)
                    />
                    <span class="words">{offer.words}</span>
                </label>
            </li>
        }
    });
    // Nobody sees a past.
    let none = match item {
        Ask::Past => page::NONE_OF_THESE,
        _ => page::NOTHING_TO_TICK,
    };
    view! {
        <div role="group" aria-labelledby=QUESTION>
            <ul class="choices">{rows.collect_view()}</ul>
        </div>
        <button type="button" class="button wide" on:click=tap(enter)>
            {live(move || if ticked.read().is_empty() { none } else { page::ENTER_TICKS })}
        </button>
    }
}

/// Who has measured can't say that it can't be done.
fn has_reading(asking: Asking, item: Ask) -> bool {
    untrack(|| asking.open.with_job(|job| item.has_reading(job)))
}

fn ways_on(asking: Asking) -> impl IntoView {
    view! {
        <div class="lower">
            {link("button wide", Route::Job(asking.open.id(), Place::Do).link(), page::BACK_TO_JOB)}
            {undo(asking.open)}
        </div>
    }
}
