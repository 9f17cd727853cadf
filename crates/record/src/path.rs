//! Each link of the Path with what is known of it, drawn and in words.

use diagnosis::{Link, LinkState};
use wording::{link, links_together, odds, record as words};

use crate::assembly::Source;
use crate::page::{Block, Picture, Table};
use crate::shape::link_mark;
use crate::svg::{Anchor, Drawing};

const WIDTH: f64 = 340.0;
const HEIGHT: f64 = 64.0;
const MIDDLE: f64 = HEIGHT / 2.0;
const MARGIN: f64 = 24.0;
const RADIUS: f64 = 6.0;

pub(crate) fn blocks(from: Source<'_>) -> Vec<Block> {
    let path = &from.assessment.path;
    vec![Block::Picture(Picture {
        title: words::PATH.to_owned(),
        says: said(path),
        drawing: drawing(path),
    })]
}

fn said(path: &[(Link, LinkState)]) -> Vec<String> {
    let together = links_together(path.iter().copied()).into_iter();
    together.map(|line| line + ".").collect()
}

/// Eight marks in a row, cut where it is interrupted; names in turn above and below.
fn drawing(path: &[(Link, LinkState)]) -> Drawing {
    let mut drawing = Drawing::new(WIDTH, HEIGHT);
    let step = (WIDTH - 2.0 * MARGIN) / (path.len().max(2) - 1) as f64;
    let x = |place: usize| MARGIN + place as f64 * step;
    for (place, (which, state)) in path.iter().enumerate() {
        if place > 0 {
            let (left, right) = (x(place - 1) + RADIUS, x(place) - RADIUS);
            drawing.path("rec-lead", &format!("M{left:.1} {MIDDLE:.1}H{right:.1}"));
        }
        drawing.mark(class(*state), link_mark(*state), (x(place), MIDDLE));
        let y = if place % 2 == 0 {
            MIDDLE - 14.0
        } else {
            MIDDLE + 24.0
        };
        let name = link(*which, *state).link;
        drawing.words("rec-words", (x(place), y), Anchor::Middle, name);
    }
    drawing
}

const fn class(state: LinkState) -> &'static str {
    match state {
        LinkState::Holds(_) => "rec-try rec-full",
        _ => "rec-try",
    }
}

/// What each link means, and how likely the Path is broken there, all weighed together.
pub(crate) fn odds_of(from: Source<'_>) -> Vec<Block> {
    let weighed = from.assessment.whole.as_ref().map(|whole| &whole.links);
    let rows = from.assessment.path.iter().map(|(which, state)| {
        let said = link(*which, *state);
        let broken = weighed
            .into_iter()
            .flatten()
            .find(|one| one.link == *which)
            .map_or("–", |one| odds(one.broken).phrase);
        let link = format!("{}: {}", said.link, said.holds_when);
        vec![link, broken.to_owned()]
    });
    let heads = [words::LINK, words::BROKEN_HERE];
    let about = Block::Paragraph(words::PATH_IS.to_owned());
    let table = Table::block(words::ODDS, &heads, rows.collect());
    [about].into_iter().chain(table).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use diagnosis::Basis;

    #[test]
    fn links_of_which_the_same_is_known_stand_together() {
        let holds = LinkState::Holds(Basis::Measured);
        let path = [
            (Link::Supply, holds),
            (Link::Call, LinkState::Unknown),
            (Link::Circuit, holds),
        ];
        assert_eq!(
            said(&path),
            ["Supply, Circuit: holds, measured.", "Call: not known yet."]
        );
    }

    #[test]
    fn a_broken_link_looks_like_no_other() {
        let basis = Basis::Seen;
        let marks = [
            LinkState::Unknown,
            LinkState::SoundSoFar(basis),
            LinkState::Holds(basis),
            LinkState::Doubtful(basis),
            LinkState::Broken(basis),
        ]
        .map(|state| (class(state), link_mark(state)));
        for (place, one) in marks.iter().enumerate() {
            assert!(marks[..place].iter().all(|other| other != one));
        }
    }
}
