//! The jobs kept on this device: none is lost, none is overwritten unseen.

use std::cell::RefCell;

use job::{Drafts, Id};
use jobfile::{Document, Opened, open, open_drafts, save, save_drafts};

use super::kept::{Kept, understand};
use super::listing::Listed;
use super::record::{self, Revision, Summary};
use super::{MemoryShelf, Shelf, Trouble};

/// The jobs kept on this device.
pub struct JobStore {
    pub(super) shelf: Option<Box<dyn Shelf>>,
    /// What the shelf did not take, for as long as the page is open.
    pub(super) aside: MemoryShelf,
    /// The list as it was made last, while it holds.
    pub(super) last_listed: RefCell<Option<Vec<Listed>>>,
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
    /// It had been kept before and was gone: deleted in another tab, or by the browser.
    pub was_gone: bool,
}

pub(super) const JOB: &str = "job/";
pub(super) const AWAY: &str = "away/";
const DRAFTS: &str = "drafts/";
const EXPORTED: &str = "exported/";
const SETTING: &str = "setting/";
/// A new job that is being begun, as text.
const BEGUN: &str = "begun";
/// The job that was deleted last, its identifier in the first line.
const DELETED: &str = "deleted";

impl JobStore {
    /// Keeps jobs on a shelf, or only in memory where there is none.
    #[must_use]
    pub fn new(shelf: Option<Box<dyn Shelf>>) -> Self {
        Self {
            shelf,
            aside: MemoryShelf::default(),
            last_listed: RefCell::new(None),
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
        let on_shelf = |beginning| {
            let shelf = self.shelf.as_ref();
            shelf.is_some_and(|shelf| shelf.has_any(beginning))
        };
        [JOB, DELETED]
            .into_iter()
            .any(|beginning| self.aside.has_any(beginning) || on_shelf(beginning))
    }

    /// The job kept under this identifier.
    #[must_use]
    pub fn load(&self, id: &Id) -> Option<Kept> {
        let kept = self.read(&name(JOB, id))?;
        Some(understand(&kept))
    }

    /// The text of what is kept under this identifier, readable or not.
    #[must_use]
    pub fn text(&self, id: &Id) -> Option<String> {
        let kept = self.read(&name(JOB, id))?;
        Some(record::read(&kept).1.to_owned())
    }

    /// Keeps a job that was last seen at revision `known` under this identifier, which is its own
    /// unless something that can't be read took that first.
    ///
    /// Where it was written since, by another tab, that one stays and the entries that it lacks
    /// are added to it. What can't be read is never overwritten.
    pub fn save(&self, id: &Id, document: &Document, known: Revision) -> Saved {
        let name = name(JOB, id);
        self.changes(&name);
        let there = self.shelf.as_ref().and_then(|shelf| shelf.read(&name));
        let Some(there) = there else {
            return Saved {
                was_gone: known != Revision::default() && self.aside.read(&name).is_none(),
                ..self.write_job(&name, document, known, None)
            };
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
                    was_gone: false,
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
        self.write(
            &name(JOB, id),
            &record::write(Revision::default(), None, text),
        )
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
        self.remove(&name(AWAY, id));
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
        let kept = with_summary(revision, document);
        match self.write_shelf(name, &kept) {
            Ok(()) => {
                self.aside.remove(name);
                Saved {
                    revision,
                    merged,
                    trouble: None,
                    was_gone: false,
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
        let kept = with_summary(shelf_has, document);
        // Memory without a limit takes everything.
        let _ = self.aside.write(name, &kept);
        Saved {
            revision: shelf_has,
            merged: None,
            trouble: Some(why),
            was_gone: false,
        }
    }

    /// What stands aside is newer than what the shelf has.
    pub(super) fn read(&self, name: &str) -> Option<String> {
        self.aside
            .read(name)
            .or_else(|| self.shelf.as_ref()?.read(name))
    }

    /// So many characters from the start of a text.
    pub(super) fn start_of(&self, name: &str, characters: usize) -> Option<String> {
        self.aside
            .read(name)
            .or_else(|| self.shelf.as_ref()?.start_of(name, characters))
    }

    pub(super) fn write(&self, name: &str, text: &str) -> Result<(), Trouble> {
        self.changes(name);
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

    pub(super) fn remove(&self, name: &str) {
        self.changes(name);
        self.aside.remove(name);
        if let Some(shelf) = &self.shelf {
            shelf.remove(name);
        }
    }
}

fn with_summary(revision: Revision, document: &Document) -> String {
    let summary = Summary::of(document.job());
    record::write(revision, Some(&summary), &save(document))
}

pub(super) fn name(prefix: &str, id: &Id) -> String {
    [prefix, id.as_str()].concat()
}
