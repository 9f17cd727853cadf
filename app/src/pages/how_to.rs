//! How a check is done: why, with what, step by step, and what to mind.

use diagnosis::{Assessment, Build, Choice, Task};
use leptos::prelude::*;
use wording::whole;

use super::suspects::whole_of;
use crate::open_job::OpenJob;
use crate::parts::live::live;
use crate::parts::plain::paragraph;

/// Tells how a check is done, on the machine as far as it is known.
#[component]
pub fn HowTo(
    /// The task.
    task: Task,
) -> impl IntoView {
    let weighing = OpenJob::here().weighing();
    let said = Memo::new(move |_| weighing.now().map(|known| guide(task, &known)));
    live(move || said.get().map(shown))
}

fn guide(task: Task, known: &Assessment) -> whole::Guide {
    let odds = whole_of(known).map_or([0.0; 3], |whole| whole.builds);
    let mut build = Build::ManualDefrost;
    for (one, chance) in Build::ALL.iter().zip(odds) {
        if chance > odds[build as usize] {
            build = *one;
        }
    }
    whole::guide(task, build, known.machine.refrigerant)
}

fn shown(said: whole::Guide) -> impl IntoView {
    let needs = said.needs();
    let steps = said.steps.iter().map(|step| view! { <li>{*step}</li> });
    let cautions = said
        .cautions
        .into_iter()
        .map(|one| view! { <li>{one}</li> });
    view! {
        <section class="how-to">
            {paragraph("", said.why)}
            <ol>{steps.collect::<Vec<_>>()}</ol>
            {paragraph("soft", needs)}
            <ul class="small">{cautions.collect::<Vec<_>>()}</ul>
        </section>
    }
}
