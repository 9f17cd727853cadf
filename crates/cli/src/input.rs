//! From a file's name to the job in it.

use std::ffi::{OsStr, OsString};
use std::fs::File;
use std::io::{self, Read};

use jobfile::{Document, Limit, Notice, OpenError, Opened, open_bytes};
use wording::ErrorWords;

/// Why there is no job in a file.
pub(crate) enum Unreadable {
    File(io::Error),
    Document(OpenError),
    /// Written by a newer program; of what version.
    Newer(u64),
    /// All jobs of a device, and how many.
    Backup(usize),
}

/// A job from a file, with what to know about it.
pub(crate) struct Loaded {
    pub(crate) document: Document,
    pub(crate) notices: Vec<Notice>,
}

/// What a file is called in what is printed.
pub(crate) fn shown(file: &OsStr) -> String {
    if file == "-" {
        return "standard input".to_owned();
    }
    file.to_string_lossy().into_owned()
}

/// Reads one file, or standard input for `-`.
pub(crate) fn load(file: &OsString) -> Result<Loaded, Unreadable> {
    let bytes = read(file).map_err(Unreadable::File)?;
    match open_bytes(&bytes).map_err(Unreadable::Document)? {
        Opened::Document { document, notices } => Ok(Loaded { document, notices }),
        Opened::Newer(newer) => Err(Unreadable::Newer(newer.version)),
        Opened::Backup(backup) => Err(Unreadable::Backup(backup.jobs.len())),
    }
}

/// Reads no further than just beyond the limit, so that no file can use up the memory.
fn read(file: &OsString) -> io::Result<Vec<u8>> {
    let source: Box<dyn Read> = if file == "-" {
        Box::new(io::stdin())
    } else {
        Box::new(File::open(file)?)
    };
    let mut bytes = Vec::new();
    let most = Limit::BackupBytes.most() as u64;
    source.take(most + 1).read_to_end(&mut bytes)?;
    Ok(bytes)
}

impl Unreadable {
    /// What is wrong, and the way out.
    pub(crate) fn words(&self) -> ErrorWords {
        match self {
            Self::File(error) => file_words(error),
            Self::Document(error) => wording::open_error(error),
            Self::Newer(version) => wording::newer(*version),
            Self::Backup(jobs) => wording::is_backup(*jobs),
        }
    }
}

fn file_words(error: &io::Error) -> ErrorWords {
    let (what, mend) = match error.kind() {
        io::ErrorKind::NotFound => (
            "There is no such file.".to_owned(),
            "Check its name and its folder.",
        ),
        io::ErrorKind::PermissionDenied => (
            "It may not be read by you.".to_owned(),
            "Copy it to where you may read it.",
        ),
        io::ErrorKind::IsADirectory => (
            "It is a folder, not a file.".to_owned(),
            "Name the files in it.",
        ),
        _ => (
            format!("It can't be read: {error}."),
            "Copy it to another place and try again.",
        ),
    };
    ErrorWords { what, mend }
}
