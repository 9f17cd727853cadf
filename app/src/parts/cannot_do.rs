//! "Can't do this", in a line that opens to the reasons.

use crate::parts::plain::{button, paragraph};
use job::NotDone;
use leptos::prelude::*;
use wording::{Words, windings_page as words};

/// The reasons for not measuring.
#[component]
pub fn CannotDo(
    /// A reason was given.
    give_up: Callback<NotDone>,
) -> impl IntoView {
    let reasons = NotDone::ALL
        .map(|reason| button("button quiet", reason.words(), move |_| give_up.run(reason)));
    view! {
        <details class="fold">
            <summary><span>{words::CANNOT_DO}</span></summary>
            {paragraph("soft", words::WHY_NOT)}
            <div class="actions">{reasons.collect_view()}</div>
        </details>
    }
}
