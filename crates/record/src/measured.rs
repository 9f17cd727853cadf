//! What was measured and looked at: each reading with its uncertainty and its meter.

use diagnosis::{CHANGE, Choice, Figures, Item};
use job::{Answer, Content, Entry, Reading};
use wording::page::entry;
use wording::{data_sheet, expanded, measured, record as words};

use crate::assembly::Source;
use crate::history::{is_change, last_change};
use crate::machine::is_told_here;
use crate::page::{Block, Table};

/// The check under which a bill's and a label's figures stand, a price among them.
pub(crate) const ENERGY: &str = "energy";
/// The check under which a simulated machine is named.
const PRACTICE: &str = "practice";

pub(crate) fn blocks(from: Source<'_>) -> Vec<Block> {
    let standing = from.job.standing();
    let heads = [
        words::WHAT,
        words::READ,
        words::OFF_BY,
        words::METER,
        words::WHEN,
    ];
    let rows = |entries: &[&Entry]| -> Vec<Vec<String>> {
        let read = entries.iter().filter_map(|one| read(one, from));
        read.collect()
    };
    let mut blocks = Vec::new();
    match last_change(&standing) {
        None => blocks.extend(Table::block(words::READINGS, &heads, rows(&standing))),
        Some(last) => {
            let (before, since) = standing.split_at(last);
            blocks.extend(Table::block(words::READINGS_BEFORE, &heads, rows(before)));
            blocks.extend(Table::block(words::READINGS_SINCE, &heads, rows(since)));
        }
    }
    if blocks.is_empty() {
        blocks.push(Block::Paragraph(words::NOTHING_MEASURED.to_owned()));
    } else {
        blocks.push(Block::Paragraph(words::HOW_SURE.to_owned()));
    }
    let seen = standing.iter().filter_map(|one| seen(one, from)).collect();
    let heads = [words::WHAT, words::FOUND, words::WHEN];
    blocks.extend(Table::block(words::SEEN, &heads, seen));
    blocks
}

/// A reading off a meter, or a temperature that a person read.
fn read(one: &Entry, from: Source<'_>) -> Option<Vec<String>> {
    let (reading, at): (&Reading, _) = match &one.content {
        Content::Answer {
            answer: Answer::Reading(reading),
            ..
        } => (reading, one.at),
        Content::Spot(spot) => (&spot.reading, spot.at),
        _ => return None,
    };
    let about = entry(one, from.locale)?.about;
    let off_by = expanded(reading, from.locale).filter(|_| !is_printed(one));
    let meter = if is_printed(one) {
        words::PRINTED.to_owned()
    } else {
        data_sheet(reading.accuracy, from.locale)
    };
    Some(vec![
        about,
        measured(reading.measured, from.locale),
        off_by.unwrap_or_else(|| "–".to_owned()),
        meter,
        from.locale.moment(at),
    ])
}

/// Whether a number was read off a part, a label or a cord, and not off a meter.
fn is_printed(one: &Entry) -> bool {
    let printed = [
        Item::CapacitorMarking,
        Item::CapacitorLeast,
        Item::PtcMarking,
        Item::LabelAmps,
        Item::LabelWatts,
        Item::CordLength,
    ];
    matches!(&one.content, Content::Answer { question, .. }
        if printed.iter().any(|item| item.name() == question.item.as_str()))
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
