//! From what was entered to what is believed and what to do about it.

use job::Job;
use measure::ranked;

use super::beliefs::Beliefs;
use super::build::Build;
use super::compiled::Compiled;
use super::course::Course;
use super::entered::{Entered, mains_of};
use super::memory::Memory;
use super::networks::Assumptions;
use super::next_check::{Choosing, NextCheck, Withheld};
use super::prospects::Prospects;
use super::remedy::Stakes;
use super::spanned::Spanned;
use super::suspects::Compared;
use super::verdict::{self, Case, SEALED_SIGNS, Verdict};
use super::{Known, Whole, told};
use crate::Step;

/// How much is worked out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Depth {
    /// Everything, with what speaks for and against each suspect.
    Reasons,
    /// What to do and what comes next; the same to the bit, without the reasons.
    Advice,
}

/// What to do and what comes next, without reasons: what following the advice takes.
#[derive(Debug, Clone, PartialEq)]
pub struct Advice {
    /// What to do.
    pub verdict: Verdict,
    /// What safety asks for before anything in `next`.
    pub safety_first: Vec<Step>,
    /// What can be done next, the most worth per minute first.
    pub next: Vec<NextCheck>,
}

/// Weighs everything. `None` where nothing is known yet that could be weighed.
pub(crate) fn weigh(assumptions: &Assumptions, job: &Job, known: Known<'_>) -> Option<Whole> {
    let course = Course::of(job);
    let entered = weighable(assumptions, job, &known, &course)?;
    weigh_entered(assumptions, job, known, entered, &course)
}

pub(super) fn weigh_entered(
    assumptions: &Assumptions,
    job: &Job,
    known: Known<'_>,
    entered: Vec<Entered>,
    course: &Course<'_>,
) -> Option<Whole> {
    let all = Depth::Reasons;
    let one = Weighing::of(assumptions, job, &known, entered, course, all, &mut None)?;
    Some(Whole {
        builds: one.compared.picture.builds,
        suspects: one.compared.suspects(),
        nothing_wrong: one.compared.suspect(None),
        links: one.compared.links(),
        conflict: one.compared.conflict,
        verdict: one.verdict,
        safety_first: known.safety_first,
        next: one.next,
        withheld: one.withheld,
        changed: course.changed(one.folded),
        own_figures: assumptions.figures().count(),
    })
}

/// The part of it that is followed. What is remembered must be of the same assumptions.
pub(crate) fn advise(
    assumptions: &Assumptions,
    job: &Job,
    known: Known<'_>,
    memory: &mut Option<Memory>,
) -> Option<Advice> {
    let course = Course::of(job);
    let entered = weighable(assumptions, job, &known, &course)?;
    let part = Depth::Advice;
    let one = Weighing::of(assumptions, job, &known, entered, &course, part, memory)?;
    Some(Advice {
        verdict: one.verdict,
        safety_first: known.safety_first,
        next: one.next,
    })
}

/// What a job holds, if anything could follow from it.
fn weighable(
    assumptions: &Assumptions,
    job: &Job,
    known: &Known<'_>,
    course: &Course<'_>,
) -> Option<Vec<Entered>> {
    let entered = told(course, assumptions, job, known)?;
    (!entered.is_empty() || known.machine.kind.is_some()).then_some(entered)
}

/// What was worked out.
struct Weighing {
    compared: Compared,
    folded: usize,
    verdict: Verdict,
    next: Vec<NextCheck>,
    withheld: Vec<Withheld>,
}

/// What is believed of the machine as it is now, and what decisions are made from.
struct Believed<'a> {
    compared: Compared,
    beliefs: Beliefs<'a>,
    /// The readings that speak of it as it is now.
    entered: Vec<Entered>,
    /// The job as it is now, where something was done to the machine.
    present: Option<Job>,
    folded: usize,
}

impl<'a> Believed<'a> {
    fn of(
        (assumptions, networks): (&Assumptions, &[&'a Compiled]),
        (job, course): (&Job, &Course<'_>),
        odds: [f64; 3],
        entered: Vec<Entered>,
        depth: Depth,
        memory: &mut Memory,
    ) -> Option<Self> {
        let desk = &mut memory.desk;
        let steps = course.steps.clone();
        if steps.is_empty() {
            let beliefs = Beliefs::of(networks, odds, &entered, desk)?;
            return Some(Self {
                compared: Compared::of(&beliefs, odds, &entered, depth, memory)?,
                beliefs,
                entered,
                present: None,
                folded: 0,
            });
        }
        let done = course.done(&entered, networks);
        let spanned = Spanned::of(assumptions, odds, steps, entered, desk)?;
        let exact = Beliefs::of(&spanned.networks(), odds, &spanned.entered, desk)?;
        let since = spanned.since(&exact, odds, networks, desk)?;
        let beliefs = Beliefs::of(networks, odds, &since, desk)?;
        let (_, folded) = Beliefs::glance(&beliefs.networks(), odds, &since, desk)?;
        // A job with changes is rare, and its networks leave little to be spared.
        let compared = Compared::of(&exact, odds, &spanned.entered, Depth::Reasons, memory)?;
        Some(Self {
            compared: compared.within(folded),
            beliefs,
            entered: done,
            present: Some(course.up_to_date(job, networks)),
            folded: spanned.folded,
        })
    }
}

impl Weighing {
    fn of(
        assumptions: &Assumptions,
        job: &Job,
        known: &Known<'_>,
        entered: Vec<Entered>,
        course: &Course<'_>,
        depth: Depth,
        memory: &mut Option<Memory>,
    ) -> Option<Self> {
        let machine = known.machine;
        let networks = assumptions.networks()?;
        let memory = memory.get_or_insert_with(|| Memory::new(&networks));
        let odds = Build::odds(machine.kind);
        let told = (assumptions, networks.as_slice());
        let believed = Believed::of(told, (job, course), odds, entered, depth, memory)?;
        let Believed {
            mut compared,
            beliefs,
            entered,
            present,
            folded,
        } = believed;
        let desk = &mut memory.desk;
        let build = beliefs.likeliest_build();
        let stakes = Stakes::of(machine.kind, build, &assumptions.figures().costs);
        let prospects = Prospects::of(&beliefs, compared.picture.clone(), stakes, desk);
        let is_open = present.is_none() && depth == Depth::Advice;
        if is_open && verdict::may_give_up(&prospects) {
            compared.look_without(&SEALED_SIGNS, &beliefs, odds, &entered, desk)?;
        }
        let (mut next, withheld) = Choosing {
            job: present.as_ref().unwrap_or(job),
            machine,
            gates: known.gates,
            entered: &entered,
            picture: &compared.picture,
            prospects: &prospects,
            conflict: compared.conflict,
            without: &compared.without,
            build,
            mains: mains_of(machine),
        }
        .rank();
        let case = Case {
            machine,
            cautions: known.cautions,
            entered: &entered,
            compared: &compared,
            prospects: &prospects,
            stakes,
            next: &next,
        };
        let verdict = case.verdict();
        if let Some(first) = case.asks_first(&verdict) {
            next = ranked(next, |check| f64::from(u8::from(check.task == first)));
        }
        Some(Self {
            compared,
            folded,
            verdict,
            next,
            withheld,
        })
    }
}
