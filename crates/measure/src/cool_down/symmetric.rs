//! Symmetric matrices of three rows, as the covariance of three unknowns is.

/// Upper triangle, row by row: 00, 01, 02, 11, 12, 22.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct Symmetric(pub(super) [f64; 6]);
