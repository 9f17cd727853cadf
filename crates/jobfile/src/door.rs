//! The one door through which every load passes.

use job::{Id, Job};
use serde_json::Value;

use crate::fields::{Place, kind_of, whole_number};
use crate::limit::MOST_BACKUP_BYTES;
use crate::{BACKUP_TYPE, Backup, Document, Kind, Limit, NotAJob, Notice, OpenError, Problem};
use crate::{TYPE, VERSION, backup, json, version_1};

/// A text that was opened.
#[derive(Debug, Clone, PartialEq)]
#[allow(clippy::large_enum_variant)] // One at a time, and never in a list.
pub enum Opened {
    /// A job that can be added to and saved.
    Document {
        /// The job with all that came with it.
        document: Document,
        /// What a person should know about it, in the order of the text.
        notices: Vec<Notice>,
    },
    /// A job from a newer program: to be looked at and passed on, not changed.
    Newer(Newer),
    /// All jobs of one device, each still to be opened.
    Backup(Backup),
}

/// A job from a newer program.
#[derive(Debug, Clone, PartialEq)]
pub struct Newer {
    /// The version that it says it is.
    pub version: u64,
    /// Its identifier, where that is where it always was.
    pub id: Option<Id>,
    /// What this program makes of it when it is read as version 1: perhaps a part, perhaps
    /// wrong in what a newer version means differently. To be shown as such.
    pub readable: Option<Job>,
    /// What a person should know about that.
    pub notices: Vec<Notice>,
    text: String,
}

impl Newer {
    /// The text as it came, to the byte: what an export gives.
    #[must_use]
    pub fn text(&self) -> &str {
        &self.text
    }
}

/// Opens a text as a job.
///
/// # Errors
/// [`OpenError`] says what is wrong and where, and [`OpenError::mend`] which way out there is.
///
/// ```
/// use jobfile::{Mend, NotAJob, OpenError, open};
/// let error = open(r#"{"type": "recipe"}"#).unwrap_err();
/// assert_eq!(error, OpenError::NotAJob(NotAJob::OtherType("recipe".into())));
/// assert_eq!(error.mend(), Mend::ChooseTheJob);
/// ```
pub fn open(text: &str) -> Result<Opened, OpenError> {
    let value = json::parse_within(text, limit_of(text))?;
    if value.get("type").and_then(Value::as_str) == Some(BACKUP_TYPE) {
        return backup::read(&value).map(Opened::Backup);
    }
    let version = version_of(&value)?;
    let read = || version_1::Document::read(&value).and_then(Document::understand);
    if version <= VERSION {
        let (document, notices) = read()?;
        return Ok(Opened::Document { document, notices });
    }
    let id = value.get("id").and_then(Value::as_str);
    let (readable, notices) = match read() {
        Ok((document, notices)) => (Some(document.job().clone()), notices),
        Err(_) => (None, Vec::new()),
    };
    Ok(Opened::Newer(Newer {
        version,
        id: id.and_then(|id| Id::new(id).ok()),
        readable,
        notices,
        text: text.to_owned(),
    }))
}

/// Opens the bytes of a file as a job.
///
/// # Errors
/// As [`open`], and [`OpenError::NotText`] for bytes that are not UTF-8. A file can be cut off
/// behind the limit before it gets here: the limit is told first.
pub fn open_bytes(bytes: &[u8]) -> Result<Opened, OpenError> {
    if bytes.len() > MOST_BACKUP_BYTES {
        return Err(Place::WHOLE.beyond(Limit::BackupBytes));
    }
    let text = str::from_utf8(bytes).map_err(|error| OpenError::NotText {
        byte: error.valid_up_to(),
    })?;
    open(text)
}

/// How long a text may be: a back-up holds many jobs.
fn limit_of(text: &str) -> Limit {
    if backup::says_backup(text) {
        Limit::BackupBytes
    } else {
        Limit::Bytes
    }
}

/// The version that a job says it is, once it says that it is one.
fn version_of(value: &Value) -> Result<u64, OpenError> {
    let Value::Object(fields) = value else {
        return Err(OpenError::NotAJob(NotAJob::NotAnObject(kind_of(value))));
    };
    match fields.get("type") {
        None => return Err(OpenError::NotAJob(NotAJob::NoType)),
        Some(Value::String(kind)) if kind == TYPE => {}
        Some(Value::String(other)) => {
            return Err(OpenError::NotAJob(NotAJob::OtherType(other.clone())));
        }
        Some(other) => {
            return Err(Place::WHOLE.field("type").wrong(Problem::Kind {
                expected: Kind::Text,
                found: kind_of(other),
            }));
        }
    }
    let place = Place::WHOLE.field("version");
    let version = fields
        .get("version")
        .ok_or_else(|| place.wrong(Problem::Missing))?;
    match whole_number(version, &place)? {
        0 => Err(place.wrong(Problem::Version)),
        version => Ok(version),
    }
}
