//! The report on the screen: word for word as the command line prints it, with a drawing beside a
//! line where a drawing says it sooner.

use diagnosis::{Assessment, Level, LinkState};
use job::Job;
use leptos::prelude::*;
use wording::{Locale, Part, Section, report, told_explanations};

use crate::parts::caution;
use crate::parts::odds::strokes;
use crate::parts::path_line::node;

/// All sections of the report.
pub fn report_view(known: &Assessment, job: &Job, locale: &Locale) -> impl IntoView + use<> {
    let report = report(known, job, locale);
    let sections: Vec<_> = report
        .sections
        .into_iter()
        .map(|section| section_view(known, section))
        .collect();
    view! {
        <div id="report">
            <p class="report-title">{report.title}</p>
            {sections}
        </div>
    }
}

fn section_view(known: &Assessment, section: Section) -> impl IntoView + use<> {
    let mut drawn = drawings(known, section.part).into_iter();
    let lines: Vec<_> = section
        .lines
        .into_iter()
        .map(|line| match drawn.next() {
            Some((class, drawing)) => {
                view! { <li class=class>{drawing}<span>{line}</span></li> }.into_any()
            }
            None => view! { <li>{line}</li> }.into_any(),
        })
        .collect();
    view! {
        <section>
            <h2>{section.heading}</h2>
            <ul class="lines">{lines}</ul>
        </section>
    }
}

/// What is drawn beside the lines of a part, in their order.
fn drawings(known: &Assessment, part: Part) -> Vec<(&'static str, AnyView)> {
    match part {
        Part::Safety => {
            let levels = known.cautions.iter().map(|caution| caution.level());
            levels
                .map(|level| {
                    let class = match level {
                        Level::Stop => "caution stop drawn-line",
                        Level::Care => "caution care drawn-line",
                    };
                    (class, caution::shape(level).into_any())
                })
                .collect()
        }
        Part::Fits => told_explanations(known)
            .map(|scored| ("odds-line", strokes(scored.probability).into_any()))
            .collect(),
        Part::Path => {
            let states = known.path.iter().map(|(_, state)| *state);
            states
                .map(|state| {
                    let class = match state {
                        LinkState::Holds(_) => "drawn-line holds",
                        _ => "drawn-line",
                    };
                    (class, node(state).into_any())
                })
                .collect()
        }
        _ => Vec::new(),
    }
}
