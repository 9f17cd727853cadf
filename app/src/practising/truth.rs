//! What is wrong with the machine, the person's way and the app's.

use std::sync::Arc;

use diagnosis::{Build, Choice, Task};
use leptos::prelude::*;
use practice::{Effort, Made, NotMade, Order, Sheet, fault_of, walk_with};
use wording::page::practice as words;

use super::{Truth, bench, lessons};
use crate::device;
use crate::frame::Heading;
use crate::parts::live::live;
use crate::parts::plain::{button, link, paragraph, section_heading};
use crate::route::Route;

/// So many lines of what the app advises say what it comes to; cautions follow, which the job's first
/// screen tells.
const VERDICT: usize = 2;

/// Everything that is told.
#[derive(Debug, Clone, PartialEq)]
struct Told {
    /// Each fault with how plainly it shows.
    wrong: Vec<String>,
    /// What a lesson teaches.
    point: Option<&'static str>,
    yours: Way,
    ours: Option<Way>,
}

/// A way through the machine.
#[derive(Debug, Clone, PartialEq)]
struct Way {
    checks: Vec<&'static str>,
    takes: String,
}

/// The truth, behind a button.
pub(super) fn screen(needs: Truth) -> AnyView {
    let told = RwSignal::new(None::<Result<Told, NotMade>>);
    let waits = RwSignal::new(false);
    let advice = needs.advice.clone();
    let needs = StoredValue::new(needs);
    let show = move |_| {
        waits.set(true);
        device::soon(move || {
            if let Some(found) = needs.try_with_value(work_out) {
                waits.set(false);
                told.set(Some(found));
            }
        });
    };
    view! {
        <div class="screen truth">
            <Heading text=words::TRUTH/>
            {live(move || match (told.get(), waits.get()) {
                (Some(Ok(found)), _) => whole(&found, advice.clone()),
                (Some(Err(why)), _) => paragraph("", bench::stopped(why)),
                (None, true) => view! { <p class="soft" role="status">{words::WORKING_OUT}</p> }.into_any(),
                (None, false) => view! {
                    {paragraph("", words::TRUTH_HOW)}
                    {button("button wide", words::SHOW_TRUTH, show)}
                }
                .into_any(),
            })}
        </div>
    }
    .into_any()
}

fn work_out(needs: &Truth) -> Result<Told, NotMade> {
    bench::with(&needs.job, needs.meter, |made, sheet| {
        tell(needs, made, sheet)
    })
}

fn tell(needs: &Truth, made: Made, sheet: &mut Sheet) -> Told {
    let troubles = sheet.machine().troubles().iter();
    let wrong = troubles.map(|trouble| {
        let fault = (needs.fault)(fault_of(trouble.ailment));
        if !trouble.ailment.is_graded() {
            return [fault, "."].concat();
        }
        [fault, ": ", words::severity(trouble.severity.get()), "."].concat()
    });
    let wrong = wrong.collect();
    let point = match made {
        Made::Lesson(lesson) => Some(lessons::told(lesson).point),
        Made::Drawn { .. } => None,
    };
    let build = needs.job.choice("machine", "build");
    let build = build.and_then(Build::from_name).unwrap_or(Build::FrostFree);
    let way = |effort: Effort| way(needs, &effort);
    let walked = walk_with(sheet, &needs.weigh, Order::Ours);
    Told {
        wrong,
        point,
        yours: way(Effort::of_job(&needs.job, build)),
        ours: walked.map(|walked| way(Effort::of_tasks(walked.tasks, build))),
    }
}

fn way(needs: &Truth, effort: &Effort) -> Way {
    let name = |task: &Task| (needs.task)(*task);
    Way {
        checks: effort.tasks.iter().map(name).collect(),
        takes: words::effort(effort.tasks.len(), effort.minutes, effort.waiting),
    }
}

fn whole(told: &Told, advice: Arc<dyn Fn() -> Vec<String> + Send + Sync>) -> AnyView {
    let wrong = told
        .wrong
        .iter()
        .map(|said| paragraph("verdict-words", said.clone()));
    let wrong: Vec<_> = wrong.collect();
    let wrong = if wrong.is_empty() {
        paragraph("verdict-words", words::NOTHING_WRONG)
    } else {
        wrong.into_any()
    };
    let point = told.point.map(|point| {
        view! { <section>{section_heading(words::POINT)} {paragraph("", point)}</section> }
            .into_any()
    });
    let ours = told.ours.as_ref().map(|ours| column(words::OURS, ours));
    view! {
        <section tabindex="-1">{section_heading(words::IS_WRONG)} {wrong}</section>
        {point}
        <section>
            {section_heading(words::FROM_READINGS)}
            {live(move || advice().into_iter().take(VERDICT).map(|line| paragraph("", line)).collect_view())}
        </section>
        <section>
            {section_heading(words::WAYS)}
            <div class="ways">{column(words::YOURS, &told.yours)} {ours}</div>
            {paragraph("soft small", words::MINUTES_HOW)}
        </section>
        <div class="lower">{link("button wide", Route::Practice.link(), words::ANOTHER_ONE)}</div>
    }
    .into_any()
}

fn column(heading: &'static str, way: &Way) -> AnyView {
    let checks = way.checks.iter().map(|check| view! { <li>{*check}</li> });
    let checks = if way.checks.is_empty() {
        paragraph("soft", words::NO_CHECKS)
    } else {
        view! { <ol class="steps">{checks.collect_view()}</ol> }.into_any()
    };
    view! {
        <div class="way">
            <h3>{heading}</h3>
            {paragraph("", way.takes.clone())}
            {checks}
        </div>
    }
    .into_any()
}
