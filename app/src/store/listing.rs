//! The list of jobs: what is shown of each, and which are put away from it.

use std::collections::BTreeSet;

use job::Id;
use measure::ranked;

use super::jobs::{AWAY, JOB, name};
use super::record::{self, LONGEST_LINE, Summary, USUAL_LINE};
use super::{JobStore, Shelf};

/// Fifty jobs of ordinary size: about 5,000 characters each.
const ROOM_FOR_FIFTY: usize = 250_000;

/// One job in the list.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Listed {
    /// The identifier under which it is kept.
    pub id: Id,
    /// What is shown of it; none for one that has to be read in full for that: kept by another
    /// version, or damaged in its first line.
    pub summary: Option<Summary>,
    /// Whether it is put away.
    pub is_away: bool,
}

impl JobStore {
    /// Every job kept here, the one touched last in front; what can't be read stands at the end.
    ///
    /// What was listed last is kept until a job is written, taken away or put away here, or
    /// [`JobStore::look_again`] says that another tab did so: a phone would read hundreds of first
    /// lines each time that someone goes back to the list.
    #[must_use]
    pub fn listed(&self) -> Vec<Listed> {
        if let Some(listed) = self.last_listed.borrow().as_ref() {
            return listed.clone();
        }
        let listed = self.list();
        *self.last_listed.borrow_mut() = Some(listed.clone());
        listed
    }

    /// Another tab has changed what is kept.
    pub fn look_again(&self) {
        *self.last_listed.borrow_mut() = None;
    }

    /// Something is written or taken away under this name.
    pub(super) fn changes(&self, name: &str) {
        if name.starts_with(JOB) || name.starts_with(AWAY) {
            self.look_again();
        }
    }

    fn list(&self) -> Vec<Listed> {
        let names = self.names();
        let listed: Vec<Listed> = names
            .iter()
            .filter_map(|name| Id::new(name.strip_prefix(JOB)?).ok())
            .map(|id| Listed {
                summary: self.summary(&id),
                is_away: names.contains(&name(AWAY, &id)),
                id,
            })
            .collect();
        ranked(listed, |job| {
            let touched = job.summary.as_ref().map(|summary| summary.touched);
            // Milliseconds of any year that can be written are whole numbers in a double.
            touched.map_or(f64::NEG_INFINITY, |touched| {
                touched.unix_milliseconds() as f64
            })
        })
    }

    /// Puts a job away from the list, or back into it.
    pub fn put_away(&self, id: &Id, away: bool) {
        let name = name(AWAY, id);
        if away {
            // Where there is no room it stays in the list, which hides nothing.
            let _ = self.write(&name, "away");
        } else {
            self.remove(&name);
        }
    }

    /// Whether a job is put away.
    #[must_use]
    pub fn is_away(&self, id: &Id) -> bool {
        self.read(&name(AWAY, id)).is_some()
    }

    fn summary(&self, id: &Id) -> Option<Summary> {
        let name = name(JOB, id);
        // Almost every line is short, and what is read is copied out of the browser.
        let lengths = [USUAL_LINE, LONGEST_LINE].into_iter();
        lengths
            .filter_map(|length| self.start_of(&name, length))
            .find_map(|start| record::read_summary(&start))
    }

    /// Whether so little room is left that a person should know before it is gone: room for
    /// about as many characters as fifty jobs have.
    #[must_use]
    pub fn is_nearly_full(&self) -> bool {
        let shelf = self.shelf.as_ref();
        shelf.is_some_and(|shelf| !shelf.has_room(ROOM_FOR_FIFTY))
    }

    /// The names of all texts kept here, on the shelf or aside.
    pub(super) fn names(&self) -> BTreeSet<String> {
        // Filled one by one: collecting would sort, which costs the page more than it saves.
        let mut names = BTreeSet::new();
        names.extend(self.aside.names());
        names.extend(self.shelf.iter().flat_map(|shelf| shelf.names()));
        names
    }
}
