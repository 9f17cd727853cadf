//! What the next owner has to mind, what was not tested, and what only the owner sees.

use diagnosis::{Check, Choice, Figures};
use job::{Answer, Content};
use wording::page::entry;
use wording::{Words, caution, gates, record as words};

use crate::assembly::{Audience, Source};
use crate::history::has_kit;
use crate::page::{Block, Table};

pub(crate) fn cautions(from: Source<'_>) -> Vec<Block> {
    let assessment = from.assessment;
    let found = assessment.cautions.iter();
    let mut lines: Vec<String> = found.map(|which| caution(*which).line()).collect();
    lines.extend(gates(&assessment.gates));
    let gas = assessment.machine.refrigerant;
    lines.extend(words::handing_over(gas, has_kit(from.job)));
    vec![Block::Lines(lines)]
}

pub(crate) fn limits(from: Source<'_>) -> Vec<Block> {
    let lines = wording::limits(from.assessment.whole.as_ref(), from.job);
    let mut blocks = vec![Block::Lines(lines)];
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
        (counting.0.id == one.id).then(|| vec![about, why.words().to_owned()])
    });
    let heads = [words::WHAT, words::WHY];
    blocks.extend(Table::block(words::NOT_DONE, &heads, left_out.collect()));
    let answered = from.job.answered();
    let never = Check::ALL.iter().filter(|check| {
        let begun = |question: &&job::Question| question.check.as_str() == check.name();
        !answered.iter().any(begun)
    });
    let never: Vec<String> = never.map(|check| check.words().to_owned()).collect();
    if !never.is_empty() {
        blocks.push(Block::Heading(words::NEVER_LOOKED));
        blocks.push(Block::Lines(never));
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

pub(crate) fn made(from: Source<'_>) -> Vec<Block> {
    let by = words::made(from.made.now, from.made.version, from.locale);
    let unreal = words::unreal(from.job.origin()).map(str::to_owned);
    let lines = [by].into_iter().chain(unreal);
    lines.map(Block::Paragraph).collect()
}
