//! Each link of the Path with what is known of it.

use wording::{link, odds, record as words};

use crate::assembly::Source;
use crate::page::{Block, Table};

pub(crate) fn blocks(from: Source<'_>) -> Vec<Block> {
    let path = &from.assessment.path;
    let weighed = from.assessment.whole.as_ref().map(|whole| &whole.links);
    let rows = path.iter().map(|(which, state)| {
        let said = link(*which, *state);
        let broken = weighed
            .into_iter()
            .flatten()
            .find(|one| one.link == *which)
            .map_or("–", |one| odds(one.broken).phrase);
        vec![
            format!("{}: {}", said.link, said.holds_when),
            said.state.to_owned(),
            said.basis.unwrap_or("–").to_owned(),
            broken.to_owned(),
        ]
    });
    let heads = [
        words::LINK,
        words::STATE,
        words::KNOWN_BY,
        words::BROKEN_HERE,
    ];
    let about = Block::Paragraph(words::PATH_IS.to_owned());
    let table = Table::block(words::PATH, &heads, rows.collect());
    [about].into_iter().chain(table).collect()
}
