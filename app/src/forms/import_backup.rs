//! What a back-up would bring, and taking it in: nothing that is here is lost by it.

use job::{Id, Moment};
use jobfile::{BackedUp, Backup, open};

use super::import::{Already, Preview, keep_newer};
use crate::store::JobStore;

/// All jobs of a device, each looked into.
#[derive(Debug, Clone, PartialEq)]
pub struct IncomingBackup {
    /// When it was made.
    pub made: Moment,
    /// Its jobs.
    pub jobs: Vec<IncomingJob>,
}

/// One job of a back-up.
#[derive(Debug, Clone, PartialEq)]
pub struct IncomingJob {
    /// What it holds.
    pub preview: Preview,
    backed_up: BackedUp,
}

/// How many of a back-up's jobs are what to this device.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Tally {
    /// Not here yet.
    pub new: usize,
    /// Here already, and it brings entries.
    pub growing: usize,
    /// Here already with all of its entries.
    pub same: usize,
    /// Not to be read by this program: taken in as they are.
    pub unread: usize,
}

impl IncomingBackup {
    pub(super) fn of(backup: Backup, store: &JobStore) -> Self {
        let jobs = backup.jobs.into_iter().map(|backed_up| IncomingJob {
            preview: Preview::of(open(&backed_up.text), store),
            backed_up,
        });
        Self {
            made: backup.made,
            jobs: jobs.collect(),
        }
    }

    /// Counts what it would bring.
    #[must_use]
    pub fn tally(&self) -> Tally {
        let mut tally = Tally::default();
        for job in &self.jobs {
            match &job.preview {
                Preview::Job(incoming) => match incoming.already {
                    Already::Nothing | Already::Closed | Already::Full => tally.new += 1,
                    Already::Job { new_entries: 0, .. } => tally.same += 1,
                    Already::Job { .. } => tally.growing += 1,
                },
                Preview::Newer(_) | Preview::Refused(_) | Preview::Backup(_) => tally.unread += 1,
            }
        }
        tally
    }

    /// Takes all of it in.
    pub fn add(&self, store: &JobStore, new_id: impl Fn() -> Id) {
        for job in &self.jobs {
            let kept_as = job.add(store, &new_id);
            if let Some(id) = kept_as {
                store.put_away(&id, true);
            }
        }
    }
}

impl IncomingJob {
    /// Takes it in. Returns where it is kept if it is new here and was put away.
    fn add(&self, store: &JobStore, new_id: &impl Fn() -> Id) -> Option<Id> {
        let was_here = store.load(&self.backed_up.id).is_some();
        let id = match &self.preview {
            Preview::Job(incoming) => incoming.add(store, new_id),
            Preview::Newer(newer) => keep_newer(newer, store, new_id),
            Preview::Refused(_) | Preview::Backup(_) => self.keep_as_it_is(store, new_id),
        };
        (!was_here && self.backed_up.put_away).then_some(id)
    }

    /// Beside anything else of its identifier; once, however often it is taken in.
    fn keep_as_it_is(&self, store: &JobStore, new_id: &impl Fn() -> Id) -> Id {
        let BackedUp { id, text, .. } = &self.backed_up;
        let id = match store.text(id) {
            Some(here) if here == *text => return id.clone(),
            Some(_) => new_id(),
            None => id.clone(),
        };
        // Where there is no room it stays in memory, which the page says by itself.
        let _ = store.keep_text(&id, text);
        id
    }
}
