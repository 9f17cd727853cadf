//! What was proved of it by readings, what is owed, and what failed.

use diagnosis::Proof;
use wording::{Words, proof, record as words};

use crate::assembly::Source;
use crate::page::{Block, Table};

pub(crate) fn blocks(from: Source<'_>) -> Vec<Block> {
    let found = Proof::of(from.job, from.assessment, from.made.now);
    let Some(found) = found else {
        return vec![Block::Paragraph(words::NOTHING_PROVED.to_owned())];
    };
    let mut lines = vec![found.proven().words().to_owned()];
    lines.extend(found.held_back.map(|why| why.words().to_owned()));
    let rows = found
        .items
        .iter()
        .map(|item| vec![item.point.words().to_owned(), proof::state(&item.state)]);
    let heads = [words::WHAT, words::STATE];
    let table = Table::block(words::PROOF, &heads, rows.collect());
    [Block::Lines(lines)].into_iter().chain(table).collect()
}
