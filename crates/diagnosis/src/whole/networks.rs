//! The networks of all builds, compiled once for each set of assumptions.

use std::sync::{Arc, LazyLock, Mutex, OnceLock};

use super::beliefs::Desk;
use super::build::Build;
use super::compiled::Compiled;
use super::figures::Figures;
use super::priors::Priors;
use super::versions::Plan;
use crate::choice::Choice;

/// What is assumed of whole machines. Compiling takes a few milliseconds a build; it is done
/// when first needed, and kept for as long as a copy of these assumptions lives.
#[derive(Clone)]
pub struct Assumptions {
    figures: Figures,
    compiled: Arc<[OnceLock<Option<Compiled>>; 3]>,
    /// The networks last asked for of machines that were changed, the latest last.
    changed: Arc<Mutex<Vec<Spanning>>>,
}

/// A network of one build that spans changes.
type Spanning = (Plan, Arc<Compiled>);

/// So many networks of changed machines are kept: those of one job, before and after a reading.
const KEPT: usize = 4;

/// The stated assumptions are the same for everybody, so that they are compiled once.
static STATED: LazyLock<Arc<[OnceLock<Option<Compiled>>; 3]>> = LazyLock::new(Arc::default);

impl Assumptions {
    /// With these figures, or shares of faults alone.
    #[must_use]
    pub fn new(figures: impl Into<Figures>) -> Self {
        let figures = figures.into();
        let compiled = if figures.priors == Priors::default() {
            Arc::clone(&STATED)
        } else {
            Arc::default()
        };
        Self {
            figures,
            compiled,
            changed: Arc::default(),
        }
    }

    /// Everything that is assumed.
    #[must_use]
    pub fn figures(&self) -> &Figures {
        &self.figures
    }

    /// The shares of faults.
    #[must_use]
    pub fn priors(&self) -> &Priors {
        &self.figures.priors
    }

    /// The networks in the order of builds. `None` where one can't be compiled, which tests
    /// rule out for every table that a person can make.
    pub(super) fn networks(&self) -> Option<Vec<&Compiled>> {
        Build::ALL
            .iter()
            .zip(self.compiled.iter())
            .map(|(&build, kept)| {
                kept.get_or_init(|| Compiled::new(build, self.priors(), &Plan::default()).ok())
                    .as_ref()
            })
            .collect()
    }

    /// The network of a machine that was changed. `None` where it would be too large.
    pub(super) fn changed(&self, build: Build, plan: &Plan) -> Option<Arc<Compiled>> {
        let is_it = |(of, one): &Spanning| one.build == build && of == plan;
        let kept = self.changed.lock().ok();
        let known = kept.and_then(|kept| kept.iter().find(|one| is_it(one)).cloned());
        if let Some((_, known)) = known {
            return Some(known);
        }
        let compiled = Arc::new(Compiled::new(build, self.priors(), plan).ok()?);
        if let Ok(mut kept) = self.changed.lock() {
            if kept.len() == KEPT {
                kept.remove(0);
            }
            kept.push((plan.clone(), Arc::clone(&compiled)));
        }
        Some(compiled)
    }
}

impl Default for Assumptions {
    fn default() -> Self {
        Self::new(Figures::default())
    }
}

impl PartialEq for Assumptions {
    /// What is compiled follows from the figures.
    fn eq(&self, other: &Self) -> bool {
        self.figures == other.figures
    }
}

impl std::fmt::Debug for Assumptions {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Assumptions")
            .field("figures", &self.figures)
            .finish_non_exhaustive()
    }
}

/// Memory for propagations over all networks.
pub(super) fn desk(networks: &[&Compiled]) -> Desk {
    // A workspace of the wrong size is replaced by one that fits when it is used.
    let of = |column: usize| networks[column.min(networks.len() - 1)].tree.workspace();
    [of(0), of(1), of(2)]
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Fault;

    #[test]
    fn edited_shares_have_networks_of_their_own_and_stated_ones_share_theirs() {
        let stated = Assumptions::default();
        assert!(Arc::ptr_eq(
            &stated.compiled,
            &Assumptions::default().compiled
        ));
        let mut priors = Priors::default();
        priors
            .set(Build::ManualDefrost, Some(Fault::RotorSeized), 20.0)
            .unwrap();
        let edited = Assumptions::new(priors);
        assert_ne!(edited, stated);
        assert!(!Arc::ptr_eq(&edited.compiled, &stated.compiled));
    }

    #[test]
    fn the_most_extreme_shares_compile() {
        for fault in [None, Some(Fault::ChargeGone), Some(Fault::SealLeaks)] {
            for percent in [Priors::LEAST, 95.0] {
                let mut priors = Priors::default();
                for &build in Build::ALL {
                    priors.set(build, fault, percent).unwrap();
                }
                assert!(Assumptions::new(priors).networks().is_some());
            }
        }
    }
}
