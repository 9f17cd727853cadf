//! A question with a few answers, one tap each.

use crate::parts::live::tap;
use diagnosis::Choice;
use leptos::prelude::*;
use wording::Words;

/// One answer that is offered.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Offer {
    /// The name by which a job keeps it.
    pub name: &'static str,
    /// What it is called.
    pub words: &'static str,
    /// What helps to recognise it.
    pub hint: Option<&'static str>,
    /// A drawing of it.
    pub drawing: Option<&'static str>,
}

impl Offer {
    /// A choice as an answer to tap.
    #[must_use]
    pub fn of<C: Choice + Words>(choice: C) -> Self {
        Self {
            name: choice.name(),
            words: choice.words(),
            hint: choice.hint(),
            drawing: None,
        }
    }

    /// An answer by its name and words.
    #[must_use]
    pub const fn named(name: &'static str, words: &'static str) -> Self {
        Self {
            name,
            words,
            hint: None,
            drawing: None,
        }
    }

    /// All of a choice in their order.
    #[must_use]
    pub fn all<C: Choice + Words>() -> Vec<Self> {
        C::ALL.iter().map(|choice| Self::of(*choice)).collect()
    }
}

/// The answers, as a list of buttons; the one that counts now is marked by its shape.
#[component]
pub fn ChoiceList(
    /// The answers that are offered.
    offers: Vec<Offer>,
    /// The name of the one that counts now.
    #[prop(into)]
    chosen: Signal<Option<&'static str>>,
    /// Is called with the name of the one that was tapped.
    #[prop(into)]
    choose: Callback<&'static str>,
    /// The identifier of the words that ask.
    labelled_by: &'static str,
) -> impl IntoView {
    let drawn = offers.iter().any(|offer| offer.drawing.is_some());
    let buttons: Vec<_> = offers
        .into_iter()
        .map(|offer| {
            let is_chosen = move || chosen.get() == Some(offer.name);
            let pressed = move || if is_chosen() { "true" } else { "false" };
            view! {
                <li>
                    <button class="choice" aria-pressed=pressed on:click=tap(move |_| choose.run(offer.name))>
                        {offer.drawing.map(|paths| view! {
                            <svg class="drawing" viewBox="0 0 72 72" aria-hidden="true" inner_html=paths></svg>
                        })}
                        <span class="mark" aria-hidden="true"></span>
                        <span class="words">
                            {offer.words}
                            {offer.hint.map(|hint| view! { <span class="hint">{hint}</span> })}
                        </span>
                    </button>
                </li>
            }
        })
        .collect();
    view! {
        <div role="group" aria-labelledby=labelled_by>
            <ul class="choices" class:drawn=drawn>{buttons}</ul>
        </div>
    }
}
