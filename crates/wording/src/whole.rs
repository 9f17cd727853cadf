//! What is weighed about the whole machine, in words: suspects, what to do, what to check next.
//!
//! Every text is tied to a variant of an enum, and every answer of a clue to its place among them:
//! a missing text does not compile.

mod action;
mod answer;
mod fault;
mod guide;
mod history;
mod hold;
mod how;
mod reading;
mod task;
mod weight;
mod worth;

pub use action::action;
pub use answer::{THERE_IS_NONE, answers};
pub use guide::{Guide, guide};
pub use task::{TaskWords, heading, next_check};
pub use weight::weight;
pub use worth::suspect;

pub(crate) use worth::{at_fault, broken_links, to_do, unfitting, worth_checking};

/// A phrase as it stands within a sentence.
fn within(phrase: &str) -> String {
    let mut letters = phrase.chars();
    match letters.next() {
        Some(first) => first.to_lowercase().chain(letters).collect(),
        None => String::new(),
    }
}
