//! What is weighed about the whole machine, in words: suspects, what to do, what to check next.
//!
//! Every text is tied to a variant of an enum, and every answer of a clue to its place among them:
//! a missing text does not compile.

mod action;
mod answer;
mod ask;
mod change;
mod fault;
mod guide;
mod history;
mod hold;
mod how;
mod moved;
mod reading;
mod reason;
mod task;
mod usual;
mod weight;
mod worth;

pub use action::action;
pub use answer::answers;
pub use ask::{about, ask, offered};
pub use change::{changes, since};
pub use guide::{Guide, guide};
pub use hold::not_now;
pub use moved::{Moved, moved};
pub use reading::{name, reading};
pub use reason::{Reason, numbers, reasons};
pub use task::{TaskWords, heading, next_check};
pub use usual::usual;
pub use weight::weight;
pub use worth::{at_fault, bet_so_far, likely, suspect, to_do, told};

pub(crate) use ask::choice;
pub(crate) use change::change;
pub(crate) use worth::{broken_links, unfitting, worth_checking};

/// What stands among the suspects for none of them.
pub const NOTHING_WRONG: &str = "Nothing wrong";

/// A phrase as it stands within a sentence.
fn within(phrase: &str) -> String {
    let mut letters = phrase.chars();
    match letters.next() {
        Some(first) => first.to_lowercase().chain(letters).collect(),
        None => String::new(),
    }
}
