//! A job together with the form in which it is stored.

use std::collections::{BTreeMap, BTreeSet};

use job::{Entry, Id, Job};
use serde::Serialize;

use crate::fields::Place;
use crate::limit::{MOST_BYTES, MOST_ENTRIES};
use crate::{Limit, Notice, OpenError, describe, parse_timestamp, understand, version_1};

/// A job that can be saved at any time, with everything that came with it from a file.
///
/// The job is what this program understands of the document. What it doesn't understand, a
/// newer program's fields and entries, stays beside it in its place and is saved again.
#[derive(Debug, Clone, PartialEq)]
pub struct Document {
    /// What is written. Holds an entry for each one of `job`, and perhaps others among them.
    stored: version_1::Document,
    job: Job,
    /// The length of what is written.
    bytes: usize,
}

/// Why an entry was not added.
#[derive(Debug, Clone, PartialEq)]
pub enum AddError {
    /// It doesn't go with the entries that are there.
    Job(job::AddError),
    /// It couldn't be opened again after saving. The path starts at the entry.
    CannotBeKept(OpenError),
}

/// What a merge did.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Merged {
    /// Entries that were new here.
    pub added: usize,
    /// Entries that were not taken in: under the same identifier another one is here that says
    /// something else, and it stays.
    pub clashing: usize,
}

impl Document {
    /// A document of a job.
    ///
    /// # Errors
    /// [`AddError`] for the first entry that can't be kept.
    pub fn new(job: Job) -> Result<Self, AddError> {
        let empty = Job::new(job.id().clone(), job.created(), job.origin());
        let mut document = Self::of(describe::head(&job), empty);
        for entry in job.entries() {
            document.add(entry.clone())?;
        }
        Ok(document)
    }

    /// The job.
    #[must_use]
    pub fn job(&self) -> &Job {
        &self.job
    }

    /// The same document of another job: what a copy for a second machine begins with. `id` is a
    /// new one.
    #[must_use]
    pub fn copied_as(&self, id: Id) -> Self {
        let mut stored = self.stored.clone();
        stored.id = id.as_str().to_owned();
        let mut job = Job::new(id, self.job.created(), self.job.origin());
        for entry in self.job.entries() {
            // They stood together in a job before.
            let _ = job.add(entry.clone());
        }
        Self::of(stored, job)
    }

    /// Adds an entry at the end.
    ///
    /// The entry is read back from its stored form first: what stands in the job afterwards is
    /// what will be there after saving and opening.
    ///
    /// # Errors
    /// [`AddError`] where its identifier is taken, it strikes nothing, a number is not finite or
    /// absurd, or the document is full. The document is then as it was.
    pub fn add(&mut self, entry: Entry) -> Result<(), AddError> {
        if self
            .stored
            .entries
            .iter()
            .any(|other| other.id == entry.id.as_str())
        {
            return Err(AddError::Job(job::AddError::SameId(entry.id)));
        }
        if self.stored.entries.len() >= MOST_ENTRIES {
            return Err(full(Limit::Entries));
        }
        let stored = describe::entry(&entry);
        let understood = understand::entry(&stored, &Place::WHOLE)
            .map_err(AddError::CannotBeKept)?
            .1
            // Nothing that this program writes is unknown to it.
            .unwrap_or(entry);
        let bytes = self.bytes + self.bytes_for(&stored);
        if bytes > MOST_BYTES {
            return Err(full(Limit::Bytes));
        }
        self.job.add(understood).map_err(AddError::Job)?;
        self.stored.entries.push(stored);
        self.bytes = bytes;
        Ok(())
    }

    /// Adds every entry of another copy of the job that is not here yet, readable or not.
    ///
    /// Entries only grow, so nothing of either copy is lost by this. Those of each copy keep
    /// their order, and between the copies the earlier one comes first: the later answer to a
    /// question counts, and it is the same one whichever copy takes in the other. Where one of them
    /// is of no real machine, both together are of none.
    ///
    /// # Errors
    /// [`OpenError`] where both together can't be opened again, for example because they are too
    /// large for one document. The document is then as it was.
    pub fn merge(&mut self, other: &Self) -> Result<Merged, OpenError> {
        let (here, there) = (&self.stored.entries, &other.stored.entries);
        let both = interleaved(here, there);
        if both.len() > MOST_ENTRIES {
            return Err(Place::WHOLE.beyond(Limit::Entries));
        }
        let mut stored = self.stored.clone();
        let by_id = by_id(here);
        let merged = Merged {
            added: both.len() - here.len(),
            clashing: there
                .iter()
                .filter(|entry| {
                    by_id
                        .get(entry.id.as_str())
                        .is_some_and(|same| same != entry)
                })
                .count(),
        };
        stored.entries = both.into_iter().cloned().collect();
        let origin = self.job.origin().max(other.job.origin());
        stored.origin = describe::origin(origin).to_owned();
        (*self, _) = Self::understand(stored)?;
        Ok(merged)
    }

    /// What a stored form says.
    pub(crate) fn understand(
        mut stored: version_1::Document,
    ) -> Result<(Self, Vec<Notice>), OpenError> {
        let (job, notices) = understand::document(&mut stored)?;
        let document = Self::of(stored, job);
        if document.bytes > MOST_BYTES {
            return Err(Place::WHOLE.beyond(Limit::Bytes));
        }
        Ok((document, notices))
    }

    fn of(stored: version_1::Document, job: Job) -> Self {
        let bytes = written(&stored).len() + 1;
        Self { stored, job, bytes }
    }

    /// By how much an entry at the end makes the document longer: each of its lines is moved in
    /// by four, and it is set apart from what stands before and after.
    fn bytes_for(&self, entry: &version_1::Entry) -> usize {
        let text = written(entry);
        let lines = 1 + text.matches('\n').count();
        let apart = if self.stored.entries.is_empty() { 4 } else { 2 };
        text.len() + 4 * lines + apart
    }
}

/// Writes a document: readable JSON, always the same for the same document, and always a text
/// that [`crate::open`] takes.
#[must_use]
pub fn save(document: &Document) -> String {
    let mut text = written(&document.stored);
    text.push('\n');
    text
}

/// The entries of two copies of a job, those of each in its own order. Where that leaves a
/// choice, the earlier one comes first; of two at one moment the one with the smaller identifier.
fn interleaved<'a>(
    here: &'a [version_1::Entry],
    there: &'a [version_1::Entry],
) -> Vec<&'a version_1::Entry> {
    let (in_here, in_there) = (by_id(here), by_id(there));
    let mut theirs = there.iter().peekable();
    let mut taken = BTreeSet::new();
    let mut both = Vec::new();
    for mine in here {
        let is_shared = in_there.contains_key(mine.id.as_str());
        while let Some(next) = theirs.peek() {
            let id = next.id.as_str();
            if in_here.contains_key(id) {
                // It stands where this copy has it; what follows it there waits for it.
                if !taken.contains(id) {
                    break;
                }
            } else if is_shared || when(next) < when(mine) {
                both.push(*next);
            } else {
                break;
            }
            theirs.next();
        }
        taken.insert(mine.id.as_str());
        both.push(mine);
    }
    both.extend(theirs.filter(|entry| !in_here.contains_key(entry.id.as_str())));
    both
}

fn by_id(entries: &[version_1::Entry]) -> BTreeMap<&str, &version_1::Entry> {
    let mut by_id = BTreeMap::new();
    by_id.extend(entries.iter().map(|entry| (entry.id.as_str(), entry)));
    by_id
}

fn when(entry: &version_1::Entry) -> (Option<i64>, &str) {
    let at = parse_timestamp(&entry.at).ok();
    (at.map(|at| at.unix_milliseconds()), &entry.id)
}

fn full(limit: Limit) -> AddError {
    AddError::CannotBeKept(Place::WHOLE.beyond(limit))
}

pub(crate) fn written(stored: &impl Serialize) -> String {
    // Writing to memory fails only for a map whose keys aren't texts and for a `Serialize` that
    // says so itself; the stored forms have neither.
    #[allow(clippy::expect_used)]
    serde_json::to_string_pretty(stored).expect("texts as keys, derived serialisation")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Opened, open};

    fn copy(entries: &str) -> Document {
        let text = format!(
            r#"{{"type": "coldcase-job", "version": 1, "id": "j", "origin": "person",
                "created": "2026-11-25T12:00:00+01:00", "entries": [{entries}]}}"#
        );
        match open(&text) {
            Ok(Opened::Document { document, .. }) => document,
            other => panic!("{other:?}"),
        }
    }

    fn note(id: &str, words: &str) -> String {
        format!(r#"{{"id": "{id}", "at": "2026-11-25T12:00:00+01:00", "note": "{words}"}}"#)
    }

    #[test]
    fn two_copies_of_one_job_become_one_with_the_entries_of_both_unreadable_ones_too() {
        let smell = r#"{"id": "s", "at": "2026-11-25T12:00:00+01:00", "smell": "burnt"}"#;
        let strike = r#"{"id": "x", "at": "2026-11-25T12:01:00+01:00", "strike": "a"}"#;
        let both = note("a", "It hums.");
        let mut here = copy(&[both.clone(), note("b", "Oil.")].join(","));
        let there = copy(&[both, smell.to_owned(), strike.to_owned()].join(","));
        let merged = here.merge(&there).unwrap();
        assert_eq!((merged.added, merged.clashing), (2, 0));
        assert!(save(&here).contains("burnt"));
        assert_eq!(here.job().standing().len(), 2);
        let again = here.clone();
        assert_eq!(here.merge(&there).unwrap(), Merged::default());
        assert_eq!(here, again);
    }

    #[test]
    fn of_two_entries_with_one_identifier_the_one_that_is_here_stays() {
        let mut here = copy(&note("a", "It hums."));
        let merged = here.merge(&copy(&note("a", "It is silent."))).unwrap();
        assert_eq!((merged.added, merged.clashing), (0, 1));
        assert!(save(&here).contains("It hums."));
    }

    #[test]
    fn what_would_be_too_much_for_one_document_changes_neither() {
        let many = |prefix: &str| {
            let notes: Vec<String> = (0..6_000)
                .map(|number| note(&format!("{prefix}{number}"), "It hums."))
                .collect();
            copy(&notes.join(","))
        };
        let (mut here, there) = (many("a"), many("b"));
        let before = here.clone();
        assert!(matches!(here.merge(&there), Err(OpenError::Beyond { .. })));
        assert_eq!(here, before);
    }
}
