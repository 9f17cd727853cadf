//! A back-up: all jobs of one device in one file, each exactly as it was kept.

use job::{Id, Moment};
use serde::Serialize;
use serde_json::Value;

use crate::document::written;
use crate::fields::{Fields, Place, list, text, truth, whole_number};
use crate::limit::MOST_JOBS;
use crate::{BACKUP_TYPE, Limit, OpenError, Problem, understand, write_timestamp};

/// All jobs of one device.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Backup {
    /// When it was made.
    pub made: Moment,
    /// The jobs in the order in which they were kept.
    pub jobs: Vec<BackedUp>,
}

/// One job of a back-up.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct BackedUp {
    /// The identifier under which it was kept.
    pub id: Id,
    /// Whether it was put away from the list.
    pub put_away: bool,
    /// Its document to the letter, readable or not. It goes through [`crate::open`] in its turn.
    pub text: String,
}

#[derive(Serialize)]
struct Stored<'a> {
    r#type: &'a str,
    version: u64,
    made: String,
    jobs: Vec<StoredJob<'a>>,
}

#[derive(Serialize)]
struct StoredJob<'a> {
    id: &'a str,
    put_away: bool,
    text: &'a str,
}

/// Writes a back-up.
///
/// ```
/// use job::{Id, Moment};
/// use jobfile::{BackedUp, Backup, Opened, open, save_backup};
/// let job = BackedUp {
///     id: Id::new("4f1c").unwrap(),
///     put_away: false,
///     text: "not even JSON".to_owned(),
/// };
/// let backup = Backup { made: Moment::new(0, 0).unwrap(), jobs: vec![job] };
/// assert_eq!(open(&save_backup(&backup)), Ok(Opened::Backup(backup)));
/// ```
#[must_use]
pub fn save_backup(backup: &Backup) -> String {
    let jobs = backup.jobs.iter().map(|job| StoredJob {
        id: job.id.as_str(),
        put_away: job.put_away,
        text: &job.text,
    });
    written(&Stored {
        r#type: BACKUP_TYPE,
        version: 1,
        made: write_timestamp(backup.made),
        jobs: jobs.collect(),
    })
}

/// Whether a text says in its first words that it is a back-up, as ours do. It is worth reading
/// further then than one job would be.
pub(crate) fn says_backup(text: &str) -> bool {
    let start = text
        .char_indices()
        .nth(100)
        .map_or(text, |(end, _)| &text[..end]);
    start.contains(BACKUP_TYPE)
}

pub(crate) fn read(value: &Value) -> Result<Backup, OpenError> {
    let mut fields = Fields::of(value, &Place::WHOLE)?;
    fields.must("version", |value, place| {
        match whole_number(value, place)? {
            1 => Ok(()),
            // A newer program's back-up may mean anything.
            _ => Err(place.wrong(Problem::NewerVersion)),
        }
    })?;
    Ok(Backup {
        made: fields.must("made", |value, place| {
            understand::moment(&text(value, place)?, place)
        })?,
        jobs: fields.must("jobs", |value, place| {
            list(value, place, (MOST_JOBS, Limit::Jobs), job)
        })?,
    })
}

fn job(value: &Value, place: &Place) -> Result<BackedUp, OpenError> {
    let mut fields = Fields::of(value, place)?;
    Ok(BackedUp {
        id: fields.must("id", |value, place| {
            understand::id(&text(value, place)?, place)
        })?,
        put_away: fields.may("put_away", truth)?.unwrap_or_default(),
        text: fields.must("text", text)?,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Opened, open};

    #[test]
    fn what_is_wrong_in_a_back_up_is_refused_with_its_place() {
        let path_of = |text: &str| match open(text) {
            Err(OpenError::Field { path, .. }) => path,
            other => panic!("{other:?}"),
        };
        let head = r#""type": "coldcase-backup", "version": 1"#;
        let made = r#""made": "2026-11-25T12:00:00+01:00""#;
        assert_eq!(path_of(&format!("{{{head}}}")), "made");
        assert_eq!(path_of(&format!("{{{head}, {made}, \"jobs\": 3}}")), "jobs");
        let job = r#"{"id": "a", "text": 5}"#;
        assert_eq!(
            path_of(&format!("{{{head}, {made}, \"jobs\": [{job}]}}")),
            "jobs[0].text"
        );
        let newer = r#"{"type": "coldcase-backup", "version": 2}"#;
        assert_eq!(path_of(newer), "version");
    }

    #[test]
    fn a_back_up_of_more_than_one_job_may_be_larger_than_a_job() {
        let job = |id: &str| BackedUp {
            id: Id::new(id).unwrap(),
            put_away: true,
            text: "\u{3a9}".repeat(1_500_000),
        };
        let backup = Backup {
            made: Moment::new(0, 0).unwrap(),
            jobs: vec![job("a"), job("b")],
        };
        let text = save_backup(&backup);
        assert_eq!(open(&text), Ok(Opened::Backup(backup)));
    }
}
