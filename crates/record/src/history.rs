//! What was wrong, and what was done about it.

use diagnosis::{Asked, CHANGE, Change, Choice, Complaint, Finding, Model, assess_checks, present};
use job::{Content, Entry, Job, Moment, SetUp};
use wording::page::entry;
use wording::whole::{likely, since};
use wording::{finding, record as words};

use crate::assembly::Source;
use crate::page::Block;

/// Whether an entry says that something was done to the machine.
pub(crate) fn is_change(one: &Entry) -> bool {
    let Content::Answer { question, answer } = &one.content else {
        return false;
    };
    let change = Change::from_name(question.item.as_str());
    question.check.as_str() == CHANGE
        && change.is_some_and(|change| change.answer().as_ref() == Some(answer))
}

/// Where among the standing entries the last change stands.
pub(crate) fn last_change(standing: &[&Entry]) -> Option<usize> {
    standing.iter().rposition(|one| is_change(one))
}

/// Whether gear for hard starts is on the compressor, as far as was entered.
pub(crate) fn has_kit(job: &Job) -> bool {
    let standing = job.standing();
    let fitted = standing.iter().rposition(|one| {
        let is_gear = matches!(&one.content, Content::Answer { question, .. }
            if question.item.as_str() == Change::StartGear.name());
        is_change(one) && is_gear
    });
    let tried = standing.iter().rposition(
        |one| matches!(&one.content, Content::Trial(trial) if trial.set_up == SetUp::Kit),
    );
    let other = standing.iter().rposition(
        |one| matches!(&one.content, Content::Trial(trial) if trial.set_up != SetUp::Kit),
    );
    fitted.is_some() || tried.is_some_and(|kit| other.is_none_or(|other| other < kit))
}

fn amiss(found: &[Finding], from: Source<'_>) -> Vec<String> {
    let found = found.iter().filter(|one| one.is_amiss());
    found.map(|one| finding(one, from.locale)).collect()
}

/// What was found amiss before it was changed and what is amiss now, with what all of it adds up to.
pub(crate) fn wrong(from: Source<'_>) -> Vec<Block> {
    let mut now = amiss(from.findings, from);
    let mut blocks = Vec::new();
    if let Some(before) = found_before(from) {
        // What still stands is told once, of the machine as it is.
        let mut gone = amiss(&before, from);
        gone.retain(|line| !now.contains(line));
        if !gone.is_empty() {
            blocks.push(Block::Heading(words::WRONG_BEFORE));
            blocks.push(Block::Lines(gone));
        }
        blocks.push(Block::Heading(words::WRONG_NOW));
    }
    if let Some(whole) = &from.assessment.whole {
        now.extend(since(whole));
        now.extend(likely(whole));
    }
    if now.is_empty() {
        now.push(words::NOTHING_FOUND.to_owned());
    }
    blocks.push(Block::Lines(now));
    blocks
}

/// What each check says of the machine as it is, sound or not.
pub(crate) fn checks(from: Source<'_>) -> Vec<Block> {
    let said = from.findings.iter();
    let said = said.map(|one| finding(one, from.locale));
    let lines: Vec<String> = said.collect();
    let lines = (!lines.is_empty()).then_some(Block::Lines(lines));
    lines.into_iter().collect()
}

/// What the checks say of a changed machine as it is now: what it did before the last change is no
/// complaint about this one. `None` where nothing was changed.
pub(crate) fn found_now(job: &Job, now: Moment) -> Option<Vec<Finding>> {
    let standing = job.standing();
    let last = last_change(&standing)?;
    let present = present(job)?;
    let is_old_complaint = |one: &Entry| {
        let is_complaint = matches!(&one.content, Content::Answer { question, .. }
            if question.is(Complaint::CHECK, Complaint::ITEM));
        is_complaint && standing[..last].iter().any(|old| old.id == one.id)
    };
    let kept = present.standing().into_iter();
    let kept = job_of(job, kept.filter(|one| !is_old_complaint(one)));
    Some(assess_checks(&Model::default(), &kept, now).findings)
}

/// What the checks said before the first change; `None` where nothing was changed.
fn found_before(from: Source<'_>) -> Option<Vec<Finding>> {
    let standing = from.job.standing();
    let first = standing.iter().position(|one| is_change(one))?;
    let earlier = job_of(from.job, standing[..first].iter().copied());
    Some(assess_checks(&Model::default(), &earlier, from.made.now).findings)
}

/// The same job with these of its standing entries.
fn job_of<'a>(like: &Job, entries: impl Iterator<Item = &'a Entry>) -> Job {
    let mut job = Job::new(like.id().clone(), like.created(), like.origin());
    for one in entries {
        // A standing strike has nothing left to strike here, and may be refused.
        let _ = job.add(one.clone());
    }
    job
}

pub(crate) fn done(from: Source<'_>) -> Vec<Block> {
    let standing = from.job.standing();
    let changes = standing.iter().filter(|one| is_change(one));
    let lines = changes.filter_map(|one| {
        let said = entry(one, from.locale)?.says;
        Some(words::about(&said, &from.locale.moment(one.at)))
    });
    let lines: Vec<String> = lines.collect();
    if lines.is_empty() {
        return vec![Block::Paragraph(words::NOTHING_DONE.to_owned())];
    }
    vec![Block::Lines(lines)]
}
