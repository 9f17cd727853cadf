//! What leads from the line to the start winding.
//!
//! Answers: what lies in series with the start winding now, and what does the current through it do
//! to it?
//!
//! Must never know: the motor's equations, or whether the shaft turns.

mod branch;
mod capacitor;
mod ptc;
mod switch;

pub(crate) use branch::GearState;
pub use branch::{Branch, StartGear};
pub use capacitor::Capacitor;
pub use ptc::Ptc;
pub use switch::{Contact, CurrentRelay, Electronic, PotentialRelay, Switch};
