//! What a machine uses, in words.

mod asked;
mod sentences;

pub(crate) use asked::{about, energy_choice};
pub use asked::{about_figure, figure_error, need};
pub use sentences::{at_a_glance, behind, limit, metering, report, room, run, stands};

/// The page's heading, and what leads to it.
pub const TITLE: &str = "What it uses";
/// What it is for.
pub const WHY: &str = "A machine that runs without end, or uses far more than its make was allowed, \
                       costs more than it is worth, and shows that something keeps it working.";
/// How to meter.
pub const HOW: &str = "Put a meter between outlet and plug once it is cold, a day after it was \
                       switched on or more. Leave it for a day; three hours are the least that \
                       says much.";
/// What the comparison rests on.
pub const LIMITS: &str = "Limits are those of the American rule, 10 CFR 430.32(a), for a room of \
                          90 °F with doors closed. The factors of adjusted volume are from memory.";
