//! What a file that was chosen or pasted would bring, before anything is added.

use diagnosis::Machine;
use job::{Entry, Id, Job};
use jobfile::{Document, Newer, Notice, OpenError, Opened, open, open_bytes};
use wording::title;

use super::import_backup::IncomingBackup;
use crate::store::{JobStore, Kept, Revision};

/// What a file would bring.
#[derive(Debug, Clone, PartialEq)]
#[allow(clippy::large_enum_variant)] // One at a time.
pub enum Preview {
    /// It can't be opened.
    Refused(OpenError),
    /// A job.
    Job(Incoming),
    /// A job from a newer program: read only.
    Newer(Newer),
    /// All jobs of a device.
    Backup(IncomingBackup),
}

/// A job that would be added.
#[derive(Debug, Clone, PartialEq)]
pub struct Incoming {
    /// The job.
    pub document: Document,
    /// What a person should know about it.
    pub notices: Vec<Notice>,
    /// What is here already under its identifier.
    pub already: Already,
    /// What it would change in the job that is here already.
    pub changes: Option<Changes>,
}

/// What a file would change in a job that is here already.
#[derive(Debug, Clone, PartialEq)]
pub struct Changes {
    /// The entries that are new.
    pub entries: Vec<Entry>,
    /// The job as it is here.
    pub before: Job,
    /// The job as it would be.
    pub after: Job,
}

/// What is here already under the identifier of a job.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Already {
    /// Nothing.
    Nothing,
    /// The same job.
    Job {
        /// How many entries of the incoming one are new here.
        new_entries: usize,
        /// How many can't be added: another entry of the same identifier is here.
        clashing: usize,
    },
    /// The same job, and both together are too large for one document.
    Full,
    /// Something that this program can't add to. The incoming one is kept beside it.
    Closed,
}

impl Preview {
    /// Looks into a file.
    #[must_use]
    pub fn of_file(bytes: &[u8], store: &JobStore) -> Self {
        Self::of(open_bytes(bytes), store)
    }

    /// Looks into a text.
    #[must_use]
    pub fn of_text(text: &str, store: &JobStore) -> Self {
        Self::of(open(text), store)
    }

    pub(super) fn of(opened: Result<Opened, OpenError>, store: &JobStore) -> Self {
        match opened {
            Err(error) => Self::Refused(error),
            Ok(Opened::Newer(newer)) => Self::Newer(newer),
            Ok(Opened::Document { document, notices }) => {
                let (already, changes) = already(&document, store);
                Self::Job(Incoming {
                    document,
                    notices,
                    already,
                    changes,
                })
            }
            Ok(Opened::Backup(backup)) => Self::Backup(IncomingBackup::of(backup, store)),
        }
    }

    /// What the machine is called, as far as can be read.
    #[must_use]
    pub fn title(&self) -> Option<String> {
        let job = match self {
            Self::Refused(_) | Self::Backup(_) => return None,
            Self::Job(incoming) => incoming.document.job(),
            Self::Newer(newer) => newer.readable.as_ref()?,
        };
        Some(title(&Machine::of(job)))
    }
}

impl Incoming {
    /// Adds it to the jobs kept here, or its entries to the one that is here already. Returns
    /// the identifier under which it is kept.
    pub fn add(&self, store: &JobStore, new_id: impl FnOnce() -> Id) -> Id {
        let id = self.document.job().id().clone();
        match store.load(&id) {
            Some(Kept::Document {
                mut document,
                revision,
                ..
            }) if self.already != Already::Full => {
                // The preview has tried it: both go into one document.
                if document.merge(&self.document).is_ok() {
                    store.save(&id, &document, revision);
                }
                id
            }
            None => {
                store.save(&id, &self.document, Revision::default());
                id
            }
            Some(_) => {
                let beside = new_id();
                store.save(&beside, &self.document, Revision::default());
                beside
            }
        }
    }
}

/// Keeps a job from a newer program as it is, beside anything of its identifier.
pub fn keep_newer(newer: &Newer, store: &JobStore, new_id: impl FnOnce() -> Id) -> Id {
    let free = |id: &Id| match store.load(id) {
        None => true,
        Some(Kept::Newer(same)) => same.text() == newer.text(),
        Some(_) => false,
    };
    let id = newer.id.clone().filter(free).unwrap_or_else(new_id);
    // Where there is no room it stays in memory, which the page says by itself.
    let _ = store.keep_text(&id, newer.text());
    id
}

fn already(incoming: &Document, store: &JobStore) -> (Already, Option<Changes>) {
    match store.load(incoming.job().id()) {
        None => (Already::Nothing, None),
        Some(Kept::Document { mut document, .. }) => {
            let before = document.job().clone();
            match document.merge(incoming) {
                Ok(merged) => {
                    let already = Already::Job {
                        new_entries: merged.added,
                        clashing: merged.clashing,
                    };
                    (already, Some(Changes::between(before, document.job())))
                }
                Err(_) => (Already::Full, None),
            }
        }
        Some(Kept::Newer(_) | Kept::Unreadable { .. }) => (Already::Closed, None),
    }
}

impl Changes {
    fn between(before: Job, after: &Job) -> Self {
        let entries = after.entries().iter();
        let is_new = |entry: &&Entry| before.entry(&entry.id).is_none();
        Self {
            entries: entries.filter(is_new).cloned().collect(),
            after: after.clone(),
            before,
        }
    }
}
