//! A probability as people count: ten strokes, a number, a word.

use leptos::prelude::*;
use wording::odds;

/// Ten strokes, some of them full, with the same in words.
#[component]
pub fn Odds(
    /// From 0 to 1.
    probability: f64,
) -> impl IntoView {
    let said = odds(probability);
    let strokes = (0..10u8).map(|place| {
        let full = place < said.strokes;
        view! { <span class="stroke" class:full=full></span> }
    });
    view! {
        <p class="odds">
            <span class="strokes" aria-hidden="true">{strokes.collect_view()}</span>
            <span>{said.phrase} ", " {said.word}</span>
        </p>
    }
}
