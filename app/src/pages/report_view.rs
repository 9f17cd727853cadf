//! The report on the screen: word for word as the command line prints it, with a drawing beside a
//! line where a drawing says it sooner, and the reasons of a suspect behind its line.

use diagnosis::{Assessment, Level, LinkState, Suspect, Whole};
use job::Job;
use leptos::prelude::*;
use wording::{Locale, Part, Section, report, told_explanations, whole};

use super::suspects::{reasons, row, whole_of};
use crate::open_job::OpenJob;
use crate::parts::caution;
use crate::parts::odds::strokes;
use crate::parts::path_line::node;
use crate::parts::plain::{paragraph, section_heading};

/// What stands beside a line, and behind it.
#[derive(Default)]
struct Beside {
    class: &'static str,
    drawing: Option<AnyView>,
    behind: Option<AnyView>,
}

/// All sections of the report. Where the job is open, its checks are in reach of a tap.
pub fn report_view(
    open: Option<OpenJob>,
    known: &Assessment,
    job: &Job,
    locale: &Locale,
) -> impl IntoView + use<> {
    let report = report(known, job, locale);
    let sections: Vec<_> = report
        .sections
        .into_iter()
        .map(|section| {
            let beside = beside(open, known, section.part, locale);
            section_view(section, beside)
        })
        .collect();
    view! {
        <div id="report">
            {paragraph("report-title", report.title)}
            {sections}
        </div>
    }
}

fn section_view(section: Section, beside: Vec<Beside>) -> impl IntoView + use<> {
    let mut beside = beside.into_iter();
    let lines: Vec<_> = section
        .lines
        .into_iter()
        .map(|line| line_view(line, beside.next().unwrap_or_default()))
        .collect();
    view! {
        <section>
            {section_heading(section.heading)}
            <ul class="lines">{lines}</ul>
        </section>
    }
}

fn line_view(line: String, beside: Beside) -> AnyView {
    let Beside {
        class,
        drawing,
        behind,
    } = beside;
    let said = view! { {drawing}<span>{line}</span> };
    match behind {
        None => view! { <li class=class>{said}</li> }.into_any(),
        Some(behind) => view! {
            <li>
                <details class="suspect">
                    <summary class=class>{said}</summary>
                    {behind}
                </details>
            </li>
        }
        .into_any(),
    }
}

/// What is drawn beside the lines of a part, in their order.
fn beside(open: Option<OpenJob>, known: &Assessment, part: Part, locale: &Locale) -> Vec<Beside> {
    match part {
        Part::Safety => {
            let levels = known.cautions.iter().map(|caution| caution.level());
            levels.map(of_level).collect()
        }
        Part::AtFault => {
            whole_of(known).map_or_else(Vec::new, |whole| at_fault(open, whole, locale))
        }
        Part::Fits => told_explanations(known)
            .map(|scored| of_odds(scored.probability))
            .collect(),
        Part::Path => {
            let states = known.path.iter().map(|(_, state)| *state);
            states.map(of_link).collect()
        }
        _ => Vec::new(),
    }
}

fn of_level(level: Level) -> Beside {
    Beside {
        class: match level {
            Level::Stop => "caution stop drawn-line",
            Level::Care => "caution care drawn-line",
        },
        drawing: Some(caution::shape(level).into_any()),
        behind: None,
    }
}

fn of_odds(probability: f64) -> Beside {
    Beside {
        class: "odds-line",
        drawing: Some(strokes(probability).into_any()),
        behind: None,
    }
}

fn of_link(state: LinkState) -> Beside {
    Beside {
        class: match state {
            LinkState::Holds(_) => "drawn-line holds",
            _ => "drawn-line",
        },
        drawing: Some(node(state).into_any()),
        behind: None,
    }
}

/// The line on how to read it, the likely ones, the others behind their number, nothing wrong.
fn at_fault(open: Option<OpenJob>, whole: &Whole, locale: &Locale) -> Vec<Beside> {
    let of = |suspect: &Suspect| Beside {
        behind: Some(reasons(open, suspect, locale)),
        ..of_odds(suspect.probability)
    };
    let (told, others) = whole.suspects.split_at(whole::told(whole));
    let mut beside = vec![Beside::default()];
    beside.extend(told.iter().map(of));
    if !others.is_empty() {
        let rows = others.iter().map(|suspect| row(open, suspect, locale));
        let rows = rows.collect::<Vec<_>>();
        beside.push(Beside {
            behind: Some(view! { <ul class="suspect-rows">{rows}</ul> }.into_any()),
            ..Beside::default()
        });
    }
    beside.push(of(&whole.nothing_wrong));
    beside
}
