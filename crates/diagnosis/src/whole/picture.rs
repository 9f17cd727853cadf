//! What is believed, as probabilities mixed over the builds.

use belief::Posterior;

use super::clue::Clue;
use super::compiled::Compiled;
use super::fault::Fault;
use super::trouble;
use crate::choice::Choice;

/// Probabilities of what interests, mixed over the builds.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Picture {
    /// By [`Fault`].
    pub(super) faults: Vec<f64>,
    /// That nothing is at fault.
    pub(super) nothing: f64,
    /// By [`Clue`]: how likely each answer is; empty where no build can show it.
    pub(super) answers: Vec<Vec<f64>>,
    /// States of the conditions that links are read from.
    pub(super) supply: Vec<f64>,
    pub(super) call: Vec<f64>,
    pub(super) compressor: Vec<f64>,
    pub(super) motor: Vec<f64>,
    pub(super) pump: Vec<f64>,
    pub(super) exchange: Vec<f64>,
    pub(super) hold: Vec<f64>,
    /// By [`Build`](super::build::Build).
    pub(super) builds: [f64; 3],
}

impl Picture {
    pub(super) fn blank() -> Self {
        Self {
            faults: vec![0.0; Fault::ALL.len()],
            nothing: 0.0,
            answers: vec![Vec::new(); Clue::ALL.len()],
            supply: Vec::new(),
            call: Vec::new(),
            compressor: Vec::new(),
            motor: Vec::new(),
            pump: Vec::new(),
            exchange: Vec::new(),
            hold: Vec::new(),
            builds: [0.0; 3],
        }
    }

    pub(super) fn add(&mut self, compiled: &Compiled, posterior: &Posterior<'_>, chance: f64) {
        for (_, part) in compiled.parts() {
            let marginal = posterior.marginal(part.variable);
            for (place, fault) in part.faults.iter().enumerate() {
                self.faults[fault.place()] += chance * marginal[place + 1];
            }
        }
        self.builds[compiled.build.column()] += chance;
        if compiled.is_changed() {
            return;
        }
        let c = &compiled.conditions;
        self.nothing += chance * posterior.marginal(c.trouble)[trouble::NONE];
        for (clue, variable) in compiled.clues.all() {
            add_scaled(
                &mut self.answers[clue as usize],
                posterior.marginal(variable),
                chance,
            );
        }
        for (sums, variable) in [
            (&mut self.supply, c.supply),
            (&mut self.call, c.call),
            (&mut self.compressor, c.compressor),
            (&mut self.motor, c.motor),
            (&mut self.pump, c.pump),
            (&mut self.exchange, c.exchange),
            (&mut self.hold, c.hold),
        ] {
            add_scaled(sums, posterior.marginal(variable), chance);
        }
    }

    pub(super) fn scale(&mut self, factor: f64) {
        let numbers = self
            .faults
            .iter_mut()
            .chain(self.answers.iter_mut().flatten())
            .chain(&mut self.supply)
            .chain(&mut self.call)
            .chain(&mut self.compressor)
            .chain(&mut self.motor)
            .chain(&mut self.pump)
            .chain(&mut self.exchange)
            .chain(&mut self.hold)
            .chain(&mut self.builds)
            .chain(std::iter::once(&mut self.nothing));
        numbers.for_each(|number| *number *= factor);
        // A clue that only some of the plausible builds can show: given that it is shown.
        for answers in &mut self.answers {
            let sum: f64 = answers.iter().sum();
            if sum > 0.0 {
                answers.iter_mut().for_each(|answer| *answer /= sum);
            }
        }
    }
}

fn add_scaled(sums: &mut Vec<f64>, row: &[f64], factor: f64) {
    sums.resize(row.len(), 0.0);
    for (sum, entry) in sums.iter_mut().zip(row) {
        *sum += factor * entry;
    }
}
