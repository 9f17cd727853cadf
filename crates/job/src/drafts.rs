//! What was typed and not yet entered. Kept beside a job, never in it.

use std::collections::BTreeMap;

use crate::{Question, Text};

/// The typed texts of one job that are not entries yet, by question.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Drafts(BTreeMap<Question, Text>);

impl Drafts {
    /// What was typed for a question.
    #[must_use]
    pub fn typed(&self, question: &Question) -> Option<&Text> {
        self.0.get(question)
    }

    /// Keeps what was typed; an empty text is no draft.
    pub fn keep(&mut self, question: Question, typed: Text) {
        if typed.as_str().is_empty() {
            self.0.remove(&question);
        } else {
            self.0.insert(question, typed);
        }
    }

    /// Forgets a draft, because it has become an entry.
    pub fn forget(&mut self, question: &Question) {
        self.0.remove(question);
    }

    /// All drafts in the order of their questions.
    pub fn iter(&self) -> impl Iterator<Item = (&Question, &Text)> {
        self.0.iter()
    }
}
