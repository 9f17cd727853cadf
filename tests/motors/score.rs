//! Many machines, counted.

use std::num::NonZero;
use std::thread;

use super::{Calibration, Kind, Outcome, Random, Trial};

/// What came of many trials.
#[derive(Debug, Clone, Copy, Default)]
pub struct Score {
    /// How many machines were measured.
    pub machines: u32,
    /// The pin likeliest to be common is.
    pub common_right: u32,
    /// The likeliest part of every pin is its true one.
    pub all_right: u32,
    /// Every pin was labelled, surely.
    pub sure: u32,
    /// Every pin was labelled, surely, and not all are right.
    pub wrong_while_sure: u32,
    /// How sure the statements about pins were, and how often they were true.
    pub calibration: Calibration,
    /// What the machines were taken for, in the order of [`Kind::ALL`].
    taken_for: [u32; 9],
}

/// Each block of machines has a seed of its own, so that the result doesn't depend on how many
/// threads share the work.
const BLOCK: u32 = 500;

impl Score {
    /// Measures `machines` machines, in whole blocks of 500.
    #[must_use]
    pub fn of(trial: Trial, machines: u32, seed: u64) -> Self {
        let blocks = machines.div_ceil(BLOCK);
        let threads = thread::available_parallelism().map_or(1, NonZero::get);
        let threads = u32::try_from(threads).unwrap_or(1).max(1);
        let parts = thread::scope(|scope| {
            let workers: Vec<_> = (0..threads)
                .map(|first| {
                    scope.spawn(move || {
                        let mut part = Self::default();
                        for block in (first..blocks).step_by(threads as usize) {
                            part.add_block(trial, seed, block);
                        }
                        part
                    })
                })
                .collect();
            workers
                .into_iter()
                .filter_map(|worker| worker.join().ok())
                .collect::<Vec<_>>()
        });
        let mut whole = Self::default();
        for part in parts {
            whole.merge(&part);
        }
        whole
    }

    fn add_block(&mut self, trial: Trial, seed: u64, block: u32) {
        // Far apart in the generator's sequence of 2⁶⁴.
        let mut random = Random::seeded(seed ^ (u64::from(block) << 32));
        for _ in 0..BLOCK {
            self.add(&trial.run(&mut random));
        }
    }

    fn add(&mut self, outcome: &Outcome) {
        self.machines += 1;
        self.common_right += u32::from(outcome.common_is_right());
        self.all_right += u32::from(outcome.all_are_right());
        self.sure += u32::from(outcome.all_are_sure());
        self.wrong_while_sure += u32::from(outcome.wrong_while_sure());
        self.calibration.add(outcome.statements());
        self.taken_for[outcome.kind as usize] += 1;
    }

    /// Adds what another sample found.
    pub fn merge(&mut self, other: &Self) {
        self.machines += other.machines;
        self.common_right += other.common_right;
        self.all_right += other.all_right;
        self.sure += other.sure;
        self.wrong_while_sure += other.wrong_while_sure;
        self.calibration.merge(&other.calibration);
        for (mine, theirs) in self.taken_for.iter_mut().zip(other.taken_for) {
            *mine += theirs;
        }
    }

    /// A count as a share of all machines.
    #[must_use]
    pub fn share(&self, count: u32) -> f64 {
        f64::from(count) / f64::from(self.machines.max(1))
    }

    /// The share that was taken for this kind.
    #[must_use]
    pub fn taken_for(&self, kind: Kind) -> f64 {
        self.share(self.taken_for[kind as usize])
    }
}
