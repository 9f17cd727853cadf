//! The Path: eight links in a row, or one under another with what is known of each.

use crate::parts::live::live;
use crate::parts::plain::paragraph;
use diagnosis::{Link, LinkState};
use leptos::prelude::*;
use record::shape::link_mark;
use wording::{LinkWords, link, links_together};

/// What is known of each link, in the order of the Path.
pub type Links = Vec<(Link, LinkState)>;

/// The eight names in a line. Where the Path is interrupted, or may be, a mark cuts the line and
/// the words below say so.
#[component]
pub fn PathLine(
    /// The links.
    #[prop(into)]
    links: Signal<Links>,
) -> impl IntoView {
    let names = move || {
        let links = links.get();
        links
            .into_iter()
            .map(|(which, state)| {
                let words = link(which, state);
                let said = format!("{}: {}", words.link, words.state);
                view! {
                    <li class=format!("path-link {}", state.name())>
                        <span aria-hidden="true">{words.link}</span>
                        {state.interrupts().then(cut)}
                        <span class="unseen">{said}</span>
                    </li>
                }
            })
            .collect_view()
    };
    view! {
        <div class="path-line">
            <ol>{live(names)}</ol>
            <p class="path-break" aria-hidden="true">{live(move || links.with(|links| interruption(links)))}</p>
        </div>
    }
}

/// All eight links with what each takes to hold and what is known of it.
#[component]
pub fn PathInFull(
    /// The links.
    #[prop(into)]
    links: Signal<Links>,
) -> impl IntoView {
    let rows = move || {
        let links = links.get();
        links
            .into_iter()
            .map(|(which, state)| row(which, state))
            .collect_view()
    };
    view! { <ol class="path-in-full">{live(rows)}</ol> }
}

fn row(which: Link, state: LinkState) -> impl IntoView {
    let LinkWords {
        link: name,
        holds_when,
        state: known,
        basis,
    } = link(which, state);
    view! {
        <li class=format!("path-row {}", state.name())>
            {node(state)}
            <div>
                <h3>{name}</h3>
                {paragraph("soft", holds_when)}
            </div>
            <p class="path-state">
                {known}
                {basis.map(|basis| view! { <span class="soft">", " {basis}</span> })}
            </p>
        </li>
    }
}

/// Two strokes across the line.
fn cut() -> impl IntoView {
    view! {
        <svg class="drawing path-cut" viewBox="0 0 16 16" aria-hidden="true">
            <path d="M4 15L8 1M9 15L13 1" />
        </svg>
    }
}

/// One shape a state, so that none needs a colour.
pub fn node(state: LinkState) -> impl IntoView {
    view! {
        <svg class="drawing path-node" viewBox="0 0 24 24" aria-hidden="true">
            <path d=link_mark(state) />
        </svg>
    }
}

/// Which links interrupt the Path, said once for all that are in the same state.
#[must_use]
pub fn interruption(links: &[(Link, LinkState)]) -> String {
    let interrupted = links.iter().filter(|(_, state)| state.interrupts());
    links_together(interrupted.copied()).join(" · ")
}

#[cfg(test)]
mod tests {
    use super::*;
    use diagnosis::{Basis, Choice};

    fn links(state: impl Fn(Link) -> LinkState) -> Links {
        Link::ALL.iter().map(|&link| (link, state(link))).collect()
    }

    #[test]
    fn a_path_that_nothing_interrupts_says_nothing() {
        assert_eq!(interruption(&links(|_| LinkState::Unknown)), "");
        let holds = LinkState::Holds(Basis::Seen);
        assert_eq!(interruption(&links(|_| holds)), "");
    }

    #[test]
    fn links_in_the_same_state_are_said_together() {
        let told = |link| match link {
            Link::Supply | Link::Call => LinkState::Doubtful(Basis::Told),
            Link::Circuit => LinkState::Broken(Basis::Measured),
            _ => LinkState::Unknown,
        };
        assert_eq!(
            interruption(&links(told)),
            "Supply, Call: in doubt, the seller says · Circuit: broken, measured"
        );
    }
}
