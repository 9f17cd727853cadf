//! A freezer or refrigerator out of physics, that can be broken in known ways.
//!
//! Answers: what would a meter, an ear or a hand find on such a machine, and when?
//!
//! Must never know: how the app reasons, its words, its odds or its list of checks. Whatever a
//! fault shows here comes of the equations, so that the reasoning can be measured against it.

#![forbid(unsafe_code)]

mod chance;
mod error;
mod phasor;

// What turns, and what starts and feeds it.
pub mod compressor;
pub mod inverter;
pub mod motor;
pub mod protector;
pub mod rotor;
pub mod start_gear;
pub mod supply;

pub use chance::Chance;
pub use error::ParameterError;
