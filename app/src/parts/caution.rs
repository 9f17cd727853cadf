//! A caution: a shape, a word, and what to do. Never told by colour alone.

use crate::parts::plain::paragraph;
use diagnosis::Level;
use leptos::prelude::*;

/// A caution in full.
#[component]
pub fn Caution(
    /// Which.
    caution: diagnosis::Caution,
) -> impl IntoView {
    let words = wording::caution(caution);
    view! {
        <aside class=class_of(caution)>
            {shape(caution.level())}
            <div>
                <p class="caution-heading">
                    <strong>{words.level} ": "</strong>
                    {words.heading}
                </p>
                {paragraph("", words.text)}
            </div>
        </aside>
    }
}

/// A caution that was shown before: one line that opens.
#[component]
pub fn FoldedCaution(
    /// Which.
    caution: diagnosis::Caution,
) -> impl IntoView {
    let words = wording::caution(caution);
    view! {
        <details class=format!("{} folded", class_of(caution))>
            <summary>
                {shape(caution.level())}
                <span class="caution-heading"><strong>{words.level} ": "</strong> {words.heading}</span>
            </summary>
            {paragraph("", words.text)}
        </details>
    }
}

fn class_of(caution: diagnosis::Caution) -> &'static str {
    match caution.level() {
        Level::Stop => "caution stop",
        Level::Care => "caution care",
    }
}

/// An octagon for stop, a triangle for care: both tell themselves apart without colour.
pub fn shape(level: Level) -> impl IntoView {
    let outline = match level {
        Level::Stop => "M8.5 2.5h7l6 6v7l-6 6h-7l-6-6v-7z",
        Level::Care => "M12 3l10 18H2z",
    };
    let mark = match level {
        Level::Stop => "M7 12h10",
        Level::Care => "M12 10v5M12 18v.2",
    };
    view! {
        <svg class="drawing caution-shape" viewBox="0 0 24 24" aria-hidden="true">
            <path d=outline />
            <path d=mark />
        </svg>
    }
}
