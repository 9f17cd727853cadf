//! Entering a temperature: where, what the thermometer shows, and when, which is now.

use diagnosis::Compartment;
use job::{Content, Place, Spot};
use leptos::html;
use leptos::prelude::*;
use wording::{DecimalMark, Words, cold_page as words, parse_error, windings_page};

use super::Bench;
use crate::device;
use crate::forms::cold_entry::{Looked, NotTaken, looked, units};
use crate::forms::when::moment_at;
use crate::forms::windings_keys::{Key, unit_after};
use crate::pages::settings::KEYBOARD;
use crate::parts::keypad::Keypad;
use crate::parts::live::live;
use crate::parts::plain::{button, chip, paragraph};
use crate::parts::reading_field::pressed;

/// What stands below the field.
#[derive(Debug, Clone, PartialEq)]
enum Remark {
    Refused(String),
    Unusual(Spot),
}

/// What is being typed.
#[derive(Clone, Copy)]
struct Typing {
    bench: Bench,
    field: NodeRef<html::Input>,
    typed: RwSignal<String>,
    time: RwSignal<String>,
    remark: RwSignal<Option<Remark>>,
}

/// Where what is typed is kept until it is entered: the check and item of a draft.
const DRAFT: (&str, &str) = ("cool-down", "temperature");
const FIELD: &str = "temperature";
const PLACES: &str = "temperature-where";

impl Typing {
    fn write(self, text: String) {
        self.bench.open.keep_draft(DRAFT.0, DRAFT.1, &text);
        self.remark.set(None);
        self.typed.set(text);
    }

    fn enter(self) {
        let degrees = self.bench.open.session().locale().degrees;
        let at = match moment_at(&self.time.get_untracked(), device::now()) {
            Err(why) => {
                return self
                    .remark
                    .set(Some(Remark::Refused(why.words().to_owned())));
            }
            Ok(at) => at,
        };
        let place = self.bench.place.get_untracked();
        match looked(&self.typed.get_untracked(), degrees, place, at) {
            Looked::Fine(spot) => self.take(spot),
            Looked::Unusual(spot) => self.remark.set(Some(Remark::Unusual(spot))),
            Looked::Refused(why) => self.remark.set(Some(Remark::Refused(refused(&why)))),
        }
    }

    fn take(self, spot: Spot) {
        if self.bench.open.proved(Content::Spot(spot)) {
            self.write(String::new());
            self.time.set(String::new());
            self.bench.open.session().announce(wording::page::NOTED);
            device::focus_in_place(FIELD);
        }
    }

    fn press(self, key: Key) {
        let degrees = self.bench.open.session().locale().degrees;
        if let Some(text) = pressed(self.field, key, units(degrees)) {
            self.write(text);
        }
    }
}

fn refused(why: &NotTaken) -> String {
    match why {
        NotTaken::Unreadable(error) => parse_error(error).line(),
        NotTaken::Impossible => words::IMPOSSIBLE.to_owned(),
    }
}

/// The places, the field with its keypad, the time.
pub(super) fn reading(bench: Bench) -> AnyView {
    let kept = bench.open.draft(DRAFT.0, DRAFT.1).unwrap_or_default();
    let typing = Typing {
        bench,
        field: NodeRef::new(),
        typed: RwSignal::new(kept),
        time: RwSignal::new(String::new()),
        remark: RwSignal::new(None),
    };
    Effect::new(move |_| {
        let text = typing.typed.get();
        if let Some(field) = typing.field.get()
            && field.value() != text
        {
            field.set_value(&text);
        }
    });
    view! {
        <section class="asked">
            {places(bench)}
            {form(typing)}
        </section>
    }
    .into_any()
}

/// The compartments and the room in front, all others behind a line.
fn places(bench: Bench) -> AnyView {
    let kind = bench.open.with_job(diagnosis::answered);
    let front = Compartment::of_kind(kind).iter().map(|one| one.place());
    let front: Vec<Place> = front.chain([Place::Room]).collect();
    let others = Place::ALL.into_iter().filter(|one| !front.contains(one));
    let others: Vec<Place> = others.collect();
    let is_folded_one = others.contains(&bench.place.get_untracked());
    let row = move |places: Vec<Place>| {
        places
            .into_iter()
            .map(|place| {
                chip(
                    place.words(),
                    move || bench.place.get() == place,
                    move || bench.place.set(place),
                )
            })
            .collect::<Vec<_>>()
    };
    view! {
        <h2 id=PLACES>{words::WHERE}</h2>
        <div class="chips" role="group" aria-labelledby=PLACES>{row(front)}</div>
        <details class="fold" open=is_folded_one>
            <summary><span>{words::OTHER_PLACES}</span></summary>
            <div class="chips" role="group" aria-label=words::OTHER_PLACES>{row(others)}</div>
        </details>
    }
    .into_any()
}

fn form(typing: Typing) -> AnyView {
    let session = typing.bench.open.session();
    let locale = session.locale();
    let own_keypad = session.setting(KEYBOARD).as_deref() != Some("phone");
    let next_unit = Memo::new(move |_| unit_after(&typing.typed.read(), units(locale.degrees)));
    let mark = match locale.decimal {
        DecimalMark::Point => '.',
        DecimalMark::Comma => ',',
    };
    let is_refused = move || matches!(typing.remark.get(), Some(Remark::Refused(_)));
    let echo = move || {
        let place = typing.bench.place.get();
        match looked(&typing.typed.read(), locale.degrees, place, device::now()) {
            Looked::Fine(spot) | Looked::Unusual(spot) => {
                Some(wording::measured(spot.reading.measured, &locale))
            }
            Looked::Refused(_) => None,
        }
    };
    view! {
        <form
            class="reading"
            on:submit=move |event| {
                event.prevent_default();
                typing.enter();
            }
        >
            <label class="reading-question" for=FIELD>{words::READ}</label>
            <div class="reading-row" class:refused=is_refused>
                <div class="reading-box">
                    <input
                        id=FIELD
                        class="reading-input"
                        type="text"
                        node_ref=typing.field
                        inputmode=if own_keypad { "none" } else { "text" }
                        autocomplete="off"
                        autocapitalize="off"
                        spellcheck="false"
                        maxlength="24"
                        aria-describedby="temperature-remark temperature-echo"
                        aria-invalid=move || is_refused().to_string()
                        on:input=move |event| typing.write(event_target_value(&event))
                    />
                    <output class="reading-echo" id="temperature-echo" for=FIELD>{live(echo)}</output>
                </div>
                <button class="button reading-enter" class:under-keypad=own_keypad>{words::ENTER}</button>
            </div>
            <div id="temperature-remark" role="alert">
                {live(move || typing.remark.get().map(|remark| remark_view(typing, remark)))}
            </div>
            {own_keypad.then(|| view! {
                <Keypad
                    mark
                    next_unit
                    press=Callback::new(move |key| typing.press(key))
                    enter=Callback::new(move |()| typing.enter())
                    signed=true
                />
            })}
            <details class="fold">
                <summary><span>{words::WHEN}</span></summary>
                <div class="minutes-ago">
                    <label for="read-at">{words::READ_AT}</label>
                    <input
                        id="read-at"
                        type="text"
                        autocomplete="off"
                        maxlength="10"
                        prop:value=typing.time
                        on:input=move |event| typing.time.set(event_target_value(&event))
                    />
                </div>
                {paragraph("soft small", words::TIME_HINT)}
            </details>
        </form>
    }
    .into_any()
}

fn remark_view(typing: Typing, remark: Remark) -> AnyView {
    match remark {
        Remark::Refused(text) => paragraph("remark refusal", text),
        Remark::Unusual(spot) => view! {
            <div class="remark doubt">
                {paragraph("", words::UNUSUAL)}
                <div class="actions">
                    {button("button", windings_page::YES_ENTER_IT, move |_| typing.take(spot.clone()))}
                    {button("button quiet", windings_page::CHANGE_IT, move |_| {
                        typing.remark.set(None);
                        device::focus_in_place(FIELD);
                    })}
                </div>
            </div>
        }
        .into_any(),
    }
}
