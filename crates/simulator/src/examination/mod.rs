//! What instruments and senses make of a machine: never the truth, but what a person has of it.
//!
//! Answers: what would this meter show, and what would this ear or hand say?
//!
//! Must never know: what is wrong with the machine, and which check asks.

mod instrument;
mod senses;

pub use instrument::{Display, Kit};
pub use senses::Senses;
