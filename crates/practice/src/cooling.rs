//! Cool-downs of simulated cabinets, judged from their first hours and held against their end.
//!
//! Answers: of machines switched on warm, whose temperatures are read as a person or a logger has
//! them: how often do the bands of [`measure::cool_down`] hold what really comes, and how often is
//! a verdict wrong, with the air alone and with its coil and watts? Must never know: how the simulator comes by its temperatures, and how they are
//! judged.

mod beside;
mod cabinet;
mod counted;
mod outcome;
mod thermometer;

pub use cabinet::{CoolingMachine, Place};
pub use counted::{Counted, HOURS};
pub use outcome::{Fate, Outcome};
pub use thermometer::Logger;
pub(crate) use thermometer::{LAG, Probe};
