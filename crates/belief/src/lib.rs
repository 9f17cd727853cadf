//! Exact reasoning under uncertainty in discrete Bayesian networks, and what to do about it.
//!
//! Answers: how likely is each state of each variable after some findings, how likely were those
//! findings, what explains them best, do they fit each other, which observation is worth its
//! cost, and what will a repair cost.
//!
//! Must never know: what the variables stand for, where numbers are kept, which words a person
//! reads. Errors name the variable and say how to mend it, for whoever builds a model.
//!
//! - [`Network`]: variables, tables, functions, worst-of and noisy nodes.
//! - [`Evidence`]: states that were seen and weights over states.
//! - [`JunctionTree`]: the network compiled once; [`JunctionTree::propagate`] as often as wanted.
//! - [`Posterior`]: every marginal, joint distributions, the probability of the evidence and the
//!   conflict within it. [`JunctionTree::most_probable_explanation`] for the best single story.
//! - [`Decision`], [`CostTable`]: the best action, and what it is worth to know more first.
//! - [`FaultSets`], [`Repair`], [`Troubleshooting`]: several faults at once, the expected cost of
//!   repair, and policies with the best one as a yardstick.
//! - [`export_bif`]: the same network for other programs to check.
//!
//! Results are the same to the last bit on every machine: the order of summing out is fixed when
//! the tree is compiled, sums run in the order in which variables were added, logarithms and
//! exponentials are `libm`'s, nothing is hashed, and equals are decided by order. Evidence too
//! unlikely for plain numbers is weighed in logarithms.
//!
//! ```
//! use belief::{Evidence, JunctionTree, Network};
//!
//! let mut network = Network::new();
//! let fan = network.prior("fan", &["sound", "stuck"], &[0.95, 0.05])?;
//! let coil = network.prior("coil", &["clear", "iced"], &[0.9, 0.1])?;
//! let air = network.worst_of(
//!     "air",
//!     &["flows", "weak", "none"],
//!     &[(fan, &[0, 2]), (coil, &[0, 1])],
//! )?;
//! let rows = [[0.95, 0.05], [0.5, 0.5], [0.02, 0.98]];
//! let warm = network.table("warm", &["no", "yes"], &[air], &rows)?;
//!
//! let tree = JunctionTree::compile(network)?;
//! let mut evidence = Evidence::new();
//! evidence.observe(tree.network(), warm, 1)?;
//! let mut workspace = tree.workspace();
//! let posterior = tree.propagate(&evidence, &mut workspace)?;
//! assert!(posterior.marginal(fan)[1] > 0.3);
//! assert!(posterior.marginal(coil)[1] > 0.3);
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

#![forbid(unsafe_code)]

mod bif;
mod configuration;
mod cost_table;
mod decision;
mod error;
mod evidence;
mod explanation;
mod joint;
mod network;
mod posterior;
mod repair;
mod tree;

pub use bif::{Exported, export_bif};
pub use cost_table::{Choice, CostTable, Worth};
pub use decision::Decision;
pub use error::{BuildError, EvidenceError, ExplanationError, QueryError};
pub use evidence::{Evidence, Finding};
pub use explanation::Explanation;
pub use joint::Joint;
pub use network::{Network, Variable};
pub use posterior::Posterior;
pub use repair::{
    Check, Component, FaultSet, FaultSets, Limits, Plan, Repair, RepairAction, Situation, Step,
    Troubleshooting,
};
pub use tree::{JunctionTree, Sizes, Workspace};
