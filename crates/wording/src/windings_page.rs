//! The plain strings of the windings check.
