//! Random compressors whose windings are known, and a person who holds a meter to their pins.
//!
//! Answers: how often is what `measure` says of three readings right, and is it as sure as it
//! should be?
//!
//! Nothing here takes a figure or a formula from `measure`: circuits are worked out by Kirchhoff
//! from their parts, errors are drawn as data sheets state them, and every spread is stated
//! beside its use.

mod bench;
mod calibration;
mod circuit;
mod random;
mod score;
mod trial;

pub use bench::{Bench, Noting};
pub use calibration::{Calibration, Decile};
pub use circuit::{Kind, Machine, RatioSpread};
pub use random::Random;
pub use score::Score;
pub use trial::{Outcome, Trial};
