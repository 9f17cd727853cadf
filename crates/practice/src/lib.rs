//! The app's own way of working, tried on machines of which the truth is known.
//!
//! Answers: which virtual instrument or sense answers which check; how does the app's choice of
//! checks fare on a simulated machine, against a fixed checklist and against chance?
//!
//! Must never know: how the simulator comes by its signs, and how the app weighs them. It is the
//! one place that knows both sides, and passes nothing from one to the other but what a person
//! would have seen and typed.

#![forbid(unsafe_code)]

mod checklist;
mod walk;

pub use walk::{Examined, Order, Walk, walk};
