//! What is known now: the one function that turns observations into conclusions.

use job::{Job, Moment};
use measure::windings::WindingPriors;

use crate::checks::machine::Machine;
use crate::checks::windings::WindingsKnown;
use crate::choice::Choice;
use crate::{Caution, Check, Finding, Level, Link, LinkState, Step};

/// The assumptions behind every conclusion.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Model {
    /// What is thought of windings before they are measured.
    pub windings: WindingPriors,
}

/// What is known about a machine. Never stored: made anew from the job each time.
#[derive(Debug, Clone, PartialEq)]
pub struct Assessment {
    /// What machine it is.
    pub machine: Machine,
    /// The state of each link, in the order of the Path.
    pub path: Vec<(Link, LinkState)>,
    /// What was found, in the order of the checks.
    pub findings: Vec<Finding>,
    /// What to be careful of; stops first.
    pub cautions: Vec<Caution>,
    /// What to do, in a safe order; the first is the next step.
    pub next: Vec<Step>,
    /// The windings, once anything about them was entered.
    pub windings: Option<WindingsKnown>,
}

/// Draws all conclusions from a job. Same model, job and moment: same answer.
///
/// `now` is the moment of asking: cooling is counted up to it.
#[must_use]
pub fn assess(model: &Model, job: &Job, now: Moment) -> Assessment {
    let machine = Machine::of(job);
    let windings = WindingsKnown::of(model, job, &machine, now);
    let mut findings: Vec<Finding> = machine.findings().into_iter().collect();
    let mut cautions = machine.cautions();
    let mut links = machine.links();
    findings.extend(windings.findings().into_iter().map(Finding::Windings));
    cautions.extend(windings.cautions());
    links.extend(windings.link());
    cautions.sort_by_key(|caution| (caution.level(), *caution));
    Assessment {
        next: next_steps(&machine, &windings),
        path: path_of(&links),
        findings,
        cautions,
        windings: windings.anything().then_some(windings),
        machine,
    }
}

impl Assessment {
    /// Whether anything says that nothing may be powered.
    #[must_use]
    pub fn must_stop(&self) -> bool {
        self.cautions
            .iter()
            .any(|caution| caution.level() == Level::Stop)
    }

    /// The first link where the Path is, or may be, interrupted.
    #[must_use]
    pub fn first_break(&self) -> Option<(Link, LinkState)> {
        self.path
            .iter()
            .copied()
            .find(|(_, state)| state.interrupts())
    }
}

/// Safety questions come before anything is touched.
fn next_steps(machine: &Machine, windings: &WindingsKnown) -> Vec<Step> {
    let unasked = machine.kind.is_none() || machine.mains.is_none() || machine.complaint.is_none();
    let machine_step = unasked.then_some(Step::Look(Check::Machine));
    let gas_step = machine
        .refrigerant
        .is_none()
        .then_some(Step::Look(Check::Refrigerant));
    machine_step
        .into_iter()
        .chain(gas_step)
        .chain(windings.steps())
        .collect()
}

/// One state a link: of several statements the better founded one, of equals the later one.
fn path_of(statements: &[(Link, LinkState)]) -> Vec<(Link, LinkState)> {
    Link::ALL
        .iter()
        .map(|&link| {
            let state = statements
                .iter()
                .filter(|(about, _)| *about == link)
                .map(|(_, state)| *state)
                .max_by_key(|state| state.basis())
                .unwrap_or(LinkState::Unknown);
            (link, state)
        })
        .collect()
}
