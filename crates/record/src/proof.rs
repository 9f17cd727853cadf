//! What was proved of it by readings, what is owed, and what failed.

use wording::{Words, proof, record as words};

use crate::assembly::Source;
use crate::page::Block;

pub(crate) fn blocks(from: Source<'_>) -> Vec<Block> {
    let Some(found) = &from.assessment.proof else {
        return vec![Block::Paragraph(words::NOTHING_PROVED.to_owned())];
    };
    let mut blocks = vec![Block::Paragraph(found.proven().words().to_owned())];
    let held_back = found.held_back.map(|why| why.words().to_owned());
    blocks.extend(held_back.map(Block::Paragraph));
    let points = found.items.iter().map(proof::point).collect();
    blocks.push(Block::Lines(points));
    blocks
}
