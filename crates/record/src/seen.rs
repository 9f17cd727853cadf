//! What was answered without a meter.

use diagnosis::{CHANGE, ENERGY, Figures};
use job::{Answer, Content, Entry};
use wording::page::entry;
use wording::record as words;

use crate::assembly::Source;
use crate::history::is_change;
use crate::machine::is_told_here;
use crate::page::{Block, Table};

/// The check under which a simulated machine is named.
const PRACTICE: &str = "practice";

pub(crate) fn blocks(from: Source<'_>) -> Vec<Block> {
    let standing = from.job.standing();
    let seen = standing.iter().filter_map(|one| seen(one, from)).collect();
    let heads = [words::WHAT, words::FOUND, words::WHEN];
    let table = Table::block(words::SEEN, &heads, seen);
    table.into_iter().collect()
}

/// What was answered without a meter. The last answer to a question counts; the machine itself,
/// changes and figures of one's own stand elsewhere.
fn seen(one: &Entry, from: Source<'_>) -> Option<Vec<String>> {
    let Content::Answer { question, answer } = &one.content else {
        return None;
    };
    let (check, item) = (question.check.as_str(), question.item.as_str());
    let elsewhere = is_told_here(check, item)
        || is_change(one)
        || [Figures::CHECK, ENERGY, PRACTICE, CHANGE].contains(&check);
    let is_seen = matches!(
        answer,
        Answer::Choice(_) | Answer::Choices(_) | Answer::Text(_)
    );
    let counts = from.job.counting(check, item)?.0.id == one.id;
    if elsewhere || !is_seen || !counts {
        return None;
    }
    let mut said = entry(one, from.locale)?;
    if said.says.is_empty() {
        said.says = words::NONE_OF_THEM.to_owned();
    }
    Some(vec![said.about, said.says, from.locale.moment(one.at)])
}
