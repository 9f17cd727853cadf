//! The plain pieces of a screen: a paragraph, a heading, a link, a button.
//!
//! Each is one function instead of markup at every place: the page holds it once.

use std::borrow::Cow;

use leptos::ev::MouseEvent;
use leptos::prelude::*;

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
