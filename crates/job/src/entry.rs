//! One thing that was written into a job.

use crate::{Answer, ColdEvent, Id, Metered, Moment, Name, NameError, Spot, StartTrial, Stop};
use crate::{TemperatureLog, Text};

/// What an answer is about: an item of a check, for example `windings` and `pair-1-2`.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Question {
    /// The check.
    pub check: Name,
    /// What it asks.
    pub item: Name,
}

impl Question {
    /// A question by the names of its check and item.
    ///
    /// # Errors
    /// [`NameError`] where one of the two is not a name.
    pub fn new(check: &str, item: &str) -> Result<Self, NameError> {
        Ok(Self {
            check: Name::new(check)?,
            item: Name::new(item)?,
        })
    }

    /// Whether this is the question with these names.
    #[must_use]
    pub fn is(&self, check: &str, item: &str) -> bool {
        self.check.as_str() == check && self.item.as_str() == item
    }
}

/// One thing that was written into a job. Never changed and never removed.
#[derive(Debug, Clone, PartialEq)]
pub struct Entry {
    /// Its identifier.
    pub id: Id,
    /// When it was written.
    pub at: Moment,
    /// What it says.
    pub content: Content,
}

/// What an entry says.
#[derive(Debug, Clone, PartialEq)]
pub enum Content {
    /// An answer to a question.
    Answer {
        /// The question.
        question: Question,
        /// The answer.
        answer: Answer,
    },
    /// A try to start the compressor.
    Trial(StartTrial),
    /// The compressor stopped.
    Stop(Stop),
    /// A temperature that a person read.
    Spot(Spot),
    /// A course of temperatures out of a file.
    Log(TemperatureLog),
    /// Something happened while the machine was proved.
    Event(ColdEvent),
    /// What a plug-in meter counted.
    Metered(Metered),
    /// A remark in the person's own words.
    Note(Text),
    /// Another entry no longer counts. Striking a strike brings the other back.
    Strike(Id),
}
