//! Weighing the whole machine: which parts may be at fault, several at once, given everything
//! that was told, seen, heard and read; which check is worth doing next; and what to do.
//!
//! Three layers. [`Fault`]s of [`Part`]s bring about *conditions*, among them the eight links of
//! the Path; conditions bring about [`Clue`]s. Each build of machine has a network of its own;
//! where the build isn't known the networks are weighed against each other too.
//!
//! All figures are judgement from trade practice unless a row says otherwise. They are never
//! measured on the machine at hand, and a person can change the shares of faults and the costs.

mod aside;
mod ask;
mod assembly;
mod beliefs;
mod build;
mod carried;
mod change;
mod clue;
mod clues;
mod compiled;
mod conditions;
mod costs;
mod course;
mod entered;
#[cfg(test)]
mod enumerated;
mod expense;
mod fault;
mod figures;
mod gauge;
mod history;
mod memory;
mod networks;
mod next_check;
mod picture;
mod prior_table;
mod priors;
mod prospects;
mod remedy;
mod retracted;
mod setup;
#[cfg(test)]
mod sizes;
mod spanned;
mod suspects;
mod trees;
mod trouble;
mod verdict;
mod versions;
#[cfg(test)]
mod walks;
mod weighing;

use job::{Job, Moment};
use measure::ranked;

pub(crate) use ask::MARKING;
pub use ask::{Ask, THERE_IS_NONE};
pub use build::Build;
pub use change::{CHANGE, Change};
pub use clue::{ANSWER, Clue, Task};
pub use costs::{Cost, CostError, Costs, Stake, Term};
pub use expense::Expense;
pub use fault::{Fault, Part};
pub use figures::Figures;
pub use history::History;
pub(crate) use memory::Memory;
pub use networks::Assumptions;
pub use next_check::{Again, NextCheck, Opens, Overturn, WhyWithheld, Withheld};
pub use priors::{Edit, PriorError, Priors};
pub use remedy::Action;
pub use setup::Setup;
pub use suspects::{Conflict, LinkOdds, Suspect, Weighed};
pub use verdict::{Decided, Hold, Proposal, Verdict};
pub use weighing::Advice;
use weighing::Depth;
#[cfg(test)]
use weighing::weigh_entered;
pub(crate) use weighing::{advise, weigh};

use crate::checks::windings::WindingsKnown;
use crate::{Caution, Gates, Machine, Model, Step};
use beliefs::Beliefs;
use course::Course;
pub(crate) use entered::usual_bounds;
use entered::{Entered, entered};
use spanned::Spanned;

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
    /// What was done to the machine: everything else speaks of it as it is now.
    pub changed: Changed,
    /// How many figures of somebody's own stood in place of the stated ones.
    pub own_figures: usize,
}

/// What was done to a machine while the job was open.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Changed {
    /// All changes, in order.
    pub changes: Vec<Change>,
    /// The last ones among them, with nothing read in between.
    pub last: usize,
    /// Whether anything was read since.
    pub read_since: bool,
    /// How many of the first are folded: what was read before them counts for each part by
    /// itself.
    pub folded: usize,
}

impl Whole {
    /// The likeliest build; the first of equals.
    #[must_use]
    pub fn build(&self) -> Build {
        use crate::Choice;
        let all = ranked(Build::ALL.to_vec(), |build| self.builds[build.column()]);
        all.first().copied().unwrap_or(Build::ManualDefrost)
    }
}

/// What the checks have found out by themselves, as far as the whole depends on it.
pub(crate) struct Known<'a> {
    pub(crate) machine: &'a Machine,
    pub(crate) windings: &'a WindingsKnown,
    pub(crate) cautions: &'a [Caution],
    pub(crate) gates: &'a Gates,
    pub(crate) safety_first: Vec<Step>,
    pub(crate) model: &'a Model,
    pub(crate) now: Moment,
}

/// The job as the machine is now: without the answers of unplugged checks that a change has
/// outdated, and without the changes. `None` where nothing was done to it.
///
/// What each check says by itself, and what is still to be asked, follows from this one.
#[must_use]
pub fn present(job: &Job) -> Option<Job> {
    let course = Course::of(job);
    (!course.steps.is_empty()).then(|| course.present(job))
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
    known: &Known<'_>,
) -> Vec<ExportedNetwork> {
    let exported = exported(assumptions, job, known).unwrap_or_default();
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

fn exported(
    assumptions: &Assumptions,
    job: &Job,
    known: &Known<'_>,
) -> Option<Vec<(Build, f64, belief::Exported)>> {
    let networks = assumptions.networks()?;
    let mut desk = networks::desk(&networks);
    let odds = Build::odds(known.machine.kind);
    let course = Course::of(job);
    let entered = told(&course, assumptions, job, known)?;
    if course.steps.is_empty() {
        let beliefs = Beliefs::of(&networks, odds, &entered, &mut desk)?;
        return Some(beliefs.exported());
    }
    let spanned = Spanned::of(assumptions, odds, course.steps, entered, &mut desk)?;
    let beliefs = Beliefs::of(&spanned.networks(), odds, &spanned.entered, &mut desk)?;
    Some(beliefs.exported())
}

/// Everything that a job holds, as weights. Without changes no network is needed for that.
fn told(
    course: &Course<'_>,
    assumptions: &Assumptions,
    job: &Job,
    known: &Known<'_>,
) -> Option<Vec<Entered>> {
    Some(if course.steps.is_empty() {
        entered(job, known.machine, known.windings)
    } else {
        course.told(job, known, &assumptions.networks()?)
    })
}
