//! "Can't do this", in a line that opens to the reasons.

use job::NotDone;
use leptos::prelude::*;
use wording::{Words, windings_page as words};

/// The reasons for not measuring.
#[component]
pub fn CannotDo(
    /// A reason was given.
    give_up: Callback<NotDone>,
) -> impl IntoView {
    let reasons = NotDone::ALL.map(|reason| {
        view! {
            <button type="button" class="button quiet" on:click=move |_| give_up.run(reason)>
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
