//! The Path in words.

use diagnosis::{Basis, Link, LinkState};

use crate::Words;

/// A link ready to be shown.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LinkWords {
    /// Its name.
    pub link: &'static str,
    /// What it takes to hold.
    pub holds_when: &'static str,
    /// Its state.
    pub state: &'static str,
    /// What stands behind that, if anything.
    pub basis: Option<&'static str>,
}

/// Says what is known of a link.
#[must_use]
pub fn link(link: Link, state: LinkState) -> LinkWords {
    LinkWords {
        link: link.words(),
        holds_when: link.hint().unwrap_or_default(),
        state: link_state(state),
        basis: state.basis().map(basis),
    }
}

/// Links with what is known of them, those of which the same is known together, in the order of the first.
#[must_use]
pub fn links_together(links: impl Iterator<Item = (Link, LinkState)>) -> Vec<String> {
    let mut groups: Vec<(LinkState, Vec<&'static str>)> = Vec::new();
    for (which, state) in links {
        match groups.iter_mut().find(|(known, _)| *known == state) {
            Some((_, names)) => names.push(which.words()),
            None => groups.push((state, vec![which.words()])),
        }
    }
    let said = groups.into_iter().map(|(state, names)| {
        let (names, known) = (names.join(", "), link_state(state));
        match state.basis() {
            Some(by) => format!("{names}: {known}, {}", basis(by)),
            None => format!("{names}: {known}"),
        }
    });
    said.collect()
}

/// Says a state in a word or two.
#[must_use]
pub fn link_state(state: LinkState) -> &'static str {
    match state {
        LinkState::Unknown => "not known yet",
        LinkState::SoundSoFar(_) => "sound so far",
        LinkState::Holds(_) => "holds",
        LinkState::Doubtful(_) => "in doubt",
        LinkState::Broken(_) => "broken",
    }
}

/// Says what stands behind a statement.
#[must_use]
pub fn basis(basis: Basis) -> &'static str {
    match basis {
        Basis::Weighed => "by all that is known",
        Basis::Told => "the seller says",
        Basis::Seen => "seen",
        Basis::Measured => "measured",
    }
}
