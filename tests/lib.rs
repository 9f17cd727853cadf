//! What crosses crates: worked cases, random motors, documents, and figures from outside.

#![forbid(unsafe_code)]

pub mod motors;
pub mod networks;
pub mod policies;
