//! How a task is done, and why it has to wait if it does.

use diagnosis::{Build, Level, Task, Whole};
use leptos::prelude::*;
use wording::whole::{self, Guide};

use super::suspects::whole_of;
use crate::open_job::OpenJob;
use crate::parts::caution::shape;
use crate::parts::live::live;
use crate::parts::plain::paragraph;

/// How a task is done: why, what state and tools it takes, step by step, what to mind; in front
/// of it why it has to wait, if it does.
#[component]
pub fn HowTo(
    /// The task.
    task: Task,
) -> impl IntoView {
    let open = OpenJob::here();
    let waits = move || {
        let known = open.weighing().now()?;
        let mut waiting = whole_of(&known)?.withheld.iter();
        let waits = waiting.find(|one| one.task == task)?;
        Some(whole::not_now(&waits.why))
    };
    let guide = move || {
        let known = open.weighing().now();
        let build = known.as_deref().and_then(whole_of).map(Whole::build);
        let build = build.unwrap_or(Build::FrostFree);
        let refrigerant = open.assessment().with(|known| known.machine.refrigerant);
        let is_powered = task.setup(build).plugged == Some(true);
        guide_view(&whole::guide(task, build, refrigerant), is_powered)
    };
    view! {
        {live(move || waits().map(|waits| paragraph("caution care wait", waits)))}
        {live(guide)}
    }
}

/// What to mind under power is in sight; what to mind without opens.
fn guide_view(guide: &Guide, is_powered: bool) -> AnyView {
    let steps = guide.steps.iter().map(|step| view! { <li>{*step}</li> });
    let cautions = guide.cautions.iter().map(|said| paragraph("", *said));
    let cautions = (!guide.cautions.is_empty()).then(|| {
        view! {
            <details class="caution care folded" open=is_powered>
                <summary>
                    {shape(Level::Care)}
                    <span class="caution-heading"><strong>{guide.power}</strong></span>
                </summary>
                {cautions.collect::<Vec<_>>()}
            </details>
        }
        .into_any()
    });
    let takes = format!("{}, {}", guide.tools, guide.time);
    view! {
        {paragraph("", guide.why)}
        {cautions.unwrap_or_else(|| paragraph("soft", guide.power))}
        <ol class="steps">{steps.collect::<Vec<_>>()}</ol>
        {paragraph("soft small takes", takes)}
    }
    .into_any()
}
