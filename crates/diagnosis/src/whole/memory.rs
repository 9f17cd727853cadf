//! What one weighing leaves to the next one of the same job: it is there again, to the bit, if
//! nothing that it follows from has changed. Must never know what anything means.

use super::beliefs::{Beliefs, Desk};
use super::build::Build;
use super::compiled::Compiled;
use super::entered::Entered;
use super::networks;
use super::picture::Picture;

/// Memory for propagations, and what doesn't depend on more than one task's readings.
#[derive(Debug)]
pub(crate) struct Memory {
    pub(super) desk: Desk,
    /// Which networks it is about, and the odds among them.
    about: Option<(Vec<Build>, [f64; 3])>,
    before: Option<Picture>,
    alone: Vec<(Vec<Entered>, f64)>,
}

impl Memory {
    /// Of nothing yet.
    pub(super) fn new(networks: &[&Compiled]) -> Self {
        Self {
            desk: networks::desk(networks),
            about: None,
            before: None,
            alone: Vec::new(),
        }
    }

    /// Forgets what is about other networks. Those that span changes are never kept in mind.
    pub(super) fn turn_to(&mut self, networks: &[&Compiled], odds: [f64; 3]) {
        let is_plain = networks.iter().all(|one| !one.is_changed());
        let builds = networks.iter().map(|one| one.build).collect();
        let about = is_plain.then_some((builds, odds));
        if about.is_none() || about != self.about {
            self.before = None;
            self.alone.clear();
            self.about = about;
        }
    }

    /// What is believed before anything was read.
    pub(super) fn before(&mut self, networks: &[&Compiled], odds: [f64; 3]) -> Option<Picture> {
        if self.before.is_none() {
            let (_, picture) = Beliefs::glance(networks, odds, &[], &mut self.desk)?;
            self.before = Some(picture);
        }
        self.before.clone()
    }

    /// The logarithm of the probability of one task's readings by themselves.
    pub(super) fn ln_alone(
        &mut self,
        networks: &[&Compiled],
        odds: [f64; 3],
        alone: Vec<Entered>,
    ) -> Option<f64> {
        if let Some((_, known)) = self.alone.iter().find(|(one, _)| *one == alone) {
            return Some(*known);
        }
        let ln = Beliefs::ln_probability(networks, odds, &alone, &mut self.desk)?;
        if self.about.is_some() {
            self.alone.push((alone, ln));
        }
        Some(ln)
    }
}
