//! Which entry of a smaller table each entry of a larger one belongs to.
//!
//! A table's index is split into a block number and a place in the block, so that the offsets
//! into the smaller table need one short list for each instead of one number per entry.

use super::algebra::Algebra;
use crate::configuration::{advance, count, strides};

/// Short inner loops cost more than they do; a block has at least this many entries if it can.
const SMALLEST_BLOCK: usize = 32;

#[derive(Debug, Clone)]
pub(crate) struct Projection {
    /// Where each block begins in the smaller table.
    blocks: Vec<u32>,
    block: Block,
}

#[derive(Debug, Clone)]
enum Block {
    /// The entries of a block belong to neighbouring entries of the smaller table, in order.
    Neighbours(usize),
    /// All entries of a block belong to one.
    One(usize),
    /// Offsets from where the block begins.
    Offsets(Vec<u32>),
}

impl Projection {
    /// Projects a table over `from` on one over `to`, which is a part of `from` in any order.
    pub(crate) fn new(from: &[usize], to: &[usize], cards: &[usize]) -> Self {
        let from_cards: Vec<_> = from.iter().map(|&variable| cards[variable]).collect();
        let to_cards: Vec<_> = to.iter().map(|&variable| cards[variable]).collect();
        let to_strides = strides(&to_cards);
        // How far one step of each variable leads in the smaller table.
        let step: Vec<_> = from
            .iter()
            .map(|variable| {
                to.iter()
                    .position(|one| one == variable)
                    .map_or(0, |place| to_strides[place])
            })
            .collect();
        let split = split(&from_cards, &step);
        let size = count(from_cards[split..].iter().copied());
        let offsets = offsets(&from_cards[split..], &step[split..]);
        let block = if step[split..].iter().all(|&one| one == 0) {
            Block::One(size)
        } else if offsets
            .iter()
            .enumerate()
            .all(|(place, &offset)| place == offset as usize)
        {
            Block::Neighbours(size)
        } else {
            Block::Offsets(offsets)
        };
        Self {
            blocks: self::offsets(&from_cards[..split], &step[..split]),
            block,
        }
    }

    /// Adds every entry of the larger table to the one of the smaller that it belongs to.
    pub(crate) fn gather<A: Algebra>(&self, from: &[f64], to: &mut [f64]) {
        let begins = self.blocks.iter().map(|&begin| begin as usize);
        match &self.block {
            Block::Neighbours(size) => {
                for (block, begin) in from.chunks_exact(*size).zip(begins) {
                    for (sum, &entry) in to[begin..begin + size].iter_mut().zip(block) {
                        *sum = A::add(*sum, entry);
                    }
                }
            }
            Block::One(size) => {
                for (block, begin) in from.chunks_exact(*size).zip(begins) {
                    let sum = block.iter().fold(A::ZERO, |sum, &entry| A::add(sum, entry));
                    to[begin] = A::add(to[begin], sum);
                }
            }
            Block::Offsets(offsets) => {
                for (block, begin) in from.chunks_exact(offsets.len()).zip(begins) {
                    for (&entry, &offset) in block.iter().zip(offsets) {
                        let sum = &mut to[begin + offset as usize];
                        *sum = A::add(*sum, entry);
                    }
                }
            }
        }
    }

    /// Multiplies every entry of the larger table by the one of the smaller that it belongs to.
    pub(crate) fn spread<A: Algebra>(&self, from: &[f64], to: &mut [f64]) {
        let begins = self.blocks.iter().map(|&begin| begin as usize);
        match &self.block {
            Block::Neighbours(size) => {
                for (block, begin) in to.chunks_exact_mut(*size).zip(begins) {
                    for (entry, &factor) in block.iter_mut().zip(&from[begin..begin + size]) {
                        *entry = A::multiply(*entry, factor);
                    }
                }
            }
            Block::One(size) => {
                for (block, begin) in to.chunks_exact_mut(*size).zip(begins) {
                    let factor = from[begin];
                    for entry in block {
                        *entry = A::multiply(*entry, factor);
                    }
                }
            }
            Block::Offsets(offsets) => {
                for (block, begin) in to.chunks_exact_mut(offsets.len()).zip(begins) {
                    for (entry, &offset) in block.iter_mut().zip(offsets) {
                        *entry = A::multiply(*entry, from[begin + offset as usize]);
                    }
                }
            }
        }
    }
}

/// The first of the last variables that make up a block.
fn split(cards: &[usize], step: &[usize]) -> usize {
    let suffix_while = |fits: &dyn Fn(usize, usize) -> bool| {
        let (mut at, mut size) = (cards.len(), 1);
        while at > 0 && fits(at - 1, size) {
            at -= 1;
            size *= cards[at];
        }
        (at, size)
    };
    let (neighbours, size_of_neighbours) = suffix_while(&|place, size| step[place] == size);
    let (one, size_of_one) = suffix_while(&|place, _| step[place] == 0);
    let (any, _) = suffix_while(&|_, size| size < SMALLEST_BLOCK);
    if size_of_neighbours >= SMALLEST_BLOCK / 4 {
        neighbours
    } else if size_of_one >= SMALLEST_BLOCK / 4 {
        one
    } else {
        any
    }
}

/// Where each joint state of some variables lies in the smaller table.
fn offsets(cards: &[usize], step: &[usize]) -> Vec<u32> {
    let mut states = vec![0; cards.len()];
    let mut offsets = Vec::with_capacity(count(cards.iter().copied()));
    loop {
        let offset: usize = states
            .iter()
            .zip(step)
            .map(|(state, step)| state * step)
            .sum();
        // Tables have far fewer entries than this could hold: the tree limits them.
        offsets.push(u32::try_from(offset).unwrap_or(u32::MAX));
        if !advance(&mut states, |place| cards[place]) {
            return offsets;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::super::algebra::SumProduct;
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn sums_are_those_of_a_walk_through_all_joint_states(
            cards in prop::collection::vec(2_usize..5, 1..6),
            keep in prop::collection::vec(any::<bool>(), 6),
            turn in 0_usize..6,
        ) {
            let from: Vec<_> = (0..cards.len()).collect();
            let mut to: Vec<_> = from.iter().copied().filter(|&one| keep[one]).collect();
            let middle = turn % to.len().max(1);
            to.rotate_left(middle);
            let table: Vec<f64> = (0..count(cards.iter().copied())).map(|one| one as f64).collect();
            let mut expected = vec![0.0; count(to.iter().map(|&one| cards[one]))];
            let mut spread = Vec::new();
            let mut states = vec![0; cards.len()];
            for &entry in &table {
                let place = to.iter().fold(0, |place, &one| place * cards[one] + states[one]);
                expected[place] += entry;
                spread.push(place as f64);
                advance(&mut states, |one| cards[one]);
            }
            let projection = Projection::new(&from, &to, &cards);
            let mut found = vec![0.0; expected.len()];
            projection.gather::<SumProduct>(&table, &mut found);
            prop_assert_eq!(found, expected.clone());
            let places: Vec<f64> = (0..expected.len()).map(|place| place as f64).collect();
            let mut ones = vec![1.0; table.len()];
            projection.spread::<SumProduct>(&places, &mut ones);
            prop_assert_eq!(ones, spread);
        }
    }
}
