//! What a task's answers say, what they mean, and what they have changed.

use diagnosis::{Ask, Caution, Check, Finding, Task};
use leptos::prelude::*;
use wording::{Locale, page, whole, windings_page as words};

use super::{Asking, MEANING};
use crate::forms::questions::answered;
use crate::pages::suspects::Changed;
use crate::parts::caution::Caution as CautionInFull;
use crate::parts::live::{live, tap};
use crate::parts::plain::paragraph;

/// What was answered, each to be changed.
pub(super) fn answers(asking: Asking) -> impl IntoView {
    let rows = asking.open.with_job(|job| {
        let items = answered(asking.task, job).into_iter();
        items
            .map(|item| (item, says(item, job, &asking.locale)))
            .collect::<Vec<_>>()
    });
    let row = |(item, says): (Ask, String)| {
        view! {
            <div class="noted">
                <dt>{whole::about(item)}</dt>
                <dd>
                    <strong>{says}</strong>
                    <button type="button" class="plain" on:click=tap(move |_| asking.ask_again(item))>
                        {page::CHANGE}
                        <span class="unseen">" " {whole::about(item)}</span>
                    </button>
                </dd>
            </div>
        }
    };
    (!rows.is_empty()).then(|| {
        view! { <dl class="noted-list">{rows.into_iter().map(row).collect_view()}</dl> }
    })
}

/// The answer that counts, in words.
fn says(item: Ask, job: &job::Job, locale: &Locale) -> String {
    let (check, name) = item.names();
    job.counting(check, name)
        .and_then(|(entry, _)| page::entry(entry, locale))
        .map(|entry| entry.says)
        .filter(|says| !says.is_empty())
        .unwrap_or_else(|| page::NONE_OF_THESE.to_owned())
}

/// What this check found, and what it warns of.
pub(super) fn meaning(asking: Asking) -> impl IntoView {
    let (findings, cautions) = asking.open.assessment().with(|known| {
        let of_check = |finding: &&Finding| Task::Check(finding.check()) == asking.task;
        let findings: Vec<String> = known
            .findings
            .iter()
            .filter(of_check)
            .map(|finding| wording::finding(finding, &asking.locale))
            .collect();
        let cautions = known.cautions.iter().copied();
        let cautions: Vec<_> = cautions
            .filter(|caution| belongs(*caution, asking.task))
            .collect();
        (findings, cautions)
    });
    let has_any = !findings.is_empty() || !cautions.is_empty();
    has_any.then(|| {
        let findings = findings.into_iter().map(|said| paragraph("", said));
        let cautions = cautions
            .into_iter()
            .map(|caution| view! { <CautionInFull caution/> });
        view! {
            <section class="meaning" id=MEANING tabindex="-1" aria-label=words::MEANING>
                {cautions.collect_view()}
                {findings.collect_view()}
            </section>
        }
    })
}

/// A leak belongs to each check that can find one.
fn belongs(caution: Caution, task: Task) -> bool {
    match caution {
        Caution::LiveMetal | Caution::LeakInDoubt => {
            let leaks = matches!(task, Task::Check(Check::Ground | Check::Shell));
            leaks || (caution == Caution::LeakInDoubt && task == Task::Check(Check::Leakage))
        }
        // A trip is told of with the complaint, or logged.
        Caution::TrippedProtection => {
            matches!(task, Task::Check(Check::Machine | Check::Leakage))
        }
        other => other.check().map(Task::Check) == Some(task),
    }
}

/// What the answers on this screen have changed.
pub(super) fn changed(asking: Asking) -> impl IntoView {
    live(move || asking.has_answered.get().then(|| view! { <Changed/> }))
}
