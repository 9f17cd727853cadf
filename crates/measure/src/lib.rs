//! What a reading says: physics and statistics of measurements on a refrigerating machine.
//!
//! Answers: given what the meter showed, what can be true of the thing measured, and how surely?
//!
//! Must never know: which fault is likely in a whole machine, what a job is, how anything is
//! stored or worded.
//!
//! Figures stand beside their use with their source. A trade figure that no public document
//! carries is marked "common practice, no source" or "from memory".

#![forbid(unsafe_code)]

mod meter;
pub mod windings;

pub use meter::{Meter, MeterKind};
