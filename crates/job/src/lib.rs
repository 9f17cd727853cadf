//! What was observed on one machine: a list of entries that only grows.
//!
//! Answers: what was asked, what was answered, when, and is that answer still standing?
//!
//! Must never know: what an answer means, how it is stored, what time it is now. Checks are
//! known here by name only, so that a new check changes nothing in this crate and a job from a
//! newer program keeps the answers that this one can't read.

#![forbid(unsafe_code)]

mod answer;
mod cold_event;
mod drafts;
mod entry;
mod machine_job;
mod metered;
mod moment;
mod name;
mod start_trial;
mod temperature;

pub use answer::{Answer, Measured, NotDone, Reading, Unit};
pub use cold_event::{ColdEvent, ColdEventKind};
pub use drafts::Drafts;
pub use entry::{Content, Entry, Question};
pub use machine_job::{AddError, Job, Origin};
pub use metered::{Metered, MeteredError};
pub use moment::{Moment, MomentError, WallClock};
pub use name::{Id, Name, NameError, Text, TextError};
pub use start_trial::{Rest, RestError, SetUp, StartTrial, Stop, Tried};
pub use temperature::{Place, Spot, TemperatureLog, TemperatureLogError};
