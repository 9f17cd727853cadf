//! A whole machine in a garage: built, broken, plugged in, measured.
//!
//! Answers: what would one find on it, unplugged and plugged in? Must never know: what anybody
//! makes of that.

mod ailment;
mod bench;
mod blueprint;
mod build;
mod drive;
mod fitted;
mod plugged;
mod session;
mod traces;

pub use ailment::Ailment;
pub use bench::{Bench, Fan, StartDevice};
pub use blueprint::{Blueprint, Control, Gear};
pub use build::{Machine, Trouble};
pub use drive::{PluggedInverter, Turner};
pub use fitted::Fitted;
pub use plugged::{Event, Heard, PluggedCompressor};
pub use session::{Session, Snapshot};
pub use traces::Trace;
