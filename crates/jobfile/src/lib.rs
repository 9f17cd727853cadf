//! The job document: how a job is written to a file and how a file becomes a job again.
//!
//! Answers: is this text a job, what does it hold, what in it can't this program read, where
//! exactly is it wrong, and how is a job written so that it comes back the same?
//!
//! Must never know: what an answer means for the machine, where documents are kept, which words
//! a person reads. It makes no sentences: errors and notices say what, where and which way out,
//! as values.
//!
//! Four rules hold everything else together:
//!
//! - **One door.** [`open`] is the only way from text to a [`Document`]; [`open_bytes`] leads to it.
//! - **What is unknown is kept, what is known but wrong is refused.** A field, an answer's shape or
//!   a unit from another program is kept where it stood, written back, and told by a [`Notice`].
//!   A known field that can't be right is an [`OpenError`] with its place.
//! - **A document can always be saved and opened again.** [`Document::add`] refuses what could not.
//! - **A newer version is read only.** [`Newer`] gives back exactly the text that came.
//!
//! The form is JSON (RFC 8259), times are RFC 3339, and the figures of [`Limit`] are this project's
//! own choices, each with its reason.
//!
//! ```
//! use job::{Content, Entry, Id, Job, Moment, Origin, Text};
//! use jobfile::{Document, Opened, open, save};
//!
//! # fn main() -> Result<(), Box<dyn std::error::Error>> {
//! let noon = Moment::new(1_790_000_000_000, 60).map_err(|_| "time")?;
//! let job = Job::new(Id::new("4f1c").map_err(|_| "id")?, noon, Origin::Person);
//! let mut document = Document::new(job).map_err(|_| "job")?;
//! document
//!     .add(Entry {
//!         id: Id::new("9a02").map_err(|_| "id")?,
//!         at: noon,
//!         content: Content::Note(Text::new("It hums.").map_err(|_| "text")?),
//!     })
//!     .map_err(|_| "entry")?;
//!
//! let text = save(&document);
//! assert!(text.contains("\"at\": \"2026-09-21T15:13:20+01:00\""));
//! match open(&text) {
//!     Ok(Opened::Document { document: again, notices }) => {
//!         assert_eq!(again, document);
//!         assert!(notices.is_empty());
//!     }
//!     _ => unreachable!(),
//! }
//! # Ok(())
//! # }
//! ```

#![forbid(unsafe_code)]

mod backup;
mod cold;
mod describe;
mod document;
mod door;
mod drafts;
mod error;
mod fields;
mod json;
mod limit;
mod notice;
#[cfg(feature = "schema")]
mod schema;
mod start_trial;
mod timestamp;
mod understand;
mod version_1;

pub use backup::{BackedUp, Backup, save_backup};
pub use document::{AddError, Document, Merged, save};
pub use door::{Newer, Opened, open, open_bytes};
pub use drafts::{OpenedDrafts, open_drafts, save_drafts};
pub use error::{Kind, Mend, NotAJob, OpenError, Problem, Syntax};
pub use limit::{Limit, Reason};
pub use notice::{Notice, Unreadable};
#[cfg(feature = "schema")]
pub use schema::schema;
pub use timestamp::{TimestampError, parse_timestamp, write_timestamp};

/// The ending that a job's file is given, so that a person sees what it is.
pub const FILE_SUFFIX: &str = ".coldcase.json";

/// The newest version of the document that this program reads and writes.
pub const VERSION: u64 = 1;

/// What the field `type` says in every version.
pub const TYPE: &str = "coldcase-job";

/// What the field `type` says of a back-up.
pub const BACKUP_TYPE: &str = "coldcase-backup";
