//! Weighing the whole machine: which parts may be at fault, several at once, given everything
//! that was told, seen, heard and read; which check is worth doing next; and what to do.
//!
//! Three layers. [`Fault`]s of [`Part`]s bring about *conditions*, among them the eight links of
//! the Path; conditions bring about [`Clue`]s. Each build of machine has a network of its own;
//! where the build isn't known the networks are weighed against each other too.
//!
//! All figures are judgement from trade practice unless a row says otherwise. They are never
//! measured on the machine at hand, and a person can change the shares of faults.

mod aside;
mod assembly;
mod beliefs;
mod build;
mod clue;
mod clues;
mod compiled;
mod conditions;
mod entered;
mod expense;
mod fault;
mod gauge;
mod history;
mod networks;
mod next_check;
mod prior_table;
mod priors;
mod prospects;
mod remedy;
mod setup;
mod suspects;
mod trees;
mod trouble;
mod verdict;
#[cfg(test)]
mod walks;

use job::Job;

pub use build::Build;
pub use clue::{ANSWER, Clue, Task};
pub use expense::Expense;
pub use fault::{Fault, Part};
pub use history::History;
pub use networks::Assumptions;
pub use next_check::{NextCheck, Overturn, WhyWithheld, Withheld};
pub use priors::{Edit, PriorError, Priors};
pub use remedy::Action;
pub use setup::Setup;
pub use suspects::{Conflict, LinkOdds, Suspect, Weighed};
pub use verdict::{Decided, Hold, Proposal, Verdict};

use crate::checks::windings::WindingsKnown;
use crate::{Caution, Gates, Machine, Step};
use beliefs::Beliefs;
use entered::{Entered, entered, mains_of};
use next_check::Choosing;
use prospects::Prospects;
use remedy::Stakes;
use suspects::Compared;

/// The whole machine, weighed.
///
/// ```
/// use diagnosis::{Fault, Model, assess};
/// use job::{Answer, Content, Entry, Id, Job, Moment, Name, Origin, Question};
///
/// let now = Moment::new(0, 0).unwrap();
/// let mut job = Job::new(Id::new("j").unwrap(), now, Origin::Invented);
/// for (number, (item, choice)) in [
///     ("kind", "chest-freezer"),
///     ("complaint", "hums-then-clicks"),
///     ("told-by", "myself"),
/// ]
/// .into_iter()
/// .enumerate()
/// {
///     job.add(Entry {
///         id: Id::new(&format!("e-{number}")).unwrap(),
///         at: now,
///         content: Content::Answer {
///             question: Question::new("machine", item).unwrap(),
///             answer: Answer::Choice(Name::new(choice).unwrap()),
///         },
///     })
///     .unwrap();
/// }
/// let whole = assess(&Model::default(), &job, now).whole.unwrap();
/// assert_eq!(whole.suspects[0].fault, Some(Fault::StartDeviceOpen));
/// assert!(!whole.suspects[0].pointing_to.is_empty());
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Whole {
    /// How likely each build is, in the order of [`Build::ALL`](crate::Choice::ALL).
    pub builds: [f64; 3],
    /// Every fault that is likely enough, the likeliest first. Each could be there, more than one
    /// at a time.
    pub suspects: Vec<Suspect>,
    /// That nothing is wrong with it.
    pub nothing_wrong: Suspect,
    /// Each link of the Path with how likely it is interrupted there.
    pub links: Vec<LinkOdds>,
    /// Readings that don't fit together.
    pub conflict: Option<Conflict>,
    /// What to do.
    pub verdict: Verdict,
    /// What safety asks for before anything in `next`.
    pub safety_first: Vec<Step>,
    /// What can be done next, the most worth per minute first.
    pub next: Vec<NextCheck>,
    /// What can't be done now, and why.
    pub withheld: Vec<Withheld>,
}

/// What the checks have found out by themselves, as far as the whole depends on it.
pub(crate) struct Known<'a> {
    pub(crate) machine: &'a Machine,
    pub(crate) windings: &'a WindingsKnown,
    pub(crate) cautions: &'a [Caution],
    pub(crate) gates: &'a Gates,
    pub(crate) safety_first: Vec<Step>,
}

/// One build's network with a job's evidence as text that other programs read.
#[derive(Debug, Clone, PartialEq)]
pub struct ExportedNetwork {
    /// The build.
    pub build: Build,
    /// How likely the build is.
    pub weight: f64,
    /// The network in Bayesian network interchange format.
    pub text: String,
    /// Names of variables and of the states that they were seen in; those that stand for
    /// likelihoods among them.
    pub observed: Vec<(String, String)>,
}

/// The networks that a job is weighed in, one for each build that it may have.
pub(crate) fn export(
    assumptions: &Assumptions,
    job: &Job,
    machine: &Machine,
    windings: &WindingsKnown,
) -> Vec<ExportedNetwork> {
    let entered = entered(job, machine, windings);
    let Some(networks) = assumptions.networks() else {
        return Vec::new();
    };
    let mut desk = networks::desk(&networks);
    let odds = Build::odds(machine.kind);
    let beliefs = Beliefs::of(networks.into_iter(), odds, &entered, &mut desk);
    let exported = beliefs.map_or_else(Vec::new, |beliefs| beliefs.exported());
    exported
        .into_iter()
        .map(|(build, weight, exported)| ExportedNetwork {
            build,
            weight,
            text: exported.text,
            observed: exported.observed,
        })
        .collect()
}

/// Weighs everything. `None` where nothing is known yet that could be weighed.
pub(crate) fn weigh(assumptions: &Assumptions, job: &Job, known: Known<'_>) -> Option<Whole> {
    let machine = known.machine;
    let entered = entered(job, machine, known.windings);
    if entered.is_empty() && machine.kind.is_none() {
        return None;
    }
    weigh_entered(assumptions, job, known, &entered)
}

fn weigh_entered(
    assumptions: &Assumptions,
    job: &Job,
    known: Known<'_>,
    entered: &[Entered],
) -> Option<Whole> {
    let machine = known.machine;
    let networks = assumptions.networks()?;
    let mut desk = networks::desk(&networks);
    let odds = Build::odds(machine.kind);
    let beliefs = Beliefs::of(networks.iter().copied(), odds, entered, &mut desk)?;
    let compared = Compared::of(&beliefs, odds, entered, &mut desk)?;
    let build = beliefs.likeliest_build();
    let stakes = Stakes::of(machine.kind, build);
    let prospects = Prospects::of(&beliefs, compared.picture.clone(), stakes, &mut desk);
    let (mut next, withheld) = Choosing {
        job,
        machine,
        gates: known.gates,
        entered,
        picture: &compared.picture,
        prospects: &prospects,
        build,
        mains: mains_of(machine),
    }
    .rank();
    let verdict = verdict::Case {
        machine,
        cautions: known.cautions,
        entered,
        compared: &compared,
        prospects: &prospects,
        next: &next,
    }
    .verdict();
    if verdict.best.action == Action::TestFit {
        // Stable: the others stay in their order.
        next.sort_by_key(|check| check.task != verdict::TEST_FIT);
    }
    Some(Whole {
        builds: compared.picture.builds,
        suspects: compared.suspects(),
        nothing_wrong: compared.suspect(None),
        links: compared.links(),
        conflict: compared.conflict,
        verdict,
        safety_first: known.safety_first,
        next,
        withheld,
    })
}
