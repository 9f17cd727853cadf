//! What is proved of a machine that cools again, what is owed, and where each of it is done.

use diagnosis::{Check, Choice, Clue, Proof, ProofItem, ProofPoint, ProofState, StartTrials};
use leptos::prelude::*;
use wording::{Words, proof as words};

use crate::cold::Cold;
use crate::open_job::OpenJob;
use crate::parts::live::live;
use crate::parts::plain::{paragraph, section_heading};
use crate::route::{Place, Route};

/// The proof, as part of the record. Nothing before there is anything to prove.
#[component]
pub fn ProofSection() -> impl IntoView {
    let open = OpenJob::here();
    live(move || {
        let known = open.weighing().now()?;
        let proof = known.proof.as_ref()?;
        Some(section(open, proof))
    })
}

fn section(open: OpenJob, proof: &Proof) -> AnyView {
    let held_back = proof.held_back.map(|why| paragraph("remark", why.words()));
    let rows = proof.items.iter().map(|item| row(open, item));
    let rows: Vec<_> = rows.collect();
    let has_rows = !rows.is_empty();
    view! {
        <section class="proof">
            {section_heading(words::TITLE)}
            {paragraph("title", proof.proven().words())}
            {held_back}
            {has_rows.then(|| view! { <ul class="rows">{rows}</ul> })}
        </section>
    }
    .into_any()
}

/// A point with its state, and the way to where it is done. What isn't asked leads nowhere.
fn row(open: OpenJob, item: &ProofItem) -> AnyView {
    let (title, line) = (item.point.words(), words::state(&item.state));
    let inside = view! {
        <span class="proof-point">
            <svg class="drawing proof-mark" viewBox="0 0 24 24" aria-hidden="true">
                <path d=mark(&item.state)></path>
            </svg>
            <span class="title">{title}</span>
        </span>
        <span class="line">{line}</span>
    };
    if matches!(item.state, ProofState::NotNeeded(_)) {
        return view! { <li><div class="row">{inside}</div></li> }.into_any();
    }
    let place = Place::Check(where_it_is_done(item.point).to_owned());
    let route = Route::Job(open.id(), place);
    view! { <li><a class="row" href=route.link()>{inside}</a></li> }.into_any()
}

/// The name of the screen where readings for a point are entered.
fn where_it_is_done(point: ProofPoint) -> &'static str {
    match point {
        ProofPoint::Restarts => StartTrials::NAME,
        ProofPoint::SteadyPower => Check::Running.name(),
        ProofPoint::Seal => Clue::Seal.task().name(),
        ProofPoint::FirstTwoHours
        | ProofPoint::TargetReached
        | ProofPoint::HeldForADay
        | ProofPoint::NoTrips
        | ProofPoint::Defrost => Cold::COOL_DOWN,
    }
}

/// A tick, a ring, a cross or a dash: told by shape; the word stands beside it.
const fn mark(state: &ProofState) -> &'static str {
    match state {
        ProofState::Done => "M4 12.5 9.5 18 20 6",
        ProofState::NotYet { .. } => "M4 12a8 8 0 1 0 16 0a8 8 0 1 0-16 0z",
        ProofState::Failed(_) => "M5 5 19 19M19 5 5 19",
        ProofState::NotNeeded(_) => "M5 12H19",
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use diagnosis::Task;

    #[test]
    fn each_point_leads_to_a_screen_that_is_there() {
        for point in ProofPoint::ALL {
            let name = where_it_is_done(*point);
            let is_task = Task::from_name(name).is_some();
            let is_own = name == StartTrials::NAME || Cold::named(name).is_some();
            assert!(is_task || is_own, "{name}");
        }
    }
}
