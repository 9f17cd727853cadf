//! What each question of a task asks, and how its answers are called.

use diagnosis::{Ask, Choice, History, THERE_IS_NONE, Task};

use super::answer::answers;
use super::heading;
use crate::{ItemWords, Words, item};

/// Says what a question asks. How a clue is come by is told by [`guide`](super::guide()).
#[must_use]
pub fn ask(ask: Ask) -> ItemWords {
    match ask {
        Ask::Item(of_check) => item(of_check),
        Ask::Answer(_) => ItemWords {
            ask: "What did it show?",
            how: None,
        },
        Ask::Number(clue, part) => ItemWords {
            ask: place(part).unwrap_or_else(|| heading(Task::Clue(clue))),
            how: None,
        },
        Ask::Past => ItemWords {
            ask: "What is known of it?",
            how: None,
        },
    }
}

fn place(item: &str) -> Option<&'static str> {
    match item {
        "freezer" => Some("Temperature in the freezer"),
        "fresh-food" => Some("Temperature in the fresh food"),
        "marking" => Some("Printed on it, in µF"),
        "measured" => Some("Measured across it, in µF"),
        _ => None,
    }
}

/// What a list of entries calls a question.
#[must_use]
pub fn about(ask: Ask) -> &'static str {
    match ask {
        Ask::Item(of_check) => item(of_check).ask,
        Ask::Answer(clue) => clue.words(),
        Ask::Number(clue, part) => place(part).unwrap_or_else(|| clue.words()),
        Ask::Past => "What is known of its past",
    }
}

/// The choices that answer a question of a clue or of the past, by name and in words; nothing for
/// items and numbers. The words begin as within a sentence.
#[must_use]
pub fn offered(ask: Ask) -> Vec<(&'static str, &'static str)> {
    match ask {
        Ask::Answer(clue) => {
            let names = clue.answers().iter().copied();
            let none = ask.can_be_absent().then_some((THERE_IS_NONE, NONE));
            let words = answers(clue).iter().copied();
            names.zip(words).chain(none).collect()
        }
        Ask::Past => {
            let all = History::ALL.iter();
            all.map(|known| (known.name(), known.words())).collect()
        }
        Ask::Item(_) | Ask::Number(..) => Vec::new(),
    }
}

/// The answer that a part isn't there, in words.
const NONE: &str = "there is none";

/// The words of an answer by choice, by its name in a job.
pub(crate) fn choice(ask: Ask, name: &str) -> Option<&'static str> {
    let mut all = offered(ask).into_iter();
    all.find(|(known, _)| *known == name)
        .map(|(_, words)| words)
}
