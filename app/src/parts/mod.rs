//! Pieces of screen that several pages use.
