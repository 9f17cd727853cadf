//! A freezer or refrigerator out of physics, that can be broken in known ways.
//!
//! Answers: what would a meter, an ear or a hand find on such a machine, and when?
//!
//! Must never know: how the app reasons, its words, its odds or its list of checks. Whatever a
//! fault shows here comes of the equations, so that the reasoning can be measured against it.

#![forbid(unsafe_code)]

// The refrigerant circuit and the cabinet around it.
pub mod appliance;
pub mod cabinet;
pub mod circuit;
mod curve;
mod integrate;
pub mod refrigerant;

// What turns, and what starts and feeds it.
pub mod compressor;
pub mod inverter;
pub mod motor;
mod phasor;
pub mod protector;
pub mod rotor;
pub mod start_gear;
pub mod supply;

// All of it together, and what a person has of it.
mod examination;
pub mod machine;

mod chance;
mod error;

pub use chance::Chance;
pub use error::ParameterError;
pub use examination::{Display, Kit, Senses};
pub use refrigerant::Refrigerant;
