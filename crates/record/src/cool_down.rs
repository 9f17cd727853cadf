//! How it cools down: a curve for each compartment, what happened meanwhile, and the same in words.

use diagnosis::CoolDown;
use job::{ColdEventKind, Content};
use wording::page::entry;
use wording::{Words, cool_down, record as words};

use crate::assembly::Source;
use crate::curve;
use crate::page::{Block, Picture, Table};

/// Where a compressor comes and goes more often than that, its starts and stops are only counted.
const MOST_RUNS: usize = 8;

pub(crate) fn blocks(from: Source<'_>) -> Vec<Block> {
    let mut blocks = Vec::new();
    if let Some(cooling) = CoolDown::of(from.job, from.made.now) {
        blocks.push(Block::Paragraph(words::switched_on(
            cooling.began,
            cooling.room,
            from.locale,
        )));
        for course in &cooling.courses {
            let says = words::course(course, cooling.began, from.locale);
            let title = words::course_of(course.compartment);
            let drawing = curve::drawing(course, &cooling, &events(from, &cooling), from.locale);
            blocks.extend(drawing.map(|drawing| {
                Block::Picture(Picture {
                    title,
                    says,
                    drawing,
                })
            }));
        }
        let signs: Vec<String> = cooling
            .signs
            .iter()
            .map(|one| cool_down::sign(one, from.locale))
            .collect();
        let doubt = cooling.doubt.as_ref();
        let doubt = doubt.map(|doubt| cool_down::scale_doubt(doubt, from.locale));
        let lines: Vec<String> = signs.into_iter().chain(doubt).collect();
        if !lines.is_empty() {
            blocks.push(Block::Lines(lines));
        }
        let told = events(from, &cooling);
        let told: Vec<String> = told
            .iter()
            .map(|(at, kind)| words::happened(kind.words(), cooling.began, *at))
            .collect();
        if !cooling.courses.is_empty() {
            blocks.push(Block::Paragraph(words::key_of_curve(&told)));
        }
    }
    blocks
}

/// Courses out of loggers' files, by name, place and number of rows.
pub(crate) fn files(from: Source<'_>) -> Vec<Block> {
    let standing = from.job.standing();
    let rows = standing.iter().filter_map(|one| {
        let is_log = matches!(one.content, Content::Log(_));
        let said = entry(one, from.locale).filter(|_| is_log)?;
        Some(vec![said.about, said.says])
    });
    let table = Table::block(words::FILES, &[words::WHAT, words::FOUND], rows.collect());
    table.into_iter().collect()
}

/// What happened since it was switched on, in the order of time, as far as it is told one by one.
fn events(from: Source<'_>, cooling: &CoolDown) -> Vec<(job::Moment, ColdEventKind)> {
    let standing = from.job.standing();
    let until = cooling.ended.unwrap_or(from.made.now);
    let within = cooling.began.unix_milliseconds()..=until.unix_milliseconds();
    let mut events: Vec<_> = standing
        .iter()
        .filter_map(|one| match &one.content {
            Content::Event(event) => Some((event.at, event.kind)),
            _ => None,
        })
        .filter(|(at, _)| within.contains(&at.unix_milliseconds()))
        .collect();
    events.sort_by_key(|(at, kind)| (at.unix_milliseconds(), *kind));
    let is_run = |kind| {
        matches!(
            kind,
            ColdEventKind::CompressorOn | ColdEventKind::CompressorOff
        )
    };
    let runs = events.iter().filter(|(_, kind)| is_run(*kind)).count();
    if runs > MOST_RUNS {
        events.retain(|(_, kind)| !is_run(*kind));
    }
    events
}
