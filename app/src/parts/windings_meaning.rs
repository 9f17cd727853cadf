//! What the readings mean and what to do next, in the words that the report uses too.

use diagnosis::{Finding, Step, WindingsFinding};
use leptos::prelude::*;
use wording::{Locale, windings_page as words};

use super::odds::Odds;

/// The findings about the windings, one paragraph each.
#[component]
pub fn WindingsFindings(
    /// What was found.
    #[prop(into)]
    findings: Signal<Vec<Finding>>,
    /// How numbers are written.
    locale: Locale,
) -> impl IntoView {
    let told = move || {
        let about_windings = |finding: &Finding| matches!(finding, Finding::Windings(_));
        let findings = findings.get().into_iter().filter(about_windings);
        findings
            .map(|finding| {
                let odds = probability(&finding).map(|probability| view! { <Odds probability /> });
                view! {
                    <p>{wording::finding(&finding, &locale)}</p>
                    {odds}
                }
            })
            .collect_view()
    };
    view! { <div class="findings">{told}</div> }
}

/// How sure a finding is, where that is more than a yes.
fn probability(finding: &Finding) -> Option<f64> {
    match finding {
        Finding::Windings(
            WindingsFinding::Whole { probability, .. }
            | WindingsFinding::WholeButAlike { probability, .. }
            | WindingsFinding::Fault { probability, .. },
        ) => Some(*probability),
        _ => None,
    }
}

/// One step: what, how, why now, and what it takes.
#[component]
pub fn NextStep(
    /// Which.
    step: Step,
    /// How numbers are written.
    locale: Locale,
) -> impl IntoView {
    let said = wording::step(step, &locale);
    view! {
        <section class="next-step">
            <p class="eyebrow">{words::NEXT}</p>
            <h2>{said.heading}</h2>
            <p>{said.how}</p>
            <p class="soft">{said.why}</p>
            <p class="soft small">{said.takes}</p>
        </section>
    }
}
