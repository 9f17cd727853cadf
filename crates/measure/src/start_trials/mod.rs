//! How long a compressor has to rest before it starts again, from trials.
//!
//! Answers: after which rest one set-up (the machine as it is, with a known-good start device,
//! with a kit) starts as often as not; how surely; how likely it starts after a given rest;
//! whether that rest is ordinary; how much sooner one set-up starts than another; and which rest
//! to try next.
//!
//! Must never know: which part is at fault, what a kit is, how anything is worded.
//!
//! # The model
//!
//! While a compressor rests, the pressures level and a PTC cools, both about exponentially. It
//! starts once the rotor's torque overcomes what is left. Where the crank stands by chance makes
//! that uncertain, so the chance of starting is a logistic curve over the logarithm of the rest:
//!
//! - *x* = ln of the rest in seconds at which it starts as often as not: the threshold. Between
//!   15 s and 4 h it has a density ([`StartPrior`]); beside that it may start at once, not within
//!   4 h, or not even cold.
//! - *s* = how gradually the chance rises, one of three widths (judgement, crank angle).
//! - d = (ln rest + 2·ln(supply share) − x)/s. Starting torque goes with the square of the
//!   voltage (torque ∝ both currents); that the threshold moves in proportion to what is missing
//!   is judgement.
//! - P(hums and trips) = 1 − σ(d); P(starts at once) = σ(d − 1); P(hums, then starts) is what is
//!   left: an ordered logistic model. The step of 1 is judgement.
//! - 3 in 100 outcomes say nothing (another cause, a slip of the pen), so that one contradiction
//!   doesn't rule anything out (judgement).
//!
//! Two clocks run after a stop: pressures level from the last turning, start device and windings
//! cool from the last energising. A failure soon after another attempt is left out.
//!
//! A trial from cold says whether the machine starts at all, and nothing of the threshold; a hot
//! failure is no cold failure. Sums go over 160 equal cells of x and all widths; what that costs
//! in accuracy is checked against adaptive integration (`tests/reference/start_trials.py`).

mod belief;
mod gain;
mod grid;
mod next;
mod prior;
mod threshold;
mod trial;

pub use belief::{ColdStart, StartBelief, Zones};
pub use gain::Gain;
pub use next::{NextTrial, Waiting};
pub use prior::{RestBands, StartKind, StartPrior};
pub use threshold::{Knowledge, Place, Threshold};
pub use trial::{Outcome, Trial, TrialError};
