//! Why a file can't be opened as a job, where, and which way out; and what to know of one that
//! can.

use job::{NameError, TextError};
use jobfile::{
    Kind as JsonKind, Limit, Mend, NotAJob, Notice, OpenError, Problem, Reason, Syntax,
    TimestampError, Unreadable,
};

use crate::{ErrorWords, Locale, cold, measured};

/// Says why a text can't be opened.
#[must_use]
pub fn open_error(error: &OpenError) -> ErrorWords {
    ErrorWords {
        what: what(error),
        mend: mend(error.mend()),
    }
}

/// Says that a job is from a newer program.
#[must_use]
pub fn newer(version: u64) -> ErrorWords {
    ErrorWords {
        what: format!(
            "This job is of version {version}; this program reads up to version {}.",
            jobfile::VERSION
        ),
        mend: "Open it with a newer program. Until then it can be passed on as it is.",
    }
}

/// Says that a file holds all jobs of a device, where one job is wanted.
#[must_use]
pub fn is_backup(jobs: usize) -> ErrorWords {
    ErrorWords {
        what: match jobs {
            1 => "This is a back-up of 1 job, not a job.".to_owned(),
            more => format!("This is a back-up of {more} jobs, not a job."),
        },
        mend: "Open it on the page, and send the job that is meant as a file of its own.",
    }
}

fn what(error: &OpenError) -> String {
    match error {
        OpenError::Empty => "The file is empty.".to_owned(),
        OpenError::NotText { byte } => {
            format!("This isn't a text file: byte {byte} fits no text.")
        }
        OpenError::NotJson {
            line,
            column,
            syntax,
        } => format!("Line {line}, column {column}: {}", syntax_words(syntax)),
        OpenError::NotAJob(what) => not_a_job(what),
        OpenError::Field { path, problem } => format!("{path}: {}", problem_words(problem)),
        OpenError::SameId { id, first, second } => format!(
            "{first} and {second} have the same identifier, {id}, and say different things."
        ),
        OpenError::Beyond { limit, path } => {
            let place = if path.is_empty() { "The file" } else { path };
            format!("{place}: {}", limit_words(*limit))
        }
    }
}

fn mend(mend: Mend) -> &'static str {
    match mend {
        Mend::ChooseTheJob => "Choose the file that was shared as a job; its name ends in .json.",
        Mend::SendAgain => "Have the whole file sent again.",
        Mend::CorrectThePlace => "Mend that place in a text editor, or use an earlier copy.",
        Mend::SaveAsUtf8 => "Save it as plain text in UTF-8 and open it again.",
        Mend::MakeItSmaller => "Use an earlier copy, or remove what is too much.",
    }
}

fn syntax_words(syntax: &Syntax) -> String {
    match syntax {
        Syntax::CutShort => "the file ends in the middle; it was cut on its way.".to_owned(),
        Syntax::WebPage => "this is a web page, not a job.".to_owned(),
        Syntax::OtherText => "this is text, but not JSON.".to_owned(),
        Syntax::RepeatedField(name) => {
            format!("the field “{name}” stands there twice; one of them would be lost.")
        }
        Syntax::NumberTooLarge => "that number is too large to be one.".to_owned(),
        Syntax::Unexpected(found) => format!("“{found}” has no place there in a JSON file."),
    }
}

fn not_a_job(what: &NotAJob) -> String {
    match what {
        NotAJob::NotAnObject(kind) => {
            format!("This is JSON, but {} and not a job.", kind_words(*kind))
        }
        NotAJob::NoType => "This is JSON, but it doesn't say that it is a job.".to_owned(),
        NotAJob::OtherType(other) => {
            let other: String = other.chars().take(40).collect();
            format!("This is JSON of another type, “{other}”, not a job.")
        }
    }
}

fn problem_words(problem: &Problem) -> String {
    match problem {
        Problem::Missing => "is missing.".to_owned(),
        Problem::Kind { expected, found } => format!(
            "should be {}, but is {}.",
            kind_words(*expected),
            kind_words(*found)
        ),
        Problem::Name(error) => name_words(*error),
        Problem::Text(TextError::TooLong) => "is longer than 2,000 characters.".to_owned(),
        Problem::Text(TextError::ControlCharacter) => "has a control character in it.".to_owned(),
        Problem::Time(error) => time_words(error).to_owned(),
        Problem::Word(word) => {
            let word: String = word.chars().take(40).collect();
            format!("“{word}” is none of the words that can stand there.")
        }
        Problem::Repeated(word) => format!("“{word}” stands there twice."),
        Problem::Both(one, other) => format!("has both “{one}” and “{other}”; one must go."),
        Problem::Neither(one, other) => format!("has neither “{one}” nor “{other}”."),
        Problem::Version => "there is no version before 1.".to_owned(),
        Problem::NewerVersion => "only a newer program reads this version.".to_owned(),
        Problem::Count => "the size of the last digit must be above zero.".to_owned(),
        Problem::Rest(job::RestError::Negative) => "a rest can't be less than nothing.".to_owned(),
        Problem::Rest(job::RestError::OverAWeek) => {
            "a rest of more than a week: one of the two times is wrong.".to_owned()
        }
        Problem::Log(why) => cold::log_error(*why).to_owned(),
        Problem::Metered(why) => cold::metered_error(*why).to_owned(),
        Problem::Accuracy => "no meter in use is that inaccurate, or better than exact.".to_owned(),
    }
}

fn name_words(error: NameError) -> String {
    match error {
        NameError::Empty => "is empty.".to_owned(),
        NameError::TooLong { most } => format!("is longer than {most} characters."),
        NameError::Unexpected(found) => format!("“{found}” can't stand in a name."),
    }
}

fn time_words(error: &TimestampError) -> &'static str {
    match error {
        TimestampError::Form => "isn't a time like 2026-11-25T13:05:00+01:00.",
        TimestampError::NoSuchTime => "no calendar or clock shows that time.",
        TimestampError::Outside(_) => "lies before 1970, after 9999, or far off any time zone.",
    }
}

fn limit_words(limit: Limit) -> String {
    let most = limit.most();
    let over = match limit {
        Limit::Bytes | Limit::BackupBytes => format!("more than {} million characters", most / 1e6),
        Limit::Jobs => format!("more than {most} jobs"),
        Limit::Entries => format!("more than {most} entries"),
        Limit::Choices => format!("more than {most} choices in one answer"),
        Limit::LogPoints => format!("more than {most} points in one course"),
        Limit::Depth => format!("lists in lists more than {most} deep"),
        Limit::Magnitude => "a number larger than any reading".to_owned(),
    };
    let why = match limit.reason() {
        Reason::BrowserRoom => "a browser has little room for all jobs together",
        Reason::MoreThanABrowserKeeps => "no browser keeps that much",
        Reason::NotByHand => "nobody writes that many by hand",
        Reason::NoneOffered => "no check offers that many",
        Reason::EnoughToSee => "no picture shows more, and other jobs need the room",
        Reason::ReaderMemory => "reading deeper can use up the memory",
        Reason::CannotBeTyped => "it can't have been typed off a meter",
    };
    format!("{over}; {why}.")
}

fn kind_words(kind: JsonKind) -> &'static str {
    match kind {
        JsonKind::Nothing => "nothing",
        JsonKind::Truth => "true or false",
        JsonKind::Number => "a number",
        JsonKind::WholeNumber => "a whole number",
        JsonKind::Text => "text in quotes",
        JsonKind::List => "a list",
        JsonKind::Object => "an object",
    }
}

/// Says what a person should know about a document that did open.
#[must_use]
pub fn notice(notice: &Notice, locale: &Locale) -> String {
    match notice {
        Notice::Unreadable { path, why, .. } => format!(
            "{path}: {} It is kept in its place and counts for nothing here.",
            unreadable_words(why)
        ),
        Notice::Repeated { path, .. } => {
            format!("{path}: the same entry stands there twice; it is kept once.")
        }
        Notice::TypedDisagrees {
            path,
            typed,
            understood,
            ..
        } => format!(
            "{path}: “{}” was typed and {} noted; what was noted counts.",
            typed.as_str(),
            measured(*understood, locale)
        ),
    }
}

fn unreadable_words(why: &Unreadable) -> String {
    match why {
        Unreadable::Content => "a kind of entry that this version doesn't know.".to_owned(),
        Unreadable::Shape => "an answer of a shape that this version doesn't know.".to_owned(),
        Unreadable::Unit(unit) => format!("a reading in “{unit}”, a unit not known here."),
        Unreadable::Word(word) => format!("a try to start with “{word}”, not known here."),
        Unreadable::Reason(reason) => format!("a reason, “{reason}”, not known here."),
        Unreadable::Strikes(id) => format!("it strikes {id}, which isn't there before it."),
    }
}
