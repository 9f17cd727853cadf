//! A job: everything that was observed on one machine.

use std::collections::BTreeSet;

use crate::{Answer, Content, Entry, Id, Moment, Question};

/// Where a job comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Origin {
    /// Made by a person about a machine.
    Person,
    /// Invented, to try the program with. Always shown as such.
    Invented,
    /// Made by a person about a simulated machine, to practise on. Always shown as such.
    Practice,
}

impl Origin {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::Person, Self::Invented, Self::Practice];
}

/// Everything that was observed on one machine, as entries that only grow in number.
///
/// Undo, history and correction follow from that: an entry that no longer counts is struck by
/// a later one and stays readable.
#[derive(Debug, Clone, PartialEq)]
pub struct Job {
    id: Id,
    created: Moment,
    origin: Origin,
    entries: Vec<Entry>,
}

/// Why an entry was not added.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum AddError {
    /// Another entry has this identifier already.
    SameId(Id),
    /// It strikes an entry that isn't there yet.
    NothingToStrike(Id),
}

impl Job {
    /// An empty job.
    #[must_use]
    pub fn new(id: Id, created: Moment, origin: Origin) -> Self {
        Self {
            id,
            created,
            origin,
            entries: Vec::new(),
        }
    }

    /// The job's identifier.
    #[must_use]
    pub fn id(&self) -> &Id {
        &self.id
    }

    /// When it was begun.
    #[must_use]
    pub fn created(&self) -> Moment {
        self.created
    }

    /// Where it comes from.
    #[must_use]
    pub fn origin(&self) -> Origin {
        self.origin
    }

    /// Every entry ever made, in the order in which they were added.
    #[must_use]
    pub fn entries(&self) -> &[Entry] {
        &self.entries
    }

    /// Adds an entry at the end.
    ///
    /// # Errors
    /// [`AddError`] where its identifier is taken or it strikes something that isn't there.
    pub fn add(&mut self, entry: Entry) -> Result<(), AddError> {
        if self.entry(&entry.id).is_some() {
            return Err(AddError::SameId(entry.id));
        }
        if let Content::Strike(target) = &entry.content
            && self.entry(target).is_none()
        {
            return Err(AddError::NothingToStrike(target.clone()));
        }
        self.entries.push(entry);
        Ok(())
    }

    /// The entry with this identifier.
    #[must_use]
    pub fn entry(&self, id: &Id) -> Option<&Entry> {
        self.entries.iter().find(|entry| entry.id == *id)
    }

    /// The identifiers of all entries that no longer count.
    ///
    /// A strike always comes after what it strikes, so one pass from the end decides whether a
    /// strike still stands before its target is reached.
    #[must_use]
    pub fn struck(&self) -> BTreeSet<&Id> {
        let mut struck = BTreeSet::new();
        for entry in self.entries.iter().rev() {
            if let Content::Strike(target) = &entry.content
                && !struck.contains(&entry.id)
            {
                struck.insert(target);
            }
        }
        struck
    }

    /// The entries that still count, in the order in which they were added.
    #[must_use]
    pub fn standing(&self) -> Vec<&Entry> {
        let struck = self.struck();
        self.entries
            .iter()
            .filter(|entry| !struck.contains(&entry.id))
            .collect()
    }

    /// All standing answers to a question, oldest first.
    #[must_use]
    pub fn answers(&self, check: &str, item: &str) -> Vec<(&Entry, &Answer)> {
        self.standing()
            .into_iter()
            .filter_map(|entry| match &entry.content {
                Content::Answer { question, answer } if question.is(check, item) => {
                    Some((entry, answer))
                }
                _ => None,
            })
            .collect()
    }

    /// The standing answer to a question that counts, with its entry: the latest. A reason for not
    /// measuring takes back no reading: who can't measure again has measured all the same.
    #[must_use]
    pub fn counting(&self, check: &str, item: &str) -> Option<(&Entry, &Answer)> {
        let mut answers = self.answers(check, item);
        let latest = answers.pop()?;
        if matches!(latest.1, Answer::NotDone(_)) {
            let is_reading = |answer: &(&Entry, &Answer)| matches!(answer.1, Answer::Reading(_));
            return answers.into_iter().rfind(is_reading).or(Some(latest));
        }
        Some(latest)
    }

    /// The standing answer to a question that counts.
    #[must_use]
    pub fn answer(&self, check: &str, item: &str) -> Option<&Answer> {
        self.counting(check, item).map(|(_, answer)| answer)
    }

    /// The choice that counts for a question, by name.
    #[must_use]
    pub fn choice(&self, check: &str, item: &str) -> Option<&str> {
        match self.answer(check, item) {
            Some(Answer::Choice(name)) => Some(name.as_str()),
            _ => None,
        }
    }

    /// The latest standing answer or note: what undo would strike.
    #[must_use]
    pub fn latest_standing(&self) -> Option<&Entry> {
        self.standing()
            .into_iter()
            .rev()
            .find(|entry| !matches!(entry.content, Content::Strike(_)))
    }

    /// All questions that have a standing answer.
    #[must_use]
    pub fn answered(&self) -> BTreeSet<&Question> {
        let mut answered = BTreeSet::new();
        for entry in self.standing() {
            if let Content::Answer { question, .. } = &entry.content {
                answered.insert(question);
            }
        }
        answered
    }
}
