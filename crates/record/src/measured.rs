//! The last reading of each thing that was measured, with its meter. What is drawn as a curve isn't
//! told again.

use job::{Content, Entry, Id, Place};
use wording::record as words;

use crate::assembly::Source;
use crate::page::{Block, Table};
use crate::readings::read;

pub(crate) fn blocks(from: Source<'_>) -> Vec<Block> {
    let standing = from.job.standing();
    let last = standing.iter().filter(|one| is_last(one, from));
    // Each meter is told once, and named by a letter behind what it read.
    let mut meters: Vec<String> = Vec::new();
    let rows = last.filter_map(|one| read(one, from));
    let rows = rows.filter(|read| !read.is_printed).map(|read| {
        let known = meters.iter().position(|meter| *meter == read.meter);
        let place = known.unwrap_or_else(|| {
            meters.push(read.meter.clone());
            meters.len() - 1
        });
        let shown = match read.off_by {
            Some(off_by) => format!("{} {off_by}", read.briefly),
            None => read.briefly,
        };
        vec![read.about, shown, words::letter(place)]
    });
    let rows: Vec<Vec<String>> = rows.collect();
    let heads = [words::WHAT, words::READ, words::METER];
    match Table::block(words::MEASURED, &heads, rows) {
        Some(table) => vec![table, Block::Paragraph(words::meters(&meters))],
        None => vec![Block::Paragraph(words::NOTHING_MEASURED.to_owned())],
    }
}

/// Whether nothing was read of the same thing later.
fn is_last(one: &Entry, from: Source<'_>) -> bool {
    match &one.content {
        Content::Answer { question, .. } => {
            let (check, item) = (question.check.as_str(), question.item.as_str());
            let counting = from.job.counting(check, item);
            counting.is_some_and(|(counting, _)| counting.id == one.id)
        }
        Content::Spot(spot) => !is_drawn(spot.place) && last_of(spot.place, from) == Some(&one.id),
        _ => false,
    }
}

fn is_drawn(place: Place) -> bool {
    matches!(place, Place::Freezer | Place::FreshFood)
}

/// The last one that stands: what was taken back is no reading.
fn last_of(place: Place, from: Source<'_>) -> Option<&Id> {
    let standing = from.job.standing().into_iter().rev();
    let mut of_place =
        standing.filter(|one| matches!(&one.content, Content::Spot(spot) if spot.place == place));
    Some(&of_place.next()?.id)
}
