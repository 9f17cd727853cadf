//! `coldcase evaluate`: how the app's way of working fares on simulated machines.

mod printed;

use std::thread;

use diagnosis::Model;
use practice::{BestPossible, Evaluation, Examples, Tally};

use crate::trial::Trial;
use crate::{Outcome, Printed};

pub(crate) fn run(trial: &Trial) -> Printed {
    match figures(trial) {
        Err(why) => Printed {
            output: String::new(),
            errors: format!("coldcase: a machine can't be simulated: {why}\n"),
            outcome: Outcome::Unreadable,
        },
        Ok(figures) => Printed {
            output: if trial.json {
                printed::json(trial, &figures)
            } else {
                printed::text(trial, &figures)
            },
            errors: String::new(),
            outcome: Outcome::Done,
        },
    }
}

/// All machines together.
struct Figures {
    /// In the order of [`practice::Ways::ALL`].
    tallies: [Tally; 3],
    best_possible: Option<BestPossible>,
}

/// Each core takes every so-manieth machine; they are put together in the order of their numbers.
fn figures(trial: &Trial) -> Result<Figures, simulator::ParameterError> {
    let cores = thread::available_parallelism().map_or(1, usize::from) as u64;
    let share = |core: u64| {
        let model = Model::default();
        let numbers = (core..trial.machines).step_by(cores as usize);
        numbers
            .map(|number| Evaluation::of(&model, trial.meter_of(number), trial.seed, number))
            .collect::<Result<Vec<_>, _>>()
    };
    let shares: Vec<_> = thread::scope(|scope| {
        let share = &share;
        let threads: Vec<_> = (0..cores)
            .map(|core| scope.spawn(move || share(core)))
            .collect();
        threads
            .into_iter()
            .map(thread::ScopedJoinHandle::join)
            .collect()
    });
    let mut all = Vec::new();
    for share in shares {
        // A thread that fell over has told why already.
        let share = share.unwrap_or_else(|panic| std::panic::resume_unwind(panic))?;
        all.push(share.into_iter());
    }
    let numbers = 0..trial.machines;
    let evaluations: Vec<Evaluation> = numbers
        .filter_map(|number| all[(number % cores) as usize].next().flatten())
        .collect();
    let examples: Vec<Examples<'_>> = evaluations
        .iter()
        .map(|one| Examples {
            truth: &one.scores[0].truth,
            passes: one.scores[0].passes,
            ends: &one.ends,
        })
        .collect();
    let best_possible = BestPossible::of(&examples);
    let mut tallies = <[Tally; 3]>::default();
    for evaluation in evaluations {
        for (tally, score) in tallies.iter_mut().zip(evaluation.scores) {
            tally.add(score);
        }
    }
    Ok(Figures {
        tallies,
        best_possible,
    })
}
