//! What the next owner has to mind, what was not tested, and what only the owner sees.

use diagnosis::{Check, Choice, Figures};
use job::{Answer, Content};
use wording::page::entry;
use wording::{Words, caution, closed_gates, record as words};

use crate::assembly::{Audience, Source};
use crate::history::has_kit;
use crate::page::{Block, Table};

pub(crate) fn cautions(from: Source<'_>) -> Vec<Block> {
    let assessment = from.assessment;
    let found = assessment.cautions.iter();
    let mut lines: Vec<String> = found.map(|which| caution(*which).line()).collect();
    lines.extend(closed_gates(&assessment.gates));
    let gas = assessment.machine.refrigerant;
    lines.extend(words::handing_over(gas, has_kit(from.job)));
    vec![Block::Lines(lines)]
}

pub(crate) fn limits(from: Source<'_>) -> Vec<Block> {
    let lines = wording::limits(from.assessment.whole.as_ref(), from.job);
    let mut blocks = vec![Block::Lines(lines)];
    let answered = from.job.answered();
    let never = Check::ALL.iter().filter(|check| {
        let begun = |question: &&job::Question| question.check.as_str() == check.name();
        !answered.iter().any(begun)
    });
    let never: Vec<&str> = never.map(|check| check.words()).collect();
    if !never.is_empty() {
        blocks.push(Block::Paragraph(words::never_looked(&never)));
    }
    let standing = from.job.standing();
    let left_out = standing.iter().filter_map(|one| {
        let Content::Answer {
            question,
            answer: Answer::NotDone(why),
        } = &one.content
        else {
            return None;
        };
        let counting = from
            .job
            .counting(question.check.as_str(), question.item.as_str())?;
        let about = entry(one, from.locale)?.about;
        (counting.0.id == one.id).then(|| words::about(&about, why.words()))
    });
    let left_out: Vec<String> = left_out.collect();
    if !left_out.is_empty() {
        blocks.push(Block::Heading(words::NOT_DONE));
        blocks.push(Block::Lines(left_out));
    }
    blocks
}

pub(crate) fn notes(from: Source<'_>) -> Vec<Block> {
    if from.audience == Audience::Buyer {
        return Vec::new();
    }
    let standing = from.job.standing();
    let rows = standing.iter().filter_map(|one| {
        let text = match &one.content {
            Content::Note(text) => text,
            Content::Trial(trial) => trial.note.as_ref()?,
            _ => return None,
        };
        Some(vec![from.locale.moment(one.at), text.as_str().to_owned()])
    });
    let heads = [words::WHEN, words::WHAT];
    Table::block(words::NOTES, &heads, rows.collect())
        .into_iter()
        .collect()
}

pub(crate) fn figures(from: Source<'_>) -> Vec<Block> {
    if from.audience == Audience::Buyer {
        return Vec::new();
    }
    let standing = from.job.standing();
    let rows = standing.iter().filter_map(|one| {
        let Content::Answer { question, .. } = &one.content else {
            return None;
        };
        let is_own = question.check.as_str() == Figures::CHECK;
        let said = entry(one, from.locale).filter(|_| is_own)?;
        Some(vec![said.about, said.says])
    });
    let heads = [words::WHAT, words::FOUND];
    Table::block(words::FIGURES, &heads, rows.collect())
        .into_iter()
        .collect()
}
