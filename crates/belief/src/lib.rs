//! Exact reasoning under uncertainty: discrete Bayesian networks, and what to do about it.
#![forbid(unsafe_code)]
mod bif;
mod configuration;
mod decision;
mod error;
mod evidence;
mod explanation;
mod joint;
mod network;
mod posterior;
mod tree;

pub use bif::{Exported, export_bif};
pub use decision::{Choice, Decision, Worth};
pub use error::{BuildError, EvidenceError, ExplanationError, QueryError};
pub use evidence::{Evidence, Finding};
pub use explanation::Explanation;
pub use joint::Joint;
pub use network::{Network, Variable};
pub use posterior::Posterior;
pub use tree::{JunctionTree, Sizes, Workspace};
