//! A log of temperatures, as whatever logger wrote it.
//!
//! Answers: which columns are there, in which units, with which decimal mark and which form of
//! date; what can't be told by looking; and, once that is answered, which temperatures were there
//! when, and what was wrong with the file.
//!
//! Must never know: freezers and their faults, jobs, where a file comes from, words.
//!
//! [`look()`] finds out what a file is and asks what it can't tell, as data; [`Looked::settle`] takes
//! the answers and gives a [`Layout`] once none is open; [`read()`] reads by it. Nothing that looks
//! like one thing and may be another is guessed: the order of day and month, the scale, the zone of
//! a clock. What is mended on the way is told in notes.

#![forbid(unsafe_code)]

mod calendar;
mod calendar_form;
mod decoded;
mod degrees;
mod error;
mod in_turn;
mod jumps;
mod layout;
mod look;
mod months;
mod notes;
mod number;
mod order;
mod question;
mod ranking;
mod read;
mod rows;
mod scan;
mod stamp;
mod structure;
mod survey;
mod table;
mod thin;
mod when;
mod words;

pub use degrees::{DegreeUnit, plausible_units};
pub use error::{LogError, MOST_BYTES, check_size};
pub use layout::{Clock, ElapsedUnit, Layout};
pub use look::{Column, Looked, PreviewRow, Role, look};
pub use notes::{Missing, Note, SeriesNote, Skipped};
pub use number::DecimalMark;
pub use question::{Answer, Question};
pub use read::{Logged, LoggedSeries, Point, read};
pub use stamp::{DateOrder, Half};
pub use table::Delimiter;
pub use thin::thin;
pub use words::PlaceHint;
