//! The picture of the three pins, which fills itself in as readings come.
//!
//! Lines and circles are one drawing; words and buttons lie over it, so that they keep the text
//! size that the reader chose. For screen readers the drawing is silent: the buttons on the lines
//! say what they hold, and [`super::pin_table`] says the same in rows.

use diagnosis::Choice;
use leptos::prelude::*;
use measure::windings::{Label, Pair, Pin, Role};
use wording::windings_page as words;

use super::pin_layout::{Course, Side, course, pin_place};
use crate::forms::windings_diagram::{Line, PinPicture};
use crate::parts::live::{live, tap};

/// The diagram. `typed` is what stands in the field, already as the reader should see it.
#[component]
pub fn PinDiagram(
    /// What to show.
    #[prop(into)]
    picture: Signal<PinPicture>,
    /// The line that is being measured.
    #[prop(into)]
    active: Signal<Option<Pair>>,
    /// What is being typed for it.
    #[prop(into)]
    typed: Signal<String>,
    /// A line was chosen.
    choose: Callback<Pair>,
) -> impl IntoView {
    view! {
        <div
            class="pin-diagram squared"
            data-shape=move || picture.with(|picture| picture.shape.name())
        >
            <svg class="pin-lines" viewBox="0 0 100 100" preserveAspectRatio="none" aria-hidden="true">
                {Pair::ALL.map(|pair| drawn_line(pair, picture, active, choose)).collect_view()}
            </svg>
            <svg class="pin-circles" aria-hidden="true">
                {Pin::ALL.map(|pin| circle(pin, picture, active)).collect_view()}
            </svg>
            {Pin::ALL.map(|pin| pin_label(pin, picture)).collect_view()}
            {Pair::ALL.map(|pair| line_button(pair, picture, active, typed, choose)).collect_view()}
        </div>
    }
}

fn drawn_line(
    pair: Pair,
    picture: Signal<PinPicture>,
    active: Signal<Option<Pair>>,
    choose: Callback<Pair>,
) -> impl IntoView {
    let path = Memo::new(move |_| picture.with(|picture| course(picture.shape, pair).path));
    let class = move || {
        if active.get() == Some(pair) {
            "pin-line active"
        } else if picture.with(|picture| picture.line(pair).reading.is_some()) {
            "pin-line read"
        } else {
            "pin-line"
        }
    };
    view! {
        <path class=class d=move || path.get() />
        // A thumb is wider than a line. Keyboards and screen readers have the button instead.
        <path class="pin-line-reach" d=move || path.get() on:click=tap(move |_| choose.run(pair)) />
    }
}

fn circle(pin: Pin, picture: Signal<PinPicture>, active: Signal<Option<Pair>>) -> impl IntoView {
    let place = Memo::new(move |_| picture.with(|picture| pin_place(picture.shape, pin).at));
    let x = move || format!("{}%", place.get().x);
    let y = move || format!("{}%", place.get().y);
    let class = move || {
        let touched = active.get().is_some_and(|pair| pair.has(pin));
        let known = picture.with(|picture| filled(picture.label(pin)));
        if touched {
            format!("pin touched {known}")
        } else {
            format!("pin {known}")
        }
    };
    view! {
        <g class=class>
            <circle class="pin-ring" cx=x cy=y />
            <circle class="pin-body" cx=x cy=y />
            <text class="pin-number" x=x y=y dy="0.36em">{pin.number()}</text>
        </g>
    }
}

/// How a pin is filled: the names are told in the order common, run, start, and fill in it.
fn filled(label: Label) -> &'static str {
    match label {
        Label::Nothing => "bare",
        Label::StartOrRun => "either",
        Label::Is { role, surely } => match (role, surely) {
            (Role::Common, true) => "named sure first",
            (Role::Common, false) => "named first",
            (Role::Run, true) => "named sure second",
            (Role::Run, false) => "named second",
            (Role::Start, true) => "named sure third",
            (Role::Start, false) => "named third",
        },
    }
}

fn pin_label(pin: Pin, picture: Signal<PinPicture>) -> impl IntoView {
    let place = Memo::new(move |_| picture.with(|picture| pin_place(picture.shape, pin)));
    let label = Memo::new(move |_| picture.with(|picture| picture.label(pin)));
    let class = move || {
        let side: Side = place.get().label;
        format!("pin-label {} {}", side.name(), filled(label.get()))
    };
    view! {
        <span
            class=class
            aria-hidden="true"
            style:left=move || format!("{}%", place.get().at.x)
            style:top=move || format!("{}%", place.get().at.y)
        >
            {live(move || wording::label(label.get()))}
        </span>
    }
}

fn line_button(
    pair: Pair,
    picture: Signal<PinPicture>,
    active: Signal<Option<Pair>>,
    typed: Signal<String>,
    choose: Callback<Pair>,
) -> impl IntoView {
    let line = Memo::new(move |_| picture.with(|picture| picture.line(pair).clone()));
    let place = Memo::new(move |_| {
        let Course { words, .. } = picture.with(|picture| course(picture.shape, pair));
        words
    });
    let is_active = Memo::new(move |_| active.get() == Some(pair));
    // Worked out once a keystroke, however many read it.
    let being_typed = Memo::new(move |_| {
        let text = is_active.get().then(|| typed.get());
        text.filter(|text| !text.is_empty())
    });
    let value = move || being_typed.get().or_else(|| line.with(Line::value));
    let is_blank =
        Memo::new(move |_| line.with(Line::is_blank) && being_typed.with(Option::is_none));
    let name = move || {
        line.with(|line| {
            let reading = line.reading.as_ref().map(|reading| reading.full.as_str());
            words::line_name(pair, reading, &line.expected)
        })
    };
    view! {
        <button
            type="button"
            class="pin-words"
            class:active=is_active
            aria-pressed=move || is_active.get().to_string()
            style:left=move || format!("{}%", place.get().x)
            style:top=move || format!("{}%", place.get().y)
            on:click=tap(move |_| choose.run(pair))
        >
            <span class="unseen">{live(name)}</span>
            <span class="pin-value" aria-hidden="true" class:given-up=move || line.with(Line::is_given_up)>
                {live(move || value().unwrap_or_default())}
                <span class="pin-blank" hidden=move || !is_blank.get()>
                    "Ω"
                </span>
            </span>
            {live(move || line.with(small_print))}
        </button>
    }
}

/// What stands under a line's value: what it read before, what to expect, which winding it is.
fn small_print(line: &Line) -> impl IntoView + use<> {
    let earlier = line.earlier.last().map(|earlier| {
        view! { <span class="pin-earlier" aria-hidden="true"><s>{earlier.short.clone()}</s></span> }
    });
    let expected = line.expected.iter().enumerate().map(|(place, value)| {
        let text = if place == 0 {
            value.clone()
        } else {
            words::or_value(value)
        };
        view! { <span class="pin-expected" aria-hidden="true">{text}</span> }
    });
    let winding = line.winding.clone().map(|winding| {
        view! { <span class="pin-winding" aria-hidden="true">{winding}</span> }
    });
    (earlier, expected.collect_view(), winding)
}
