//! Every reading with its uncertainty, its meter and its moment.

use diagnosis::{Choice, Item};
use job::{Answer, Content, Entry, Moment, Reading};
use wording::page::entry;
use wording::{data_sheet, expanded, measured, measured_briefly, record as words};

use crate::assembly::Source;
use crate::history::last_change;
use crate::page::{Block, Table};

/// A reading off a meter, a thermometer or a label, in words.
pub(crate) struct Read {
    /// Of what.
    pub(crate) about: String,
    /// What it showed.
    pub(crate) shown: String,
    /// The same where room is short.
    pub(crate) briefly: String,
    /// How far it may be off, by the meter's data sheet.
    pub(crate) off_by: Option<String>,
    /// The meter's data sheet.
    pub(crate) meter: String,
    /// Whether it was read off a part or a label.
    pub(crate) is_printed: bool,
    /// When.
    pub(crate) at: Moment,
}

pub(crate) fn blocks(from: Source<'_>) -> Vec<Block> {
    let standing = from.job.standing();
    let heads = [
        words::WHAT,
        words::READ,
        words::OFF_BY,
        words::METER,
        words::WHEN,
    ];
    let table = |caption, entries: &[&Entry]| {
        let read = entries.iter().filter_map(|one| read(one, from));
        let rows = read.map(|one| {
            let off_by = one.off_by.unwrap_or_else(|| "–".to_owned());
            let when = from.locale.moment(one.at);
            vec![one.about, one.shown, off_by, one.meter, when]
        });
        Table::block(caption, &heads, rows.collect())
    };
    match last_change(&standing) {
        None => table(words::READINGS, &standing).into_iter().collect(),
        Some(last) => {
            let (before, since) = standing.split_at(last);
            let before = table(words::READINGS_BEFORE, before);
            let since = table(words::READINGS_SINCE, since);
            before.into_iter().chain(since).collect()
        }
    }
}

/// What an entry read; `None` for one that is no reading.
pub(crate) fn read(one: &Entry, from: Source<'_>) -> Option<Read> {
    let (reading, at): (&Reading, _) = match &one.content {
        Content::Answer {
            answer: Answer::Reading(reading),
            ..
        } => (reading, one.at),
        Content::Spot(spot) => (&spot.reading, spot.at),
        _ => return None,
    };
    let is_printed = is_printed(one);
    Some(Read {
        about: entry(one, from.locale)?.about,
        shown: measured(reading.measured, from.locale),
        briefly: measured_briefly(reading.measured, from.locale),
        off_by: expanded(reading, from.locale).filter(|_| !is_printed),
        meter: if is_printed {
            words::PRINTED.to_owned()
        } else {
            data_sheet(reading.accuracy, from.locale)
        },
        is_printed,
        at,
    })
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
