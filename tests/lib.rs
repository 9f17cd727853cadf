//! What crosses crates.
