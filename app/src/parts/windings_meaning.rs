//! What the readings mean and what to do next, in the words that the report uses too.

use diagnosis::{Finding, Step, WindingsFinding};
use leptos::prelude::*;
use wording::{Locale, windings_page as words};

use super::live::live;
use super::odds::{Odds, strokes};
use crate::parts::plain::{paragraph, section_heading};

/// The findings about the windings, one paragraph each.
#[component]
pub fn WindingsFindings(
    /// What was found.
    #[prop(into)]
    findings: Signal<Vec<Finding>>,
    /// How numbers are written.
    locale: Locale,
) -> impl IntoView {
    live(move || {
        let about_windings = |finding: &Finding| matches!(finding, Finding::Windings(_));
        let findings = findings.get().into_iter().filter(about_windings);
        findings
            .map(|finding| {
                view! {
                    {paragraph("", wording::finding(&finding, &locale))}
                    {odds(&finding)}
                }
            })
            .collect_view()
    })
}

/// How sure a finding is, where that is more than a yes.
fn odds(finding: &Finding) -> Option<AnyView> {
    match *finding {
        Finding::Windings(
            WindingsFinding::Whole { probability, .. }
            | WindingsFinding::WholeButAlike { probability, .. },
        ) => Some(view! { <Odds probability /> }.into_any()),
        // The words are part of its sentence.
        Finding::Windings(WindingsFinding::Fault { probability, .. }) => {
            Some(strokes(probability).into_any())
        }
        _ => None,
    }
}

/// One step: what, how, why now, and what it takes.
#[component]
pub fn NextStep(
    /// Which.
    step: Step,
    /// Whether the field asks for it already, so that it needs no heading.
    is_asked: bool,
    /// How numbers are written.
    locale: Locale,
) -> impl IntoView {
    let said = wording::step(step, &locale);
    let heading = (!is_asked).then(|| {
        view! {
            {paragraph("eyebrow", words::NEXT)}
            {section_heading(said.heading)}
        }
    });
    view! {
        <section class="next-step" class:asked-above=is_asked>
            {heading}
            {paragraph("", said.how)}
            {paragraph("soft", said.why)}
            {paragraph("soft small", said.takes)}
        </section>
    }
}
