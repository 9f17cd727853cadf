//! What a person should know about a document that did open.

use job::{Id, Measured, Text};

/// Something about an opened document that a person should know. Nothing was lost.
#[derive(Debug, Clone, PartialEq)]
pub enum Notice {
    /// An entry that this program can't read: kept in its place, counts for nothing here.
    Unreadable {
        /// The entry.
        entry: Id,
        /// Where it stands in the text, as in `entries[3]`.
        path: String,
        /// What can't be read.
        why: Unreadable,
    },
    /// The same entry twice, alike in every field: kept once.
    Repeated {
        /// The entry.
        entry: Id,
        /// Where the second one stands in the text.
        path: String,
    },
    /// What was typed reads as something else than what was understood. The latter counts.
    TypedDisagrees {
        /// The entry.
        entry: Id,
        /// Where it stands in the text.
        path: String,
        /// What was typed.
        typed: Text,
        /// What was understood, which counts.
        understood: Measured,
    },
}

/// What this program can't read in an entry.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Unreadable {
    /// Neither an answer nor a note nor a strike.
    Content,
    /// An answer of a shape that is not known here.
    Shape,
    /// A reading in a unit that is not known here.
    Unit(String),
    /// A word for a try's parts or outcome that is not known here.
    Word(String),
    /// A reason for not doing something that is not known here.
    Reason(String),
    /// It strikes an entry that isn't there before it, or that can't be read itself.
    Strikes(Id),
}
