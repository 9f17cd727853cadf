//! The app's own way of working, tried on machines of which the truth is known.
//!
//! Answers: which virtual instrument or sense answers which check; how does the app's choice of
//! checks fare on a simulated machine, against a fixed checklist and against chance?
//!
//! Must never know: how the simulator comes by its signs, and how the app weighs them. It is the
//! one place that knows both sides, and passes nothing from one to the other but what a person
//! would have seen and typed.

#![forbid(unsafe_code)]

mod answers;
mod best_possible;
mod checklist;
pub mod cooling;
mod difficulty;
mod draw;
mod effort;
mod evaluation;
mod learned;
mod lesson;
mod made;
mod score;
mod tally;
mod truth;
mod walk;

pub use answers::{Examiner, Sheet};
pub use best_possible::{BestPossible, End, Examples};
pub use difficulty::Difficulty;
pub use draw::drawn;
pub use effort::Effort;
pub use evaluation::{Evaluation, Ways};
pub use lesson::Lesson;
pub use made::{Made, NotMade};
pub use score::Score;
pub use tally::{Bin, Row, Tally};
pub use truth::{ailment_of, fault_of};
pub use walk::{Begun, Examined, Order, Walk, Watched, walk, walk_with};
