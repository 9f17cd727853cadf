//! The compiled networks themselves, for whoever checks or times them.

use belief::JunctionTree;

use super::build::Build;
use super::networks::Assumptions;

impl Assumptions {
    /// The network of one build, compiled. `None` where it can't be, which tests rule out for
    /// every table that a person can make.
    ///
    /// ```
    /// use diagnosis::{Assumptions, Build};
    /// let assumptions = Assumptions::default();
    /// let tree = assumptions.tree(Build::FrostFree).unwrap();
    /// assert!(tree.network().find("clue_coil_ice").is_some());
    /// ```
    #[must_use]
    pub fn tree(&self, build: Build) -> Option<&JunctionTree> {
        let networks = self.networks()?;
        let found = networks.into_iter().find(|one| one.build == build)?;
        Some(&found.tree)
    }
}
