//! What machine it is, and what was said of it.

use diagnosis::{Asked, Build, Machine};
use job::{Answer, Content};
use wording::page::entry;
use wording::record as words;

use crate::assembly::Source;
use crate::page::Block;

/// What names the machine, by check and item. The last standing answer counts.
const TOLD: [(&str, &str); 7] = [
    ("machine", "name"),
    ("machine", "kind"),
    ("machine", "mains"),
    ("refrigerant", "plate"),
    ("machine", "plate"),
    ("machine", "complaint"),
    ("machine", "told-by"),
];

/// Whether an answer stands in this section, and in no other.
pub(crate) fn is_told_here(check: &str, item: &str) -> bool {
    TOLD.contains(&(check, item)) || (check, item) == (Build::CHECK, Build::ITEM)
}

pub(crate) fn blocks(from: Source<'_>) -> Vec<Block> {
    let rows = from.job.standing().into_iter().filter_map(|one| {
        let Content::Answer { question, answer } = &one.content else {
            return None;
        };
        let (check, item) = (question.check.as_str(), question.item.as_str());
        let counts = from.job.counting(check, item)?.0.id == one.id;
        let is_told = is_told_here(check, item) && counts && !matches!(answer, Answer::NotDone(_));
        // Its name is the title.
        let is_told = is_told && (check, item) != Machine::NAME;
        let said = entry(one, from.locale).filter(|_| is_told)?;
        Some(words::about(&said.about, &said.says))
    });
    let lines: Vec<String> = rows.collect();
    let lines = (!lines.is_empty()).then_some(Block::Lines(lines));
    lines.into_iter().collect()
}
