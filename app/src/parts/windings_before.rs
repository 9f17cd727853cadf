//! Before anything is measured: are the pins bare, and how do they lie?

use diagnosis::{GearChoice, PinShape};
use leptos::prelude::*;
use measure::windings::{Pair, Pin};
use wording::{Words, windings_page as words};

use super::pin_layout::{course, pin_place};
use crate::parts::live::{live, tap};
use crate::parts::plain::{button, paragraph};

/// "Are the three pins bare?"
#[component]
pub fn BarePins(
    /// The answer.
    answer: Callback<GearChoice>,
) -> impl IntoView {
    view! {
        <h2 class="question">{words::BARE_QUESTION}</h2>
        {paragraph("", words::BARE_HOW)}
        <div class="actions answers">
            {button("button", words::THEY_ARE_OFF, move |_| answer.run(GearChoice::Off))}
            {button("button quiet", words::STILL_ON, move |_| answer.run(GearChoice::StillOn))}
        </div>
    }
}

/// "Still on? The numbers would be wrong."
#[component]
pub fn GearStillOn(
    /// They are off now.
    off: Callback<()>,
    /// Measure all the same.
    all_the_same: Callback<()>,
) -> impl IntoView {
    view! {
        <h2 class="question">{words::STILL_ON_HEADING}</h2>
        {paragraph("", words::STILL_ON_TEXT)}
        <div class="actions answers">
            {button("button", words::OFF_NOW, move |_| off.run(()))}
            {button("plain", words::MEASURE_ALL_THE_SAME, move |_| all_the_same.run(()))}
        </div>
        {paragraph("soft small", words::ALL_THE_SAME_HINT)}
    }
}

/// "Which looks like yours?" Three pictures, which one button turns.
#[component]
pub fn PinShapes(
    /// Whether readings hang on the numbers already.
    any_read: bool,
    /// The answer.
    answer: Callback<PinShape>,
    /// Leaves it as it is, where there is an answer already.
    #[prop(optional_no_strip)]
    keep: Option<Callback<()>>,
) -> impl IntoView {
    let turns = RwSignal::new(0usize);
    let pictures = move || {
        offered(turns.get())
            .map(|shape| {
                view! {
                    <button type="button" class="shape" on:click=tap(move |_| answer.run(shape))>
                        {shape_drawing(shape)}
                        <span>{shape.words()}</span>
                    </button>
                }
            })
            .collect_view()
    };
    view! {
        <h2 class="question">{words::SHAPE_QUESTION}</h2>
        {paragraph("", if any_read { words::SHAPE_KEEPS_NUMBERS } else { words::SHAPE_HOW })}
        <div class="shapes">{live(pictures)}</div>
        <div class="actions answers">
            <button type="button" class="button quiet" on:click=tap(move |_| *turns.write() += 1)>
                {turn_drawing()}
                {words::TURN}
            </button>
            {keep.map(|keep| button("plain", words::KEEP_SHAPE, move |_| keep.run(())))}
        </div>
    }
}

/// The three pictures after so many quarter turns.
fn offered(turns: usize) -> [PinShape; 3] {
    const TRIANGLES: [PinShape; 4] = [
        PinShape::PointUp,
        PinShape::PointRight,
        PinShape::PointDown,
        PinShape::PointLeft,
    ];
    const LINES: [PinShape; 2] = [PinShape::Row, PinShape::Column];
    [
        TRIANGLES[turns % 4],
        TRIANGLES[(turns + 2) % 4],
        LINES[turns % 2],
    ]
}

/// The pins as they lie, without words: hollow circles, dashed lines.
fn shape_drawing(shape: PinShape) -> impl IntoView {
    let lines = Pair::ALL.map(|pair| {
        view! { <path class="shape-line" d=course(shape, pair).path /> }
    });
    let pins = Pin::ALL.map(|pin| {
        let at = pin_place(shape, pin).at;
        view! {
            <circle class="shape-pin" cx=at.x.to_string() cy=at.y.to_string() r="12" />
            <text class="shape-number" x=at.x.to_string() y=at.y.to_string() dy="5.5">
                {pin.number()}
            </text>
        }
    });
    view! {
        <svg class="shape-drawing" viewBox="0 0 100 100" aria-hidden="true">
            {lines.collect_view()}
            {pins.collect_view()}
        </svg>
    }
}

fn turn_drawing() -> impl IntoView {
    view! {
        <svg class="drawing turn-shape" viewBox="0 0 24 24" aria-hidden="true">
            <path d="M20 12a8 8 0 1 1-3-6.2M17.5 2v4.2h-4.2" />
        </svg>
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use diagnosis::Choice;

    #[test]
    fn turning_goes_through_all_shapes_and_comes_back() {
        for &shape in PinShape::ALL {
            assert!(
                (0..4).any(|turns| offered(turns).contains(&shape)),
                "{shape:?}"
            );
        }
        assert_eq!(offered(4), offered(0));
    }

    #[test]
    fn unturned_the_pictures_are_point_up_point_down_and_a_row() {
        let shapes = [PinShape::PointUp, PinShape::PointDown, PinShape::Row];
        assert_eq!(offered(0), shapes);
    }
}
