//! What was typed and not yet entered, as text for the browser's storage.
//!
//! Drafts never enter a job's document. Their form has a version of its own and may be read
//! more loosely: a draft that can't be read costs a few keystrokes, so it is counted and left.

use job::{Drafts, Question, Text};
use serde::Serialize;
use serde_json::Value;

use crate::document::written;
use crate::fields::{Fields, Place, list, text};
use crate::limit::MOST_ENTRIES;
use crate::{Limit, OpenError, json};

/// Drafts that were read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OpenedDrafts {
    /// What could be read.
    pub drafts: Drafts,
    /// How many could not.
    pub unread: usize,
}

#[derive(Serialize)]
struct Stored<'a> {
    version: u64,
    drafts: Vec<Draft<'a>>,
}

#[derive(Serialize)]
struct Draft<'a> {
    check: &'a str,
    item: &'a str,
    typed: &'a str,
}

/// Writes drafts.
///
/// ```
/// # use job::{Drafts, Question, Text};
/// # use jobfile::{open_drafts, save_drafts};
/// let mut drafts = Drafts::default();
/// drafts.keep(Question::new("windings", "pair-1-2").unwrap(), Text::new("4,").unwrap());
/// let opened = open_drafts(&save_drafts(&drafts)).unwrap();
/// assert_eq!(opened.drafts, drafts);
/// assert_eq!(opened.unread, 0);
/// ```
#[must_use]
pub fn save_drafts(drafts: &Drafts) -> String {
    let drafts = drafts.iter().map(|(question, typed)| Draft {
        check: question.check.as_str(),
        item: question.item.as_str(),
        typed: typed.as_str(),
    });
    written(&Stored {
        version: 1,
        drafts: drafts.collect(),
    })
}

/// Reads drafts. Of a newer form, what looks the same is read.
///
/// # Errors
/// [`OpenError`] where the text is not JSON or holds no list of drafts.
pub fn open_drafts(stored: &str) -> Result<OpenedDrafts, OpenError> {
    let value = json::parse(stored)?;
    let mut fields = Fields::of(&value, &Place::WHOLE)?;
    let found = fields.must("drafts", |value, place| {
        list(
            value,
            place,
            (MOST_ENTRIES, Limit::Entries),
            |value, place| Ok(draft(value, place)),
        )
    })?;
    let mut opened = OpenedDrafts {
        drafts: Drafts::default(),
        unread: 0,
    };
    for draft in found {
        match draft {
            Some((question, typed)) => opened.drafts.keep(question, typed),
            None => opened.unread += 1,
        }
    }
    Ok(opened)
}

fn draft(value: &Value, place: &Place) -> Option<(Question, Text)> {
    let mut fields = Fields::of(value, place).ok()?;
    let check = fields.must("check", text).ok()?;
    let item = fields.must("item", text).ok()?;
    let typed = fields.must("typed", text).ok()?;
    Some((Question::new(&check, &item).ok()?, Text::new(&typed).ok()?))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_draft_that_cannot_be_read_costs_no_other() {
        let opened = open_drafts(
            r#"{"version": 7, "colour": 1, "drafts": [
                {"check": "windings", "item": "pair-1-2", "typed": "4,"},
                {"check": "windings", "item": "PAIR", "typed": "4,"},
                {"check": "windings", "item": "pair-1-3"},
                7
            ]}"#,
        )
        .unwrap();
        assert_eq!(opened.drafts.iter().count(), 1);
        assert_eq!(opened.unread, 3);
    }

    #[test]
    fn what_holds_no_drafts_is_refused() {
        assert_eq!(open_drafts(""), Err(OpenError::Empty));
        assert!(open_drafts("[]").is_err());
        assert!(open_drafts("{}").is_err());
    }
}
