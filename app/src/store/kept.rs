//! What is kept under a job's identifier, as far as this program can read it.

use job::Job;
use jobfile::{BACKUP_TYPE, Document, Newer, NotAJob, Notice, OpenError, Opened, open};

use super::record::{self, Revision};

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

/// Reads what is kept.
pub(super) fn understand(kept: &str) -> Kept {
    let (revision, text) = record::read(kept);
    let unreadable = |why| Kept::Unreadable {
        text: text.to_owned(),
        why,
    };
    match open(text) {
        Ok(Opened::Document { document, notices }) => Kept::Document {
            document,
            notices,
            revision,
        },
        Ok(Opened::Newer(newer)) => Kept::Newer(newer),
        // All jobs of a device where one should be: no door leads here.
        Ok(Opened::Backup(_)) => unreadable(OpenError::NotAJob(NotAJob::OtherType(
            BACKUP_TYPE.to_owned(),
        ))),
        Err(why) => unreadable(why),
    }
}
