//! The pin diagram in words: the same content in rows, for eyes and screen readers.

use leptos::prelude::*;
use measure::windings::{Label, Pair, Pin};
use wording::windings_page as words;

use crate::forms::windings_diagram::{Line, PinPicture};
use crate::parts::live::live;
use crate::parts::plain::section_heading;

/// Pairs and pins in rows.
#[component]
pub fn PinTable(
    /// What the diagram shows.
    #[prop(into)]
    picture: Signal<PinPicture>,
) -> impl IntoView {
    view! {
        <section class="pin-table">
            {section_heading(words::IN_WORDS)}
            <ol class="pin-names">
                {Pin::ALL
                    .map(|pin| {
                        let label = move || said(picture.with(|picture| picture.label(pin)));
                        view! { <li><b>{pin.number()}</b> " " {live(label)}</li> }
                    })
                    .collect_view()}
            </ol>
            <table>
                <thead>
                    <tr>
                        <th scope="col">{words::PINS}</th>
                        <th scope="col">{words::READS}</th>
                    </tr>
                </thead>
                <tbody>
                    {Pair::ALL
                        .map(|pair| {
                            view! {
                                <tr>
                                    <th scope="row">{words::short_pair(pair)}</th>
                                    <td>{live(move || picture.with(|picture| cell(picture.line(pair))))}</td>
                                </tr>
                            }
                        })
                        .collect_view()}
                </tbody>
            </table>
        </section>
    }
}

fn said(label: Label) -> &'static str {
    match label {
        Label::Nothing => words::NOTHING_YET,
        known => wording::label(known),
    }
}

/// A pair's reading, what it read earlier, what is expected, and its winding.
fn cell(line: &Line) -> impl IntoView + use<> {
    let reads = match &line.reading {
        Some(reading) => reading.full.clone(),
        None if line.given_up => words::GIVEN_UP.to_owned(),
        None if !line.expected.is_empty() => {
            format!("{} {}", words::EXPECT, line.expected.join(words::OR))
        }
        None => words::NOT_READ.to_owned(),
    };
    let earlier = line.earlier.iter().rev().map(|reading| {
        view! { <span class="soft">", " {words::EARLIER} " " <s>{reading.full.clone()}</s></span> }
    });
    let winding = line
        .winding
        .clone()
        .map(|winding| view! { <span class="soft">", " {winding} "\u{a0}Ω"</span> });
    (reads, earlier.collect_view(), winding)
}
