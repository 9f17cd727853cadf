//! The record that goes with a machine: one page that a buyer can read.
//!
//! Answers: what was wrong with this machine, what was measured, done and proved, what does the
//! next owner have to mind, and what was never tested? As data, as plain text, and as one HTML
//! file that needs nothing else.
//!
//! Must never know: how a conclusion is reached, how a sentence reads, where a job is stored.
//!
//! What comes from outside (names, plates, notes, files' names) is written as text, whatever it
//! holds: [`Record::html`] escapes it, [`Record::text`] keeps it on one line.

#![forbid(unsafe_code)]

mod assembly;
mod cool_down;
pub mod cooling_chart;
mod curve;
mod energy;
mod escaped;
mod handover;
mod history;
mod html;
mod machine;
mod measured;
mod page;
mod path;
mod pin_drawing;
mod pins;
mod proof;
mod readings;
pub mod rest_line;
mod seen;
pub mod shape;
mod starts;
mod svg;
mod text;

pub use assembly::{Audience, Made};
pub use page::{Block, Part, Picture, Record, Section, Table};
