//! One of several choices: a round button with its words.

use leptos::prelude::*;

/// A choice among those of the same group.
#[component]
pub fn Radio(
    /// The name that all choices of a question share.
    group: &'static str,
    /// What it is called.
    #[prop(into)]
    text: String,
    /// What helps to recognise it.
    #[prop(optional, into)]
    hint: String,
    /// Whether it is the one.
    #[prop(into)]
    chosen: Signal<bool>,
    /// It is to be the one.
    choose: Callback<()>,
) -> impl IntoView {
    let hint = (!hint.is_empty()).then(|| view! { <span class="soft small">{hint}</span> });
    view! {
        <label class="radio">
            <input
                type="radio"
                name=group
                prop:checked=chosen
                on:change=move |_| choose.run(())
            />
            <span>{text} {hint}</span>
        </label>
    }
}
