//! All jobs of this device in one file.

use job::{Id, Moment};
use jobfile::{BackedUp, Backup};

use super::jobs::{AWAY, JOB, name};
use super::{JobStore, record};

/// When the last back-up was made.
const BACKED_UP: &str = "backed-up";

impl JobStore {
    /// Every job as it is kept, readable or not.
    #[must_use]
    pub fn back_up(&self, now: Moment) -> Backup {
        let names = self.names();
        let jobs = names.iter().filter_map(|kept_as| {
            let id = Id::new(kept_as.strip_prefix(JOB)?).ok()?;
            let kept = self.read(kept_as)?;
            let (_, text) = record::read(&kept);
            Some(BackedUp {
                put_away: names.contains(&name(AWAY, &id)),
                text: text.to_owned(),
                id,
            })
        });
        Backup {
            made: now,
            jobs: jobs.collect(),
        }
    }

    /// When a back-up of all jobs was last saved.
    #[must_use]
    pub fn backed_up(&self) -> Option<Moment> {
        jobfile::parse_timestamp(&self.read(BACKED_UP)?).ok()
    }

    /// Notes that a back-up was saved.
    pub fn note_backup(&self, at: Moment) {
        let _ = self.write(BACKED_UP, &jobfile::write_timestamp(at));
    }
}
