//! What a person would enter for each task on a simulated machine.
//!
//! Answers: which instrument or sense is used, how the app's instructions for the task are
//! followed, and which of the offered answers that comes to. A person reads instructions; where
//! these name a bound ("usual: 90 to 170 watts"), it is that bound which is held against.

mod entry;
mod examiner;
mod felt;
mod looks;
mod measured;
mod opening;
mod powered;
mod sheet;
mod shown;

pub(crate) use entry::answer;
pub use examiner::Examiner;
pub(crate) use opening::build_of;
pub use sheet::Sheet;
