//! The keypad under the thumb: digits, decimal mark, over range, unit, back, enter.
//!
//! The phone's own keyboard hides half of a small screen, has no over range, and differs from
//! maker to maker. The field stays a real one: hardware keys and paste go on working.

use leptos::prelude::*;
use wording::windings_page as words;

use crate::forms::windings_keys::Key;
use crate::parts::live::{live, tap};
use crate::parts::plain::button;

/// The keypad. It never takes the focus from the field.
#[component]
pub fn Keypad(
    /// The decimal mark of the reader's language.
    mark: char,
    /// The unit that the unit key would change to.
    #[prop(into)]
    next_unit: Signal<&'static str>,
    /// A key that writes was pressed.
    press: Callback<Key>,
    /// What was typed is to be entered.
    enter: Callback<()>,
    /// Whether it has a key for below zero in the place of over range.
    #[prop(optional)]
    signed: bool,
) -> impl IntoView {
    let (third, third_text, third_name) = if signed {
        (Key::Sign, "±", words::SIGN_KEY)
    } else {
        (Key::OverRange, words::OVER_RANGE, words::OVER_RANGE_KEY)
    };
    let key = move |key: Key, text: String| writing_key(key, text, None, press);
    let digits = move |from: u8| {
        (from..from + 3)
            .map(|digit| key(Key::Digit(digit), digit.to_string()))
            .collect_view()
    };
    let unit_name = move || words::unit_key(next_unit.get());
    view! {
        // Pressing a key must not move the caret out of the field.
        <div
            class="keypad"
            role="group"
            aria-label=words::KEYPAD
            on:pointerdown=|event| event.prevent_default()
            on:mousedown=|event| event.prevent_default()
        >
            {digits(1)}
            {writing_key(Key::Backspace, "⌫".to_owned(), Some(words::BACKSPACE_KEY), press)}
            {digits(4)}
            <button type="button" class="key side" on:click=tap(move |_| press.run(Key::NextUnit))>
                <span aria-hidden="true">{live(move || next_unit.get())}</span>
                <span class="unseen">{live(unit_name)}</span>
            </button>
            {digits(7)}
            {writing_key(third, third_text.to_owned(), Some(third_name), press)}
            {writing_key(Key::DecimalMark(mark), mark.to_string(), Some(words::DECIMAL_KEY), press)}
            {key(Key::Digit(0), "0".to_owned())}
            {button("key enter", words::ENTER, move |_| enter.run(()))}
        </div>
    }
}

fn writing_key(
    key: Key,
    text: String,
    name: Option<&'static str>,
    press: Callback<Key>,
) -> impl IntoView {
    let class = match key {
        Key::Digit(_) | Key::DecimalMark(_) => "key",
        Key::OverRange | Key::Sign | Key::NextUnit | Key::Backspace => "key side",
    };
    view! {
        <button type="button" class=class on:click=tap(move |_| press.run(key))>
            <span aria-hidden=name.map(|_| "true")>{text}</span>
            {name.map(|name| view! { <span class="unseen">{name}</span> })}
        </button>
    }
}
