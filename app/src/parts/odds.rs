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
    view! {
        <p class="odds">
            {strokes(probability)}
            <span class="small">{said.word} ", " {said.phrase}</span>
        </p>
    }
}

/// Ten strokes, some of them full. The words stand beside them.
pub fn strokes(probability: f64) -> impl IntoView {
    let filled = odds(probability).strokes;
    let strokes = (0..10u8).map(|place| {
        let full = place < filled;
        view! { <span class="stroke" class:full=full></span> }
    });
    view! { <span class="strokes" aria-hidden="true">{strokes.collect_view()}</span> }
}
