//! Safety first, then what this is, what it can't do, and how to keep it.

use leptos::prelude::*;
use wording::page;

use crate::frame::Heading;
use crate::parts::plain::section_heading;

/// About the program, and safety.
#[component]
pub fn AboutScreen() -> impl IntoView {
    let sections = page::ABOUT.iter().map(|section| {
        let lines = section.lines.iter().map(|line| view! { <li>{*line}</li> });
        view! {
            <section>
                {section_heading(section.heading)}
                <ul class="lines">{lines.collect::<Vec<_>>()}</ul>
            </section>
        }
    });
    view! {
        <div class="screen about">
            <Heading text=page::ABOUT_HEADING/>
            {sections.collect::<Vec<_>>()}
        </div>
    }
}
