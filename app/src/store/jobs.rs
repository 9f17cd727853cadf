//! The jobs kept on this device: none is lost, none is overwritten unseen.

use std::collections::BTreeSet;

use job::{Drafts, Id, Job};
use jobfile::{Document, Newer, Notice, OpenError, Opened, open, open_drafts, save, save_drafts};

use super::record::{self, Revision};
use super::{MemoryShelf, Shelf, Trouble};

/// The jobs kept on this device.
pub struct JobStore {
    shelf: Option<Box<dyn Shelf>>,
    /// What the shelf did not take, for as long as the page is open.
    aside: MemoryShelf,
}

/// What is kept under a job's identifier.
#[derive(Debug, Clone, PartialEq)]
#[allow(clippy::large_enum_variant)] // One at a time, and short lists of them.
pub enum Kept {
    /// A job that can be added to.
    Document {
        /// The job.
        document: Document,
        /// What a person should know about it.
        notices: Vec<Notice>,
        /// The revision under which it is kept.
        revision: Revision,
    },
    /// A job from a newer program: to be looked at and passed on.
    Newer(Newer),
    /// A text that can't be read as a job. It stays as it is.
    Unreadable {
        /// The text as it is.
        text: String,
        /// Why it can't be read.
        why: OpenError,
    },
}

/// How keeping a job went.
#[derive(Debug, Clone, PartialEq)]
pub struct Saved {
    /// The revision under which it is kept now.
    pub revision: Revision,
    /// The job as it is kept, where another tab had added to it.
    pub merged: Option<Document>,
    /// Why it is kept only as long as this page is open.
    pub trouble: Option<Trouble>,
}

const JOB: &str = "job/";
const DRAFTS: &str = "drafts/";
const EXPORTED: &str = "exported/";
const SETTING: &str = "setting/";
/// A new job that is being begun, as text.
const BEGUN: &str = "begun";
/// The job that was deleted last, its identifier in the first line.
const DELETED: &str = "deleted";

impl Kept {
    /// The job, as far as it can be read.
    #[must_use]
    pub fn job(&self) -> Option<&Job> {
        match self {
            Self::Document { document, .. } => Some(document.job()),
            Self::Newer(newer) => newer.readable.as_ref(),
            Self::Unreadable { .. } => None,
        }
    }
}

impl JobStore {
    /// Keeps jobs on a shelf, or only in memory where there is none.
    #[must_use]
    pub fn new(shelf: Option<Box<dyn Shelf>>) -> Self {
        Self {
            shelf,
            aside: MemoryShelf::default(),
        }
    }

    /// Why jobs, or some of them, are lost when the page is closed.
    #[must_use]
    pub fn trouble(&self) -> Option<Trouble> {
        match &self.shelf {
            None => Some(Trouble::Blocked),
            Some(_) if self.aside.is_empty() => None,
            Some(_) => Some(Trouble::Full),
        }
    }

    /// Whether there is anything to list: a job, readable or not, or one to be brought back.
    #[must_use]
    pub fn has_any(&self) -> bool {
        let shelf = self.shelf.iter().flat_map(|shelf| shelf.names());
        let mut names = self.aside.names().into_iter().chain(shelf);
        names.any(|name| name.starts_with(JOB) || name == DELETED)
    }

    /// Every job kept here under its identifier, readable or not.
    #[must_use]
    pub fn list(&self) -> Vec<(Id, Kept)> {
        // Filled one by one: collecting would sort, which costs the page more than it saves.
        let mut names = BTreeSet::new();
        names.extend(self.aside.names());
        names.extend(self.shelf.iter().flat_map(|shelf| shelf.names()));
        names
            .iter()
            .filter_map(|name| Id::new(name.strip_prefix(JOB)?).ok())
            .filter_map(|id| Some((id.clone(), self.load(&id)?)))
            .collect()
    }

    /// The job kept under this identifier.
    #[must_use]
    pub fn load(&self, id: &Id) -> Option<Kept> {
        let kept = self.read(&name(JOB, id))?;
        Some(understand(&kept))
    }

    /// Keeps a job that was last seen at revision `known` under this identifier, which is its own
    /// unless something that can't be read took that first.
    ///
    /// Where it was written since, by another tab, that one stays and the entries that it lacks
    /// are added to it. What can't be read is never overwritten.
    pub fn save(&self, id: &Id, document: &Document, known: Revision) -> Saved {
        let name = name(JOB, id);
        let there = self.shelf.as_ref().and_then(|shelf| shelf.read(&name));
        let Some(there) = there else {
            return self.write_job(&name, document, known, None);
        };
        let (revision, text) = record::read(&there);
        // Whoever writes raises the revision: what has the known one is what this page saw or wrote.
        if revision == known && revision != Revision::default() {
            return self.write_job(&name, document, known, None);
        }
        let Ok(Opened::Document {
            document: mut theirs,
            ..
        }) = open(text)
        else {
            return self.put_aside(&name, document, known, Trouble::Unreadable);
        };
        match theirs.merge(document) {
            Err(_) => self.put_aside(&name, document, known, Trouble::Full),
            // Written all the same, it would call the other tab, which would write in its turn, without an end.
            Ok(merged) if merged.added == 0 => {
                self.aside.remove(&name);
                Saved {
                    revision,
                    merged: Some(theirs),
                    trouble: None,
                }
            }
            Ok(_) => {
                let merged = Some(theirs.clone());
                self.write_job(&name, &theirs, revision, merged)
            }
        }
    }

    /// Keeps a text that this program can't change: a job from a newer program.
    ///
    /// # Errors
    /// [`Trouble`] where it is only kept as long as this page is open.
    pub fn keep_text(&self, id: &Id, text: &str) -> Result<(), Trouble> {
        self.write(&name(JOB, id), &record::write(Revision::default(), text))
    }

    /// Takes a job away and keeps it as the one that was deleted last.
    pub fn delete(&self, id: &Id) {
        let job = name(JOB, id);
        let Some(kept) = self.read(&job) else {
            return;
        };
        // First away, then aside: a full shelf has room for it only in this order.
        self.remove(&job);
        self.remove(&name(DRAFTS, id));
        // Where even that fails, `write` keeps it in memory.
        let _ = self.write(DELETED, &[id.as_str(), "\n", &kept].concat());
    }

    /// The job that was deleted last, while it can be brought back.
    #[must_use]
    pub fn deleted(&self) -> Option<Kept> {
        let kept = self.read(DELETED)?;
        let (_, record) = kept.split_once('\n')?;
        Some(understand(record))
    }

    /// Brings the job back that was deleted last. Where its identifier has been taken since, the
    /// entries of both go into one job.
    ///
    /// # Errors
    /// [`Trouble`] where it is only kept as long as this page is open, or where what has its
    /// identifier now can't take it in; then it stays among the deleted.
    pub fn restore(&self) -> Result<(), Trouble> {
        let kept = self.read(DELETED);
        let found = kept.as_deref().and_then(|kept| kept.split_once('\n'));
        let Some((id, record)) = found.and_then(|(id, record)| Some((Id::new(id).ok()?, record)))
        else {
            return Ok(());
        };
        let trouble = match (self.load(&id), understand(record)) {
            (None, _) => {
                // First away, then back: a full shelf has room for it only in this order.
                self.remove(DELETED);
                return self.write(&name(JOB, &id), record);
            }
            (
                Some(Kept::Document {
                    mut document,
                    revision,
                    ..
                }),
                Kept::Document {
                    document: deleted, ..
                },
            ) => {
                document.merge(&deleted).map_err(|_| Trouble::Full)?;
                self.save(&id, &document, revision).trouble
            }
            _ => return Err(Trouble::Unreadable),
        };
        self.remove(DELETED);
        trouble.map_or(Ok(()), Err)
    }

    /// What was typed and not entered yet.
    #[must_use]
    pub fn drafts(&self, id: &Id) -> Drafts {
        let kept = self.read(&name(DRAFTS, id));
        let opened = kept.and_then(|kept| open_drafts(&kept).ok());
        opened.map(|opened| opened.drafts).unwrap_or_default()
    }

    /// Keeps what was typed and not entered yet.
    pub fn keep_drafts(&self, id: &Id, drafts: &Drafts) {
        let name = name(DRAFTS, id);
        if drafts.iter().next().is_none() {
            self.remove(&name);
        } else {
            // A draft that finds no room lasts as long as the page.
            let _ = self.write(&name, &save_drafts(drafts));
        }
    }

    /// A new job that was begun and not finished.
    #[must_use]
    pub fn begun(&self) -> Option<String> {
        self.read(BEGUN)
    }

    /// Keeps a new job that was begun and not finished; none once it is.
    pub fn keep_begun(&self, begun: Option<&str>) {
        match begun {
            // Where there is no room it lasts as long as the page.
            Some(text) => drop(self.write(BEGUN, text)),
            None => self.remove(BEGUN),
        }
    }

    /// When a job was last sent or saved as a file.
    #[must_use]
    pub fn exported(&self, id: &Id) -> Option<job::Moment> {
        jobfile::parse_timestamp(&self.read(&name(EXPORTED, id))?).ok()
    }

    /// Notes when a job was sent or saved as a file.
    pub fn note_export(&self, id: &Id, at: job::Moment) {
        let _ = self.write(&name(EXPORTED, id), &jobfile::write_timestamp(at));
    }

    /// What the person chose once for all jobs, by the setting's name.
    #[must_use]
    pub fn setting(&self, setting: &str) -> Option<String> {
        self.read(&[SETTING, setting].concat())
    }

    /// Keeps a setting. One that finds no room lasts as long as the page.
    pub fn keep_setting(&self, setting: &str, text: &str) {
        let _ = self.write(&[SETTING, setting].concat(), text);
    }

    /// Tries once more to keep what found no room.
    pub fn retry(&self) {
        if self.shelf.is_none() {
            return;
        }
        for name in self.aside.names() {
            let Some(id) = name.strip_prefix(JOB).and_then(|id| Id::new(id).ok()) else {
                continue;
            };
            if let Some(Kept::Document {
                document, revision, ..
            }) = self.load(&id)
            {
                self.save(&id, &document, revision);
            }
        }
    }

    /// Writes a job over the revision that the shelf has.
    fn write_job(
        &self,
        name: &str,
        document: &Document,
        shelf_has: Revision,
        merged: Option<Document>,
    ) -> Saved {
        let revision = shelf_has.next();
        let kept = record::write(revision, &save(document));
        match self.write_shelf(name, &kept) {
            Ok(()) => {
                self.aside.remove(name);
                Saved {
                    revision,
                    merged,
                    trouble: None,
                }
            }
            Err(trouble) => Saved {
                merged,
                ..self.put_aside(name, document, shelf_has, trouble)
            },
        }
    }

    /// Keeps a job as long as the page is open, so that what the shelf has stays as it is.
    fn put_aside(
        &self,
        name: &str,
        document: &Document,
        shelf_has: Revision,
        why: Trouble,
    ) -> Saved {
        let kept = record::write(shelf_has, &save(document));
        // Memory without a limit takes everything.
        let _ = self.aside.write(name, &kept);
        Saved {
            revision: shelf_has,
            merged: None,
            trouble: Some(why),
        }
    }

    /// What stands aside is newer than what the shelf has.
    fn read(&self, name: &str) -> Option<String> {
        self.aside
            .read(name)
            .or_else(|| self.shelf.as_ref()?.read(name))
    }

    fn write(&self, name: &str, text: &str) -> Result<(), Trouble> {
        let on_shelf = self.write_shelf(name, text);
        match on_shelf {
            Ok(()) => self.aside.remove(name),
            Err(_) => self.aside.write(name, text)?,
        }
        on_shelf
    }

    fn write_shelf(&self, name: &str, text: &str) -> Result<(), Trouble> {
        match &self.shelf {
            Some(shelf) => shelf.write(name, text),
            None => Err(Trouble::Blocked),
        }
    }

    fn remove(&self, name: &str) {
        self.aside.remove(name);
        if let Some(shelf) = &self.shelf {
            shelf.remove(name);
        }
    }
}

fn understand(kept: &str) -> Kept {
    let (revision, text) = record::read(kept);
    match open(text) {
        Ok(Opened::Document { document, notices }) => Kept::Document {
            document,
            notices,
            revision,
        },
        Ok(Opened::Newer(newer)) => Kept::Newer(newer),
        Err(why) => Kept::Unreadable {
            text: text.to_owned(),
            why,
        },
    }
}

fn name(prefix: &str, id: &Id) -> String {
    [prefix, id.as_str()].concat()
}
