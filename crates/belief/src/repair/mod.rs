//! What to do about it: which faults there may be together, what a repair costs in expectation,
//! and in which order to look and to act.
//!
//! Decisions are made from an enumeration of fault sets, each weighed exactly. Marginals are not:
//! they come from the tree, because an enumeration never holds all the mass.
//!
//! The model is the one of Heckerman, Breese and Rommelse ("Decision-theoretic troubleshooting",
//! 1995; from memory), with several faults at once: an action mends the components that it names,
//! after each action the machine is tried, and whoever gives up pays for it once.

mod fault_sets;
mod policies;
mod sequence;
mod troubleshooting;
mod weighing;

pub use fault_sets::{Component, FaultSet, FaultSets, Limits};
pub use sequence::{Plan, Repair, RepairAction};
pub use troubleshooting::{Check, Situation, Step, Troubleshooting};
