//! The plain pieces of a screen: a paragraph, a heading, a link, a button, a field.
//!
//! Each is one function instead of markup at every place: the page holds it once.

use std::borrow::Cow;

use leptos::ev::MouseEvent;
use leptos::prelude::*;

use super::live::tap;

/// A text that was there from the start, or one that was put together.
pub type Words = Cow<'static, str>;

/// A paragraph; without a class where that is empty.
pub fn paragraph(class: &'static str, words: impl Into<Words>) -> AnyView {
    let words = words.into();
    if class.is_empty() {
        view! { <p>{words}</p> }.into_any()
    } else {
        view! { <p class=class>{words}</p> }.into_any()
    }
}

/// The heading of a section.
pub fn section_heading(words: impl Into<Words>) -> AnyView {
    let words = words.into();
    view! { <h2>{words}</h2> }.into_any()
}

/// A link within the page.
pub fn link(class: &'static str, to: impl Into<String>, words: impl Into<Words>) -> AnyView {
    let (to, words) = (to.into(), words.into());
    view! { <a class=class href=to>{words}</a> }.into_any()
}

/// A button that doesn't send a form.
pub fn button(
    class: &'static str,
    words: impl Into<Words>,
    then: impl FnMut(MouseEvent) + 'static,
) -> AnyView {
    boxed_button(class, words.into(), Box::new(then))
}

fn boxed_button(class: &'static str, words: Words, then: Box<dyn FnMut(MouseEvent)>) -> AnyView {
    view! {
        <button type="button" class=class on:click=then>
            {words}
        </button>
    }
    .into_any()
}

/// Why something wasn't taken, read out as soon as it stands there.
pub fn refusal(why: impl Into<Words>) -> AnyView {
    let why = why.into();
    view! { <p class="remark refusal" role="alert">{why}</p> }.into_any()
}

/// A short field with its name before it, for a form that has its own button.
/// `keyboard` is what a phone shows, "text" or "decimal"; `longest` how many characters can be typed.
pub fn short_input(
    id: &'static str,
    name: impl Into<Words>,
    (keyboard, longest): (&'static str, &'static str),
    typed: impl Fn(String) + 'static,
) -> AnyView {
    let name = name.into();
    view! {
        <label for=id>{name}</label>
        <input
            id=id
            type="text"
            inputmode=keyboard
            autocomplete="off"
            maxlength=longest
            on:input=move |event| typed(event_target_value(&event))
        />
    }
    .into_any()
}

/// The same on a line of its own.
pub fn short_field(
    id: &'static str,
    name: impl Into<Words>,
    (keyboard, longest): (&'static str, &'static str),
    typed: impl Fn(String) + 'static,
) -> AnyView {
    view! { <div class="minutes-ago">{short_input(id, name, (keyboard, longest), typed)}</div> }
        .into_any()
}

/// One of several that are chosen by a tap; the one that counts is pressed.
pub fn chip(
    words: &'static str,
    is_chosen: impl Fn() -> bool + Send + 'static,
    choose: impl Fn() + 'static,
) -> AnyView {
    let pressed = move || is_chosen().to_string();
    view! {
        <button type="button" class="chip" aria-pressed=pressed on:click=tap(move |_| choose())>
            {words}
        </button>
    }
    .into_any()
}
