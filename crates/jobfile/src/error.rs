//! Why a text can't be opened as a job: what, where, and which way out.

use job::{Id, MeteredError, NameError, RestError, TemperatureLogError, TextError};

use crate::{Limit, TimestampError};

/// Why a text can't be opened.
#[derive(Debug, Clone, PartialEq)]
pub enum OpenError {
    /// Nothing there but white space.
    Empty,
    /// Bytes that are not UTF-8 text.
    NotText {
        /// The first byte that doesn't fit, counted from 0.
        byte: usize,
    },
    /// Text, but not JSON.
    NotJson {
        /// Counted from 1.
        line: usize,
        /// Counted in bytes from 1, 0 at the very start of a line.
        column: usize,
        /// What stands in the way there.
        syntax: Syntax,
    },
    /// JSON, but of something else.
    NotAJob(NotAJob),
    /// A field that this program knows and that can't be right.
    Field {
        /// The field, as in `entries[3].answer.reading.value`.
        path: String,
        /// What is wrong with it.
        problem: Problem,
    },
    /// Two entries with one identifier that say different things.
    SameId {
        /// The identifier.
        id: Id,
        /// The first of the two, as in `entries[3]`.
        first: String,
        /// The second of the two.
        second: String,
    },
    /// More than a document may hold.
    Beyond {
        /// The limit.
        limit: Limit,
        /// What is beyond it; empty for the whole document.
        path: String,
    },
}

/// What makes a text not JSON.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Syntax {
    /// It ends in the middle.
    CutShort,
    /// It starts as a web page does.
    WebPage,
    /// It doesn't start with a brace, as every job does.
    OtherText,
    /// Two fields of one object have this name, so that one would be lost.
    RepeatedField(String),
    /// A number that no computer here can hold.
    NumberTooLarge,
    /// A character that has no place there.
    Unexpected(char),
}

/// What a JSON text is, if not a job.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum NotAJob {
    /// Not an object.
    NotAnObject(Kind),
    /// An object that doesn't say what it is.
    NoType,
    /// An object that says that it is something else.
    OtherType(String),
}

/// What is wrong with a field.
#[derive(Debug, Clone, PartialEq)]
pub enum Problem {
    /// It isn't there.
    Missing,
    /// It is another kind of thing.
    Kind {
        /// What should be there.
        expected: Kind,
        /// What is there.
        found: Kind,
    },
    /// Not an identifier, or not a name.
    Name(NameError),
    /// Not a text that can be kept.
    Text(TextError),
    /// Not a time.
    Time(TimestampError),
    /// Not one of the words that can stand there.
    Word(String),
    /// The same choice twice in one answer.
    Repeated(String),
    /// Both of two fields of which there can be one.
    Both(&'static str, &'static str),
    /// Neither of two fields of which there must be one.
    Neither(&'static str, &'static str),
    /// A version before the first.
    Version,
    /// A version that only a newer program reads.
    NewerVersion,
    /// The size of a meter's last digit must be above zero.
    Count,
    /// No meter that is still worth using is that inaccurate, or better than exact.
    Accuracy,
    /// Not how long something can have rested.
    Rest(RestError),
    /// Not a course of temperatures: why, or where nothing is said its times and temperatures are no
    /// pairs.
    Log(Option<TemperatureLogError>),
    /// Not a count of energy.
    Metered(MeteredError),
}

/// The kinds of JSON values.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// `null`.
    Nothing,
    /// `true` or `false`.
    Truth,
    /// A number.
    Number,
    /// A number without a fraction, from 0.
    WholeNumber,
    /// A text in quotes.
    Text,
    /// A list in square brackets.
    List,
    /// An object in braces.
    Object,
}

/// The way out of an [`OpenError`].
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Mend {
    /// Choose the job's file: this is something else.
    ChooseTheJob,
    /// If this is the job's file at all, save it as UTF-8 text.
    SaveAsUtf8,
    /// Have the whole file sent again: this one was cut or changed on its way.
    SendAgain,
    /// Mend the named place in a text editor, or go back to an earlier copy.
    CorrectThePlace,
    /// Split it or remove what is too much: the limit has its reason.
    MakeItSmaller,
}

impl OpenError {
    /// The way out.
    #[must_use]
    pub fn mend(&self) -> Mend {
        match self {
            Self::Empty
            | Self::NotJson {
                syntax: Syntax::CutShort,
                ..
            } => Mend::SendAgain,
            Self::NotText { .. } => Mend::SaveAsUtf8,
            Self::NotAJob(_)
            | Self::NotJson {
                syntax: Syntax::WebPage | Syntax::OtherText,
                ..
            } => Mend::ChooseTheJob,
            Self::Beyond {
                limit:
                    Limit::Bytes
                    | Limit::BackupBytes
                    | Limit::Entries
                    | Limit::Jobs
                    | Limit::Choices
                    | Limit::LogPoints
                    | Limit::Depth,
                ..
            } => Mend::MakeItSmaller,
            Self::NotJson { .. }
            | Self::Field { .. }
            | Self::SameId { .. }
            | Self::Beyond {
                limit: Limit::Magnitude,
                ..
            } => Mend::CorrectThePlace,
        }
    }
}
